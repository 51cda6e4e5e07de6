#include "service/server/call.h"

#include <cctype>
#include <random>

#include "service/server/code_name.h"
#include "service/server/log.h"
#include "service/server/status.h"

namespace assay::service {
namespace {

constexpr char kIdHeader[] = "x-request-id";
constexpr std::size_t kMostIdBytes = 64;
constexpr std::chrono::milliseconds kRetryCalls{100};

// Unique among the servers that a log may come from.
std::string NewId() {
  static const std::uint64_t start = [] {
    std::random_device device;
    return (std::uint64_t{device()} << 32U) | device();
  }();
  static std::atomic<std::uint64_t> calls{0};
  constexpr char kHex[] = "0123456789abcdef";
  std::uint64_t number = start + ++calls;
  std::string id(16, '0');
  for (std::size_t i = id.size(); i > 0; --i, number >>= 4U) {
    id[i - 1] = kHex[number & 15U];
  }
  return id;
}

// A client's own id is kept where it can do no harm in a log.
bool IsPlain(const std::string& id) {
  if (id.empty() || id.size() > kMostIdBytes) return false;
  for (const char c : id) {
    const bool plain = std::isalnum(static_cast<unsigned char>(c)) != 0 ||
                       c == '-' || c == '_' || c == '.';
    if (!plain) return false;
  }
  return true;
}

LogLevel LevelOf(absl::StatusCode code, bool slow) {
  switch (code) {
    case absl::StatusCode::kOk:
      return slow ? LogLevel::kInfo : LogLevel::kDebug;
    case absl::StatusCode::kCancelled:
      return LogLevel::kInfo;
    case absl::StatusCode::kInternal:
      return LogLevel::kError;
    default:
      return LogLevel::kWarn;
  }
}

}  // namespace

Call::Call(Backend& backend, Method method,
           grpc::CallbackServerContext* context, std::size_t message_bytes)
    : backend_(backend),
      method_(method),
      context_(context),
      start_(std::chrono::steady_clock::now()),
      deadline_(context->deadline()) {
  backend_.metrics.CallStarted();
  backend_.last_event = start_;
  // Beside its metadata, a call has some headers of the protocol's.
  constexpr std::size_t kOwnHeaders = 256;
  constexpr std::size_t kAroundHeader = 32;
  std::size_t headers = kOwnHeaders;
  for (const auto& [name, value] : context->client_metadata()) {
    headers += name.size() + value.size() + kAroundHeader;
  }
  Took(headers + message_bytes);
}

void Call::Took(std::size_t message_bytes) const {
  backend_.connections.Read(context_->peer(), message_bytes);
}

absl::Status Call::MayBegin() const {
  if (backend_.draining) return absl::UnavailableError("shutting down");
  if (backend_.metrics.in_flight() <= backend_.settings.most_calls) {
    return absl::OkStatus();
  }
  return Overloaded(
      "too busy: " + std::to_string(backend_.settings.most_calls) +
          " calls are in flight",
      kRetryCalls);
}

bool Call::Unwanted() const {
  return cancelled_ || std::chrono::system_clock::now() > deadline_;
}

absl::Status Call::UnwantedStatus() const {
  // A client whose time is up cancels, and by its own clock, which began before
  // the request came here: so a cancelled call has the deadline's status from a
  // little before it. Own reasoning: what a busy machine takes to read a call.
  constexpr std::chrono::milliseconds kBefore{50};
  if (std::chrono::system_clock::now() > deadline_ - kBefore) {
    return absl::DeadlineExceededError("the deadline has passed");
  }
  return absl::CancelledError("cancelled by the client");
}

void Call::CountItem(const absl::Status& status, std::uint64_t nodes) {
  CountItems(status.ok() ? 1 : 0, status.ok() ? 0 : 1);
  CountNodes(nodes);
}

void Call::CountNodes(std::uint64_t nodes) {
  backend_.metrics.NodesSearched(nodes);
}

void Call::CountItems(std::uint64_t good, std::uint64_t bad) {
  good_ += good;
  bad_ += bad;
  backend_.metrics.ItemsDone(good, bad);
}

grpc::Status Call::ToFinish(const absl::Status& status) {
  status_ = Unwanted() && !status.ok() ? UnwantedStatus() : status;
  if (!status_.ok()) context_->AddTrailingMetadata(kIdHeader, Id());
  return ToGrpc(status_);
}

void Call::End() {
  const auto now = std::chrono::steady_clock::now();
  const auto took = now - start_;
  backend_.last_event = now;
  WriteLog(took);
  backend_.metrics.CallEnded(
      method_, static_cast<grpc::StatusCode>(status_.code()), took);
}

const std::string& Call::Id() {
  if (!id_.empty()) return id_;
  const auto given = context_->client_metadata().find(kIdHeader);
  if (given != context_->client_metadata().end()) {
    id_.assign(given->second.data(), given->second.size());
  }
  if (!IsPlain(id_)) id_ = NewId();
  return id_;
}

void Call::WriteLog(std::chrono::nanoseconds took) {
  const bool slow = took >= backend_.settings.slow_call;
  const LogLevel level = LevelOf(status_.code(), slow);
  if (!Log::Enabled(level)) return;
  LogLine line;
  line.Add("method", Name(method_))
      .Add("code", CodeName(static_cast<int>(status_.code())))
      .Add("id", Id())
      .Add("peer", context_->peer())
      .Add("duration_us",
           std::chrono::duration_cast<std::chrono::microseconds>(took).count());
  if (good_ + bad_ > 0) {
    line.Add("items", static_cast<std::int64_t>(good_ + bad_))
        .Add("failed", static_cast<std::int64_t>(bad_.load()));
  }
  if (!status_.ok()) {
    line.Add("error", ToGrpc(status_).error_message());
  }
  Log::Write(level, "call", line);
}

}  // namespace assay::service
