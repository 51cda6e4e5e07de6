// Against the table of well-formed byte sequences of the Unicode standard
// (table 3-7 of version 15), from memory.
#include "service/server/utf8.h"

#include <string>
#include <vector>

#include "assay/v1/explainer.pb.h"
#include "gtest/gtest.h"

namespace assay::service {
namespace {

TEST(Utf8, TakesWellFormedText) {
  for (const char* text :
       {"", "a", "\x7F", "\xC2\x80", "\xDF\xBF", "\xE0\xA0\x80", "\xED\x9F\xBF",
        "\xEE\x80\x80", "\xEF\xBF\xBF", "\xF0\x90\x80\x80", "\xF4\x8F\xBF\xBF",
        "Tal\xE2\x80\x93"
        "Fischer"}) {
    EXPECT_TRUE(IsUtf8(text)) << text;
  }
}

TEST(Utf8, RefusesIllFormedText) {
  for (const char* text :
       {"\x80", "\xBF", "\xC0\x80", "\xC1\xBF", "\xC2", "\xC2\x7F",
        "\xE0\x9F\xBF", "\xE2\x82", "\xED\xA0\x80", "\xF0\x8F\xBF\xBF",
        "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xFF", "a\xE2\x28\xA1"}) {
    EXPECT_FALSE(IsUtf8(text)) << text;
  }
}

// protobuf's own parser must agree that there is a fault.
TEST(Utf8, FaultsAreFoundWithTheirPath) {
  v1::ExplainBatchRequest batch;
  batch.add_requests()->set_tag("fine");
  batch.add_requests()->mutable_position()->mutable_line()->add_moves("e4");
  std::string bytes = batch.SerializeAsString();
  bytes.replace(bytes.find("e4"), 2, "\xC3\x28");
  bytes.replace(bytes.find("fine"), 4,
                "\xFF\xFE"
                "ab");
  EXPECT_FALSE(batch.ParseFromString(bytes));
  std::vector<std::string> fields;
  for (const Problem& problem :
       Utf8Problems(bytes, *v1::ExplainBatchRequest::descriptor())) {
    fields.push_back(problem.field);
  }
  EXPECT_EQ(fields,
            (std::vector<std::string>{"requests[0].tag",
                                      "requests[1].position.line.moves[0]"}));
}

TEST(Utf8, HasNothingToSayOfBytesThatAreNoMessage) {
  EXPECT_TRUE(
      Utf8Problems("\xFF\xFF", *v1::ExplainRequest::descriptor()).empty());
}

}  // namespace
}  // namespace assay::service
