// Lessons on the command line: outputs, order, faults, and runs that were
// killed.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <regex>
#include <sstream>
#include <string>
#include <vector>

#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "tests/support/run_program.h"

namespace assay {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::StartsWith;
using testing_support::ProgramInput;
using testing_support::ProgramResult;
using testing_support::RunProgram;
using testing_support::TemporaryFile;

ProgramResult RunAssay(const std::vector<std::string>& arguments,
                       const std::string& standard_input = "") {
  ProgramInput input;
  input.standard_input = standard_input;
  return RunProgram(ASSAY_PROGRAM, arguments, input);
}

std::string Content(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  std::stringstream content;
  content << file.rdbuf();
  return content.str();
}

constexpr char kLesson[] =
    "[White \"Amsel\"]\n[Black \"Brandt\"]\n\n"
    "1. d4 d5 2. c4 {Space.} e6 3. Nc3 Nf6 4. cxd5 exd5 5. Bg5 $14 Be7 6. e3 "
    "(6. Nf3 O-O) 6... O-O 7. Bd3 Nbd7 {Both sides develop.} *\n\n"
    "1. e4 {King's pawn.} e5 2. Ke3 {Not a move.} *\n\n"
    "1. c4 e6 2. d4 d5 {Another order of moves.} *\n";

TEST(Lesson, PrintsKeyPositionsInOrderWithFaultsInTheirPlace) {
  const ProgramResult result = RunAssay({"lesson", "-", "--static"}, kLesson);
  EXPECT_EQ(result.exit_code, 1);
  const std::string& out = result.out;
  EXPECT_THAT(out, StartsWith("game 1, after 2. c4\n  chosen because the "
                              "author commented here\n"));
  const std::size_t fault = out.find("error: game 2, line ");
  ASSERT_NE(fault, std::string::npos);
  EXPECT_LT(out.find("game 2, after 1. e4"), fault);
  EXPECT_GT(out.find("game 3, after 2... d5"), fault);
}

TEST(Lesson, IsTheSameForAnyNumberOfJobs) {
  const std::string lesson = TemporaryFile(kLesson);
  std::string first;
  for (const char* jobs : {"1", "2", "7"}) {
    const std::string base = lesson + ".jobs" + jobs;
    const ProgramResult result = RunAssay(
        {"lesson", lesson, "--static", "--jobs", jobs, "--handout",
         base + ".html", "--annotated", base + ".pgn", "--items", base});
    EXPECT_EQ(result.exit_code, 1) << result.err;
    EXPECT_EQ(result.out, "");
    const std::string all =
        Content(base + ".html") + Content(base + ".pgn") + Content(base);
    EXPECT_GT(all.size(), 10000U);
    if (first.empty()) first = all;
    EXPECT_EQ(all, first) << jobs;
    for (const char* end : {".html", ".pgn", ""}) {
      std::filesystem::remove(base + end);
    }
    EXPECT_FALSE(std::filesystem::exists(base + ".part"));
    EXPECT_FALSE(std::filesystem::exists(base + ".tmp"));
  }
}

TEST(Lesson, KeepsTheAuthorsTextAndChangesNothingTheSecondTime) {
  const std::string lesson = TemporaryFile(kLesson);
  const std::string once = lesson + ".once";
  const std::string twice = lesson + ".twice";
  RunAssay({"lesson", lesson, "--static", "--annotated", once});
  RunAssay({"lesson", once, "--static", "--annotated", twice});
  const std::string text = Content(once);
  EXPECT_EQ(Content(twice), text);
  EXPECT_THAT(text, HasSubstr("2. c4 $"));
  EXPECT_THAT(text, HasSubstr("{Space.\n[%assay $"));
  EXPECT_THAT(text, HasSubstr("2. Ke3 {Not a move.} *"));
  EXPECT_THAT(text, HasSubstr("5. Bg5 $14\n{[%assay] "));
  std::filesystem::remove(once);
  std::filesystem::remove(twice);
}

// A page's text, its style left out.
std::string WithoutMarkup(const std::string& html) {
  std::string text;
  for (std::size_t at = 0; at < html.size(); ++at) {
    if (html.compare(at, 7, "<style>") == 0) at = html.find("</style>", at);
    if (html[at] != '<') {
      text += html[at];
      continue;
    }
    at = std::min(html.find('>', at), html.size());
    text += '\n';
  }
  return text;
}

// The author's own words stay what they are; ours, and those around them, have
// no English left.
TEST(Lesson, IsToldInGerman) {
  const std::string lesson = TemporaryFile(
      "[White \"Amsel\"]\n[Black \"Brandt\"]\n\n"
      "1. d4 d5 2. c4 {Raum.} e6 3. Nc3 Nf6 4. cxd5 exd5 5. Bg5 $14 Be7 6. e3 "
      "(6. Nf3 O-O) 6... O-O 7. Bd3 Nbd7 {Beide entwickeln sich.} *\n\n"
      "1. c4 e6 2. d4 d5 {Andere Zugfolge.} *\n");
  const std::regex english(
      "\\b(the|after|game|position|chosen|because|with|plan of|White|Black|"
      "to move|answer|score|contents|exercises|move|moves|better|found|reached|"
      "author|line)\\b",
      std::regex::icase);
  const auto check = [&](const std::string& text) {
    std::istringstream lines(WithoutMarkup(text));
    for (std::string line; std::getline(lines, line);) {
      if (line.rfind("[White ", 0) == 0 || line.rfind("[Black ", 0) == 0) {
        continue;  // names of tags
      }
      EXPECT_FALSE(std::regex_search(line, english)) << line;
    }
  };
  const ProgramResult printed =
      RunAssay({"lesson", lesson, "--static", "--language", "de"});
  EXPECT_EQ(printed.exit_code, 0) << printed.err;
  EXPECT_THAT(printed.out, StartsWith("Partie 1, nach 2. c4\n  gewählt: "));
  EXPECT_THAT(printed.out, HasSubstr("auch erreicht: Partie 1, nach "));
  check(printed.out);
  const std::string page = lesson + ".html";
  const std::string annotated = lesson + ".de";
  const ProgramResult written = RunAssay(
      {"lesson", lesson, "--proof-nodes", "3000", "--language=de", "--title",
       "Der Winterkurs", "--handout", page, "--annotated", annotated});
  EXPECT_EQ(written.exit_code, 0) << written.err;
  EXPECT_THAT(Content(page), HasSubstr("<html lang=\"de\">"));
  check(Content(page));
  const std::string ours = Content(annotated);
  EXPECT_THAT(ours, HasSubstr("{Raum.\n[%assay $"));
  check(ours);
  // What we said in German holds, whatever the language it is read in.
  for (const char* language : {"en", "de"}) {
    const ProgramResult read = RunAssay({"proofread", annotated, "--language",
                                         language, "--proof-nodes", "3000"});
    EXPECT_THAT(read.out, Not(HasSubstr("own_comment"))) << read.out;
  }
  std::filesystem::remove(page);
  std::filesystem::remove(annotated);
}

TEST(Proofread, IsToldInGerman) {
  // The queen is left to a knight.
  const ProgramResult result =
      RunAssay({"proofread", "-", "--language", "de"},
               "1. e4 e5 2. Qh5 Nc6 3. Qg5 Nf6 4. Qxe5+ $1 {gut} *\n");
  EXPECT_EQ(result.exit_code, 1) << result.err;
  EXPECT_THAT(result.out, HasSubstr("  Autor   4. Qxe5+ gilt als gut ($1).\n"));
  EXPECT_THAT(result.out, HasSubstr("  Befund  "));
  EXPECT_THAT(result.out, StartsWith("Partie 1, nach 4. Qxe5+: "));
}

// A journal cut anywhere, as a killed run leaves it, is gone on with.
TEST(Lesson, GoesOnWhereAKilledRunStopped) {
  const std::string lesson = TemporaryFile(kLesson);
  const std::string whole = lesson + ".whole";
  RunAssay({"lesson", lesson, "--static", "--items", whole});
  const std::string expected = Content(whole);
  ASSERT_THAT(expected, HasSubstr("chosenBecause"));
  // Where the handout cannot be written, the journal stays behind.
  const std::string items = lesson + ".items";
  const ProgramResult failed =
      RunAssay({"lesson", lesson, "--static", "--items", items, "--handout",
                "/nowhere/at.html"});
  EXPECT_EQ(failed.exit_code, 3);
  const std::string journal = Content(items + ".part");
  ASSERT_GT(journal.size(), 1000U);
  for (const std::size_t kept :
       {journal.size(), journal.size() - 1, journal.size() / 2,
        journal.size() / 3, std::size_t{30}, std::size_t{3}}) {
    std::filesystem::remove(items);
    std::ofstream(items + ".part", std::ios::binary) << journal.substr(0, kept);
    const ProgramResult result =
        RunAssay({"lesson", lesson, "--static", "--items", items, "--resume"});
    EXPECT_EQ(result.exit_code, 1) << result.err;
    EXPECT_EQ(Content(items), expected) << kept;
    EXPECT_FALSE(std::filesystem::exists(items + ".part"));
  }
  // Of other options, it is not.
  std::ofstream(items + ".part", std::ios::binary) << journal;
  RunAssay({"lesson", lesson, "--static", "--select", "line-ends", "--items",
            items, "--resume"});
  EXPECT_NE(Content(items), expected);
  EXPECT_THAT(Content(items), Not(HasSubstr("commented")));
  std::filesystem::remove(items);
  std::filesystem::remove(whole);
}

TEST(Lesson, RefusesWhatItCannotDo) {
  EXPECT_EQ(RunAssay({"lesson", "/nowhere/at.pgn"}).exit_code, 3);
  EXPECT_EQ(RunAssay({"lesson"}).exit_code, 2);
  EXPECT_EQ(RunAssay({"lesson", "-", "--resume"}).exit_code, 2);
  EXPECT_EQ(RunAssay({"lesson", "-", "--select", "all"}).exit_code, 2);
  EXPECT_EQ(RunAssay({"explain", "-", "--handout", "x"}).exit_code, 2);
}

TEST(ProofreadCommand, HasFindingsOrNone) {
  const ProgramResult none = RunAssay({"proofread", "-"}, "1. e4 e5 1-0\n");
  EXPECT_EQ(none.exit_code, 0);
  EXPECT_EQ(none.out, "Nothing found.\n");
  const ProgramResult some = RunAssay({"proofread", "-"}, kLesson);
  EXPECT_EQ(some.exit_code, 1);
  EXPECT_THAT(some.out, HasSubstr(": a move that is not legal\n"));
  EXPECT_THAT(some.out, Not(HasSubstr("illegal_move")));
  const ProgramResult json =
      RunAssay({"proofread", "-", "--format", "json"}, kLesson);
  EXPECT_THAT(json.out, HasSubstr("\"kind\":\"illegal_move\""));
}

TEST(FindCommand, PrintsGamesOrEpd) {
  const std::string lesson = TemporaryFile(kLesson);
  const ProgramResult games =
      RunAssay({"find", lesson, "centre=fixed", "move=white"});
  EXPECT_EQ(games.exit_code, 1);  // of the faulty game
  EXPECT_THAT(games.out, HasSubstr("[SetUp \"1\"]"));
  EXPECT_THAT(games.out, HasSubstr("Found in game 1, after 4... exd5."));
  const ProgramResult epd =
      RunAssay({"find", lesson, "centre=fixed", "--format", "epd"});
  EXPECT_THAT(epd.out, HasSubstr("id \"game 1, after 4... exd5\";"));
  // The first of a run alone, or each of them.
  const ProgramResult each = RunAssay(
      {"find", lesson, "centre=fixed", "--format", "epd", "--every-hit"});
  EXPECT_GT(each.out.size(), epd.out.size());
  EXPECT_EQ(RunAssay({"find", lesson, "centre=locked"}).exit_code, 2);
  EXPECT_EQ(RunAssay({"find", lesson}).exit_code, 2);
}

TEST(FindCommand, IsToldInGerman) {
  const std::string lesson = TemporaryFile(kLesson);
  const ProgramResult games =
      RunAssay({"find", lesson, "centre=fixed", "--language", "de"});
  EXPECT_THAT(games.out, HasSubstr("{Gefunden in Partie 1, nach 4... exd5.}"));
  const ProgramResult epd = RunAssay(
      {"find", lesson, "centre=fixed", "--language", "de", "--format", "epd"});
  EXPECT_THAT(epd.out, HasSubstr("id \"Partie 1, nach 4... exd5\";"));
  // Conditions are written as ever, and find the same.
  const ProgramResult english =
      RunAssay({"find", lesson, "centre=fixed", "--format", "epd"});
  EXPECT_EQ(std::count(english.out.begin(), english.out.end(), '\n'),
            std::count(epd.out.begin(), epd.out.end(), '\n'));
}

// A player who moves the pawns before the own king, six times.
std::string StormGames() {
  std::string pgn;
  for (int i = 0; i < 6; ++i) {
    pgn +=
        "[White \"Storm, Ina\"]\n[Black \"Quiet, Bo\"]\n\n1. e4 e5 2. Nf3 Nc6 "
        "3. Bc4 Bc5 4. c3 Nf6 5. d3 d6 6. O-O O-O 7. h3 h6 8. g4 a6 9. Kh2 "
        "Ba7 10. Kg3 Be6 11. h4 Qd7 *\n\n";
  }
  return TemporaryFile(pgn);
}

TEST(StudentCommand, IsToldInGerman) {
  const std::string games = StormGames();
  const std::vector<std::string> command = {"student", games,        "--name",
                                            "Storm",   "--language", "de"};
  const ProgramResult text = RunAssay(command);
  EXPECT_EQ(text.exit_code, 0) << text.err;
  EXPECT_THAT(text.out, StartsWith("Storm: 6 Partien, "));
  EXPECT_THAT(text.out, HasSubstr("10. Kg3 kostet hier "));
  const std::regex english(
      "\\b(moves?|times|between|games?|after|costs|pawns?|centre|where|such)"
      "\\b",
      std::regex::icase);
  EXPECT_FALSE(std::regex_search(text.out, english)) << text.out;
  const std::string sheet = games + ".html";
  std::vector<std::string> to_sheet = command;
  to_sheet.insert(to_sheet.end(), {"--handout", sheet, "--paper", "a4"});
  EXPECT_EQ(RunAssay(to_sheet).exit_code, 0);
  const std::string page = Content(sheet);
  EXPECT_THAT(page, HasSubstr("<html lang=\"de\">"));
  EXPECT_THAT(page, HasSubstr("@page { size: A4; }"));
  EXPECT_THAT(WithoutMarkup(page), HasSubstr("Partien von Storm"));
  EXPECT_THAT(WithoutMarkup(page), Not(HasSubstr(" moves")));
  std::filesystem::remove(sheet);
}

// A sheet says what it is to be printed on where that is asked for. PDF has
// sizes in points, 72 to the inch: of 210 by 297 mm (ISO 216), and of 8.5 by 11
// inches.
TEST(Lesson, IsPrintedOnThePaperAskedFor) {
  const std::string lesson = TemporaryFile("1. e4 {Centre.} e5 *\n");
  const std::string page = lesson + ".html";
  const std::string pdf = lesson + ".pdf";
  struct Sheet {
    const char* paper;
    const char* rule;
    const char* box;
  };
  for (const Sheet& sheet :
       {Sheet{"a4", "size: A4;", "[0 0 594.9"},
        Sheet{"letter", "size: letter;", "[0 0 612 792]"}}) {
    const ProgramResult result =
        RunAssay({"lesson", lesson, "--static", "--handout", page, "--paper",
                  sheet.paper});
    EXPECT_EQ(result.exit_code, 0) << result.err;
    EXPECT_THAT(Content(page), HasSubstr(sheet.rule));
    const ProgramResult printed = RunAssay(
        {"lesson", lesson, "--static", "--pdf", pdf, "--paper", sheet.paper});
    if (printed.err.find("no browser") != std::string::npos) continue;
    EXPECT_EQ(printed.exit_code, 0) << printed.err;
    EXPECT_THAT(Content(pdf), HasSubstr(sheet.box));
  }
  RunAssay({"lesson", lesson, "--static", "--handout", page});
  EXPECT_THAT(Content(page), Not(HasSubstr("size: A4")));
  std::filesystem::remove(page);
  std::filesystem::remove(pdf);
  EXPECT_EQ(RunAssay({"lesson", lesson, "--paper", "a4"}).exit_code, 2);
  EXPECT_EQ(RunAssay({"lesson", lesson, "--handout", page, "--paper", "legal"})
                .exit_code,
            2);
}

TEST(StudentCommand, ToldInTextJsonAndHtml) {
  const std::string games = StormGames();
  const ProgramResult text = RunAssay({"student", games, "--name", "Storm"});
  EXPECT_EQ(text.exit_code, 0);
  EXPECT_THAT(text.out, StartsWith("Storm: 6 games"));
  const ProgramResult json =
      RunAssay({"student", games, "--name", "Storm", "--format", "json"});
  EXPECT_THAT(json.out, HasSubstr("\"games\":6"));
  const std::string sheet = games + ".html";
  RunAssay({"student", games, "--name", "Storm", "--handout", sheet});
  EXPECT_THAT(Content(sheet), StartsWith("<!DOCTYPE html>"));
  std::filesystem::remove(sheet);
  EXPECT_EQ(RunAssay({"student", games}).exit_code, 2);
  EXPECT_EQ(RunAssay({"student", games, "--name", "Nobody"}).exit_code, 2);
}

}  // namespace
}  // namespace assay
