// Whole-board set operations; only candidates need a look at each pawn.
#include "assay/facts/pawns.h"

namespace assay {
namespace {

constexpr Bitboard kInnerFiles = ~(kFileA | kFileH);

constexpr Bitboard RelativeRanks(Side side, int first, int last) {
  Bitboard set = 0;
  for (int rank = first; rank <= last; ++rank) {
    set |= RelativeRankMask(side, rank);
  }
  return set;
}

void FindSpans(Side side, Bitboard pawns, PawnFacts& facts) {
  const Bitboard ahead = Forward(side, pawns);
  facts.pawns = pawns;
  facts.attacks = East(ahead) | West(ahead);
  facts.attacked_twice = East(ahead) & West(ahead);
  facts.front_span = FrontSpan(side, pawns);
  facts.attack_span = Neighbours(facts.front_span);
  facts.files = FillFiles(pawns);
}

// Half-free pawns with at least as many helpers as sentries.
Bitboard FindCandidates(Side side, const PawnFacts& own,
                        const PawnFacts& enemy) {
  const Bitboard half_free =
      own.pawns & ~own.passed & ~RearSpan(side, own.pawns) & ~enemy.front_span;
  Bitboard candidates = 0;
  for (const Square square : Each(half_free)) {
    const Bitboard ahead = FrontSpan(side, Bit(square));
    const Bitboard sentries = Neighbours(ahead) & enemy.pawns;
    const Bitboard helpers =
        Neighbours(FillForward(Other(side), Bit(square))) & own.pawns;
    if (helpers != 0 && PopCount(helpers) >= PopCount(sentries)) {
      candidates |= Bit(square);
    }
  }
  return candidates;
}

void FindWeaknesses(Side side, PawnFacts& own, const PawnFacts& enemy) {
  const Bitboard stop_squares = Forward(side, own.pawns);
  own.doubled = own.pawns & (own.front_span | RearSpan(side, own.pawns));
  own.isolated = own.pawns & ~Neighbours(own.files);
  const Bitboard supported = Neighbours(FillForward(side, own.pawns));
  const Bitboard stops_attacked =
      Forward(Other(side), stop_squares & enemy.attacks);
  own.backward = own.pawns & ~own.isolated & ~supported & stops_attacked;
  own.passed = own.pawns & ~enemy.front_span & ~enemy.attack_span &
               ~RearSpan(side, own.pawns);
  own.candidates = FindCandidates(side, own, enemy);
  own.rammed = Forward(Other(side), stop_squares & enemy.pawns);
  own.levers = own.pawns & enemy.attacks;
  own.chain_bases =
      own.pawns & PawnAttacks(Other(side), own.pawns) & ~own.attacks;
  own.holes = RelativeRanks(side, 2, 4) & kInnerFiles & ~own.attack_span;
  own.outposts = RelativeRanks(side, 3, 5) & own.attacks & ~enemy.attack_span;
  const unsigned files = FileBits(own.files);
  for (int rank = 3; rank < 7; ++rank) {
    own.advance += PopCount(own.pawns & RelativeRanks(side, rank, 6));
  }
  own.islands = PopCount(files & ~(files << 1));
}

}  // namespace

void FindPawnFacts(const Position& position, PawnFacts (&facts)[2]) {
  for (const Side side : kSides) {
    FindSpans(side, position.Pieces(side, PieceKind::kPawn),
              facts[Index(side)]);
  }
  for (const Side side : kSides) {
    FindWeaknesses(side, facts[Index(side)], facts[Index(Other(side))]);
  }
}

}  // namespace assay
