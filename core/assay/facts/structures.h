// Pawn structures that the trade has a name for, found by rule.
//
// A rule names the pawns that make the structure and those that must be absent,
// and says nothing of the rest: pawns on a or h come and go without changing
// what it is. Most are rows of a table (structures.cc) in the owner's view. The
// same rules stand in words beside CLAIM_KIND_STRUCTURE in the contract.
#ifndef ASSAY_FACTS_STRUCTURES_H_
#define ASSAY_FACTS_STRUCTURES_H_

#include <array>
#include <cstddef>
#include <cstdint>

#include "assay/facts/claim.h"
#include "assay/facts/facts.h"

namespace assay {

// Most telling first; the numbers are those of the contract.
enum class PawnStructure : std::uint8_t {
  kNone = 0,
  kHedgehog = 1,
  kBind = 2,
  kDragon = 3,
  kBackwardBehindHole = 4,
  kSmallCentre = 5,
  kDoubledCPawnsClosed = 6,
  kClosedBenoni = 7,
  kKingsIndianChain = 8,
  kSpanishChain = 9,
  kFrenchChain = 10,
  kFrenchChainWithoutCPawns = 11,
  kStoneWall = 12,
  kBenoniMajority = 13,
  kMinorityAttack = 14,
  kIsolatedQueensPawn = 15,
  kHangingPawns = 16,
  kIsolatedCouple = 17,
  kCaroSlav = 18,
  kOpenDFile = 19,
  kExchangeRuyLopez = 20,
  kExchangeFrench = 21,
  kDoubledCPawns = 22,
  kTwoPawnCentre = 23,
  kThreeAgainstTwo = 24,
  kOppositeCastling = 25,
  kSymmetrical = 26,
  kBackwardPawn = 27,
};

inline constexpr int kPawnStructures = 28;

// "hedgehog", "isolated queen's pawn", ...: the same for either side, so
// without squares. "" for kNone.
const char* Name(PawnStructure structure);

// One structure in a position.
struct NamedStructure {
  PawnStructure structure = PawnStructure::kNone;
  bool shared = false;  // of both sides alike; then the owner is White
  Side owner = Side::kWhite;
  Bitboard own = 0;     // the owner's pawns that it is made of
  Bitboard others = 0;  // the other side's; kings for opposite castling
};

// The structures of a position, most telling first; of one kind, that of the
// side to move first, so that swapping the colours changes no order.
class StructureList {
 public:
  // More than any position has been seen to hold; what is beyond is left out.
  static constexpr std::size_t kCapacity = 16;

  void Add(const NamedStructure& found) {
    if (size_ < kCapacity) found_[size_++] = found;
  }
  std::size_t size() const { return size_; }
  bool empty() const { return size_ == 0; }
  const NamedStructure& operator[](std::size_t i) const { return found_[i]; }
  const NamedStructure* begin() const { return found_.data(); }
  const NamedStructure* end() const { return found_.data() + size_; }

 private:
  std::size_t size_ = 0;
  std::array<NamedStructure, kCapacity> found_;
};

StructureList FindStructures(const Facts& facts);

Claim StructureClaim(const NamedStructure& found);

}  // namespace assay

#endif  // ASSAY_FACTS_STRUCTURES_H_
