// Explains a file of positions, one FEN a line, through a stream, and gets to
// its end whatever happens on the way: a stream that breaks, or is over its
// deadline, is begun again after the last answer that came; a run that was
// killed goes on where its output ends.
//
//   stream_file_example 127.0.0.1:50051 lesson.fen explained.txt
//
// The output has a line for each line of the input, in order: White's
// centipawns and the summary, or "error:" and what is wrong with the FEN.
#include <algorithm>
#include <chrono>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>
#include <thread>
#include <vector>

#include "service/client/client.h"

namespace {

namespace service = assay::service;
using std::chrono::milliseconds;

// One stream may take so long; a longer file takes several.
constexpr milliseconds kDeadline = std::chrono::seconds(60);
// Streams in a row that may end without a single answer, and how long we wait
// after the first of them; twice as long after each further one.
constexpr int kMostFailures = 6;
constexpr milliseconds kFirstWait{200};

std::vector<std::string> LinesOf(const std::string& path) {
  std::ifstream file(path);
  std::vector<std::string> lines;
  for (std::string line; std::getline(file, line);) lines.push_back(line);
  return lines;
}

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

// Errors after which another stream may well get on.
bool IsPassing(const absl::Status& status) {
  return absl::IsUnavailable(status) || absl::IsResourceExhausted(status) ||
         absl::IsDeadlineExceeded(status);
}

// One stream over all lines from `done` on, which grows with each answer.
absl::Status StreamFrom(service::Client& client,
                        const std::vector<std::string>& fens,
                        std::ofstream& out, std::size_t& done) {
  std::size_t next = done;
  return client.ExplainStream(
      [&](assay::v1::ExplainRequest& request) {
        if (next == fens.size()) return false;
        request.mutable_position()->set_fen(fens[next++]);
        request.mutable_options()->set_omit_claims(true);
        return true;
      },
      [&](const assay::v1::ExplainStreamResponse& answer) {
        out << LineOf(answer) << '\n' << std::flush;
        ++done;
      });
}

absl::Status ExplainAll(service::Client& client,
                        const std::vector<std::string>& fens,
                        std::ofstream& out, std::size_t done) {
  for (int failures = 0; done < fens.size();) {
    const std::size_t before = done;
    const absl::Status status = StreamFrom(client, fens, out, done);
    if (status.ok()) continue;
    failures = done > before ? 1 : failures + 1;
    if (!IsPassing(status) || failures > kMostFailures) return status;
    std::cerr << done << " of " << fens.size() << " answered; going on after: "
              << absl::StatusCodeToString(status.code()) << '\n';
    std::this_thread::sleep_for(kFirstWait * (1 << (failures - 1)));
  }
  return absl::OkStatus();
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 4) {
    std::cerr << "usage: stream_file_example ADDRESS FENS OUTPUT\n";
    return 2;
  }
  service::ClientOptions options;
  options.address = argv[1];
  options.deadline = kDeadline;
  const auto client = service::Client::Connect(options);
  if (!client.ok()) {
    std::cerr << client.status() << '\n';
    return 3;
  }
  const std::size_t done = WholeLines(argv[3]);
  std::ofstream out(argv[3], std::ios::binary | std::ios::app);
  const absl::Status status = ExplainAll(**client, LinesOf(argv[2]), out, done);
  if (!status.ok() || !out) {
    std::cerr << (out ? status.ToString() : "cannot write") << '\n';
    return 1;
  }
  return 0;
}
