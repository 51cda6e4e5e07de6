// What takes part of the ledger back: endings that are nearer to a draw than
// the count says. The strongest such reason alone applies, as an entry of the
// side whose surplus it takes back, so that the ledger still adds up.
#include "assay/facts/endings.h"

#include <cstdlib>
#include <optional>

#include "assay/facts/claim_makers.h"
#include "assay/facts/kpk.h"
#include "assay/facts/pieces.h"
#include "assay/facts/textbook_endings.h"
#include "assay/rules/draw.h"
#include "assay/terms/sink.h"

namespace assay {
namespace {

// How much of a surplus is kept, in sixteenths. Opposite-coloured bishops with
// one or two pawns more are drawn about half the time and more (handbooks on
// that ending). With all pawns on one wing the king that defends is always
// near, and a pawn more often does not win, by handbooks of rook endings above
// all; measured, as much is lost of it whatever the piece, and in rook endings
// with pawns on both wings nothing is.
constexpr int kSixteenths = 16;
constexpr int kKeptOppositeBishops = 8;
constexpr int kKeptOneWing = 8;
// Both of the last two reasons at once.
constexpr int kKeptOppositeOneWing = 4;
constexpr int kKeptTooLittle = 1;
// What the textbooks hold for sure: a trace, so that a search still tells the
// better side, or nothing where the other could win as little.
constexpr int kKeptHeld = 1;
// With more pieces than these, or queens beside others, there is always an
// attack to hope for.
constexpr int kFewPieces = 2;

Bitboard PiecesWithoutKings(const Facts& facts, Side side) {
  return facts.position().Pieces(side) & ~facts.Pawns(side).pawns &
         ~facts.Own(side, PieceKind::kKing);
}

// Kings, one bishop each on different colours, and pawns.
bool IsOppositeBishopEnding(const Facts& facts) {
  return HasOppositeBishops(facts) &&
         PopCount(PiecesWithoutKings(facts, Side::kWhite)) == 1 &&
         PopCount(PiecesWithoutKings(facts, Side::kBlack)) == 1;
}

// Kings, one piece of equal value each, and pawns, all on the files a to d or
// e to h, that differ by one at most.
bool IsOneWingEnding(const Facts& facts) {
  int value[2];
  for (const Side side : kSides) {
    const Bitboard pieces = PiecesWithoutKings(facts, side);
    if (PopCount(pieces) != 1) return false;
    value[Index(side)] =
        ExchangeValue(facts.position().At(First(pieces)).kind());
  }
  if (value[0] != value[1]) return false;
  constexpr Bitboard kQueenside =
      FileMask(0) | FileMask(1) | FileMask(2) | FileMask(3);
  const Bitboard white = facts.Pawns(Side::kWhite).pawns;
  const Bitboard black = facts.Pawns(Side::kBlack).pawns;
  const Bitboard pawns = white | black;
  return std::abs(PopCount(white) - PopCount(black)) <= 1 &&
         ((pawns & kQueenside) == 0 || (pawns & ~kQueenside) == 0);
}

// Where the pawns, of one file, would promote.
Square PromotionSquare(const Facts& facts, Side side) {
  const Square pawn = First(facts.Pawns(side).pawns);
  return Relative(side, MakeSquare(FileOf(pawn), 7));
}

// All pawns of the side are rook pawns of one file, and the enemy king stands
// where they would promote, or beside it.
bool HoldsPawnsCorner(const Facts& facts, Side side) {
  const Bitboard pawns = facts.Pawns(side).pawns;
  if (pawns == 0) return false;
  if ((pawns & ~kFileA) != 0 && (pawns & ~kFileH) != 0) return false;
  return KingDistance(facts.position().King(Other(side)),
                      PromotionSquare(facts, side)) <= 1;
}

// Rook pawns of one file cannot win against a bare king that holds their
// corner: exact for one to three of them, worked out backwards from the end.
bool IsHeldByTheCorner(const Facts& facts, Side side) {
  return PiecesWithoutKings(facts, side) == 0 &&
         !HasMany(facts.position().Pieces(Other(side))) &&
         HoldsPawnsCorner(facts, side);
}

// The side has no pawn and not enough more than the other: two knights against
// a bare king, a minor piece more at most, or a queen each and nothing else,
// where only a check that wins at once decides; or only rook pawns whose corner
// is held.
bool HasTooLittle(const Facts& facts, Side side) {
  const Bitboard own = PiecesWithoutKings(facts, side);
  if (IsHeldByTheCorner(facts, side)) return true;
  if (facts.Pawns(side).pawns != 0 || PopCount(own) > kFewPieces) return false;
  if (const Bitboard queens = facts.position().Pieces(PieceKind::kQueen);
      queens != 0) {
    const Bitboard kings = facts.position().Pieces(PieceKind::kKing);
    return queens == (facts.position().Occupied() & ~kings) &&
           PopCount(queens) == 2 && PopCount(own) == 1;
  }
  const auto worth = [&](Side of) {
    int sum = 0;
    for (const Square square : Each(PiecesWithoutKings(facts, of))) {
      sum += ExchangeValue(facts.position().At(square).kind());
    }
    return sum;
  };
  const bool two_knights = own == facts.Own(side, PieceKind::kKnight) &&
                           facts.Pawns(Other(side)).pawns == 0;
  return two_knights ||
         worth(side) - worth(Other(side)) <= ExchangeValue(PieceKind::kBishop);
}

// The bishop's side cannot win where the enemy king reaches the corner first.
bool IsHeldWrongBishop(const Facts& facts, Side side) {
  if (!HasWrongBishop(facts, side)) return false;
  return KingDistance(facts.position().King(Other(side)),
                      PromotionSquare(facts, side)) <= 1;
}

// Takes back all but `kept` sixteenths of the rest.
template <class Sink, class Describe>
void TakeBack(TermId term, int kept, Sink& sink, const Describe& describe) {
  const Centipawns rest = sink.score_cp();
  const Side side = rest > 0 ? Side::kWhite : Side::kBlack;
  const int loss =
      -ScaleRounded(std::abs(rest), kSixteenths - kept, kSixteenths);
  sink.Add(term, side, Tapered{loss, loss},
           [&](Details& details) { describe(details, side); });
}

void AddMaterialClaims(const Facts& facts, Side side, Details& details) {
  for (const PieceKind kind : kAllKinds) {
    if (facts.position().Pieces(kind) != 0 && kind != PieceKind::kKing) {
      details.Add(MaterialClaim(facts, side, kind));
    }
  }
}

}  // namespace

// Says by which textbook rule the table's result holds, where one speaks.
void AddKpkReasons(const Facts& facts, const KpkResult& result,
                   Details& details) {
  const Side side = result.pawn_side;
  const Bitboard pawn = facts.Pawns(side).pawns;
  if (result.won) {
    if (PassesSquareRule(facts, side)) {
      details.Add(SquaresClaim(ClaimKind::kSquareRule, side, pawn));
      details.Add(
          KingDistanceClaim(facts, Other(side), PromotionSquare(facts, side)));
    }
    if (IsOnKeySquare(facts, side)) details.Add(KeySquaresClaim(facts, side));
  } else if (HoldsPawnsCorner(facts, side)) {
    details.Add(
        KingDistanceClaim(facts, Other(side), PromotionSquare(facts, side)));
  }
  // The opposition matters to a king before its pawn, and to who stops it.
  const Side holder = result.won ? side : Other(side);
  if (HasDirectOpposition(facts, holder) &&
      Contains(FrontSpan(side, pawn), facts.position().King(side))) {
    details.Add(OppositionClaim(facts, holder));
  }
}

// King and pawn against king, by the table: a draw takes all back, a win is as
// good as the queen that it will be, less the road to it.
template <class Sink>
void AddExactResult(const Facts& facts, const Weights& weights,
                    const KpkResult& result, Sink& sink) {
  const auto describe = [&](Details& details) {
    details.Squares(facts.position().Occupied());
    details.Add(ExactClaim(facts));
    AddKpkReasons(facts, result, details);
  };
  if (result.won) {
    sink.Add(TermId::kExactResult, result.pawn_side, weights.exact_win,
             describe);
    return;
  }
  const Centipawns rest = sink.score_cp();
  const Side better = rest > 0 ? Side::kWhite : Side::kBlack;
  const int loss = -std::abs(rest);
  sink.Add(TermId::kExactResult, better, Tapered{loss, loss}, describe);
}

template <class Sink>
void AddEndings(const Facts& facts, const Weights& weights, Sink& sink) {
  if (facts.position().Pieces(PieceKind::kPawn) ==
      (facts.position().Occupied() &
       ~facts.position().Pieces(PieceKind::kKing))) {
    const std::optional<KpkResult> exact = LookUpKpk(facts.position());
    if (exact.has_value()) {
      AddExactResult(facts, weights, *exact, sink);
      return;
    }
  }
  for (const Side side : kSides) {
    if (!IsLucena(facts, side)) continue;
    sink.Add(TermId::kLucena, side, weights.lucena, [&](Details& details) {
      details.Squares(facts.position().Occupied());
      details.Add(LucenaClaim(facts, side));
      AddMaterialClaims(facts, side, details);
    });
    return;
  }
  const Centipawns rest = sink.score_cp();
  if (rest == 0) return;
  const Side better = rest > 0 ? Side::kWhite : Side::kBlack;
  const Bitboard all = facts.position().Occupied();
  if (IsInsufficientMaterial(facts.position())) {
    TakeBack(TermId::kDeadPosition, 0, sink, [&](Details& details, Side) {
      details.Squares(all);
      details.Add(InsufficientClaim());
    });
  } else if (IsBlocked(facts)) {
    TakeBack(TermId::kBlockedPosition, 0, sink, [&](Details& details, Side) {
      details.Squares(facts.position().Pieces(PieceKind::kPawn));
      for (const Square pawn : Each(facts.Pawns(Side::kWhite).pawns)) {
        details.Add(RamClaim(Side::kWhite, pawn));
      }
    });
  } else if (IsHeldWrongBishop(facts, better)) {
    TakeBack(TermId::kWrongBishop, 0, sink, [&](Details& details, Side side) {
      const Bitboard pawns = facts.Pawns(side).pawns;
      const Bitboard bishop = facts.Own(side, PieceKind::kBishop);
      details.Squares(pawns | bishop);
      details.Add(SquaresClaim(ClaimKind::kWrongBishop, side, pawns | bishop));
      details.Add(
          KingDistanceClaim(facts, Other(side), PromotionSquare(facts, side)));
    });
  } else if (OftenHoldsQueen(facts, Other(better))) {
    const bool certain = HoldsQueen(facts, Other(better));
    TakeBack(TermId::kHeldQueen, certain ? 0 : kKeptHeld, sink,
             [&](Details& details, Side side) {
               details.Squares(all);
               if (certain) details.Add(QueenHeldClaim(facts, Other(side)));
               details.Add(KingDistanceClaim(
                   facts, side, PromotionSquare(facts, Other(side))));
               AddMaterialClaims(facts, side, details);
             });
  } else if (HasTooLittle(facts, better)) {
    TakeBack(TermId::kTooLittleToWin, kKeptTooLittle, sink,
             [&](Details& details, Side side) {
               details.Squares(PiecesWithoutKings(facts, side) |
                               facts.Pawns(side).pawns);
               AddMaterialClaims(facts, side, details);
               if (facts.Pawns(side).pawns != 0) {
                 details.Add(KingDistanceClaim(facts, Other(side),
                                               PromotionSquare(facts, side)));
               }
             });
  } else if (IsOppositeBishopEnding(facts)) {
    const bool held = BlocksPawnOfOppositeBishop(facts, Other(better));
    const int kept =
        IsOneWingEnding(facts) ? kKeptOppositeOneWing : kKeptOppositeBishops;
    TakeBack(TermId::kOppositeBishops, held ? kKeptHeld : kept, sink,
             [&](Details& details, Side side) {
               const Bitboard own = facts.Own(side, PieceKind::kBishop);
               const Bitboard enemy =
                   facts.Own(Other(side), PieceKind::kBishop);
               details.Squares(own | enemy);
               details.Add(
                   SquaresClaim(ClaimKind::kOppositeBishops, side, own, enemy));
               if (held) details.Add(BishopHeldClaim(facts, Other(side)));
             });
  } else if (IsPhilidor(facts, Other(better)) ||
             IsVancura(facts, Other(better))) {
    TakeBack(TermId::kHeldRookEnding, kKeptHeld, sink,
             [&](Details& details, Side side) {
               details.Squares(all);
               details.Add(IsPhilidor(facts, Other(side))
                               ? PhilidorClaim(facts, Other(side))
                               : VancuraClaim(facts, Other(side)));
               AddMaterialClaims(facts, side, details);
             });
  } else if (IsOneWingEnding(facts)) {
    TakeBack(TermId::kOneWingEnding, kKeptOneWing, sink,
             [&](Details& details, Side side) {
               details.Squares(facts.position().Pieces(PieceKind::kPawn));
               AddMaterialClaims(facts, side, details);
             });
  }
}

ASSAY_INSTANTIATE_THEME(AddEndings);

}  // namespace assay
