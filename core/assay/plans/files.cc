// File: a rook goes to an open or half-open file, or a second one behind it.
//
// The trade recommends it where the file leads somewhere: squares on the
// fifth to seventh rank that no enemy pawn guards, or a pawn there to hit.
// Not recommended where the file is shut off by guarded squares all the way,
// nor for a rook that something depends on: then the other rook goes.
#include "assay/facts/claim_makers.h"
#include "assay/facts/routes.h"
#include "assay/plans/best_drafts.h"

namespace assay {
namespace {

constexpr int kMostMoves = 2;
constexpr Centipawns kLeastGain = 18;
// An open file with entry squares: what the rook will do there is more than
// the scope that the ledger gives it at once. Own reasoning, half of what a
// rook on an open file weighs.
constexpr Centipawns kEntryPromise = 12;

class FileFinder {
 public:
  explicit FileFinder(const Outlook& outlook)
      : outlook_(outlook), facts_(outlook.facts), side_(outlook.side) {}

  void OfferTo(BestDrafts& best) const {
    for (const Square rook :
         InOrder(side_, facts_.Own(side_, PieceKind::kRook))) {
      const Reach reach(facts_, rook, kMostMoves);
      for (int file = 0; file < 8; ++file) {
        if (file != FileOf(rook)) Offer(reach, rook, file, best);
      }
    }
  }

 private:
  bool IsOpen(int file) const {
    return (FileMask(file) & facts_.OpenFiles()) != 0;
  }
  bool IsHalfOpen(int file) const {
    return (FileMask(file) & facts_.HalfOpenFiles(side_)) != 0;
  }

  // Squares on the file that a rook could enter the enemy camp by, and enemy
  // pawns there that no pawn guards.
  Bitboard Aims(int file) const {
    const Bitboard camp = RelativeRankMask(side_, 4) |
                          RelativeRankMask(side_, 5) |
                          RelativeRankMask(side_, 6);
    return FileMask(file) & camp & ~facts_.Pawns(outlook_.enemy()).attacks;
  }

  void Offer(const Reach& reach, Square rook, int file,
             BestDrafts& best) const {
    const bool open = IsOpen(file);
    if (!open && !IsHalfOpen(file)) return;
    const Bitboard aims = Aims(file);
    if (PopCount(aims) < (open ? 2 : 1)) return;
    // A rook that is on such a file already has found its work.
    if (IsOpen(FileOf(rook)) || IsHalfOpen(FileOf(rook)) ||
        RelativeRank(side_, rook) > 1) {
      return;
    }
    for (const int rank : {0, 1}) {
      const Square to = Relative(side_, MakeSquare(file, rank));
      const int moves = reach.MovesTo(to);
      if (moves < 1) continue;
      for (const SquareList& route : RoutesInOrder(reach, side_, to, 1)) {
        Draft draft;
        draft.kind = PlanKind::kFile;
        if (!PlayRoute(outlook_.position, side_, route, draft.moves)) continue;
        draft.targets.Add(to);
        draft.promise = open ? kEntryPromise : kEntryPromise / 2;
        draft.claims.push_back(open ? OpenFileClaim(file)
                                    : HalfOpenFileClaim(side_, file));
        best.Offer(std::move(draft), kLeastGain);
      }
      return;
    }
  }

  const Outlook& outlook_;
  const Facts& facts_;
  const Side side_;
};

}  // namespace

void DraftFiles(const Outlook& outlook, std::vector<Draft>& drafts) {
  if (outlook.facts.Own(outlook.side, PieceKind::kRook) == 0) return;
  BestDrafts best(outlook);
  FileFinder(outlook).OfferTo(best);
  best.AddTo(drafts);
}

}  // namespace assay
