// What textbooks say of king and pawn against king, held against every
// position of the table: the rule of the square, key squares, the opposition
// and the rook pawn, each with exactly its exceptions. All counts are of all
// files and were computed independently.
#include <gtest/gtest.h>

#include <algorithm>
#include <optional>
#include <ostream>
#include <string>
#include <vector>

#include "assay/facts/endings.h"
#include "assay/facts/kpk.h"
#include "assay/facts/textbook_endings.h"
#include "assay/rules/draw.h"
#include "assay/rules/movegen.h"
#include "tests/support/king_and_pawn.h"
#include "tests/support/printers.h"

namespace assay {
namespace {

using testing_support::ForEachKingAndPawn;
using testing_support::KingAndPawn;
using testing_support::PositionOf;

// How the positions end for which a rule speaks.
struct Tally {
  int won = 0;
  int taken = 0;      // drawn: the pawn can be captured at once
  int stalemate = 0;  // drawn: the bare king has no move
  int drawn = 0;      // drawn otherwise

  friend bool operator==(const Tally& a, const Tally& b) {
    return a.won == b.won && a.taken == b.taken && a.stalemate == b.stalemate &&
           a.drawn == b.drawn;
  }
};

void PrintTo(const Tally& tally, std::ostream* out) {
  *out << tally.won << " won, drawn: " << tally.taken << " taken, "
       << tally.stalemate << " stalemates, " << tally.drawn << " others";
}

bool CanTakePawn(const Position& position) {
  MoveList moves;
  LegalMoves(position, moves);
  return std::any_of(moves.begin(), moves.end(), [&](Move move) {
    return !position.At(move.to()).empty();
  });
}

void Add(const Position& position, Tally& tally) {
  if (LookUpKpk(position)->won) {
    ++tally.won;
  } else if (CanTakePawn(position)) {
    ++tally.taken;
  } else if (IsStalemate(position)) {
    ++tally.stalemate;
  } else {
    ++tally.drawn;
  }
}

struct Tallies {
  Tally white_moves;
  Tally black_moves;
};

// The tallies of the positions for which `speaks(placement, position)`.
template <class Rule>
Tallies TalliesOf(Rule speaks) {
  Tallies tallies;
  ForEachKingAndPawn([&](const KingAndPawn& placement) {
    const std::optional<Position> position = PositionOf(placement);
    if (!position.has_value() || !speaks(placement, *position)) return;
    Add(*position, placement.to_move == Side::kWhite ? tallies.white_moves
                                                     : tallies.black_moves);
  });
  return tallies;
}

bool IsRookPawn(Square pawn) { return FileOf(pawn) == 0 || FileOf(pawn) == 7; }

bool IsOutsideTheSquare(const KingAndPawn& placement) {
  const int need = 7 - std::max(RankOf(placement.pawn), 2);
  const Square promotion = MakeSquare(FileOf(placement.pawn), 7);
  const int spare = placement.to_move == Side::kWhite ? 0 : 1;
  return KingDistance(placement.bare_king, promotion) > need + spare;
}

// "Ka8 a7 kc7"
std::string NameOf(const KingAndPawn& placement) {
  return "K" + ToString(placement.king) + " " + ToString(placement.pawn) +
         " k" + ToString(placement.bare_king);
}

TEST(KpkRules, OutsideTheSquareWins) {
  const Tallies tallies = TalliesOf([](auto&, const Position& position) {
    return PassesSquareRule(Facts(position), Side::kWhite);
  });
  EXPECT_EQ(tallies.white_moves, (Tally{94446, 0, 0, 0}));
  EXPECT_EQ(tallies.black_moves, (Tally{69194, 1088, 0, 0}));
}

// With the own king ahead of the pawn on its file, which the rule leaves out,
// there are ten more exceptions.
TEST(KpkRules, OwnKingAheadLosesTheSquareRuleInTheCornerAlone) {
  std::vector<std::string> drawn;
  ForEachKingAndPawn([&](const KingAndPawn& placement) {
    if (!Contains(FrontSpan(Side::kWhite, Bit(placement.pawn)),
                  placement.king)) {
      return;
    }
    const std::optional<Position> position = PositionOf(placement);
    if (!position.has_value() || !IsOutsideTheSquare(placement)) return;
    EXPECT_FALSE(PassesSquareRule(Facts(*position), Side::kWhite));
    if (LookUpKpk(*position)->won || CanTakePawn(*position)) return;
    drawn.push_back(NameOf(placement));
  });
  EXPECT_EQ(drawn, (std::vector<std::string>{
                       "Ka8 a7 kc7", "Ka8 a7 kc8", "Kh8 h7 kf7", "Kh8 h7 kf8",
                       "Ka8 a7 kd6", "Ka8 a7 kd7", "Ka8 a7 kd8", "Kh8 h7 ke6",
                       "Kh8 h7 ke7", "Kh8 h7 ke8"}));
}

// Of a pawn on the files b to g: three squares two ranks ahead; from the fifth
// rank on also those one rank ahead; on the seventh, the squares beside it and
// those of the eighth rank.
Bitboard KeySquares(Square pawn) {
  const Bitboard row = Bit(pawn) | Neighbours(Bit(pawn));
  if (RankOf(pawn) <= 3) return row << 16;
  if (RankOf(pawn) <= 5) return (row << 8) | (row << 16);
  return (row | (row << 8)) & ~Bit(pawn);
}

TEST(KpkRules, KingOnAKeySquareWins) {
  const Tallies tallies =
      TalliesOf([](const KingAndPawn& placement, const Position& position) {
        const bool speaks =
            !IsRookPawn(placement.pawn) &&
            Contains(KeySquares(placement.pawn), placement.king);
        EXPECT_EQ(IsOnKeySquare(Facts(position), Side::kWhite), speaks)
            << NameOf(placement);
        return speaks;
      });
  EXPECT_EQ(tallies.white_moves, (Tally{8540, 0, 0, 0}));
  EXPECT_EQ(tallies.black_moves, (Tally{8134, 510, 4, 0}));
}

// The own king just ahead of its pawn, the bare king two squares further.
bool StandsInOpposition(const KingAndPawn& placement) {
  return !IsRookPawn(placement.pawn) && placement.king == placement.pawn + 8 &&
         placement.bare_king == placement.king + 16;
}

TEST(KpkRules, OppositionDecidesUpToTheFifthRank) {
  const Tallies tallies =
      TalliesOf([](const KingAndPawn& placement, const Position& position) {
        if (!StandsInOpposition(placement)) return false;
        EXPECT_TRUE(HasOpposition(Facts(position), Other(placement.to_move)));
        return RankOf(placement.king) <= 4;
      });
  EXPECT_EQ(tallies.white_moves, (Tally{0, 0, 0, 18}));
  EXPECT_EQ(tallies.black_moves, (Tally{18, 0, 0, 0}));
}

TEST(KpkRules, KingOnTheSixthRankAheadOfItsPawnWinsAnyway) {
  const Tallies tallies = TalliesOf([](const KingAndPawn& placement, auto&) {
    return StandsInOpposition(placement) && RankOf(placement.king) == 5;
  });
  EXPECT_EQ(tallies.white_moves, (Tally{6, 0, 0, 0}));
  EXPECT_EQ(tallies.black_moves, (Tally{6, 0, 0, 0}));
}

int Drawn(const Tally& tally) {
  return tally.taken + tally.stalemate + tally.drawn;
}

// The bare king on the pawn's file or the next, two or more ranks ahead: 1,690
// positions a wing.
TEST(KpkRules, RookPawnDrawsWithTheKingAheadOfIt) {
  const Tallies tallies = TalliesOf([](const KingAndPawn& placement, auto&) {
    const Bitboard file = FillFiles(Bit(placement.pawn));
    return IsRookPawn(placement.pawn) &&
           Contains(file | Neighbours(file), placement.bare_king) &&
           RankOf(placement.bare_king) >= RankOf(placement.pawn) + 2;
  });
  for (const Tally& tally : {tallies.white_moves, tallies.black_moves}) {
    EXPECT_EQ(tally.won, 0);
    EXPECT_EQ(Drawn(tally), 2 * 1690);
  }
}

TEST(KpkRules, RookPawnDrawsWithTheKingInTheCorner) {
  const Tallies tallies = TalliesOf([](const KingAndPawn& placement, auto&) {
    const Bitboard file = FillFiles(Bit(placement.pawn));
    const Bitboard corner =
        (file | Neighbours(file)) & (RankMask(6) | RankMask(7));
    return IsRookPawn(placement.pawn) && Contains(corner, placement.bare_king);
  });
  EXPECT_EQ(tallies.white_moves.won, 0);
  EXPECT_EQ(Drawn(tallies.white_moves), 2394);
  EXPECT_EQ(tallies.black_moves.won, 0);
  EXPECT_EQ(Drawn(tallies.black_moves), 2620);
}

}  // namespace
}  // namespace assay
