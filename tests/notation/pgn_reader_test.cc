// What the reader makes of sound PGN: tags, moves, variations, comments, NAGs,
// results, encodings and line ends.
#include "assay/notation/pgn_reader.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <memory>
#include <string>
#include <vector>

#include "assay/notation/fen.h"
#include "assay/notation/nag.h"
#include "assay/notation/pgn_writer.h"
#include "assay/notation/san.h"
#include "tests/support/printers.h"

namespace assay {
namespace {

std::vector<PgnItem> ReadAll(std::string_view text) {
  PgnReader reader(text);
  std::vector<PgnItem> items;
  while (std::optional<PgnItem> item = reader.Next()) {
    EXPECT_TRUE(item->ok()) << item->status().message();
    items.push_back(std::move(*item));
  }
  return items;
}

GameTree ReadOne(std::string_view text) {
  std::vector<PgnItem> items = ReadAll(text);
  EXPECT_EQ(items.size(), 1U) << text;
  return items.empty() ? GameTree() : std::move(items[0].tree);
}

std::string MainLine(const GameTree& tree) {
  std::string line;
  const std::vector<NodeIndex> nodes = tree.MainLine();
  if (nodes.empty()) return line;
  for (const std::string& san : ToSan(tree.start, tree.MovesTo(nodes.back()))) {
    line += (line.empty() ? "" : " ") + san;
  }
  return line;
}

TEST(PgnReader, ReadsTheHeadersExample) {
  const GameTree tree = ReadOne("1. e4 $1 {King's pawn.} (1. d4 d5) 1... e5");
  ASSERT_EQ(tree.nodes.size(), 6U);
  EXPECT_TRUE(tree.nodes[0].starts_line);
  EXPECT_EQ(tree.nodes[0].next, 1);
  EXPECT_EQ(tree.nodes[1].next, 5);
  EXPECT_EQ(tree.nodes[1].nags, std::vector<std::uint8_t>{1});
  ASSERT_EQ(tree.nodes[1].comments.size(), 1U);
  EXPECT_EQ(tree.nodes[1].comments[0].text, "King's pawn.");
  EXPECT_EQ(tree.nodes[1].variations, std::vector<NodeIndex>{2});
  EXPECT_TRUE(tree.nodes[2].starts_line);
  EXPECT_EQ(tree.nodes[2].parent, 0);
  EXPECT_EQ(tree.nodes[4].parent, 3);
  EXPECT_EQ(tree.nodes[5].parent, 1);
  EXPECT_EQ(ToFen(tree.PositionAfter(4)),
            "rnbqkbnr/ppp1pppp/8/3p4/3P4/8/PPP1PPPP/RNBQKBNR w KQkq - 0 2");
}

TEST(PgnReader, PositionAtPly) {
  const GameTree tree = ReadOne("1. e4 e5 2. Nf3 *");
  EXPECT_EQ(*tree.PositionAtPly(0), Position::Initial());
  EXPECT_EQ(ToFen(*tree.PositionAtPly(3)),
            "rnbqkbnr/pppp1ppp/8/4p3/4P3/5N2/PPPP1PPP/RNBQKB1R b KQkq - 1 2");
  EXPECT_FALSE(tree.PositionAtPly(4).has_value());
  EXPECT_FALSE(tree.PositionAtPly(-1).has_value());
}

TEST(PgnReader, WalksInTheOrderOfTheText) {
  const GameTree tree = ReadOne("1. e4 (1. d4 d5 (1... f5)) (1. c4) 1... e5 *");
  std::string seen;
  WalkTree(tree, [&seen](const TreeStep& step) {
    seen += step.node.starts_line ? "/" : ToSan(step.before, step.node.move);
    seen += std::to_string(step.depth) + std::to_string(step.ply) + ' ';
  });
  EXPECT_EQ(seen, "/00 e401 /10 d411 d512 /21 f522 /10 c411 e502 ");
}

// PGN standard of 1994, 8.2.6: the four terminators.
TEST(PgnReader, AllFourTerminators) {
  const std::vector<PgnItem> items =
      ReadAll("1. e4 1-0\n\n1. e4 0-1\n\n1. e4 1/2-1/2\n\n1. e4 *\n");
  ASSERT_EQ(items.size(), 4U);
  EXPECT_EQ(items[0].tree.result, GameResult::kWhiteWins);
  EXPECT_EQ(items[1].tree.result, GameResult::kBlackWins);
  EXPECT_EQ(items[2].tree.result, GameResult::kDraw);
  EXPECT_EQ(items[3].tree.result, GameResult::kUnknown);
  EXPECT_EQ(items[3].place.line, 7U);
}

TEST(PgnReader, GamesWithoutMovesAndTagsOnOneLine) {
  const std::vector<PgnItem> items = ReadAll(
      "[Event \"A\"][Result \"1-0\"] 1-0\n*\n[Event \"B\"] [Site \"C\"]\n"
      "1.e4 e5*[Event \"D\"]1/2-1/2");
  ASSERT_EQ(items.size(), 4U);
  EXPECT_EQ(*items[0].tree.Tag("Event"), "A");
  EXPECT_TRUE(items[1].tree.tags.empty());
  EXPECT_EQ(MainLine(items[2].tree), "e4 e5");
  EXPECT_EQ(*items[3].tree.Tag("Event"), "D");
  EXPECT_EQ(items[3].tree.result, GameResult::kDraw);
}

// The result is the tag's where the terminator is missing.
TEST(PgnReader, MissingTerminatorTakesTheTagsResult) {
  const GameTree tree = ReadOne("[Result \"0-1\"]\n\n1. e4 e5");
  EXPECT_EQ(tree.result, GameResult::kBlackWins);
  ASSERT_EQ(tree.remarks.size(), 1U);
  EXPECT_EQ(tree.remarks[0].reason, "no terminator");
}

// Standard, 7: backslash quotes a quote and itself in strings.
TEST(PgnReader, EscapesInTagValues) {
  const GameTree tree = ReadOne(
      "[Event \"A \\\"big\\\" \\\\ open\"]\n[Site \"back\\slash\"]\n"
      "[ White\t\"[x]\" ]\n[Black\n\"{y};%\"]\n*");
  EXPECT_EQ(*tree.Tag("Event"), "A \"big\" \\ open");
  EXPECT_EQ(*tree.Tag("Site"), "back\\slash");
  EXPECT_EQ(*tree.Tag("White"), "[x]");
  EXPECT_EQ(*tree.Tag("Black"), "{y};%");
  EXPECT_EQ(tree.Tag("Round"), nullptr);
}

// Standard, 5: both kinds of comments; neither nests the other.
TEST(PgnReader, CommentsOfBothKindsByteForByte) {
  const GameTree tree =
      ReadOne("1. e4 { a  ; {\r\n\tb } e5 ; to } the {end} \r\n2. Nf3 {} ;\n*");
  ASSERT_EQ(tree.nodes.size(), 4U);
  EXPECT_EQ(tree.nodes[1].comments[0].text, " a  ; {\r\n\tb ");
  EXPECT_EQ(tree.nodes[1].comments[0].kind, PgnComment::Kind::kBraces);
  EXPECT_EQ(tree.nodes[2].comments[0].text, " to } the {end} ");
  EXPECT_EQ(tree.nodes[2].comments[0].kind, PgnComment::Kind::kToLineEnd);
  ASSERT_EQ(tree.nodes[3].comments.size(), 2U);
  EXPECT_EQ(tree.nodes[3].comments[0].text, "");
  EXPECT_EQ(tree.nodes[3].comments[1].text, "");
}

TEST(PgnReader, CommentsKnowTheVariationsBeforeThem) {
  const GameTree tree =
      ReadOne("1. e4 {a} ({b} 1. d4 {c}) {d} (1. c4) {e} {f} 1... e5 *");
  const std::vector<PgnComment>& comments = tree.nodes[1].comments;
  ASSERT_EQ(comments.size(), 4U);
  EXPECT_EQ(comments[0].after_variations, 0U);
  EXPECT_EQ(comments[1].after_variations, 1U);
  EXPECT_EQ(comments[2].after_variations, 2U);
  EXPECT_EQ(comments[3].text, "f");
  EXPECT_EQ(tree.nodes[2].comments[0].text, "b");
  EXPECT_EQ(tree.nodes[3].comments[0].text, "c");
}

TEST(PgnReader, CommentsAroundGames) {
  const std::vector<PgnItem> items = ReadAll(
      "{file}\n[Event \"A\"]\n{start} 1. e4 1-0 {same line} ; too\n"
      "{before B}\n[Event \"B\"]\n\n1. d4 *\n\n{last} ; of all\n");
  ASSERT_EQ(items.size(), 2U);
  const GameTree& a = items[0].tree;
  const GameTree& b = items[1].tree;
  EXPECT_EQ(a.heading[0].text, "file");
  EXPECT_EQ(a.nodes[0].comments[0].text, "start");
  ASSERT_EQ(a.closing.size(), 2U);
  EXPECT_EQ(a.closing[1].text, " too");
  ASSERT_EQ(b.heading.size(), 1U);
  EXPECT_EQ(b.heading[0].text, "before B");
  ASSERT_EQ(b.closing.size(), 2U);
  EXPECT_EQ(b.closing[1].text, " of all");
}

// Standard, 6: "%" in the first column, and only there.
TEST(PgnReader, EscapeLines) {
  const GameTree tree = ReadOne(
      "% 1. d4 *\n[Event \"A\"]\n%[Event \"B\"]\n\n1. e4\n%{ never closed\n"
      "e5 {a\n%kept} *");
  EXPECT_EQ(tree.tags.size(), 1U);
  EXPECT_EQ(MainLine(tree), "e4 e5");
  EXPECT_EQ(tree.nodes[2].comments[0].text, "a\n%kept");
}

// Standard, 8.2.3.8 and 10: suffix marks are NAGs 1 to 6.
TEST(PgnReader, SuffixMarksAreNags) {
  const GameTree tree =
      ReadOne("1. e4! e5? 2. Nf3!! Nc6?? 3. Bb5!? a6?! 4. Ba4 ! Nf6 !? $10 *");
  const std::vector<std::vector<std::uint8_t>> expected = {
      {1}, {2}, {3}, {4}, {5}, {6}, {1}, {5, 10}};
  for (std::size_t i = 0; i < expected.size(); ++i) {
    EXPECT_EQ(tree.nodes[i + 1].nags, expected[i]) << i;
  }
  EXPECT_EQ(NagMeaning(5), "speculative move");
}

TEST(PgnReader, SignsAndWordsAreNags) {
  const GameTree tree = ReadOne(
      "1. e4 = e5 +/= 2. Nf3 =+ Nc6 +- 3. Bb5 -/+ a6 inf 4. Ba4 N Nf6 RR ~ *");
  EXPECT_EQ(tree.nodes[1].nags[0], 10);
  EXPECT_EQ(tree.nodes[2].nags[0], 14);
  EXPECT_EQ(tree.nodes[3].nags[0], 15);
  EXPECT_EQ(tree.nodes[4].nags[0], 18);
  EXPECT_EQ(tree.nodes[5].nags[0], 17);
  EXPECT_EQ(tree.nodes[6].nags[0], 13);
  EXPECT_EQ(tree.nodes[7].nags[0], 146);
  EXPECT_EQ(tree.nodes[8].nags, (std::vector<std::uint8_t>{145, 13}));
}

TEST(PgnReader, NagsBeforeTheFirstMoveOfALine) {
  const GameTree tree = ReadOne("$13 1. e4 ($14 1. d4) *");
  EXPECT_EQ(tree.nodes[0].nags[0], 13);
  EXPECT_EQ(tree.nodes[2].nags[0], 14);
}

TEST(PgnReader, VariationsWithoutMoves) {
  const GameTree tree = ReadOne("1. e4 () ({see}) e5 *");
  ASSERT_EQ(tree.nodes[1].variations.size(), 2U);
  EXPECT_EQ(tree.nodes[2].next, kNoNode);
  EXPECT_EQ(tree.nodes[3].comments[0].text, "see");
}

TEST(PgnReader, VariationsToTheStatedDepth) {
  std::string text = "1. e4 ";
  for (int i = 0; i < 64; ++i) text += "(1. d4 (1. e4 ";
  text += std::string(128, ')') + " e5 *";
  EXPECT_EQ(ReadOne(text).nodes.size(), 2U + 128U * 2U + 1U);
}

// Import format (standard, 3.1 and 8.2.2.1) lets numbers and marks be absent.
TEST(PgnReader, LenientMoves) {
  const std::string expected = "e4 e5 Nf3 Nc6 Bb5 a6 O-O Nf6 Re1 Be7";
  for (const char* text :
       {"e4 e5 Nf3 Nc6 Bb5 a6 O-O Nf6 Re1 Be7 *",
        "1.e4 e5 2.Nf3 Nc6 3.Bb5 a6 4.O-O Nf6 5.Re1 Be7*",
        "1 e4 1... e5 2 . Nf3 2 ... Nc6 3. Bb5+ a6# 4. 0-0 Nf6 5. Rfe1 Be7 *",
        "1. e2-e4 e7e5 2. Ng1f3 Nb8-c6 3. f1b5 Pa6 4. o-o Nf6 5. Rf1e1 f8e7 "
        "*"}) {
    EXPECT_EQ(MainLine(ReadOne(text)), expected) << text;
  }
}

TEST(PgnReader, EnPassantMayBeSaid) {
  for (const char* text :
       {"1. e4 a6 2. e5 d5 3. exd6 *", "1. e4 a6 2. e5 d5 3. exd6 e.p. *",
        "1. e4 a6 2. e5 d5 3. exd6e.p. *"}) {
    EXPECT_EQ(MainLine(ReadOne(text)), "e4 a6 e5 d5 exd6") << text;
  }
}

TEST(PgnReader, Passes) {
  const GameTree tree = ReadOne("1. e4 -- 2. d4 Z0 3. Nf3 *");
  EXPECT_EQ(MainLine(tree), "e4 -- d4 -- Nf3");
  EXPECT_TRUE(tree.nodes[2].move.is_null());
  EXPECT_FALSE(tree.nodes[2].starts_line);
}

// Standard, 9.7: SetUp and FEN.
TEST(PgnReader, SetUpPosition) {
  const GameTree tree = ReadOne(
      "[SetUp \"1\"]\n[FEN \"4k3/8/8/4K3/4P3/8/8/8 b - - 3 40\"]\n\n"
      "40... Kd7 41. Kf6 1-0");
  EXPECT_TRUE(tree.remarks.empty());
  EXPECT_EQ(tree.start.side_to_move(), Side::kBlack);
  EXPECT_EQ(ToFen(*tree.PositionAtPly(2)), "8/3k4/5K2/8/4P3/8/8/8 b - - 5 41");
}

TEST(PgnReader, LineEndsOfAllKindsAndMixed) {
  const std::string expected = "e4 e5 Nf3";
  for (const char* text :
       {"[Event \"A\"]\n\n1. e4 ; c\ne5\n2. Nf3 *\n",
        "[Event \"A\"]\r\n\r\n1. e4 ; c\r\ne5\r\n2. Nf3 *\r\n",
        "[Event \"A\"]\r\r1. e4 ; c\re5\r2. Nf3 *\r",
        "[Event \"A\"]\r\n\n1. e4 ; c\re5\n2. Nf3\r\n*"}) {
    const GameTree tree = ReadOne(text);
    EXPECT_EQ(MainLine(tree), expected);
    EXPECT_EQ(tree.nodes[1].comments[0].text, " c");
  }
  PgnReader reader{std::string_view("\r\n\r\n\n\r1. e4\r\nBAD *")};
  EXPECT_EQ(reader.Next()->faults[0].place.line, 6U);
}

TEST(PgnReader, ByteOrderMarks) {
  const std::vector<PgnItem> items = ReadAll(
      "\xEF\xBB\xBF[Event \"A\"]\n\n1. e4 *\n\xEF\xBB\xBF[Event \"B\"]\n*\n");
  ASSERT_EQ(items.size(), 2U);
  EXPECT_EQ(*items[1].tree.Tag("Event"), "B");
}

TEST(PgnReader, EncodingsAreFoundAndBytesKept) {
  const GameTree utf8 = ReadOne("[White \"M\xC3\xBCller\"]\n\n1. e4 *");
  EXPECT_EQ(utf8.encoding, PgnEncoding::kUtf8);
  const GameTree latin1 = ReadOne("[White \"M\xFCller\"]\n\n1. e4 {\xE9} *");
  EXPECT_EQ(latin1.encoding, PgnEncoding::kLatin1);
  EXPECT_EQ(*latin1.Tag("White"), "M\xFCller");
  EXPECT_EQ(ToUtf8(*latin1.Tag("White"), latin1.encoding), "M\xC3\xBCller");
  // A character cut in two makes the text Latin-1, and nothing is lost.
  const GameTree cut = ReadOne("1. e4 {\xE2\x99} e5 *");
  EXPECT_EQ(cut.encoding, PgnEncoding::kLatin1);
  EXPECT_EQ(cut.nodes[1].comments[0].text, "\xE2\x99");
}

TEST(PgnText, Utf8) {
  EXPECT_TRUE(
      IsUtf8("plain ASCII text \xC3\xA9 \xE2\x99\x98 \xF0\x9F\x99\x82"));
  EXPECT_FALSE(IsUtf8("\x80"));
  EXPECT_FALSE(IsUtf8("\xC3"));
  EXPECT_FALSE(IsUtf8("\xC0\x80"));          // not the shortest form
  EXPECT_FALSE(IsUtf8("\xED\xA0\x80"));      // a surrogate
  EXPECT_FALSE(IsUtf8("\xF4\x90\x80\x80"));  // beyond U+10FFFF
  EXPECT_EQ(CountCharacters("\xC3\xA9t\xC3\xA9", PgnEncoding::kUtf8), 3U);
  EXPECT_EQ(CountCharacters("\xC3\xA9t\xC3\xA9", PgnEncoding::kLatin1), 5U);
}

TEST(PgnReader, UsualVariantNames) {
  for (const char* name : {"Standard", "Regular", "chess", "From Position"}) {
    ReadOne("[Variant \"" + std::string(name) + "\"]\n\n1. e4 *");
  }
}

// Whatever the sizes of the pieces that a source hands out.
TEST(PgnReader, PiecesOfAnySize) {
  const std::string text =
      "{h}\n[Event \"A\"]\n\n1. e4 {comment} (1. d4 d5 $1) 1... e5! ; x\n*\n"
      "%escape\n[Event \"B\"]\r\n\r\n1. Nf3 Nf6 1/2-1/2";
  const std::vector<PgnItem> expected = ReadAll(text);
  for (std::size_t piece = 1; piece < 40; ++piece) {
    std::size_t at = 0;
    PgnReader reader([&](char* to, std::size_t size) {
      const std::size_t count = std::min({piece, size, text.size() - at});
      std::copy_n(text.data() + at, count, to);
      at += count;
      return count;
    });
    for (const PgnItem& item : expected) {
      const std::optional<PgnItem> read = reader.Next();
      ASSERT_TRUE(read.has_value());
      ASSERT_TRUE(read->tree == item.tree) << piece;
      ASSERT_EQ(read->place.line, item.place.line);
    }
    ASSERT_FALSE(reader.Next().has_value());
    ASSERT_FALSE(reader.Next().has_value());
  }
}

// A reader may be moved between games, what it has looked at ahead included.
TEST(PgnReader, IsMovable) {
  std::string text;
  for (int i = 0; i < 5; ++i) text += "[White \"W\"]\n\n1. e4 1-0\n\n{c}\n";
  std::size_t at = 0;
  auto reader = std::make_unique<PgnReader>([&](char* to, std::size_t size) {
    const std::size_t count =
        std::min({std::size_t{7}, size, text.size() - at});
    std::copy_n(text.data() + at, count, to);
    at += count;
    return count;
  });
  for (int i = 0; i < 5; ++i) {
    const std::optional<PgnItem> item = reader->Next();
    ASSERT_TRUE(item.has_value());
    ASSERT_NE(item->tree.Tag("White"), nullptr);
    reader = std::make_unique<PgnReader>(std::move(*reader));
  }
  EXPECT_FALSE(reader->Next().has_value());
}

// A file of any size needs the memory of one game: the buffer stays small.
TEST(PgnInput, WindowStaysSmall) {
  std::size_t asked = 0;
  std::size_t most = 0;
  PgnReader reader([&](char* to, std::size_t size) {
    most = std::max(most, size);
    constexpr std::string_view kGame =
        "[Event \"A\"]\n\n1. e4 e5 *\n\n\n\n\n\n";
    if (asked >= 50'000'000) return std::size_t{0};
    std::size_t count = 0;
    while (count + kGame.size() <= size) {
      std::copy(kGame.begin(), kGame.end(), to + count);
      count += kGame.size();
    }
    asked += count;
    return count;
  });
  std::size_t games = 0;
  while (reader.Next().has_value()) ++games;
  EXPECT_GT(games, 1'000'000U);
  EXPECT_LE(most, 2 * PgnInput::kChunkBytes);
}

}  // namespace
}  // namespace assay
