// The catalogue of terms: each named thing that the evaluator values.
#ifndef ASSAY_TERMS_TERM_H_
#define ASSAY_TERMS_TERM_H_

#include <cstdint>
#include <string_view>
#include <vector>

#include "assay/terms/weights.h"

namespace assay {

// A family of terms.
enum class Theme : std::uint8_t {
  kMaterial,
  kPawns,
  kPieces,
  kKing,
  kSpaceAndCentre,
  kTime,
  kEndings,
  kPlans,
};

// "material", "pawns", ..., "space and centre", ...
std::string_view Name(Theme theme);

enum class TermId : std::uint8_t {
  // material
  kMaterial,
  kKnightPawns,
  kRookPawns,
  kSecondRook,
  kBishopPair,
  // pawns
  kDoubledPawns,
  kIsolatedPawn,
  kBackwardPawn,
  kHangingPawns,
  kChainBase,
  kPawnIslands,
  kPawnLink,
  kAdvancedPawns,
  kPassedPawn,
  kCandidate,
  kWingMajority,
  kKingWing,
  kCentreMajority,
  kHole,
  // pieces
  kScope,
  kOutpost,
  kOutpostInReach,
  kBadBishop,
  kScreenedMinor,
  kKnightForBishop,
  kKnightOnRim,
  kKnightSquareTaken,
  kRookOnFile,
  kSeventhRank,
  kDoubledRooks,
  kRookBehindPasser,
  kHanging,
  kLoosePiece,
  kPinned,
  kTrapped,
  kUnderFire,
  kThinlyGuarded,
  // king
  kShelter,
  kFlankPawnMoved,
  kDiagonalToKing,
  kFileToKing,
  kKingAttackers,
  kUncastled,
  kKingAhead,
  kNearKing,
  kCheckSquares,
  kKingZone,
  kKingShut,
  kKingActivity,
  kKingNearPawns,
  kKingRaid,
  // space and centre
  kSpace,
  kCentreControl,
  kFarControl,
  // time
  kUndeveloped,
  kEarlyQueen,
  kTempo,
  // endings
  kLoneKing,
  kExactResult,
  kLucena,
  kWrongBishop,
  kHeldQueen,
  kHeldRookEnding,
  kOppositeBishops,
  kOneWingEnding,
  kTooLittleToWin,
  kBlockedPosition,
  kDeadPosition,
};
inline constexpr int kTerms = static_cast<int>(TermId::kDeadPosition) + 1;

constexpr int Index(TermId id) { return static_cast<int>(id); }

// Who stands near, behind or against whom: most moves change it, so that a plan
// of several moves can count neither on having it nor on being rid of it.
constexpr bool IsMomentary(TermId id) {
  switch (id) {
    case TermId::kScreenedMinor:
    case TermId::kUnderFire:
    case TermId::kThinlyGuarded:
    case TermId::kNearKing:
    case TermId::kCheckSquares:
    case TermId::kKingZone:
    case TermId::kKingShut:
    case TermId::kKingRaid:
      return true;
    default:
      return false;
  }
}

// What the catalogue says of a term. All texts are complete English phrases.
struct TermInfo {
  TermId id;
  std::string_view name;  // stable, lower case: "doubled_pawns"
  Theme theme;
  std::string_view title;       // for headings: "Doubled pawns"
  std::string_view definition;  // when an entry arises, and for whom
  std::string_view reason;  // why it is worth something, and what changes it
  std::string_view source;  // of the weight's size
  // Its main weight, from the view of the side that has the feature; null for
  // terms whose value follows from other entries.
  Tapered Weights::*weight;
  // Assessments of the PGN standard of 1994 that say the same, White's and
  // Black's, weakest first; empty where it has none.
  std::vector<int> nags;
};

const TermInfo& Info(TermId id);

// Goes up when a term is added, removed or defined anew.
inline constexpr unsigned kCatalogueVersion = 7;

}  // namespace assay

#endif  // ASSAY_TERMS_TERM_H_
