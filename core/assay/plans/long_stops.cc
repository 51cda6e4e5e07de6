#include "assay/plans/long_stops.h"

#include <array>
#include <tuple>

#include "assay/facts/exchange.h"
#include "assay/plans/stops.h"
#include "assay/rules/movegen.h"

namespace assay {
namespace {

struct Stop {
  Move first;
  Move second;
  Centipawns score = 0;  // for the plan's side; the less the better
};

class StopSearch {
 public:
  StopSearch(const Outlook& outlook, const Plan& plan, const Position& here,
             std::size_t lead)
      : outlook_(outlook),
        here_(here),
        step_(plan.moves[lead]),
        rest_(plan.moves.begin() + static_cast<std::ptrdiff_t>(lead) + 1,
              plan.moves.end()) {
    // The losses of what is still to come once the step between is made.
    std::vector<Move> from_here(rest_);
    from_here.insert(from_here.begin(), step_);
    const std::vector<Centipawns> all = LossesOf(here, plan.side, from_here);
    before_.assign(all.begin() + (all.empty() ? 0 : 1), all.end());
    for (const Move move : rest_) {
      wanted_squares_ |= Bit(move.to()) | Between(move.from(), move.to());
    }
    const Bitboard occupied = here.Occupied();
    for (const Square square : Each(wanted_squares_)) {
      for (int kind = 0; kind < kPieceKinds; ++kind) {
        // From where a man of the other side attacks the square: as one of this
        // side would from there.
        const Piece piece(plan.side, static_cast<PieceKind>(kind));
        wanted_[kind] |= AttacksOf(piece, square, occupied);
      }
    }
    for (Bitboard& wanted : wanted_) wanted |= wanted_squares_;
  }

  Stop Best() {
    MoveList moves;
    LegalMoves(here_, moves);
    for (const Move move : moves) {
      if (!IsQuiet(here_, move) || !MayServe(move)) continue;
      const Position after = here_.After(move);
      if (after.InCheck() || !IsLegal(after, step_)) continue;
      // Lost where it goes, it comes no further, whatever hangs besides.
      if (ExchangeValueOf(after, move.to()) > 0) continue;
      const Position mid = after.After(step_);
      if (mid.InCheck()) continue;
      Continue(mid, move);
    }
    return best_;
  }

 private:
  static bool IsQuiet(const Position& position, Move move) {
    return position.At(move.to()).empty() &&
           move.type() == Move::Type::kNormal && !move.is_promotion();
  }

  Bitboard Wanted(PieceKind kind) const {
    return wanted_[static_cast<std::size_t>(kind)];
  }

  // Whether what moves there could be of use after one move more.
  bool MayServe(Move move) const {
    const PieceKind kind = here_.At(move.from()).kind();
    if (kind == PieceKind::kKing) return false;
    if (kind == PieceKind::kPawn) {
      const Bitboard ahead = Forward(outlook_.enemy(), Bit(move.to()));
      return (ahead & Wanted(kind)) != 0;
    }
    const Bitboard occupied =
        (here_.Occupied() & ~Bit(move.from())) | Bit(move.to());
    return (PieceAttacks(kind, move.to(), occupied) & Wanted(kind)) != 0;
  }

  void Continue(const Position& mid, Move first) {
    const PieceKind kind = here_.At(first.from()).kind();
    MoveList moves;
    LegalMoves(mid, moves);
    for (const Move second : moves) {
      if (second.from() != first.to() || !IsQuiet(mid, second)) continue;
      if (!Contains(Wanted(kind), second.to())) continue;
      const Position after = mid.After(second);
      if (after.InCheck()) continue;
      if (FailsAt(after, outlook_.side, rest_, before_) == kNoSquare) continue;
      const Stop stop{first, second, outlook_.Score(after)};
      if (!best_.first.is_null() && Order(best_) < Order(stop)) continue;
      if (CostOf(here_, first) >= kLosingStep) continue;
      if (CostOf(mid, second) >= kLosingStep) continue;
      if (HasSecondWay(after, outlook_.side, rest_)) continue;
      best_ = stop;
    }
  }

  std::tuple<Centipawns, Square, Square, Square> Order(const Stop& stop) const {
    const Side side = outlook_.enemy();
    return {stop.score, Relative(side, stop.first.from()),
            Relative(side, stop.first.to()), Relative(side, stop.second.to())};
  }

  const Outlook& outlook_;
  const Position& here_;
  Move step_;
  std::vector<Move> rest_;
  std::vector<Centipawns> before_;
  Bitboard wanted_squares_ = 0;
  std::array<Bitboard, kPieceKinds> wanted_ = {};
  Stop best_;
};

}  // namespace

void FindLongStop(const Outlook& outlook, Plan& plan) {
  if (plan.standing != Standing::kInTime || !plan.counter.empty()) return;
  if (!YieldsToQuietMoves(plan.kind)) return;
  const bool to_move = outlook.position.side_to_move() == outlook.side;
  const std::size_t lead = to_move ? 1 : 0;
  if (plan.moves.size() < lead + 2) return;
  Position here = outlook.position;
  if (to_move) here = here.After(plan.moves.front());
  if (here.InCheck()) return;
  const auto mid = PlayAlone(here, plan.side, {plan.moves[lead]});
  if (!mid.has_value() || mid->InCheck()) return;
  const Stop stop = StopSearch(outlook, plan, here, lead).Best();
  if (stop.first.is_null()) return;
  const Centipawns now = outlook.Score(mid->AfterPass());
  if ((stop.score - now) * 100 > plan.gain * kPricePercent) return;
  plan.counter = {stop.first, stop.second};
  plan.counter_from = lead;
  plan.standing = Standing::kStopped;
}

}  // namespace assay
