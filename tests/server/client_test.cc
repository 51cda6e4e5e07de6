// The client library and the server together.
#include "service/client/client.h"

#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>
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

std::string FileContent(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  std::stringstream content;
  content << file.rdbuf();
  return content.str();
}

// Comments, assessments, a position by two ways, a mate, a game that breaks
// off.
constexpr char kLesson[] =
    "[White \"Amsel\"]\n[Black \"Brandt\"]\n\n"
    "1. d4 d5 2. c4 {Space.} e6 3. Nc3 Nf6 4. cxd5 exd5 5. Bg5 $14 Be7 6. e3 "
    "(6. Nf3 O-O 7. e3 {Or so.}) 6... O-O 7. Bd3 Nbd7 {Both develop.} *\n\n"
    "1. e4 {King's pawn.} e5 2. Ke3 {Not a move.} *\n\n"
    "1. c4 e6 2. d4 d5 {Another order of moves.} *\n\n"
    "1. f3 e5 2. g4 {A mistake.} Qh4# {Mate.} 0-1\n\n"
    "1. e4 e6 2. d4 d5 3. e5 c5 4. c3 Nc6 5. Nf3 Qb6 6. Bd3 cxd4 7. cxd4 Nxd4 "
    "8. Nxd4 Qxd4 {A pawn.} *\n";

TEST(CommandLine, LessonsThroughAServer) {
  const RunningServer running;
  const std::string lesson = testing_support::TemporaryFile(kLesson);
  const std::string to_server = "--server=" + running.address();
  const std::vector<std::string> commands[] = {
      {"lesson", lesson, "--static"},
      {"lesson", lesson, "--proof-nodes=3000", "--language=de"},
      {"lesson", lesson, "--proof-nodes=3000", "--format=json"},
      {"lesson", lesson, "--static", "--select=line-ends,turning-points",
       "--every=3"},
      {"proofread", lesson, "--proof-nodes=6000"},
      {"proofread", lesson, "--proof-nodes=6000", "--language=de"},
      {"proofread", lesson, "--proof-nodes=6000", "--format=json"}};
  for (std::vector<std::string> command : commands) {
    const auto local = testing_support::RunProgram(ASSAY_PROGRAM, command);
    command.push_back(to_server);
    const auto remote = testing_support::RunProgram(ASSAY_PROGRAM, command);
    EXPECT_EQ(local.out, remote.out) << command[0] << command[2];
    EXPECT_EQ(local.exit_code, 1) << local.err;  // one game is faulty
    EXPECT_EQ(remote.exit_code, 1);
    EXPECT_EQ(remote.err, "");
    EXPECT_GT(local.out.size(), 300U);
  }
  // All files, the same to the byte; and again from a journal that was left.
  std::string expected;
  for (const std::string& more :
       {std::string("--jobs=2"), to_server, to_server}) {
    const std::string base = lesson + ".out";
    std::vector<std::string> command = {
        "lesson",      lesson,         "--proof-nodes=3000", "--items",
        base,          "--handout",    base + ".html",       "--annotated",
        base + ".pgn", "--language=de"};
    command.push_back(more);
    if (!expected.empty()) command.emplace_back("--resume");
    const auto result = testing_support::RunProgram(ASSAY_PROGRAM, command);
    EXPECT_EQ(result.exit_code, 1) << result.err;
    std::string all;
    for (const char* end : {"", ".html", ".pgn"}) {
      all += FileContent(base + end);
      std::filesystem::remove(base + end);
    }
    EXPECT_GT(all.size(), 30000U);
    if (expected.empty()) expected = all;
    EXPECT_EQ(all, expected) << more;
  }
}

// A run through a server that was killed goes on where it stopped.
TEST(CommandLine, LessonsThroughAServerGoOn) {
  const RunningServer running;
  const std::string lesson = testing_support::TemporaryFile(kLesson);
  const std::string items = lesson + ".items";
  std::vector<std::string> command = {
      "lesson",  lesson, "--static",
      "--items", items,  "--server=" + running.address()};
  testing_support::RunProgram(ASSAY_PROGRAM, command);
  const std::string expected = FileContent(items);
  std::vector<std::string> failing = command;
  failing.insert(failing.end(), {"--handout", "/nowhere/at.html"});
  EXPECT_EQ(testing_support::RunProgram(ASSAY_PROGRAM, failing).exit_code, 3);
  const std::string journal = FileContent(items + ".part");
  ASSERT_GT(journal.size(), 1000U);
  command.emplace_back("--resume");
  for (const std::size_t kept :
       {journal.size(), journal.size() / 2, journal.size() / 5}) {
    std::ofstream(items + ".part", std::ios::binary) << journal.substr(0, kept);
    const auto result = testing_support::RunProgram(ASSAY_PROGRAM, command);
    EXPECT_EQ(result.exit_code, 1) << result.err;
    EXPECT_EQ(FileContent(items), expected) << kept;
  }
  std::filesystem::remove(items);
}

TEST(CommandLine, LessonsThroughAServerFailInSentences) {
  ServerOptions other;
  other.max_proof_nodes = 50000;
  const RunningServer running(other);
  const std::string server = "--server=" + running.address();
  const std::string lesson = testing_support::TemporaryFile(kLesson);
  const auto run = [&](std::vector<std::string> words) {
    return testing_support::RunProgram(ASSAY_PROGRAM, words);
  };
  for (const char* command : {"lesson", "proofread"}) {
    const auto gone = run({command, lesson, "--server=127.0.0.1:1"});
    EXPECT_EQ(gone.exit_code, 3);
    EXPECT_THAT(gone.err, ::testing::StartsWith("assay: server: UNAVAILABLE"));
    const auto deep = run({command, lesson, server, "--proof-nodes=60000"});
    EXPECT_EQ(deep.exit_code, 2);
    EXPECT_THAT(deep.err, ::testing::StartsWith(
                              "assay: options.proof_nodes: over the server's"));
    // Without a game there is nothing to ask for.
    const std::string empty = testing_support::TemporaryFile("\n");
    EXPECT_EQ(run({command, empty, server}).exit_code, 0);
    EXPECT_EQ(run({command, empty, server}).out, run({command, empty}).out);
  }
  const std::string large = testing_support::TemporaryFile(
      std::string(kLesson) + "{" + std::string(8 << 20, 'x') + "} 1. e4 *\n");
  const auto refused = run({"proofread", large, server});
  EXPECT_EQ(refused.exit_code, 2);
  EXPECT_THAT(refused.err, ::testing::StartsWith(
                               "assay: file: too large for a server: found "));
  for (const char* command : {"find", "student"}) {
    const auto result = run({command, lesson, server});
    EXPECT_EQ(result.exit_code, 2);
    EXPECT_THAT(result.err, ::testing::HasSubstr("not an option of"));
  }
}

// What turns a game depends on weights; where the server's are others, it says
// so rather than mixing the two.
TEST(CommandLine, LessonsThroughAServerOfOtherWeights) {
  ServerOptions other;
  other.weights = testing_support::TemporaryFile("tempo 300 300\n");
  const RunningServer running(other);
  // There, whoever has moved is lost.
  const std::string lesson = testing_support::TemporaryFile(
      "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 dxc6 5. O-O f6 6. d3 Bd6 7. Be3 "
      "Ne7 8. Nbd2 O-O 9. h3 Be6 10. c3 Qd7 *\n");
  const auto result = testing_support::RunProgram(
      ASSAY_PROGRAM, {"lesson", lesson, "--static", "--select=turning-points",
                      "--server=" + running.address()});
  EXPECT_EQ(result.exit_code, 3) << result.out;
  EXPECT_THAT(result.err,
              ::testing::HasSubstr("key positions are not those chosen here"));
  // By comments there is nothing to differ about.
  const std::string told = testing_support::TemporaryFile(kLesson);
  EXPECT_EQ(testing_support::RunProgram(
                ASSAY_PROGRAM,
                {"lesson", told, "--static", "--server=" + running.address()})
                .exit_code,
            1);
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
