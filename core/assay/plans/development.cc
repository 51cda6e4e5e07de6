// Development: bring out what is at home, and castle.
//
// The trade recommends it first in the opening: minor pieces out, the king to
// safety, then the rooks. Not a plan any more once at most one minor piece is
// at home and the king is castled; and never a move that leaves something
// hanging. A bishop does not go before an unmoved centre pawn of its own, nor a
// knight before the f-pawn that is to storm.
#include <algorithm>

#include "assay/facts/claim_makers.h"
#include "assay/facts/danger.h"
#include "assay/facts/kings.h"
#include "assay/plans/best_drafts.h"
#include "assay/plans/stops.h"
#include "assay/rules/movegen.h"

namespace assay {
namespace {

constexpr std::size_t kMostMoves = 3;
constexpr Centipawns kLeastGain = 10;
// Each piece at home beyond the first, and a king still in the middle: what
// waits behind this plan, the rooks, is not yet in the ledger. Own reasoning,
// about half of what an undeveloped piece weighs.
constexpr Centipawns kEachPromise = 8;
// A bishop in front of an unmoved centre pawn shuts its brother in.
constexpr Centipawns kBlocksCentrePawn = 25;
// A knight on f3 holds up the f-pawn of a side whose play is a storm with the
// e- and f-pawns: as above.
constexpr Centipawns kBlocksStorm = 25;

class Developer {
 public:
  explicit Developer(const Outlook& outlook)
      : outlook_(outlook), side_(outlook.side) {}

  void OfferTo(BestDrafts& best) const {
    const Bitboard home = UndevelopedPieces(outlook_.facts, side_);
    const bool uncastled = outlook_.position.castling().HasAny(side_) &&
                           IsUncastled(outlook_.facts, side_);
    const int waiting = PopCount(home) + (uncastled ? 1 : 0);
    if (waiting < 2 && !uncastled) return;
    Draft draft;
    draft.kind = PlanKind::kDevelop;
    Position at = outlook_.position;
    while (draft.moves.size() < kMostMoves) {
      if (at.side_to_move() != side_) {
        if (at.InCheck()) break;
        at = at.AfterPass();
      }
      const Move move = BestStep(at);
      if (move.is_null()) break;
      draft.moves.push_back(move);
      draft.targets.Add(move.to());
      at = at.After(move);
      if (move.type() == Move::Type::kCastling) break;
    }
    if (draft.moves.empty()) return;
    draft.promise = kEachPromise * waiting;
    if (home != 0) {
      draft.claims.push_back(UndevelopedClaim(side_, home));
    }
    if (uncastled) {
      draft.claims.push_back(SquaresClaim(ClaimKind::kUncastled, side_,
                                          Bit(outlook_.position.King(side_))));
    }
    best.Offer(std::move(draft), kLeastGain);
  }

 private:
  // Castling where it can be done, else the developing move after which the
  // ledger is best.
  Move BestStep(const Position& at) const {
    const Facts facts(at);
    const Bitboard home = UndevelopedPieces(facts, side_);
    const Centipawns hanging = MostHanging(at, side_);
    MoveList moves;
    LegalMoves(at, moves);
    Move best;
    Centipawns best_cp = -1000000;
    for (const Move move : moves) {
      const bool castles = move.type() == Move::Type::kCastling;
      if (!castles && !Contains(home, move.from())) continue;
      if (!at.At(move.to()).empty()) continue;
      const Position after = at.After(move);
      if (!castles && !StandsSafely(after, move.to())) continue;
      if (MostHanging(after, side_) > hanging) {
        continue;
      }
      Centipawns value = outlook_.Score(after);
      if (BlocksCentrePawn(at, move)) value -= kBlocksCentrePawn;
      if (BlocksStorm(facts, move)) value -= kBlocksStorm;
      if (value > best_cp) {
        best_cp = value;
        best = move;
      }
    }
    return best;
  }

  bool BlocksCentrePawn(const Position& at, Move move) const {
    const Square ahead = move.to();
    if (FileOf(ahead) != 3 && FileOf(ahead) != 4) return false;
    if (RelativeRank(side_, ahead) != 2) return false;
    const Square pawn = Relative(side_, MakeSquare(FileOf(ahead), 1));
    return at.At(pawn) == Piece(side_, PieceKind::kPawn);
  }

  // Whether the move stands in the way of the f-pawn where it wants to storm a
  // castled king beside pawns on d4 and e4 (or of the c-pawn, mirrored): the
  // play of a side that doubled pawns leave with nothing to do on the other
  // wing.
  bool BlocksStorm(const Facts& facts, Move move) const {
    const int file = FileOf(move.to());
    if ((file != 2 && file != 5) || RelativeRank(side_, move.to()) != 2) {
      return false;
    }
    const bool kingside = file == 5;
    const Side enemy = outlook_.enemy();
    const Square king = facts.position().King(enemy);
    if ((kingside ? FileOf(king) < file : FileOf(king) > file) ||
        RelativeRank(enemy, king) != 0) {
      return false;
    }
    const PawnFacts& pawns = facts.Pawns(side_);
    const auto has = [&](int on_file, int rank) {
      return Contains(pawns.pawns, Relative(side_, MakeSquare(on_file, rank)));
    };
    const Bitboard far_wing =
        kingside ? FileMask(1) | FileMask(2) : FileMask(5) | FileMask(6);
    return has(file, 1) && has(3, 3) && has(4, 3) &&
           (pawns.doubled & far_wing) != 0;
  }

  const Outlook& outlook_;
  const Side side_;
};

}  // namespace

void DraftDevelopment(const Outlook& outlook, std::vector<Draft>& drafts) {
  // In the ending nobody develops.
  if (outlook.facts.phase() < 128) return;
  BestDrafts best(outlook);
  Developer(outlook).OfferTo(best);
  best.AddTo(drafts);
}

}  // namespace assay
