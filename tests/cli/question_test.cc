// move, compare and whatif on the command line: what is printed, and how bad
// questions end.
#include <string>
#include <vector>

#include "assay/v1/explainer.pb.h"
#include "gmock/gmock.h"
#include "google/protobuf/util/json_util.h"
#include "gtest/gtest.h"
#include "tests/support/rows.h"
#include "tests/support/run_program.h"

namespace assay {
namespace {

using ::testing::HasSubstr;
using testing_support::ProgramResult;
using testing_support::RunProgram;

using Words = std::vector<std::string>;

constexpr char kItalian[] =
    "r1bqk1nr/pppp1ppp/2n5/2b1p3/2B1P3/5N2/PPPP1PPP/RNBQK2R w KQkq - 4 4";

ProgramResult RunAssay(const Words& arguments) {
  return RunProgram(ASSAY_PROGRAM, arguments);
}

template <class Message>
Message FromJson(const std::string& json) {
  Message message;
  EXPECT_TRUE(google::protobuf::util::JsonStringToMessage(json, &message).ok())
      << json;
  return message;
}

TEST(Move, PrintsTheMessageAsJson) {
  const ProgramResult result =
      RunAssay({"move", kItalian, "O-O", "--format=json"});
  EXPECT_EQ(result.exit_code, 0);
  EXPECT_EQ(result.out.find('\n'), result.out.size() - 1);
  const auto told = FromJson<v1::ExplainMoveResponse>(result.out).explanation();
  EXPECT_EQ(told.san(), "O-O");
  EXPECT_TRUE(told.has_proof());
  EXPECT_EQ(told.proof().line(0), "O-O");
  EXPECT_GT(told.claims_size(), 0);
  EXPECT_EQ(told.provenance().weights_fingerprint().size(), 16U);
}

TEST(Move, TakesCoordinatesAndAFenWithoutQuotes) {
  const ProgramResult quoted = RunAssay({"move", kItalian, "e1g1", "--static"});
  EXPECT_EQ(quoted.exit_code, 0) << quoted.err;
  const ProgramResult bare = RunAssay(
      {"move", "r1bqk1nr/pppp1ppp/2n5/2b1p3/2B1P3/5N2/PPPP1PPP/RNBQK2R", "w",
       "KQkq", "-", "4", "4", "O-O", "--static"});
  EXPECT_EQ(bare.out, quoted.out);
}

TEST(Move, IsNotSearchedWhenStatic) {
  const auto told =
      FromJson<v1::ExplainMoveResponse>(
          RunAssay({"move", kItalian, "O-O", "--static", "--format=json"}).out)
          .explanation();
  EXPECT_FALSE(told.has_proof());
  EXPECT_FALSE(told.has_reply_to_fear());
}

TEST(Move, ShowsEveryChangeOnRequest) {
  const ProgramResult few = RunAssay({"move", kItalian, "O-O", "--static"});
  const ProgramResult all =
      RunAssay({"move", kItalian, "O-O", "--static", "--ledger"});
  EXPECT_THAT(all.out, HasSubstr("has the move"));
  EXPECT_THAT(few.out, ::testing::Not(HasSubstr("has the move")));
}

TEST(Compare, ComparesMovesAndPositions) {
  const auto moves = FromJson<v1::CompareResponse>(
      RunAssay({"compare", kItalian, "O-O", "c3", "--static", "--format=json"})
          .out);
  EXPECT_EQ(moves.explanations_size(), 2);
  EXPECT_NE(moves.decides(), "");
  const auto positions = FromJson<v1::CompareResponse>(
      RunAssay({"compare", kItalian, "--with",
                "4k3/8/8/8/8/8/4P3/4K3 w - - 0 1", "--with", kItalian,
                "--static", "--format=json"})
          .out);
  EXPECT_EQ(positions.explanations_size(), 3);
  EXPECT_EQ(positions.claims_of_others_size(), 2);
}

TEST(WhatIf, TellsTheChangeAndAttributes) {
  const auto told = FromJson<v1::WhatIfResponse>(
      RunAssay({"whatif", kItalian, "off-c4", "--format=json"}).out);
  int sum = 0;
  for (const auto& change : told.changes()) sum += change.change_cp();
  EXPECT_EQ(sum, told.score_after_cp() - told.score_before_cp());
  EXPECT_EQ(told.attributions_size(), 30);
  EXPECT_THAT(told.summary(), HasSubstr("Without the bishop on c4 Black"));
}

struct Failure : testing_support::Row {
  Words arguments;
  const char* message;  // a part of it
};

const Failure kFailures[] = {
    {{"MoveWithoutAFen"}, {"move"}, "operand: missing"},
    {{"MoveWithoutAMove"}, {"move", kItalian}, "0 moves"},
    {{"TwoMoves"}, {"move", kItalian, "O-O", "c3"}, "2 moves"},
    {{"IllegalMove"}, {"move", kItalian, "Ke3"}, "illegal move"},
    {{"UnreadableMove"}, {"move", kItalian, "hello"}, "not a move"},
    {{"BadFen"}, {"move", "8/8 w", "e4"}, "placement"},
    {{"OneToCompare"}, {"compare", kItalian, "O-O"}, "1 to compare"},
    {{"NineToCompare"},
     {"compare", kItalian, "a3", "a4", "b3", "b4", "c3", "d3", "d4", "h3",
      "h4"},
     "9 to compare"},
    {{"EveryBadMove"}, {"compare", kItalian, "Ke3", "c3", "Qh8"}, "Qh8"},
    {{"BadOther"}, {"compare", kItalian, "--with", "nonsense"}, "fen: "},
    {{"BadEdit"}, {"whatif", kItalian, "pass", "e4"}, "edits[1]: not an edit"},
    {{"NoKing"},
     {"whatif", kItalian, "off-e1"},
     "edits[0]: leaves no legal position"},
    {{"OptionOfOthers"},
     {"whatif", kItalian, "pass", "--static"},
     "not an option of whatif"},
};

class Questions : public ::testing::TestWithParam<Failure> {};

TEST_P(Questions, EndWithTwoWhenBad) {
  const ProgramResult result = RunAssay(GetParam().arguments);
  EXPECT_EQ(result.exit_code, 2);
  EXPECT_EQ(result.out, "");
  EXPECT_THAT(result.err, HasSubstr(GetParam().message));
}

INSTANTIATE_TEST_SUITE_P(Failures, Questions, ::testing::ValuesIn(kFailures),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
