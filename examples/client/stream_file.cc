// Explains a file of positions, one FEN a line, through streams, and gets to
// its end whatever happens on the way: a stream that breaks, or is over its
// deadline, is begun again after the last answer that came; a run that was
// killed goes on where its output ends.
//
//   stream_file_example [--streams N] [--static] ADDRESS FENS OUTPUT
//   stream_file_example 127.0.0.1:50051 lesson.fen explained.txt
//   stream_file_example --streams 8 ipv4:127.0.0.1:50051,127.0.0.1:50052 ...
//
// The output has a line for each line of the input, in order: its number from
// 0, White's centipawns and the summary, or "error:" and what is wrong with the
// FEN. Input and answers are held a few hundred lines a stream at a time.
#include <algorithm>
#include <atomic>
#include <chrono>
#include <condition_variable>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <map>
#include <mutex>
#include <string>
#include <thread>
#include <utility>
#include <vector>

#include "service/client/client.h"

namespace {

namespace service = assay::service;
using std::chrono::milliseconds;

// One stream may take so long; work that takes longer takes several.
constexpr milliseconds kDeadline = std::chrono::seconds(60);
// Lines that one stream is begun for: long enough to pay for the call, short
// enough for the servers to get equal shares.
constexpr std::size_t kRun = 200;
// Streams in a row that may end without a single answer, and how long we wait
// after the first of them; twice as long after each further one.
constexpr int kMostFailures = 6;
constexpr milliseconds kFirstWait{200};

struct Settings {
  std::string address;
  std::string fens;
  std::string output;
  int streams = 1;
  bool static_only = false;
};

// Lines that follow each other in the input.
struct Run {
  std::size_t first = 0;
  std::vector<std::string> fens;
};

// The input's lines, a run at a time, to any number of threads.
class Input {
 public:
  Input(const std::string& path, std::size_t skip) : file_(path), next_(skip) {
    for (std::string line; skip > 0 && std::getline(file_, line);) --skip;
  }

  // Without lines at the end.
  Run Take() {
    const std::lock_guard<std::mutex> lock(mutex_);
    Run run;
    run.first = next_;
    for (std::string line; run.fens.size() < kRun && std::getline(file_, line);
         ++next_) {
      run.fens.push_back(line);
    }
    return run;
  }

 private:
  std::mutex mutex_;
  std::ifstream file_;
  std::size_t next_;
};

// The output: lines come from any thread and are written in order.
class Output {
 public:
  Output(const std::string& path, std::size_t done, std::size_t most_ahead)
      : file_(path, std::ios::binary | std::ios::app),
        next_(done),
        most_ahead_(most_ahead) {}

  // Waits while the line is too far ahead of those written. False where there
  // is one of this number already, and where nothing can be written.
  bool Put(std::size_t number, std::string line) {
    std::unique_lock<std::mutex> lock(mutex_);
    room_.wait(lock, [&] { return given_up_ || number < next_ + most_ahead_; });
    if (given_up_ || number < next_) return false;
    if (!waiting_.emplace(number, std::move(line)).second) return false;
    for (auto first = waiting_.begin();
         first != waiting_.end() && first->first == next_; ++next_) {
      file_ << next_ << '\t' << first->second << '\n';
      first = waiting_.erase(first);
    }
    file_.flush();
    room_.notify_all();
    return file_.good();
  }

  // Nobody waits any longer.
  void GiveUp() {
    const std::lock_guard<std::mutex> lock(mutex_);
    given_up_ = true;
    room_.notify_all();
  }

 private:
  std::mutex mutex_;
  std::condition_variable room_;
  std::ofstream file_;
  std::map<std::size_t, std::string> waiting_;
  std::size_t next_;
  const std::size_t most_ahead_;
  bool given_up_ = false;
};

// Cuts off a last line that a killed run did not finish. Gives the number of
// whole lines.
std::size_t WholeLines(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) return 0;
  const std::string text((std::istreambuf_iterator<char>(file)), {});
  std::filesystem::resize_file(path, text.rfind('\n') + 1);
  return static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
}

std::string LineOf(const assay::v1::ExplainStreamResponse& answer) {
  if (answer.has_error()) return "error: " + answer.error().message();
  return std::to_string(answer.explanation().score_cp()) + "\t" +
         answer.explanation().summary();
}

// Errors after which another stream may well get on. The last three are what
// gRPC or a proxy makes of a server that dies: the call only reads, so it may
// be repeated whatever became of it.
bool IsPassing(const absl::Status& status) {
  return absl::IsUnavailable(status) || absl::IsResourceExhausted(status) ||
         absl::IsDeadlineExceeded(status) || absl::IsCancelled(status) ||
         absl::IsInternal(status) || absl::IsUnknown(status) ||
         absl::IsAborted(status);
}

class Explaining {
 public:
  Explaining(service::Client& client, const Settings& settings,
             std::size_t done)
      : client_(client),
        static_only_(settings.static_only),
        input_(settings.fens, done),
        output_(settings.output, done,
                2 * kRun * static_cast<std::size_t>(settings.streams)) {}

  // As many of these as there are streams, a thread each. The first to fail
  // ends the others.
  void Work() {
    for (Run run = input_.Take(); !run.fens.empty() && !failed_;
         run = input_.Take()) {
      absl::Status status = ToItsEnd(run);
      if (status.ok()) continue;
      if (!failed_.exchange(true)) fault_ = std::move(status);
      output_.GiveUp();
    }
  }

  // After the last of them.
  const absl::Status& fault() const { return fault_; }

 private:
  absl::Status ToItsEnd(const Run& run) {
    std::size_t done = 0;
    for (int failures = 0; done < run.fens.size();) {
      const std::size_t before = done;
      absl::Status status = StreamFrom(run, done);
      // A proxy may end a stream in good order that its server has left.
      if (status.ok() && done < run.fens.size()) {
        status = absl::UnavailableError("an early end");
      }
      if (status.ok()) continue;
      failures = done > before ? 1 : failures + 1;
      if (!IsPassing(status) || failures > kMostFailures) return status;
      std::cerr << "line " + std::to_string(run.first + done) +
                       ": going on after: " +
                       absl::StatusCodeToString(status.code()) + "\n";
      std::this_thread::sleep_for(kFirstWait * (1 << (failures - 1)));
    }
    return absl::OkStatus();
  }

  // One stream over the lines from `done` on, which grows with each answer.
  // Requests bear the number of their line, and answers have to bring it back:
  // where a stream is repeated under way, as gRPC and proxies do before the
  // first answer, a request of it has been seen to get lost.
  absl::Status StreamFrom(const Run& run, std::size_t& done) {
    std::size_t next = done;
    absl::Status fault;
    const absl::Status status = client_.ExplainStream(
        [&](assay::v1::ExplainRequest& request) {
          if (next == run.fens.size()) return false;
          request.mutable_position()->set_fen(run.fens[next]);
          request.mutable_options()->set_omit_claims(true);
          request.mutable_options()->set_static_only(static_only_);
          request.set_tag(std::to_string(run.first + next++));
          return true;
        },
        [&](const assay::v1::ExplainStreamResponse& answer) {
          if (!fault.ok()) return;
          const std::string number = std::to_string(run.first + done);
          if (answer.tag() != number) {
            fault = absl::AbortedError("answered out of place");
          } else if (!output_.Put(run.first + done, LineOf(answer))) {
            fault = absl::DataLossError("line " + number + ": not written");
          } else {
            ++done;
          }
        });
    return fault.ok() ? status : fault;
  }

  service::Client& client_;
  const bool static_only_;
  Input input_;
  Output output_;
  std::atomic<bool> failed_{false};
  absl::Status fault_;
};

absl::Status ExplainAll(service::Client& client, const Settings& settings) {
  Explaining explaining(client, settings, WholeLines(settings.output));
  std::vector<std::thread> threads;
  for (int i = 0; i < settings.streams; ++i) {
    threads.emplace_back([&] { explaining.Work(); });
  }
  for (std::thread& thread : threads) thread.join();
  return explaining.fault();
}

bool ReadArguments(int argc, char** argv, Settings& settings) {
  std::vector<std::string> operands;
  for (int i = 1; i < argc; ++i) {
    const std::string argument = argv[i];
    if (argument == "--static") {
      settings.static_only = true;
    } else if (argument == "--streams" && i + 1 < argc) {
      settings.streams = std::atoi(argv[++i]);
    } else {
      operands.push_back(argument);
    }
  }
  if (operands.size() != 3 || settings.streams < 1 || settings.streams > 64) {
    return false;
  }
  settings.address = operands[0];
  settings.fens = operands[1];
  settings.output = operands[2];
  return true;
}

}  // namespace

int main(int argc, char** argv) {
  Settings settings;
  if (!ReadArguments(argc, argv, settings)) {
    std::cerr << "usage: stream_file_example [--streams N] [--static] ADDRESS "
                 "FENS OUTPUT\n";
    return 2;
  }
  service::ClientOptions options;
  options.address = settings.address;
  options.deadline = kDeadline;
  const auto client = service::Client::Connect(options);
  if (!client.ok()) {
    std::cerr << client.status() << '\n';
    return 3;
  }
  const absl::Status status = ExplainAll(**client, settings);
  if (!status.ok()) {
    std::cerr << status << '\n';
    return 1;
  }
  return 0;
}
