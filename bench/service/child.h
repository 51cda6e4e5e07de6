// A server of its own process for a benchmark.
#ifndef ASSAY_BENCH_SERVICE_CHILD_H_
#define ASSAY_BENCH_SERVICE_CHILD_H_

#include <sys/types.h>

#include <string>
#include <vector>

namespace assay::bench {

// Started by the constructor, which waits for a line of standard error that
// names its "address"; ended by the destructor. To be made before anything of
// gRPC, which does not survive a fork.
class Child {
 public:
  Child(const std::string& program, const std::vector<std::string>& arguments);
  ~Child();
  Child(const Child&) = delete;
  Child& operator=(const Child&) = delete;

  const std::string& address() const { return address_; }
  // Resident memory in KiB, now.
  long ResidentKib() const;

 private:
  pid_t pid_ = -1;
  std::string address_;
};

}  // namespace assay::bench

#endif  // ASSAY_BENCH_SERVICE_CHILD_H_
