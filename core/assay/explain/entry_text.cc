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

Message Doubled(const Facts& facts, const Entry& entry,
                const EntryClaims& claims) {
  const int count = PopCount(entry.squares);
  const bool isolated = (facts.Pawns(entry.side).isolated & entry.squares) != 0;
  const Claim* lever = claims.Find(ClaimKind::kLeverMove);
  Message exchange;
  if (claims.Has(ClaimKind::kLever)) {
    exchange = Say("lever.on");
  } else if (lever != nullptr) {
    exchange = Say("lever.offers", BreakText(*lever));
  }
  return Say("pawns.doubled",
             Say(count == 2   ? "pawns.two"
                 : count == 3 ? "pawns.three"
                              : "pawns.four"),
             isolated, Squares{entry.squares},
             claims.Has(ClaimKind::kHalfOpenFile), exchange);
}

Message Backward(const Entry& entry, const EntryClaims& claims) {
  return Say(claims.Has(ClaimKind::kHalfOpenFile) ? "pawn.backward"
                                                  : "pawns.left_behind",
             Squares{entry.squares});
}

Message Passed(const Entry& entry, const EntryClaims& claims) {
  const Claim* blockade = claims.Find(ClaimKind::kBlockade);
  return PassedPawns(
      claims.Has(ClaimKind::kProtectedPassed), entry.squares,
      blockade == nullptr ? Squares{} : Squares{Bit(blockade->squares[0])});
}

Message Material(const EntryClaims& claims) {
  const Claim* claim = claims.Find(ClaimKind::kMaterial);
  return Say("more", Count(claim->count - claim->other_count, claim->piece));
}

Message Scope(const Facts& facts, const Entry& entry,
              const EntryClaims& claims) {
  const Square square = First(entry.squares);
  return Say("scope", facts.position().At(square).kind(), square,
             UsefulSquares(claims.Find(ClaimKind::kScope)->count));
}

Message DiagonalToKing(const EntryClaims& claims) {
  const Claim* diagonal = claims.Find(ClaimKind::kDiagonalOpen);
  const SquareList& squares = diagonal->squares;
  return Say("king.diagonal", squares[0], squares[squares.size() - 1]);
}

Message FileToKing(const Facts& facts, const Entry& entry,
                   const EntryClaims& claims) {
  const Claim* file = claims.Find(ClaimKind::kFileToKing);
  const Bitboard on_file = file->others.ToSet() & file->squares.ToSet();
  Message attacker;
  if (on_file != 0) {
    // The one nearest to the side's first rank.
    const Square first =
        entry.side == Side::kWhite ? First(on_file) : Last(on_file);
    attacker = Unit(facts.position().At(first).kind(), first);
  }
  return Say("king.file", claims.Has(ClaimKind::kOpenFile),
             Files{file->squares.ToSet()}, attacker);
}

// What stands on the square, by the id of a template.
Message PieceOn(std::string_view id, const Facts& facts, Bitboard square) {
  return Say(id, facts.position().At(First(square)).kind(), First(square));
}

bool OnQueenside(Bitboard pawns) { return FileOf(First(pawns)) < 4; }

Message Outpost(const Facts& facts, const Entry& entry,
                const EntryClaims& claims) {
  return PieceOn(
      claims.Has(ClaimKind::kContestable) ? "outpost" : "outpost.uncontested",
      facts, entry.squares);
}

Message OutpostInReach(const Facts& facts, const EntryClaims& claims) {
  Bitboard goals = 0;
  // All routes of one entry start from the same square.
  const Square from = claims.Find(ClaimKind::kOutpostRoute)->squares[0];
  for (const Claim& claim : claims) {
    goals |= Bit(claim.squares[claim.squares.size() - 1]);
  }
  return Say("outpost.in_reach", facts.position().At(from).kind(), from,
             Squares{goals});
}

Message KnightForBishop(const EntryClaims& claims) {
  const Claim* material = claims.Find(ClaimKind::kMaterial);
  // The first claim is of the knights: more of them, or more bishops.
  const bool knights = material->count > material->other_count;
  return Say(knights ? "knights.locked" : "bishops.unlocked");
}

Message Hanging(const Facts& facts, const Entry& entry,
                const EntryClaims& claims) {
  const Claim* counts = claims.Find(ClaimKind::kAttackCount);
  const Square square = First(entry.squares);
  return Say("hanging", facts.position().At(square).kind(), square,
             counts->count, counts->other_count);
}

Message KingAttackersText(const Facts& facts, const Entry& entry,
                          const EntryClaims& claims) {
  const Bitboard attackers =
      entry.squares & ~facts.Own(entry.side, PieceKind::kKing);
  Bitboard weak = 0;
  for (const Claim& claim : claims) {
    if (claim.kind == ClaimKind::kControl) weak |= claim.squares.ToSet();
  }
  return Say("king.attackers", PopCount(attackers), Squares{weak});
}

// "the queen on g4 and the knight on f5 close to it".
Message NearKing(const Facts& facts, const Entry& entry) {
  // In the same order whichever side it is: by kind, then from the king's side
  // of the board.
  std::vector<Message> pieces;
  const Side enemy = Other(entry.side);
  for (const PieceKind kind :
       {PieceKind::kQueen, PieceKind::kRook, PieceKind::kKnight}) {
    for (int rank = 0; rank < 8; ++rank) {
      const Bitboard here = entry.squares & facts.Own(enemy, kind) &
                            RelativeRankMask(entry.side, rank);
      for (const Square square : Each(here)) {
        pieces.push_back(Unit(kind, square));
      }
    }
  }
  return Say("king.near", And(std::move(pieces)));
}

// "a safe check on h7".
Message CheckSquares(const EntryClaims& claims) {
  Bitboard squares = 0;
  for (const Claim& claim : claims) squares |= claim.squares.ToSet();
  return Say("king.checks", Squares{squares});
}

// More squares than these are counted, not named.
constexpr int kMostSquaresNamed = 3;

// "f6 and h6 attacked twice", "five squares about it attacked twice".
Message KingZone(const EntryClaims& claims) {
  const Claim& zone = *claims.Find(ClaimKind::kKingZone);
  if (zone.count > kMostSquaresNamed) return Say("king.zone_twice", zone.count);
  if (zone.count > 0) {
    return Say("king.attacked_twice", Squares{zone.squares.ToSet()});
  }
  if (zone.other_count > kMostSquaresNamed) {
    return Say("king.zone_thin", zone.other_count);
  }
  return Say("king.attacked_thin", Squares{zone.others.ToSet()});
}

// "a pawn on d5 under attack with a single guard".
Message ThinlyGuarded(const Facts& facts, const Entry& entry,
                      const EntryClaims& claims) {
  const Square square = First(entry.squares);
  const bool guarded = claims.Find(ClaimKind::kAttackCount)->other_count > 0;
  return Say("thinly_guarded", facts.position().At(square).kind(), square,
             guarded);
}

// By what kinds, not by which: the entry's claim counts attackers.
Message UnderFire(const Facts& facts, const Entry& entry) {
  const Side enemy = Other(entry.side);
  const Square square = First(entry.squares);
  std::vector<Message> kinds;
  for (const PieceKind kind : {PieceKind::kKnight, PieceKind::kBishop}) {
    if ((facts.AttackedBy(enemy, kind) & entry.squares) == 0) continue;
    kinds.push_back(Count(1, kind));
  }
  return Say("under_fire", facts.position().At(square).kind(), square,
             And(std::move(kinds)));
}

}  // namespace

Message PassedPawns(bool guarded, Bitboard pawns, Squares blockade) {
  return Say("pawns.passed", Squares{pawns}, guarded, blockade);
}

Message UsefulSquares(int count) {
  return count == 0 ? Say("squares.none") : Say("squares.useful", count);
}

Message EntryPhrase(const Facts& facts, const Entry& entry,
                    const Claim* ledger_claims) {
  const EntryClaims claims(entry, ledger_claims);
  const Squares squares{entry.squares};
  switch (entry.term) {
    case TermId::kMaterial:
      return Material(claims);
    // The side may have none of the pieces: the others' are then worth less.
    case TermId::kKnightPawns:
      return Say(claims.Find(ClaimKind::kMaterial)->count > 0
                     ? "knights.gain"
                     : "knights.enemy");
    case TermId::kRookPawns:
      return Say(claims.Find(ClaimKind::kMaterial)->count > 0 ? "rooks.gain"
                                                              : "rooks.enemy");
    case TermId::kSecondRook:
      return Say("rook.second");
    case TermId::kBishopPair:
      return Say("bishop_pair");
    case TermId::kDoubledPawns:
      return Doubled(facts, entry, claims);
    case TermId::kIsolatedPawn:
      return Say("pawns.isolated", squares);
    case TermId::kBackwardPawn:
      return Backward(entry, claims);
    case TermId::kPassedPawn:
      return Passed(entry, claims);
    case TermId::kScope:
      return Scope(facts, entry, claims);
    case TermId::kKnightSquareTaken: {
      const Claim* taken = claims.Find(ClaimKind::kSquareTaken);
      return Say("square_taken", taken->squares[0], taken->others[0]);
    }
    case TermId::kShelter: {
      const Claim* shelter = claims.Find(ClaimKind::kShelter);
      const Bitboard with_pawn = FillFiles(shelter->squares.ToSet());
      const Bitboard king = Bit(facts.position().King(entry.side));
      const Bitboard files = FillFiles(king | Neighbours(king));
      return Say("king.shelter", Files{files & ~with_pawn});
    }
    case TermId::kFlankPawnMoved: {
      const Claim* moved = claims.Find(ClaimKind::kFlankPawnMoved);
      return Say("king.pawn_gone", moved->squares[1]);
    }
    case TermId::kDiagonalToKing:
      return DiagonalToKing(claims);
    case TermId::kFileToKing:
      return FileToKing(facts, entry, claims);
    case TermId::kSpace: {
      const Claim* space = claims.Find(ClaimKind::kSpace);
      return Say("space", space->count, space->other_count);
    }
    case TermId::kTempo:
      return Say("move");
    case TermId::kHangingPawns:
      return Say("pawns.hanging", squares);
    case TermId::kChainBase:
      return Say("chain_base", squares,
                 BreakText(*claims.Find(ClaimKind::kLeverMove)));
    case TermId::kPawnIslands: {
      const Claim* islands = claims.Find(ClaimKind::kIslands);
      return Say("islands", islands->count, islands->other_count);
    }
    case TermId::kCandidate:
      return Say("candidate", squares);
    case TermId::kWingMajority: {
      const Claim* majority = claims.Find(ClaimKind::kMajority);
      return Say("majority", OnQueenside(entry.squares), majority->count,
                 majority->other_count);
    }
    case TermId::kKingWing: {
      const Claim* majority = claims.Find(ClaimKind::kMajority);
      return Say("king.wing", majority->other_count, majority->count);
    }
    case TermId::kPawnLink:
      return Say("pawns.link", squares);
    case TermId::kAdvancedPawns:
      return Say("pawns.advanced");
    case TermId::kCentreMajority: {
      const Claim* majority = claims.Find(ClaimKind::kMajority);
      return Say("centre.majority", majority->count, majority->other_count);
    }
    case TermId::kHole:
      return Say("holes", squares);
    case TermId::kOutpost:
      return Outpost(facts, entry, claims);
    case TermId::kOutpostInReach:
      return OutpostInReach(facts, claims);
    case TermId::kBadBishop: {
      const Claim* bad = claims.Find(ClaimKind::kBadBishop);
      return Say("bad_bishop", bad->squares[0], Squares{bad->others.ToSet()});
    }
    case TermId::kScreenedMinor: {
      const Claim* screened = claims.Find(ClaimKind::kScreened);
      const Square square = screened->squares[0];
      return Say("screened", facts.position().At(square).kind(), square,
                 screened->others[0]);
    }
    case TermId::kKnightForBishop:
      return KnightForBishop(claims);
    case TermId::kKnightOnRim:
      return Say("knight_on_rim", squares);
    case TermId::kRookOnFile:
      return Say("rook.on_file", claims.Has(ClaimKind::kOpenFile),
                 Files{entry.squares}, squares);
    case TermId::kSeventhRank:
      return Say("rook.seventh", squares);
    case TermId::kDoubledRooks:
      return Say("rooks.doubled", Files{entry.squares});
    case TermId::kRookBehindPasser: {
      const Claim* behind = claims.Find(ClaimKind::kRookBehind);
      return Say("rook.behind", behind->squares[0], behind->others[0]);
    }
    case TermId::kHanging:
      return Hanging(facts, entry, claims);
    case TermId::kLoosePiece:
      return PieceOn("loose", facts, entry.squares);
    case TermId::kPinned: {
      const Square by = claims.Find(ClaimKind::kPinned)->others[0];
      return Say("pinned", facts.position().At(First(entry.squares)).kind(),
                 squares, Unit(facts.position().At(by).kind(), by));
    }
    case TermId::kTrapped:
      return PieceOn("trapped", facts, entry.squares);
    case TermId::kUnderFire:
      return UnderFire(facts, entry);
    case TermId::kThinlyGuarded:
      return ThinlyGuarded(facts, entry, claims);
    case TermId::kNearKing:
      return NearKing(facts, entry);
    case TermId::kCheckSquares:
      return CheckSquares(claims);
    case TermId::kKingZone:
      return KingZone(claims);
    case TermId::kKingShut:
      return Say("king.shut");
    case TermId::kKingAttackers:
      return KingAttackersText(facts, entry, claims);
    case TermId::kUncastled:
      return Say("king.uncastled");
    case TermId::kKingAhead:
      return Say("king.ahead");
    case TermId::kKingActivity: {
      const Claim* distance = claims.Find(ClaimKind::kKingDistance);
      return Say("king.nearer", distance->squares[0]);
    }
    case TermId::kKingNearPawns:
      return Say("king.nearer_pawns", squares);
    case TermId::kKingRaid: {
      const Bitboard king = facts.Own(entry.side, PieceKind::kKing);
      return Say("king.raids", Squares{entry.squares & ~king});
    }
    case TermId::kFarControl: {
      const Claim* far = claims.Find(ClaimKind::kFarControl);
      return Say("far_control", far->count, far->other_count);
    }
    case TermId::kCentreControl:
      return Say("centre.control");
    case TermId::kUndeveloped: {
      const Claim* home = claims.Find(ClaimKind::kUndeveloped);
      return Say("undeveloped", home->count, Squares{home->squares.ToSet()});
    }
    case TermId::kEarlyQueen: {
      const Claim* queen = claims.Find(ClaimKind::kEarlyQueen);
      return Say("early_queen", queen->squares[0], queen->count);
    }
    case TermId::kExactResult:
      return Say("ending.exact");
    case TermId::kLoneKing:
      return Say("ending.lone_king");
    case TermId::kLucena:
      return Say("ending.lucena");
    case TermId::kHeldQueen:
      return Say("ending.held_queen");
    case TermId::kHeldRookEnding:
      return Say(claims.Has(ClaimKind::kPhilidor) ? "ending.philidor"
                                                  : "ending.vancura");
    case TermId::kWrongBishop:
      return Say("ending.wrong_bishop");
    case TermId::kOppositeBishops:
      return Say("ending.opposite_bishops");
    case TermId::kOneWingEnding:
      return Say("ending.one_wing");
    case TermId::kTooLittleToWin:
      return Say("ending.too_little");
    case TermId::kBlockedPosition:
      return Say("ending.blocked");
    case TermId::kDeadPosition:
      return Say("ending.dead");
  }
  return {};
}

}  // namespace assay
