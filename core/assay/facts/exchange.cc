// Three paths, each exact. Most squares are settled without search: nothing
// attacks, or nothing defends. Where no line opens behind a capturing piece
// and nothing is pinned, the order of captures cannot matter beyond their
// values, so the cheapest always takes first. What is left plays the game out
// on bitboards, every capturing piece tried.
#include "assay/facts/exchange.h"

#include <algorithm>

#include "assay/facts/aligned.h"
#include "assay/rules/movegen.h"

namespace assay {
namespace {

// More than any exchange can gain.
constexpr int kEverything = 1 << 20;

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
  // `watched`: squares whose emptying may uncover a check; all of them where
  // that is not known or a king is in check already. `gone`: a square whose
  // piece has left the board.
  Game(const Position& position, Square square, Bitboard watched,
       Square gone = kNoSquare)
      : position_(position),
        square_(square),
        watched_(watched),
        gone_(gone == kNoSquare ? 0 : Bit(gone)),
        start_(position.Occupied() & ~gone_) {}

  // What the enemy of the piece of this value on the square gains at best.
  int Value(Side enemy, int standing) const {
    return Best(enemy, standing, start_, kEverything);
  }

 private:
  // The best that `side` gains by capturing a piece of value `standing`, or by
  // stopping. Cheapest captures are tried first, and none once the gain is
  // `enough`: the other side will not let it come to that.
  int Best(Side side, int standing, Bitboard occupied, int enough) const {
    int best = 0;
    Bitboard attackers =
        position_.Attackers(side, square_, occupied) & occupied & ~Bit(square_);
    for (const PieceKind kind : kAllKinds) {
      const int most = standing + PromotionGain(side, kind, square_);
      if (attackers == 0 || best >= enough || best >= most) break;
      const int risked = ValueAfterCapture(side, kind, square_);
      for (const Square from : Each(attackers & position_.Pieces(kind))) {
        const Bitboard after = occupied ^ Bit(from);
        if (!IsLegalCapture(side, kind, after)) continue;
        // A reply that takes no new queen gains no more than what was risked.
        if (!pawns_promote_ && most - risked >= enough) return most - risked;
        const int reply = Best(Other(side), risked, after, most - best);
        best = std::max(best, most - reply);
        if (best >= enough || best >= most) break;
      }
      attackers &= ~position_.Pieces(kind);
    }
    return best;
  }

  // Whether the side's king is safe after its piece has come from a square to
  // this one. Pieces that left the board or stand here no more are not in
  // `occupied`; what stood on the square before is captured.
  bool IsLegalCapture(Side side, PieceKind kind, Bitboard occupied) const {
    const bool king_moves = kind == PieceKind::kKing;
    const Bitboard changed = (start_ ^ occupied) | Bit(square_);
    if (!king_moves && (changed & watched_) == 0) return true;
    const Square king = king_moves ? square_ : position_.King(side);
    if (Contains(gone_, king)) return true;
    const Bitboard attackers =
        position_.Attackers(Other(side), king, occupied | Bit(square_));
    return (attackers & occupied & ~Bit(square_)) == 0;
  }

  const Position& position_;
  const Square square_;
  const bool pawns_promote_ = RankOf(square_) == 0 || RankOf(square_) == 7;
  const Bitboard watched_;
  const Bitboard gone_;
  const Bitboard start_;
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
  if ((AlignedSliders(position, square) & ~first_attackers) == 0) return false;
  const Bitboard rest = position.Occupied() ^ first_attackers;
  const Bitboard queens = position.Pieces(PieceKind::kQueen);
  const Bitboard behind = (RookAttacks(square, rest) &
                           (position.Pieces(PieceKind::kRook) | queens)) |
                          (BishopAttacks(square, rest) &
                           (position.Pieces(PieceKind::kBishop) | queens));
  return (behind & ~first_attackers) != 0;
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

// The value of a square with its attackers of either side known.
int ValueUnderAttack(const Position& position, Square square,
                     Bitboard all_attackers, const KingShields& shields) {
  const Piece piece = position.At(square);
  const Side enemy = Other(piece.side());
  const int standing = ExchangeValue(piece.kind());
  const bool promotes =
      (RankOf(square) == 0 || RankOf(square) == 7) &&
      (all_attackers & position.Pieces(PieceKind::kPawn)) != 0;
  if (promotes || LinesCanOpen(position, square, all_attackers) ||
      shields.MayFail(all_attackers | Bit(square))) {
    return Game(position, square, shields.watched()).Value(enemy, standing);
  }
  const Bitboard attackers = all_attackers & position.Pieces(enemy);
  const Bitboard defenders = all_attackers & position.Pieces(piece.side());
  if (defenders == 0) return standing;
  if (!HasMany(attackers)) {
    const PieceKind taker = position.At(First(attackers)).kind();
    if (taker == PieceKind::kKing) return 0;
    return std::max(0, standing - ExchangeValue(taker));
  }
  return BestInOrder(standing, SortedValues(position, attackers), 0,
                     SortedValues(position, defenders), 0);
}

bool CanBeTaken(const Position& position, Square square) {
  const Piece piece = position.At(square);
  return !piece.empty() && piece.kind() != PieceKind::kKing;
}

}  // namespace

int ExchangeValueOf(const Position& position, Square square) {
  if (!CanBeTaken(position, square)) return 0;
  const Side owner = position.At(square).side();
  const Bitboard attackers = position.AllAttackers(square, position.Occupied());
  if ((attackers & position.Pieces(Other(owner))) == 0 ||
      BeginsAfterPassInCheck(position, owner)) {
    return 0;
  }
  return ValueUnderAttack(position, square, attackers, KingShields(position));
}

int ExchangeValueOf(const Position& position, Square square,
                    const KingShields& shields) {
  if (!CanBeTaken(position, square)) return 0;
  const Side owner = position.At(square).side();
  if (position.side_to_move() == owner && shields.in_check()) return 0;
  const Bitboard attackers = position.AllAttackers(square, position.Occupied());
  if ((attackers & position.Pieces(Other(owner))) == 0) return 0;
  return ValueUnderAttack(position, square, attackers, shields);
}

int ExchangeValueOf(const Facts& facts, Square square) {
  const Position& position = facts.position();
  if (!CanBeTaken(position, square)) return 0;
  // Most squares are done with by what is known.
  const Side enemy = Other(position.At(square).side());
  if (!Contains(facts.Attacked(enemy), square)) return 0;
  return ExchangeValueOf(position, square, facts.Shields());
}

int MostHanging(const Position& position, Side side) {
  const Bitboard occupied = position.Occupied();
  Bitboard attacked = 0;
  for (const Square square : Each(position.Pieces(Other(side)))) {
    attacked |= AttacksOf(position.At(square), square, occupied);
  }
  attacked &= position.Pieces(side);
  if (attacked == 0) return 0;
  const KingShields shields(position);
  int most = 0;
  for (const Square square : Each(attacked)) {
    most = std::max(most, ExchangeValueOf(position, square, shields));
  }
  return most;
}

int ExchangeValueOnceGone(const Position& position, Square square,
                          Square gone) {
  if (!CanBeTaken(position, square)) return 0;
  const Piece piece = position.At(square);
  return Game(position, square, kAllSquares, gone)
      .Value(Other(piece.side()), ExchangeValue(piece.kind()));
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
