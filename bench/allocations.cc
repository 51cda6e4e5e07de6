#include "bench/allocations.h"

#include <atomic>
#include <cstdlib>
#include <new>

namespace assay::bench {
namespace {

std::atomic<std::uint64_t> allocations{0};

}  // namespace

std::uint64_t Allocations() {
  return allocations.load(std::memory_order_relaxed);
}

}  // namespace assay::bench

// The other forms of new and delete call these two.
void* operator new(std::size_t size) {
  assay::bench::allocations.fetch_add(1, std::memory_order_relaxed);
  void* const memory = std::malloc(size == 0 ? 1 : size);
  if (memory == nullptr) std::abort();
  return memory;
}

void operator delete(void* memory) noexcept { std::free(memory); }
void operator delete(void* memory, std::size_t /*size*/) noexcept {
  std::free(memory);
}
