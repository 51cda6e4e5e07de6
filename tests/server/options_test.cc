#include "service/server/options.h"

#include <sstream>
#include <string>
#include <vector>

#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "tests/support/rows.h"
#include "tests/support/run_program.h"

namespace assay::service {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using testing_support::TemporaryFile;

std::string ErrorOf(const std::vector<std::string>& words) {
  const auto options = ReadOptions(words);
  return options.ok() ? "none" : std::string(options.status().message());
}

TEST(Options, HaveSafeDefaults) {
  const auto options = ReadOptions({});
  ASSERT_TRUE(options.ok());
  EXPECT_THAT(options->listen, ElementsAre("127.0.0.1:50051"));
  EXPECT_FALSE(options->insecure);
  EXPECT_LT(options->metrics_port, 0);
}

TEST(Options, AreReadFromFlags) {
  const auto options = ReadOptions(
      {"--listen", "127.0.0.1:1", "--listen=unix:/tmp/x", "--workers=3",
       "--reflection=false", "--log-level", "error"});
  ASSERT_TRUE(options.ok()) << options.status();
  EXPECT_THAT(options->listen, ElementsAre("127.0.0.1:1", "unix:/tmp/x"));
  EXPECT_EQ(options->workers, 3);
  EXPECT_FALSE(options->reflection);
  EXPECT_EQ(options->log_level, LogLevel::kError);
}

TEST(Options, OfFlagsTakePrecedenceOverTheFile) {
  const std::string file = TemporaryFile(
      "# how we run\n\nlisten = 127.0.0.1:1\r\n workers=2 \nmemory-mb = 64\n");
  const auto options =
      ReadOptions({"--config", file, "--workers=5", "--listen=[::1]:7"});
  ASSERT_TRUE(options.ok()) << options.status();
  EXPECT_EQ(options->workers, 5);
  EXPECT_EQ(options->memory_mb, 64);
  EXPECT_THAT(options->listen, ElementsAre("[::1]:7"));
}

TEST(Options, ListedAreReadBackTheSame) {
  const auto options = ReadOptions(
      {"--listen=127.0.0.1:9", "--metrics-port=0", "--slow-call-ms=7"});
  ASSERT_TRUE(options.ok());
  const std::string text = ToText(*options);
  EXPECT_THAT(text, HasSubstr("slow-call-ms = 7\n"));
  const auto again = ReadOptions({"--config", TemporaryFile(text)});
  ASSERT_TRUE(again.ok()) << again.status();
  EXPECT_EQ(ToText(*again), text);
}

TEST(Options, AreAllInTheHelp) {
  const auto options = ReadOptions({"--metrics-port=0"});
  ASSERT_TRUE(options.ok());
  std::istringstream lines(ToText(*options));
  for (std::string line; std::getline(lines, line);) {
    EXPECT_THAT(OptionsHelp(),
                HasSubstr("--" + line.substr(0, line.find(' '))));
  }
}

struct BadRow : testing_support::Row {
  std::vector<std::string> words;
  const char* error;
};

class BadOptions : public ::testing::TestWithParam<BadRow> {};

TEST_P(BadOptions, AreRefusedWithTheReason) {
  EXPECT_THAT(ErrorOf(GetParam().words), HasSubstr(GetParam().error));
}

INSTANTIATE_TEST_SUITE_P(
    Rows, BadOptions,
    ::testing::Values(
        BadRow{{"Unknown"}, {"--frob"}, "frob: unknown option"},
        BadRow{{"NoFlag"}, {"serve"}, "flag: not a flag"},
        BadRow{{"NoValue"}, {"--workers"}, "workers: missing value"},
        BadRow{{"NotANumber"}, {"--workers=two"}, "workers: not a number"},
        BadRow{{"Negative"}, {"--workers=-1"}, "workers: not a number"},
        BadRow{{"TooLarge"}, {"--metrics-port=65536"}, "metrics-port: not a"},
        BadRow{{"NeitherYesNorNo"}, {"--insecure=maybe"}, "insecure: neither"},
        BadRow{{"Level"}, {"--log-level=loud"}, "log-level: unknown"},
        BadRow{{"AllAddresses"}, {"--listen=0.0.0.0:1"}, "no TLS"},
        BadRow{{"AllAddresses6"}, {"--listen=[::]:1"}, "no TLS"},
        BadRow{{"LocalLookalike"}, {"--listen=127.evil.org:1"}, "no TLS"},
        BadRow{{"NoPort"}, {"--listen=localhost"}, "listen: not an address"},
        BadRow{{"CertWithoutKey"}, {"--tls-cert=x"}, "one without the other"},
        BadRow{{"ClientCaAlone"}, {"--tls-client-ca=x"}, "tls-client-ca"},
        BadRow{{"BudgetOverCeiling"},
               {"--proof-nodes=2", "--max-proof-nodes=1"},
               "above max-proof-nodes"},
        BadRow{{"NoSuchFile"}, {"--config=/no/such"}, "config: cannot read"},
        BadRow{{"AllAtOnce"}, {"--frob", "--workers=x"}, "; workers"}),
    testing_support::NameOfRow());

TEST(Options, MayListenAnywhereWhenSpelledOut) {
  EXPECT_EQ(ErrorOf({"--listen=0.0.0.0:1", "--insecure"}), "none");
  EXPECT_EQ(ErrorOf({"--listen=0.0.0.0:1", "--tls-cert=a", "--tls-key=b"}),
            "none");
}

TEST(ConfigLines, ThatAreNoneAreRefused) {
  EXPECT_THAT(ErrorOf({"--config", TemporaryFile("workers 3\n")}),
              HasSubstr("config: not an option"));
}

}  // namespace
}  // namespace assay::service
