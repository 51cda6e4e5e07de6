// A file of weights, as `assay terms --format weights` writes it.
#ifndef ASSAY_BENCH_WEIGHTS_FILE_H_
#define ASSAY_BENCH_WEIGHTS_FILE_H_

#include <fstream>
#include <iostream>
#include <iterator>
#include <string>

#include "assay/terms/weights.h"
#include "assay/terms/weights_text.h"

namespace assay::bench {

// False, with the reason on standard error, where the file cannot be read.
inline bool ReadWeights(const std::string& path, Weights& weights) {
  std::ifstream file(path);
  const std::string text((std::istreambuf_iterator<char>(file)),
                         std::istreambuf_iterator<char>());
  const absl::StatusOr<Weights> read = ParseWeights(text);
  if (!file || !read.ok()) {
    std::cerr << path << ": " << read.status().message() << '\n';
    return false;
  }
  weights = *read;
  return true;
}

}  // namespace assay::bench

#endif  // ASSAY_BENCH_WEIGHTS_FILE_H_
