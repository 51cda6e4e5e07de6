#include "assay/plans/pawn_play.h"

#include <algorithm>
#include <limits>

#include "assay/facts/danger.h"
#include "assay/facts/exchange.h"
#include "assay/rules/movegen.h"

namespace assay {
namespace {

// The most that the side loses on one square.
int WorstLoss(const Facts& facts, Side side) {
  int worst = 0;
  for (const Square square : Each(AttackedPieces(facts, side))) {
    worst = std::max(worst, ExchangeValueOf(facts, square));
  }
  return worst;
}

// The moves as a number that is the same for the same moves of either side.
std::uint64_t OrderOf(Side side, const std::vector<Move>& moves) {
  std::uint64_t order = 0;
  for (const Move move : moves) {
    order = (order << 12) | (Relative(side, move.from()) << 6) |
            Relative(side, move.to());
  }
  return order;
}

// About a tenth less for each further move, as plans are ranked.
Centipawns Discounted(Centipawns value, std::size_t moves) {
  for (std::size_t i = 1; i < moves; ++i) value = value * 9 / 10;
  return value;
}

}  // namespace

Move CheapestCapture(const Position& position, Square square) {
  if (position.Attackers(position.side_to_move(), square,
                         position.Occupied()) == 0) {
    return Move();
  }
  MoveList moves;
  LegalMovesTo(position, Bit(square), moves);
  const Side side = position.side_to_move();
  Move best;
  int least = std::numeric_limits<int>::max();
  for (const Move move : moves) {
    if (move.is_promotion() && move.promotion() != PieceKind::kQueen) continue;
    const PieceKind kind = position.At(move.from()).kind();
    // The king comes last: it has no exchange value. A knight goes before a
    // bishop, which the opened lines favour.
    const int cost =
        kind == PieceKind::kKing
            ? 10000
            : ExchangeValue(kind) * 2 + (kind == PieceKind::kBishop);
    // Of equals the same one for either side.
    if (cost > least || (cost == least && Relative(side, move.from()) >
                                              Relative(side, best.from()))) {
      continue;
    }
    least = cost;
    best = move;
  }
  return best;
}

Centipawns ScoreAt(const Outlook& outlook, const Position& position) {
  const bool other_turn =
      position.side_to_move() != outlook.position.side_to_move();
  return outlook.Score(other_turn && !position.InCheck() ? position.AfterPass()
                                                         : position);
}

bool AreSound(const Outlook& outlook, const std::vector<Move>& moves) {
  Position at = outlook.position;
  for (std::size_t i = 0; i < moves.size(); ++i) {
    if (at.side_to_move() != outlook.side) {
      if (at.InCheck()) return false;
      at = at.AfterPass();
    }
    if (!IsLegal(at, moves[i])) return false;
    const int taken = ExchangeValue(at.At(moves[i].to()).kind());
    at = at.After(moves[i]);
    if (ExchangeValueOf(at, moves[i].to()) > taken) return false;
    if (i > 0) continue;
    const int hung = WorstLoss(outlook.facts, outlook.side) + taken;
    if (WorstLoss(Facts(at), outlook.side) > hung) return false;
  }
  return !moves.empty();
}

bool UncoversKing(const Outlook& outlook, Square pawn) {
  const Position& position = outlook.position;
  const Square king = position.King(outlook.side);
  if (position.Pieces(outlook.enemy(), PieceKind::kQueen) == 0) return false;
  if (RelativeRank(outlook.side, king) > 1) return false;
  return OnSameWing(king, pawn) && std::abs(FileOf(king) - FileOf(pawn)) <= 1;
}

bool OnSameWing(Square a, Square b) {
  const int wing_a = FileOf(a) <= 2 ? 1 : FileOf(a) >= 5 ? 2 : 0;
  const int wing_b = FileOf(b) <= 2 ? 1 : FileOf(b) >= 5 ? 2 : 0;
  return wing_a != 0 && wing_a == wing_b;
}

bool ChainPointsTo(const Outlook& outlook, Square square) {
  if (outlook.facts.centre() != Centre::kClosed) return false;
  const Bitboard guards =
      outlook.facts.Pawns(outlook.side).pawns & (FileMask(3) | FileMask(4));
  for (const Square head : Each(outlook.facts.CentreRams(outlook.side))) {
    const Bitboard behind = PawnAttacks(outlook.enemy(), Bit(head)) & guards;
    for (const Square guard : Each(behind)) {
      const int lean = FileOf(head) - FileOf(guard);
      if ((FileOf(square) - FileOf(head)) * lean > 0) return true;
    }
  }
  return false;
}

void Shortlist::Offer(const Outlook& outlook, Draft draft, Centipawns value) {
  const Centipawns worth = Discounted(value, draft.moves.size());
  const std::uint64_t order = OrderOf(outlook.side, draft.moves);
  const auto is_better = [worth, order](const Rated& rated) {
    return rated.worth != worth ? rated.worth > worth : rated.order <= order;
  };
  if (rated_.size() == most_ && is_better(rated_.back())) return;
  const bool sound = AreSound(outlook, draft.moves);
  if (!sound && outlook.refused == nullptr) return;
  const std::optional<Centipawns> gain = GainAlone(outlook, draft.moves);
  if (!gain.has_value()) return;
  draft.promise = value - *gain;
  if (!sound) {
    outlook.refused->push_back(std::move(draft));
    return;
  }
  auto place = rated_.begin();
  while (place != rated_.end() && is_better(*place)) ++place;
  rated_.insert(place, Rated{worth, order, std::move(draft)});
  if (rated_.size() > most_) rated_.pop_back();
}

void Shortlist::MoveTo(std::vector<Draft>& drafts) {
  for (Rated& rated : rated_) drafts.push_back(std::move(rated.draft));
  rated_.clear();
}

}  // namespace assay
