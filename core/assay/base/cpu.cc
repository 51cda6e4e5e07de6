// Asks the processor by CPUID, through the compiler's own built-ins.
#include "assay/base/cpu.h"

namespace assay {
namespace {

bool HasPopcnt() {
#if defined(__x86_64__)
  __builtin_cpu_init();
  return __builtin_cpu_supports("popcnt") != 0;
#else
  return false;
#endif
}

// AMD's processors before the third Zen generation have PEXT in microcode,
// slower than a multiplication.
bool HasFastPext() {
#if defined(__x86_64__)
  __builtin_cpu_init();
  if (__builtin_cpu_supports("bmi2") == 0) return false;
  return __builtin_cpu_is("znver1") == 0 && __builtin_cpu_is("znver2") == 0 &&
         __builtin_cpu_is("bdver4") == 0;
#else
  return false;
#endif
}

}  // namespace

const bool kCpuHasPopcnt = HasPopcnt();
const bool kCpuHasFastPext = HasFastPext();

}  // namespace assay
