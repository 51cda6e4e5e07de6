// The minority attack: fewer pawns advance against more, to leave the larger
// group with a weak pawn.
//
// The trade recommends it where the side has fewer pawns on files a to c than
// the opponent, the c-file half-open for it, enemy pawns on b7 and on c6 (or
// still on c7), and a b-pawn that can reach b5; best with the centre pawns
// rammed and rooks to besiege what is left. Not without a rook, and not where
// the b-pawn is lost on its way; the a-pawn or a rook supports it first where
// it needs that. The same on the other wing where the own king is elsewhere.
#include <algorithm>

#include "assay/facts/claim_makers.h"
#include "assay/plans/pawn_play.h"

namespace assay {
namespace {

// A weak pawn on a half-open file costs 20 to 40 with what it ties down; the
// textbook case comes to that much and is named first. Own reasoning.
constexpr Centipawns kTextbook = 62;
constexpr Centipawns kWithoutRam = 42;
constexpr Centipawns kUnmoved = 18;  // less: c7 must still come to c6

// The squares of the plan on one wing, as White sees them on the queen's.
struct Flank {
  Side side;
  bool mirrored;

  Square At(Square square) const {
    return Relative(side, mirrored ? FlipFile(square) : square);
  }
  Bitboard Files() const {
    return FileMask(FileOf(At(kA1))) | FileMask(FileOf(At(kB1))) |
           FileMask(FileOf(At(kC1)));
  }
};

bool Applies(const Outlook& outlook, const Flank& wing) {
  const Bitboard own = outlook.facts.Pawns(outlook.side).pawns;
  const Bitboard theirs = outlook.facts.Pawns(outlook.enemy()).pawns;
  const Bitboard files = wing.Files();
  if (PopCount(own & files) >= PopCount(theirs & files)) return false;
  if (outlook.facts.Own(outlook.side, PieceKind::kRook) == 0) return false;
  const Bitboard half_open = outlook.facts.HalfOpenFiles(outlook.side);
  if (!Contains(half_open, wing.At(kC1))) return false;
  const bool chain =
      Contains(theirs, wing.At(kB7)) &&
      (Contains(theirs, wing.At(kC6)) || Contains(theirs, wing.At(kC7)));
  if (!chain) return false;
  const Square king = outlook.position.King(outlook.side);
  const Square enemy_king = outlook.position.King(outlook.enemy());
  // Against a king it is a storm, and no question of weak pawns.
  if (Contains(files, enemy_king)) return false;
  return FileOf(king) == 3 || FileOf(king) == 4 ||
         (wing.Files() & FileMask(FileOf(king))) == 0;
}

// The own b-pawn short of b5 with nothing but air ahead; kNoSquare for none.
Square Attacker(const Outlook& outlook, const Flank& wing) {
  const Bitboard own = outlook.facts.Pawns(outlook.side).pawns;
  const Square goal = wing.At(kB5);
  const Bitboard behind = own & RearSpan(outlook.side, Bit(goal));
  if (behind == 0 || HasMany(behind)) return kNoSquare;
  const Square pawn = First(behind);
  const Bitboard way = Between(pawn, goal) | Bit(goal);
  return (way & outlook.position.Occupied()) == 0 ? pawn : kNoSquare;
}

// The moves through these squares, pairs of from and to; empty where one is
// not legal.
std::vector<Move> Through(const Outlook& outlook,
                          const std::vector<std::pair<Square, Square>>& steps) {
  std::vector<Move> moves;
  for (const auto& [from, to] : steps) {
    const std::optional<Position> at =
        PlayAlone(outlook.position, outlook.side, moves);
    if (!at.has_value()) return {};
    const Move move = FindMove(*at, outlook.side, from, to);
    if (move.is_null()) return {};
    moves.push_back(move);
  }
  return moves;
}

using Steps = std::vector<std::pair<Square, Square>>;

// The pawn's way to b5, and before the last step what may support it there:
// nothing, the a-pawn, a rook behind it.
std::vector<Steps> Ways(const Outlook& outlook, const Flank& wing,
                        Square pawn) {
  Steps first;
  Square at = pawn;
  if (RelativeRank(outlook.side, pawn) < 3) {
    first = {{pawn, wing.At(kB4)}};
    at = wing.At(kB4);
  }
  const std::pair<Square, Square> last = {at, wing.At(kB5)};
  std::vector<Steps> ways;
  const auto add = [&](const Steps& before, const Steps& between) {
    Steps way = before;
    way.insert(way.end(), first.begin(), first.end());
    way.insert(way.end(), between.begin(), between.end());
    way.push_back(last);
    ways.push_back(std::move(way));
  };
  add({}, {});
  const Bitboard own = outlook.facts.Pawns(outlook.side).pawns;
  const Square a2 = wing.At(kA2);
  const Square a3 = wing.At(kA3);
  const Square a4 = wing.At(kA4);
  if (Contains(own, a3)) add({}, {{a3, a4}});
  if (Contains(own, a2)) {
    add({}, {{a2, a4}});
    add({{a2, a3}}, {{a3, a4}});
  }
  const Bitboard rooks = outlook.facts.Own(outlook.side, PieceKind::kRook);
  for (const Square rook : Each(rooks)) {
    const Square behind = wing.At(kB1);
    if (Contains(outlook.facts.Attacks(rook), behind)) {
      add({{rook, behind}}, {});
      if (Contains(own, a2)) add({{rook, behind}}, {{a2, a4}});
    }
  }
  return ways;
}

Centipawns ValueOf(const Outlook& outlook, const Flank& wing) {
  const Bitboard own = outlook.facts.Pawns(outlook.side).pawns;
  const Bitboard theirs = outlook.facts.Pawns(outlook.enemy()).pawns;
  const bool ram =
      Contains(own, wing.At(kD4)) && Contains(theirs, wing.At(kD5));
  Centipawns value = ram ? kTextbook : kWithoutRam;
  if (!Contains(theirs, wing.At(kC6))) value -= kUnmoved;
  return value;
}

void AddClaims(const Outlook& outlook, const Flank& wing, Draft& draft) {
  const Facts& facts = outlook.facts;
  const Bitboard own = facts.Pawns(outlook.side).pawns;
  const Bitboard theirs = facts.Pawns(outlook.enemy()).pawns;
  const Bitboard files = wing.Files();
  draft.claims.push_back(
      MajorityClaim(outlook.enemy(), theirs & files, PopCount(own & files)));
  draft.claims.push_back(HalfOpenFileClaim(outlook.side, FileOf(wing.At(kC1))));
  const Square goal = wing.At(kB5);
  const Bitboard hit = PawnAttacks(outlook.side, goal) & theirs;
  if (hit == 0) return;
  Claim lever =
      LeverMoveClaim(outlook.side, {draft.moves.back().from(), goal, hit});
  std::vector<Move> before = draft.moves;
  before.pop_back();
  lever.line = WithPasses(outlook.position, outlook.side, before);
  draft.claims.push_back(std::move(lever));
}

}  // namespace

void DraftMinorityAttacks(const Outlook& outlook, std::vector<Draft>& drafts) {
  if (outlook.facts.InCheck()) return;
  for (const bool mirrored : {false, true}) {
    const Flank wing = {outlook.side, mirrored};
    if (!Applies(outlook, wing)) continue;
    const Square pawn = Attacker(outlook, wing);
    if (pawn == kNoSquare) continue;
    for (const Steps& way : Ways(outlook, wing, pawn)) {
      const std::vector<Move> moves = Through(outlook, way);
      if (!AreSound(outlook, moves)) continue;
      Draft draft;
      draft.kind = PlanKind::kMinorityAttack;
      draft.moves = moves;
      const Bitboard theirs = outlook.facts.Pawns(outlook.enemy()).pawns;
      const Square c6 = wing.At(kC6);
      draft.targets.Add(Contains(theirs, c6) ? c6 : wing.At(kC7));
      AddClaims(outlook, wing, draft);
      Shortlist best(1);
      best.Offer(outlook, std::move(draft), ValueOf(outlook, wing));
      best.MoveTo(drafts);
      break;
    }
  }
}

}  // namespace assay
