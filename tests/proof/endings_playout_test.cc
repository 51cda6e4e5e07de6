// Endings played out, both sides by the search: mates within the published
// lengths, king and pawn against king as the table has it, and the studies that
// only a line can tell. Positions of the play-outs are drawn by a fixed seed.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <optional>
#include <random>
#include <vector>

#include "assay/facts/kpk.h"
#include "assay/notation/san.h"
#include "assay/proof/search.h"
#include "assay/rules/draw.h"
#include "assay/rules/movegen.h"
#include "tests/support/king_and_pawn.h"
#include "tests/support/printers.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

using testing_support::FromFen;

// A game from a position, its moves found by searches of so many nodes that
// know the moves played before.
class Game {
 public:
  Game(const Position& start, std::uint64_t nodes) : position_(start) {
    limits_.nodes = nodes;
  }

  const Position& position() const { return position_; }

  // False where the game is over.
  bool PlayOn() {
    const SearchResult found = Search(position_, Weights(), limits_);
    if (found.line.empty() || IsFiftyMoveClaim(position_)) return false;
    limits_.played.push_back(position_.hash());
    position_ = position_.After(found.line.front());
    return true;
  }

 private:
  Position position_;
  SearchLimits limits_;
};

// White's king and pieces against a bare king, White to move.
Position RandomPlacement(const std::vector<PieceKind>& kinds,
                         std::mt19937& random) {
  while (true) {
    ParsedPosition parsed;
    const auto put = [&](Piece piece) {
      Square square = kA1;
      do {
        square = static_cast<Square>(random() % kSquares);
      } while (!parsed.board[square].empty());
      parsed.board[square] = piece;
    };
    put(Piece(Side::kWhite, PieceKind::kKing));
    put(Piece(Side::kBlack, PieceKind::kKing));
    for (const PieceKind kind : kinds) put(Piece(Side::kWhite, kind));
    const std::optional<Position> position = Position::FromParsed(parsed);
    if (position.has_value() && !IsInsufficientMaterial(*position))
      return *position;
  }
}

struct MateRow : testing_support::Row {
  std::vector<PieceKind> kinds;
  int positions;
  std::uint64_t nodes;  // a move
  int most_moves;       // of White, to mate
  int late;             // positions that may take up to a third more
};

// The most moves to mate: for queen and rook from exact tables, 10 and 16 by
// best play, which a bounded search comes near, not always up to. For the minor
// pieces, 19 and 33 by best play (from memory), only the fifty after which a
// draw may be claimed; so for a rook with few nodes.
const MateRow kMates[] = {
    {{"Queen"}, {PieceKind::kQueen}, 30, 40000, 10, 1},
    {{"Rook"}, {PieceKind::kRook}, 30, 40000, 16, 3},
    {{"RookWithFewNodes"}, {PieceKind::kRook}, 30, 4000, 50, 0},
    {{"TwoBishops"}, {PieceKind::kBishop, PieceKind::kBishop}, 12, 6000, 50, 0},
    {{"BishopAndKnight"},
     {PieceKind::kBishop, PieceKind::kKnight},
     4,
     60000,
     50,
     0},
};

class BasicMates : public ::testing::TestWithParam<MateRow> {};

TEST_P(BasicMates, AreGivenInTime) {
  const MateRow& row = GetParam();
  std::mt19937 random(1925);
  int late = 0;
  for (int i = 0; i < row.positions; ++i) {
    const Position start = RandomPlacement(row.kinds, random);
    SCOPED_TRACE(::testing::PrintToString(start));
    Game game(start, row.nodes);
    int moves = 0;
    while (game.PlayOn()) {
      if (game.position().side_to_move() == Side::kBlack) ++moves;
    }
    EXPECT_TRUE(IsCheckmate(game.position()));
    EXPECT_LE(3 * moves, 4 * row.most_moves);
    if (moves > row.most_moves) ++late;
  }
  EXPECT_LE(late, row.late);
}

INSTANTIATE_TEST_SUITE_P(Endings, BasicMates, ::testing::ValuesIn(kMates),
                         testing_support::NameOfRow());

// A queen or rook that the bare king cannot take at once.
bool HasSafeMajorPiece(const Position& position) {
  const Bitboard pieces =
      position.Pieces(PieceKind::kQueen) | position.Pieces(PieceKind::kRook);
  MoveList moves;
  LegalMoves(position, moves);
  return pieces != 0 && std::none_of(moves.begin(), moves.end(), [&](Move m) {
           return Contains(pieces, m.to());
         });
}

// King and pawn against king: won ones promote, drawn ones stay drawn, at each
// move by the table (which tests/oracle/kpk_oracle.mjs compares with one made
// by another library's moves).
void ExpectResultKept(const Position& start) {
  constexpr std::uint64_t kNodes = 2500;
  constexpr int kMostPlies = 70;
  SCOPED_TRACE(::testing::PrintToString(start));
  const bool won = LookUpKpk(start)->won;
  Game game(start, kNodes);
  for (int ply = 0; ply < kMostPlies && game.PlayOn(); ++ply) {
    const std::optional<KpkResult> result = LookUpKpk(game.position());
    if (!result.has_value()) break;
    ASSERT_EQ(result->won, won) << ::testing::PrintToString(game.position());
  }
  if (won) {
    EXPECT_TRUE(HasSafeMajorPiece(game.position()) ||
                IsCheckmate(game.position()))
        << ::testing::PrintToString(game.position());
  } else {
    EXPECT_FALSE(HasSafeMajorPiece(game.position()))
        << ::testing::PrintToString(game.position());
  }
}

TEST(KingAndPawn, KeepsTheTablesResult) {
  constexpr int kEvery = 4001;  // a prime that meets every file and rank
  int seen = 0;
  int won = 0;
  int drawn = 0;
  testing_support::ForEachKingAndPawn(
      [&](const testing_support::KingAndPawn& placement) {
        if (seen++ % kEvery != 0) return;
        const std::optional<Position> position =
            testing_support::PositionOf(placement);
        if (!position.has_value() || !HasLegalMove(*position)) return;
        ++(LookUpKpk(*position)->won ? won : drawn);
        ExpectResultKept(*position);
      });
  EXPECT_GE(won, 30);
  EXPECT_GE(drawn, 20);
}

// R. Reti, 1921: White catches one pawn or the other. Drawn (confirmed with
// exact tables).
TEST(Studies, RetiIsDrawn) {
  SearchLimits limits;
  limits.nodes = 200000;
  const SearchResult found =
      Search(FromFen("7K/8/k1P5/7p/8/8/8/8 w - - 0 1"), Weights(), limits);
  EXPECT_LT(std::abs(found.score_cp), 30);
  EXPECT_EQ(found.mate_in, 0);
}

// F. Saavedra and G. Barbier, 1895: the pawn wins, promoting to a rook in the
// end (confirmed with exact tables).
TEST(Studies, SaavedraIsWon) {
  SearchLimits limits;
  limits.nodes = 400000;
  const SearchResult found =
      Search(FromFen("8/8/1KP5/3r4/8/8/8/k7 w - - 0 1"), Weights(), limits);
  EXPECT_GT(found.score_cp, 300);
  EXPECT_EQ(ToCoordinates(found.line.front()), "c6c7");
}

// Whoever has to move in the trebuchet loses (confirmed with exact tables).
TEST(Studies, TrebuchetLosesForTheSideToMove) {
  SearchLimits limits;
  limits.nodes = 20000;
  const SearchResult white =
      Search(FromFen("8/8/8/8/3pK3/2kP4/8/8 w - - 0 1"), Weights(), limits);
  const SearchResult black =
      Search(FromFen("8/8/8/8/3pK3/2kP4/8/8 b - - 0 1"), Weights(), limits);
  EXPECT_LT(white.score_cp, -500);
  EXPECT_GT(black.score_cp, 500);
}

// A game's earlier positions are as good as drawn to come back to: with a
// queen, moving to and fro is no way to win.
TEST(PlayedPositions, AreNotReturnedTo) {
  const Position start = FromFen("8/8/8/3k4/8/8/1Q6/K7 w - - 20 40");
  SearchLimits limits;
  limits.nodes = 3000;
  const SearchResult first = Search(start, Weights(), limits);
  const Position next = start.After(first.line.front());
  limits.played = {next.hash()};
  const SearchResult second = Search(start, Weights(), limits);
  EXPECT_NE(second.line.front(), first.line.front());
  EXPECT_GT(second.score_cp, 500);
}

}  // namespace
}  // namespace assay
