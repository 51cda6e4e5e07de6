// The majority: more pawns against fewer on one wing, advanced to make a
// passed pawn.
//
// The trade recommends it where the majority is healthy (each own pawn more
// counts, none doubled among them), the more so the fewer pieces are left and
// the farther the enemy king is. The pawn without an opponent ahead goes
// first ("candidate first", Nimzowitsch, My System, 1925, from memory). Not
// before the own castled king while queens are on, and not where one of the
// pawns is passed already: that has its own kind.
#include <algorithm>

#include "assay/facts/claim_makers.h"
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

// The next step: the candidate where it can go safely, else what supports it.
Move NextStep(const Outlook& outlook, const Position& at, Bitboard files) {
  const Facts facts(at);
  const PawnFacts& own = facts.Pawns(outlook.side);
  const Bitboard mine = own.pawns & files & ~own.levers;
  const Bitboard candidates = own.candidates & mine;
  const auto step_of = [&](Square pawn) {
    const Bitboard one = Forward(outlook.side, Bit(pawn)) & ~at.Occupied();
    const Bitboard two =
        Forward(outlook.side, one & RelativeRankMask(outlook.side, 2)) &
        ~at.Occupied();
    for (const Bitboard to : {two, one}) {
      if (to == 0) continue;
      const Move move = FindMove(at, outlook.side, pawn, First(to));
      if (move.is_null()) continue;
      const Position own_turn =
          at.side_to_move() == outlook.side ? at : at.AfterPass();
      if (StandsSafely(own_turn.After(move), move.to())) return move;
    }
    return Move();
  };
  for (const Square pawn : Each(candidates)) {
    const Move move = step_of(pawn);
    if (!move.is_null()) return move;
  }
  // The hindmost helper beside a candidate catches up.
  const Bitboard helpers =
      mine & ~candidates & Neighbours(FillFiles(candidates));
  for (const Square pawn : Each(helpers)) {
    const Move move = step_of(pawn);
    if (move.is_null()) continue;
    int foremost = 0;
    for (const Square other : Each(candidates)) {
      foremost = std::max(foremost, RelativeRank(outlook.side, other));
    }
    const int behind = foremost - RelativeRank(outlook.side, move.to());
    if (behind == 0 || behind == 1) return move;
  }
  return Move();
}

struct Advance {
  std::vector<Move> moves;
  bool makes_passed = false;
};

Advance AdvanceOf(const Outlook& outlook, Bitboard files) {
  Advance advance;
  Position at = outlook.position;
  while (static_cast<int>(advance.moves.size()) < kMostMoves) {
    if (at.InCheck()) break;
    const Move move = NextStep(outlook, at, files);
    if (move.is_null()) break;
    if (at.side_to_move() != outlook.side) at = at.AfterPass();
    at = at.After(move);
    advance.moves.push_back(move);
    const Facts after(at);
    advance.makes_passed = (after.Pawns(outlook.side).passed & files) != 0;
    // A lever is where the opponent has to decide.
    if (advance.makes_passed ||
        Contains(after.Pawns(outlook.side).levers, move.to())) {
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
