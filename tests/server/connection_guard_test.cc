// Peers by the names that gRPC 1.51 gives them (seen in the server's log).
#include "service/server/connection_guard.h"

#include "gtest/gtest.h"

namespace assay::service {
namespace {

TEST(ConnectionGuard, KnowsAPeerByGrpcsName) {
  EXPECT_EQ(ConnectionGuard::PeerKey("ipv4:127.0.0.1:46052"),
            "127.0.0.1 46052");
  EXPECT_EQ(ConnectionGuard::PeerKey("ipv6:%5B::1%5D:46052"), "::1 46052");
  EXPECT_EQ(ConnectionGuard::PeerKey("ipv6:[fe80::1]:7"), "fe80::1 7");
  EXPECT_EQ(ConnectionGuard::PeerKey("ipv6:%5Bfe80::1%25eth0%5D:7"),
            "fe80::1 7");
}

TEST(ConnectionGuard, TakesWhatIsNoAddressAsItIs) {
  for (const char* peer : {"", "inproc", "unix:", "unix:/run/assayd", ":"}) {
    EXPECT_LE(ConnectionGuard::PeerKey(peer).size(), 20U) << peer;
  }
  ConnectionGuard unused;  // watches nothing, keeps nothing, ends at once
  unused.Read("unix:", 1);
  unused.Start({}, 1);
}

}  // namespace
}  // namespace assay::service
