// Completeness against the first published list of terms.
//
// C. Shannon, "Programming a Computer for Playing Chess", Philosophical
// Magazine, ser. 7, vol. 41, no. 314, March 1950, Appendix: items (1) to (5)
// of what an evaluation should weigh. Each item is a term of the catalogue or
// has a written reason why not.
#include <set>
#include <string>
#include <string_view>

#include "gtest/gtest.h"
#include "tests/support/from_pieces.h"
#include "tests/support/ledgers.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

struct Item : testing_support::Row {
  const char* number;   // in the Appendix
  const char* term;     // its name in the catalogue
  const char* with;     // White has an entry of it here
  const char* without;  // and none here
};

constexpr Item kItems[] = {
    {{"Material"},
     "1",
     "material",
     "Kg1 Nf3 g2 v Kg8 g7",
     "Kg1 Nf3 g2 v Kg8 Nf6 g7"},
    {{"BackwardPawn"},
     "2a",
     "backward_pawn",
     "Kg1 Re1 d3 e4 f2 v Kg8 Re8 c5 e6 f7",
     "Kg1 Re1 d3 e4 f2 v Kg8 Re8 c6 e6 f7"},
    {{"IsolatedPawn"},
     "2a",
     "isolated_pawn",
     "Kg1 Rd1 d4 a2 b2 g2 h2 v Kg8 Rd8 e6 f7 g7",
     "Kg1 Rd1 d4 b2 c2 g2 h2 v Kg8 Rd8 e6 f7 g7"},
    {{"DoubledPawns"},
     "2a",
     "doubled_pawns",
     "Kg1 Rd1 b2 c3 c4 v Kg8 Rd8 b7 c7 d6",
     "Kg1 Rd1 b2 c3 d4 v Kg8 Rd8 b7 c7 d6"},
    {{"ControlOfTheCentre"},
     "2b",
     "centre_control",
     "Kg1 Qd1 Nf3 c4 d4 e4 v Kg8 Qd8 Na6 b6 g6 h7",
     "Kg1 Qd1 Nf3 c4 d4 e4 v Kg8 Qd8 Nf6 c5 d5 e5"},
    {{"PawnsNearTheKing"},
     "2c",
     "flank_pawn_moved",
     "Kg1 Qd1 Rd2 f2 g4 h2 v Kg8 Qd8 Rd7 f7 g7 h7",
     "Kg1 Qd1 Rd2 f2 g2 h2 v Kg8 Qd8 Rd7 f7 g7 h7"},
    {{"PawnsOnTheColourOfTheBishop"},
     "2d",
     "bad_bishop",
     "Kg1 Be2 c4 d5 e4 v Kg8 Nf6 c5 d6 e5",
     "Kg1 Be3 c4 d5 e4 v Kg8 Nf6 c5 d6 e5"},
    {{"PassedPawn"},
     "2e",
     "passed_pawn",
     "Kg1 Ra1 a5 g2 v Kg8 Rd8 c7 g7",
     "Kg1 Ra1 a5 g2 v Kg8 Rd8 b7 g7"},
    {{"AdvancedKnight"},
     "3a",
     "outpost",
     "Kg1 Rd1 Nd5 c4 e4 v Kg8 Rd8 Nf6 b7 e5",
     "Kg1 Rd1 Nd5 c4 e4 v Kg8 Rd8 Nf6 c7 e5"},
    {{"RookOnAnOpenFile"},
     "3b",
     "rook_on_file",
     "Kg1 Rd1 a2 g2 v Kg8 Ra8 a7 g7",
     "Kg1 Rd1 d2 g2 v Kg8 Ra8 a7 g7"},
    {{"RookOnASemiOpenFile"},
     "3b",
     "rook_on_file",
     "Kg1 Rd1 a2 g2 v Kg8 Ra8 d6 g7",
     "Kg1 Rd1 d2 g2 v Kg8 Ra8 d6 g7"},
    {{"RookOnTheSeventh"},
     "3c",
     "seventh_rank",
     "Kg1 Rd7 g2 h2 v Kg8 Ra8 a6 h7",
     "Kg1 Rd6 g2 h2 v Kg8 Ra8 a6 h7"},
    {{"DoubledRooks"},
     "3d",
     "doubled_rooks",
     "Kg1 Rd1 Rd3 a2 g2 v Kg8 Ra8 Rf8 a7 g7",
     "Kg1 Rd1 Re3 a2 g2 v Kg8 Ra8 Rf8 a7 g7"},
    {{"SquaresNextToTheKing"},
     "4c",
     "king_attackers",
     "Kg1 f2 g2 h2 Nf1 Rd1 v Kg8 Qg5 Nf4 Bb7 f7 g7 h7",
     "Kg1 f2 g2 h2 Nf1 Rd1 v Kg8 Qa5 Nc6 Bb7 f7 g7 h7"},
    {{"Pin"},
     "4d",
     "pinned",
     "Kg1 Qd1 Nf3 g2 h2 v Kg8 Qd8 Bg4 g7 h7",
     "Kg1 Qe1 Nf3 g2 h2 v Kg8 Qd8 Bg4 g7 h7"},
    {{"Mobility"},
     "5",
     "scope",
     "Kg1 Rd1 Bd4 a2 g2 v Kg8 Rd8 Bh7 a7 g6",
     "Kg1 h2 v Kg8 h7"},
};

// What no term weighs, and why.
struct LeftOut {
  const char* number;
  const char* reason;
};

constexpr LeftOut kLeftOut[] = {
    {"4a",
     "A piece tied to guarding is weighed where that costs something now: "
     "defenders in the siege of a weak pawn, pins. Being overloaded is decided "
     "by the opponent's moves, so it is shown with a line (OVERLOADED)."},
    {"4b",
     "An attack that wins something is weighed (hanging). The bare option to "
     "exchange is good for one side or the other depending on everything else "
     "in the ledger, so it has no size of its own."},
};

// The term of a name, or null.
const TermInfo* Find(std::string_view name) {
  for (int i = 0; i < kTerms; ++i) {
    const TermInfo& info = Info(static_cast<TermId>(i));
    if (info.name == name) return &info;
  }
  return nullptr;
}

bool Fires(const Position& position, Side side, TermId term) {
  for (const Entry& entry : testing_support::LedgerOf(position).entries) {
    if (entry.term == term && entry.side == side) return true;
  }
  return false;
}

class Items : public ::testing::TestWithParam<Item> {};

TEST_P(Items, AreTermsThatFire) {
  const Item& row = GetParam();
  const TermInfo* info = Find(row.term);
  ASSERT_NE(info, nullptr) << row.term;
  const Position with = testing_support::FromPieces(row.with);
  const Position without = testing_support::FromPieces(row.without);
  EXPECT_TRUE(Fires(with, Side::kWhite, info->id));
  EXPECT_TRUE(Fires(SwapColours(with), Side::kBlack, info->id));
  EXPECT_FALSE(Fires(without, Side::kWhite, info->id));
  EXPECT_FALSE(Fires(SwapColours(without), Side::kBlack, info->id));
}

INSTANTIATE_TEST_SUITE_P(Shannon, Items, ::testing::ValuesIn(kItems),
                         testing_support::NameOfRow());

TEST(ShannonsAppendix, IsCoveredItemByItem) {
  std::set<std::string> covered;
  for (const Item& item : kItems) covered.insert(item.number);
  for (const LeftOut& item : kLeftOut) {
    EXPECT_TRUE(covered.insert(item.number).second)
        << item.number << " is weighed after all: " << item.reason;
  }
  const std::set<std::string> all = {"1",  "2a", "2b", "2c", "2d",
                                     "2e", "3a", "3b", "3c", "3d",
                                     "4a", "4b", "4c", "4d", "5"};
  EXPECT_EQ(covered, all);
}

}  // namespace
}  // namespace assay
