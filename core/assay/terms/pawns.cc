// Doubled, isolated and backward pawns, and what else is weak or promising in
// a skeleton. What a weak pawn costs depends on what can be done about it: who
// can attack and defend it, who holds the square ahead, whether it can be
// exchanged.
#include "assay/facts/claim_makers.h"
#include "assay/facts/levers.h"
#include "assay/facts/pawn_groups.h"
#include "assay/facts/siege.h"
#include "assay/terms/lead.h"
#include "assay/terms/sink.h"

namespace assay {
namespace {

// Own moves that either side is given to bring a piece up.
constexpr int kSiegeMoves = 1;
constexpr int kMostSurplus = 2;

// By how many the attackers of a pawn outnumber its defenders, 0 to 2.
int BesiegedBy(const Facts& facts, Side side, Square pawn) {
  const Side enemy = Other(side);
  const int attackers = MusterCountInOneMove(facts, enemy, pawn);
  if (attackers == 0) return 0;
  const int defenders = MusterCountInOneMove(facts, side, pawn);
  const int surplus = attackers - defenders;
  return surplus < 0 ? 0 : surplus > kMostSurplus ? kMostSurplus : surplus;
}

// Whether enemy pieces hold the square ahead of a pawn.
bool StopIsHeld(const Facts& facts, Side side, Square stop) {
  const Piece there = facts.position().At(stop);
  if (!there.empty()) {
    return there.side() != side && there.kind() != PieceKind::kPawn;
  }
  if (!Contains(facts.Attacked(Other(side)), stop)) return false;
  return PopCount(facts.Attackers(Other(side), stop)) >
         PopCount(facts.Attackers(side, stop));
}

Claim HeldClaim(const Facts& facts, Side side, Square stop) {
  return facts.position().At(stop).empty()
             ? ControlClaim(facts, Other(side), stop)
             : BlockadeClaim(Other(side), stop);
}

// Whether a pawn of the side on the file captures, or can soon capture, its
// way to another file: then the doubling need not last.
bool CanUndouble(const PawnFacts& own, int file, const LeverMoves& levers) {
  if ((own.levers & FileMask(file)) != 0) return true;
  for (const LeverMove& move : levers) {
    if (FileOf(move.from) == file) return true;
  }
  return false;
}

template <class Sink>
void AddDoubled(const Facts& facts, const Weights& weights, Side side,
                Sink& sink) {
  const PawnFacts& own = facts.Pawns(side);
  if (own.doubled == 0) return;
  const LeverMoves levers = FindLeverMoves(facts, side);
  for (const Square first : Each(FillFiles(own.doubled) & RankMask(0))) {
    const int file = FileOf(first);
    const Bitboard pawns = own.pawns & FileMask(file);
    const bool isolated = (pawns & own.isolated) != 0;
    const bool open = (facts.HalfOpenFiles(Other(side)) & pawns) != 0;
    Tapered each = weights.doubled_pawns;
    if (isolated) each = each + weights.doubled_isolated;
    if (open) each = each + weights.doubled_open;
    if (CanUndouble(own, file, levers)) each = each + weights.doubled_lever;
    const Square front = side == Side::kWhite ? Last(pawns) : First(pawns);
    const bool unguarded = !Contains(own.attacks, front);
    const int besieged = unguarded ? BesiegedBy(facts, side, front) : 0;
    sink.Add(
        TermId::kDoubledPawns, side,
        each * (PopCount(pawns) - 1) + weights.weak_pawn_besieged * besieged,
        [&](Details& details) {
          details.Squares(pawns);
          details.Add(DoubledClaim(facts, side, file));
          for (const Square pawn : Each(pawns & own.isolated)) {
            details.Add(SquaresClaim(ClaimKind::kIsolated, side, Bit(pawn)));
          }
          if (open) details.Add(HalfOpenFileClaim(Other(side), file));
          for (const Square pawn : Each(pawns & own.levers)) {
            details.Add(LeverClaim(facts, side, pawn));
          }
          for (const LeverMove& move : levers) {
            if (FileOf(move.from) == file) {
              details.Add(LeverMoveClaim(side, move));
            }
          }
          if (besieged > 0) {
            details.Add(
                SiegeCountClaim(facts, Other(side), front, kSiegeMoves));
          }
        });
  }
}

// An isolated or backward pawn.
template <class Sink>
void AddWeak(const Facts& facts, const Weights& weights, Side side,
             ClaimKind kind, Square pawn, Sink& sink) {
  const bool isolated = kind == ClaimKind::kIsolated;
  const bool open = Contains(facts.HalfOpenFiles(Other(side)), pawn);
  const Square stop = First(Forward(side, Bit(pawn)));
  const bool held = StopIsHeld(facts, side, stop);
  const int besieged = BesiegedBy(facts, side, pawn);
  Tapered value = isolated ? weights.isolated_pawn : weights.backward_pawn;
  if (open) {
    value = value + (isolated ? weights.isolated_open : weights.backward_open);
  }
  if (held) value = value + weights.weak_pawn_held;
  value = value + weights.weak_pawn_besieged * besieged;
  sink.Add(
      isolated ? TermId::kIsolatedPawn : TermId::kBackwardPawn, side, value,
      [&](Details& details) {
        details.Squares(Bit(pawn));
        details.Add(SquaresClaim(kind, side, Bit(pawn)));
        if (open) {
          details.Add(HalfOpenFileClaim(Other(side), FileOf(pawn)));
        }
        if (held) details.Add(HeldClaim(facts, side, stop));
        if (besieged > 0) {
          details.Add(SiegeCountClaim(facts, Other(side), pawn, kSiegeMoves));
        }
      });
}

template <class Sink>
void AddHangingPair(const Facts& facts, const Weights& weights, Side side,
                    Sink& sink) {
  const Bitboard pair = HangingPair(facts, side);
  if (pair == 0) return;
  sink.Add(TermId::kHangingPawns, side, weights.hanging_pawns,
           [&](Details& details) {
             details.Squares(pair);
             details.Add(SquaresClaim(ClaimKind::kHangingPair, side, pair));
           });
}

// Bases that an enemy pawn break attacks, on files that are half-open for the
// enemy: elsewhere the results see no harm in it, and plans speak of it.
template <class Sink>
void AddChainBases(const Facts& facts, const Weights& weights, Side side,
                   Sink& sink) {
  // Only an enemy pawn that could attack the base some day is worth asking.
  const Bitboard bases = facts.Pawns(side).chain_bases &
                         facts.Pawns(Other(side)).attack_span &
                         facts.HalfOpenFiles(Other(side));
  if (bases == 0) return;
  const LeverMoves enemy_levers = FindLeverMoves(facts, Other(side), bases);
  Bitboard hit = 0;
  for (const LeverMove& move : enemy_levers) hit |= move.targets & bases;
  for (const Square base : Each(hit)) {
    sink.Add(TermId::kChainBase, side, weights.chain_base_hit,
             [&](Details& details) {
               details.Squares(Bit(base));
               details.Add(ChainBaseClaim(facts, side, base));
               details.Add(HalfOpenFileClaim(Other(side), FileOf(base)));
               for (const LeverMove& move : enemy_levers) {
                 if (Contains(move.targets, base)) {
                   details.Add(LeverMoveClaim(Other(side), move));
                 }
               }
             });
  }
}

// One entry for the side with more islands.
template <class Sink>
void AddIslands(const Facts& facts, const Weights& weights, Sink& sink) {
  const Lead lead(facts.Pawns(Side::kWhite).islands -
                  facts.Pawns(Side::kBlack).islands);
  if (lead.by == 0) return;
  sink.Add(TermId::kPawnIslands, lead.side, weights.pawn_island * lead.by,
           [&](Details& details) {
             details.Squares(facts.Pawns(lead.side).pawns);
             details.Add(IslandsClaim(facts, lead.side));
           });
}

// Pawns on the third rank that a pawn of the second guards.
template <class Sink>
void AddLinks(const Facts& facts, const Weights& weights, Side side,
              Sink& sink) {
  const Bitboard pawns = facts.Pawns(side).pawns;
  const Bitboard bases = pawns & RelativeRankMask(side, 1);
  for (const Square pawn : Each(pawns & PawnAttacks(side, bases))) {
    sink.Add(TermId::kPawnLink, side, weights.pawn_link, [&](Details& details) {
      details.Squares(Bit(pawn));
      for (const Square base :
           Each(bases & PawnAttacks(Other(side), Bit(pawn)))) {
        details.Add(ChainBaseClaim(facts, side, base));
      }
    });
  }
}

// One entry for the side whose pawns have gone further.
template <class Sink>
void AddAdvance(const Facts& facts, const Weights& weights, Sink& sink) {
  const Lead lead(facts.Pawns(Side::kWhite).advance -
                  facts.Pawns(Side::kBlack).advance);
  if (lead.by == 0) return;
  sink.Add(TermId::kAdvancedPawns, lead.side, weights.advanced_pawn * lead.by,
           [&](Details& details) {
             const Claim claim = PawnAdvanceClaim(facts, lead.side);
             details.Squares(claim.squares.ToSet());
             details.Add(claim);
           });
}

// Holes on files c to f, without an own pawn on them, that an enemy minor piece
// stands on or attacks, and holes on any file with an enemy piece on them. A
// minor piece on its outpost is counted as such. A side without pawns has none
// to speak of: every square is one.
template <class Sink>
void AddHoles(const Facts& facts, const Weights& weights, Side side,
              Sink& sink) {
  if (facts.Pawns(side).pawns == 0) return;
  const Side enemy = Other(side);
  const Bitboard minors = facts.Own(enemy, PieceKind::kKnight) |
                          facts.Own(enemy, PieceKind::kBishop);
  const Bitboard used = minors | facts.AttackedBy(enemy, PieceKind::kKnight) |
                        facts.AttackedBy(enemy, PieceKind::kBishop);
  const Bitboard holes = facts.Pawns(side).holes & ~facts.Pawns(side).pawns &
                         ~(facts.Pawns(enemy).outposts & minors);
  const Bitboard in_use = holes & Facts::kCentreFiles & used;
  const Bitboard settled = holes & facts.position().Pieces(enemy) &
                           ~facts.Pawns(enemy).pawns &
                           ~facts.Own(enemy, PieceKind::kKing);
  for (const Square hole : Each(in_use | settled)) {
    Tapered value;
    if (Contains(in_use, hole)) value = value + weights.hole;
    if (Contains(settled, hole)) value = value + weights.hole_occupied;
    sink.Add(TermId::kHole, side, value, [&](Details& details) {
      details.Squares(Bit(hole));
      details.Add(SquaresClaim(ClaimKind::kHole, side, Bit(hole)));
      if (facts.position().At(hole).empty()) {
        details.Add(ControlClaim(facts, enemy, hole));
      }
    });
  }
}

}  // namespace

template <class Sink>
void AddPawns(const Facts& facts, const Weights& weights, Sink& sink) {
  for (const Side side : kSides) {
    const PawnFacts& own = facts.Pawns(side);
    AddDoubled(facts, weights, side, sink);
    for (const Square pawn : Each(own.isolated)) {
      AddWeak(facts, weights, side, ClaimKind::kIsolated, pawn, sink);
    }
    for (const Square pawn : Each(own.backward)) {
      AddWeak(facts, weights, side, ClaimKind::kBackward, pawn, sink);
    }
    AddHangingPair(facts, weights, side, sink);
    AddChainBases(facts, weights, side, sink);
    AddLinks(facts, weights, side, sink);
    AddHoles(facts, weights, side, sink);
  }
  AddIslands(facts, weights, sink);
  AddAdvance(facts, weights, sink);
}

ASSAY_INSTANTIATE_THEME(AddPawns);

}  // namespace assay
