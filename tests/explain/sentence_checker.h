// Checks an explanation's sentences against its claims, and the claims against
// the position.
#ifndef ASSAY_TESTS_EXPLAIN_SENTENCE_CHECKER_H_
#define ASSAY_TESTS_EXPLAIN_SENTENCE_CHECKER_H_

#include <algorithm>
#include <cctype>
#include <cstdlib>
#include <string>
#include <vector>

#include "assay/explain/explanation.h"
#include "assay/facts/claim_lists.h"
#include "assay/rules/movegen.h"
#include "gtest/gtest.h"
#include "tests/support/printers.h"
#include "tests/support/questions.h"

namespace assay::testing_support {

// Squares that a text names: a letter and a digit that are no part of a word.
inline Bitboard SquaresIn(const std::string& text) {
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
inline std::string WithoutDots(std::string text) {
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
    for (const ToldPlan& plan : explanation_.plans) {
      EXPECT_FALSE(plan.title.empty());
      CheckSentence(plan.text, plan.claims);
      CheckSentence(plan.ignored_text, plan.ignored_claims);
      if (!plan.counter.empty()) {
        CheckSentence(plan.counter_text, plan.counter_claims);
      }
    }
    for (const Temptation& temptation : explanation_.temptations) {
      CheckSentence(temptation.text, temptation.claims);
    }
    for (const Threat& threat : explanation_.threats) {
      CheckSentence(threat.text, threat.claims);
    }
    if (explanation_.advice.has_value()) {
      CheckSentence(explanation_.advice->text, explanation_.advice->claims);
    }
    // The notes on a structure with a name stand before that on the centre.
    EXPECT_EQ(explanation_.structure.name.empty(),
              explanation_.structure.notes.size() == 1);
    EXPECT_FALSE(explanation_.structure.notes.empty());
    for (const std::string& note : explanation_.structure.notes) {
      CheckSentence(note, explanation_.structure.claims);
    }
    CheckReasons();
  }

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
      for (const Move move : claim.line) {
        known |= Bit(move.from()) | Bit(move.to());
        if (move.type() == Move::Type::kEnPassant) {
          known |= Bit(MakeSquare(FileOf(move.to()), RankOf(move.from())));
        }
      }
    }
    for (const Square square : Each(SquaresIn(text) & ~known)) {
      ADD_FAILURE() << "no claim about " << ToString(square) << ": " << text;
    }
  }

  void CheckHolds(const Claim& claim) const {
    if (TakesAQuestion(claim.kind)) {
      return;  // they take a question, so that no list has them all
    }
    Claim then = claim;
    then.line.clear();
    Position at = explanation_.position;
    for (const Move move : claim.line) {
      if (move.is_null()) {
        ASSERT_FALSE(at.InCheck()) << ToString(claim);
        at = at.AfterPass();
      } else {
        ASSERT_TRUE(IsLegal(at, move)) << ToString(claim);
        at = at.After(move);
      }
    }
    const std::vector<Claim> all =
        claim.line.empty() ? all_ : AllClaims(Facts(at));
    EXPECT_NE(std::find(all.begin(), all.end(), then), all.end())
        << ToString(claim);
  }

 private:
  void CheckReasons() const {
    // Heaviest first, but for activity, which may give its place to what comes
    // right before it, and for fine points, which come last.
    Centipawns last = 1 << 20;
    bool fine_points = false;
    for (const Reason& reason : explanation_.reasons) {
      CheckSentence(reason.text, reason.claims);
      CheckBishopPair(reason);
      EXPECT_EQ(reason.text.back(), '.');
      Centipawns sum = 0;
      Centipawns twice =
          0;  // what is momentary counts by half, but about kings
      for (const std::uint32_t entry : reason.entries) {
        ASSERT_LT(entry, explanation_.ledger.size());
        const Entry& counted = explanation_.ledger[entry].entry;
        sum += counted.value_cp;
        const bool by_half =
            IsMomentary(counted.term) && counted.term != TermId::kKingZone;
        twice += counted.value_cp * (by_half ? 1 : 2);
      }
      EXPECT_EQ(reason.value_cp, sum) << reason.text;
      EXPECT_NE(sum, 0) << reason.text;
      Centipawns rank = std::max(sum > 0 ? twice / 2 : -twice / 2, 0);
      if (reason.topic == Topic::kSpace) rank /= 2;
      if (reason.topic == Topic::kPawnNumbers ||
          reason.topic == Topic::kCover || reason.topic == Topic::kMove) {
        if (!fine_points) last = 1 << 20;
        fine_points = true;
      } else {
        EXPECT_FALSE(fine_points) << reason.text;
      }
      const bool before_activity = &reason != &explanation_.reasons.back() &&
                                   (&reason + 1)->topic == Topic::kActivity;
      const Centipawns lent = before_activity ? (&reason + 1)->rank_cp : 0;
      if (reason.topic == Topic::kActivity) {
        last = std::max(last, rank);
        continue;
      }
      EXPECT_LE(rank, last) << reason.text;
      last = std::max(rank, lent);
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

}  // namespace assay::testing_support

#endif  // ASSAY_TESTS_EXPLAIN_SENTENCE_CHECKER_H_
