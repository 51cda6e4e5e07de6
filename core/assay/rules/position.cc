// Placement, hash and rights are kept together by Put() and Remove(); a move
// is a few of those. An en passant square is kept only where the capture is
// legal, so that equal positions have equal hashes.
#include "assay/rules/position.h"

#include "assay/rules/hash.h"

namespace assay {
namespace {

// The rights that survive when a piece leaves or reaches a square.
struct RightsKept {
  std::uint8_t kept[kSquares];
};

constexpr RightsKept MakeRightsKept() {
  RightsKept table{};
  for (auto& kept : table.kept) kept = 15;
  for (const Side side : kSides) {
    unsigned king = 15;
    for (const Wing wing : kWings) {
      const unsigned mask = CastlingRights::Mask(side, wing);
      table.kept[CastlingRook(side, wing)] =
          static_cast<std::uint8_t>(15U & ~mask);
      king &= ~mask;
    }
    table.kept[Relative(side, kE1)] = static_cast<std::uint8_t>(king);
  }
  return table;
}

constexpr RightsKept kRightsKept = MakeRightsKept();

constexpr std::uint64_t Key(Piece piece, Square square) {
  return kHashKeys.piece[Index(piece.side())][Index(piece.kind())][square];
}

// The square of the pawn that an en passant capture takes.
constexpr Square CapturedPawn(Square en_passant) {
  return static_cast<Square>(en_passant ^ 8);
}

struct RookMove {
  Square from;
  Square to;
};

RookMove CastlingRookMove(Side side, Square king_to) {
  const Wing wing = FileOf(king_to) == 6 ? Wing::kKingside : Wing::kQueenside;
  return {CastlingRook(side, wing), CastledRook(side, wing)};
}

}  // namespace

void Position::Put(Square square, Piece piece) {
  board_[square] = piece;
  sides_[Index(piece.side())] |= Bit(square);
  kinds_[Index(piece.kind())] |= Bit(square);
  hash_ ^= Key(piece, square);
}

void Position::Remove(Square square) {
  const Piece piece = board_[square];
  board_[square] = Piece();
  sides_[Index(piece.side())] ^= Bit(square);
  kinds_[Index(piece.kind())] ^= Bit(square);
  hash_ ^= Key(piece, square);
}

void Position::Shift(Square from, Square to) {
  const Piece piece = board_[from];
  const Bitboard both = Bit(from) | Bit(to);
  board_[from] = Piece();
  board_[to] = piece;
  sides_[Index(piece.side())] ^= both;
  kinds_[Index(piece.kind())] ^= both;
  hash_ ^= Key(piece, from) ^ Key(piece, to);
}

Position Position::Unchecked(const ParsedPosition& parsed) {
  EnsureAttackTables();
  Position position;
  for (int s = 0; s < kSquares; ++s) {
    const auto square = static_cast<Square>(s);
    if (!parsed.board[square].empty())
      position.Put(square, parsed.board[square]);
  }
  position.side_to_move_ = parsed.side_to_move;
  position.castling_ = parsed.castling;
  position.hash_ ^= kHashKeys.castling[parsed.castling.bits()];
  if (parsed.side_to_move == Side::kBlack) {
    position.hash_ ^= kHashKeys.black_to_move;
  }
  position.halfmove_clock_ = static_cast<std::uint16_t>(parsed.halfmove_clock);
  position.fullmove_number_ =
      static_cast<std::uint16_t>(parsed.fullmove_number);
  if (parsed.en_passant != kNoSquare) {
    position.SetEnPassantIfLegal(parsed.en_passant);
  }
  return position;
}

Position Position::Initial() {
  ParsedPosition parsed;
  constexpr PieceKind kBackRank[8] = {PieceKind::kRook,   PieceKind::kKnight,
                                      PieceKind::kBishop, PieceKind::kQueen,
                                      PieceKind::kKing,   PieceKind::kBishop,
                                      PieceKind::kKnight, PieceKind::kRook};
  for (const Side side : kSides) {
    for (int file = 0; file < 8; ++file) {
      parsed.board[Relative(side, MakeSquare(file, 0))] =
          Piece(side, kBackRank[file]);
      parsed.board[Relative(side, MakeSquare(file, 1))] =
          Piece(side, PieceKind::kPawn);
    }
    for (const Wing wing : kWings) parsed.castling.Add(side, wing);
  }
  return Unchecked(parsed);
}

std::uint64_t Position::HashFromScratch() const {
  std::uint64_t hash = kHashKeys.castling[castling_.bits()];
  for (const Square square : Each(Occupied())) {
    hash ^= Key(board_[square], square);
  }
  if (side_to_move_ == Side::kBlack) hash ^= kHashKeys.black_to_move;
  if (en_passant_ != kNoSquare) {
    hash ^= kHashKeys.en_passant_file[FileOf(en_passant_)];
  }
  return hash;
}

bool Position::EnPassantIsLegal(Square square) const {
  const Side us = side_to_move_;
  const Side them = Other(us);
  const Square captured = CapturedPawn(square);
  const Square king = King(us);
  for (const Square from :
       Each(PawnAttacks(them, square) & Pieces(us, PieceKind::kPawn))) {
    const Bitboard occupied =
        (Occupied() ^ Bit(from) ^ Bit(captured)) | Bit(square);
    if ((Attackers(them, king, occupied) & ~Bit(captured)) == 0) return true;
  }
  return false;
}

void Position::SetEnPassantIfLegal(Square square) {
  if (!EnPassantIsLegal(square)) return;
  en_passant_ = square;
  hash_ ^= kHashKeys.en_passant_file[FileOf(square)];
}

void Position::CountMove(Side mover) {
  if (mover == Side::kBlack && fullmove_number_ < kMostCounter) {
    ++fullmove_number_;
  }
}

void Position::Play(Move move) {
  const Side us = side_to_move_;
  const Square from = move.from();
  const Square to = move.to();
  const Piece mover = board_[from];
  const bool is_pawn = mover.kind() == PieceKind::kPawn;
  if (en_passant_ != kNoSquare) {
    hash_ ^= kHashKeys.en_passant_file[FileOf(en_passant_)];
    en_passant_ = kNoSquare;
  }
  if (halfmove_clock_ < kMostCounter) ++halfmove_clock_;
  if (!board_[to].empty()) {
    Remove(to);
    halfmove_clock_ = 0;
  }
  if (move.is_promotion()) {
    Remove(from);
    Put(to, Piece(us, move.promotion()));
  } else {
    Shift(from, to);
    if (move.type() == Move::Type::kEnPassant) {
      Remove(CapturedPawn(to));
    } else if (move.type() == Move::Type::kCastling) {
      const RookMove rook = CastlingRookMove(us, to);
      Shift(rook.from, rook.to);
    }
  }
  const auto kept =
      static_cast<std::uint8_t>(kRightsKept.kept[from] & kRightsKept.kept[to]);
  if ((castling_.bits() & ~kept) != 0) {
    hash_ ^= kHashKeys.castling[castling_.bits()];
    castling_.Keep(kept);
    hash_ ^= kHashKeys.castling[castling_.bits()];
  }
  side_to_move_ = Other(us);
  hash_ ^= kHashKeys.black_to_move;
  CountMove(us);
  if (!is_pawn) return;
  halfmove_clock_ = 0;
  if ((from ^ to) == 16) {
    const auto behind = static_cast<Square>((from + to) / 2);
    if ((PawnAttacks(us, behind) & Pieces(side_to_move_, PieceKind::kPawn)) !=
        0) {
      SetEnPassantIfLegal(behind);
    }
  }
}

Position::Undo Position::SavedBefore(Move move) const {
  const Square captured = move.type() == Move::Type::kEnPassant
                              ? CapturedPawn(move.to())
                              : move.to();
  return {board_[captured], castling_,        en_passant_,
          halfmove_clock_,  fullmove_number_, hash_};
}

void Position::Unmake(Move move, const Undo& undo) {
  const Side us = Other(side_to_move_);
  const Square from = move.from();
  const Square to = move.to();
  const Piece mover =
      move.is_promotion() ? Piece(us, PieceKind::kPawn) : board_[to];
  Remove(to);
  Put(from, mover);
  if (move.type() == Move::Type::kEnPassant) {
    Put(CapturedPawn(to), undo.captured);
  } else if (!undo.captured.empty()) {
    Put(to, undo.captured);
  } else if (move.type() == Move::Type::kCastling) {
    const RookMove rook = CastlingRookMove(us, to);
    Shift(rook.to, rook.from);
  }
  side_to_move_ = us;
  fullmove_number_ = undo.fullmove_number;
  castling_ = undo.castling;
  en_passant_ = undo.en_passant;
  halfmove_clock_ = undo.halfmove_clock;
  hash_ = undo.hash;
}

Position Position::AfterPass() const {
  Position next = *this;
  if (en_passant_ != kNoSquare) {
    next.hash_ ^= kHashKeys.en_passant_file[FileOf(en_passant_)];
    next.en_passant_ = kNoSquare;
  }
  next.side_to_move_ = Other(side_to_move_);
  next.hash_ ^= kHashKeys.black_to_move;
  if (halfmove_clock_ < kMostCounter) ++next.halfmove_clock_;
  next.CountMove(side_to_move_);
  return next;
}

ParsedPosition Position::ToParsed() const {
  ParsedPosition parsed;
  parsed.board = board_;
  parsed.side_to_move = side_to_move_;
  parsed.castling = castling_;
  parsed.en_passant = en_passant_;
  parsed.halfmove_clock = halfmove_clock_;
  parsed.fullmove_number = fullmove_number_;
  return parsed;
}

bool operator==(const Position& a, const Position& b) {
  return a.board_ == b.board_ && a.side_to_move_ == b.side_to_move_ &&
         a.castling_.bits() == b.castling_.bits() &&
         a.en_passant_ == b.en_passant_ &&
         a.halfmove_clock_ == b.halfmove_clock_ &&
         a.fullmove_number_ == b.fullmove_number_;
}

}  // namespace assay
