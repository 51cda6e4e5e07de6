// JSON lines read back into the messages of the public contract, and checked
// against the library.
#include <sstream>
#include <string>
#include <vector>

#include "assay/explain/assayer.h"
#include "assay/notation/fen.h"
#include "assay/terms/term.h"
#include "assay/v1/explainer.pb.h"
#include "gmock/gmock.h"
#include "google/protobuf/util/json_util.h"
#include "gtest/gtest.h"
#include "tests/support/plausible_play.h"
#include "tests/support/run_program.h"

namespace assay {
namespace {

using testing_support::ProgramInput;
using testing_support::ProgramResult;

constexpr char kFen[] = "4k3/pp6/8/8/8/8/PP6/4K2R w K - 0 1";

ProgramResult RunAssay(const std::vector<std::string>& arguments,
                       const std::string& standard_input = "") {
  ProgramInput input;
  input.standard_input = standard_input;
  return testing_support::RunProgram(ASSAY_PROGRAM, arguments, input);
}

// Every field of a line must be known to the message.
template <class Message>
std::vector<Message> Read(const std::string& text) {
  std::vector<Message> messages;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    messages.emplace_back();
    const auto status =
        google::protobuf::util::JsonStringToMessage(line, &messages.back());
    EXPECT_TRUE(status.ok()) << status.ToString() << ": " << line;
  }
  return messages;
}

template <class Refs>
void ExpectRefs(const Refs& refs, int size) {
  EXPECT_GT(refs.size(), 0);
  for (const auto ref : refs) EXPECT_LT(static_cast<int>(ref), size);
}

void ExpectSameAsLibrary(const v1::Explanation& message,
                         const Position& position) {
  const Assayer assayer;
  const Explanation expected = assayer.Explain(position);
  EXPECT_EQ(message.fen(), ToFen(position));
  EXPECT_EQ(message.side_to_move() == v1::SIDE_WHITE,
            position.side_to_move() == Side::kWhite);
  EXPECT_EQ(message.score_cp(), expected.score_cp);
  EXPECT_EQ(message.verdict().nag(), expected.verdict.nag);
  EXPECT_EQ(message.summary(), expected.summary);
  EXPECT_EQ(message.provenance().weights_fingerprint(),
            assayer.weights_fingerprint());
  EXPECT_EQ(message.provenance().catalogue_version(), kCatalogueVersion);
  EXPECT_EQ(message.claims_size(), static_cast<int>(expected.claims.size()));
  int sum = 0;
  for (const v1::LedgerEntry& entry : message.ledger()) {
    sum += entry.value_cp();
    EXPECT_NE(entry.side(), v1::SIDE_UNSPECIFIED);
    ExpectRefs(entry.claims(), message.claims_size());
  }
  EXPECT_EQ(sum, message.score_cp());
  for (const v1::Reason& reason : message.reasons()) {
    ExpectRefs(reason.claims(), message.claims_size());
    ExpectRefs(reason.entries(), message.ledger_size());
  }
  ExpectRefs(message.verdict().claims(), message.claims_size());
  ExpectRefs(message.summary_claims(), message.claims_size());
  ExpectRefs(message.structure().claims(), message.claims_size());
  for (int i = 0; i < message.claims_size(); ++i) {
    const Claim& claim = expected.claims[static_cast<std::size_t>(i)];
    EXPECT_EQ(v1::ClaimKind_Name(message.claims(i).kind()),
              std::string("CLAIM_KIND_") + Name(claim.kind));
    EXPECT_EQ(message.claims(i).squares_size(),
              static_cast<int>(claim.squares.size()));
    EXPECT_EQ(message.claims(i).count(), claim.count);
  }
}

TEST(JsonLines, AreWhatTheLibrarySays) {
  std::vector<Position> positions;
  std::string fens;
  testing_support::PlayPlausibly(61, 300, [&](const Position& position) {
    positions.push_back(position);
    fens += ToFen(position) + "\n";
  });
  const ProgramResult result =
      RunAssay({"explain", "--format=json", "-"}, fens);
  EXPECT_EQ(result.exit_code, 0);
  const auto messages = Read<v1::ExplainStreamResponse>(result.out);
  ASSERT_EQ(messages.size(), positions.size());
  for (std::size_t i = 0; i < messages.size() && !HasFailure(); ++i) {
    ASSERT_TRUE(messages[i].has_explanation());
    ExpectSameAsLibrary(messages[i].explanation(), positions[i]);
  }
}

TEST(JsonLines, HaveErrorsInTheirPlace) {
  const ProgramResult result = RunAssay(
      {"explain", "--format", "json", "-"},
      std::string(kFen) + "\n4k3/8/8/8/8/8/8/4K2 x y -\n" + kFen + "\n");
  EXPECT_EQ(result.exit_code, 1);
  EXPECT_EQ(result.err, "");
  const auto messages = Read<v1::ExplainStreamResponse>(result.out);
  ASSERT_EQ(messages.size(), 3U);
  EXPECT_TRUE(messages[0].has_explanation());
  EXPECT_TRUE(messages[2].has_explanation());
  ASSERT_TRUE(messages[1].has_error());
  const v1::ItemError& error = messages[1].error();
  EXPECT_EQ(error.code(), 3);  // INVALID_ARGUMENT
  EXPECT_FALSE(error.message().empty());
  std::vector<std::string> fields;
  for (const v1::FieldProblem& problem : error.problems()) {
    fields.push_back(problem.field());
    EXPECT_FALSE(problem.reason().empty());
    EXPECT_FALSE(problem.found().empty());
    EXPECT_FALSE(problem.expected().empty());
  }
  EXPECT_THAT(fields, ::testing::ElementsAre("placement", "side", "castling"));
}

// The contract allows ten problems an item.
TEST(JsonLines, HaveAtMostTenProblems) {
  const ProgramResult result = RunAssay({"explain", "--format", "json", "-"},
                                        "9/9/9/9/9/9/9/9 x y z ? !\n");
  const auto messages = Read<v1::ExplainStreamResponse>(result.out);
  ASSERT_EQ(messages.size(), 1U);
  EXPECT_EQ(messages[0].error().problems_size(), 10);
}

TEST(JsonLines, OfOnePositionAreTheSameAsOfABatch) {
  const ProgramResult one = RunAssay({"explain", "--format", "json", kFen});
  const ProgramResult batch =
      RunAssay({"explain", "--format", "json", "-"}, kFen);
  EXPECT_EQ(one.exit_code, 0);
  EXPECT_EQ(one.out, batch.out);
}

TEST(JsonLines, HaveEveryClaimOnRequest) {
  const auto some = Read<v1::ExplainResponse>(
      RunAssay({"explain", "--format=json", kFen}).out);
  const auto all = Read<v1::ExplainResponse>(
      RunAssay({"explain", "--format=json", "--all-claims", kFen}).out);
  ASSERT_EQ(some.size(), 1U);
  ASSERT_EQ(all.size(), 1U);
  EXPECT_GT(all[0].explanation().claims_size(),
            some[0].explanation().claims_size());
}

TEST(JsonScores, HaveScoreOrError) {
  const ProgramResult result =
      RunAssay({"score", "--format", "json", "-"},
               std::string(kFen) + "\nnonsense\n4k3/8/8/8/8/8/8/4K3 w - -\n");
  EXPECT_EQ(result.exit_code, 1);
  const auto outcomes = Read<v1::ScoreOutcome>(result.out);
  ASSERT_EQ(outcomes.size(), 3U);
  EXPECT_EQ(outcomes[0].score_cp(),
            Assayer().Score(testing_support::FromFen(kFen)));
  EXPECT_TRUE(outcomes[1].has_error());
  // A score of nothing is said all the same.
  EXPECT_EQ(outcomes[2].outcome_case(), v1::ScoreOutcome::kScoreCp);
}

TEST(JsonTerms, AreTheCatalogue) {
  const auto lists =
      Read<v1::ListTermsResponse>(RunAssay({"terms", "--format", "json"}).out);
  ASSERT_EQ(lists.size(), 1U);
  EXPECT_EQ(lists[0].catalogue_version(), kCatalogueVersion);
  EXPECT_EQ(lists[0].weights_fingerprint(), Assayer().weights_fingerprint());
  ASSERT_EQ(lists[0].terms_size(), kTerms);
  for (int i = 0; i < kTerms; ++i) {
    const TermInfo& info = Info(static_cast<TermId>(i));
    EXPECT_EQ(lists[0].terms(i).id(), std::string(info.name));
    EXPECT_EQ(lists[0].terms(i).source(), std::string(info.source));
  }
}

}  // namespace
}  // namespace assay
