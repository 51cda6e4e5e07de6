// Claims of endings known by name. Definitions stand beside the kinds in
// proto/assay/v1/claim.proto.
#include "assay/facts/textbook_endings.h"

#include "gtest/gtest.h"
#include "tests/support/claims.h"

namespace assay {
namespace {

using testing_support::ClaimRow;

constexpr ClaimRow kRows[] = {
    {{"KeySquareOfAPawnOnTheFourth"},
     ClaimKind::kKeySquares,
     "Kc6 d4 v Ke8",
     "White d4 c6"},
    {{"OneRankAheadOfAPawnOnTheFourth"},
     ClaimKind::kKeySquares,
     "Kc5 d4 v Ke8",
     ""},
    {{"OneRankAheadOfAPawnOnTheFifth"},
     ClaimKind::kKeySquares,
     "Kg1 v Kd3 d4",
     "Black d3 d4"},
    {{"BesideAPawnOnTheSeventh"},
     ClaimKind::kKeySquares,
     "Kc7 b7 v Ke7",
     "White b7 c7"},
    {{"RookPawnsHaveNone"}, ClaimKind::kKeySquares, "Kb8 a6 v Ke7", ""},
    {{"NoneWithAnotherPawn"}, ClaimKind::kKeySquares, "Kc6 d4 v Ke8 h7", ""},

    // Lucena's position: CHECKS.md 5.3's fixture, from memory.
    {{"Lucena"},
     ClaimKind::kLucena,
     "1K1k4/1P6/8/8/8/8/r7/2R5 w - - 0 1",
     "White c1 b7 b8 / d8"},
    {{"LucenaForBlackOnTheOtherWing"},
     ClaimKind::kLucena,
     "Ke1 Rh7 v Kg1 g2 Rf8, Black to move",
     "Black g1 g2 f8 / e1"},
    {{"KingNotCutOff"}, ClaimKind::kLucena, "Kb8 b7 Re1 v Kd8 Ra2", ""},
    {{"KingNotOnThePromotionSquare"},
     ClaimKind::kLucena,
     "Ka8 b7 Rc1 v Kd8 Rh2",
     ""},
    {{"RookAttacked"}, ClaimKind::kLucena, "Kb8 b7 Rc1 v Kd8 Ra1", ""},
    {{"RookPawn"}, ClaimKind::kLucena, "Ka8 a7 Rb1 v Kc8 Rh2", ""},

    // Philidor's defence: CHECKS.md 5.3's fixture, from memory.
    {{"Philidor"},
     ClaimKind::kPhilidor,
     "4k3/7R/r7/3KP3/8/8/8/8 b - - 0 1",
     "Black a6 e8 / e5"},
    {{"PhilidorForWhite"},
     ClaimKind::kPhilidor,
     "Kc1 Rh3 v Kd4 c4 Ra2",
     "White c1 h3 / c4"},
    {{"RookOffTheSixthRank"},
     ClaimKind::kPhilidor,
     "4k3/7R/8/3KP3/r7/8/8/8 b - - 0 1",
     ""},
    {{"KingPast"}, ClaimKind::kPhilidor, "Kd6 e5 Rh7 v Ke8 Ra1", ""},
    {{"BesideTheFileNotToMove"},
     ClaimKind::kPhilidor,
     "Kd5 e5 Rh7 v Kf8 Ra6",
     ""},
    {{"BesideTheFileToMove"},
     ClaimKind::kPhilidor,
     "Kd5 e5 Rh7 v Kf8 Ra6, Black to move",
     "Black a6 f8 / e5"},
    {{"FromBehind"},
     ClaimKind::kPhilidor,
     "Kd5 e6 Rh7 v Ke8 Rb1",
     "Black b1 e8 / e6"},
    {{"KingBesideThePawnAndToMove"},
     ClaimKind::kPhilidor,
     "Kd6 e6 Rh7 v Ke8 Rb1",
     ""},

    {{"Vancura"},
     ClaimKind::kVancura,
     "Kf2 a6 Ra8 v Kg7 Re6",
     "Black e6 g7 / a6 a8"},
    {{"KingNear"}, ClaimKind::kVancura, "Kb4 a6 Ra8 v Kg7 Re6", ""},
    {{"RookNotOnTheRank"}, ClaimKind::kVancura, "Kf2 a6 Ra8 v Kg7 Re5", ""},

    // Queen against pawn: CHECKS.md 5.3's fixtures, checked with exact tables.
    {{"RooksPawn"},
     ClaimKind::kQueenHeld,
     "8/8/8/8/7K/8/pk6/3Q4 w - - 0 1",
     "Black a2 b2 / d1"},
    {{"BishopsPawn"},
     ClaimKind::kQueenHeld,
     "8/8/8/8/7K/8/2pk4/Q7 w - - 0 1",
     "Black c2 d2 / a1"},
    {{"KnightsPawn"},
     ClaimKind::kQueenHeld,
     "7K/8/8/8/8/8/1pk5/4Q3 w - - 0 1",
     ""},
    {{"CentrePawn"},
     ClaimKind::kQueenHeld,
     "8/8/8/8/7K/8/3pk3/1Q6 w - - 0 1",
     ""},
    {{"KingAtHand"}, ClaimKind::kQueenHeld, "Kd4 Qh2 v Kb1 a2", ""},
    {{"PawnPinned"}, ClaimKind::kQueenHeld, "Kh4 Qa2 v Kd2 c2", ""},

    {{"BishopHeld"},
     ClaimKind::kBishopHeld,
     "Kf4 e4 Bg3 v Ke6 Bb1",
     "Black b1 e6 / e4"},
    {{"OnTheEnemyColour"}, ClaimKind::kBishopHeld, "Kf4 e4 Bg3 v Ke7 Bb1", ""},
    {{"BishopAttacked"}, ClaimKind::kBishopHeld, "Kf4 e4 Bg3 v Ke6 Bf5", ""},
};

class TextbookClaims : public ::testing::TestWithParam<ClaimRow> {};

TEST_P(TextbookClaims, HoldExactlyWhereDefined) {
  testing_support::ExpectClaims(GetParam());
}

INSTANTIATE_TEST_SUITE_P(Endings, TextbookClaims, ::testing::ValuesIn(kRows),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
