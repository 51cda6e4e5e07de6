// The 64-bit keys whose exclusive-or is a position's hash.
//
// The keys are the output of SplitMix64 (Steele, Lea, Flood, "Fast splittable
// pseudorandom number generators", OOPSLA 2014) from a fixed seed, computed by
// the compiler, so that hashes are the same on every machine.
#ifndef ASSAY_RULES_HASH_H_
#define ASSAY_RULES_HASH_H_

#include <cstdint>

#include "assay/base/piece.h"
#include "assay/base/square.h"

namespace assay {

struct HashKeys {
  std::uint64_t piece[2][kPieceKinds][kSquares];
  std::uint64_t castling[16];        // by CastlingRights::bits()
  std::uint64_t en_passant_file[8];  // only where a capture is legal
  std::uint64_t black_to_move;
};

namespace hash_internal {

constexpr std::uint64_t Next(std::uint64_t& state) {
  state += 0x9E3779B97F4A7C15ULL;
  std::uint64_t z = state;
  z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ULL;
  z = (z ^ (z >> 27)) * 0x94D049BB133111EBULL;
  return z ^ (z >> 31);
}

constexpr HashKeys MakeKeys() {
  HashKeys keys{};
  std::uint64_t state = 0xA55A1DEA;
  for (auto& side : keys.piece) {
    for (auto& kind : side) {
      for (auto& key : kind) key = Next(state);
    }
  }
  for (auto& key : keys.castling) key = Next(state);
  for (auto& key : keys.en_passant_file) key = Next(state);
  keys.black_to_move = Next(state);
  return keys;
}

}  // namespace hash_internal

inline constexpr HashKeys kHashKeys = hash_internal::MakeKeys();

}  // namespace assay

#endif  // ASSAY_RULES_HASH_H_
