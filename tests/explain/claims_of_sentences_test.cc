// No sentence without claims, and no claim that does not hold: on 5,000
// positions of random play, of games, and on ends of games.
#include <algorithm>
#include <cctype>
#include <cstdlib>
#include <string>
#include <vector>

#include "assay/explain/assayer.h"
#include "assay/facts/claim_lists.h"
#include "gtest/gtest.h"
#include "tests/support/plausible_play.h"
#include "tests/support/printers.h"
#include "tests/support/questions.h"
#include "tests/support/random_play.h"

namespace assay {
namespace {

// Squares that a text names: a letter and a digit that are no part of a word.
Bitboard SquaresIn(const std::string& text) {
  Bitboard squares = 0;
  for (std::size_t i = 0; i + 1 < text.size(); ++i) {
    const bool starts = i == 0 || std::isalnum(text[i - 1]) == 0;
    const bool ends = i + 2 == text.size() || std::isalnum(text[i + 2]) == 0;
    const Square square = ParseSquare(text.substr(i, 2));
    if (starts && ends && square != kNoSquare) squares |= Bit(square);
  }
  return squares;
}

// The text without the dots before Black's moves: "...e5" is "e5".
std::string WithoutDots(std::string text) {
  for (std::size_t at; (at = text.find("...")) != std::string::npos;) {
    text.erase(at, 3);
  }
  return text;
}

class Checker {
 public:
  explicit Checker(const Explanation& explanation)
      : explanation_(explanation),
        all_(AllClaims(Facts(explanation.position))) {}

  void CheckAll() const {
    for (const Claim& claim : explanation_.claims) CheckHolds(claim);
    CheckSentence(explanation_.verdict.text, explanation_.verdict.claims);
    CheckSentence(explanation_.summary, explanation_.summary_claims);
    for (const ExplainedEntry& entry : explanation_.ledger) {
      EXPECT_FALSE(entry.phrase.empty());
      CheckSentence(entry.text, entry.claims);
    }
    for (const Caution& caution : explanation_.cautions) {
      EXPECT_FALSE(caution.kind.empty());
      CheckSentence(caution.text, caution.claims);
    }
    EXPECT_FALSE(explanation_.structure.name.empty());
    EXPECT_FALSE(explanation_.structure.notes.empty());
    for (const std::string& note : explanation_.structure.notes) {
      CheckSentence(note, explanation_.structure.claims);
    }
    CheckReasons();
  }

 private:
  void CheckSentence(const std::string& text, const ClaimRefs& refs) const {
    EXPECT_FALSE(text.empty());
    EXPECT_FALSE(refs.empty()) << text;
    for (const char* gap :
         {"  ", " ,", " .", " ;", " :", "..", ",,", "only no "}) {
      EXPECT_EQ(WithoutDots(text).find(gap), std::string::npos) << text;
    }
    Bitboard known = 0;
    for (const std::uint32_t ref : refs) {
      ASSERT_LT(ref, explanation_.claims.size()) << text;
      const Claim& claim = explanation_.claims[ref];
      known |= claim.squares.ToSet() | claim.others.ToSet();
    }
    for (const Square square : Each(SquaresIn(text) & ~known)) {
      ADD_FAILURE() << "no claim about " << ToString(square) << ": " << text;
    }
  }

  void CheckHolds(const Claim& claim) const {
    if (testing_support::TakesAQuestion(claim.kind)) {
      return;  // they take a question, so that no list has them all
    }
    EXPECT_NE(std::find(all_.begin(), all_.end(), claim), all_.end())
        << ToString(claim);
  }

  void CheckReasons() const {
    Centipawns last = 1 << 20;
    for (const Reason& reason : explanation_.reasons) {
      CheckSentence(reason.text, reason.claims);
      CheckBishopPair(reason);
      EXPECT_EQ(reason.text.back(), '.');
      Centipawns sum = 0;
      for (const std::uint32_t entry : reason.entries) {
        ASSERT_LT(entry, explanation_.ledger.size());
        sum += explanation_.ledger[entry].entry.value_cp;
      }
      EXPECT_EQ(reason.value_cp, sum) << reason.text;
      EXPECT_NE(sum, 0) << reason.text;
      EXPECT_LE(std::abs(sum), last) << reason.text;
      last = std::abs(sum);
    }
  }

  // A side that is said to have the pair has it.
  void CheckBishopPair(const Reason& reason) const {
    for (const Side side : kSides) {
      const std::string said = std::string(Name(side)) + " has the bishop pair";
      if (reason.text.find(said) == std::string::npos) continue;
      bool has_it = false;
      for (const std::uint32_t ref : reason.claims) {
        const Claim& claim = explanation_.claims[ref];
        has_it |= claim.kind == ClaimKind::kBishopPair && claim.side == side;
      }
      EXPECT_TRUE(has_it) << reason.text;
    }
  }

  const Explanation& explanation_;
  const std::vector<Claim> all_;
};

void Check(const Position& position, const Assayer& assayer) {
  if (::testing::Test::HasFailure()) return;
  SCOPED_TRACE(::testing::PrintToString(position));
  const Explanation explanation = assayer.Explain(position);
  EXPECT_EQ(explanation.score_cp, assayer.Score(position));
  Checker(explanation).CheckAll();
}

TEST(SentencesOfRandomPlay, HaveTrueClaims) {
  const Assayer assayer;
  testing_support::PlayAtRandom(31, 5000, [&](const Position& position, Move) {
    Check(position, assayer);
  });
}

TEST(SentencesOfGames, HaveTrueClaims) {
  const Assayer assayer;
  testing_support::PlayPlausibly(
      32, 5000, [&](const Position& position) { Check(position, assayer); });
}

// What is said must not depend on the weights being sensible.
TEST(SentencesWithOddWeights, HaveTrueClaims) {
  Weights weights;
  int value = -7;
  for (const WeightField& field : WeightFields()) {
    weights.*(field.field) = {value, 2 * value};
    value = value > 0 ? -value - 5 : -value + 9;
  }
  const Assayer assayer(weights);
  testing_support::PlayPlausibly(
      33, 1000, [&](const Position& position) { Check(position, assayer); });
}

TEST(SentencesWithoutAnyWeight, HaveTrueClaims) {
  Weights weights;
  for (const WeightField& field : WeightFields()) {
    weights.*(field.field) = {0, 0};
  }
  const Assayer assayer(weights);
  testing_support::PlayPlausibly(
      34, 200, [&](const Position& position) { Check(position, assayer); });
}

TEST(Claims, AreEachKeptOnceAndAllOnRequest) {
  const Assayer assayer;
  ExplainOptions options;
  options.all_claims = true;
  testing_support::PlayPlausibly(35, 300, [&](const Position& position) {
    if (::testing::Test::HasFailure()) return;
    const Explanation explanation = assayer.Explain(position, options);
    for (auto i = explanation.claims.begin(); i != explanation.claims.end();
         ++i) {
      EXPECT_EQ(std::find(i + 1, explanation.claims.end(), *i),
                explanation.claims.end())
          << ToString(*i);
    }
    for (const Claim& claim : AllClaims(Facts(position))) {
      EXPECT_NE(std::find(explanation.claims.begin(), explanation.claims.end(),
                          claim),
                explanation.claims.end())
          << ToString(claim);
    }
  });
}

// A text with squares as "#", sides as "@" and Black's dots left out.
std::string Neutral(const std::string& text) {
  std::string neutral;
  for (std::size_t i = 0; i < text.size();) {
    if (i + 1 < text.size() && SquaresIn(text.substr(i, 2)) != 0) {
      neutral += '#';
      i += 2;
    } else if (text.compare(i, 5, "White") == 0 ||
               text.compare(i, 5, "Black") == 0) {
      neutral += '@';
      i += 5;
    } else {
      if (text[i] != '.') neutral += text[i];
      ++i;
    }
  }
  return neutral;
}

std::vector<std::string> EntryTexts(const Explanation& explanation) {
  std::vector<std::string> texts;
  for (const ExplainedEntry& entry : explanation.ledger) {
    texts.push_back(Neutral(entry.text));
  }
  std::sort(texts.begin(), texts.end());
  return texts;
}

TEST(Words, AreTheSameForTheOtherSide) {
  const Assayer assayer;
  testing_support::PlayPlausibly(36, 2000, [&](const Position& position) {
    if (::testing::Test::HasFailure()) return;
    SCOPED_TRACE(::testing::PrintToString(position));
    const Explanation explanation = assayer.Explain(position);
    const Explanation swapped = assayer.Explain(SwapColours(position));
    EXPECT_EQ(EntryTexts(explanation), EntryTexts(swapped));
    EXPECT_EQ(Neutral(explanation.verdict.text), Neutral(swapped.verdict.text));
    EXPECT_EQ(explanation.reasons.size(), swapped.reasons.size());
    EXPECT_EQ(explanation.cautions.size(), swapped.cautions.size());
  });
}

TEST(Options, LimitTheReasons) {
  const Position position = Position::Initial();
  const Assayer assayer;
  EXPECT_EQ(assayer.Explain(position).reasons.size(), 1U);
  testing_support::PlayPlausibly(37, 200, [&](const Position& played) {
    const Explanation full = assayer.Explain(played);
    for (std::size_t most = 0; most <= 3; ++most) {
      ExplainOptions options;
      options.max_reasons = most;
      const Explanation cut = assayer.Explain(played, options);
      EXPECT_EQ(cut.reasons.size(), std::min(most, full.reasons.size()));
      EXPECT_EQ(cut.summary, full.summary);
    }
  });
}

}  // namespace
}  // namespace assay
