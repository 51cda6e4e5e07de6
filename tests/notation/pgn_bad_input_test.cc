// Files with faults: what is said of each, where, and that the games before
// and after it are read as if it were not there.
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cstring>
#include <random>
#include <string>
#include <vector>

#include "assay/base/problem_status.h"
#include "assay/notation/pgn_limits.h"
#include "assay/notation/pgn_reader.h"
#include "assay/notation/pgn_skimmer.h"
#include "assay/notation/pgn_writer.h"
#include "tests/support/printers.h"
#include "tests/support/random_game.h"

namespace assay {
namespace {

constexpr char kBefore[] =
    "[Event \"Before\"]\n[Result \"1-0\"]\n\n1. e4 {fine} e5 2. Nf3 1-0\n\n";
constexpr char kAfter[] =
    "[Event \"After\"]\n[Result \"0-1\"]\n\n1. d4 {fine} d5 (1... f5) 0-1\n";

std::string Repeat(const std::string& text, std::size_t times) {
  std::string all;
  for (std::size_t i = 0; i < times; ++i) all += text;
  return all;
}

// The game between the two good ones.
struct Row {
  const char* name;
  std::string text;
  std::string field;
  std::string reason;
  std::size_t nodes = 0;  // read before the fault, the start among them
  bool remark = false;    // a remark, not a fault
  std::size_t items = 1;  // games that are read between the good ones
};

std::vector<Row> Rows() {
  const std::string tags = "[Event \"Bad\"]\n\n";
  std::vector<Row> rows;
  const auto fault = [&](const char* name, const std::string& text,
                         const char* field, const char* reason,
                         std::size_t nodes, std::size_t items = 1) {
    rows.push_back({name, text, field, reason, nodes, false, items});
  };
  // The text comes after a tag section.
  const auto moves = [&](const char* name, const std::string& text,
                         const char* field, const char* reason,
                         std::size_t nodes) {
    fault(name, tags + text + "\n\n", field, reason, nodes);
  };
  const auto remark = [&](const char* name, const std::string& text,
                          const char* field, const char* reason,
                          std::size_t nodes, std::size_t items = 1) {
    rows.push_back({name, text + "\n\n", field, reason, nodes, true, items});
  };

  // Comments.
  moves("CommentNotClosed", "1. e4 {open e5 1-0", "comment", "not closed", 2);
  moves("CommentNotClosedInVariation", "1. e4 e5 (1... c5 {open) 1-0",
        "comment", "not closed", 5);
  moves("CommentNotClosedBeforeMoves", "{open 1. e4 e5 1-0", "comment",
        "not closed", 1);
  moves("CommentOpenedTwice", "1. e4 {one {two} e5} 1-0", "movetext",
        "unexpected text", 3);
  moves("CommentNested", "1. e4 {a {b} c} e5 1-0", "move", "not a move", 2);
  moves("RightBraceAlone", "1. e4 } e5 1-0", "movetext", "unexpected text", 2);
  moves("CommentTooLong",
        "1. e4 {" + std::string(kMostPgnCommentBytes + 1, 'x') + "} e5 1-0",
        "comment", "too long", 2);
  moves("LineCommentTooLong",
        "1. e4 ;" + std::string(kMostPgnCommentBytes + 1, 'x') + "\ne5 1-0",
        "comment", "too long", 2);
  moves("CommentsTooMany",
        "1. e4 " + Repeat("{}", kMostPgnComments + 1) + " e5 1-0", "comment",
        "too many", 2);
  moves("CommentBytesTooMany",
        "1. e4 " +
            Repeat('{' + std::string(kMostPgnCommentBytes, 'x') + '}', 17) +
            " e5 1-0",
        "comment", "too many bytes", 2);

  // Moves.
  moves("MoveIllegal", "1. e4 e5 2. Ke3 Nf6 1-0", "move", "illegal move", 3);
  moves("MoveIllegalPawn", "1. e5 1-0", "move", "illegal move", 1);
  moves("MoveIllegalCoordinates", "1. e2e5 1-0", "move", "illegal move", 1);
  moves("MoveOfOtherSide", "1. e4 2. Nf3 1-0", "move", "illegal move", 2);
  moves("MoveLeavesCheck", "1. e4 f6 2. d4 g5 3. Qh5+ a6 1-0", "move",
        "illegal move", 6);
  moves("MoveOfPinnedPiece", "1. e4 e5 2. d4 Bb4+ 3. Nc3 a6 4. Nd5 1-0", "move",
        "illegal move", 7);
  moves("MoveAfterMate", "1. f3 e5 2. g4 Qh4# 3. a3 0-1", "move",
        "illegal move", 5);
  moves("MoveAmbiguous", "1. Nf3 a6 2. d3 a5 3. Nd2 1-0", "move",
        "ambiguous move", 5);
  moves("MoveAmbiguousInVariation", "1. Nf3 a6 2. d3 a5 3. e4 (3. Nd2 h6) 1-0",
        "move", "ambiguous move", 7);
  moves("MoveIllegalInVariation", "1. e4 e5 (1... e4 2. d4) 2. Nf3 1-0", "move",
        "illegal move", 4);
  moves("MoveIllegalInNestedVariation",
        "1. e4 e5 (1... c5 2. Nf3 (2. Nc3 Ke5)) 1-0", "move", "illegal move",
        8);
  moves("MoveCastlesTooEarly", "1. e4 e5 2. O-O 1-0", "move", "illegal move",
        3);
  moves("MoveCastlesWithZeros", "1. e4 e5 2. 0-0-0 1-0", "move", "illegal move",
        3);
  fault("MoveWithoutPromotion",
        "[FEN \"8/4P1k1/8/8/8/8/8/4K3 w - - 0 1\"]\n[SetUp \"1\"]\n\n"
        "1. e8 1-0\n\n",
        "move", "illegal move", 1);
  fault("MovePromotesToKing",
        "[FEN \"8/4P1k1/8/8/8/8/8/4K3 w - - 0 1\"]\n[SetUp \"1\"]\n\n"
        "1. e8=K 1-0\n\n",
        "move", "not a move", 1);
  moves("MoveIsProse", "1. pawn to e4 1-0", "move", "not a move", 1);
  moves("MoveInGerman", "1. Sf3 d5 1-0", "move", "not a move", 1);
  moves("MoveOffTheBoard", "1. e9 1-0", "move", "not a move", 1);
  moves("MoveVeryLong", "1. " + std::string(10'000, 'N') + " 1-0", "move",
        "not a move", 1);
  moves("MoveWithFigurine",
        "1. \xE2\x99\x98"
        "f3 1-0",
        "movetext", "unexpected text", 1);
  moves("MoveWithSignAttached", "1. e4+- e5 1-0", "move", "not a move", 1);
  moves("PassInCheck", "1. e4 d5 2. Bb5+ -- 3. Nf3 1-0", "move",
        "pass in check", 4);
  moves("MovesTooMany",
        Repeat("Nf3 Nf6 Ng1 Ng8 ", kMostPgnNodes / 4 + 1) + "1-0", "move",
        "too many", kMostPgnNodes);

  // Variations.
  moves("VariationNotOpened", "1. e4 e5 ) 2. Nf3 1-0", "variation",
        "not opened", 3);
  moves("VariationNotOpenedAtTheEnd", "1. e4 e5 1-0 )", "variation",
        "not opened", 3);
  moves("VariationNotClosed", "1. e4 (1. d4 d5 1-0", "variation", "not closed",
        5);
  moves("VariationsNotClosed", "1. e4 (1. d4 (1. c4 1-0", "variation",
        "not closed", 6);
  moves("VariationNotClosedNorTerminated", "1. e4 (1. d4 d5", "variation",
        "not closed", 5);
  moves("VariationBeforeAnyMove", "(1. d4) 1. e4 1-0", "variation",
        "no move to replace", 1);
  moves("VariationWithinVariationStart", "1. e4 ((1. d4)) e5 1-0", "variation",
        "no move to replace", 3);
  moves("VariationTooDeep",
        "1. e4 " + Repeat("(1. d4 (1. e4 ", kMostPgnDepth / 2) + "(1. c4 " +
            Repeat(")", kMostPgnDepth + 1) + " e5 1-0",
        "variation", "nested too deep", 2 + 2 * kMostPgnDepth);
  moves("TerminatorInVariation", "1. e4 (1. d4 d5 1-0) e5 0-1", "movetext",
        "terminator in a variation", 5);
  moves("StarInVariation", "1. e4 (1. d4 *) e5 0-1", "movetext",
        "terminator in a variation", 4);

  // NAGs, marks and signs.
  moves("NagWithoutNumber", "1. e4 $ e5 1-0", "nag", "no number", 2);
  moves("NagApartFromNumber", "1. e4 $ 5 e5 1-0", "nag", "no number", 2);
  moves("NagNegative", "1. e4 $-1 e5 1-0", "nag", "no number", 2);
  moves("NagOver255", "1. e4 $256 e5 1-0", "nag", "over 255", 2);
  moves("NagHuge", "1. e4 $" + std::string(200, '9') + " e5 1-0", "nag",
        "over 255", 2);
  moves("NagsTooMany", "1. e4 " + Repeat("$1 ", kMostPgnNags + 1) + "1-0",
        "nag", "too many", 2);
  moves("NagWord", "1. e4 $good e5 1-0", "nag", "no number", 2);
  moves("MarkTooLong", "1. e4!!! e5 1-0", "mark", "not a suffix mark", 2);
  moves("MarkMixed", "1. e4?!? e5 1-0", "mark", "not a suffix mark", 2);
  moves("SignUnknown", "1. e4 +/+ e5 1-0", "movetext", "unexpected text", 2);

  // Other text among moves.
  moves("SquareBracketAmongMoves", "1. e4 [a remark] e5 1-0", "movetext",
        "unexpected text", 2);
  moves("CommandWithoutComment", "1. e4\n[%clk 0:10:00] e5 1-0", "movetext",
        "unexpected text", 2);
  moves("AngleBrackets", "1. e4 <e5> 1-0", "movetext", "unexpected text", 2);
  moves("QuoteAmongMoves", "1. e4 \"good\" e5 1-0", "movetext",
        "unexpected text", 2);
  moves("PercentInMidLine", "1. e4 %e5 1-0", "movetext", "unexpected text", 2);
  moves("NulByte", std::string("1. e4 \0 e5 1-0", 14), "movetext",
        "unexpected text", 2);
  moves("ControlByte", "1. e4 \x01 e5 1-0", "movetext", "unexpected text", 2);
  moves("Latin1AmongMoves", "1. e4 \xE9 e5 1-0", "movetext", "unexpected text",
        2);
  moves("TruncatedMultiByteText", "1. e4 \xE2\x99 e5 1-0", "movetext",
        "unexpected text", 2);
  moves("Email", "1. e4 mail@host e5 1-0", "move", "not a move", 2);

  // Results.
  moves("ResultTwoNil", "1. e4 e5 2-0", "move", "not a move", 3);
  moves("ResultOneAll", "1. e4 e5 1-1", "move", "not a move", 3);
  moves("ResultDecimal", "1. e4 e5 0.5-0.5", "move", "not a move", 3);
  moves("ResultWithLetterO", "1. e4 e5 O-1", "move", "not a move", 3);
  moves("ResultHalf", "1. e4 e5 \xC2\xBD-\xC2\xBD", "movetext",
        "unexpected text", 3);
  moves("ResultColon", "1. e4 e5 1:0", "move", "not a move", 3);
  moves("ResultDrawHalved", "1. e4 e5 1/2-0", "move", "not a move", 3);
  remark("ResultTagDiffers", "[Result \"1-0\"]\n\n1. e4 e5 0-1", "result",
         "tag differs", 3);
  remark("ResultTagNonsense", "[Result \"White\"]\n\n1. e4 e5 0-1", "result",
         "tag is no result", 3);
  remark("ResultCutShort", "[Result \"1/2-1/2\"]\n\n1. e4 e5 1/2", "result",
         "draw cut short", 3);
  remark("TerminatorMissing", tags + "1. e4 e5 2. Nf3", "result",
         "no terminator", 4);
  remark("TerminatorAndMovesMissing", "[Event \"Bad\"]\n[Site \"?\"]", "result",
         "no terminator", 1);
  remark("TerminatorMissingTwice",
         tags + "1. e4 e5\n\n[Event \"Bad\"]\n\n1. d4 d5 2. c4", "result",
         "no terminator", 3, 2);
  remark("TagsAmongMoves", tags + "1. e4 e5\n[Site \"Here\"]\n2. Nf3 1-0",
         "result", "no terminator", 3, 2);

  // Tags.
  const std::string rest = "[Site \"Here\"]\n\n1. e4 e5 1-0\n\n";
  fault("TagWithoutName", "[\"Bad\"]\n" + rest, "tag", "no name", 3);
  fault("TagEmpty", "[]\n" + rest, "tag", "no name", 3);
  fault("TagNameOdd", "[%~<|> \"Bad\"]\n" + rest, "tag", "no name", 3);
  fault("TagNameTooLong", '[' + std::string(256, 'x') + " \"Bad\"]\n" + rest,
        "tag", "name too long", 3);
  fault("TagWithoutValue", "[Event]\n" + rest, "tag", "no value", 3);
  fault("TagWithoutQuotes", "[Event Bad]\n" + rest, "tag", "no value", 3);
  fault("TagQuoteNotClosed", "[Event \"Bad]\n" + rest, "tag",
        "value not closed", 3);
  fault("TagValueOverTwoLines", "[Event \"Bad\nthing\"]\n" + rest, "tag",
        "value not closed", 3);
  fault("TagQuoteNotEscaped", "[Event \"A \"bad\" one\"]\n" + rest, "tag",
        "not closed", 3);
  fault("TagBracketMissing", "[Event \"Bad\"\n" + rest, "tag", "not closed", 3);
  fault("TagValueTooLong",
        "[Event \"" + std::string(kMostPgnTagValueBytes + 1, 'x') + "\"]\n" +
            rest,
        "tag", "value too long", 3);
  fault("TagValueHuge",
        "[Event \"" + std::string(200'000, 'x') + "\"]\n" + rest, "tag",
        "value too long", 3);
  fault("TagsTooMany",
        Repeat("[Event \"Bad\"]\n", kMostPgnTags + 10) + "\n1. e4 e5 1-0\n\n",
        "tag", "too many", 3);
  fault("TagBracketMissingInFront", "Event \"Bad\"]\n\n1. e4 1-0\n\n", "move",
        "not a move", 1);
  remark("TagGivenTwice", "[Event \"Bad\"]\n[Event \"Again\"]\n\n1. e4 e5 1-0",
         "tag", "given twice", 3);

  // Set-up positions.
  const auto set_up = [](const std::string& fen) {
    return "[Event \"Bad\"]\n[SetUp \"1\"]\n[FEN \"" + fen +
           "\"]\n\n1. Kd2 1-0\n\n";
  };
  fault("FenIsProse", set_up("start position"), "fen", "wrong number of fields",
        1);
  fault("FenWithoutKing", set_up("8/8/8/8/8/8/8/4K3 w - - 0 1"), "placement",
        "no king", 1);
  fault("FenRankTooLong", set_up("4k4/8/8/8/8/8/8/4K3 w - - 0 1"), "placement",
        "wrong number of squares in rank 8", 1);
  fault("FenSideUnknown", set_up("4k3/8/8/8/8/8/8/4K3 x - - 0 1"), "side",
        "unknown side to move", 1);
  fault("FenCounterNegative", set_up("4k3/8/8/8/8/8/8/4K3 w - - -1 1"),
        "halfmove_clock", "not a whole number", 1);
  fault("SetUpWithoutFen", "[Event \"Bad\"]\n[SetUp \"1\"]\n\n1. e4 1-0\n\n",
        "setup", "no FEN", 1);
  remark("FenWithoutSetUp",
         "[Event \"Bad\"]\n[FEN \"4k3/8/8/8/8/8/8/4K3 w - - 0 1\"]\n\n"
         "1. Kd2 1-0",
         "setup", "FEN without SetUp", 2);
  remark("FenWithSetUpZero",
         "[Event \"Bad\"]\n[SetUp \"0\"]\n"
         "[FEN \"4k3/8/8/8/8/8/8/4K3 w - - 0 1\"]\n\n1. Kd2 1-0",
         "setup", "FEN with SetUp 0", 2);
  fault("VariantOther", "[Event \"Bad\"]\n[Variant \"Horde\"]\n\n1. e4 *\n\n",
        "variant", "not supported", 1);
  remark("NumberDoesNotFit", tags + "1. e4 e5 3. Nf3 1-0", "number",
         "does not fit", 4);
  return rows;
}

std::vector<PgnItem> ReadAll(PgnReader reader) {
  std::vector<PgnItem> items;
  while (std::optional<PgnItem> item = reader.Next()) {
    items.push_back(std::move(*item));
  }
  return items;
}

PgnItem ReadAlone(std::string_view text) {
  PgnReader reader(text);
  return reader.Next().value_or(PgnItem());
}

// Where the place says, the file has what the fault says was found: there, or
// in that tag pair.
void ExpectPlaceShows(const std::string& file, const PgnFault& fault) {
  const std::string& found = fault.problem.found;
  if (found.empty() || found[0] != '"') return;
  std::size_t line_at = 0;
  for (std::uint64_t line = 1; line < fault.place.line; ++line) {
    line_at = file.find('\n', line_at) + 1;
  }
  if (file[line_at] == '[' && fault.place.column == 1) {
    const std::string line =
        file.substr(line_at, file.find('\n', line_at) - line_at);
    EXPECT_NE(Quoted(line).find(
                  found.substr(1, std::min<std::size_t>(20, found.size() - 2))),
              std::string::npos)
        << "found " << found << ", but the tag is " << line;
    return;
  }
  const std::string here = file.substr(line_at + fault.place.column - 1, 60);
  const std::string quoted = Quoted(here.substr(0, 40));
  std::size_t same = 1;
  while (same < found.size() && found[same] == quoted[same]) ++same;
  EXPECT_TRUE(found[same] == '"' || same > 20)
      << "found " << found << ", but the file has " << quoted;
}

class PgnBadInput : public ::testing::TestWithParam<Row> {};

TEST_P(PgnBadInput, IsToldAndHurtsNoOtherGame) {
  const Row& row = GetParam();
  const std::string file = kBefore + row.text + kAfter;
  std::size_t at = 0;
  const std::vector<PgnItem> items =
      ReadAll(PgnReader([&](char* to, std::size_t size) {
        const std::size_t count = std::min(size, file.size() - at);
        std::copy_n(file.data() + at, count, to);
        at += count;
        return count;
      }));
  ASSERT_EQ(items.size(), row.items + 2);
  EXPECT_TRUE(items.front().ok());
  EXPECT_TRUE(items.front().tree == ReadAlone(kBefore).tree);
  EXPECT_TRUE(items.back().ok());
  EXPECT_TRUE(items.back().tree == ReadAlone(kAfter).tree);
  EXPECT_EQ(items.back().place.line,
            1U + static_cast<std::size_t>(std::count(
                     file.begin(), file.end() - std::strlen(kAfter), '\n')));

  const PgnItem& bad = items[1];
  EXPECT_EQ(bad.tree.nodes.size(), row.nodes);
  if (row.remark) {
    EXPECT_TRUE(bad.ok()) << bad.status().message();
    ASSERT_EQ(bad.tree.remarks.size(), 1U);
    const Problem& problem = bad.tree.remarks[0];
    EXPECT_EQ(problem.reason, row.reason);
    EXPECT_NE(problem.field.find(": " + row.field), std::string::npos)
        << problem.field;
  } else {
    ASSERT_FALSE(bad.ok());
    const PgnFault& fault = bad.faults[0];
    EXPECT_EQ(fault.problem.field, row.field);
    EXPECT_EQ(fault.problem.reason, row.reason);
    EXPECT_FALSE(fault.problem.expected.empty());
    EXPECT_EQ(fault.place.game, 2U);
    ExpectPlaceShows(file, fault);
    const std::string message(bad.status().message());
    EXPECT_EQ(message.find("game 2, line "), 0U) << message;
    EXPECT_LT(message.size(), 3000U);
  }
}

TEST_P(PgnBadInput, IsCutIntoTheSameGamesWithoutABoard) {
  const Row& row = GetParam();
  const std::string file = kBefore + row.text + kAfter;
  PgnSkimmer skimmer{std::string_view(file)};
  SkimmedGame game;
  std::size_t games = 0;
  while (skimmer.Next(game)) ++games;
  EXPECT_EQ(games, row.items + 2);
  EXPECT_EQ(game.place.line, 0U);
}

INSTANTIATE_TEST_SUITE_P(Table, PgnBadInput, ::testing::ValuesIn(Rows()),
                         [](const ::testing::TestParamInfo<Row>& row) {
                           return row.param.name;
                         });

void PrintTo(const Row& row, std::ostream* out) { *out << row.name; }

TEST(PgnBadInputTable, HasAtLeast80Rows) { EXPECT_GE(Rows().size(), 80U); }

TEST(PgnBadInputFiles, ManyFaultsOfOneGameAreToldAtOnce) {
  const PgnItem item = ReadAlone(
      "[\"A\"]\n[Event]\n[SetUp \"1\"]\n[FEN \"4k3/8/8/8/8/8/8/4K3 x - -\"]\n\n"
      "1. e4 1-0\n");
  EXPECT_EQ(item.faults.size(), 3U);
  EXPECT_EQ(item.faults[2].place.line, 4U);
  EXPECT_EQ(ProblemsOf(item.status()).size(), 3U);
}

TEST(PgnBadInputFiles, UnclosedCommentAtTheFilesEnd) {
  const std::vector<PgnItem> items =
      ReadAll(PgnReader(std::string_view("1. e4 {open\n\n1. d4 d5\n")));
  ASSERT_EQ(items.size(), 1U);
  EXPECT_EQ(items[0].faults[0].problem.reason, "not closed");
  EXPECT_EQ(items[0].tree.nodes.size(), 2U);
}

// The standard has a comment end at the next right brace, whatever is in it.
TEST(PgnBadInputFiles, AGameQuotedInACommentIsText) {
  const std::vector<PgnItem> items = ReadAll(PgnReader(std::string_view(
      "1. e4 {as in\n[Event \"Old\"]\n\n1. e4 e5 1-0\n} e5 1-0\n")));
  ASSERT_EQ(items.size(), 1U);
  EXPECT_TRUE(items[0].ok());
  EXPECT_EQ(items[0].tree.nodes.size(), 3U);
}

TEST(PgnBadInputFiles, Utf16IsToldOnce) {
  const std::string text("\xFF\xFE[\0E\0v\0*\0*\0", 12);
  const std::vector<PgnItem> items = ReadAll(PgnReader(std::string_view(text)));
  ASSERT_EQ(items.size(), 1U);
  EXPECT_EQ(items[0].faults[0].problem.field, "encoding");
  EXPECT_EQ(items[0].faults[0].problem.reason, "UTF-16");
}

TEST(PgnBadInputFiles, EmptyOnesHaveNoGame) {
  for (const char* text : {"", "\n \t\r\n", "\xEF\xBB\xBF", "% escaped\n",
                           "{a comment alone}", "; and another\n"}) {
    EXPECT_TRUE(ReadAll(PgnReader(std::string_view(text))).empty()) << text;
  }
}

// A source that makes text up as it goes: head, so many times body, tail.
PgnSource Generated(std::string head, std::string body, std::size_t times,
                    std::string tail) {
  return [=, text = head, at = std::size_t{0}, done = std::size_t{0}](
             char* to, std::size_t size) mutable {
    if (at == text.size()) {
      at = 0;
      text = done < times ? body : done == times ? tail : "";
      ++done;
    }
    const std::size_t count = std::min(size, text.size() - at);
    std::copy_n(text.data() + at, count, to);
    at += count;
    return count;
  };
}

void ExpectNeighboursSurvive(PgnReader reader, const char* field,
                             const char* reason) {
  const std::vector<PgnItem> items = ReadAll(std::move(reader));
  ASSERT_EQ(items.size(), 3U);
  EXPECT_TRUE(items[0].tree == ReadAlone(kBefore).tree);
  EXPECT_TRUE(items[2].tree == ReadAlone(kAfter).tree);
  ASSERT_FALSE(items[1].ok());
  EXPECT_EQ(items[1].faults[0].problem.field, field);
  EXPECT_EQ(items[1].faults[0].problem.reason, reason);
}

TEST(PgnBadInputFiles, CommentOf100Megabytes) {
  const std::string head = std::string(kBefore) + "1. e4 {";
  const std::string body(1'000'000, 'x');
  ExpectNeighboursSurvive(
      PgnReader(Generated(head, body, 100, std::string("} 1-0\n\n") + kAfter)),
      "comment", "too long");
  // Never closed: the next game is found all the same.
  ExpectNeighboursSurvive(
      PgnReader(Generated(head, body, 100, std::string("\n\n") + kAfter)),
      "comment", "too long");
}

TEST(PgnBadInputFiles, MillionNestedBrackets) {
  ExpectNeighboursSurvive(
      PgnReader(Generated(std::string(kBefore) + "1. e4 ", "(1. d4 (1. e4 ",
                          500'000, std::string(" 1-0\n\n") + kAfter)),
      "variation", "nested too deep");
  ExpectNeighboursSurvive(
      PgnReader(Generated(std::string(kBefore) + "1. e4 ", "(", 1'000'000,
                          std::string(" 1-0\n\n") + kAfter)),
      "variation", "no move to replace");
}

// Random damage to sound files: no crash, the same games with and without a
// board, and what was read can be written and read again.
TEST(PgnBadInputFiles, RandomDamage) {
  constexpr std::string_view kBytes =
      "{}()[];%$*\"\\\n\r .!?#+-0159Nxe\xEF\xFF";
  std::mt19937_64 random(11);
  for (std::uint64_t round = 0; round < 400; ++round) {
    std::string file;
    for (std::uint64_t i = 0; i < 5; ++i) {
      file += WritePgn(testing_support::RandomGame(5 * round + i),
                       PgnLayout::kAuthor)
                  .value_or("");
    }
    for (std::uint64_t i = random() % 30; i > 0; --i) {
      const std::size_t at = random() % file.size();
      switch (random() % 3) {
        case 0:
          file[at] = kBytes[random() % kBytes.size()];
          break;
        case 1:
          file.erase(at, 1 + random() % 5);
          break;
        default:
          file.insert(at, 1, kBytes[random() % kBytes.size()]);
      }
    }
    const std::vector<PgnItem> items =
        ReadAll(PgnReader(std::string_view(file)));
    PgnSkimmer skimmer{std::string_view(file)};
    SkimmedGame game;
    for (const PgnItem& item : items) {
      ASSERT_TRUE(skimmer.Next(game)) << round;
      ASSERT_EQ(game.place.line, item.place.line) << round;
      ASSERT_EQ(game.place.column, item.place.column) << round;
      const auto text = WritePgn(item.tree, PgnLayout::kAuthor);
      ASSERT_TRUE(text.ok()) << round << ": " << text.status().message();
      if (item.ok()) {
        ASSERT_EQ(ReadAlone(*text).tree.nodes.size(), item.tree.nodes.size());
      }
    }
    ASSERT_FALSE(skimmer.Next(game)) << round;
  }
}

// Time grows with the file, not with its square.
TEST(PgnBadInputFiles, ManyUnclosedCommentsAreFast) {
  std::string file = kBefore;
  file += Repeat("[Event \"Bad\"]\n1. e4 {open\n\n", 100'000);
  file += kAfter;
  const auto begin = std::chrono::steady_clock::now();
  const std::vector<PgnItem> items = ReadAll(PgnReader(std::string_view(file)));
  const auto took = std::chrono::steady_clock::now() - begin;
  EXPECT_EQ(items.size(), 100'002U);
  EXPECT_TRUE(items.back().ok());
  EXPECT_LT(took, std::chrono::seconds(20));  // half a second is usual
}

}  // namespace
}  // namespace assay
