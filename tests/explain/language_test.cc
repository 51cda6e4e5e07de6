// The catalogues hold to each other and to the code, and what German makes of
// them is German. Rules of grammar and function words: common knowledge.
#include <algorithm>
#include <cctype>
#include <filesystem>
#include <regex>
#include <set>
#include <string>

#include "assay/explain/assayer.h"
#include "assay/explain/catalogue.h"
#include "assay/explain/edits.h"
#include "assay/terms/term.h"
#include "gtest/gtest.h"
#include "tests/explain/catalogue_rows.h"
#include "tests/explain/german_words.h"
#include "tests/support/golden_files.h"
#include "tests/support/plausible_play.h"
#include "tests/support/printers.h"
#include "tests/support/static_only.h"

namespace assay {
namespace {

using testing_support::ArgumentsIn;
using testing_support::ContentOf;
using testing_support::ExpectGerman;
using testing_support::PlayPlausibly;
using testing_support::StaticOnly;
using testing_support::WithColoursSwapped;

const Catalogue& German() { return *Catalogue::Of("de"); }

bool StartsWith(std::string_view text, std::string_view start) {
  return text.substr(0, start.size()) == start;
}

// Rows that are tables, not templates: a language has its own.
bool IsTable(std::string_view id) {
  return StartsWith(id, "piece.") || StartsWith(id, "article.") ||
         StartsWith(id, "number.") || StartsWith(id, "files");
}

TEST(Catalogues, SayTheSameThings) {
  for (const auto& [id, row] : Catalogue::English().rows()) {
    if (StartsWith(id, "article.")) continue;
    const std::string_view german = German().Find(id);
    EXPECT_FALSE(german.empty()) << id << " is missing in German";
    if (IsTable(id)) continue;
    EXPECT_EQ(ArgumentsIn(row), ArgumentsIn(german)) << id;
  }
  for (const auto& [id, row] : German().rows()) {
    // English names terms by their ids.
    if (StartsWith(id, "article.") || StartsWith(id, "term.")) continue;
    EXPECT_FALSE(Catalogue::English().Find(id).empty())
        << id << " is missing in English";
  }
}

TEST(Catalogues, HaveEachIdOnceWithClosedBraces) {
  for (const char* language : {"en", "de"}) {
    EXPECT_GT(testing_support::RowsOf(language).size(), 300U);
  }
}

// What the code says is in the catalogue, and the catalogue has nothing else.
TEST(Catalogues, HaveTheIdsOfTheCode) {
  std::string code;
  for (const char* room :
       {ASSAY_EXPLAIN_DIR, ASSAY_LESSON_DIR, ASSAY_CLI_DIR}) {
    for (const auto& file : std::filesystem::directory_iterator(room)) {
      if (file.is_regular_file()) code += ContentOf(file.path());
    }
  }
  for (const auto& [id, row] : Catalogue::English().rows()) {
    if (StartsWith(id, "article.") || StartsWith(id, "number.") ||
        StartsWith(id, "nag.") || std::isdigit(id.back()) != 0) {
      continue;  // put together from parts
    }
    EXPECT_NE(code.find('"' + std::string(id) + '"'), std::string::npos)
        << id << " is not used";
  }
  const std::regex said("Say\\(\\s*\"([a-z_.]+)\"");
  int found = 0;
  for (std::sregex_iterator at(code.begin(), code.end(), said), end; at != end;
       ++at) {
    EXPECT_FALSE(Catalogue::English().Find((*at)[1].str()).empty())
        << (*at)[1] << " has no row";
    ++found;
  }
  EXPECT_GT(found, 200);
}

TEST(Catalogues, NameEachTerm) {
  for (int t = 0; t < kTerms; ++t) {
    const std::string name(Info(static_cast<TermId>(t)).name);
    EXPECT_FALSE(German().Find("term." + name).empty()) << name;
  }
}

TEST(English, BeginsWithTheArticleThatIsAskedFor) {
  const auto text = [](const Message& said) { return English(said); };
  const Message hole = Say("holes", Squares{Bit(kF4)});
  EXPECT_EQ(text(Say("known", hole)), "the hole on f4");
  EXPECT_EQ(text(Say("known", Say("pawns.isolated", Squares{Bit(kD4)}))),
            "the isolated pawn on d4");
  EXPECT_EQ(text(Say("known", Say("bishop_pair"))), "the bishop pair");
  EXPECT_EQ(text(Say("known", Say("pawns.hanging", Squares{Bit(kC4)}))),
            "hanging pawns on c4");
  EXPECT_EQ(text(Say("change.weighs", Side::kWhite, hole, true)),
            "White's hole on f4 weighs more");
}

TEST(Catalogues, AreFoundByTag) {
  for (const char* tag : {"", "en", "EN", "en-GB"}) {
    EXPECT_EQ(Catalogue::Of(tag), &Catalogue::English()) << tag;
  }
  for (const char* tag : {"de", "DE", "de-AT", "de-CH"}) {
    EXPECT_EQ(Catalogue::Of(tag), &German()) << tag;
  }
  for (const char* tag : {"fr", "d", "den", "deu", "-", "-de", "e", "xx-en"}) {
    EXPECT_EQ(Catalogue::Of(tag), nullptr) << tag;
  }
}

TEST(German, HasCasesAndGenders) {
  const auto text = [](const Message& said) { return German().Text(said); };
  const Message knight = Unit(PieceKind::kKnight, kF6);
  const Message queen = Unit(PieceKind::kQueen, kD8);
  const Message pawn = Unit(PieceKind::kPawn, kC4);
  EXPECT_EQ(text(knight), "der Springer auf f6");
  EXPECT_EQ(text(Say("deed.takes", pawn)), "schlägt den Bauern auf c4");
  EXPECT_EQ(text(Say("deed.takes", queen)), "schlägt die Dame auf d8");
  EXPECT_EQ(text(Say("plan.siege", pawn)), "die Belagerung des Bauern auf c4");
  EXPECT_EQ(text(Say("how.pins", std::string("12. Bb5"), knight, queen)),
            "12. Bb5 fesselt den Springer auf f6 an die Dame auf d8");
  EXPECT_EQ(text(Say("how.traps", std::string("12. b4"), queen)),
            "12. b4 lässt der Dame auf d8 keinen Ausweg");
  EXPECT_EQ(
      text(Say("has", Side::kBlack, Say("pawns.isolated", Squares{Bit(kD5)}))),
      "Schwarz hat einen isolierten Bauern auf d5");
  EXPECT_EQ(
      text(Say("race.stopping", Side::kWhite,
               Say("plan.lever", std::string("...c5")), std::string("12. b4"))),
      "Weiß muss mit dem Hebel ...c5 rechnen, was 12. b4 verhindert");
  EXPECT_EQ(text(Count(1, PieceKind::kRook)), "ein Turm");
  EXPECT_EQ(text(Count(2, PieceKind::kRook)), "zwei Türme");
  EXPECT_EQ(
      text(Sentence(Say("summary.then", Say("verdict.slight", Side::kWhite)))),
      "Danach steht Weiß etwas besser.");
}

// All texts of the explanation, a line each.
std::string AllTexts(const Explanation& explanation) {
  std::string all;
  const auto add = [&](const std::string& text) { all += text + "\n"; };
  const auto each = [&](const auto& list) {
    for (const auto& item : list) add(item.text);
  };
  add(explanation.summary);
  add(explanation.verdict.text);
  each(explanation.ledger);
  each(explanation.reasons);
  each(explanation.cautions);
  each(explanation.temptations);
  each(explanation.threats);
  for (const ToldPlan& plan : explanation.plans) {
    for (const std::string* text : {&plan.title, &plan.text, &plan.needs,
                                    &plan.counter_text, &plan.ignored_text}) {
      add(*text);
    }
    add(German().Text(plan.begins));
    for (const ToldStep& step : plan.steps) add(step.purpose);
  }
  add(explanation.structure.name);
  for (const std::string& note : explanation.structure.notes) add(note);
  if (explanation.advice.has_value()) add(explanation.advice->text);
  return all;
}

TEST(German, HasNoEnglishWordsAndNoGaps) {
  const Assayer assayer;
  int seen = 0;
  const auto check = [&](const Position& position, bool proved) {
    ExplainOptions options = StaticOnly();
    options.static_only = !proved;
    options.proof_nodes = 1000;
    options.language = "de";
    ExpectGerman(AllTexts(assayer.Explain(position, options)));
    ++seen;
  };
  PlayPlausibly(11, 400, [&](const Position& at) { check(at, false); });
  PlayPlausibly(12, 100, [&](const Position& at) { check(at, true); });
  EXPECT_EQ(seen, 500);
}

TEST(German, KeepsItsWordsWithColoursSwapped) {
  const Assayer assayer;
  ExplainOptions options = StaticOnly();
  options.language = "de";
  options.max_plans_per_side = 0;  // moves have numbers
  int compared = 0;
  PlayPlausibly(13, 200, [&](const Position& position) {
    const Explanation one = assayer.Explain(position, options);
    const absl::StatusOr<Edited> swapped = ApplyEdits(position, {"swap"});
    ASSERT_TRUE(swapped.ok());
    const Explanation other = assayer.Explain(swapped->position, options);
    ASSERT_EQ(one.reasons.size(), other.reasons.size());
    for (std::size_t i = 0; i < one.reasons.size(); ++i) {
      const std::string& text = one.reasons[i].text;
      // Lists are in the order of the squares, and Black's moves have dots.
      if (text.find(" und ") != std::string::npos ||
          (text + other.reasons[i].text).find("...") != std::string::npos) {
        continue;
      }
      EXPECT_EQ(WithColoursSwapped(text),
                WithColoursSwapped(WithColoursSwapped(other.reasons[i].text)));
      ++compared;
    }
    EXPECT_EQ(WithColoursSwapped(one.verdict.text), other.verdict.text);
  });
  EXPECT_GT(compared, 200);
}

}  // namespace
}  // namespace assay
