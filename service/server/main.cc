// assayd: reads how it is to run, serves until a signal, leaves in good order.
#include <signal.h>
#include <sys/stat.h>
#include <unistd.h>

#include <chrono>
#include <iostream>
#include <string>
#include <thread>
#include <vector>

#include "absl/synchronization/mutex.h"
#include "assay/explain/assayer.h"
#include "service/convert/version_text.h"
#include "service/server/credentials.h"
#include "service/server/log.h"
#include "service/server/options.h"
#include "service/server/server.h"

namespace assay::service {
namespace {

enum ExitCode { kSuccess = 0, kBadUsage = 2, kCannotServe = 3 };

// A drain that hangs is ended so long after its deadline.
constexpr std::chrono::seconds kPatience{2};

int Fail(const absl::Status& status) {
  std::cerr << "assayd: " << status.message() << '\n';
  return absl::IsUnavailable(status) ? kCannotServe : kBadUsage;
}

absl::Status CheckFiles(const ServerOptions& options) {
  absl::Status sound = LoadWeights(options).status();
  if (sound.ok() && !options.token_file.empty()) {
    sound = ReadToken(options.token_file).status();
  }
  if (sound.ok() && !options.tls_cert.empty()) {
    sound = CheckCertificate(options.tls_cert, options.tls_key);
  }
  return sound;
}

// The signals that end the server; blocked in every thread, so before any is
// made.
sigset_t BlockSignals() {
  sigset_t signals;
  sigemptyset(&signals);
  sigaddset(&signals, SIGTERM);
  sigaddset(&signals, SIGINT);
  pthread_sigmask(SIG_BLOCK, &signals, nullptr);
  signal(SIGPIPE, SIG_IGN);
  return signals;
}

void Announce(const Server& server) {
  for (const std::string& address : server.addresses()) {
    Log::Write(LogLevel::kInfo, "listening", LogLine().Add("address", address));
  }
  if (server.metrics_port() >= 0) {
    Log::Write(LogLevel::kInfo, "metrics",
               LogLine().Add("port", server.metrics_port()));
  }
  Log::Write(LogLevel::kInfo, "serving", LogLine().Add("version", kVersion));
}

void LimitDrain(const ServerOptions& options) {
  const auto limit =
      std::chrono::milliseconds(options.drain_notice_ms + options.drain_ms) +
      kPatience;
  std::thread([limit] {
    std::this_thread::sleep_for(limit);
    Log::Write(LogLevel::kError, "drain hangs");
    Log::Flush();
    _exit(1);
  }).detach();
}

int Serve(const ServerOptions& options) {
  const sigset_t signals = BlockSignals();
  umask(0077);  // a Unix socket is its owner's alone
  Log::SetLevel(options.log_level);
  Log::TakeOverLibraries();
  // Debian's Abseil looks for deadlocks at each lock of a mutex.
  absl::SetMutexDeadlockDetectionMode(absl::OnDeadlockCycle::kIgnore);
  absl::StatusOr<std::unique_ptr<Server>> server = Server::Start(options);
  if (!server.ok()) return Fail(server.status());
  Announce(**server);
  int signal_number = 0;
  sigwait(&signals, &signal_number);
  Log::Write(LogLevel::kInfo, "draining",
             LogLine().Add("signal", signal_number));
  LimitDrain(options);
  const bool all_ended = (*server)->Drain();
  server->reset();
  Log::Write(all_ended ? LogLevel::kInfo : LogLevel::kWarn, "ended",
             LogLine().Add("calls_cut_off", all_ended ? "false" : "true"));
  return kSuccess;
}

int Run(const std::vector<std::string>& words) {
  const absl::StatusOr<ServerOptions> options = ReadOptions(words);
  if (!options.ok()) return Fail(options.status());
  if (options->help) {
    std::cout << OptionsHelp();
    return kSuccess;
  }
  if (options->version) {
    std::cout << "assayd " << VersionText() << '\n';
    return kSuccess;
  }
  if (options->check_config) {
    const absl::Status sound = CheckFiles(*options);
    if (!sound.ok()) return Fail(sound);
    std::cout << ToText(*options);
    return kSuccess;
  }
  return Serve(*options);
}

}  // namespace
}  // namespace assay::service

int main(int argc, char** argv) {
  const std::vector<std::string> words(argv + 1, argv + argc);
  const int code = assay::service::Run(words);
  std::cout.flush();
  assay::service::Log::Flush();
  // gRPC's own threads have been seen to hold up a process for ten seconds
  // while static objects were destroyed.
  _exit(code);
}
