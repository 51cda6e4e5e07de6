// The majority: more pawns against fewer on one wing, advanced to make a
// passed pawn.
//
// The trade recommends it where the majority is healthy (each own pawn more
// counts, none doubled among them), the more so the fewer pieces are left and
// the farther the enemy king is. The pawn without an opponent ahead goes
// first ("candidate first", Nimzowitsch, My System, 1925, from memory), but not
// to where pieces attack it and no pawn guards it: then its neighbour comes up
// beside it first, with the next pawn to guard that one where it needs it. A
// neighbour that only stays behind is no plan. Not before the own castled king
// while queens are on, and not where one of the pawns is passed already: that
// has its own kind.
#include <algorithm>
#include <array>

#include "assay/facts/claim_makers.h"
#include "assay/plans/best_drafts.h"
#include "assay/plans/pawn_play.h"

namespace assay {
namespace {

// Own reasoning: a candidate is worth some 10 to 20 to the ledger, the passed
// pawn made of it 30 to 60 late, when there are few pieces to stop it.
constexpr Centipawns kBase = 16;
constexpr int kEndingShare = 8;  // 256 / 8 = 32 in a pure ending
constexpr Centipawns kKingFar = 8;
constexpr Centipawns kMakesPassed = 10;
constexpr int kFar = 4;  // king moves
constexpr int kMostMoves = 4;
// Halves of the board count once many pieces are gone: before that their
// centre pawns play for the centre.
constexpr int kHalvesCount = 150;  // of facts.phase()

Bitboard FilesBetween(int first, int last) {
  Bitboard files = 0;
  for (int file = first; file <= last; ++file) files |= FileMask(file);
  return files;
}

// Each own pawn on a file of its own, more than the enemy's, none passed.
bool IsHealthy(const Outlook& outlook, Bitboard files) {
  const PawnFacts& own = outlook.facts.Pawns(outlook.side);
  const Bitboard mine = own.pawns & files;
  const Bitboard theirs = outlook.facts.Pawns(outlook.enemy()).pawns & files;
  if (theirs == 0 || PopCount(mine) <= PopCount(theirs)) return false;
  if (PopCount(mine) < 2) return false;
  return (own.doubled & mine) == 0 && (own.passed & mine) == 0;
}

// One position of the advance.
class March {
 public:
  March(const Outlook& outlook, const Position& at, Bitboard files)
      : side_(outlook.side), enemy_(outlook.enemy()), at_(at), facts_(at) {
    const PawnFacts& own = facts_.Pawns(side_);
    mine_ = own.pawns & files & ~own.levers;
    candidates_ = own.candidates & mine_;
  }

  // The candidate where it can go and be held, else what supports it, else the
  // candidate where it can go at all; null where nothing can.
  Move Next() const {
    for (const Square pawn : Each(candidates_)) {
      const Move move = StepOf(pawn);
      if (!move.is_null() && IsHeld(move)) return move;
    }
    const Move support = Support();
    if (!support.is_null()) return support;
    for (const Square pawn : Each(candidates_)) {
      const Move move = StepOf(pawn);
      if (!move.is_null()) return move;
    }
    return Move();
  }

 private:
  // Two steps where they go, else one; safe. Null where there is none.
  Move StepOf(Square pawn) const {
    for (const Move move : Steps(pawn)) {
      if (!move.is_null() && IsSafe(move)) return move;
    }
    return Move();
  }

  std::array<Move, 2> Steps(Square pawn) const {
    const Bitboard empty = ~at_.Occupied();
    const Bitboard one = Forward(side_, Bit(pawn)) & empty;
    const Bitboard two =
        Forward(side_, one & RelativeRankMask(side_, 2)) & empty;
    std::array<Move, 2> steps;
    if (two != 0) steps[0] = FindMove(at_, side_, pawn, First(two));
    if (one != 0) steps[1] = FindMove(at_, side_, pawn, First(one));
    return steps;
  }

  bool IsSafe(Move move) const {
    const Position own = at_.side_to_move() == side_ ? at_ : at_.AfterPass();
    return StandsSafely(own.After(move), move.to());
  }

  // Whether nothing attacks where the pawn goes, no pawn could at its next
  // step, or an own pawn guards it.
  bool IsHeld(Move move) const {
    const Bitboard attacked =
        facts_.Attacked(enemy_) | ChasedByPawns(facts_, enemy_);
    return !Contains(attacked, move.to()) ||
           Contains(facts_.Pawns(side_).attacks, move.to());
  }

  // Whether a pawn on the square could go on to beside the candidate.
  bool CanGoOn(Square from) const {
    const Bitboard next = Forward(side_, Bit(from));
    return (next & ~at_.Occupied() & ~facts_.Pawns(enemy_).attacks) != 0;
  }

  // The neighbour of a candidate to beside it, or up to guard it; first the
  // next pawn where that one needs a guard.
  Move Support() const {
    int foremost = 0;
    for (const Square pawn : Each(candidates_)) {
      foremost = std::max(foremost, RelativeRank(side_, pawn));
    }
    const Bitboard helpers =
        mine_ & ~candidates_ & Neighbours(FillFiles(candidates_));
    for (const Square pawn : Each(helpers)) {
      for (const Move move : Steps(pawn)) {
        if (move.is_null()) continue;
        const int behind = foremost - RelativeRank(side_, move.to());
        if (behind != 0 && (behind != 1 || !CanGoOn(move.to()))) continue;
        if (IsSafe(move)) return move;
        const Move guard = behind == 0 ? GuardFor(move.to()) : Move();
        if (!guard.is_null()) return guard;
      }
    }
    return Move();
  }

  // A pawn's step that guards the square.
  Move GuardFor(Square square) const {
    const Bitboard from_here = PawnAttacks(enemy_, Bit(square));
    const Bitboard pawns = facts_.Pawns(side_).pawns & ~candidates_ &
                           Neighbours(FileMask(FileOf(square)));
    for (const Square pawn : Each(pawns)) {
      for (const Move move : Steps(pawn)) {
        if (move.is_null() || !Contains(from_here, move.to())) continue;
        if (IsSafe(move)) return move;
      }
    }
    return Move();
  }

  const Side side_;
  const Side enemy_;
  const Position& at_;
  const Facts facts_;
  Bitboard mine_ = 0;
  Bitboard candidates_ = 0;
};

struct Advance {
  std::vector<Move> moves;
  bool makes_passed = false;
};

Advance AdvanceOf(const Outlook& outlook, Bitboard files) {
  Advance advance;
  Position at = outlook.position;
  while (static_cast<int>(advance.moves.size()) < kMostMoves) {
    if (at.InCheck()) break;
    const Move move = March(outlook, at, files).Next();
    if (move.is_null()) break;
    if (at.side_to_move() != outlook.side) at = at.AfterPass();
    at = at.After(move);
    advance.moves.push_back(move);
    const Facts after(at);
    const PawnFacts& own = after.Pawns(outlook.side);
    advance.makes_passed = (own.passed & files) != 0;
    // A lever is where the opponent has to decide; a candidate on its fifth
    // rank that a pawn guards is there to stay.
    const bool stays = Contains(own.candidates & own.attacks, move.to()) &&
                       RelativeRank(outlook.side, move.to()) >= 4;
    if (advance.makes_passed || Contains(own.levers, move.to()) || stays) {
      break;
    }
  }
  return advance;
}

Centipawns ValueOf(const Outlook& outlook, Square candidate,
                   const Advance& advance) {
  Centipawns value = kBase + (256 - outlook.facts.phase()) / kEndingShare;
  const Square king = outlook.position.King(outlook.enemy());
  if (KingDistance(king, candidate) >= kFar) value += kKingFar;
  if (advance.makes_passed) value += kMakesPassed;
  return value;
}

}  // namespace

void DraftMajorities(const Outlook& outlook, std::vector<Draft>& drafts) {
  if (outlook.facts.InCheck()) return;
  const PawnFacts& own = outlook.facts.Pawns(outlook.side);
  const Bitboard theirs = outlook.facts.Pawns(outlook.enemy()).pawns;
  Shortlist best(1);
  // The wings of the claims first, then the halves that handbooks count too.
  const int cuts[4][2] = {{0, 2}, {5, 7}, {0, 3}, {4, 7}};
  for (const auto& cut : cuts) {
    const Bitboard files = FilesBetween(cut[0], cut[1]);
    const bool is_half = cut[1] - cut[0] > 2;
    if (is_half && outlook.facts.phase() > kHalvesCount) continue;
    if (!IsHealthy(outlook, files)) continue;
    const Bitboard candidates = own.candidates & files;
    if (candidates == 0) continue;
    const Square candidate = First(candidates);
    if (UncoversKing(outlook, candidate)) continue;
    const Advance advance = AdvanceOf(outlook, files);
    if (advance.moves.empty()) continue;
    Draft draft;
    draft.kind = PlanKind::kMajority;
    draft.moves = advance.moves;
    draft.targets.Add(advance.moves.back().to());
    if (!is_half) {
      draft.claims.push_back(MajorityClaim(outlook.side, own.pawns & files,
                                           PopCount(theirs & files)));
    }
    draft.claims.push_back(
        SquaresClaim(ClaimKind::kCandidate, outlook.side, Bit(candidate)));
    best.Offer(outlook, std::move(draft), ValueOf(outlook, candidate, advance));
  }
  best.MoveTo(drafts);
}

}  // namespace assay
