// The log: one JSON object a line on standard error.
//
//   {"ts":"2026-11-25T10:00:00.123Z","level":"warn","msg":"call", ...}
//
// Thread-safe. A flood of warnings is thinned: beyond kMostWarnings a second
// they are counted, and the count stands in the next line as "left_out".
#ifndef ASSAY_SERVICE_SERVER_LOG_H_
#define ASSAY_SERVICE_SERVER_LOG_H_

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>

namespace assay::service {

enum class LogLevel { kDebug, kInfo, kWarn, kError };

inline constexpr int kMostWarnings = 200;

// The fields of one line, in order. Values are escaped.
class LogLine {
 public:
  LogLine& Add(std::string_view name, std::string_view value);
  LogLine& Add(std::string_view name, std::int64_t value);
  const std::string& text() const { return text_; }

 private:
  std::string text_;
};

class Log {
 public:
  static void SetLevel(LogLevel level);
  static bool Enabled(LogLevel level);
  static void Write(LogLevel level, std::string_view message,
                    const LogLine& fields = {});
  static void Flush();
  // What gRPC and protobuf would print goes into the log, too.
  static void TakeOverLibraries();
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_LOG_H_
