// A phrase a term, made from the entry's own claims, so that it can say
// nothing that they do not.
#include "assay/explain/entry_text.h"

#include "assay/explain/words.h"
#include "assay/facts/kings.h"

namespace assay {
namespace {

// The claims of one entry.
class EntryClaims {
 public:
  EntryClaims(const Entry& entry, const Claim* claims)
      : begin_(claims + entry.first_claim), end_(begin_ + entry.claim_count) {}

  const Claim* Find(ClaimKind kind) const {
    for (const Claim* claim = begin_; claim != end_; ++claim) {
      if (claim->kind == kind) return claim;
    }
    return nullptr;
  }
  bool Has(ClaimKind kind) const { return Find(kind) != nullptr; }
  const Claim* begin() const { return begin_; }
  const Claim* end() const { return end_; }

 private:
  const Claim* begin_;
  const Claim* end_;
};

std::string Doubled(const Facts& facts, const Entry& entry,
                    const EntryClaims& claims) {
  const int count = PopCount(entry.squares);
  const bool isolated = (facts.Pawns(entry.side).isolated & entry.squares) != 0;
  std::string text = count == 2 ? "doubled" : count == 3 ? "tripled" : "heaped";
  if (isolated) text += ", isolated";
  text += " pawns on " + SquaresText(entry.squares);
  if (claims.Has(ClaimKind::kHalfOpenFile)) {
    text += " on a half-open file";
  }
  const Claim* lever = claims.Find(ClaimKind::kLeverMove);
  if (claims.Has(ClaimKind::kLever)) {
    text += " (an exchange is on)";
  } else if (lever != nullptr) {
    text += " (" + BreakText(*lever) + " offers an exchange)";
  }
  return text;
}

std::string Backward(const Entry& entry, const EntryClaims& claims) {
  const std::string square = SquaresText(entry.squares);
  if (claims.Has(ClaimKind::kHalfOpenFile)) {
    return "a backward pawn on " + square + " of a half-open file";
  }
  return "a pawn left behind on " + square;
}

std::string Passed(const Entry& entry, const EntryClaims& claims) {
  std::string text = claims.Has(ClaimKind::kProtectedPassed)
                         ? "a protected passed pawn on "
                         : "a passed pawn on ";
  text += SquaresText(entry.squares);
  const Claim* blockade = claims.Find(ClaimKind::kBlockade);
  if (blockade != nullptr) {
    text += ", blocked on " + ToString(blockade->squares[0]);
  }
  return text;
}

std::string Material(const EntryClaims& claims) {
  const Claim* claim = claims.Find(ClaimKind::kMaterial);
  return CountText(claim->count - claim->other_count, claim->piece) + " more";
}

std::string Scope(const Facts& facts, const Entry& entry,
                  const EntryClaims& claims) {
  const Square square = First(entry.squares);
  const int count = claims.Find(ClaimKind::kScope)->count;
  return std::string("the ") + Name(facts.position().At(square).kind()) +
         " on " + ToString(square) + " has " + NumberText(count) + " useful " +
         (count == 1 ? "square" : "squares");
}

std::string DiagonalToKing(const EntryClaims& claims) {
  const Claim* diagonal = claims.Find(ClaimKind::kDiagonalOpen);
  const SquareList& squares = diagonal->squares;
  return "the open diagonal from " + ToString(squares[0]) + " to " +
         ToString(squares[squares.size() - 1]);
}

std::string FileToKing(const Facts& facts, const Entry& entry,
                       const EntryClaims& claims) {
  const Claim* file = claims.Find(ClaimKind::kFileToKing);
  const bool open = claims.Has(ClaimKind::kOpenFile);
  std::string text = std::string(open ? "the open " : "the half-open ") +
                     FilesText(file->squares.ToSet());
  const Bitboard on_file = file->others.ToSet() & file->squares.ToSet();
  if (on_file != 0) {
    // The one nearest to the side's first rank.
    const Square first =
        entry.side == Side::kWhite ? First(on_file) : Last(on_file);
    text += std::string(" with the ") +
            Name(facts.position().At(first).kind()) + " on " + ToString(first);
  }
  return text;
}

// "knight on f6".
std::string PieceOn(const Facts& facts, Bitboard square) {
  return std::string(Name(facts.position().At(First(square)).kind())) + " on " +
         SquaresText(square);
}

const char* WingText(Bitboard pawns) {
  return FileOf(First(pawns)) < 4 ? "queenside" : "kingside";
}

std::string Outpost(const Facts& facts, const Entry& entry,
                    const EntryClaims& claims) {
  const std::string kind =
      Name(facts.position().At(First(entry.squares)).kind());
  return "a " + kind + " on the outpost " + SquaresText(entry.squares) +
         (claims.Has(ClaimKind::kContestable) ? "" : " that no piece contests");
}

std::string OutpostInReach(const Facts& facts, const EntryClaims& claims) {
  Bitboard goals = 0;
  // All routes of one entry start from the same square.
  const Square from = claims.Find(ClaimKind::kOutpostRoute)->squares[0];
  for (const Claim& claim : claims) {
    goals |= Bit(claim.squares[claim.squares.size() - 1]);
  }
  return "a " + PieceOn(facts, Bit(from)) + " within reach of the " +
         (HasMany(goals) ? "outposts " : "outpost ") + SquaresText(goals);
}

std::string KnightForBishop(const EntryClaims& claims) {
  const Claim* material = claims.Find(ClaimKind::kMaterial);
  // The first claim is of the knights: more of them, or more bishops.
  const bool knights = material->count > material->other_count;
  return knights ? "knights among locked pawns"
                 : "bishops with no locked pawns in the centre";
}

std::string Hanging(const Facts& facts, const Entry& entry,
                    const EntryClaims& claims) {
  const Claim* counts = claims.Find(ClaimKind::kAttackCount);
  return "a hanging " + PieceOn(facts, entry.squares) + " (" +
         NumberText(counts->count) +
         (counts->count == 1 ? " attacker, " : " attackers, ") +
         NumberText(counts->other_count) +
         (counts->other_count == 1 ? " defender)" : " defenders)");
}

std::string KingAttackersText(const Facts& facts, const Entry& entry,
                              const EntryClaims& claims) {
  const Bitboard attackers =
      entry.squares & ~facts.Own(entry.side, PieceKind::kKing);
  std::string text =
      NumberText(PopCount(attackers)) + " enemy pieces trained on it";
  Bitboard weak = 0;
  for (const Claim& claim : claims) {
    if (claim.kind == ClaimKind::kControl) weak |= claim.squares.ToSet();
  }
  if (weak != 0) {
    text += ", " + SquaresText(weak) + " guarded by the king alone";
  }
  return text;
}

}  // namespace

std::string EntryPhrase(const Facts& facts, const Entry& entry,
                        const Claim* ledger_claims) {
  const EntryClaims claims(entry, ledger_claims);
  switch (entry.term) {
    case TermId::kMaterial:
      return Material(claims);
    // The side may have none of the pieces: the others' are then worth less.
    case TermId::kKnightPawns:
      return claims.Find(ClaimKind::kMaterial)->count > 0
                 ? "knights gain more from the own pawns"
                 : "the enemy knights have few pawns to lean on";
    case TermId::kRookPawns:
      return claims.Find(ClaimKind::kMaterial)->count > 0
                 ? "rooks are less hemmed in by own pawns"
                 : "the enemy rooks are hemmed in by many pawns";
    case TermId::kSecondRook:
      return "a second rook, which adds less than the first";
    case TermId::kBishopPair:
      return "the bishop pair";
    case TermId::kDoubledPawns:
      return Doubled(facts, entry, claims);
    case TermId::kIsolatedPawn:
      return "an isolated pawn on " + SquaresText(entry.squares);
    case TermId::kBackwardPawn:
      return Backward(entry, claims);
    case TermId::kPassedPawn:
      return Passed(entry, claims);
    case TermId::kScope:
      return Scope(facts, entry, claims);
    case TermId::kKnightSquareTaken: {
      const Claim* taken = claims.Find(ClaimKind::kSquareTaken);
      return "the pawn on " + ToString(taken->squares[0]) +
             " takes the best square of the knight on " +
             ToString(taken->others[0]);
    }
    case TermId::kShelter: {
      const Claim* shelter = claims.Find(ClaimKind::kShelter);
      const Bitboard with_pawn = FillFiles(shelter->squares.ToSet());
      const Bitboard king = Bit(facts.position().King(entry.side));
      const Bitboard files = FillFiles(king | Neighbours(king));
      return "no sheltering pawn on the " + FilesText(files & ~with_pawn);
    }
    case TermId::kFlankPawnMoved: {
      const Claim* moved = claims.Find(ClaimKind::kFlankPawnMoved);
      return "the pawn gone from " + ToString(moved->squares[1]);
    }
    case TermId::kDiagonalToKing:
      return DiagonalToKing(claims);
    case TermId::kFileToKing:
      return FileToKing(facts, entry, claims);
    case TermId::kSpace: {
      const Claim* space = claims.Find(ClaimKind::kSpace);
      return std::to_string(space->count) + " safe squares behind the pawns, " +
             std::to_string(space->other_count) + " for the opponent";
    }
    case TermId::kTempo:
      return "the move";
    case TermId::kHangingPawns:
      return "hanging pawns on " + SquaresText(entry.squares);
    case TermId::kChainBase:
      return "a chain base on " + SquaresText(entry.squares) + " that " +
             BreakText(*claims.Find(ClaimKind::kLeverMove)) + " can attack";
    case TermId::kPawnIslands: {
      const Claim* islands = claims.Find(ClaimKind::kIslands);
      return NumberText(islands->count) + " pawn islands against " +
             NumberText(islands->other_count);
    }
    case TermId::kCandidate:
      return "a candidate passed pawn on " + SquaresText(entry.squares);
    case TermId::kWingMajority: {
      const Claim* majority = claims.Find(ClaimKind::kMajority);
      return "a " + std::string(WingText(entry.squares)) + " majority (" +
             NumberText(majority->count) + " to " +
             NumberText(majority->other_count) + ")";
    }
    case TermId::kHole:
      return "a hole on " + SquaresText(entry.squares);
    case TermId::kOutpost:
      return Outpost(facts, entry, claims);
    case TermId::kOutpostInReach:
      return OutpostInReach(facts, claims);
    case TermId::kBadBishop: {
      const Claim* bad = claims.Find(ClaimKind::kBadBishop);
      return "a bad bishop on " + ToString(bad->squares[0]) +
             " (fixed pawns on " + SquaresText(bad->others.ToSet()) + ")";
    }
    case TermId::kKnightForBishop:
      return KnightForBishop(claims);
    case TermId::kKnightOnRim:
      return "a knight on the rim on " + SquaresText(entry.squares);
    case TermId::kRookOnFile:
      return "a rook on the " +
             std::string(claims.Has(ClaimKind::kOpenFile) ? "open "
                                                          : "half-open ") +
             FilesText(entry.squares) + " (" + SquaresText(entry.squares) + ")";
    case TermId::kSeventhRank:
      return "a rook on the seventh rank (" + SquaresText(entry.squares) + ")";
    case TermId::kDoubledRooks:
      return "doubled rooks on the " + FilesText(entry.squares);
    case TermId::kRookBehindPasser: {
      const Claim* behind = claims.Find(ClaimKind::kRookBehind);
      return "a rook on " + ToString(behind->squares[0]) +
             " behind the passed pawn on " + ToString(behind->others[0]);
    }
    case TermId::kHanging:
      return Hanging(facts, entry, claims);
    case TermId::kLoosePiece:
      return "a loose " + PieceOn(facts, entry.squares);
    case TermId::kPinned: {
      const Claim* pin = claims.Find(ClaimKind::kPinned);
      return "a pinned " + PieceOn(facts, entry.squares) + " (by the " +
             PieceOn(facts, Bit(pin->others[0])) + ")";
    }
    case TermId::kTrapped:
      return "a trapped " + PieceOn(facts, entry.squares);
    case TermId::kKingAttackers:
      return KingAttackersText(facts, entry, claims);
    case TermId::kUncastled:
      return "the king not castled";
    case TermId::kKingAhead:
      return "the king ahead of its first rank";
    case TermId::kKingActivity: {
      const Claim* distance = claims.Find(ClaimKind::kKingDistance);
      return "the king on " + ToString(distance->squares[0]) +
             " nearer to the centre";
    }
    case TermId::kCentreControl:
      return "more control of the centre";
    case TermId::kUndeveloped: {
      const Claim* home = claims.Find(ClaimKind::kUndeveloped);
      return (home->count == 1 ? "a minor piece at home on "
                               : "minor pieces at home on ") +
             SquaresText(home->squares.ToSet());
    }
    case TermId::kEarlyQueen: {
      const Claim* queen = claims.Find(ClaimKind::kEarlyQueen);
      return "a queen out early on " + ToString(queen->squares[0]) + " (" +
             NumberText(queen->count) + " can chase it)";
    }
    case TermId::kExactResult:
      return "the exact result";
    case TermId::kLoneKing:
      return "a lone king to mate";
    case TermId::kLucena:
      return "Lucena's position";
    case TermId::kHeldQueen:
      return "a pawn that holds the queen";
    case TermId::kHeldRookEnding:
      return claims.Has(ClaimKind::kPhilidor) ? "Philidor's defence"
                                              : "Vancura's defence";
    case TermId::kWrongBishop:
      return "a bishop that does not control the corner";
    case TermId::kOppositeBishops:
      return "bishops of opposite colours";
    case TermId::kRookEnding:
      return "a rook ending, hard to win";
    case TermId::kTooLittleToWin:
      return "too little left to win with";
    case TermId::kBlockedPosition:
      return "everything is blocked";
    case TermId::kDeadPosition:
      return "nobody can mate with what is left";
  }
  return std::string(Info(entry.term).title);
}

}  // namespace assay
