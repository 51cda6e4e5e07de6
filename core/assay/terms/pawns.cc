// Doubled, isolated, backward and passed pawns.
#include "assay/facts/claim_makers.h"
#include "assay/facts/levers.h"
#include "assay/terms/sink.h"

namespace assay {
namespace {

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
    const bool undoubles = CanUndouble(own, file, levers);
    Tapered each = weights.doubled_pawns;
    if (isolated) each = each + weights.doubled_isolated;
    if (open) each = each + weights.doubled_open;
    if (undoubles) each = each + weights.doubled_lever;
    sink.Add(
        TermId::kDoubledPawns, side, each * (PopCount(pawns) - 1),
        [&](Details& details) {
          details.Squares(pawns);
          details.Add(DoubledClaim(facts, side, file));
          for (const Square pawn : Each(pawns & own.isolated)) {
            details.Add(SquaresClaim(ClaimKind::kIsolated, side, Bit(pawn)));
          }
          if (open) {
            details.Add(HalfOpenFileClaim(Other(side), file));
          }
          for (const Square pawn : Each(pawns & own.levers)) {
            details.Add(LeverClaim(facts, side, pawn));
          }
          for (const LeverMove& move : levers) {
            if (FileOf(move.from) == file) {
              details.Add(LeverMoveClaim(side, move));
            }
          }
        });
  }
}

// A weak pawn, and whether the opponent's rooks can see it down its file.
template <class Sink>
void AddWeak(const Facts& facts, Side side, TermId term, ClaimKind kind,
             Square pawn, Tapered base, Tapered on_open_file, Sink& sink) {
  const bool open = Contains(facts.HalfOpenFiles(Other(side)), pawn);
  sink.Add(term, side, open ? base + on_open_file : base,
           [&](Details& details) {
             details.Squares(Bit(pawn));
             details.Add(SquaresClaim(kind, side, Bit(pawn)));
             if (open) {
               details.Add(HalfOpenFileClaim(Other(side), FileOf(pawn)));
             }
           });
}

Tapered PassedValue(const Weights& weights, int relative_rank) {
  const Tapered values[] = {weights.passed_rank2, weights.passed_rank3,
                            weights.passed_rank4, weights.passed_rank5,
                            weights.passed_rank6, weights.passed_rank7};
  return values[relative_rank - 1];
}

template <class Sink>
void AddPassed(const Facts& facts, const Weights& weights, Side side,
               Square pawn, Sink& sink) {
  const int rank = RelativeRank(side, pawn);
  const bool is_protected = Contains(facts.Pawns(side).attacks, pawn);
  const Square stop = First(Forward(side, Bit(pawn)));
  const Piece blocker = facts.position().At(stop);
  const bool blockaded = !blocker.empty() && blocker.side() != side &&
                         blocker.kind() != PieceKind::kPawn;
  Tapered value = PassedValue(weights, rank);
  if (is_protected) value = value + weights.passed_protected;
  if (blockaded && rank > 2) {
    value = value + weights.passed_blockaded * (rank - 2);
  }
  sink.Add(TermId::kPassedPawn, side, value, [&](Details& details) {
    details.Squares(Bit(pawn));
    details.Add(SquaresClaim(ClaimKind::kPassed, side, Bit(pawn)));
    if (is_protected) {
      details.Add(SquaresClaim(ClaimKind::kProtectedPassed, side, Bit(pawn)));
    }
    if (blockaded) details.Add(BlockadeClaim(Other(side), stop));
  });
}

}  // namespace

template <class Sink>
void AddPawns(const Facts& facts, const Weights& weights, Sink& sink) {
  for (const Side side : kSides) {
    const PawnFacts& own = facts.Pawns(side);
    AddDoubled(facts, weights, side, sink);
    for (const Square pawn : Each(own.isolated)) {
      AddWeak(facts, side, TermId::kIsolatedPawn, ClaimKind::kIsolated, pawn,
              weights.isolated_pawn, weights.isolated_open, sink);
    }
    for (const Square pawn : Each(own.backward)) {
      AddWeak(facts, side, TermId::kBackwardPawn, ClaimKind::kBackward, pawn,
              weights.backward_pawn, weights.backward_open, sink);
    }
    for (const Square pawn : Each(own.passed)) {
      AddPassed(facts, weights, side, pawn, sink);
    }
  }
}

ASSAY_INSTANTIATE_THEME(AddPawns);

}  // namespace assay
