// Moves, comparisons and what-ifs in each language and for each audience: what
// is said stays the same, how it is said follows the reader.
#include <random>
#include <regex>
#include <string>
#include <vector>

#include "assay/explain/catalogue.h"
#include "assay/explain/comparison.h"
#include "assay/explain/course.h"
#include "assay/explain/edits.h"
#include "assay/explain/glossary.h"
#include "assay/explain/move_explanation.h"
#include "assay/explain/what_if.h"
#include "assay/rules/movegen.h"
#include "gtest/gtest.h"
#include "tests/explain/german_words.h"
#include "tests/support/plausible_play.h"
#include "tests/support/printers.h"
#include "tests/support/static_only.h"

namespace assay {
namespace {

using testing_support::ExpectGerman;
using testing_support::PlayPlausibly;
using testing_support::StaticOnly;
using testing_support::WithColoursSwapped;

struct Question {
  Position position;
  std::vector<Move> moves;  // two
};

std::vector<Question> SomeQuestions(std::uint64_t seed, int count) {
  std::vector<Question> questions;
  std::mt19937_64 random(seed);
  PlayPlausibly(seed, count, [&](const Position& position) {
    MoveList moves;
    LegalMoves(position, moves);
    if (moves.size() < 2) return;
    const std::size_t first = random() % moves.size();
    const std::size_t second =
        (first + 1 + random() % (moves.size() - 1)) % moves.size();
    questions.push_back({position, {moves[first], moves[second]}});
  });
  return questions;
}

ExplainOptions For(const char* language, Audience audience,
                   std::uint64_t nodes = 0) {
  ExplainOptions options = StaticOnly();
  options.static_only = nodes == 0;
  options.proof_nodes = nodes;
  options.language = language;
  options.audience = audience;
  return options;
}

// What can be edited anywhere: a piece off, the turn, the colours.
std::vector<std::string> SomeEdits(const Position& position) {
  for (const Square square :
       Each(position.Occupied() & ~position.Pieces(PieceKind::kKing))) {
    const std::string edit = "off-" + ToString(square);
    if (ApplyEdits(position, {edit}).ok()) return {edit};
  }
  return {"swap"};
}

// Every text of the answer with the message that it is, in a reader's order.
using Told = std::vector<std::pair<std::string, Message>>;

void AddChanges(const std::vector<LedgerChange>& changes, bool felt,
                Told& told) {
  for (const LedgerChange& change : changes) {
    if (IsFelt(change) == felt) told.emplace_back(change.text, change.said);
  }
}

Told TextsOf(const MoveExplanation& move) {
  Told told;
  const Balance& shown =
      move.settled.has_value() ? move.settled->balance : move.balance;
  AddChanges(shown.gains, true, told);
  AddChanges(shown.concessions, true, told);
  for (const auto* plans : {&move.starts, &move.stops, &move.allows}) {
    for (const ToldPlan& plan : *plans) told.emplace_back(plan.text, plan.said);
  }
  if (move.reply_to_fear.has_value()) {
    told.emplace_back(move.reply_to_fear->text, move.reply_to_fear->said);
  }
  told.emplace_back(move.summary, move.summary_said);
  return told;
}

Told TextsOf(const Comparison& comparison) {
  Told told{{comparison.decides, comparison.decides_said}};
  for (const Explanation& one : comparison.explanations) {
    told.emplace_back(one.summary, one.summary_said);
    for (const ToldPlan& plan : one.plans) {
      told.emplace_back(plan.text, plan.said);
    }
  }
  return told;
}

Told TextsOf(const WhatIf& what_if) {
  Told told;
  AddChanges(what_if.changes, true, told);
  told.emplace_back(what_if.summary, what_if.summary_said);
  AddChanges(what_if.changes, false, told);
  return told;
}

std::string Joined(const Told& told) {
  std::string all;
  for (const auto& [text, said] : told) all += text + "\n";
  return all;
}

// Asks all three and hands on what each says.
template <class Check>
void AskAll(const Question& question, const ExplainOptions& options,
            const Check& check) {
  const Assayer assayer;
  check(TextsOf(
      ExplainMove(assayer, question.position, question.moves[0], options)));
  const Comparison comparison =
      Compare(assayer, question.position, question.moves, {}, options);
  check(TextsOf(comparison));
  const absl::StatusOr<WhatIf> what_if = AskWhatIf(
      assayer, question.position, SomeEdits(question.position), options);
  ASSERT_TRUE(what_if.ok());
  check(TextsOf(*what_if));
}

TEST(GermanQuestions, HaveNoEnglishWordsAndNoGaps) {
  int seen = 0;
  for (const std::uint64_t nodes : {0, 1000}) {
    for (const Question& question : SomeQuestions(71 + nodes, 150)) {
      for (const Audience audience :
           {Audience::kClub, Audience::kNewcomer, Audience::kExpert}) {
        AskAll(question, For("de", audience, nodes), [&](const Told& told) {
          ExpectGerman(Joined(told));
          ++seen;
        });
      }
      if (::testing::Test::HasFailure()) return;
    }
  }
  EXPECT_GT(seen, 2000);
}

TEST(Questions, AreTheirMessagesPutIntoWords) {
  for (const char* language : {"en", "de"}) {
    const Catalogue& words = *Catalogue::Of(language);
    int compared = 0;
    for (const Question& question : SomeQuestions(72, 100)) {
      AskAll(question, For(language, Audience::kClub), [&](const Told& told) {
        for (const auto& [text, said] : told) {
          EXPECT_EQ(words.Text(said), text);
          ++compared;
        }
      });
    }
    EXPECT_GT(compared, 500);
  }
}

TEST(Questions, SayTheSameInEachLanguageToEachAudience) {
  for (const Question& question : SomeQuestions(73, 60)) {
    std::vector<Told> english;
    AskAll(question, For("en", Audience::kClub),
           [&](const Told& told) { english.push_back(told); });
    for (const Audience audience : {Audience::kNewcomer, Audience::kExpert}) {
      std::size_t at = 0;
      AskAll(question, For("de", audience), [&](const Told& told) {
        const Told& same = english[at++];
        ASSERT_EQ(told.size(), same.size());
        for (std::size_t i = 0; i < told.size(); ++i) {
          EXPECT_EQ(told[i].second, same[i].second);
        }
      });
    }
  }
}

// No number with decimals, and each word of the trade explained exactly where
// it comes up at all.
TEST(NewcomersQuestions, HaveNoValuesAndEachTradeWordOnce) {
  const std::regex value("[0-9]\\.[0-9]{2}|\\$[0-9]|[0-9] cp|centipawn");
  int explained = 0;
  for (const char* language : {"en", "de"}) {
    const auto& glossary =
        Catalogue::Of(language, Audience::kNewcomer)->glossary();
    for (const Question& question : SomeQuestions(74, 80)) {
      AskAll(question, For(language, Audience::kNewcomer, 500),
             [&](const Told& told) {
               const std::string text = Joined(told);
               std::smatch hit;
               EXPECT_FALSE(std::regex_search(text, hit, value))
                   << hit.str() << " in " << text;
               // What is said apart from what words mean.
               std::string said = text;
               std::vector<std::size_t> told_at;
               for (const TradeWord& word : glossary) {
                 told_at.push_back(said.find(word.meaning));
                 if (told_at.back() != std::string::npos) {
                   said.erase(told_at.back(), word.meaning.size());
                 }
               }
               for (std::size_t i = 0; i < glossary.size(); ++i) {
                 const bool once = told_at[i] != std::string::npos;
                 const bool comes_up =
                     FindTradeWord(said, glossary[i]) != std::string_view::npos;
                 EXPECT_EQ(said.find(glossary[i].meaning), std::string::npos);
                 EXPECT_EQ(once, comes_up) << glossary[i].forms[0] << "\n"
                                           << text;
                 explained += once ? 1 : 0;
               }
             });
    }
  }
  EXPECT_GT(explained, 200);
}

TEST(ExpertsQuestions, AreAnsweredInFewerWords) {
  for (const char* language : {"en", "de"}) {
    std::size_t club = 0;
    std::size_t expert = 0;
    for (const Question& question : SomeQuestions(75, 80)) {
      AskAll(question, For(language, Audience::kClub),
             [&](const Told& told) { club += Joined(told).size(); });
      AskAll(question, For(language, Audience::kExpert),
             [&](const Told& told) { expert += Joined(told).size(); });
    }
    EXPECT_LT(expert * 20, club * 19) << language;
  }
}

TEST(GermanQuestions, KeepTheirWordsWithColoursSwapped) {
  const Assayer assayer;
  const ExplainOptions options = For("de", Audience::kClub);
  int compared = 0;
  for (const Question& question : SomeQuestions(76, 150)) {
    const std::vector<std::string> edits = SomeEdits(question.position);
    const absl::StatusOr<WhatIf> one =
        AskWhatIf(assayer, question.position, edits, options);
    const absl::StatusOr<Edited> swapped =
        ApplyEdits(question.position, {"swap"});
    ASSERT_TRUE(one.ok() && swapped.ok());
    if (edits[0].substr(0, 4) != "off-") continue;
    const Square off = FlipRank(ParseSquare(edits[0].substr(4)));
    const absl::StatusOr<WhatIf> other = AskWhatIf(
        assayer, swapped->position, {"off-" + ToString(off)}, options);
    ASSERT_TRUE(other.ok());
    ASSERT_EQ(one->changes.size(), other->changes.size());
    for (std::size_t i = 0; i < one->changes.size(); ++i) {
      const std::string& text = one->changes[i].text;
      // Lists and pieces of equal reach are in the order of the squares, and
      // Black's moves have dots; equal changes may come in another order.
      if (one->changes[i].term != other->changes[i].term ||
          one->changes[i].term == TermId::kScope ||
          one->changes[i].side == other->changes[i].side ||
          text.find(" und ") != std::string::npos ||
          (text + other->changes[i].text).find("...") != std::string::npos) {
        continue;
      }
      EXPECT_EQ(WithColoursSwapped(text),
                WithColoursSwapped(WithColoursSwapped(other->changes[i].text)));
      ++compared;
    }
  }
  EXPECT_GT(compared, 150);
}

// A line of common opening moves, one of them a mistake.
TEST(GermanCourse, HasNoEnglishWords) {
  int turns = 0;
  for (const Question& question : SomeQuestions(77, 60)) {
    const std::vector<Move> line{question.moves[0]};
    for (const Audience audience : {Audience::kClub, Audience::kNewcomer}) {
      const Course course =
          FollowLine(Assayer(), question.position, line, For("de", audience));
      for (const Turn& turn : course.turns) {
        ExpectGerman(turn.text);
        ++turns;
      }
    }
  }
  EXPECT_GT(turns, 10);
}

}  // namespace
}  // namespace assay
