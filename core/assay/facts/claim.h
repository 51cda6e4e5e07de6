// A claim: one statement about a position that anyone can recompute.
#ifndef ASSAY_FACTS_CLAIM_H_
#define ASSAY_FACTS_CLAIM_H_

#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "assay/base/bitboard.h"
#include "assay/base/piece.h"
#include "assay/facts/claim_kind.h"
#include "assay/rules/move.h"

namespace assay {

// Up to 25 squares in a stated order, without allocation: no claim needs more,
// since a king's zone has at most 25 squares and a side at most 16 pieces.
class SquareList {
 public:
  static constexpr std::size_t kCapacity = 25;

  SquareList() = default;
  // The squares of a set, lowest-numbered first.
  explicit SquareList(Bitboard set) {
    for (const Square square : Each(set)) Add(square);
  }
  SquareList(std::initializer_list<Square> squares) {
    for (const Square square : squares) Add(square);
  }

  // Beyond the capacity, squares are left out.
  void Add(Square square) {
    if (size_ < kCapacity) squares_[size_++] = square;
  }
  std::size_t size() const { return size_; }
  bool empty() const { return size_ == 0; }
  Square operator[](std::size_t i) const { return squares_[i]; }
  const Square* begin() const { return squares_.data(); }
  const Square* end() const { return squares_.data() + size_; }
  Bitboard ToSet() const {
    Bitboard set = 0;
    for (const Square square : *this) set |= Bit(square);
    return set;
  }

  friend bool operator==(const SquareList& a, const SquareList& b);

 private:
  std::uint8_t size_ = 0;
  std::array<Square, kCapacity> squares_;
};

// The fields mean what the kind says. `line`, where not empty, is played
// first, the null move being a pass; the statement holds after it.
struct Claim {
  ClaimKind kind = ClaimKind::kUnspecified;
  bool has_side = false;  // false: not a statement about one side
  Side side = Side::kWhite;
  PieceKind piece = PieceKind::kNone;
  SquareList squares;
  SquareList others;
  int count = 0;
  int other_count = 0;
  int tempi = 0;
  std::vector<Move> line;

  friend bool operator==(const Claim& a, const Claim& b);
};

// "DOUBLED White c3 c4 (2)": for tests and messages, not for readers.
std::string ToString(const Claim& claim);

}  // namespace assay

#endif  // ASSAY_FACTS_CLAIM_H_
