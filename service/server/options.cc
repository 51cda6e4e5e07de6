// One table says of each option how it is called, what it takes, and where it
// goes; flags, file, help and listing all come from it.
#include "service/server/options.h"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <string_view>
#include <utility>

#include "assay/base/problem.h"
#include "assay/base/problem_status.h"

namespace assay::service {
namespace {

using Problems = std::vector<Problem>;

constexpr char kDefaultAddress[] = "127.0.0.1:50051";
constexpr std::size_t kMostFileBytes = 65536;
constexpr const char* kLevels[] = {"debug", "info", "warn", "error"};

// Exactly one of the members is set.
struct Option {
  const char* name;
  const char* help;
  bool ServerOptions::*flag = nullptr;
  std::string ServerOptions::*text = nullptr;
  std::vector<std::string> ServerOptions::*list = nullptr;
  int ServerOptions::*number = nullptr;
  int least = 0;
  int most = 0;
  LogLevel ServerOptions::*level = nullptr;
};

Option Flag(const char* name, bool ServerOptions::*to, const char* help) {
  Option option{name, help};
  option.flag = to;
  return option;
}

Option Text(const char* name, std::string ServerOptions::*to,
            const char* help) {
  Option option{name, help};
  option.text = to;
  return option;
}

Option Number(const char* name, int ServerOptions::*to, int least, int most,
              const char* help) {
  Option option{name, help};
  option.number = to;
  option.least = least;
  option.most = most;
  return option;
}

Option Addresses() {
  Option option{"listen",
                "host:port or unix:PATH; may be repeated. Default: "
                "127.0.0.1:50051; port 0 takes a free one"};
  option.list = &ServerOptions::listen;
  return option;
}

Option Level() {
  Option option{"log-level", "debug (every call), info, warn or error"};
  option.level = &ServerOptions::log_level;
  return option;
}

const std::vector<Option>& Options() {
  using S = ServerOptions;
  static const auto& options = *new std::vector<Option>{
      Addresses(),
      Flag("insecure", &S::insecure,
           "serve without TLS on addresses that other machines reach"),
      Text("tls-cert", &S::tls_cert, "certificate chain, PEM"),
      Text("tls-key", &S::tls_key, "its private key, PEM"),
      Text("tls-client-ca", &S::tls_client_ca,
           "PEM: clients need a certificate of this authority"),
      Number("tls-reload-s", &S::tls_reload_s, 1, 86400,
             "how often the three files are looked at, in seconds"),
      Text("token-file", &S::token_file,
           "its first line is the token that calls must bear"),
      Flag("reflection", &S::reflection, "tell clients the contract"),
      Text("weights", &S::weights, "weights instead of the defaults"),
      Number("workers", &S::workers, 0, 1024,
             "threads that search; 0: one for each core"),
      Number("proof-nodes", &S::proof_nodes, 1, 2000000000,
             "nodes of search where a request asks for no number"),
      Number("max-proof-nodes", &S::max_proof_nodes, 1, 2000000000,
             "a request may ask for no more"),
      Number("max-calls", &S::max_calls, 1, 1000000,
             "calls in flight; further ones are refused"),
      Number("max-streams", &S::max_streams, 1, 100000,
             "ExplainStream calls in flight; further ones are refused"),
      Number("max-calls-per-connection", &S::max_calls_per_connection, 1,
             100000, "further ones wait in the client"),
      Number("max-queue-ms", &S::max_queue_ms, 1, 3600000,
             "a call that would wait longer is refused at once"),
      Number("memory-mb", &S::memory_mb, 16, 1048576,
             "gRPC's buffers of all connections, in MiB"),
      Number("max-unread-mb", &S::max_unread_mb, 16, 1048576,
             "what clients have sent and no call has read, such as headers "
             "without end, in MiB; beyond, whoever sent most is cut off"),
      Number("keepalive-time-s", &S::keepalive_time_s, 1, 86400,
             "silence after which a connection is tested"),
      Number("keepalive-timeout-s", &S::keepalive_timeout_s, 1, 86400,
             "no answer for so long ends it"),
      Number("keepalive-min-ping-s", &S::keepalive_min_ping_s, 1, 86400,
             "clients that test more often are sent away"),
      Number("max-connection-age-s", &S::max_connection_age_s, 1, 31536000,
             "then clients are asked to connect anew"),
      Number("max-connection-age-grace-s", &S::max_connection_age_grace_s, 1,
             31536000, "and their calls have so long to end"),
      Number("max-connection-idle-s", &S::max_connection_idle_s, 1, 31536000,
             "a connection without calls is closed"),
      Number("handshake-timeout-s", &S::handshake_timeout_s, 1, 3600,
             "a connection that says nothing sensible is closed"),
      Number("drain-notice-ms", &S::drain_notice_ms, 0, 600000,
             "on SIGTERM: NOT_SERVING for so long before calls are refused"),
      Number("drain-ms", &S::drain_ms, 0, 3600000,
             "then calls in flight have so long to end"),
      Number("metrics-port", &S::metrics_port, 0, 65535,
             "Prometheus text at http://127.0.0.1:PORT/metrics; off without"),
      Level(),
      Number("slow-call-ms", &S::slow_call_ms, 1, 3600000,
             "calls that take longer are logged at info"),
      Flag("check-config", &S::check_config,
           "say what would be run, or what is wrong, and end"),
      Flag("help", &S::help, "this text"),
      Flag("version", &S::version, "the version"),
  };
  return options;
}

const Option* Find(std::string_view name) {
  for (const Option& option : Options()) {
    if (option.name == name) return &option;
  }
  return nullptr;
}

void SetNumber(const Option& option, const std::string& value,
               ServerOptions& options, Problems& problems) {
  const bool digits = !value.empty() && value.size() <= 10 &&
                      std::all_of(value.begin(), value.end(),
                                  [](char c) { return c >= '0' && c <= '9'; });
  const long long read = digits ? std::stoll(value) : -1;
  if (read < option.least || read > option.most) {
    problems.push_back(
        {option.name, "not a number in range", Quoted(value),
         std::to_string(option.least) + " to " + std::to_string(option.most)});
    return;
  }
  options.*option.number = static_cast<int>(read);
}

void SetLevel(const Option& option, const std::string& value,
              ServerOptions& options, Problems& problems) {
  const auto* at = std::find(std::begin(kLevels), std::end(kLevels), value);
  if (at == std::end(kLevels)) {
    problems.push_back(
        {option.name, "unknown", Quoted(value), "debug, info, warn or error"});
    return;
  }
  options.*option.level = static_cast<LogLevel>(at - std::begin(kLevels));
}

void Set(const Option& option, const std::string& value, ServerOptions& options,
         Problems& problems) {
  if (option.flag != nullptr) {
    if (value == "true" || value == "false") {
      options.*option.flag = value == "true";
    } else {
      problems.push_back(
          {option.name, "neither yes nor no", Quoted(value), "true or false"});
    }
  } else if (option.text != nullptr) {
    options.*option.text = value;
  } else if (option.list != nullptr) {
    (options.*option.list).push_back(value);
  } else if (option.level != nullptr) {
    SetLevel(option, value, options, problems);
  } else {
    SetNumber(option, value, options, problems);
  }
}

// An option as it was given, on the command line or in the file.
struct Given {
  std::string name;
  std::string value;
};

void Apply(const std::vector<Given>& given, ServerOptions& options,
           Problems& problems) {
  for (const Given& one : given) {
    const Option* option = Find(one.name);
    if (option == nullptr) {
      problems.push_back({one.name, "unknown option", "", "see --help"});
    } else {
      Set(*option, one.value, options, problems);
    }
  }
}

std::vector<Given> ReadFlags(const std::vector<std::string>& words,
                             std::string& config, Problems& problems) {
  std::vector<Given> flags;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (words[i].substr(0, 2) != "--") {
      problems.push_back({"flag", "not a flag", Quoted(words[i]), "--NAME"});
      continue;
    }
    const std::size_t equals = words[i].find('=');
    Given flag{
        words[i].substr(2, equals == std::string::npos ? equals : equals - 2),
        "true"};
    const Option* option = Find(flag.name);
    const bool takes_value =
        flag.name == "config" || (option != nullptr && option->flag == nullptr);
    if (equals != std::string::npos) {
      flag.value = words[i].substr(equals + 1);
    } else if (takes_value && i + 1 < words.size()) {
      flag.value = words[++i];
    } else if (takes_value) {
      problems.push_back({flag.name, "missing value", "", "a value after it"});
      continue;
    }
    if (flag.name == "config") {
      config = flag.value;
    } else {
      flags.push_back(std::move(flag));
    }
  }
  return flags;
}

std::string Trimmed(const std::string& text) {
  const std::size_t first = text.find_first_not_of(" \t\r");
  if (first == std::string::npos) return "";
  return text.substr(first, text.find_last_not_of(" \t\r") - first + 1);
}

// Lines "name = value"; "#" starts a comment at the start of a line.
absl::StatusOr<std::vector<Given>> ReadConfig(const std::string& path,
                                              Problems& problems) {
  std::vector<Given> given;
  if (path.empty()) return given;
  std::ifstream file(path, std::ios::binary);
  std::string line;
  std::size_t bytes = 0;
  while (std::getline(file, line) && (bytes += line.size()) < kMostFileBytes) {
    line = Trimmed(line);
    if (line.empty() || line[0] == '#') continue;
    const std::size_t equals = line.find('=');
    if (equals == std::string::npos) {
      problems.push_back(
          {"config", "not an option", Quoted(line), "name = value"});
      continue;
    }
    given.push_back(
        {Trimmed(line.substr(0, equals)), Trimmed(line.substr(equals + 1))});
  }
  if (!file.eof()) {
    return absl::UnavailableError("config: cannot read: found " + Quoted(path) +
                                  ", expected a readable file");
  }
  return given;
}

void CheckFits(const ServerOptions& options, Problems& problems) {
  const bool tls = !options.tls_cert.empty();
  if (options.tls_cert.empty() != options.tls_key.empty()) {
    problems.push_back(
        {"tls-cert, tls-key", "one without the other", "", "both or neither"});
  }
  if (!options.tls_client_ca.empty() && !tls) {
    problems.push_back({"tls-client-ca", "without a certificate of our own",
                        Quoted(options.tls_client_ca), "tls-cert, tls-key"});
  }
  if (options.proof_nodes > options.max_proof_nodes) {
    problems.push_back({"proof-nodes", "above max-proof-nodes",
                        std::to_string(options.proof_nodes),
                        "at most " + std::to_string(options.max_proof_nodes)});
  }
  for (const std::string& address : options.listen) {
    if (!IsUnixAddress(address) && address.find(':') == std::string::npos) {
      problems.push_back({"listen", "not an address", Quoted(address),
                          "host:port or unix:PATH"});
    } else if (!IsLocalAddress(address) && !tls && !options.insecure) {
      problems.push_back({"listen", "reached by others, and no TLS",
                          Quoted(address),
                          "tls-cert and tls-key, or insecure spelled out"});
    } else if (!IsLocalAddress(address) && !tls &&
               !options.token_file.empty()) {
      problems.push_back({"token-file", "would go over the net in the clear",
                          Quoted(address), "tls-cert and tls-key"});
    }
  }
}

std::string ValueOf(const Option& option, const ServerOptions& options) {
  if (option.flag != nullptr) return options.*option.flag ? "true" : "false";
  if (option.text != nullptr) return options.*option.text;
  if (option.level != nullptr) {
    return kLevels[static_cast<int>(options.*option.level)];
  }
  return std::to_string(options.*option.number);
}

}  // namespace

bool IsUnixAddress(const std::string& address) {
  return address.rfind("unix:", 0) == 0;
}

bool IsLocalAddress(const std::string& address) {
  const std::string host = address.substr(0, address.rfind(':'));
  return IsUnixAddress(address) || host == "localhost" || host == "[::1]" ||
         (host.rfind("127.", 0) == 0 &&
          host.find_first_not_of("0123456789.") == std::string::npos);
}

absl::StatusOr<ServerOptions> ReadOptions(
    const std::vector<std::string>& words) {
  ServerOptions options;
  Problems problems;
  std::string config;
  const std::vector<Given> flags = ReadFlags(words, config, problems);
  const absl::StatusOr<std::vector<Given>> lines = ReadConfig(config, problems);
  if (!lines.ok()) return lines.status();
  Apply(*lines, options, problems);
  const bool listens =
      std::any_of(flags.begin(), flags.end(),
                  [](const Given& flag) { return flag.name == "listen"; });
  if (listens) options.listen.clear();
  Apply(flags, options, problems);
  if (options.listen.empty()) options.listen.push_back(kDefaultAddress);
  CheckFits(options, problems);
  if (!problems.empty()) return ProblemsStatus(problems);
  return options;
}

std::string OptionsHelp() {
  std::string text =
      "assayd: explains chess positions to clients over gRPC "
      "(proto/assay/v1).\n\n"
      "  --config FILE\n      options as lines \"name = value\"; a flag takes "
      "precedence\n";
  const ServerOptions defaults;
  for (const Option& option : Options()) {
    text += std::string("  --") + option.name;
    text += option.flag == nullptr  ? " VALUE\n      "
            : defaults.*option.flag ? "=true|false\n      "
                                    : "\n      ";
    text += option.help;
    if (option.number != nullptr && defaults.*option.number >= 0) {
      text += "; default " + ValueOf(option, defaults);
    }
    text += '\n';
  }
  return text +
         "\nSIGTERM and SIGINT end the server: it tells its health as "
         "NOT_SERVING, refuses new\ncalls, finishes those in flight and exits "
         "with 0. The log is on standard error.\nExit status: 0 ended as "
         "asked; 2 bad usage; 3 cannot listen or read a file.\n";
}

std::string ToText(const ServerOptions& options) {
  std::string text;
  for (const Option& option : Options()) {
    const std::string_view name = option.name;
    if (name == "check-config" || name == "help" || name == "version") continue;
    if (option.list != nullptr) {
      for (const std::string& value : options.*option.list) {
        text += std::string(name) + " = " + value + "\n";
      }
      continue;
    }
    const std::string value = ValueOf(option, options);
    if (!value.empty() && value != "-1") {
      text += std::string(name) + " = " + value + "\n";
    }
  }
  return text;
}

}  // namespace assay::service
