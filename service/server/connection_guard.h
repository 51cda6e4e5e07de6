// What clients have sent that no call has read, and who is sent away for it.
//
// gRPC 1.51 keeps a header block until it ends, however long it is, at up to
// ten bytes of memory a byte sent, and its resource quota does not stop that.
// So the kernel is asked what each connection has brought, and calls tell what
// they have read of it. Where the rest of all connections together is over a
// limit, the connection with the largest is closed.
//
//   ConnectionGuard guard;
//   guard.Start(ports, most_unread);
//   guard.Read(context->peer(), bytes);   // by any thread, for each message
//
// A message counts as unread until it is there whole. Connections over Unix
// sockets come from this machine and are not watched.
#ifndef ASSAY_SERVICE_SERVER_CONNECTION_GUARD_H_
#define ASSAY_SERVICE_SERVER_CONNECTION_GUARD_H_

#include <atomic>
#include <condition_variable>
#include <cstdint>
#include <mutex>
#include <string>
#include <string_view>
#include <thread>
#include <unordered_map>
#include <vector>

namespace assay::service {

class ConnectionGuard {
 public:
  ConnectionGuard() = default;
  ~ConnectionGuard() { Stop(); }
  ConnectionGuard(const ConnectionGuard&) = delete;
  ConnectionGuard& operator=(const ConnectionGuard&) = delete;

  // Watches connections to these ports of ours from now on.
  void Start(const std::vector<int>& ports, std::uint64_t most_unread_bytes);
  void Stop();

  // A call has so many bytes of a peer, named as gRPC does
  // ("ipv4:127.0.0.1:46052", "ipv6:%5B::1%5D:46052").
  void Read(std::string_view peer, std::uint64_t bytes);

  // "127.0.0.1 46052", "::1 46052": the same for both ways to name a peer.
  static std::string PeerKey(std::string_view peer);

 private:
  struct Connection {
    int file = -1;
    std::string peer;  // its key
    std::uint64_t received = 0;
    std::uint64_t unread = 0;
    bool known = false;  // something of it was read
  };

  void Watch();
  std::vector<Connection> Connections() const;
  void Look();
  void Forget(const std::vector<Connection>& connections);

  std::vector<int> ports_;
  std::uint64_t most_unread_ = 0;
  std::mutex mutex_;
  std::condition_variable wake_;
  bool ending_ = false;
  struct ReadBytes {
    std::uint64_t bytes = 0;
    bool missed = false;  // at the last look there was no such connection
  };
  std::atomic<bool> watching_{false};
  std::unordered_map<std::string, ReadBytes> read_;  // by key
  std::thread thread_;
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_CONNECTION_GUARD_H_
