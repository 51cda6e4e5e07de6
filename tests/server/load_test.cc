// Overload, slow readers and full house: what the server promises about them,
// never how long anything takes.
#include <chrono>
#include <future>
#include <string>
#include <thread>
#include <vector>

#include "google/rpc/error_details.pb.h"
#include "google/rpc/status.pb.h"
#include "grpcpp/grpcpp.h"
#include "gtest/gtest.h"
#include "tests/server/running_server.h"

namespace assay::service {
namespace {

constexpr char kMiddlegame[] =
    "r1bq1rk1/pp2bppp/2n1pn2/2pp4/3P1B2/2PBPN2/P1P2PPP/R2Q1RK1 b - - 1 9";
constexpr char kSimple[] = "4k3/8/8/8/8/8/4P3/4K3 w - - 0 1";

std::unique_ptr<v1::PositionExplainer::Stub> Stub(
    const RunningServer& running) {
  grpc::ChannelArguments arguments;
  arguments.SetInt(GRPC_ARG_USE_LOCAL_SUBCHANNEL_POOL, 1);
  return v1::PositionExplainer::NewStub(grpc::CreateCustomChannel(
      running.address(), grpc::InsecureChannelCredentials(), arguments));
}

bool HasRetryInfo(const grpc::Status& status) {
  google::rpc::Status details;
  google::rpc::RetryInfo retry;
  return details.ParseFromString(status.error_details()) &&
         details.details_size() == 1 && details.details(0).UnpackTo(&retry) &&
         (retry.retry_delay().seconds() > 0 || retry.retry_delay().nanos() > 0);
}

v1::ExplainRequest LongRequest() {
  v1::ExplainRequest request;
  request.mutable_position()->set_fen(kMiddlegame);
  request.mutable_options()->set_proof_nodes(1000000);
  return request;
}

// A call in the background that lasts until it is cancelled.
class LongCall {
 public:
  explicit LongCall(v1::PositionExplainer::Stub& stub) {
    thread_ = std::thread([this, &stub] {
      v1::ExplainResponse response;
      const v1::ExplainRequest request = LongRequest();
      status_ = stub.Explain(&context_, request, &response);
    });
  }
  grpc::Status Cancel() {
    context_.TryCancel();
    thread_.join();
    return status_;
  }

 private:
  grpc::ClientContext context_;
  grpc::Status status_;
  std::thread thread_;
};

void WaitUntil(const std::function<bool()>& condition) {
  while (!condition())
    std::this_thread::sleep_for(std::chrono::milliseconds(1));
}

TEST(Overload, IsRefusedWithATimeToTryAgain) {
  ServerOptions options;
  options.workers = 1;
  options.max_queue_ms = 1;
  RunningServer running(options);
  const auto stub = Stub(running);
  LongCall call(*stub);
  WorkerPool& pool = running.server().backend().pool;
  WaitUntil([&] { return pool.Wait(Lane::kSingle).count() > 1000; });

  grpc::ClientContext context;
  v1::ExplainResponse response;
  const grpc::Status status = stub->Explain(&context, LongRequest(), &response);
  EXPECT_EQ(status.error_code(), grpc::StatusCode::RESOURCE_EXHAUSTED);
  EXPECT_TRUE(HasRetryInfo(status));

  grpc::ClientContext batch_context;
  v1::ExplainBatchRequest batch;
  *batch.add_requests() = LongRequest();
  v1::ExplainBatchResponse batch_response;
  EXPECT_TRUE(
      HasRetryInfo(stub->ExplainBatch(&batch_context, batch, &batch_response)));

  grpc::ClientContext stream_context;
  const auto stream = stub->ExplainStream(&stream_context);
  EXPECT_TRUE(HasRetryInfo(stream->Finish()));

  // What needs no worker is answered all the same.
  grpc::ClientContext static_context;
  EXPECT_TRUE(
      stub->Explain(&static_context, StaticRequest(kSimple), &response).ok());
  EXPECT_EQ(call.Cancel().error_code(), grpc::StatusCode::CANCELLED);
}

TEST(Overload, OfCallsIsRefused) {
  ServerOptions options;
  options.max_calls = 2;
  RunningServer running(options);
  const auto stub = Stub(running);
  LongCall first(*stub);
  LongCall second(*stub);
  Metrics& metrics = running.server().backend().metrics;
  WaitUntil([&] { return metrics.in_flight() == 2; });
  grpc::ClientContext context;
  v1::ListTermsResponse response;
  const grpc::Status status = stub->ListTerms(&context, {}, &response);
  EXPECT_EQ(status.error_code(), grpc::StatusCode::RESOURCE_EXHAUSTED);
  EXPECT_TRUE(HasRetryInfo(status));
  first.Cancel();
  second.Cancel();
  WaitUntil([&] { return metrics.in_flight() == 0; });
  grpc::ClientContext again;
  EXPECT_TRUE(stub->ListTerms(&again, {}, &response).ok());
}

TEST(Overload, OfStreamsIsRefused) {
  ServerOptions options;
  options.max_streams = 1;
  RunningServer running(options);
  const auto stub = Stub(running);
  grpc::ClientContext context;
  const auto stream = stub->ExplainStream(&context);
  stream->Write(StaticRequest(kSimple));
  v1::ExplainStreamResponse answer;
  ASSERT_TRUE(stream->Read(&answer));
  grpc::ClientContext other_context;
  const auto other = stub->ExplainStream(&other_context);
  EXPECT_TRUE(HasRetryInfo(other->Finish()));
  stream->WritesDone();
  EXPECT_TRUE(stream->Finish().ok());
}

// A client that writes and does not read stops the server's work, not the
// server; once it reads, every answer is there.
TEST(SlowReaders, HoldTheServerUpAtABoundAndLoseNothing) {
  constexpr int kRequests = 30000;
  RunningServer running;
  grpc::ChannelArguments arguments;
  arguments.SetInt(GRPC_ARG_HTTP2_BDP_PROBE, 0);  // a window of 64 KiB
  const auto stub = v1::PositionExplainer::NewStub(grpc::CreateCustomChannel(
      running.address(), grpc::InsecureChannelCredentials(), arguments));
  grpc::ClientContext context;
  const auto stream = stub->ExplainStream(&context);
  std::atomic<int> written{0};
  std::thread writer([&] {
    const v1::ExplainRequest request = StaticRequest(kSimple);
    while (written < kRequests && stream->Write(request)) ++written;
    stream->WritesDone();
  });
  // Until nothing moves any more.
  const Metrics& metrics = running.server().backend().metrics;
  std::uint64_t seen = 0;
  WaitUntil([&] {
    std::this_thread::sleep_for(std::chrono::milliseconds(300));
    return seen == std::exchange(seen, metrics.items()) && seen > 0;
  });
  // The window of ours, and what fits into that of the transport.
  EXPECT_LT(metrics.items(), 400U);
  // Others are served meanwhile.
  const auto other = running.Connect()->Explain(StaticRequest(kMiddlegame));
  EXPECT_TRUE(other.ok()) << other.status();
  v1::ExplainStreamResponse answer;
  std::uint64_t answers = 0;
  while (stream->Read(&answer)) {
    ASSERT_EQ(answer.index(), answers++);
    ASSERT_TRUE(answer.has_explanation());
  }
  writer.join();
  EXPECT_TRUE(stream->Finish().ok());
  EXPECT_EQ(answers, std::uint64_t{kRequests});
}

// Answers come while the stream is open, not only when more follows or it ends.
TEST(Streams, AnswerWhatWasAskedSoFar) {
  RunningServer running;
  std::atomic<int> answered{0};
  // One stream; false where a busy server refused it, which it may.
  const auto ask = [](v1::PositionExplainer::Stub& stub) {
    grpc::ClientContext context;
    const auto stream = stub.ExplainStream(&context);
    for (int n = 0; n < 40; ++n) stream->Write(StaticRequest(kSimple));
    v1::ExplainStreamResponse answer;
    for (std::uint64_t n = 0; n < 40; ++n) {
      if (!stream->Read(&answer)) {
        EXPECT_EQ(stream->Finish().error_code(),
                  grpc::StatusCode::RESOURCE_EXHAUSTED);
        return false;
      }
      EXPECT_EQ(answer.index(), n);
    }
    stream->WritesDone();
    EXPECT_TRUE(stream->Finish().ok());
    return true;
  };
  std::vector<std::thread> threads;
  for (int t = 0; t < 4; ++t) {
    threads.emplace_back([&] {
      const auto stub = Stub(running);
      for (int i = 0; i < 150; ++i) answered += ask(*stub) ? 1 : 0;
    });
  }
  for (std::thread& thread : threads) thread.join();
  EXPECT_GE(answered, 300);  // of 600
}

// Every kind of call at once from many threads, some of them given up.
TEST(FullHouse, AnswersEveryCallOrSaysWhyNot) {
  ServerOptions options;
  // Under a sanitizer, work waits longer than the default lets it.
  options.max_queue_ms = 120000;
  RunningServer running(options);
  std::vector<std::thread> threads;
  std::atomic<int> good{0};
  for (int t = 0; t < 8; ++t) {
    threads.emplace_back([&, t] {
      const auto stub = Stub(running);
      for (int i = 0; i < 60; ++i) {
        grpc::ClientContext context;
        const bool give_up = i % 10 == t;
        if (give_up) {
          context.set_deadline(std::chrono::system_clock::now() +
                               std::chrono::microseconds(50 * i));
        }
        v1::ExplainRequest request = StaticRequest(kMiddlegame);
        if (i % 3 == 0) request.mutable_options()->set_static_only(false);
        if (i % 3 == 0) request.mutable_options()->set_proof_nodes(500);
        grpc::Status status;
        if (i % 2 == 0) {
          v1::ExplainResponse response;
          status = stub->Explain(&context, request, &response);
        } else {
          v1::ExplainBatchRequest batch;
          for (int n = 0; n < 20; ++n) *batch.add_requests() = request;
          v1::ExplainBatchResponse response;
          status = stub->ExplainBatch(&context, batch, &response);
          EXPECT_EQ(response.responses_size(), status.ok() ? 20 : 0);
        }
        good += status.ok() ? 1 : 0;
        EXPECT_TRUE(status.ok() || give_up) << status.error_message();
      }
    });
  }
  for (std::thread& thread : threads) thread.join();
  EXPECT_GE(good, 8 * 54);
  const Metrics& metrics = running.server().backend().metrics;
  WaitUntil([&] { return metrics.in_flight() == 0; });
  // No work is left that waits, and none is counted as if it did.
  WorkerPool& pool = running.server().backend().pool;
  WaitUntil([&] { return pool.queued() == 0; });
  EXPECT_EQ(pool.Wait(Lane::kBulk).count(), 0);
}

TEST(UnixSockets, AreNotTakenOver) {
  const std::string path = ::testing::TempDir() + "assayd-test.sock";
  ServerOptions options;
  options.listen = {"unix:" + path};
  RunningServer running(options);
  const auto client = RunningServer::ConnectTo("unix:" + path);
  EXPECT_TRUE(client->ListTerms().ok());
  const auto second = Server::Start(options);
  EXPECT_EQ(second.status().code(), absl::StatusCode::kUnavailable);
  EXPECT_TRUE(client->ListTerms().ok());
}

TEST(Ports, AreNotShared) {
  RunningServer running;
  ServerOptions options;
  options.listen = {running.address()};
  EXPECT_EQ(Server::Start(options).status().code(),
            absl::StatusCode::kUnavailable);
}

}  // namespace
}  // namespace assay::service
