// The claims behind a number that depends on what can be done: who besieges,
// who holds, what can be exchanged. Wanted by the project's design (issue 5,
// "Plan-aware values"); the positions are our own.
#include <vector>

#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "tests/support/from_pieces.h"
#include "tests/support/ledgers.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

struct Behind : testing_support::Row {
  TermId term;
  const char* position;  // White has exactly one entry of the term
  std::vector<ClaimKind> present;
  std::vector<ClaimKind> absent;
};

const Behind kBehind[] = {
    {{"DoubledAndBesieged"},
     TermId::kDoubledPawns,
     "Kg1 Rf1 c3 c4 f2 g2 h2 v Kg8 Rc8 Nd6 a7 b7 f7 g7 h7",
     {ClaimKind::kDoubled, ClaimKind::kIsolated, ClaimKind::kHalfOpenFile,
      ClaimKind::kSiegeCount},
     {ClaimKind::kLever, ClaimKind::kLeverMove}},
    {{"DoubledAndOutOfReach"},
     TermId::kDoubledPawns,
     "Kg1 Rf1 c3 c4 f2 g2 h2 v Kg8 Rh8 Nh5 a7 b7 f7 g7 h7",
     {ClaimKind::kDoubled, ClaimKind::kHalfOpenFile},
     {ClaimKind::kSiegeCount}},
    {{"DoubledWithABreak"},
     TermId::kDoubledPawns,
     "Kg1 Rd1 b2 c3 c4 f2 g2 v Kg8 Rd8 a7 c7 d6 f7 g7",
     {ClaimKind::kDoubled, ClaimKind::kLeverMove},
     {ClaimKind::kIsolated, ClaimKind::kHalfOpenFile, ClaimKind::kLever}},
    {{"DoubledWithALever"},
     TermId::kDoubledPawns,
     "Kg1 Rf1 Bd2 a2 b2 e3 e4 g2 v Kg8 Rf8 Nc6 a7 b7 d5 e7 g7",
     {ClaimKind::kDoubled, ClaimKind::kLever},
     {ClaimKind::kHalfOpenFile}},
    {{"IsolatedOnAFileOpenToRooks"},
     TermId::kIsolatedPawn,
     "Kg1 Rd1 Nf3 a2 b2 d4 g2 h2 v Kg8 Rf8 Ng6 a7 b7 e6 g7 h7",
     {ClaimKind::kIsolated, ClaimKind::kHalfOpenFile},
     {ClaimKind::kBlockade, ClaimKind::kSiegeCount}},
    {{"IsolatedAndBlockaded"},
     TermId::kIsolatedPawn,
     "Kg1 Rd1 Nf3 a2 b2 d4 g2 h2 v Kg8 Rf8 Nd5 a7 b7 e6 g7 h7",
     {ClaimKind::kIsolated, ClaimKind::kHalfOpenFile, ClaimKind::kBlockade},
     {ClaimKind::kControl, ClaimKind::kSiegeCount}},
    {{"IsolatedAndItsStopSquareControlled"},
     TermId::kIsolatedPawn,
     "Kg1 a2 b2 d4 g2 h2 Nd2 v Kg8 Bb7 Nf6 a7 b6 e6 g7 h7",
     {ClaimKind::kIsolated, ClaimKind::kControl},
     {ClaimKind::kBlockade}},
    {{"IsolatedAndBesieged"},
     TermId::kIsolatedPawn,
     "Kg1 Nh3 a2 b2 d4 g2 h2 v Kg8 Rd8 Nc6 a7 b7 e6 g7 h7",
     {ClaimKind::kIsolated, ClaimKind::kSiegeCount},
     {ClaimKind::kBlockade}},
    {{"IsolatedBehindAPawn"},
     TermId::kIsolatedPawn,
     "Kg1 Rd1 Nf3 a2 b2 d4 g2 h2 v Kg8 Ra8 Nf6 a7 b7 d5 g7 h7",
     {ClaimKind::kIsolated},
     {ClaimKind::kHalfOpenFile, ClaimKind::kBlockade}},
    {{"PairBehindARam"},
     TermId::kBishopPair,
     "Kg1 Bc1 Bf1 a2 d4 h2 v Kg8 Nf6 a7 d5 h7",
     {ClaimKind::kBishopPair, ClaimKind::kRam, ClaimKind::kCentreFixed},
     {ClaimKind::kLeverMove}},
    {{"PairBehindARamWithABreak"},
     TermId::kBishopPair,
     "Kg1 Bc1 Bf1 c2 d4 h2 v Kg8 Nf6 a7 d5 h7",
     {ClaimKind::kBishopPair, ClaimKind::kRam, ClaimKind::kLeverMove},
     {}},
    {{"PairInTheOpen"},
     TermId::kBishopPair,
     "Kg1 Bc1 Bf1 a2 b2 h2 v Kg8 Nf6 a7 b7 h7",
     {ClaimKind::kBishopPair, ClaimKind::kCentreOpen},
     {ClaimKind::kRam, ClaimKind::kLeverMove}},
};

// The kinds of the claims behind the side's only entry of a term.
std::vector<ClaimKind> KindsBehind(const Position& position, Side side,
                                   TermId term) {
  const Ledger ledger = testing_support::LedgerOf(position);
  std::vector<ClaimKind> kinds;
  for (const Entry& entry : ledger.entries) {
    if (entry.term != term || entry.side != side) continue;
    EXPECT_TRUE(kinds.empty()) << "more than one entry";
    for (std::uint32_t i = 0; i < entry.claim_count; ++i) {
      kinds.push_back(ledger.claims[entry.first_claim + i].kind);
    }
  }
  return kinds;
}

class ClaimsBehind : public ::testing::TestWithParam<Behind> {};

TEST_P(ClaimsBehind, ANumberSayWhatItDependsOn) {
  const Behind& row = GetParam();
  const Position white = testing_support::FromPieces(row.position);
  for (const Side side : kSides) {
    const Position position = side == Side::kWhite ? white : SwapColours(white);
    const std::vector<ClaimKind> kinds = KindsBehind(position, side, row.term);
    for (const ClaimKind kind : row.present) {
      EXPECT_THAT(kinds, ::testing::Contains(kind)) << Name(kind);
    }
    for (const ClaimKind kind : row.absent) {
      EXPECT_THAT(kinds, ::testing::Not(::testing::Contains(kind)))
          << Name(kind);
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Positions, ClaimsBehind, ::testing::ValuesIn(kBehind),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
