#include "assay/notation/san_quick.h"

#include "assay/rules/attacks.h"

namespace assay {
namespace {

PieceKind OfficerFromLetter(char letter) {
  switch (letter) {
    case 'N':
      return PieceKind::kKnight;
    case 'B':
      return PieceKind::kBishop;
    case 'R':
      return PieceKind::kRook;
    case 'Q':
      return PieceKind::kQueen;
    case 'K':
      return PieceKind::kKing;
    default:
      return PieceKind::kNone;
  }
}

bool IsFile(char c) { return c >= 'a' && c <= 'h'; }
bool IsRank(char c) { return c >= '1' && c <= '8'; }

// The mover's king is not attacked once the piece has moved.
bool LeavesKingSafe(const Position& position, Square from, Square to,
                    Bitboard captured) {
  const Side us = position.side_to_move();
  const Bitboard occupied =
      (position.Occupied() & ~Bit(from) & ~captured) | Bit(to);
  const Square king = position.King(us) == from ? to : position.King(us);
  return (position.Attackers(Other(us), king, occupied) & ~captured &
          ~Bit(to)) == 0;
}

Move PawnMove(const Position& position, std::string_view text,
              PieceKind promotion) {
  const Side us = position.side_to_move();
  const int up = us == Side::kWhite ? 8 : -8;
  const bool capture = text.size() == 4 && IsFile(text[0]) && text[1] == 'x';
  if (!capture && text.size() != 2) return Move();
  const Square to = ParseSquare(text.substr(text.size() - 2));
  if (to == kNoSquare || RelativeRank(us, to) < 2) return Move();
  if ((RelativeRank(us, to) == 7) != (promotion != PieceKind::kNone)) {
    return Move();
  }
  auto from = static_cast<Square>(to - up);
  Bitboard captured = 0;
  Move::Type type = Move::Type::kNormal;
  const Piece pawn(us, PieceKind::kPawn);
  if (capture) {
    from = MakeSquare(text[0] - 'a', RankOf(from));
    if ((PawnAttacks(us, from) & Bit(to)) == 0) return Move();
    captured = position.Pieces(Other(us)) & Bit(to);
    if (captured == 0) {
      if (to != position.en_passant()) return Move();
      captured = Bit(static_cast<Square>(to - up));
      type = Move::Type::kEnPassant;
    }
  } else {
    if (!position.At(to).empty()) return Move();
    if (position.At(from).empty() && RelativeRank(us, to) == 3) {
      from = static_cast<Square>(from - up);
    }
  }
  if (position.At(from) != pawn ||
      !LeavesKingSafe(position, from, to, captured)) {
    return Move();
  }
  return promotion == PieceKind::kNone ? Move(from, to, type)
                                       : Move::Promotion(from, to, promotion);
}

// The text is what follows the piece's letter.
Move OfficerMove(const Position& position, PieceKind kind,
                 std::string_view text) {
  const Side us = position.side_to_move();
  if (text.size() < 2) return Move();
  const Square to = ParseSquare(text.substr(text.size() - 2));
  text.remove_suffix(2);
  if (to == kNoSquare || (position.Pieces(us) & Bit(to)) != 0) return Move();
  const Bitboard captured = position.Pieces(Other(us)) & Bit(to);
  if (!text.empty() && text.back() == 'x') text.remove_suffix(1);
  Bitboard movers =
      position.Pieces(us, kind) & PieceAttacks(kind, to, position.Occupied());
  if (!text.empty() && IsFile(text.front())) {
    movers &= FileMask(text.front() - 'a');
    text.remove_prefix(1);
  }
  if (!text.empty() && IsRank(text.front())) {
    movers &= RankMask(text.front() - '1');
    text.remove_prefix(1);
  }
  if (!text.empty()) return Move();
  Move found;
  for (const Square from : Each(movers)) {
    if (!LeavesKingSafe(position, from, to, captured)) continue;
    if (!found.is_null()) return Move();
    found = Move(from, to);
  }
  return found;
}

}  // namespace

Move QuickSan(const Position& position, std::string_view text) {
  if (!text.empty() && (text.back() == '+' || text.back() == '#')) {
    text.remove_suffix(1);
  }
  if (text.size() < 2 || text.size() > 6) return Move();
  const PieceKind kind = OfficerFromLetter(text[0]);
  if (kind != PieceKind::kNone) {
    return OfficerMove(position, kind, text.substr(1));
  }
  PieceKind promotion = PieceKind::kNone;
  if (text[text.size() - 2] == '=') {
    promotion = OfficerFromLetter(text.back());
    if (promotion == PieceKind::kNone || promotion == PieceKind::kKing) {
      return Move();
    }
    text.remove_suffix(2);
  }
  return PawnMove(position, text, promotion);
}

}  // namespace assay
