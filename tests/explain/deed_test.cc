// What a move plainly does, on positions of ours. Common practice, no source.
#include "assay/explain/deed.h"

#include <gtest/gtest.h>

#include <string>

#include "assay/explain/assayer.h"
#include "assay/explain/catalogue.h"
#include "assay/notation/san.h"
#include "tests/support/printers.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

using testing_support::FromFen;

struct Case {
  const char* name;
  const char* fen;
  const char* move;
  const char* deed;  // "" where it has no name
};

class Deed : public ::testing::TestWithParam<Case> {};

TEST_P(Deed, IsTheOneThatTellsMost) {
  const Position position = FromFen(GetParam().fen);
  ClaimTable table;
  ClaimRefs refs;
  const Message deed =
      DeedOf(position, {*ParseSan(position, GetParam().move)}, table, refs);
  const std::string text = deed.empty() ? "" : Catalogue::English().Text(deed);
  EXPECT_EQ(text, GetParam().deed);
  EXPECT_EQ(table.claims().empty(), deed.empty());
}

INSTANTIATE_TEST_SUITE_P(
    Positions, Deed,
    ::testing::Values(
        Case{"PinsAKnightToTheQueen",
             "3q2k1/5ppp/5n2/8/8/8/5PPP/2B3K1 w - - 0 1", "Bg5",
             "pins the knight on f6"},
        Case{"APinnedPawnIsNoNews", "6k1/5p1p/8/8/8/8/5PPP/5BK1 w - - 0 1",
             "Bc4", "develops the bishop"},
        Case{"StepsOutOfAPin", "4k3/4npp1/8/8/8/8/5PPP/4R1K1 b - - 0 1", "Kf8",
             "unpins the knight on e7"},
        Case{"ThePinnedKnightItselfCannot",
             "4k3/3bnpp1/8/8/8/8/5PPP/4R1K1 b - - 0 1", "Bc6", ""},
        Case{"SeventhRank", "6k1/5ppp/8/8/8/8/5PPP/3R2K1 w - - 0 1", "Rd7",
             "puts the rook on the seventh rank"},
        Case{"SixthRank", "6k1/5ppp/8/8/8/8/5PPP/3R2K1 w - - 0 1", "Rd6", ""}),
    [](const auto& one) { return std::string(one.param.name); });

// Black mates on the first rank; what moves away from it says so.
TEST(Advice, SaysThatTheMoveMeetsTheThreat) {
  const Explanation explanation =
      Assayer().Explain(FromFen("6k1/1p3pp1/7p/1P6/3R4/8/r4PPP/6K1 w - - 0 1"));
  ASSERT_FALSE(explanation.threats.empty());
  EXPECT_EQ(explanation.threats.back().side, Side::kBlack);
  ASSERT_TRUE(explanation.advice.has_value());
  EXPECT_NE(explanation.advice->text.find("meets the threat of mate"),
            std::string::npos)
      << explanation.advice->text;
}

}  // namespace
}  // namespace assay
