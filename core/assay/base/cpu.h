// What the processor can do, asked once at run time.
//
// The library is built for the plain x86-64 (or any other) instruction set, so
// that one binary runs everywhere; where the processor has the POPCNT and PEXT
// instructions, they are used all the same, behind a branch that is always
// predicted. Results never depend on the choice.
#ifndef ASSAY_BASE_CPU_H_
#define ASSAY_BASE_CPU_H_

#include <cstdint>

namespace assay {

// Both are false until their translation unit is initialised, which is a
// correct, only slower, answer.
extern const bool kCpuHasPopcnt;
// True only where PEXT is fast (some processors emulate it in microcode).
extern const bool kCpuHasFastPext;

inline std::uint64_t CountBits(std::uint64_t word) {
#if defined(__POPCNT__)
  return static_cast<std::uint64_t>(__builtin_popcountll(word));
#else
#if defined(__x86_64__)
  if (kCpuHasPopcnt) {
    std::uint64_t count = 0;
    asm("popcntq %1, %0" : "=r"(count) : "r"(word) : "cc");
    return count;
  }
#endif
  word -= (word >> 1) & 0x5555555555555555ULL;
  word = (word & 0x3333333333333333ULL) + ((word >> 2) & 0x3333333333333333ULL);
  word = (word + (word >> 4)) & 0x0F0F0F0F0F0F0F0FULL;
  return (word * 0x0101010101010101ULL) >> 56;
#endif
}

// The bits of `word` under `mask`, packed to the low end. Call it only where
// kCpuHasFastPext is true.
inline std::uint64_t ExtractBits(std::uint64_t word, std::uint64_t mask) {
#if defined(__x86_64__)
  std::uint64_t bits = 0;
  asm("pextq %2, %1, %0" : "=r"(bits) : "r"(word), "r"(mask));
  return bits;
#else
  std::uint64_t bits = 0;
  for (int at = 0; mask != 0; mask &= mask - 1, ++at) {
    if ((word & mask & (~mask + 1)) != 0) bits |= std::uint64_t{1} << at;
  }
  return bits;
#endif
}

}  // namespace assay

#endif  // ASSAY_BASE_CPU_H_
