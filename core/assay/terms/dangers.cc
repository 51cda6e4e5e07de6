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

// What hangs of one side, with what captures there gain.
struct Hanging {
  struct Item {
    Square square;
    int gain;
  };
  Item items[16];  // a side has no more pieces and pawns
  int count = 0;
  int most = 0;     // the greatest gain
  int at_most = 0;  // how many items have it

  void Add(Square square, int gain) {
    items[count++] = {square, gain};
    if (gain > most) at_most = 0;
    if (gain >= most) ++at_most;
    most = gain > most ? gain : most;
  }
};

// The value of one thing that hangs. On the owner's move the most valuable one
// is mostly saved and the others are not; of several as valuable, each counts
// as saved in its turn.
Tapered ValueOf(const Hanging& hanging, int gain, bool own_move,
                const Weights& weights) {
  if (!own_move) return Scale(weights.hanging, gain, kPawnsWorth);
  if (gain < hanging.most) {
    return Scale(weights.hanging_second, gain, kPawnsWorth);
  }
  const Tapered value =
      weights.hanging_own_move + weights.hanging_second * (hanging.at_most - 1);
  return Scale(value, gain, kPawnsWorth * hanging.at_most);
}

// Adds what hangs or is trapped, and returns the squares of what hangs.
template <class Sink>
Bitboard AddHanging(const Facts& facts, const Weights& weights, Side side,
                    Sink& sink) {
  const Position& position = facts.position();
  const bool own_move = position.side_to_move() == side;
  Hanging hanging;
  if (own_move && facts.InCheck()) return kEmptySet;
  for (const Square square :
       Each(AttackedPieces(facts, side) & ~SafelyGuarded(facts, side))) {
    const int gain = ExchangeValueOf(facts, square);
    if (gain > 0) hanging.Add(square, gain);
    const PieceKind kind = position.At(square).kind();
    if (kind != PieceKind::kPawn && IsTrapped(facts, square, gain)) {
      sink.Add(TermId::kTrapped, side, weights.trapped, [&](Details& details) {
        details.Squares(Bit(square));
        details.Add(SquaresClaim(ClaimKind::kTrapped, side, Bit(square)));
      });
    }
  }
  if (hanging.count == 0) return kEmptySet;
  const Bitboard thin = ThinlyGuarded(facts, side);
  Bitboard squares = kEmptySet;
  for (int i = 0; i < hanging.count; ++i) {
    const auto [square, gain] = hanging.items[i];
    squares |= Bit(square);
    Tapered value = ValueOf(hanging, gain, own_move, weights);
    if (Contains(thin, square)) value = value + weights.thinly_guarded;
    sink.Add(TermId::kHanging, side, value,
             [&, square = square, gain = gain](Details& details) {
               details.Squares(Bit(square));
               details.Add(HangingClaim(side, square, gain));
               details.Add(AttackCountClaim(facts, Other(side), square));
             });
  }
  return squares;
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

// Pieces that an enemy knight or bishop attacks.
template <class Sink>
void AddUnderFire(const Facts& facts, const Weights& weights, Side side,
                  Sink& sink) {
  const Side enemy = Other(side);
  const Bitboard pieces = facts.position().Pieces(side) &
                          ~facts.Pawns(side).pawns &
                          ~facts.Own(side, PieceKind::kKing);
  const Bitboard fire = facts.AttackedBy(enemy, PieceKind::kKnight) |
                        facts.AttackedBy(enemy, PieceKind::kBishop);
  for (const Square square : Each(pieces & fire)) {
    sink.Add(TermId::kUnderFire, side, weights.under_fire,
             [&](Details& details) {
               details.Squares(Bit(square));
               details.Add(AttackCountClaim(facts, enemy, square));
             });
  }
}

// What needs its only guard, in the ending; what hangs is counted as such.
template <class Sink>
void AddThinlyGuarded(const Facts& facts, const Weights& weights, Side side,
                      Bitboard hanging, Sink& sink) {
  if (facts.phase() == kFullPhase) return;
  for (const Square square : Each(ThinlyGuarded(facts, side) & ~hanging)) {
    sink.Add(TermId::kThinlyGuarded, side, weights.thinly_guarded,
             [&](Details& details) {
               details.Squares(Bit(square));
               details.Add(AttackCountClaim(facts, Other(side), square));
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
    AddUnderFire(facts, weights, side, sink);
    AddThinlyGuarded(facts, weights, side, hanging, sink);
    AddPins(facts, weights, side, sink);
    AddEarlyQueen(facts, weights, side, sink);
  }
}

ASSAY_INSTANTIATE_THEME(AddDangers);

}  // namespace assay
