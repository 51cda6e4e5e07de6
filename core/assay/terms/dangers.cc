// What can be taken, pinned, shut in or chased. A static evaluation cannot see
// the reply, so these weigh a part of what is at stake: about a quarter where
// the opponent is to move, little where the owner is.
#include "assay/facts/claim_makers.h"
#include "assay/facts/danger.h"
#include "assay/facts/exchange.h"
#include "assay/terms/sink.h"

namespace assay {
namespace {

constexpr int kPawnsWorth = 100;

// Adds what hangs or is trapped, and returns the squares of what hangs.
template <class Sink>
Bitboard AddHanging(const Facts& facts, const Weights& weights, Side side,
                    Sink& sink) {
  const Position& position = facts.position();
  const bool own_move = position.side_to_move() == side;
  Bitboard hanging = 0;
  if (own_move && facts.InCheck()) return hanging;
  for (const Square square :
       Each(AttackedPieces(facts, side) & ~SafelyGuarded(facts, side))) {
    const int gain = ExchangeValueOf(facts, square);
    if (gain > 0) {
      hanging |= Bit(square);
      sink.Add(TermId::kHanging, side,
               Scale(own_move ? weights.hanging_own_move : weights.hanging,
                     gain, kPawnsWorth),
               [&](Details& details) {
                 details.Squares(Bit(square));
                 details.Add(HangingClaim(side, square, gain));
                 details.Add(AttackCountClaim(facts, Other(side), square));
               });
    }
    const PieceKind kind = position.At(square).kind();
    if (kind != PieceKind::kPawn && IsTrapped(facts, square, gain)) {
      sink.Add(TermId::kTrapped, side, weights.trapped, [&](Details& details) {
        details.Squares(Bit(square));
        details.Add(SquaresClaim(ClaimKind::kTrapped, side, Bit(square)));
      });
    }
  }
  return hanging;
}

// Loose pieces worth a thought: a rook on its first two ranks is seldom in
// anybody's way.
Bitboard ExposedLoosePieces(const Facts& facts, Side side) {
  const Bitboard home = RelativeRankMask(side, 0) | RelativeRankMask(side, 1);
  return LoosePieces(facts, side) & ~(facts.Own(side, PieceKind::kRook) & home);
}

template <class Sink>
void AddPins(const Facts& facts, const Weights& weights, Side side,
             Sink& sink) {
  for (const Square pinned : Each(facts.Pinned(side))) {
    sink.Add(TermId::kPinned, side, weights.pinned, [&](Details& details) {
      details.Squares(Bit(pinned));
      for (const Pin& pin : FindPins(facts.position(), side)) {
        if (pin.pinned == pinned) details.Add(PinnedClaim(side, pin));
      }
    });
  }
}

template <class Sink>
void AddEarlyQueen(const Facts& facts, const Weights& weights, Side side,
                   Sink& sink) {
  for (const Square queen : Each(facts.Own(side, PieceKind::kQueen))) {
    const int chasers = EarlyQueenChasers(facts, side, queen);
    if (chasers <= 0) continue;
    sink.Add(TermId::kEarlyQueen, side, weights.early_queen * chasers,
             [&](Details& details) {
               details.Squares(Bit(queen));
               details.Add(EarlyQueenClaim(side, queen, chasers));
             });
  }
}

}  // namespace

template <class Sink>
void AddDangers(const Facts& facts, const Weights& weights, Sink& sink) {
  for (const Side side : kSides) {
    const Bitboard hanging = AddHanging(facts, weights, side, sink);
    for (const Square square :
         Each(ExposedLoosePieces(facts, side) & ~hanging)) {
      sink.Add(
          TermId::kLoosePiece, side, weights.loose_piece,
          [&](Details& details) {
            details.Squares(Bit(square));
            details.Add(SquaresClaim(ClaimKind::kLoose, side, Bit(square)));
          });
    }
    AddPins(facts, weights, side, sink);
    AddEarlyQueen(facts, weights, side, sink);
  }
}

ASSAY_INSTANTIATE_THEME(AddDangers);

}  // namespace assay
