// What the ending terms say, with the method where the textbooks name one.
// Every statement rests on a claim of the entry: a placement whose result holds
// whenever the claim does, or the table's result.
#include "assay/explain/group.h"
#include "assay/facts/endings.h"

namespace assay {
namespace {

Square PawnOf(const Group& group, Side side) {
  return First(group.facts.Pawns(side).pawns);
}

Square RookOf(const Group& group, Side side) {
  return First(group.facts.Own(side, PieceKind::kRook));
}

Square KingOf(const Group& group, Side side) {
  return group.facts.position().King(side);
}

// King and pawn against king: the result, and by which rule it holds.
Message ExactClause(const Group& group, const ExplainedEntry& entry) {
  const Side side = entry.entry.side;
  const bool opposition = group.Find(entry, ClaimKind::kOpposition) != nullptr;
  if (entry.entry.value_cp * Sign(side) > 0) {
    Message why;
    if (group.Find(entry, ClaimKind::kSquareRule) != nullptr) {
      why =
          Say("ending.outside_square", Other(side), KingOf(group, Other(side)));
    } else if (group.Find(entry, ClaimKind::kKeySquares) != nullptr) {
      why = Say("ending.key_square", side, KingOf(group, side));
    } else if (opposition) {
      why = Say("ending.opposition", side, KingOf(group, side));
    }
    return Say("ending.pawn_wins", side, why);
  }
  const Side owner =
      group.facts.Pawns(Side::kWhite).pawns != 0 ? Side::kWhite : Side::kBlack;
  Message why;
  if (group.Find(entry, ClaimKind::kKingDistance) != nullptr) {
    why = Say("ending.holds_corner");
  } else if (opposition) {
    why = Say("ending.has_opposition");
  }
  return Say("ending.pawn_drawn", Other(owner), why);
}

Message HeldRookClause(const Group& group, const ExplainedEntry& entry) {
  const Side attacker = entry.entry.side;
  const Side side = Other(attacker);
  const Square rook = RookOf(group, side);
  if (group.Find(entry, ClaimKind::kPhilidor) == nullptr) {
    return Say("ending.vancura_method", side, rook);
  }
  if (RelativeRank(attacker, PawnOf(group, attacker)) == 5) {
    return Say("ending.philidor_behind", side, rook, attacker);
  }
  return Say("ending.philidor_method", side, rook);
}

Message HeldQueenClause(const Group& group, const ExplainedEntry& entry) {
  const Side side = entry.entry.side;
  if (group.Find(entry, ClaimKind::kQueenHeld) == nullptr) {
    return Say("ending.queen_maybe");
  }
  return Say("ending.queen_held", side, PawnOf(group, Other(side)),
             KingOf(group, side));
}

Message OppositeBishopsClause(const Group& group, const ExplainedEntry& entry) {
  const Side defender = Other(entry.entry.side);
  if (group.Find(entry, ClaimKind::kBishopHeld) == nullptr) {
    return Say("ending.bishops_drawish");
  }
  return Say("ending.bishops_held", defender, KingOf(group, defender));
}

Message LoneKingClause(const Group& group, Side side) {
  const Bitboard corners = MatingCorners(group.facts, side);
  if (PopCount(corners) != 4) {
    return Say("ending.drive_corners", First(corners), Last(corners));
  }
  const Bitboard majors = group.facts.Own(side, PieceKind::kQueen) |
                          group.facts.Own(side, PieceKind::kRook);
  // Two queens or rooks need no help.
  return Say("ending.drive", majors == 0, !HasMany(majors), side);
}

}  // namespace

Message EndingPhrase(const Group& group) {
  const std::vector<const ExplainedEntry*> good = group.Good(group.favours());
  if (good.empty()) return Say("ending.drawing_chances");
  switch (good.front()->entry.term) {
    case TermId::kLoneKing:
      return Say("ending.lone_king");
    case TermId::kLucena:
      return Say("ending.lucena_won");
    default:
      return Say("ending.won");
  }
}

Message EndingClause(const Group& group) {
  const ExplainedEntry& explained = *group.entries.front();
  const Side side = explained.entry.side;
  switch (explained.entry.term) {
    case TermId::kLoneKing:
      return LoneKingClause(group, side);
    case TermId::kExactResult:
      return ExactClause(group, explained);
    case TermId::kLucena:
      return Say("ending.lucena_method", side, KingOf(group, side),
                 RookOf(group, side));
    case TermId::kWrongBishop:
      return Say("ending.wrong_bishop_draw", side);
    case TermId::kHeldQueen:
      return HeldQueenClause(group, explained);
    case TermId::kHeldRookEnding:
      return HeldRookClause(group, explained);
    case TermId::kOppositeBishops:
      return OppositeBishopsClause(group, explained);
    case TermId::kOneWingEnding:
      return Say("ending.one_wing_drawn");
    case TermId::kBlockedPosition:
      return Say("ending.all_blocked");
    case TermId::kTooLittleToWin:
      return Say(group.facts.Pawns(side).pawns != 0 ? "ending.rook_pawns"
                                                    : "ending.no_pawns",
                 side);
    default:
      return Say("ending.no_mate");
  }
}

}  // namespace assay
