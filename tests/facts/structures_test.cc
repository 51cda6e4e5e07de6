// Pawn structures with a name. The skeletons and their names are common
// practice (Kmoch 1959, Soltis 1976, Flores Rios 2015); which of their pawns
// define each is told from memory.
#include "assay/facts/structures.h"

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "assay/notation/fen.h"
#include "gtest/gtest.h"
#include "tests/plans/handbook_rows.h"
#include "tests/support/claims.h"
#include "tests/support/from_pieces.h"
#include "tests/support/printers.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

using testing_support::FromPieces;
using testing_support::Row;

std::string SquaresText(Bitboard set, bool swapped) {
  std::string text;
  std::vector<std::string> names;
  for (const Square square : Each(set)) {
    names.push_back(ToString(swapped ? FlipRank(square) : square));
  }
  std::sort(names.begin(), names.end());
  for (const std::string& name : names) text += ' ' + name;
  return text;
}

// "White hanging pawns c4 d4 / b7 e6", sorted; `swapped`: told as if the
// colours were the other way round.
std::vector<std::string> Describe(const Position& position, bool swapped) {
  std::vector<std::string> texts;
  for (const NamedStructure& found : FindStructures(Facts(position))) {
    // What both share is told of White, whichever colours they have.
    const bool turn = found.shared && swapped;
    const Bitboard own = turn ? found.others : found.own;
    const Bitboard others = turn ? found.own : found.others;
    const std::string owner =
        found.shared ? "both"
                     : Name(swapped ? Other(found.owner) : found.owner);
    texts.push_back(owner + ' ' + Name(found.structure) +
                    SquaresText(own, swapped) + " /" +
                    SquaresText(others, swapped));
  }
  std::sort(texts.begin(), texts.end());
  return texts;
}

struct Example : Row {
  const char* pieces;
  const char* structures;  // all of them
};

constexpr Example kExamples[] = {
    {{"Carlsbad"},
     "Kg1 a2 b2 d4 e3 f2 g2 h2 v Kg8 a7 b7 c6 d5 f7 g7 h7",
     "White Carlsbad structure b2 d4 e3 / b7 c6 d5"},
    {{"CarlsbadUnderWay"},
     "Kg1 a4 b5 d4 e3 f2 g2 h2 v Kg8 a5 b6 c6 d5 f7 g7 h7",
     "White Carlsbad structure b5 d4 e3 / b6 c6 d5"},
    {{"IsolatedQueensPawn"},
     "Kg1 a2 b2 d4 f2 g2 h2 v Kg8 a7 b7 e6 f7 g7 h7",
     "White isolated queen's pawn d4 / e6"},
    {{"IsolatedQueensPawnAgainstC"},
     "Kg1 a3 b2 d4 f2 g3 h2 v Kg8 a7 b7 c6 f7 g6 h7",
     "White isolated queen's pawn d4 / c6"},
    {{"HangingPawns"},
     "Kg1 a2 c4 d4 f2 g2 h2 v Kg8 a7 b7 e6 f7 g7 h7",
     "White hanging pawns c4 d4 / b7 e6"},
    {{"HangingPawnsAdvanced"},
     "Kg1 a2 c5 d4 f2 g2 h2 v Kg8 a7 b7 e6 f7 g7 h7",
     "White backward pawn on a half-open file d4 / e6; "
     "White hanging pawns c5 d4 / b7 e6"},
    {{"IsolatedCouple"},
     "Kg1 a2 c3 d4 f2 g2 h2 v Kg8 a7 b7 e6 f7 g7 h7",
     "White isolated pawn couple c3 d4 / b7 e6"},
    {{"StoneWall"},
     "Kg1 a2 b2 c4 d4 e3 f2 g3 h2 v Kg8 a7 b7 c6 d5 e6 f5 g7 h7",
     "Black stone wall c6 d5 e6 f5 / d4"},
    {{"FrenchChain"},
     "Kg1 a2 b2 c3 d4 e5 f2 g2 h2 v Kg8 a7 b7 c5 d5 e6 f7 g7 h7",
     "White French chain c3 d4 e5 / d5 e6"},
    {{"FrenchChainWithoutCPawns"},
     "Kg1 a2 b2 d4 e5 f2 g2 h2 v Kg8 a7 b7 d5 e6 f7 g7 h7",
     "White French chain without c-pawns d4 e5 / d5 e6"},
    {{"KingsIndianChain"},
     "Kg1 a2 b2 c4 d5 e4 f2 g2 h2 v Kg8 a7 b7 c7 d6 e5 f7 g6 h7",
     "White King's Indian chain c4 d5 e4 / c7 d6 e5"},
    {{"SpanishChain"},
     "Kg1 a2 b2 c3 d5 e4 f2 g2 h3 v Kg8 a6 b5 c5 d6 e5 f7 g7 h6",
     "White Spanish chain c3 d5 e4 / b5 c5 d6 e5"},
    {{"ModernBenoni"},
     "Kg1 a2 b2 d5 e4 f2 g2 h2 v Kg8 a7 b7 c5 d6 f7 g6 h7",
     "Black modern Benoni c5 d6 / d5 e4"},
    {{"ClosedBenoni"},
     "Kg1 a2 b2 c4 d5 e4 f2 g2 h2 v Kg8 a7 b7 c5 d6 e5 f7 g7 h7",
     "White closed Benoni c4 d5 e4 / c5 d6 e5"},
    {{"MaroczyBind"},
     "Kg1 a2 b2 c4 e4 f2 g2 h2 v Kg8 a7 b7 d6 e7 f7 g6 h7",
     "White Maroczy bind c4 e4 / d6 e7"},
    {{"Hedgehog"},
     "Kg1 a2 b2 c4 e4 f3 g2 h2 v Kg8 a6 b6 d6 e6 f7 g7 h7",
     "Black hedgehog a6 b6 d6 e6 / c4 e4; White Maroczy bind c4 e4 / d6 e6"},
    {{"D4AgainstC6AndE6"},
     "Kg1 a2 b2 c4 d4 f2 g2 h2 v Kg8 a7 b7 c6 e6 f7 g7 h7",
     "White Caro-Kann structure d4 / c6 e6"},
    {{"SmallCentre"},
     "Kg1 a2 b2 c2 e4 f2 g2 h2 v Kg8 a6 b7 d6 e6 f7 g7 h7",
     "Black small centre d6 e6 / c2 e4"},
    {{"HoleOnD5"},
     "Kg1 a2 b2 c2 e4 f2 g2 h2 v Kg8 a6 b7 d6 e5 f7 g7 h7",
     "Black backward pawn on a half-open file d6 / e4; "
     "Black hole in front of a backward d-pawn d6 e5 / e4"},
    {{"Dragon"},
     "Kg1 a2 b2 c2 e4 f2 g2 h2 v Kg8 a7 b7 d6 e7 f7 g6 h7",
     "Black Dragon structure d6 e7 g6 / c2 e4"},
    {{"OpenDFile"},
     "Kg1 a2 b2 c2 e4 f2 g2 h2 v Kg8 a7 b7 c6 e5 f7 g7 h7",
     "White open d-file with blocked e-pawns c2 e4 / c6 e5"},
    {{"OpenDFileForBoth"},
     "Kg1 a2 b2 c3 e4 f2 g2 h2 v Kg8 a7 b7 c6 e5 f7 g7 h7",
     "both open d-file with blocked e-pawns c3 e4 / c6 e5; "
     "both symmetrical pawns a2 b2 c3 e4 f2 g2 h2 / a7 b7 c6 e5 f7 g7 h7"},
    {{"ExchangeRuyLopez"},
     "Kg1 a2 b2 c2 e4 f2 g2 h2 v Kg8 a7 b7 c6 c7 f7 g7 h7",
     "White exchange Ruy Lopez c2 e4 f2 g2 h2 / c6 c7 f7 g7 h7"},
    {{"ExchangeFrench"},
     "Kg1 a2 b2 c2 d4 f2 g2 h2 v Kg8 a7 b7 c7 d5 f7 g7 h7",
     "both exchange French c2 d4 / c7 d5; "
     "both symmetrical pawns a2 b2 c2 d4 f2 g2 h2 / a7 b7 c7 d5 f7 g7 h7"},
    {{"MobileCentre"},
     "Kg1 a2 c3 d4 e4 f2 g2 h2 v Kg8 a7 b7 c5 e7 f7 g6 h7",
     "White two-pawn centre d4 e4 / e7"},
    {{"DoubledCPawns"},
     "Kg1 a2 c3 c4 d4 e3 f2 g2 h2 v Kg8 a7 b6 c5 d6 e6 f7 g7 h7",
     "White doubled c-pawns c3 c4 d4 /"},
    {{"DoubledCPawnsInAClosedCentre"},
     "Kg1 a2 c3 c4 d5 e4 f2 g2 h2 v Kg8 a7 b7 c5 d6 e5 f7 g7 h7",
     "White closed Benoni c4 d5 e4 / c5 d6 e5; "
     "White doubled c-pawns in a closed centre c3 c4 d5 /"},
    {{"ThreeAgainstTwo"},
     "Kg1 Ra1 f2 g2 h2 v Kg8 Ra8 g7 h7",
     "White three pawns against two on one wing f2 g2 h2 / g7 h7"},
    {{"OppositeCastling"},
     "Kb1 Qd2 Rd1 a2 b2 c2 d4 v Kg8 Qd8 Rf8 f7 g7 h7",
     "both opposite castling b1 / g8"},
    {{"InitialPawns"},
     "Kg1 a2 b2 c2 d2 e2 f2 g2 h2 v Kg8 a7 b7 c7 d7 e7 f7 g7 h7",
     ""},
    {{"FirstMoves"},
     "Kg1 a2 b2 c2 d2 e4 f2 g2 h2 v Kg8 a7 b7 c7 d7 e5 f7 g7 h7",
     ""},
    {{"KingsAlone"}, "Kg1 v Kg8", ""},
};

class Structures : public ::testing::TestWithParam<Example> {
 protected:
  const Position position_ = FromPieces(GetParam().pieces);
  const std::vector<std::string> expected_ =
      testing_support::Parts(GetParam().structures);
};

TEST_P(Structures, AreNamed) {
  EXPECT_EQ(Describe(position_, false), expected_);
}

TEST_P(Structures, AreNamedForTheOtherSide) {
  EXPECT_EQ(Describe(SwapColours(position_), true), expected_);
}

// Each pawn that a structure is said to be made of is one: without it, the
// owner has no such structure, or one made of other pawns.
TEST_P(Structures, AreMadeOfTheirPawns) {
  const StructureList all = FindStructures(Facts(position_));
  for (const NamedStructure& found : all) {
    if (found.structure == PawnStructure::kOppositeCastling) continue;
    for (const Square square : Each(found.own | found.others)) {
      std::string pieces = GetParam().pieces;
      pieces.erase(pieces.find(' ' + ToString(square)), 3);
      const Position without = FromPieces(pieces);
      for (const NamedStructure& other : FindStructures(Facts(without))) {
        EXPECT_FALSE(other.structure == found.structure &&
                     other.owner == found.owner)
            << pieces << " has " << Name(found.structure);
      }
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Positions, Structures, ::testing::ValuesIn(kExamples),
                         testing_support::NameOfRow());

// A pawn too many, or one on another square.
struct Miss : Row {
  PawnStructure structure;
  const char* pieces;
};

constexpr Miss kMisses[] = {
    {{"IsolaniBesideAnEPawn"},
     PawnStructure::kIsolatedQueensPawn,
     "Kg1 a2 b2 d4 e3 g2 h2 v Kg8 a7 b7 e6 f7 g7 h7"},
    {{"IsolaniPassed"},
     PawnStructure::kIsolatedQueensPawn,
     "Kg1 a2 b2 d4 f2 g2 h2 v Kg8 a7 b7 f7 g7 h7"},
    {{"IsolaniRammed"},
     PawnStructure::kIsolatedQueensPawn,
     "Kg1 a2 b2 d4 f2 g2 h2 v Kg8 a7 b7 d5 e6 g7 h7"},
    {{"HangingPawnsBesideABPawn"},
     PawnStructure::kHangingPawns,
     "Kg1 b2 c4 d4 f2 g2 h2 v Kg8 a7 b7 e6 f7 g7 h7"},
    {{"HangingPawnsAgainstAnEnemyOnTheFile"},
     PawnStructure::kHangingPawns,
     "Kg1 a2 c4 d4 f2 g2 h2 v Kg8 a7 b7 c6 e6 g7 h7"},
    {{"CoupleBesideABPawn"},
     PawnStructure::kIsolatedCouple,
     "Kg1 b2 c3 d4 f2 g2 h2 v Kg8 a7 b7 e6 f7 g7 h7"},
    {{"CarlsbadWithACPawn"},
     PawnStructure::kMinorityAttack,
     "Kg1 b2 c3 d4 e3 f2 g2 h2 v Kg8 a7 b7 c6 d5 f7 g7 h7"},
    {{"CarlsbadAgainstAnEPawn"},
     PawnStructure::kMinorityAttack,
     "Kg1 a2 b2 d4 e3 f2 g2 v Kg8 a7 b7 c6 d5 e6 f7 g7"},
    {{"StoneWallWithoutItsFPawn"},
     PawnStructure::kStoneWall,
     "Kg1 a2 b2 c4 d4 e3 f2 g3 h2 v Kg8 a7 b7 c6 d5 e6 f6 g7 h7"},
    {{"FrenchChainNotYetAdvanced"},
     PawnStructure::kFrenchChain,
     "Kg1 a2 b2 c3 d4 e4 f2 g2 h2 v Kg8 a7 b7 c5 d5 e6 f7 g7 h7"},
    {{"KingsIndianBeforeTheAdvance"},
     PawnStructure::kKingsIndianChain,
     "Kg1 a2 b2 c4 d4 e4 f2 g2 h2 v Kg8 a7 b7 c7 d6 e5 f7 g6 h7"},
    {{"SpanishWithC4"},
     PawnStructure::kSpanishChain,
     "Kg1 a2 b2 c4 d5 e4 f2 g2 h3 v Kg8 a6 b5 c5 d6 e5 f7 g7 h6"},
    {{"BenoniWithAnEPawn"},
     PawnStructure::kBenoniMajority,
     "Kg1 a2 b2 d5 e4 f2 g2 h2 v Kg8 a7 b7 c5 d6 e7 f7 g6"},
    {{"BenoniWithACPawn"},
     PawnStructure::kBenoniMajority,
     "Kg1 a2 c4 d5 e4 f2 g2 h2 v Kg8 a7 b7 c5 d6 f7 g6 h7"},
    {{"BindWithADPawn"},
     PawnStructure::kBind,
     "Kg1 a2 b2 c4 d3 e4 f2 g2 v Kg8 a7 b7 d6 e7 f7 g6 h7"},
    {{"HedgehogWithACPawn"},
     PawnStructure::kHedgehog,
     "Kg1 a2 b2 c4 e4 f3 g2 h2 v Kg8 a6 b6 c7 d6 e6 f7 g7"},
    {{"CaroKannWithAnEPawn"},
     PawnStructure::kCaroSlav,
     "Kg1 a2 b2 c4 d4 e3 g2 h2 v Kg8 a7 b7 c6 e6 f7 g7 h7"},
    {{"SmallCentreAgainstC4"},
     PawnStructure::kSmallCentre,
     "Kg1 a2 b2 c4 e4 f2 g2 h2 v Kg8 a6 b7 d6 e6 f7 g7 h7"},
    {{"NoHoleBesideACPawn"},
     PawnStructure::kBackwardBehindHole,
     "Kg1 a2 b2 c2 e4 f2 g2 h2 v Kg8 a6 c7 d6 e5 f7 g7 h7"},
    {{"DragonWithE6"},
     PawnStructure::kDragon,
     "Kg1 a2 b2 c2 e4 f2 g2 h2 v Kg8 a7 b7 d6 e6 f7 g6 h7"},
    {{"OpenDFileWithC7"},
     PawnStructure::kOpenDFile,
     "Kg1 a2 b2 c2 e4 f2 g2 h2 v Kg8 a7 b7 c7 e5 f7 g7 h7"},
    {{"ExchangeRuyWithoutTheMajority"},
     PawnStructure::kExchangeRuyLopez,
     "Kg1 a2 b2 c2 e4 f2 g2 v Kg8 a7 b7 c6 c7 f7 g7 h7"},
    {{"ExchangeFrenchWithE3"},
     PawnStructure::kExchangeFrench,
     "Kg1 a2 b2 c2 d4 e3 g2 h2 v Kg8 a7 b7 c7 d5 f7 g7 h7"},
    {{"CentreHeldByARam"},
     PawnStructure::kTwoPawnCentre,
     "Kg1 a2 c3 d4 e4 f2 g2 h2 v Kg8 a7 b7 c5 e5 f7 g6 h7"},
    {{"TwoAgainstTwoInTheCentre"},
     PawnStructure::kTwoPawnCentre,
     "Kg1 a2 c3 d4 e4 f2 g2 h2 v Kg8 a7 b7 d6 e7 f7 g6 h7"},
    {{"DoubledBesideABPawn"},
     PawnStructure::kDoubledCPawns,
     "Kg1 b2 c3 c4 d4 e3 f2 g2 h2 v Kg8 a7 b6 c5 d6 e6 f7 g7 h7"},
    {{"NotClosed"},
     PawnStructure::kDoubledCPawnsClosed,
     "Kg1 a2 c3 c4 d4 e4 f2 g2 h2 v Kg8 a7 b7 c5 d6 e5 f7 g7 h7"},
    {{"PawnsOnBothWings"},
     PawnStructure::kThreeAgainstTwo,
     "Kg1 Ra1 a2 g2 h2 v Kg8 Ra8 g7 h7"},
    {{"CastledOnOneSide"},
     PawnStructure::kOppositeCastling,
     "Kg1 Qd2 Rd1 a2 b2 c2 d4 v Kg8 Qd8 Rf8 f7 g7 h7"},
    {{"OppositeCastlingWithoutQueens"},
     PawnStructure::kOppositeCastling,
     "Kb1 Rd1 a2 b2 c2 d4 v Kg8 Rf8 f7 g7 h7"},
    {{"OneSideHasMoreSpace"},
     PawnStructure::kSymmetrical,
     "Kg1 a2 b2 d4 e3 f2 g2 h2 v Kg8 a7 b7 d6 e6 f7 g7 h7"},
    {{"BackwardButTheFileIsClosed"},
     PawnStructure::kBackwardPawn,
     "Kg1 a2 b2 d5 e4 f2 g2 h2 v Kg8 a7 b7 c5 d6 f7 g6 h7"},
};

class NoStructures : public ::testing::TestWithParam<Miss> {};

TEST_P(NoStructures, AreNotNamed) {
  const Position position = FromPieces(GetParam().pieces);
  for (const Position& seen : {position, SwapColours(position)}) {
    for (const NamedStructure& found : FindStructures(Facts(seen))) {
      EXPECT_NE(found.structure, GetParam().structure);
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Positions, NoStructures, ::testing::ValuesIn(kMisses),
                         testing_support::NameOfRow());

// The names that handbook.tsv uses in its own words.
const std::map<std::string, PawnStructure>& HandbookNames() {
  static const auto* names = new std::map<std::string, PawnStructure>{
      {"Carlsbad", PawnStructure::kMinorityAttack},
      {"IsolatedQueensPawn", PawnStructure::kIsolatedQueensPawn},
      {"HangingPawns", PawnStructure::kHangingPawns},
      {"IsolatedCouple", PawnStructure::kIsolatedCouple},
      {"Stonewall", PawnStructure::kStoneWall},
      {"FrenchChain", PawnStructure::kFrenchChain},
      {"FrenchChainNoC", PawnStructure::kFrenchChainWithoutCPawns},
      {"KingsIndianChain", PawnStructure::kKingsIndianChain},
      {"ModernBenoni", PawnStructure::kBenoniMajority},
      {"ClosedBenoni", PawnStructure::kClosedBenoni},
      {"MaroczyBind", PawnStructure::kBind},
      {"Hedgehog", PawnStructure::kHedgehog},
      {"CaroSlav", PawnStructure::kCaroSlav},
      {"Scheveningen", PawnStructure::kSmallCentre},
      {"Boleslavsky", PawnStructure::kBackwardBehindHole},
      {"Dragon", PawnStructure::kDragon},
      {"Rauzer", PawnStructure::kOpenDFile},
      {"ExchangeRuy", PawnStructure::kExchangeRuyLopez},
      {"ExchangeFrench", PawnStructure::kExchangeFrench},
      {"MobileCentre", PawnStructure::kTwoPawnCentre},
      {"RuyChain", PawnStructure::kSpanishChain},
      {"OppositeCastling", PawnStructure::kOppositeCastling},
      {"ExchangeSlav", PawnStructure::kSymmetrical},
      {"BackwardPawn", PawnStructure::kBackwardPawn},
  };
  return *names;
}

TEST(HandbookRows, HaveTheStructureThatTheyName) {
  std::set<PawnStructure> seen;
  for (const testing_support::HandbookRow& row : testing_support::ReadRows(
           std::string(ASSAY_PLANS_DIR) + "/handbook.tsv")) {
    const auto name = HandbookNames().find(row.structure());
    if (name == HandbookNames().end()) continue;
    seen.insert(name->second);
    const Position position = *PositionFromFen(row.fen());
    const StructureList found = FindStructures(Facts(position));
    EXPECT_TRUE(std::any_of(found.begin(), found.end(),
                            [&](const NamedStructure& structure) {
                              return structure.structure == name->second;
                            }))
        << row.name();
  }
  EXPECT_EQ(seen.size(), HandbookNames().size());
}

}  // namespace
}  // namespace assay
