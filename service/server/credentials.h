// Who may call: TLS, mutual TLS with certificates that are read again when
// they change, and a bearer token.
#ifndef ASSAY_SERVICE_SERVER_CREDENTIALS_H_
#define ASSAY_SERVICE_SERVER_CREDENTIALS_H_

#include <memory>
#include <string>

#include "absl/status/statusor.h"
#include "grpcpp/security/server_credentials.h"
#include "service/server/metrics.h"
#include "service/server/options.h"

namespace assay::service {

// Takes the same time for any token of the right length.
bool SameToken(const std::string& a, const std::string& b);

// The first line of a file. INVALID_ARGUMENT where it is not of 16 to 4,096
// printable characters, UNAVAILABLE where the file cannot be read. Never tells
// the token.
absl::StatusOr<std::string> ReadToken(const std::string& path);

// Whether a certificate and a key in PEM belong together and can be used now.
// UNAVAILABLE where a file cannot be read, INVALID_ARGUMENT with the reason.
absl::Status CheckCertificate(const std::string& cert_path,
                              const std::string& key_path);

// What the options say of one address. The files are checked first; afterwards
// gRPC reads them again every tls_reload_s seconds.
absl::StatusOr<std::shared_ptr<grpc::ServerCredentials>> MakeCredentials(
    const ServerOptions& options, const std::string& address, Metrics& metrics);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_CREDENTIALS_H_
