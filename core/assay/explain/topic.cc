#include "assay/explain/topic.h"

namespace assay {

Topic TopicOf(TermId term) {
  switch (term) {
    case TermId::kMaterial:
    case TermId::kSecondRook:
      return Topic::kMaterial;
    case TermId::kKnightPawns:
    case TermId::kRookPawns:
      return Topic::kPawnNumbers;
    case TermId::kBishopPair:
      return Topic::kBishopPair;
    case TermId::kDoubledPawns:
    case TermId::kIsolatedPawn:
    case TermId::kBackwardPawn:
    case TermId::kHangingPawns:
    case TermId::kChainBase:
    case TermId::kPawnIslands:
    case TermId::kPawnLink:
      return Topic::kWeakPawns;
    case TermId::kHole:
      return Topic::kHoles;
    case TermId::kPassedPawn:
    case TermId::kCandidate:
    case TermId::kWingMajority:
    case TermId::kRookBehindPasser:
      return Topic::kPassedPawns;
    case TermId::kScope:
    case TermId::kKnightSquareTaken:
      return Topic::kActivity;
    case TermId::kOutpost:
    case TermId::kOutpostInReach:
    case TermId::kBadBishop:
    case TermId::kKnightForBishop:
    case TermId::kKnightOnRim:
      return Topic::kMinorPieces;
    case TermId::kScreenedMinor:
      return Topic::kCover;
    case TermId::kRookOnFile:
    case TermId::kSeventhRank:
    case TermId::kDoubledRooks:
      return Topic::kRooks;
    case TermId::kHanging:
    case TermId::kLoosePiece:
    case TermId::kPinned:
    case TermId::kTrapped:
    case TermId::kUnderFire:
    case TermId::kThinlyGuarded:
      return Topic::kDangers;
    case TermId::kShelter:
    case TermId::kFlankPawnMoved:
    case TermId::kDiagonalToKing:
    case TermId::kFileToKing:
    case TermId::kKingAttackers:
    case TermId::kKingWing:
    case TermId::kUncastled:
    case TermId::kKingAhead:
    case TermId::kNearKing:
    case TermId::kCheckSquares:
    case TermId::kKingZone:
    case TermId::kKingShut:
      return Topic::kKingSafety;
    case TermId::kKingActivity:
    case TermId::kKingNearPawns:
    case TermId::kKingRaid:
      return Topic::kKingActivity;
    case TermId::kSpace:
    case TermId::kAdvancedPawns:
    case TermId::kFarControl:
      return Topic::kSpace;
    case TermId::kCentreControl:
    case TermId::kCentreMajority:
      return Topic::kCentre;
    case TermId::kUndeveloped:
    case TermId::kEarlyQueen:
      return Topic::kDevelopment;
    case TermId::kTempo:
      return Topic::kMove;
    case TermId::kLoneKing:
    case TermId::kExactResult:
    case TermId::kLucena:
    case TermId::kWrongBishop:
    case TermId::kHeldQueen:
    case TermId::kHeldRookEnding:
    case TermId::kOppositeBishops:
    case TermId::kOneWingEnding:
    case TermId::kTooLittleToWin:
    case TermId::kBlockedPosition:
    case TermId::kDeadPosition:
      break;
  }
  return Topic::kEnding;
}

}  // namespace assay
