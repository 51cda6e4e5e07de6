// The two sides of a game.
#ifndef ASSAY_BASE_SIDE_H_
#define ASSAY_BASE_SIDE_H_

#include <cstdint>

namespace assay {

enum class Side : std::uint8_t { kWhite = 0, kBlack = 1 };

inline constexpr Side kSides[2] = {Side::kWhite, Side::kBlack};

constexpr Side Other(Side side) {
  return side == Side::kWhite ? Side::kBlack : Side::kWhite;
}

// 0 for White, 1 for Black: for arrays with one element a side.
constexpr int Index(Side side) { return static_cast<int>(side); }

// +1 for White, -1 for Black: turns a side's own gain into White's view.
constexpr int Sign(Side side) { return side == Side::kWhite ? 1 : -1; }

// "White" or "Black".
constexpr const char* Name(Side side) {
  return side == Side::kWhite ? "White" : "Black";
}

}  // namespace assay

#endif  // ASSAY_BASE_SIDE_H_
