// No sentence without claims, and no claim that does not hold: on 5,000
// positions of random play, of games, and on ends of games.
#include <algorithm>
#include <string>
#include <vector>

#include "assay/explain/assayer.h"
#include "gtest/gtest.h"
#include "tests/explain/sentence_checker.h"
#include "tests/support/plausible_play.h"
#include "tests/support/printers.h"
#include "tests/support/random_play.h"
#include "tests/support/static_only.h"

namespace assay {
namespace {

using testing_support::Checker;
using testing_support::SquaresIn;
using testing_support::StaticOnly;

void Check(const Position& position, const Assayer& assayer) {
  if (::testing::Test::HasFailure()) return;
  SCOPED_TRACE(::testing::PrintToString(position));
  const Explanation explanation = assayer.Explain(position, StaticOnly());
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

// The sentences that search stands behind.
TEST(ProvedSentences, HaveTrueClaims) {
  const Assayer assayer;
  ExplainOptions options;
  options.proof_nodes = 4000;
  int told = 0;
  testing_support::PlayPlausibly(38, 600, [&](const Position& position) {
    if (::testing::Test::HasFailure()) return;
    SCOPED_TRACE(::testing::PrintToString(position));
    const Explanation explanation = assayer.Explain(position, options);
    Checker(explanation).CheckAll();
    told += static_cast<int>(explanation.threats.size() +
                             explanation.temptations.size());
  });
  EXPECT_GE(told, 200);
}

// Endings that have a name, and basic mates.
TEST(SentencesOfEndings, HaveTrueClaims) {
  const Assayer assayer;
  for (const char* text : {
           "8/8/8/8/7K/8/pk6/3Q4 w - - 0 1",
           "8/8/8/8/7K/8/p7/k2Q4 b - - 0 1",
           "1K1k4/1P6/8/8/8/8/r7/2R5 w - - 0 1",
           "4k3/7R/r7/3KP3/8/8/8/8 b - - 0 1",
           "4k3/7R/4P3/3K4/8/8/8/1r6 w - - 0 1",
           "R7/6k1/P3r3/8/8/8/5K2/8 w - - 0 1",
           "8/8/4k3/8/4PK2/6B1/8/1b6 w - - 0 1",
           "8/8/8/4k3/8/2KBN3/8/8 w - - 0 1",
           "8/8/8/4k3/8/2KBB3/8/8 w - - 0 1",
           "8/8/8/4k3/8/2K5/8/R7 w - - 0 1",
           "4k3/8/3K4/4P3/8/8/8/8 w - - 0 1",
           "1k6/8/K7/P7/8/8/8/8 w - - 0 1",
           "8/4k3/8/4K3/4P3/8/8/8 w - - 0 1",
           "8/4k3/8/4K3/4P3/8/8/8 b - - 0 1",
           "8/8/8/P3k3/8/8/8/7K w - - 0 1",
       }) {
    const Position position = testing_support::FromFen(text);
    Check(position, assayer);
    Check(SwapColours(position), assayer);
  }
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
  ExplainOptions options = StaticOnly();
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
    const Explanation explanation = assayer.Explain(position, StaticOnly());
    const Explanation swapped =
        assayer.Explain(SwapColours(position), StaticOnly());
    EXPECT_EQ(EntryTexts(explanation), EntryTexts(swapped));
    EXPECT_EQ(Neutral(explanation.verdict.text), Neutral(swapped.verdict.text));
    EXPECT_EQ(explanation.reasons.size(), swapped.reasons.size());
    EXPECT_EQ(explanation.cautions.size(), swapped.cautions.size());
  });
}

TEST(Options, LimitTheReasons) {
  const Position position = Position::Initial();
  const Assayer assayer;
  EXPECT_EQ(assayer.Explain(position, StaticOnly()).reasons.size(), 1U);
  testing_support::PlayPlausibly(37, 200, [&](const Position& played) {
    const Explanation full = assayer.Explain(played, StaticOnly());
    for (std::size_t most = 0; most <= 3; ++most) {
      ExplainOptions options = StaticOnly();
      options.max_reasons = most;
      const Explanation cut = assayer.Explain(played, options);
      EXPECT_EQ(cut.reasons.size(), std::min(most, full.reasons.size()));
      EXPECT_EQ(cut.summary, full.summary);
    }
  });
}

}  // namespace
}  // namespace assay
