// Why a side wins: the idea that the leading caution names, on positions of
// our own composition (motif_positions.tsv), and that no idea is named where
// nothing is to be won. The lines themselves are replayed with another rules
// library by tests/oracle/motif_oracle.mjs.
#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include "assay/explain/assayer.h"
#include "assay/notation/san.h"
#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "tests/explain/motif_rows.h"
#include "tests/support/printers.h"

namespace assay {
namespace {

using ::testing::AnyOfArray;
using ::testing::Contains;
using ::testing::HasSubstr;
using testing_support::FromFen;
using testing_support::MotifRow;
using testing_support::ReadMotifRows;

constexpr std::size_t kLeastRows = 60;

std::vector<MotifRow> Rows(bool decides) {
  return ReadMotifRows(ASSAY_MOTIF_POSITIONS, decides);
}

struct NameOfMotifRow {
  std::string operator()(const ::testing::TestParamInfo<MotifRow>& row) const {
    return row.param.name;
  }
};

Explanation Explain(const MotifRow& row) {
  ExplainOptions options;
  options.proof_nodes = kDefaultProofNodes;
  return Assayer().Explain(FromFen(row.fen.c_str()), options);
}

std::vector<Claim> ClaimsOf(const Explanation& explanation,
                            const Caution& caution) {
  std::vector<Claim> claims;
  for (const std::uint32_t ref : caution.claims) {
    claims.push_back(explanation.claims[ref]);
  }
  return claims;
}

bool Has(const std::vector<Claim>& claims, ClaimKind kind) {
  return std::any_of(claims.begin(), claims.end(),
                     [kind](const Claim& claim) { return claim.kind == kind; });
}

// Any of the claims that a caution of the kind may rest on besides its line.
std::set<ClaimKind> Evidence(const std::string& kind) {
  if (kind == "fork") return {ClaimKind::kFork};
  if (kind == "pin") return {ClaimKind::kPinWins};
  if (kind == "skewer") return {ClaimKind::kSkewer};
  if (kind == "discovered_attack") return {ClaimKind::kDiscovered};
  if (kind == "overloaded") {
    return {ClaimKind::kOverloaded, ClaimKind::kSoleGuard};
  }
  if (kind == "pinned_defender") return {ClaimKind::kPinned};
  if (kind == "undefended") {
    return {ClaimKind::kLoose, ClaimKind::kHanging, ClaimKind::kAttackCount};
  }
  if (kind == "trapped") return {ClaimKind::kTrapped};
  if (kind == "exchange") return {ClaimKind::kHanging, ClaimKind::kAttackCount};
  if (kind == "guard_removed") return {ClaimKind::kAttackCount};
  if (kind == "promotion") return {ClaimKind::kLine};
  if (kind == "back_rank") return {ClaimKind::kBackRank};
  if (kind == "mate") return {ClaimKind::kMateIn};
  return {};
}

class Deciding : public ::testing::TestWithParam<MotifRow> {};

TEST_P(Deciding, IsNamedWithItsLine) {
  const MotifRow& row = GetParam();
  const Explanation explanation = Explain(row);
  ASSERT_FALSE(explanation.cautions.empty()) << row;
  const Caution& caution = explanation.cautions.front();
  EXPECT_TRUE(caution.leads);
  EXPECT_THAT(explanation.summary, HasSubstr(caution.text));
  EXPECT_THAT(row.kinds, Contains(caution.kind)) << row << '\n' << caution.text;

  const std::vector<Claim> claims = ClaimsOf(explanation, caution);
  const bool mates = row.gain == "mate";
  const auto line =
      std::find_if(claims.begin(), claims.end(), [mates](const Claim& claim) {
        return claim.kind == (mates ? ClaimKind::kMateIn : ClaimKind::kLine);
      });
  ASSERT_NE(line, claims.end()) << row << '\n' << caution.text;
  EXPECT_EQ(line->side, row.winner == "white" ? Side::kWhite : Side::kBlack);
  ASSERT_FALSE(line->line.empty());
  EXPECT_EQ(ToSan(explanation.position, line->line.front()), row.move);
  if (mates) return;
  EXPECT_GE(line->count, std::stoi(row.gain)) << row << '\n' << caution.text;
  std::vector<::testing::Matcher<std::string>> squares;
  for (const std::string& square : row.squares) {
    squares.push_back(HasSubstr(square));
  }
  EXPECT_THAT(caution.text, AnyOfArray(squares)) << row;
}

// The kind is not a word alone: the claims say the same.
TEST_P(Deciding, RestsOnClaimsOfItsKind) {
  const MotifRow& row = GetParam();
  const Explanation explanation = Explain(row);
  ASSERT_FALSE(explanation.cautions.empty()) << row;
  const Caution& caution = explanation.cautions.front();
  const std::set<ClaimKind> evidence = Evidence(caution.kind);
  const std::vector<Claim> claims = ClaimsOf(explanation, caution);
  EXPECT_TRUE(std::any_of(evidence.begin(), evidence.end(),
                          [&](ClaimKind kind) { return Has(claims, kind); }))
      << row << '\n'
      << caution.kind << ": " << caution.text;
}

INSTANTIATE_TEST_SUITE_P(Motifs, Deciding, ::testing::ValuesIn(Rows(true)),
                         NameOfMotifRow());

class Nothing : public ::testing::TestWithParam<MotifRow> {};

TEST_P(Nothing, IsNamed) {
  const MotifRow& row = GetParam();
  const Explanation explanation = Explain(row);
  for (const Caution& caution : explanation.cautions) {
    EXPECT_TRUE(Evidence(caution.kind).empty())
        << row << '\n'
        << caution.kind << ": " << caution.text;
  }
  for (const Threat& threat : explanation.threats) {
    ADD_FAILURE() << row << '\n' << threat.text;
  }
}

INSTANTIATE_TEST_SUITE_P(Motifs, Nothing, ::testing::ValuesIn(Rows(false)),
                         NameOfMotifRow());

// A long plan may make a quiet position better than it counts; seldom.
TEST(PositionsWithNothing, AreMostlyQuiet) {
  std::size_t quiet = 0;
  const std::vector<MotifRow> rows = Rows(false);
  for (const MotifRow& row : rows) {
    if (Explain(row).verdict.quiet) ++quiet;
  }
  EXPECT_GE(quiet * 10, rows.size() * 9);
}

TEST(MotifRows, AreAllThere) {
  EXPECT_GE(Rows(true).size(), kLeastRows);
  EXPECT_GE(Rows(false).size(), kLeastRows);
}

}  // namespace
}  // namespace assay
