// Positions with the result of their game, one at a time, from either kind of
// file.
//
// Lines: FEN<TAB>points[<TAB>game], the points being White's (0, 0.5 or 1).
// Lines of one game stand together; without a game name each line is its own.
//
// PGN: of each finished game, from the twelfth move on every fourth ply of the
// main line that is quiet: nobody is in check, the last move neither took nor
// promoted, and nothing of either side hangs.
#ifndef ASSAY_BENCH_WORTH_SAMPLES_H_
#define ASSAY_BENCH_WORTH_SAMPLES_H_

#include <cstdint>
#include <functional>
#include <iosfwd>
#include <string>

#include "assay/rules/position.h"

namespace assay::bench {

struct Sample {
  Position position;
  double points;     // White's
  std::string game;  // equal for samples of one game
};

using SampleVisitor = std::function<void(const Sample&)>;

struct ReadCount {
  std::uint64_t samples = 0;
  std::uint64_t faulty = 0;  // lines or games that could not be read
};

ReadCount ReadLines(std::istream& in, const SampleVisitor& visit);
ReadCount ReadGames(const std::string& path, const SampleVisitor& visit);

}  // namespace assay::bench

#endif  // ASSAY_BENCH_WORTH_SAMPLES_H_
