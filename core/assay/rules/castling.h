// The right to castle, for each side and wing.
#ifndef ASSAY_RULES_CASTLING_H_
#define ASSAY_RULES_CASTLING_H_

#include <cstdint>

#include "assay/base/side.h"
#include "assay/base/square.h"

namespace assay {

enum class Wing : std::uint8_t { kKingside = 0, kQueenside = 1 };

inline constexpr Wing kWings[2] = {Wing::kKingside, Wing::kQueenside};

class CastlingRights {
 public:
  constexpr bool Has(Side side, Wing wing) const {
    return (bits_ & Mask(side, wing)) != 0;
  }
  constexpr bool HasAny(Side side) const {
    return Has(side, Wing::kKingside) || Has(side, Wing::kQueenside);
  }
  constexpr bool empty() const { return bits_ == 0; }
  constexpr void Add(Side side, Wing wing) {
    bits_ = static_cast<std::uint8_t>(bits_ | Mask(side, wing));
  }
  constexpr void Keep(std::uint8_t bits) {
    bits_ = static_cast<std::uint8_t>(bits_ & bits);
  }
  // White kingside 1, queenside 2; Black kingside 4, queenside 8.
  constexpr std::uint8_t bits() const { return bits_; }

  static constexpr std::uint8_t Mask(Side side, Wing wing) {
    return static_cast<std::uint8_t>(
        1U << (2U * static_cast<unsigned>(Index(side)) +
               static_cast<unsigned>(wing)));
  }

 private:
  std::uint8_t bits_ = 0;
};

// Where the rook of a wing stands before castling.
constexpr Square CastlingRook(Side side, Wing wing) {
  return Relative(side, wing == Wing::kKingside ? kH1 : kA1);
}
// Where king and rook stand after castling.
constexpr Square CastledKing(Side side, Wing wing) {
  return Relative(side, wing == Wing::kKingside ? kG1 : kC1);
}
constexpr Square CastledRook(Side side, Wing wing) {
  return Relative(side, wing == Wing::kKingside ? kF1 : kD1);
}

}  // namespace assay

#endif  // ASSAY_RULES_CASTLING_H_
