// What the service costs beside what it serves: some ten seconds, ratios within
// one run.
//
//   service_load build/bin/assayd            the table
//   service_load build/bin/assayd million    memory over a million positions
//
// Beside other work nothing here means much. Where the kernel groups processes
// by session, root can put this one first:
//   setsid sh -c 'echo -20 > /proc/self/autogroup; exec service_load ...'
//
// Server, floor and client share the machine's cores, so throughput is told as
// a share of what the same cores do in process without either. All kinds of
// calls are measured in turns, several rounds of each.
#include <array>
#include <cstdio>
#include <iostream>
#include <string>
#include <thread>

#include "assay/explain/assayer.h"
#include "assay/notation/fen.h"
#include "assay/v1/explainer.grpc.pb.h"
#include "bench/positions.h"
#include "bench/service/child.h"
#include "bench/service/floor.h"
#include "bench/service/load.h"
#include "google/protobuf/arena.h"
#include "grpcpp/create_channel.h"
#include "service/convert/convert.h"
#include "service/server/wire.h"

namespace assay::bench {
namespace {

using std::chrono::milliseconds;
using Stub = v1::PositionExplainer::Stub;

constexpr int kRounds = 4;
constexpr milliseconds kTurn{150};
constexpr int kBatch = 64;
constexpr int kScores = 2048;

const std::vector<Position>& Positions() {
  static const auto& positions = *new std::vector<Position>(ManyPositions());
  return positions;
}

std::unique_ptr<Stub> Connect(const std::string& address) {
  return v1::PositionExplainer::NewStub(
      grpc::CreateChannel(address, grpc::InsecureChannelCredentials()));
}

// Requests made before the clock starts.
template <class Request>
using Requests = std::vector<Request>;

// A message on an arena of its own, as a client that reads many would have it:
// on the heap, reading an answer costs as much again.
template <class Message>
class OnArena {
 public:
  Message* Fresh() {
    arena_.Reset();
    return google::protobuf::Arena::CreateMessage<Message>(&arena_);
  }

 private:
  google::protobuf::Arena arena_{[] {
    google::protobuf::ArenaOptions options;
    options.start_block_size = 65536;
    options.max_block_size = 1048576;
    return options;
  }()};
};

template <class Request, class Response, class Method>
StartCall Unary(const Requests<Request>& requests, int in_flight, Method call) {
  auto responses = std::make_shared<std::vector<OnArena<Response>>>(
      static_cast<std::size_t>(in_flight));
  return [&requests, responses, call](grpc::ClientContext* context,
                                      std::size_t slot, std::size_t n,
                                      std::function<void(grpc::Status)> done) {
    call(context, &requests[n * 7919 % requests.size()],
         (*responses)[slot].Fresh(), std::move(done));
  };
}

struct AllRequests {
  Requests<v1::ExplainRequest> one;
  Requests<v1::ExplainRequest> searched;
  Requests<v1::ExplainBatchRequest> batch;
  Requests<v1::ExplainBatchRequest> empty = {{}};
  Requests<v1::ScoreRequest> score;
};

AllRequests MakeRequests() {
  AllRequests all;
  for (std::size_t n = 0; n < Positions().size(); ++n) {
    all.one.push_back(RequestOf(Positions(), n));
  }
  for (std::size_t b = 0; b < 40; ++b) {
    v1::ExplainBatchRequest batch;
    for (std::size_t i = 0; i < kBatch; ++i) {
      *batch.add_requests() = all.one[(b * kBatch + i) * 7 % all.one.size()];
    }
    all.batch.push_back(batch);
    v1::ScoreRequest score;
    for (std::size_t i = 0; i < kScores; ++i) {
      score.add_fens(ToFen(Positions()[(b * 131 + i) % Positions().size()]));
    }
    all.score.push_back(score);
  }
  return all;
}

// Work on all cores at once without any server, items a second.
template <class Work>
double InProcess(milliseconds time, const Work& work) {
  const unsigned workers = std::max(1U, std::thread::hardware_concurrency());
  std::atomic<std::size_t> next{0};
  const auto begin = Clock::now();
  std::vector<std::thread> threads;
  for (unsigned t = 0; t < workers; ++t) {
    threads.emplace_back([&] {
      while (Clock::now() - begin < time) {
        for (int i = 0; i < 16; ++i) work(next++);
      }
    });
  }
  for (std::thread& thread : threads) thread.join();
  return static_cast<double>(next) /
         std::chrono::duration<double>(Clock::now() - begin).count();
}

// What a call comes to without a transport: read, explain, write.
std::size_t WholeWork(const Assayer& assayer,
                      const v1::ExplainRequest& request) {
  ExplainOptions options;
  options.static_only = true;
  const auto position = PositionFromFen(request.position().fen());
  auto& answer = service::ReusedMessage<v1::ExplainResponse>();
  service::ToProto(assayer.Explain(*position, options), assayer,
                   answer.mutable_explanation());
  answer.set_tag(request.tag());
  return service::WriteMessage(answer).size();
}

// Positions through one stream, answers a second.
double Stream(Stub& stub, const Requests<v1::ExplainRequest>& requests,
              milliseconds time) {
  grpc::ClientContext context;
  const auto stream = stub.ExplainStream(&context);
  const auto begin = Clock::now();
  std::thread writer([&] {
    grpc::WriteOptions options;
    options.set_buffer_hint();
    for (std::size_t n = 0; Clock::now() - begin < time; ++n) {
      const bool last_of_some = n % 8 == 7;
      if (!stream->Write(requests[n * 7919 % requests.size()],
                         last_of_some ? grpc::WriteOptions() : options)) {
        break;
      }
    }
    stream->WritesDone();
  });
  std::size_t answers = 0;
  OnArena<v1::ExplainStreamResponse> answer;
  while (stream->Read(answer.Fresh())) ++answers;
  writer.join();
  if (!stream->Finish().ok()) std::cerr << "stream failed\n";
  return static_cast<double>(answers) /
         std::chrono::duration<double>(Clock::now() - begin).count();
}

double Median(std::vector<double> values) {
  std::sort(values.begin(), values.end());
  return values[values.size() / 2];
}

class Bench {
 public:
  Bench(const std::string& service, const std::string& floor)
      : service_(Connect(service)),
        beside_(Connect(service)),
        floor_(Connect(floor)) {}

  void Run() {
    for (int round = -1; round < kRounds; ++round) Round(round < 0);
    Print();
  }

 private:
  static constexpr std::array<int, 4> kInFlight = {1, 4, 16, 64};
  struct Unaries {
    Figures canned;
    Figures service;
    Figures empty;
  };

  StartCall Explain(Stub& stub, int in_flight) {
    return Unary<v1::ExplainRequest, v1::ExplainResponse>(
        requests_.one, in_flight,
        [&stub](auto* context, auto* request, auto* response, auto done) {
          stub.async()->Explain(context, request, response, std::move(done));
        });
  }
  StartCall Batch(const Requests<v1::ExplainBatchRequest>& requests,
                  int in_flight) {
    return Unary<v1::ExplainBatchRequest, v1::ExplainBatchResponse>(
        requests, in_flight,
        [this](auto* context, auto* request, auto* response, auto done) {
          service_->async()->ExplainBatch(context, request, response,
                                          std::move(done));
        });
  }
  StartCall Score(int in_flight) {
    return Unary<v1::ScoreRequest, v1::ScoreResponse>(
        requests_.score, in_flight,
        [this](auto* context, auto* request, auto* response, auto done) {
          service_->async()->Score(context, request, response, std::move(done));
        });
  }

  void Round(bool warm_up) {
    for (std::size_t i = 0; i < kInFlight.size(); ++i) {
      const int n = kInFlight[i];
      Unaries u;
      u.canned = Load(n, Explain(*floor_, n)).Run(kTurn);
      u.service = Load(n, Explain(*service_, n)).Run(kTurn);
      u.empty = Load(n, Batch(requests_.empty, n)).Run(kTurn);
      if (warm_up) continue;
      unaries_[i].canned.Add(u.canned);
      unaries_[i].service.Add(u.service);
      unaries_[i].empty.Add(u.empty);
    }
    TimeInProcess(warm_up);
    TimeOneByOne(warm_up);
    Throughputs(warm_up);
    if (!warm_up) UnderLoad();
  }

  // A canned call, then its work in this process, as one; in turns with a call
  // of the service.
  void TimeOneByOne(bool warm_up) {
    const auto end = Clock::now() + 2 * kTurn;
    for (std::size_t n = 0; Clock::now() < end; ++n) {
      const auto& request = requests_.one[n * 7919 % requests_.one.size()];
      v1::ExplainResponse response;
      const auto begin = Clock::now();
      grpc::ClientContext canned;
      floor_->Explain(&canned, request, &response).ok();
      bytes_ += WholeWork(assayer_, request);
      const auto middle = Clock::now();
      grpc::ClientContext context;
      service_->Explain(&context, request, &response).ok();
      if (warm_up) continue;
      const auto now = Clock::now();
      using Micro = std::chrono::duration<double, std::micro>;
      apart_.microseconds.push_back(Micro(middle - begin).count());
      together_.microseconds.push_back(Micro(now - middle).count());
    }
  }

  void TimeInProcess(bool warm_up) {
    const auto end = Clock::now() + kTurn;
    for (std::size_t n = 0; Clock::now() < end; ++n) {
      const auto begin = Clock::now();
      bytes_ +=
          WholeWork(assayer_, requests_.one[n * 7919 % requests_.one.size()]);
      if (warm_up) continue;
      whole_.microseconds.push_back(
          std::chrono::duration<double, std::micro>(Clock::now() - begin)
              .count());
    }
  }

  void Throughputs(bool warm_up) {
    const std::array<double, 6> measured = {
        InProcess(kTurn,
                  [&](std::size_t n) {
                    ExplainOptions options;
                    options.static_only = true;
                    const auto position = PositionFromFen(
                        requests_.one[n * 7919 % requests_.one.size()]
                            .position()
                            .fen());
                    bytes_ +=
                        assayer_.Explain(*position, options).summary.size();
                  }),
        InProcess(kTurn,
                  [&](std::size_t n) {
                    bytes_ += WholeWork(
                        assayer_,
                        requests_.one[n * 7919 % requests_.one.size()]);
                  }),
        Load(4, Batch(requests_.batch, 4)).Run(kTurn).PerSecond() * kBatch,
        Stream(*service_, requests_.one, kTurn),
        InProcess(kTurn,
                  [&](std::size_t n) {
                    const auto position = PositionFromFen(
                        requests_.score[0].fens(static_cast<int>(n % kScores)));
                    bytes_ +=
                        static_cast<std::size_t>(assayer_.Score(*position));
                  }),
        Load(4, Score(4)).Run(kTurn).PerSecond() * kScores};
    if (warm_up) return;
    for (std::size_t i = 0; i < measured.size(); ++i) {
      throughputs_[i].push_back(measured[i]);
    }
  }

  // One caller beside batches without end.
  void UnderLoad() {
    std::atomic<bool> over{false};
    std::thread batches([&] {
      while (!over) Load(8, Batch(requests_.batch, 8)).Run(kTurn);
    });
    beside_figures_.Add(Load(1, Explain(*beside_, 1)).Run(kTurn * 2));
    over = true;
    batches.join();
  }

  void Print() {
    std::printf(
        "in flight |   canned p50     p99       /s | explain p50     "
        "p99       /s | empty p50     p99       /s\n");
    for (std::size_t i = 0; i < kInFlight.size(); ++i) {
      std::printf("%9d |", kInFlight[i]);
      for (Figures* figures :
           {&unaries_[i].canned, &unaries_[i].service, &unaries_[i].empty}) {
        std::printf("  %9.0f %7.0f %8.0f |", figures->Quantile(0.5),
                    figures->Quantile(0.99), figures->PerSecond());
        if (figures->failed > 0) std::printf("%zu FAILED", figures->failed);
      }
      std::printf("\n");
    }
    const double floor = unaries_[0].canned.Quantile(0.5);
    const double work = whole_.Quantile(0.5);
    const double call = unaries_[0].service.Quantile(0.5);
    std::printf("in process, one call's work: p50 %.0f us\n", work);
    std::printf("Explain / (canned + in process), p50: %.2f\n",
                call / (floor + work));
    std::printf(
        "canned, then the work in process: p50 %.0f us; Explain in "
        "turns with it: p50 %.0f us; ratio %.2f\n",
        apart_.Quantile(0.5), together_.Quantile(0.5),
        together_.Quantile(0.5) / apart_.Quantile(0.5));
    std::printf("Explain / empty call, p50: %.2f\n",
                call / unaries_[0].empty.Quantile(0.5));
    std::array<double, 6> t{};
    for (std::size_t i = 0; i < t.size(); ++i) t[i] = Median(throughputs_[i]);
    std::printf(
        "positions/s: explained in process %.0f, with messages %.0f, "
        "ExplainBatch %.0f, ExplainStream %.0f\n",
        t[0], t[1], t[2], t[3]);
    std::printf("ExplainBatch / in process: %.2f, with messages %.2f\n",
                t[2] / t[0], t[2] / t[1]);
    std::printf("ExplainStream / in process: %.2f, with messages %.2f\n",
                t[3] / t[0], t[3] / t[1]);
    std::printf("scores/s: in process %.0f, Score %.0f; ratio %.2f\n", t[4],
                t[5], t[5] / t[4]);
    std::printf("one caller beside full batches: p50 %.0f us, p99 %.0f us\n",
                beside_figures_.Quantile(0.5), beside_figures_.Quantile(0.99));
  }

  const Assayer assayer_;
  const AllRequests requests_ = MakeRequests();
  std::unique_ptr<Stub> service_;
  std::unique_ptr<Stub> beside_;
  std::unique_ptr<Stub> floor_;
  std::array<Unaries, kInFlight.size()> unaries_;
  Figures whole_;
  Figures apart_;
  Figures together_;
  Figures beside_figures_;
  std::array<std::vector<double>, 6> throughputs_;
  std::atomic<std::size_t> bytes_{0};  // keeps the compiler honest
};

// Memory of the server while a million positions pass through.
void Million(const Child& server) {
  const auto stub = Connect(server.address());
  const AllRequests requests = MakeRequests();
  grpc::ClientContext context;
  const auto stream = stub->ExplainStream(&context);
  constexpr std::size_t kAll = 1000000;
  std::thread writer([&] {
    for (std::size_t n = 0; n < kAll; ++n) {
      stream->Write(requests.one[n * 7919 % requests.one.size()],
                    n % 8 == 7 ? grpc::WriteOptions()
                               : grpc::WriteOptions().set_buffer_hint());
    }
    stream->WritesDone();
  });
  v1::ExplainStreamResponse answer;
  for (std::size_t n = 1; stream->Read(&answer); ++n) {
    if (n % (kAll / 10) == 0) {
      std::printf("%8zu positions: %ld KiB\n", n, server.ResidentKib());
      std::fflush(stdout);
    }
  }
  writer.join();
  std::printf("%s\n", stream->Finish().ok() ? "OK" : "FAILED");
}

}  // namespace
}  // namespace assay::bench

int main(int argc, char** argv) {
  using assay::bench::Child;
  const std::vector<std::string> words(argv + 1, argv + argc);
  if (words.empty()) {
    std::cerr << "usage: service_load ASSAYD [million]\n";
    return 2;
  }
  if (words[0] == "--floor") assay::bench::ServeFloor();
  const Child server(words[0], {"--listen=127.0.0.1:0"});
  if (words.size() > 1) {
    assay::bench::Million(server);
    return 0;
  }
  const Child floor(argv[0], {"--floor"});
  assay::bench::Bench(server.address(), floor.address()).Run();
  return 0;
}
