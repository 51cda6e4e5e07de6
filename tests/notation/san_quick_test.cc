// QuickSan() against ParseSan() in random games: every legal move's SAN, and
// the same text where it is not legal.
#include "assay/notation/san_quick.h"

#include <gtest/gtest.h>

#include <random>
#include <set>
#include <string>

#include "assay/notation/san.h"
#include "assay/rules/movegen.h"
#include "tests/support/printers.h"

namespace assay {
namespace {

using testing_support::FromFen;

void ExpectAgreement(const Position& position, const std::string& text) {
  const Move quick = QuickSan(position, text);
  if (quick.is_null()) return;
  const absl::StatusOr<Move> slow = ParseSan(position, text);
  ASSERT_TRUE(slow.ok()) << text << ": " << slow.status().message();
  ASSERT_EQ(quick, *slow) << text;
}

TEST(QuickSan, ReadsEveryLegalMoveButCastling) {
  std::mt19937_64 random(1);
  std::set<std::string> texts;
  for (int game = 0; game < 60; ++game) {
    Position position = Position::Initial();
    for (int ply = 0; ply < 120; ++ply) {
      MoveList moves;
      LegalMoves(position, moves);
      if (moves.empty()) break;
      for (const Move move : moves) {
        const std::string san = ToSan(position, move);
        texts.insert(san);
        if (san[0] == 'O') {
          ASSERT_TRUE(QuickSan(position, san).is_null());
        } else {
          ASSERT_EQ(QuickSan(position, san), move) << san;
        }
      }
      position.Make(moves[random() % moves.size()]);
    }
  }
  ASSERT_GT(texts.size(), 1000U);
  // Any move's text in any position: the same answer as the full reader's, or
  // none.
  Position position = Position::Initial();
  for (int ply = 0; ply < 80; ++ply) {
    MoveList moves;
    LegalMoves(position, moves);
    if (moves.empty()) break;
    for (const std::string& text : texts) ExpectAgreement(position, text);
    position.Make(moves[random() % moves.size()]);
  }
}

struct Row {
  const char* name;
  const char* fen;
  const char* text;
  const char* move;  // coordinates; "" where QuickSan() leaves it
};

class QuickSanTable : public ::testing::TestWithParam<Row> {};

TEST_P(QuickSanTable, Reads) {
  const Position position = FromFen(GetParam().fen);
  const Move move = QuickSan(position, GetParam().text);
  EXPECT_EQ(move.is_null() ? "" : ToCoordinates(move), GetParam().move);
  ExpectAgreement(position, GetParam().text);
}

constexpr const char* kPinned = "4k3/8/8/8/1b6/2N5/8/4K1N1 w - - 0 1";

INSTANTIATE_TEST_SUITE_P(
    San, QuickSanTable,
    ::testing::Values(
        // PGN standard of 1994, 8.2.3.4: only legal moves are told apart.
        Row{"PinnedKnightIsNoRival", kPinned, "Ne2", "g1e2"},
        Row{"PinnedKnightCannotMove", kPinned, "Nd5", ""},
        Row{"EnPassantPinnedOnTheRank", "8/8/8/K2pP2r/8/8/8/4k3 w - d6 0 1",
            "exd6", ""},
        Row{"EnPassant", "4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 1", "exd6", "e5d6"},
        Row{"EnPassantTakesTheChecker", "8/8/8/2k5/3Pp3/8/8/4K3 b - d3 0 1",
            "exd3", "e4d3"},
        Row{"Promotion", "8/4P1k1/8/8/8/8/8/4K3 w - - 0 1", "e8=Q", "e7e8q"},
        Row{"PromotionWithoutSign", "8/4P1k1/8/8/8/8/8/4K3 w - - 0 1", "e8Q",
            ""},
        Row{"PromotionMissing", "8/4P1k1/8/8/8/8/8/4K3 w - - 0 1", "e8", ""},
        Row{"PromotionToKing", "8/4P1k1/8/8/8/8/8/4K3 w - - 0 1", "e8=K", ""},
        Row{"Ambiguous", "4k3/8/8/8/8/8/1K6/R6R w - - 0 1", "Rd1", ""},
        Row{"TwoRooks", "4k3/8/8/8/8/8/1K6/R6R w - - 0 1", "Rad1", "a1d1"},
        Row{"FileAndRankReversed", "4k3/8/8/8/8/8/1K6/R6R w - - 0 1", "R1ad1",
            ""},
        Row{"KingCapturesGuarded", "4k3/8/8/8/8/1p6/2q5/1K6 w - - 0 1", "Kxc2",
            ""},
        Row{"KingCaptures", "4k3/8/8/8/8/8/2q5/1K6 w - - 0 1", "Kxc2", "b1c2"},
        Row{"KingStaysOnTheLine", "4k3/8/8/8/8/8/4r3/4K3 w - - 0 1", "Kxe2",
            "e1e2"},
        Row{"OwnPiece", "4k3/8/8/8/8/8/3P4/4K3 w - - 0 1", "Kd2", ""},
        Row{"DoubleStepOverPiece", "4k3/8/8/8/8/4n3/4P3/4K3 w - - 0 1", "e4",
            ""}),
    [](const ::testing::TestParamInfo<Row>& row) { return row.param.name; });

}  // namespace
}  // namespace assay
