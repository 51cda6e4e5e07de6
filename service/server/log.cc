#include "service/server/log.h"

#include <atomic>
#include <chrono>
#include <memory>
#include <mutex>

#include "google/protobuf/stubs/logging.h"
#include "grpc/support/log.h"
#include "spdlog/pattern_formatter.h"
#include "spdlog/sinks/stdout_sinks.h"
#include "spdlog/spdlog.h"

namespace assay::service {
namespace {

constexpr std::string_view kNames[] = {"debug", "info", "warn", "error"};

spdlog::level::level_enum ToSpdlog(LogLevel level) {
  switch (level) {
    case LogLevel::kDebug:
      return spdlog::level::debug;
    case LogLevel::kInfo:
      return spdlog::level::info;
    case LogLevel::kWarn:
      return spdlog::level::warn;
    case LogLevel::kError:
      break;
  }
  return spdlog::level::err;
}

// Time in UTC; the rest of the line is ours.
spdlog::logger& Logger() {
  static spdlog::logger& logger = *[] {
    auto* made = new spdlog::logger(
        "assayd", std::make_shared<spdlog::sinks::stderr_sink_mt>());
    made->set_formatter(std::make_unique<spdlog::pattern_formatter>(
        R"({"ts":"%Y-%m-%dT%H:%M:%S.%eZ",%v})",
        spdlog::pattern_time_type::utc));
    made->set_level(spdlog::level::info);
    return made;
  }();
  return logger;
}

void Escape(std::string_view value, std::string& text) {
  constexpr char kHex[] = "0123456789abcdef";
  for (const char c : value) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\') {
      text += {'\\', c};
    } else if (byte < 0x20) {
      text += {'\\', 'u', '0', '0', kHex[byte >> 4U], kHex[byte & 15U]};
    } else {
      text += c;
    }
  }
}

void AddName(std::string_view name, std::string& text) {
  text += ",\"";
  text += name;
  text += "\":";
}

// How many lines were left out before this one; nothing when this one has to
// be left out, too.
bool MayWarn(std::int64_t& left_out) {
  static std::mutex mutex;
  static std::chrono::steady_clock::time_point second;
  static int written = 0;
  static std::int64_t missing = 0;
  const std::lock_guard<std::mutex> lock(mutex);
  const auto now = std::chrono::steady_clock::now();
  if (now - second >= std::chrono::seconds(1)) {
    second = now;
    written = 0;
  }
  if (++written > kMostWarnings) {
    ++missing;
    return false;
  }
  left_out = std::exchange(missing, 0);
  return true;
}

void FromGrpc(gpr_log_func_args* args) {
  const LogLevel level = args->severity == GPR_LOG_SEVERITY_ERROR
                             ? LogLevel::kWarn
                             : LogLevel::kDebug;
  Log::Write(level, "grpc", LogLine().Add("text", args->message));
}

void FromProtobuf(google::protobuf::LogLevel /*level*/, const char* /*file*/,
                  int /*line*/, const std::string& text) {
  Log::Write(LogLevel::kDebug, "protobuf", LogLine().Add("text", text));
}

}  // namespace

LogLine& LogLine::Add(std::string_view name, std::string_view value) {
  AddName(name, text_);
  text_ += '"';
  Escape(value, text_);
  text_ += '"';
  return *this;
}

LogLine& LogLine::Add(std::string_view name, std::int64_t value) {
  AddName(name, text_);
  text_ += std::to_string(value);
  return *this;
}

void Log::SetLevel(LogLevel level) { Logger().set_level(ToSpdlog(level)); }

bool Log::Enabled(LogLevel level) {
  return Logger().should_log(ToSpdlog(level));
}

void Log::Write(LogLevel level, std::string_view message,
                const LogLine& fields) {
  if (!Enabled(level)) return;
  std::int64_t left_out = 0;
  if (level == LogLevel::kWarn && !MayWarn(left_out)) return;
  std::string line = "\"level\":\"";
  line += kNames[static_cast<int>(level)];
  line += "\",\"msg\":\"";
  line += message;
  line += '"';
  line += fields.text();
  if (left_out > 0) line += ",\"left_out\":" + std::to_string(left_out);
  Logger().log(ToSpdlog(level), "{}", line);
}

void Log::Flush() { Logger().flush(); }

void Log::TakeOverLibraries() {
  gpr_set_log_function(FromGrpc);
  google::protobuf::SetLogHandler(FromProtobuf);
}

}  // namespace assay::service
