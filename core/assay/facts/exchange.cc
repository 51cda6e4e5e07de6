// Three paths, each exact. Most squares are settled without search: nothing
// attacks, or nothing defends. Where no line opens behind a capturing piece
// and nothing is pinned, the order of captures cannot matter beyond their
// values, so the cheapest always takes first. What is left plays the game out
// on bitboards, every capturing piece tried.
#include "assay/facts/exchange.h"

#include <algorithm>

#include "assay/rules/movegen.h"

namespace assay {
namespace {

// Captured here, a pawn is worth what it has become.
int ValueAfterCapture(Side side, PieceKind kind, Square square) {
  const bool promotes =
      kind == PieceKind::kPawn && RelativeRank(side, square) == 7;
  return ExchangeValue(promotes ? PieceKind::kQueen : kind);
}

// What a side gains besides the captured piece: a pawn that promotes.
int PromotionGain(Side side, PieceKind kind, Square square) {
  return ValueAfterCapture(side, kind, square) - ExchangeValue(kind);
}

// The game on bitboards. `occupied` shrinks as capturing pieces leave their
// squares; the square itself stays occupied.
class Game {
 public:
  Game(const Position& position, Square square)
      : position_(position), square_(square) {}

  // The best that `side` gains by capturing a piece of value `standing`, or by
  // stopping.
  int Best(Side side, int standing, Bitboard occupied) const {
    int best = 0;
    const Bitboard attackers =
        position_.Attackers(side, square_, occupied) & occupied & ~Bit(square_);
    for (const Square from : Each(attackers)) {
      const PieceKind kind = position_.At(from).kind();
      const Bitboard after = occupied ^ Bit(from);
      if (!IsLegalCapture(side, kind, after)) continue;
      const int gain =
          standing + PromotionGain(side, kind, square_) -
          Best(Other(side), ValueAfterCapture(side, kind, square_), after);
      best = std::max(best, gain);
    }
    return best;
  }

 private:
  // Whether the side's king is safe after its piece has come from a square to
  // this one. Pieces that left the board or stand here no more are not in
  // `occupied`; what stood on the square before is captured.
  bool IsLegalCapture(Side side, PieceKind kind, Bitboard occupied) const {
    const Square king =
        kind == PieceKind::kKing ? square_ : position_.King(side);
    const Bitboard attackers =
        position_.Attackers(Other(side), king, occupied | Bit(square_));
    return (attackers & occupied & ~Bit(square_)) == 0;
  }

  const Position& position_;
  const Square square_;
};

// Values of the attackers of a side in rising order, the king last.
struct Values {
  int value[16];
  int size = 0;
};

Values SortedValues(const Position& position, Bitboard attackers) {
  Values sorted;
  for (const PieceKind kind : kAllKinds) {
    for (int n = PopCount(attackers & position.Pieces(kind)); n > 0; --n) {
      sorted.value[sorted.size++] = ExchangeValue(kind);
    }
  }
  return sorted;
}

// Captures by rising value, each side stopping where it does best; a king
// takes only what is defended no more.
int BestInOrder(int standing, const Values& ours, int our_next,
                const Values& theirs, int their_next) {
  if (our_next >= ours.size) return 0;
  const bool is_king = ours.value[our_next] == 0;
  if (is_king && their_next < theirs.size) return 0;
  const int reply =
      BestInOrder(ours.value[our_next], theirs, their_next, ours, our_next + 1);
  return std::max(0, standing - reply);
}

// Whether a slider of either side stands on a line with the square, behind the
// first piece on it: then captures can open lines.
bool LinesCanOpen(const Position& position, Square square,
                  Bitboard first_attackers) {
  const Bitboard rest = position.Occupied() ^ first_attackers;
  const Bitboard queens = position.Pieces(PieceKind::kQueen);
  const Bitboard behind = (RookAttacks(square, rest) &
                           (position.Pieces(PieceKind::kRook) | queens)) |
                          (BishopAttacks(square, rest) &
                           (position.Pieces(PieceKind::kBishop) | queens));
  return (behind & ~first_attackers) != 0;
}

// Whether any king is in check, or could be once the attackers have left their
// squares: then not every capture need be legal.
bool KingsAreInvolved(const Position& position, Square square,
                      Bitboard attackers) {
  const Bitboard staying = position.Occupied() & ~(attackers | Bit(square));
  for (const Side side : kSides) {
    if (position.Attackers(Other(side), position.King(side), staying) != 0) {
      return true;
    }
  }
  return false;
}

bool BeginsAfterPassInCheck(const Position& position, Side owner) {
  return position.side_to_move() == owner && position.InCheck();
}

int ByDefinition(const Position& position, Square square) {
  MoveList moves;
  LegalMoves(position, moves);
  int best = 0;
  for (const Move move : moves) {
    if (move.to() != square || move.type() == Move::Type::kEnPassant ||
        move.type() == Move::Type::kCastling) {
      continue;
    }
    if (move.is_promotion() && move.promotion() != PieceKind::kQueen) continue;
    const int captured = ExchangeValue(position.At(square).kind());
    const int promoted =
        move.is_promotion()
            ? ExchangeValue(PieceKind::kQueen) - ExchangeValue(PieceKind::kPawn)
            : 0;
    const int reply = ByDefinition(position.After(move), square);
    best = std::max(best, captured + promoted - reply);
  }
  return best;
}

}  // namespace

int ExchangeValueOf(const Position& position, Square square) {
  const Piece piece = position.At(square);
  if (piece.empty() || piece.kind() == PieceKind::kKing) return 0;
  const Side owner = piece.side();
  const Side enemy = Other(owner);
  const Bitboard occupied = position.Occupied();
  const Bitboard attackers = position.Attackers(enemy, square, occupied);
  if (attackers == 0 || BeginsAfterPassInCheck(position, owner)) return 0;
  const int standing = ExchangeValue(piece.kind());
  const Bitboard defenders =
      position.Attackers(owner, square, occupied) & ~Bit(square);
  const bool promotion_rank = RankOf(square) == 0 || RankOf(square) == 7;
  if (!promotion_rank &&
      !LinesCanOpen(position, square, attackers | defenders) &&
      !KingsAreInvolved(position, square, attackers | defenders)) {
    return BestInOrder(standing, SortedValues(position, attackers), 0,
                       SortedValues(position, defenders), 0);
  }
  return Game(position, square).Best(enemy, standing, occupied);
}

int ExchangeValueByDefinition(const Position& position, Square square) {
  const Piece piece = position.At(square);
  if (piece.empty() || piece.kind() == PieceKind::kKing) return 0;
  if (position.side_to_move() != piece.side()) {
    return ByDefinition(position, square);
  }
  if (position.InCheck()) return 0;
  return ByDefinition(position.AfterPass(), square);
}

}  // namespace assay
