// A chess position that is legal to play from.
//
// A Position is made from the initial set-up, from a checked ParsedPosition,
// or by a legal move from another Position; there is no other way, so what
// holds a Position never asks again whether it has two kings. It is a plain
// value: copying it is cheap (about 150 bytes), and const use is safe from
// any number of threads.
//
//   Position start = Position::Initial();
//   MoveList moves;
//   LegalMoves(start, moves);              // movegen.h
//   Position next = start.After(moves[0]);  // copy-make
//
//   Position::Undo undo = next.Make(m);     // make in place,
//   next.Unmake(m, undo);                   // and take it back
//
// Checked by FromParsed (all faults are reported at once): one king a side,
// not adjacent; no pawn on a first or last rank; at most 8 pawns and 16 pieces
// a side; the side not to move is not in check; castling rights have king and
// rook in place; the en passant square is behind a pawn that can just have
// moved two squares. Not checked: whether the position can arise from the
// initial one (nine queens are fine, so are three bishops on one colour).
#ifndef ASSAY_RULES_POSITION_H_
#define ASSAY_RULES_POSITION_H_

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "assay/base/bitboard.h"
#include "assay/base/piece.h"
#include "assay/base/problem.h"
#include "assay/rules/attacks.h"
#include "assay/rules/castling.h"
#include "assay/rules/move.h"
#include "assay/rules/parsed_position.h"

namespace assay {

class Position {
 public:
  // Counters stop here: no game comes near, and a FEN may not say more.
  static constexpr int kMostCounter = 10000;

  static Position Initial();

  // None where FindProblems() has any; CheckedPosition() says which.
  static std::optional<Position> FromParsed(const ParsedPosition& parsed);

  // A Problem for each fault (base/problem.h): fields "placement", "side",
  // "castling", "en_passant", "halfmove_clock", "fullmove_number". Empty for a
  // sound position.
  static std::vector<Problem> FindProblems(const ParsedPosition& parsed);

  Side side_to_move() const { return side_to_move_; }
  Piece At(Square square) const { return board_[square]; }
  Bitboard Pieces(Side side) const { return sides_[Index(side)]; }
  Bitboard Pieces(PieceKind kind) const { return kinds_[Index(kind)]; }
  Bitboard Pieces(Side side, PieceKind kind) const {
    return sides_[Index(side)] & kinds_[Index(kind)];
  }
  Bitboard Occupied() const { return sides_[0] | sides_[1]; }
  Square King(Side side) const { return First(Pieces(side, PieceKind::kKing)); }
  CastlingRights castling() const { return castling_; }
  // The square behind a pawn that just moved two squares, only where it can
  // legally be captured en passant; else kNoSquare.
  Square en_passant() const { return en_passant_; }
  int halfmove_clock() const { return halfmove_clock_; }
  int fullmove_number() const { return fullmove_number_; }

  // Equal for equal placement, side to move, castling rights and legal en
  // passant captures: the identity that the repetition rule asks for. Kept
  // incrementally; HashFromScratch() recomputes it.
  std::uint64_t hash() const { return hash_; }
  std::uint64_t HashFromScratch() const;

  // Pieces of either side that attack the square, given the occupied squares.
  Bitboard AllAttackers(Square square, Bitboard occupied) const;
  // Those of one side.
  Bitboard Attackers(Side side, Square square, Bitboard occupied) const;
  bool IsAttacked(Side by, Square square) const {
    return Attackers(by, square, Occupied()) != 0;
  }
  // The pieces that give check to the side to move.
  Bitboard Checkers() const {
    return Attackers(Other(side_to_move_), King(side_to_move_), Occupied());
  }
  bool InCheck() const { return Checkers() != 0; }

  // The position after a legal move.
  Position After(Move move) const {
    Position next = *this;
    next.Play(move);
    return next;
  }
  // The position with the other side to move and no en passant capture. The
  // side to move must not be in check.
  Position AfterPass() const;

  // After a legal move, or a pass where the move is null: one step of a line.
  Position AfterStep(Move move) const {
    return move.is_null() ? AfterPass() : After(move);
  }

  // What Make() cannot recompute when a move is taken back.
  struct Undo {
    Piece captured;
    CastlingRights castling;
    Square en_passant = kNoSquare;
    std::uint16_t halfmove_clock = 0;
    std::uint16_t fullmove_number = 1;
    std::uint64_t hash = 0;
  };
  // Plays a legal move in place.
  Undo Make(Move move) {
    const Undo undo = SavedBefore(move);
    Play(move);
    return undo;
  }
  // Takes back the move that Make() played last.
  void Unmake(Move move, const Undo& undo);

  // What the position says, in the form that it was parsed from.
  ParsedPosition ToParsed() const;

  // Same placement, side, rights, en passant square and counters.
  friend bool operator==(const Position& a, const Position& b);
  friend bool operator!=(const Position& a, const Position& b) {
    return !(a == b);
  }

  // Below the class.
  friend Position SwapColours(const Position& position);
  friend Position MirrorFiles(const Position& position);

 private:
  Position() = default;

  static Position Unchecked(const ParsedPosition& parsed);
  void Play(Move move);
  void CountMove(Side mover);
  Undo SavedBefore(Move move) const;
  void Put(Square square, Piece piece);
  void Remove(Square square);
  void Shift(Square from, Square to);  // `to` is empty
  void SetEnPassantIfLegal(Square square);
  bool EnPassantIsLegal(Square square) const;

  std::array<Bitboard, 2> sides_{};
  std::array<Bitboard, kPieceKinds> kinds_{};
  std::array<Piece, kSquares> board_{};
  std::uint64_t hash_ = 0;
  Side side_to_move_ = Side::kWhite;
  CastlingRights castling_;
  Square en_passant_ = kNoSquare;
  std::uint16_t halfmove_clock_ = 0;
  std::uint16_t fullmove_number_ = 1;
};

inline Bitboard Position::AllAttackers(Square square, Bitboard occupied) const {
  const Bitboard queens = kinds_[Index(PieceKind::kQueen)];
  const Bitboard pawns = kinds_[Index(PieceKind::kPawn)];
  return (PawnAttacks(Side::kBlack, square) & pawns & sides_[0]) |
         (PawnAttacks(Side::kWhite, square) & pawns & sides_[1]) |
         (KnightAttacks(square) & kinds_[Index(PieceKind::kKnight)]) |
         (KingAttacks(square) & kinds_[Index(PieceKind::kKing)]) |
         (BishopAttacks(square, occupied) &
          (kinds_[Index(PieceKind::kBishop)] | queens)) |
         (RookAttacks(square, occupied) &
          (kinds_[Index(PieceKind::kRook)] | queens));
}

inline Bitboard Position::Attackers(Side side, Square square,
                                    Bitboard occupied) const {
  return AllAttackers(square, occupied) & sides_[Index(side)];
}

// The same position with the colours swapped: ranks reversed, the other side
// to move.
Position SwapColours(const Position& position);

// The position after a line of legal moves and passes.
inline Position AfterLine(const Position& position,
                          const std::vector<Move>& line) {
  Position at = position;
  for (const Move move : line) at = at.AfterStep(move);
  return at;
}

// The position with the side to move, after a pass where it is not; none where
// that would be a pass in check.
inline std::optional<Position> WithTurn(const Position& position, Side side) {
  if (position.side_to_move() == side) return position;
  if (position.InCheck()) return std::nullopt;
  return position.AfterPass();
}

// The same position with left and right swapped. Castling rights are lost.
Position MirrorFiles(const Position& position);

}  // namespace assay

#endif  // ASSAY_RULES_POSITION_H_
