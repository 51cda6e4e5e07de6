#include "service/server/worker_pool.h"

#include <future>
#include <string>
#include <vector>

#include "gtest/gtest.h"

namespace assay::service {
namespace {

using std::chrono::milliseconds;
using std::chrono::system_clock;

constexpr auto kNever = system_clock::time_point::max();

// Keeps the only worker busy until told.
class Gate {
 public:
  explicit Gate(WorkerPool& pool) {
    std::promise<void> started;
    pool.Submit(Lane::kBulk, [&, open = open_.get_future().share()] {
      started.set_value();
      open.wait();
    });
    started.get_future().wait();
  }
  void Open() { open_.set_value(); }

 private:
  std::promise<void> open_;
};

TEST(WorkerPool, RunsEveryTaskBeforeItEnds) {
  std::atomic<int> ran{0};
  {
    WorkerPool pool(3, milliseconds(1000));
    for (int i = 0; i < 1000; ++i) {
      pool.Submit(i % 2 == 0 ? Lane::kBulk : Lane::kSingle, [&] { ++ran; });
    }
  }
  EXPECT_EQ(ran, 1000);
}

TEST(WorkerPool, PutsSingleCallsBeforeBulkAndStarvesNeither) {
  std::string order;
  {
    WorkerPool pool(1, milliseconds(1000));
    Gate gate(pool);
    for (int i = 0; i < 4; ++i) {
      pool.Submit(Lane::kBulk, [&] { order += 'b'; });
    }
    for (int i = 0; i < 8; ++i) {
      pool.Submit(Lane::kSingle, [&] { order += 's'; });
    }
    EXPECT_EQ(pool.queued(), 12U);
    gate.Open();
  }
  ASSERT_EQ(order.size(), 12U);
  EXPECT_EQ(order.substr(0, 3), "sss");
  // One in four of the slower lane while both wait.
  EXPECT_NE(order.substr(0, 5).find('b'), std::string::npos);
}

TEST(WorkerPool, AdmitsAnyoneWhileAWorkerIsFree) {
  WorkerPool pool(2, milliseconds(10));
  pool.Add(Lane::kSingle, 1000000000);
  // Until the workers have come to wait.
  while (!pool.Admit(Lane::kSingle, kNever).ok()) {
  }
  EXPECT_TRUE(pool.Admit(Lane::kBulk, kNever).ok());
}

TEST(WorkerPool, RefusesWhoWouldWaitTooLong) {
  WorkerPool pool(1, milliseconds(100));
  Gate gate(pool);
  EXPECT_TRUE(pool.Admit(Lane::kSingle, kNever).ok());
  pool.Add(Lane::kBulk, 1000000);  // some four seconds
  const absl::Status refused = pool.Admit(Lane::kBulk, kNever);
  EXPECT_EQ(refused.code(), absl::StatusCode::kResourceExhausted);
  EXPECT_NE(refused.message().find("ms"), std::string::npos);
  // Calls for one position do not wait for bulk.
  EXPECT_TRUE(pool.Admit(Lane::kSingle, kNever).ok());
  pool.Done(Lane::kBulk, 1000000, milliseconds(0));
  EXPECT_TRUE(pool.Admit(Lane::kBulk, kNever).ok());
  gate.Open();
}

TEST(WorkerPool, RefusesWhoWouldWaitPastTheirDeadline) {
  WorkerPool pool(1, milliseconds(100000));
  Gate gate(pool);
  pool.Add(Lane::kSingle, 1000000);
  const auto now = system_clock::now();
  EXPECT_FALSE(pool.Admit(Lane::kSingle, now + milliseconds(500)).ok());
  EXPECT_TRUE(pool.Admit(Lane::kSingle, now + std::chrono::hours(1)).ok());
  gate.Open();
}

TEST(WorkerPool, LearnsWhatWorkTakes) {
  WorkerPool pool(1, milliseconds(1000));
  Gate gate(pool);
  pool.Add(Lane::kSingle, 1000000);
  const auto before = pool.Wait(Lane::kSingle);
  for (int i = 0; i < 50; ++i) {
    pool.Add(Lane::kSingle, 1000);
    pool.Done(Lane::kSingle, 1000, std::chrono::microseconds(400));
  }
  // A tenth of what was guessed: 400 instead of 4,000 nanoseconds a unit.
  EXPECT_LT(pool.Wait(Lane::kSingle), before / 5);
  EXPECT_GT(pool.Wait(Lane::kSingle), before / 20);
  gate.Open();
}

}  // namespace
}  // namespace assay::service
