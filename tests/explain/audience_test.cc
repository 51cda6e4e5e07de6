// Newcomers are told what each trade word means, once, and no values; experts
// get fewer words, with values and the line. Who asks changes words alone.
#include <regex>
#include <set>
#include <string>

#include "assay/explain/assayer.h"
#include "assay/explain/catalogue.h"
#include "assay/explain/glossary.h"
#include "assay/explain/text.h"
#include "gtest/gtest.h"
#include "tests/explain/catalogue_rows.h"
#include "tests/support/plausible_play.h"
#include "tests/support/printers.h"
#include "tests/support/static_only.h"

namespace assay {
namespace {

using testing_support::ArgumentsIn;
using testing_support::PlayPlausibly;
using testing_support::RowsOf;
using testing_support::StaticOnly;

constexpr const char* kLanguages[] = {"en", "de"};

// A row laid over another may say less, not something else.
TEST(Audiences, LayRowsOverThoseOfTheirLanguage) {
  for (const std::string language : kLanguages) {
    const auto base = RowsOf(language);
    for (const char* audience : {"_newcomer", "_expert"}) {
      for (const auto& [id, row] : RowsOf(language + audience)) {
        if (id.rfind("glossary.", 0) == 0) continue;
        const auto below = base.find(id);
        ASSERT_NE(below, base.end()) << language << audience << ": " << id;
        for (const char argument : ArgumentsIn(row)) {
          EXPECT_EQ(ArgumentsIn(below->second).count(argument), 1U) << id;
        }
      }
    }
  }
}

TEST(Audiences, HaveTheSameTradeWordsInEachLanguage) {
  const auto ids = [](const std::string& name) {
    std::set<std::string> found;
    for (const auto& [id, row] : RowsOf(name)) {
      if (id.rfind("glossary.", 0) == 0) found.insert(id);
    }
    return found;
  };
  EXPECT_EQ(ids("en_newcomer"), ids("de_newcomer"));
  EXPECT_GE(ids("en_newcomer").size(), 35U);
  for (const char* language : kLanguages) {
    for (const TradeWord& word :
         Catalogue::Of(language, Audience::kNewcomer)->glossary()) {
      ASSERT_FALSE(word.forms.empty());
      EXPECT_EQ(word.meaning.back(), '.') << word.meaning;
      EXPECT_NE(FindTradeWord(std::string(word.forms[0]), word),
                std::string_view::npos)
          << word.forms[0];
    }
    EXPECT_TRUE(Catalogue::Of(language)->glossary().empty());
    EXPECT_TRUE(Catalogue::Of(language, Audience::kExpert)->glossary().empty());
  }
}

TEST(TradeWords, AreFoundAsWholeWords) {
  const TradeWord file = ReadTradeWord("open file/open files\tNo pawns.");
  EXPECT_EQ(file.meaning, "No pawns.");
  EXPECT_EQ(FindTradeWord("the open file", file), 4U);
  EXPECT_EQ(FindTradeWord("Open files.", file), 0U);
  EXPECT_EQ(FindTradeWord("the half-open file", file), std::string_view::npos);
  EXPECT_EQ(FindTradeWord("reopen filed", file), std::string_view::npos);
  EXPECT_EQ(FindTradeWord("half-open file, open file", file), 16U);
  const TradeWord pinned = ReadTradeWord("gefesselt*\tSie darf nicht weg.");
  EXPECT_EQ(FindTradeWord("ein gefesselter Läufer", pinned), 4U);
  EXPECT_EQ(FindTradeWord("ungefesselt", pinned), std::string_view::npos);
  const TradeWord pin = ReadTradeWord("pin\tIt may not go.");
  EXPECT_EQ(FindTradeWord("a spin, a pint", pin), std::string_view::npos);
}

TEST(TradeWords, AreExplainedOnceInTheOrderOfTheText) {
  const std::vector<TradeWord> words = {ReadTradeWord("hole\tA hole is A."),
                                        ReadTradeWord("fork\tA fork is B.")};
  Glossary glossary(words);
  std::string text = "A fork on the hole.";
  glossary.Explain(text);
  EXPECT_EQ(text, "A fork on the hole. A fork is B. A hole is A.");
  std::string again = "Another hole.";
  glossary.Explain(again);
  EXPECT_EQ(again, "Another hole.");
}

std::string ToldTo(Audience audience, const char* language,
                   const Explanation& explanation) {
  TextStyle style;
  style.audience = audience;
  style.language = language;
  style.width = 100000;
  return ToText(explanation, style);
}

std::size_t CountOf(const std::string& text, std::string_view part) {
  std::size_t count = 0;
  for (std::size_t at = text.find(part); at != std::string::npos;
       at = text.find(part, at + 1)) {
    ++count;
  }
  return count;
}

// On positions that the code does not know: no number with decimals, and each
// word of the trade explained exactly where it comes up at all.
TEST(Newcomers, AreToldNoValuesAndEachTradeWordOnce) {
  const std::regex value("[0-9]\\.[0-9]{2}|\\$[0-9]|[0-9] cp|centipawn");
  const Assayer assayer;
  std::size_t explained = 0;
  const auto check = [&](const Position& position, const char* language) {
    ExplainOptions options = StaticOnly();
    options.static_only = false;
    options.proof_nodes = 500;
    options.audience = Audience::kNewcomer;
    options.language = language;
    const std::string text = ToldTo(Audience::kNewcomer, language,
                                    assayer.Explain(position, options));
    std::smatch hit;
    EXPECT_FALSE(std::regex_search(text, hit, value)) << hit.str() << text;
    // What is said apart from what words mean.
    std::string said = text;
    const auto& glossary =
        Catalogue::Of(language, Audience::kNewcomer)->glossary();
    for (const TradeWord& word : glossary) {
      const std::size_t at = said.find(word.meaning);
      if (at != std::string::npos) said.erase(at, word.meaning.size());
    }
    for (const TradeWord& word : glossary) {
      const std::size_t told = CountOf(text, word.meaning);
      EXPECT_LE(told, 1U) << word.meaning << "\n" << text;
      const bool comes_up = FindTradeWord(said, word) != std::string_view::npos;
      EXPECT_EQ(told == 1, comes_up) << word.forms[0] << "\n" << text;
      explained += told;
    }
  };
  PlayPlausibly(21, 80, [&](const Position& at) { check(at, "en"); });
  PlayPlausibly(22, 80, [&](const Position& at) { check(at, "de"); });
  EXPECT_GT(explained, 400U);
}

// Who asks changes no value, no plan and no claim; experts read less.
TEST(Experts, ReadTheSameInFewerWords) {
  const Assayer assayer;
  std::size_t club_letters = 0;
  std::size_t expert_letters = 0;
  int reasons = 0;
  PlayPlausibly(23, 150, [&](const Position& at) {
    ExplainOptions options = StaticOnly();
    const Explanation club = assayer.Explain(at, options);
    options.audience = Audience::kExpert;
    const Explanation expert = assayer.Explain(at, options);
    EXPECT_EQ(club.score_cp, expert.score_cp);
    EXPECT_EQ(club.verdict.nag, expert.verdict.nag);
    EXPECT_EQ(club.claims, expert.claims);
    ASSERT_EQ(club.reasons.size(), expert.reasons.size());
    ASSERT_EQ(club.plans.size(), expert.plans.size());
    for (std::size_t i = 0; i < club.reasons.size(); ++i) {
      const Reason& reason = expert.reasons[i];
      EXPECT_EQ(club.reasons[i].value_cp, reason.value_cp);
      EXPECT_NE(reason.text.find("(" + PawnsText(reason.value_cp) + ")"),
                std::string::npos)
          << reason.text;
      ++reasons;
    }
    club_letters += ToldTo(Audience::kClub, "en", club).size();
    expert_letters += ToldTo(Audience::kExpert, "en", expert).size();
  });
  EXPECT_GT(reasons, 400);
  EXPECT_LT(expert_letters * 100, club_letters * 92);
}

TEST(Experts, SeeTheLineThatWasSearched) {
  ExplainOptions options;
  options.audience = Audience::kExpert;
  // A knight fork: our own position.
  const Explanation explanation = Assayer().Explain(
      testing_support::FromFen("r3k3/8/8/3N4/8/8/8/4K3 w - - 0 1"), options);
  const std::string text = ToldTo(Audience::kExpert, "en", explanation);
  EXPECT_NE(text.find("     line  1. Nc7+ "), std::string::npos) << text;
  EXPECT_NE(text.find(" nodes)"), std::string::npos) << text;
}

}  // namespace
}  // namespace assay
