#include "service/server/connection_guard.h"

#include <arpa/inet.h>
#include <dirent.h>
#include <linux/tcp.h>
#include <netinet/in.h>
#include <sys/socket.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <memory>
#include <optional>
#include <unordered_set>
#include <utility>

#include "service/server/log.h"

namespace assay::service {
namespace {

// At what a client can send in it, the limit is passed by little.
constexpr std::chrono::milliseconds kBetween{50};
// What a message costs besides its own bytes: frames, and TLS around them.
constexpr std::uint64_t kAroundMessage = 128;
constexpr std::uint64_t kAroundShare = 16;  // a sixteenth of it
// What a client sends to get answers: window updates and acknowledgements, far
// less than this share of what it is sent.
constexpr std::uint64_t kReplyShare = 64;

// As the kernel has it; the C library's header of the name does not go with the
// kernel's.
constexpr int kEstablished = 1;

template <class Value>
bool Option(int file, int level, int name, Value& value) {
  socklen_t size = sizeof value;
  return getsockopt(file, level, name, &value, &size) == 0;
}

struct Address {
  std::string host;
  int port = 0;
};

std::optional<Address> Named(const sockaddr_storage& from) {
  char host[INET6_ADDRSTRLEN] = {};
  if (from.ss_family == AF_INET) {
    const auto& v4 = reinterpret_cast<const sockaddr_in&>(from);
    inet_ntop(AF_INET, &v4.sin_addr, host, sizeof host);
    return Address{host, ntohs(v4.sin_port)};
  }
  if (from.ss_family != AF_INET6) return std::nullopt;
  const auto& v6 = reinterpret_cast<const sockaddr_in6&>(from);
  if (IN6_IS_ADDR_V4MAPPED(&v6.sin6_addr) != 0) {
    inet_ntop(AF_INET, &v6.sin6_addr.s6_addr[12], host, sizeof host);
  } else {
    inet_ntop(AF_INET6, &v6.sin6_addr, host, sizeof host);
  }
  return Address{host, ntohs(v6.sin6_port)};
}

std::optional<Address> AddressOf(int file,
                                 int (*ask)(int, sockaddr*, socklen_t*)) {
  sockaddr_storage address = {};
  socklen_t size = sizeof address;
  if (ask(file, reinterpret_cast<sockaddr*>(&address), &size) != 0) {
    return std::nullopt;
  }
  return Named(address);
}

// Ends a connection at once, with all that it has brought; the descriptor stays
// gRPC's, which finds it closed. (After shutdown() alone, a client that sends
// no more because nobody reads would wait for ever.)
void Reset(int file) {
  sockaddr nobody = {};
  nobody.sa_family = AF_UNSPEC;
  static_cast<void>(connect(file, &nobody, sizeof nobody));
}

std::string KeyOf(const Address& address) {
  return address.host + ' ' + std::to_string(address.port);
}

}  // namespace

std::string ConnectionGuard::PeerKey(std::string_view peer) {
  const std::size_t scheme = peer.find(':');
  if (scheme == std::string_view::npos) return std::string(peer);
  peer.remove_prefix(scheme + 1);
  const std::size_t colon = peer.rfind(':');
  if (colon == std::string_view::npos) return std::string(peer);
  std::string host(peer.substr(0, colon));
  for (const char* bracket : {"%5B", "%5D", "[", "]"}) {
    const std::size_t at = host.find(bracket);
    if (at != std::string::npos) {
      host.erase(at, std::string_view(bracket).size());
    }
  }
  host.resize(std::min(host.find('%'), host.size()));  // a scope
  return host + ' ' + std::string(peer.substr(colon + 1));
}

void ConnectionGuard::Start(const std::vector<int>& ports,
                            std::uint64_t most_unread_bytes) {
  ports_ = ports;
  most_unread_ = most_unread_bytes;
  if (ports_.empty()) return;
  watching_ = true;
  thread_ = std::thread([this] { Watch(); });
}

void ConnectionGuard::Stop() {
  {
    const std::lock_guard<std::mutex> lock(mutex_);
    ending_ = true;
  }
  wake_.notify_all();
  if (thread_.joinable()) thread_.join();
}

void ConnectionGuard::Read(std::string_view peer, std::uint64_t bytes) {
  if (!watching_) return;
  std::string key = PeerKey(peer);
  const std::lock_guard<std::mutex> lock(mutex_);
  read_[std::move(key)].bytes += bytes + bytes / kAroundShare + kAroundMessage;
}

void ConnectionGuard::Watch() {
  std::unique_lock<std::mutex> lock(mutex_);
  while (!wake_.wait_for(lock, kBetween, [this] { return ending_; })) {
    lock.unlock();
    Look();
    lock.lock();
  }
}

// The process's own sockets that clients have connected to. gRPC hands none of
// them out.
std::vector<ConnectionGuard::Connection> ConnectionGuard::Connections() const {
  std::vector<Connection> connections;
  const std::unique_ptr<DIR, int (*)(DIR*)> folder(opendir("/proc/self/fd"),
                                                   closedir);
  if (folder == nullptr) return connections;
  while (const dirent* entry = readdir(folder.get())) {
    const int file = std::atoi(entry->d_name);
    int protocol = 0;
    int listens = 0;
    if (file == 0 || !Option(file, SOL_SOCKET, SO_PROTOCOL, protocol) ||
        protocol != IPPROTO_TCP ||
        !Option(file, SOL_SOCKET, SO_ACCEPTCONN, listens) || listens != 0) {
      continue;
    }
    const std::optional<Address> own = AddressOf(file, getsockname);
    const std::optional<Address> peer = AddressOf(file, getpeername);
    tcp_info info = {};
    if (!own.has_value() || !peer.has_value() ||
        std::find(ports_.begin(), ports_.end(), own->port) == ports_.end() ||
        !Option(file, IPPROTO_TCP, TCP_INFO, info) ||
        info.tcpi_state != kEstablished) {
      continue;
    }
    Connection connection;
    connection.file = file;
    connection.peer = KeyOf(*peer);
    connection.received = info.tcpi_bytes_received;
    connection.unread =
        connection.received -
        std::min<std::uint64_t>(connection.received,
                                info.tcpi_bytes_acked / kReplyShare);
    connections.push_back(std::move(connection));
  }
  return connections;
}

// Connections that are gone; not those that came since the last look.
void ConnectionGuard::Forget(const std::vector<Connection>& connections) {
  std::unordered_set<std::string_view> there;
  for (const Connection& connection : connections) {
    if (connection.known) there.insert(connection.peer);
  }
  for (auto at = read_.begin(); at != read_.end();) {
    const bool gone = there.count(at->first) == 0;
    if (gone && at->second.missed) {
      at = read_.erase(at);
    } else {
      at->second.missed = gone;
      ++at;
    }
  }
}

void ConnectionGuard::Look() {
  std::vector<Connection> connections = Connections();
  std::uint64_t all = 0;
  {
    const std::lock_guard<std::mutex> lock(mutex_);
    for (Connection& connection : connections) {
      const auto found = read_.find(connection.peer);
      if (found != read_.end()) {
        connection.unread -= std::min(connection.unread, found->second.bytes);
        connection.known = true;
      }
      all += connection.unread;
    }
    Forget(connections);
  }
  while (all > most_unread_) {
    const auto worst =
        std::max_element(connections.begin(), connections.end(),
                         [](const Connection& a, const Connection& b) {
                           return a.unread < b.unread;
                         });
    // The descriptor may be another's by now, if gRPC has just closed it.
    const std::optional<Address> peer = AddressOf(worst->file, getpeername);
    if (peer.has_value() && KeyOf(*peer) == worst->peer) {
      Reset(worst->file);
      Log::Write(
          LogLevel::kWarn, "connection closed",
          LogLine()
              .Add("peer", worst->peer)
              .Add("unread_bytes", static_cast<std::int64_t>(worst->unread)));
    }
    all -= worst->unread;
    worst->unread = 0;
  }
}

}  // namespace assay::service
