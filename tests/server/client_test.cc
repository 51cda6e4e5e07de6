// The client library and the server together.
#include "service/client/client.h"

#include <set>
#include <string>
#include <thread>
#include <vector>

#include "assay/notation/fen.h"
#include "gmock/gmock.h"
#include "grpcpp/grpcpp.h"
#include "grpcpp/support/validate_service_config.h"
#include "gtest/gtest.h"
#include "service/convert/convert.h"
#include "service/server/status.h"
#include "tests/server/running_server.h"
#include "tests/support/plausible_play.h"
#include "tests/support/run_program.h"

namespace assay::service {
namespace {

std::vector<std::string> Fens(int count) {
  std::vector<std::string> fens;
  testing_support::PlayPlausibly(17, count, [&](const Position& position) {
    fens.push_back(ToFen(position));
  });
  return fens;
}

TEST(Client, GetsWhatTheLibrarySays) {
  const RunningServer running;
  const auto client = running.Connect();
  const Assayer assayer;
  ExplainOptions options;
  options.static_only = true;
  for (const std::string& fen : Fens(100)) {
    const auto answer = client->Explain(StaticRequest(fen));
    ASSERT_TRUE(answer.ok()) << answer.status();
    v1::Explanation expected;
    ToProto(assayer.Explain(*PositionFromFen(fen), options), assayer,
            &expected);
    ASSERT_EQ(answer->explanation().SerializeAsString(),
              expected.SerializeAsString())
        << fen;
  }
}

TEST(Client, IsToldTheFaults) {
  const RunningServer running;
  const auto answer = running.Connect()->Explain(StaticRequest("8/8 w"));
  EXPECT_EQ(answer.status().code(), absl::StatusCode::kInvalidArgument);
  const std::vector<Violation> violations = ViolationsOf(answer.status());
  ASSERT_FALSE(violations.empty());
  EXPECT_EQ(violations[0].field, "position.fen");
  EXPECT_THAT(violations[0].description, ::testing::HasSubstr("expected"));
}

TEST(Client, StreamsInOrder) {
  const RunningServer running;
  const std::vector<std::string> fens = Fens(1500);
  std::size_t sent = 0;
  std::vector<v1::ExplainStreamResponse> answers;
  const absl::Status status = running.Connect()->ExplainStream(
      [&](v1::ExplainRequest& request) {
        if (sent == fens.size()) return false;
        request = StaticRequest(fens[sent++]);
        // Some take longer than others.
        if (sent % 50 == 0) request.clear_options();
        return true;
      },
      [&](const v1::ExplainStreamResponse& answer) {
        answers.push_back(answer);
      });
  ASSERT_TRUE(status.ok()) << status;
  ASSERT_EQ(answers.size(), fens.size());
  int proofs = 0;
  for (std::size_t i = 0; i < answers.size(); ++i) {
    ASSERT_EQ(answers[i].index(), i);
    ASSERT_EQ(answers[i].explanation().fen(), fens[i]);
    proofs += answers[i].explanation().has_proof() ? 1 : 0;
  }
  // All but those of games that are over.
  EXPECT_GT(proofs, 25);
  EXPECT_LE(proofs, 30);
}

TEST(Client, GoesRoundTheServersThatServe) {
  RunningServer first;
  RunningServer second;
  const auto client = RunningServer::ConnectTo("ipv4:" + first.address() + "," +
                                               second.address());
  const auto calls = [](RunningServer& running) {
    return running.server().backend().last_event.load();
  };
  const auto before = std::chrono::steady_clock::now();
  while (calls(first) < before || calls(second) < before) {
    ASSERT_TRUE(client->ListTerms().ok());
  }
  first.Stop();
  for (int i = 0; i < 200; ++i) {
    const auto answer = client->ListTerms();
    ASSERT_TRUE(answer.ok()) << answer.status();
  }
}

TEST(Client, CannotReachWhatIsNotThere) {
  ClientOptions options;
  options.address = "127.0.0.1:1";
  options.deadline = std::chrono::milliseconds(2000);
  const auto client = Client::Connect(options);
  ASSERT_TRUE(client.ok());
  EXPECT_EQ((*client)->ListTerms().status().code(),
            absl::StatusCode::kUnavailable);
}

TEST(Client, NeedsItsFiles) {
  ClientOptions options;
  options.address = "127.0.0.1:1";
  options.ca_file = "/no/such/file";
  EXPECT_EQ(Client::Connect(options).status().code(),
            absl::StatusCode::kUnavailable);
}

TEST(Client, HasASoundServiceConfig) {
  EXPECT_EQ(grpc::experimental::ValidateServiceConfigJSON(ServiceConfig()), "");
}

// The first call is refused, as by a server that is too busy.
class BusyOnce : public v1::PositionExplainer::Service {
 public:
  grpc::Status ListTerms(grpc::ServerContext* /*context*/,
                         const v1::ListTermsRequest* /*request*/,
                         v1::ListTermsResponse* /*response*/) override {
    if (++calls > 1) return grpc::Status::OK;
    return ToGrpc(Overloaded("busy", std::chrono::milliseconds(30)));
  }
  int calls = 0;
};

TEST(Client, AsksAgainWhenToldTo) {
  BusyOnce service;
  int port = 0;
  grpc::EnableDefaultHealthCheckService(true);
  grpc::ServerBuilder builder;
  builder.AddListeningPort("127.0.0.1:0", grpc::InsecureServerCredentials(),
                           &port);
  builder.RegisterService(&service);
  const auto server = builder.BuildAndStart();
  server->GetHealthCheckService()->SetServingStatus(
      "assay.v1.PositionExplainer", true);
  const auto client =
      RunningServer::ConnectTo("127.0.0.1:" + std::to_string(port));
  EXPECT_TRUE(client->ListTerms().ok());
  EXPECT_EQ(service.calls, 2);
  server->Shutdown();
}

TEST(CommandLine, SaysTheSameThroughAServer) {
  const RunningServer running;
  std::string lines;
  for (const std::string& fen : Fens(60)) lines += fen + "\n";
  lines += "4k3/8/8/8/8/8/8/4K3 x y -\n";
  const std::string file = testing_support::TemporaryFile(lines);
  const std::vector<std::string> commands[] = {
      {"explain", file},
      {"explain", file, "--ledger", "--proof-nodes=500"},
      {"explain", file, "--format=json"},
      {"explain", file, "--format=json", "--proof-nodes=500"},
      {"score", file},
      {"score", file, "--format=json"},
      {"terms"},
      {"terms", "--format=json"}};
  for (std::vector<std::string> command : commands) {
    const auto local = testing_support::RunProgram(ASSAY_PROGRAM, command);
    command.push_back("--server=" + running.address());
    const auto remote = testing_support::RunProgram(ASSAY_PROGRAM, command);
    EXPECT_EQ(local.out, remote.out) << command[0] << command[1];
    EXPECT_EQ(local.exit_code, remote.exit_code);
    EXPECT_EQ(remote.err, "");
    EXPECT_GT(local.out.size(), 100U);
  }
}

TEST(CommandLine, AsksAboutMovesThroughAServer) {
  const RunningServer running;
  const std::string fen =
      "r1bqk1nr/pppp1ppp/2n5/2b1p3/2B1P3/5N2/PPPP1PPP/RNBQK2R w KQkq - 4 4";
  const std::vector<std::string> commands[] = {
      {"move", fen, "Ng5", "--proof-nodes=2000"},
      {"move", fen, "Bxf7", "--static", "--ledger"},
      {"move", fen, "O-O", "--format=json", "--proof-nodes=2000"},
      {"compare", fen, "O-O", "c3", "Nc3", "--proof-nodes=1000"},
      {"compare", fen, "O-O", "--with", fen, "--format=json", "--static"},
      {"whatif", fen, "f3-g1", "pass"},
      {"whatif", fen, "off-c4", "--format=json"},
      {"whatif", fen, "off-c4", "--ledger"}};
  for (std::vector<std::string> command : commands) {
    const auto local = testing_support::RunProgram(ASSAY_PROGRAM, command);
    command.push_back("--server=" + running.address());
    const auto remote = testing_support::RunProgram(ASSAY_PROGRAM, command);
    EXPECT_EQ(local.out, remote.out) << command[0] << command[2];
    EXPECT_EQ(local.exit_code, 0) << local.err;
    EXPECT_EQ(remote.exit_code, 0) << remote.err;
    EXPECT_GT(local.out.size(), 100U);
  }
}

TEST(Example, TalksToAServer) {
  const RunningServer running;
  const auto good = testing_support::RunProgram(
      ASSAY_CLIENT_EXAMPLE,
      {running.address(), "4k3/8/8/8/8/8/4P3/4K3 w - - 0 1"});
  EXPECT_EQ(good.exit_code, 0) << good.err;
  EXPECT_THAT(good.out, ::testing::HasSubstr("cp for White: "));
  const auto bad = testing_support::RunProgram(ASSAY_CLIENT_EXAMPLE,
                                               {running.address(), "4k3 w"});
  EXPECT_EQ(bad.exit_code, 1);
  EXPECT_THAT(bad.err,
              ::testing::StartsWith("INVALID_ARGUMENT\n  position.fen: "));
}

TEST(CommandLine, SaysThatAServerIsNotThere) {
  const auto result = testing_support::RunProgram(
      ASSAY_PROGRAM, {"terms", "--server=127.0.0.1:1"});
  EXPECT_EQ(result.exit_code, 3);
  EXPECT_THAT(result.err, ::testing::StartsWith("assay: server: UNAVAILABLE"));
  EXPECT_EQ(result.out, "");
}

TEST(CommandLine, RefusesWhatOnlyWorksHere) {
  for (const char* option : {"--weights=x", "--all-claims"}) {
    const auto result = testing_support::RunProgram(
        ASSAY_PROGRAM, {"explain", "x", "--server=x", option});
    EXPECT_EQ(result.exit_code, 2) << option;
  }
  EXPECT_EQ(
      testing_support::RunProgram(ASSAY_PROGRAM, {"terms", "--server-ca=x"})
          .exit_code,
      2);
}

}  // namespace
}  // namespace assay::service
