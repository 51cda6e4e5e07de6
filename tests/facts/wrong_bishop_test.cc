// King, bishop and rook pawn against a king that has reached the corner where
// the pawn would promote: every position, with the results of
// bishop_and_pawn.h, which are exact where they are the same for both ways to
// take a lesser promotion. Counts computed independently.
#include <gtest/gtest.h>

#include <optional>
#include <utility>

#include "assay/facts/endings.h"
#include "tests/facts/bishop_and_pawn.h"
#include "tests/support/printers.h"

namespace assay {
namespace {

constexpr Bitboard kCorner = Bit(kA8) | Bit(kB8) | Bit(kA7) | Bit(kB7);

struct Placement {
  Side to_move;
  Square pawn;
  Square bishop;
  Square king;
  Square bare_king;
};

// The position, where the rules allow it.
std::optional<Position> PositionOf(const Placement& placement) {
  ParsedPosition parsed;
  parsed.board[placement.pawn] = Piece(Side::kWhite, PieceKind::kPawn);
  parsed.board[placement.bishop] = Piece(Side::kWhite, PieceKind::kBishop);
  parsed.board[placement.king] = Piece(Side::kWhite, PieceKind::kKing);
  parsed.board[placement.bare_king] = Piece(Side::kBlack, PieceKind::kKing);
  parsed.side_to_move = placement.to_move;
  std::optional<Position> position = Position::FromParsed(parsed);
  if (!position.has_value()) return std::nullopt;
  return *std::move(position);
}

// Calls visit(placement, position) for every legal position with the bishop
// on a square of the set and the bare king in the corner.
template <class Visit>
void ForEachInCorner(Bitboard bishops, Visit visit) {
  for (const Side to_move : kSides) {
    for (int rank = 1; rank <= 6; ++rank) {
      const Square pawn = MakeSquare(0, rank);
      for (const Square bishop : Each(bishops & ~Bit(pawn))) {
        for (const Square king : Each(~Bit(pawn) & ~Bit(bishop))) {
          const Bitboard free = ~(Bit(pawn) | Bit(bishop) | Bit(king));
          for (const Square bare_king : Each(kCorner & free)) {
            const Placement placement{to_move, pawn, bishop, king, bare_king};
            const std::optional<Position> position = PositionOf(placement);
            if (position.has_value()) visit(placement, *position);
          }
        }
      }
    }
  }
}

bool Wins(const BishopAndPawn& table, const Placement& placement) {
  return table.Wins(placement.to_move, placement.pawn, placement.bishop,
                    placement.king, placement.bare_king);
}

class WrongBishop : public ::testing::TestWithParam<LesserPromotion> {
 protected:
  const BishopAndPawn table_{GetParam()};
};

INSTANTIATE_TEST_SUITE_P(LesserPromotion, WrongBishop,
                         ::testing::Values(LesserPromotion::kDraws,
                                           LesserPromotion::kWins),
                         [](const auto& param) {
                           return param.param == LesserPromotion::kWins
                                      ? "Wins"
                                      : "Draws";
                         });

TEST_P(WrongBishop, NeverWinsAgainstAKingInTheCorner) {
  int positions = 0;
  int unnamed = 0;
  int won = 0;
  ForEachInCorner(kDarkSquares,
                  [&](const Placement& placement, const Position& position) {
                    ++positions;
                    if (!HasWrongBishop(Facts(position), Side::kWhite))
                      ++unnamed;
                    if (Wins(table_, placement)) ++won;
                  });
  EXPECT_EQ(positions, 72720);
  EXPECT_EQ(unnamed, 0);
  EXPECT_EQ(won, 0);
}

TEST_P(WrongBishop, RightBishopMostlyWins) {
  int positions = 0;
  int named = 0;
  int won = 0;
  ForEachInCorner(kLightSquares,
                  [&](const Placement& placement, const Position& position) {
                    if (HasWrongBishop(Facts(position), Side::kWhite)) ++named;
                    if (placement.to_move != Side::kWhite) return;
                    ++positions;
                    if (Wins(table_, placement)) ++won;
                  });
  EXPECT_EQ(named, 0);
  EXPECT_EQ(positions, 31732);
  EXPECT_EQ(won, 28999);
}

TEST_P(WrongBishop, FixturesAgree) {
  EXPECT_FALSE(table_.Wins(Side::kWhite, kA5, kC1, kB6, kA8));
  EXPECT_TRUE(table_.Wins(Side::kWhite, kA5, kF1, kB6, kA8));
}

}  // namespace
}  // namespace assay
