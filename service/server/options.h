// How the server is to run: flags, or the lines of a file, of the same names.
//
//   assayd --listen 127.0.0.1:50051 --proof-nodes 20000
//   assayd --config assayd.conf        # "proof-nodes = 20000" and so on
//
// A flag takes precedence over the file.
#ifndef ASSAY_SERVICE_SERVER_OPTIONS_H_
#define ASSAY_SERVICE_SERVER_OPTIONS_H_

#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "assay/proof/search.h"
#include "service/server/log.h"

namespace assay::service {

struct ServerOptions {
  bool help = false;
  bool version = false;
  bool check_config = false;

  std::vector<std::string> listen;  // default: 127.0.0.1:50051
  bool insecure = false;            // no TLS on an address that others reach
  std::string tls_cert;
  std::string tls_key;
  std::string tls_client_ca;
  int tls_reload_s = 5;
  std::string token_file;
  bool reflection = true;

  std::string weights;
  int workers = 0;  // 0: as many as there are cores
  int proof_nodes = static_cast<int>(kDefaultProofNodes);
  int max_proof_nodes = 1000000;

  int max_calls = 1024;
  int max_streams = 256;
  int max_calls_per_connection = 128;
  int max_queue_ms = 5000;
  int memory_mb = 512;
  int max_unread_mb = 64;

  int keepalive_time_s = 120;
  int keepalive_timeout_s = 20;
  int keepalive_min_ping_s = 10;
  int max_connection_age_s = 1800;
  int max_connection_age_grace_s = 60;
  int max_connection_idle_s = 900;
  int handshake_timeout_s = 10;

  int drain_notice_ms = 500;
  int drain_ms = 10000;

  int metrics_port = -1;  // -1: no metrics
  LogLevel log_level = LogLevel::kInfo;
  int slow_call_ms = 1000;
};

// INVALID_ARGUMENT with all problems at once; UNAVAILABLE for a file that
// cannot be read. What is returned fits together and can be run.
absl::StatusOr<ServerOptions> ReadOptions(
    const std::vector<std::string>& words);

// Addresses are "host:port", "[ipv6]:port" or "unix:PATH".
bool IsUnixAddress(const std::string& address);
// Reached from this machine alone.
bool IsLocalAddress(const std::string& address);

// The text of --help, and the options as a file would say them.
std::string OptionsHelp();
std::string ToText(const ServerOptions& options);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_OPTIONS_H_
