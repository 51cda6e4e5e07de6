// What the ending terms say, with the method where the textbooks name one.
// Every statement rests on a claim of the entry: a placement whose result holds
// whenever the claim does, or the table's result.
#include "assay/explain/group.h"
#include "assay/explain/words.h"
#include "assay/facts/endings.h"

namespace assay {
namespace {

std::string SquareOfPawn(const Group& group, Side side) {
  return ToString(First(group.facts.Pawns(side).pawns));
}

std::string SquareOfRook(const Group& group, Side side) {
  return ToString(First(group.facts.Own(side, PieceKind::kRook)));
}

std::string SquareOfKing(const Group& group, Side side) {
  return ToString(group.facts.position().King(side));
}

// King and pawn against king: the result, and by which rule it holds.
std::string ExactSentence(const Group& group, const ExplainedEntry& entry) {
  const Side side = entry.entry.side;
  const bool opposition = group.Find(entry, ClaimKind::kOpposition) != nullptr;
  if (entry.entry.value_cp * Sign(side) > 0) {
    const std::string owner = Name(side);
    const std::string wins = owner + "'s pawn wins by force";
    if (group.Find(entry, ClaimKind::kSquareRule) != nullptr) {
      return wins + ": " + Name(Other(side)) + "'s king on " +
             SquareOfKing(group, Other(side)) + " is outside its square.";
    }
    const std::string king =
        ": " + owner + "'s king on " + SquareOfKing(group, side);
    if (group.Find(entry, ClaimKind::kKeySquares) != nullptr) {
      return wins + king + " stands on a key square of the pawn.";
    }
    return wins + (opposition ? king + " has the opposition." : ".");
  }
  const Side owner =
      group.facts.Pawns(Side::kWhite).pawns != 0 ? Side::kWhite : Side::kBlack;
  const std::string drawn =
      "The pawn cannot be forced through: the ending is drawn";
  const std::string king = std::string("; ") + Name(Other(owner)) + "'s king ";
  if (group.Find(entry, ClaimKind::kKingDistance) != nullptr) {
    return drawn + king + "holds the corner of the rook pawn.";
  }
  return drawn + (opposition ? king + "has the opposition." : ".");
}

std::string LucenaSentence(const Group& group, Side side) {
  return std::string("Lucena's position: ") + Name(side) + "'s king on " +
         SquareOfKing(group, side) +
         " stands before its pawn and the rook on " +
         SquareOfRook(group, side) + " keeps the enemy king off. " +
         "The method is to build the bridge: the rook goes to the fourth rank, "
         "where it will shield the king from checks when it steps out.";
}

std::string HeldRookSentence(const Group& group, const ExplainedEntry& entry) {
  const Side attacker = entry.entry.side;
  const Side side = Other(attacker);
  const std::string rook = SquareOfRook(group, side);
  const std::string holds = std::string(Name(side)) + " holds: ";
  if (group.Find(entry, ClaimKind::kPhilidor) == nullptr) {
    return "Vancura's defence, and " + holds + "the rook on " + rook +
           " attacks the pawn from the side and checks the king when it comes "
           "to guard it.";
  }
  const Square pawn = First(group.facts.Pawns(attacker).pawns);
  if (RelativeRank(attacker, pawn) == 5) {
    return "Philidor's defence, and " + holds +
           "with the pawn on the sixth rank " + Name(attacker) +
           "'s king has no shelter there from the checks of the rook on " +
           rook + " from behind.";
  }
  return "Philidor's defence, and " + holds + "the rook on " + rook +
         " stays on the sixth rank of the pawn until the pawn steps there, "
         "then checks from behind.";
}

std::string HeldQueenSentence(const Group& group, const ExplainedEntry& entry) {
  const Side side = entry.entry.side;
  if (group.Find(entry, ClaimKind::kQueenHeld) == nullptr) {
    return "A queen often cannot win against a rook's or bishop's pawn on the "
           "seventh rank with its king at hand while the own king is far.";
  }
  const std::string pawn = SquareOfPawn(group, Other(side));
  return std::string(Name(side)) + "'s queen cannot win: the pawn on " + pawn +
         " is one step from promoting with its king beside it, stalemate saves "
         "that king in the corner, and " +
         Name(side) + "'s king on " + SquareOfKing(group, side) +
         " is too far away.";
}

std::string OppositeBishopsSentence(const Group& group,
                                    const ExplainedEntry& entry) {
  const Side defender = Other(entry.entry.side);
  if (group.Find(entry, ClaimKind::kBishopHeld) == nullptr) {
    return "Bishops of opposite colours make the ending drawish.";
  }
  return std::string("Bishops of opposite colours, and ") + Name(defender) +
         "'s king on " + SquareOfKing(group, defender) +
         " stands in the pawn's way where the enemy bishop can never attack "
         "it: the pawn cannot get through.";
}

std::string LoneKingSentence(const Group& group, Side side) {
  const Bitboard corners = MatingCorners(group.facts, side);
  if (PopCount(corners) == 4) {
    const Bitboard majors = group.facts.Own(side, PieceKind::kQueen) |
                            group.facts.Own(side, PieceKind::kRook);
    const std::string where = majors == 0 ? "into a corner" : "to the edge";
    // Two queens or rooks need no help.
    return "The lone king must be driven " + where +
           (HasMany(majors)
                ? std::string(".")
                : std::string(", with ") + Name(side) + "'s king helping.");
  }
  return "The lone king must be driven to " + ToString(First(corners)) +
         " or " + ToString(Last(corners)) +
         ", the corners of the bishop's colour.";
}

}  // namespace

std::string EndingPhrase(const Group& group) {
  const std::vector<const ExplainedEntry*> good = group.Good(group.favours());
  if (good.empty()) return "drawing chances";
  switch (good.front()->entry.term) {
    case TermId::kLoneKing:
      return "a lone king to mate";
    case TermId::kLucena:
      return "Lucena's winning position";
    default:
      return "a won ending";
  }
}

std::string EndingSentence(const Group& group) {
  const ExplainedEntry& explained = *group.entries.front();
  const Side side = explained.entry.side;
  const std::string ahead = Name(side);
  switch (explained.entry.term) {
    case TermId::kLoneKing:
      return LoneKingSentence(group, side);
    case TermId::kExactResult:
      return ExactSentence(group, explained);
    case TermId::kLucena:
      return LucenaSentence(group, side);
    case TermId::kWrongBishop:
      return "A draw: " + ahead +
             "'s bishop does not control the promotion square, and the enemy "
             "king holds the corner.";
    case TermId::kHeldQueen:
      return HeldQueenSentence(group, explained);
    case TermId::kHeldRookEnding:
      return HeldRookSentence(group, explained);
    case TermId::kOppositeBishops:
      return OppositeBishopsSentence(group, explained);
    case TermId::kRookEnding:
      return "Rook endings with so little between the sides are often drawn.";
    case TermId::kBlockedPosition:
      return "Everything is blocked: neither king can get at a pawn.";
    case TermId::kTooLittleToWin:
      if (group.facts.Pawns(side).pawns != 0) {
        return ahead +
               " has only rook pawns, and the enemy king holds their corner.";
      }
      return ahead + " has no pawns and too little more to win with.";
    default:
      return "Neither side can mate with what is left.";
  }
}

}  // namespace assay
