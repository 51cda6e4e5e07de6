// The kinds of claims: what can be said of a position and recomputed by anyone.
//
// Definitions stand beside the kinds of the public contract,
// proto/assay/v1/claim.proto, whose numbers these are.
#ifndef ASSAY_FACTS_CLAIM_KIND_H_
#define ASSAY_FACTS_CLAIM_KIND_H_

#include <cstdint>

namespace assay {

enum class ClaimKind : std::uint8_t {
  kUnspecified = 0,
  kDoubled = 1,
  kIsolated = 2,
  kBackward = 3,
  kHangingPair = 4,
  kPassed = 5,
  kProtectedPassed = 6,
  kConnectedPassed = 7,
  kOutsidePassed = 8,
  kCandidate = 9,
  kLever = 10,
  kLeverMove = 11,
  kRam = 12,
  kChainBase = 13,
  kIslands = 14,
  kMajority = 15,
  kHole = 16,
  kBlockade = 17,
  kMaterial = 18,
  kOpenFile = 19,
  kHalfOpenFile = 20,
  kRookOnFile = 21,
  kSeventhRank = 22,
  kDoubledRooks = 23,
  kCentreClosed = 24,
  kCentreOpen = 25,
  kCentreTension = 26,
  kCentreFixed = 27,
  kCentreMobile = 28,
  kCentreUnresolved = 29,
  kSpace = 30,
  kControl = 31,
  kBishopPair = 32,
  kOppositeBishops = 33,
  kBadBishop = 34,
  kKnightRim = 35,
  kOutpost = 36,
  kOutpostRoute = 37,
  kContestable = 38,
  kLoose = 39,
  kHanging = 40,
  kScope = 41,
  kSquareTaken = 42,
  kPinned = 43,
  kAttackCount = 44,
  kSiegeCount = 45,
  kUndeveloped = 46,
  kTrapped = 47,
  kEarlyQueen = 48,
  kShelter = 49,
  kFlankPawnMoved = 50,
  kDiagonalOpen = 51,
  kFileToKing = 52,
  kKingAttackers = 53,
  kInCheck = 54,
  kCastled = 55,
  kUncastled = 56,
  kInsufficient = 57,
  kWrongBishop = 58,
  kSquareRule = 59,
  kOpposition = 60,
  kExact = 61,
  kLine = 62,
  kBestReply = 63,
  kToMove = 64,
  kKingDistance = 65,
  kRookBehind = 66,
  kStructure = 67,
  kMateIn = 68,
  kFork = 69,
  kSkewer = 70,
  kDiscovered = 71,
  kPinWins = 72,
  kOverloaded = 73,
  kBackRank = 74,
  kNoLegalMove = 75,
  kKeySquares = 76,
  kLucena = 77,
  kPhilidor = 78,
  kSoleGuard = 79,
  kVancura = 80,
  kQueenHeld = 81,
  kBishopHeld = 82,
};

inline constexpr int kClaimKinds = 83;

// "DOUBLED", "HALF_OPEN_FILE", ...: the contract's name without its prefix.
const char* Name(ClaimKind kind);

}  // namespace assay

#endif  // ASSAY_FACTS_CLAIM_KIND_H_
