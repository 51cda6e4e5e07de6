#include "assay/facts/kpk.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <optional>
#include <thread>
#include <vector>

#include "assay/facts/claim_lists.h"
#include "assay/facts/claim_makers.h"
#include "assay/rules/movegen.h"
#include "tests/support/king_and_pawn.h"
#include "tests/support/printers.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

using testing_support::ForEachKingAndPawn;
using testing_support::FromFen;
using testing_support::KingAndPawn;
using testing_support::NameOfRow;
using testing_support::PositionOf;
using testing_support::Row;

// The EXACT claims among all claims of a position.
std::vector<Claim> ExactClaims(const Position& position) {
  std::vector<Claim> claims = AllClaims(Facts(position));
  const auto is_other = [](const Claim& claim) {
    return claim.kind != ClaimKind::kExact;
  };
  claims.erase(std::remove_if(claims.begin(), claims.end(), is_other),
               claims.end());
  return claims;
}

// `result` is for the side to move.
struct Fixture : Row {
  const char* fen;
  int result;
};

class KpkFixture : public ::testing::TestWithParam<Fixture> {};

TEST_P(KpkFixture, HasTheResult) {
  const Position position = FromFen(GetParam().fen);
  for (const Position& same :
       {position, SwapColours(position), MirrorFiles(position)}) {
    const std::optional<KpkResult> result = LookUpKpk(same);
    ASSERT_TRUE(result.has_value());
    EXPECT_EQ(result->For(same.side_to_move()), GetParam().result)
        << ::testing::PrintToString(same);
    EXPECT_EQ(result->For(Other(same.side_to_move())), -GetParam().result);
  }
}

TEST_P(KpkFixture, HasTheClaim) {
  const Position position = FromFen(GetParam().fen);
  for (const Position& same : {position, SwapColours(position)}) {
    const std::vector<Claim> claims = ExactClaims(same);
    ASSERT_EQ(claims.size(), 1U);
    EXPECT_EQ(claims[0], ExactClaim(Facts(same)));
    EXPECT_TRUE(claims[0].has_side);
    EXPECT_EQ(claims[0].side, same.side_to_move());
    EXPECT_EQ(claims[0].count, GetParam().result);
    EXPECT_TRUE(claims[0].squares.empty());
  }
}

// Results worked out independently of this library.
INSTANTIATE_TEST_SUITE_P(
    Kpk, KpkFixture,
    ::testing::Values(
        Fixture{{"OppositionMissing"}, "8/4k3/8/4K3/4P3/8/8/8 w - - 0 1", 0},
        Fixture{{"OppositionTaken"}, "8/4k3/8/4K3/4P3/8/8/8 b - - 0 1", -1},
        Fixture{{"SixthRankToMove"}, "4k3/8/4K3/4P3/8/8/8/8 w - - 0 1", 1},
        Fixture{{"SixthRankNotToMove"}, "4k3/8/4K3/4P3/8/8/8/8 b - - 0 1", -1},
        Fixture{{"KingBehindItsPawn"}, "8/4k3/4P3/4K3/8/8/8/8 b - - 0 1", 0},
        Fixture{{"RookPawn"}, "1k6/8/K7/P7/8/8/8/8 w - - 0 1", 0},
        Fixture{{"OutsideTheSquare"}, "7k/8/8/P7/8/8/8/K7 b - - 0 1", -1},
        Fixture{{"OutsideByOneMove"}, "8/8/8/P3k3/8/8/8/7K w - - 0 1", 1},
        Fixture{{"JustInside"}, "8/8/8/P3k3/8/8/8/7K b - - 0 1", 0},
        Fixture{{"PawnTakenAtOnce"}, "8/8/8/8/8/8/kP6/7K b - - 0 1", 0},
        Fixture{{"QueenWouldStalemate"}, "8/k1P5/2K5/8/8/8/8/8 w - - 0 1", 1},
        Fixture{{"Stalemate"}, "4k3/4P3/4K3/8/8/8/8/8 b - - 0 1", 0}),
    NameOfRow());

struct OtherMaterial : Row {
  const char* fen;
};

class NoKpk : public ::testing::TestWithParam<OtherMaterial> {};

TEST_P(NoKpk, HasNoResultAndNoClaim) {
  const Position position = FromFen(GetParam().fen);
  EXPECT_FALSE(LookUpKpk(position).has_value());
  EXPECT_TRUE(ExactClaims(position).empty());
}

INSTANTIATE_TEST_SUITE_P(
    Kpk, NoKpk,
    ::testing::Values(
        OtherMaterial{
            {"InitialPosition"},
            "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1"},
        OtherMaterial{{"BareKings"}, "4k3/8/8/8/8/8/8/4K3 w - - 0 1"},
        OtherMaterial{{"TwoPawns"}, "4k3/8/8/8/8/8/3PP3/4K3 w - - 0 1"},
        OtherMaterial{{"PawnEach"}, "8/8/8/8/3pK3/2kP4/8/8 w - - 0 1"},
        OtherMaterial{{"PawnAndKnight"}, "4k3/8/8/8/8/8/4P3/4KN2 w - - 0 1"},
        OtherMaterial{{"Rook"}, "4k3/8/8/8/8/8/8/4KR2 w - - 0 1"}),
    NameOfRow());

// A pawn each, blocked, both attacked by the enemy king alone ("trebuchet"):
// every move gives up the own pawn, and what is left is won for the other.
TEST(Kpk, TrebuchetLosesForTheSideToMove) {
  const Position white_moves = FromFen("8/8/8/8/3pK3/2kP4/8/8 w - - 0 1");
  for (const Position& position : {white_moves, SwapColours(white_moves)}) {
    const Side loser = position.side_to_move();
    MoveList moves;
    LegalMoves(position, moves);
    EXPECT_FALSE(moves.empty());
    for (const Move move : moves) {
      const Position next = position.After(move);
      MoveList replies;
      LegalMoves(next, replies);
      EXPECT_TRUE(std::any_of(replies.begin(), replies.end(), [&](Move reply) {
        const auto result = LookUpKpk(next.After(reply));
        return result.has_value() && result->For(loser) == -1;
      }));
    }
  }
}

// Counts computed independently; tests/oracle/kpk_oracle.mjs compares every
// single position.
TEST(Kpk, CountsAreRight) {
  int legal[2] = {};
  int won[2] = {};
  ForEachKingAndPawn([&](const KingAndPawn& placement) {
    const std::optional<Position> position = PositionOf(placement);
    if (!position.has_value()) return;
    ++legal[Index(placement.to_move)];
    if (LookUpKpk(*position)->won) ++won[Index(placement.to_move)];
  });
  EXPECT_EQ(legal[0], 163328);
  EXPECT_EQ(legal[1], 168024);
  EXPECT_EQ(won[0], 124960);
  EXPECT_EQ(won[1], 97604);
}

// Colours and wings may be swapped without another result.
TEST(Kpk, SymmetriesAgree) {
  int different = 0;
  ForEachKingAndPawn([&](const KingAndPawn& placement) {
    const std::optional<Position> position = PositionOf(placement);
    if (!position.has_value()) return;
    const KpkResult result = *LookUpKpk(*position);
    const KpkResult swapped = *LookUpKpk(SwapColours(*position));
    const KpkResult mirrored = *LookUpKpk(MirrorFiles(*position));
    const bool agree = result.pawn_side == Side::kWhite &&
                       swapped.pawn_side == Side::kBlack &&
                       mirrored.pawn_side == Side::kWhite &&
                       swapped.won == result.won && mirrored.won == result.won;
    if (!agree) ++different;
  });
  EXPECT_EQ(different, 0);
}

TEST(Kpk, IsSafeFromManyThreads) {
  const Position position = FromFen("8/4k3/8/4K3/4P3/8/8/8 b - - 0 1");
  int wins[4] = {};
  std::vector<std::thread> threads;
  threads.reserve(4);
  for (int& win : wins) {
    threads.emplace_back([&position, &win] {
      for (int i = 0; i < 1000; ++i) win += LookUpKpk(position)->won ? 1 : 0;
    });
  }
  for (std::thread& thread : threads) thread.join();
  for (const int win : wins) EXPECT_EQ(win, 1000);
}

}  // namespace
}  // namespace assay
