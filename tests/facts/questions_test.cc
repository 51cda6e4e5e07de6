// Claims that answer a question: who controls a square, who attacks a piece.
#include "assay/facts/claim_makers.h"
#include "gtest/gtest.h"
#include "tests/support/claims.h"
#include "tests/support/from_pieces.h"

namespace assay {
namespace {

struct Question : testing_support::Row {
  const char* position;
  Side side;
  Square square;
  int own;
  int enemy;
};

constexpr Question kQuestions[] = {
    {{"Nobody"}, "Kg1 v Kg8", Side::kWhite, kD5, 0, 0},
    {{"PawnAndKnight"}, "Kg1 Nc3 e4 v Kg8", Side::kWhite, kD5, 2, 0},
    {{"PawnAheadDoesNot"}, "Kg1 d4 v Kg8", Side::kWhite, kD5, 0, 0},
    {{"BothSides"}, "Kg1 Nc3 v Kg8 c6 e6 Qd8", Side::kWhite, kD5, 1, 3},
    {{"SeenFromTheOther"}, "Kg1 Nc3 v Kg8 c6 e6 Qd8", Side::kBlack, kD5, 3, 1},
    {{"NoRayThroughAPiece"}, "Kg1 Rd1 Rd2 v Kg8", Side::kWhite, kD5, 1, 0},
    {{"PinnedPiecesCount"}, "Ke1 Ne2 v Kg8 Re8", Side::kWhite, kD4, 1, 0},
    {{"KingsCount"}, "Kc4 v Kd6", Side::kWhite, kD5, 1, 1},
    {{"OnTheEdge"}, "Kg1 Ra1 b3 v Kg8 Bd7", Side::kWhite, kA4, 2, 1},
    {{"APieceDoesNotGuardItself"}, "Kg1 Nd4 c3 v Kg8", Side::kWhite, kD4, 1, 0},
};

class Questions : public ::testing::TestWithParam<Question> {};

TEST_P(Questions, CountAttackersOfBothSides) {
  const Question& row = GetParam();
  const Position position = testing_support::FromPieces(row.position);
  const Facts facts(position);
  for (const Claim& claim : {ControlClaim(facts, row.side, row.square),
                             AttackCountClaim(facts, row.side, row.square)}) {
    EXPECT_EQ(claim.side, row.side);
    EXPECT_EQ(claim.squares, SquareList({row.square}));
    EXPECT_EQ(claim.count, row.own);
    EXPECT_EQ(claim.other_count, row.enemy);
  }
  const Position swapped = SwapColours(position);
  const Claim seen =
      ControlClaim(Facts(swapped), Other(row.side), FlipRank(row.square));
  EXPECT_EQ(seen.count, row.own);
  EXPECT_EQ(seen.other_count, row.enemy);
}

INSTANTIATE_TEST_SUITE_P(Positions, Questions, ::testing::ValuesIn(kQuestions),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
