#include "service/server/status.h"

#include <string>
#include <vector>

#include "assay/base/problem.h"
#include "assay/base/problem_status.h"
#include "google/rpc/error_details.pb.h"
#include "google/rpc/status.pb.h"
#include "gtest/gtest.h"

namespace assay::service {
namespace {

google::rpc::Status DetailsOf(const grpc::Status& status) {
  google::rpc::Status details;
  EXPECT_TRUE(details.ParseFromString(status.error_details()));
  return details;
}

TEST(Status, OfGoodEndsIsPlain) {
  EXPECT_TRUE(ToGrpc(absl::OkStatus()).ok());
  EXPECT_EQ(ToGrpc(absl::CancelledError("x")).error_details(), "");
}

TEST(Status, CarriesAFieldViolationForEachProblem) {
  const grpc::Status status = ToGrpc(
      ProblemsStatus({{"position.fen:castling", "unknown", "\"x\"", "KQkq"},
                      {"tag", "too long", "130 bytes", ""}}));
  EXPECT_EQ(status.error_code(), grpc::StatusCode::INVALID_ARGUMENT);
  const google::rpc::Status details = DetailsOf(status);
  EXPECT_EQ(details.code(), 3);
  google::rpc::BadRequest bad;
  ASSERT_EQ(details.details_size(), 1);
  ASSERT_TRUE(details.details(0).UnpackTo(&bad));
  ASSERT_EQ(bad.field_violations_size(), 2);
  EXPECT_EQ(bad.field_violations(0).field(), "position.fen");
  EXPECT_EQ(bad.field_violations(0).description(),
            "castling: unknown: found \"x\", expected KQkq");
  EXPECT_EQ(bad.field_violations(1).field(), "tag");
  EXPECT_EQ(bad.field_violations(1).description(), "too long: found 130 bytes");
}

// Trailing metadata over 8 KiB would turn the code into another.
TEST(Status, StaysSmallWhateverIsWrong) {
  const std::vector<Problem> problems(
      100, {std::string("field"), std::string(2000, 'r'),
            std::string(2000, 'f'), std::string(2000, 'e')});
  const grpc::Status status = ToGrpc(ProblemsStatus(problems));
  EXPECT_LT(status.error_details().size() + status.error_message().size(),
            6000U);
  google::rpc::BadRequest bad;
  ASSERT_TRUE(DetailsOf(status).details(0).UnpackTo(&bad));
  EXPECT_EQ(bad.field_violations_size(), 10);
}

TEST(Status, OfOverloadSaysWhenToTryAgain) {
  const grpc::Status status =
      ToGrpc(Overloaded("busy", std::chrono::milliseconds(2345)));
  EXPECT_EQ(status.error_code(), grpc::StatusCode::RESOURCE_EXHAUSTED);
  google::rpc::RetryInfo retry;
  ASSERT_TRUE(DetailsOf(status).details(0).UnpackTo(&retry));
  EXPECT_EQ(retry.retry_delay().seconds(), 2);
  EXPECT_EQ(retry.retry_delay().nanos(), 345000000);
}

TEST(ItemErrors, NameThePartOfTheText) {
  v1::ItemError error;
  ToItemError(ProblemsStatus({{"position.fen:castling", "r", "f", "e"},
                              {"position.line.moves[3]", "r", "f", "e"}}),
              &error);
  EXPECT_EQ(error.code(), 3);
  ASSERT_EQ(error.problems_size(), 2);
  EXPECT_EQ(error.problems(0).field(), "castling");
  EXPECT_EQ(error.problems(1).field(), "position.line.moves[3]");
}

}  // namespace
}  // namespace assay::service
