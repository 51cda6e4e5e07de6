// A token is asked for by gRPC before a request is read. On local addresses
// without TLS that takes gRPC's "local" credentials, which any plain client can
// talk to from this machine; insecure ones know no tokens.
#include "service/server/credentials.h"

#include <openssl/pem.h>
#include <openssl/x509.h>

#include <cstdio>
#include <fstream>
#include <utility>

#include "assay/base/problem.h"
#include "assay/base/problem_status.h"
#include "grpcpp/security/auth_metadata_processor.h"
#include "grpcpp/security/tls_certificate_provider.h"
#include "grpcpp/security/tls_credentials_options.h"
#include "service/server/log.h"

namespace assay::service {
namespace {

using grpc::experimental::FileWatcherCertificateProvider;
using grpc::experimental::TlsServerCredentialsOptions;

constexpr std::size_t kLeastTokenBytes = 16;
constexpr std::size_t kMostTokenBytes = 4096;
constexpr char kBearer[] = "Bearer ";
// Probes have no token to give, and learn nothing but whether we serve.
constexpr char kFreePath[] = "/grpc.health.v1.Health/";

std::string Value(const grpc::AuthMetadataProcessor::InputMetadata& metadata,
                  const char* name) {
  const auto at = metadata.find(name);
  return at == metadata.end()
             ? std::string()
             : std::string(at->second.data(), at->second.size());
}

class TokenProcessor : public grpc::AuthMetadataProcessor {
 public:
  TokenProcessor(const std::string& token, Metrics& metrics)
      : expected_(kBearer + token), metrics_(metrics) {}

  bool IsBlocking() const override { return false; }

  grpc::Status Process(const InputMetadata& metadata,
                       grpc::AuthContext* /*context*/, OutputMetadata* consumed,
                       OutputMetadata* /*response*/) override {
    const std::string path = Value(metadata, ":path");
    const std::string given = Value(metadata, "authorization");
    for (auto [at, end] = metadata.equal_range("authorization"); at != end;
         ++at) {
      consumed->insert(
          {"authorization", std::string(at->second.data(), at->second.size())});
    }
    if (path.rfind(kFreePath, 0) == 0 || SameToken(given, expected_)) {
      return grpc::Status::OK;
    }
    metrics_.TokenRefused();
    Log::Write(LogLevel::kWarn, "token refused",
               LogLine()
                   .Add("path", path)
                   .Add("why", given.empty() ? "missing" : "wrong"));
    return {grpc::StatusCode::UNAUTHENTICATED, "a bearer token is needed"};
  }

 private:
  const std::string expected_;
  Metrics& metrics_;
};

absl::Status Unreadable(const std::string& path) {
  return absl::UnavailableError("file: cannot read: found " + Quoted(path) +
                                ", expected a readable PEM file");
}

struct CloseFile {
  void operator()(std::FILE* file) const { std::fclose(file); }
};
struct FreeSsl {
  void operator()(X509* cert) const { X509_free(cert); }
  void operator()(EVP_PKEY* key) const { EVP_PKEY_free(key); }
};

std::shared_ptr<grpc::ServerCredentials> TlsCredentials(
    const ServerOptions& options) {
  TlsServerCredentialsOptions tls(
      std::make_shared<FileWatcherCertificateProvider>(
          options.tls_key, options.tls_cert, options.tls_client_ca,
          static_cast<unsigned>(options.tls_reload_s)));
  tls.watch_identity_key_cert_pairs();
  if (!options.tls_client_ca.empty()) {
    tls.watch_root_certs();
    tls.set_cert_request_type(
        GRPC_SSL_REQUEST_AND_REQUIRE_CLIENT_CERTIFICATE_AND_VERIFY);
  }
  return grpc::experimental::TlsServerCredentials(tls);
}

std::shared_ptr<grpc::ServerCredentials> PlainCredentials(
    const ServerOptions& options, const std::string& address) {
  if (options.token_file.empty()) return grpc::InsecureServerCredentials();
  return grpc::experimental::LocalServerCredentials(
      IsUnixAddress(address) ? UDS : LOCAL_TCP);
}

}  // namespace

bool SameToken(const std::string& a, const std::string& b) {
  if (a.size() != b.size()) return false;
  unsigned char difference = 0;
  for (std::size_t i = 0; i < a.size(); ++i) {
    difference = static_cast<unsigned char>(
        difference |
        (static_cast<unsigned char>(a[i]) ^ static_cast<unsigned char>(b[i])));
  }
  return difference == 0;
}

absl::StatusOr<std::string> ReadToken(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  std::string token;
  if (!std::getline(file, token)) return Unreadable(path);
  if (!token.empty() && token.back() == '\r') token.pop_back();
  bool plain = true;
  for (const char c : token) plain = plain && c > 0x20 && c < 0x7F;
  if (!plain || token.size() < kLeastTokenBytes ||
      token.size() > kMostTokenBytes) {
    return ProblemStatus({"token-file", "no usable token",
                          std::to_string(token.size()) + " bytes",
                          "one line of 16 to 4096 printable characters"});
  }
  return token;
}

absl::Status CheckCertificate(const std::string& cert_path,
                              const std::string& key_path) {
  const std::unique_ptr<std::FILE, CloseFile> cert_file(
      std::fopen(cert_path.c_str(), "rb"));
  if (cert_file == nullptr) return Unreadable(cert_path);
  const std::unique_ptr<std::FILE, CloseFile> key_file(
      std::fopen(key_path.c_str(), "rb"));
  if (key_file == nullptr) return Unreadable(key_path);
  const std::unique_ptr<X509, FreeSsl> cert(
      PEM_read_X509(cert_file.get(), nullptr, nullptr, nullptr));
  const std::unique_ptr<EVP_PKEY, FreeSsl> key(
      PEM_read_PrivateKey(key_file.get(), nullptr, nullptr, nullptr));
  if (cert == nullptr) {
    return ProblemStatus({"tls-cert", "no certificate", Quoted(cert_path),
                          "a certificate in PEM"});
  }
  if (key == nullptr) {
    return ProblemStatus({"tls-key", "no private key", Quoted(key_path),
                          "a private key in PEM, without a passphrase"});
  }
  if (X509_check_private_key(cert.get(), key.get()) != 1) {
    return ProblemStatus({"tls-key", "not the certificate's key",
                          Quoted(key_path), "the key of " + cert_path});
  }
  if (X509_cmp_current_time(X509_get0_notAfter(cert.get())) < 0) {
    return ProblemStatus({"tls-cert", "expired", Quoted(cert_path),
                          "a certificate that is valid now"});
  }
  return absl::OkStatus();
}

absl::StatusOr<std::shared_ptr<grpc::ServerCredentials>> MakeCredentials(
    const ServerOptions& options, const std::string& address,
    Metrics& metrics) {
  const bool tls = !options.tls_cert.empty() && !IsUnixAddress(address);
  if (tls) {
    absl::Status sound = CheckCertificate(options.tls_cert, options.tls_key);
    if (!sound.ok()) return sound;
  }
  std::shared_ptr<grpc::ServerCredentials> credentials =
      tls ? TlsCredentials(options) : PlainCredentials(options, address);
  if (!options.token_file.empty()) {
    const absl::StatusOr<std::string> token = ReadToken(options.token_file);
    if (!token.ok()) return token.status();
    credentials->SetAuthMetadataProcessor(
        std::make_shared<TokenProcessor>(*token, metrics));
  }
  return credentials;
}

}  // namespace assay::service
