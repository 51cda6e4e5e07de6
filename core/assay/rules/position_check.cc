// Position::FromParsed: every fault of a parsed position, all at once. Also
// the two mirror images, which need no check: a sound position's are sound.
#include "assay/rules/position_check.h"

#include <string>
#include <vector>

#include "assay/base/problem.h"
#include "assay/base/problem_status.h"
#include "assay/rules/position.h"

namespace assay {
namespace {

constexpr int kMostPawns = 8;
constexpr int kMostPieces = 16;

std::string LowerName(Side side) {
  return side == Side::kWhite ? "white" : "black";
}

// The squares of one kind of piece, straight from the parsed board.
Bitboard SquaresOf(const ParsedPosition& parsed, Side side, PieceKind kind) {
  Bitboard set = 0;
  for (int s = 0; s < kSquares; ++s) {
    if (parsed.board[s] == Piece(side, kind)) set |= Bit(Square(s));
  }
  return set;
}

std::string List(Bitboard set) {
  std::string text;
  for (const Square square : Each(set)) {
    if (!text.empty()) text += ' ';
    text += ToString(square);
  }
  return text;
}

std::string Count(int count, const std::string& what) {
  return std::to_string(count) + " " + what + (count == 1 ? "" : "s");
}

void CheckKings(const ParsedPosition& parsed, std::vector<Problem>& problems) {
  Bitboard kings[2];
  for (const Side side : kSides) {
    kings[Index(side)] = SquaresOf(parsed, side, PieceKind::kKing);
    const int count = PopCount(kings[Index(side)]);
    if (count == 1) continue;
    problems.push_back({"placement", count == 0 ? "no king" : "too many kings",
                        Count(count, LowerName(side) + " king"),
                        "1 " + LowerName(side) + " king"});
  }
  if (PopCount(kings[0]) == 1 && PopCount(kings[1]) == 1 &&
      KingDistance(First(kings[0]), First(kings[1])) < 2) {
    problems.push_back({"placement", "adjacent kings",
                        List(kings[0]) + " and " + List(kings[1]),
                        "at least one square between the kings"});
  }
}

void CheckCounts(const ParsedPosition& parsed, std::vector<Problem>& problems) {
  for (const Side side : kSides) {
    const Bitboard pawns = SquaresOf(parsed, side, PieceKind::kPawn);
    Bitboard all = 0;
    for (const PieceKind kind : kAllKinds) all |= SquaresOf(parsed, side, kind);
    const std::string name = LowerName(side);
    if (PopCount(pawns) > kMostPawns) {
      problems.push_back({"placement", "too many pawns",
                          Count(PopCount(pawns), name + " pawn"), "at most 8"});
    }
    if (PopCount(all) > kMostPieces) {
      problems.push_back({"placement", "too many pieces",
                          Count(PopCount(all), name + " piece"),
                          "at most 16, pawns and king included"});
    }
    const Bitboard ends = pawns & (RankMask(0) | RankMask(7));
    if (ends != 0) {
      problems.push_back({"placement", "pawn on a first or last rank",
                          name + " pawn on " + List(ends),
                          "pawns on ranks 2 to 7"});
    }
  }
}

void CheckCastling(const ParsedPosition& parsed,
                   std::vector<Problem>& problems) {
  for (const Side side : kSides) {
    for (const Wing wing : kWings) {
      if (!parsed.castling.Has(side, wing)) continue;
      const Square king = Relative(side, kE1);
      const Square rook = CastlingRook(side, wing);
      const char letter =
          FenLetter(Piece(side, wing == Wing::kKingside ? PieceKind::kKing
                                                        : PieceKind::kQueen));
      const std::string right(1, letter);
      if (parsed.board[king] != Piece(side, PieceKind::kKing)) {
        problems.push_back({"castling", "right without the king in place",
                            right + " with no " + LowerName(side) +
                                " king on " + ToString(king),
                            LowerName(side) + " king on " + ToString(king)});
      }
      if (parsed.board[rook] != Piece(side, PieceKind::kRook)) {
        problems.push_back({"castling", "right without the rook in place",
                            right + " with no " + LowerName(side) +
                                " rook on " + ToString(rook),
                            LowerName(side) + " rook on " + ToString(rook)});
      }
    }
  }
}

void CheckEnPassant(const ParsedPosition& parsed,
                    std::vector<Problem>& problems) {
  const Square square = parsed.en_passant;
  if (square == kNoSquare) return;
  const Side mover = Other(parsed.side_to_move);
  if (RelativeRank(mover, square) != 2) {
    problems.push_back({"en_passant", "wrong rank", ToString(square),
                        parsed.side_to_move == Side::kWhite
                            ? "a square on rank 6, White to move"
                            : "a square on rank 3, Black to move"});
    return;
  }
  const auto pawn = First(Forward(mover, Bit(square)));
  const auto start = First(Forward(Other(mover), Bit(square)));
  if (parsed.board[pawn] != Piece(mover, PieceKind::kPawn)) {
    problems.push_back({"en_passant", "no pawn has just passed it",
                        ToString(square) + " with no " + LowerName(mover) +
                            " pawn on " + ToString(pawn),
                        LowerName(mover) + " pawn on " + ToString(pawn)});
  } else if (!parsed.board[square].empty() || !parsed.board[start].empty()) {
    problems.push_back(
        {"en_passant", "the pawn's way was blocked",
         ToString(square) + " with a piece on " +
             ToString(parsed.board[square].empty() ? start : square),
         ToString(square) + " and " + ToString(start) + " empty"});
  }
}

void CheckCounters(const ParsedPosition& parsed,
                   std::vector<Problem>& problems) {
  if (parsed.halfmove_clock < 0 ||
      parsed.halfmove_clock > Position::kMostCounter) {
    problems.push_back({"halfmove_clock", "out of range",
                        std::to_string(parsed.halfmove_clock), "0 to 10000"});
  }
  if (parsed.fullmove_number < 1 ||
      parsed.fullmove_number > Position::kMostCounter) {
    problems.push_back({"fullmove_number", "out of range",
                        std::to_string(parsed.fullmove_number), "1 to 10000"});
  }
}

}  // namespace

std::vector<Problem> Position::FindProblems(const ParsedPosition& parsed) {
  EnsureAttackTables();
  std::vector<Problem> problems;
  CheckKings(parsed, problems);
  const bool kings_sound = problems.empty();
  CheckCounts(parsed, problems);
  CheckCastling(parsed, problems);
  CheckEnPassant(parsed, problems);
  CheckCounters(parsed, problems);
  if (kings_sound) {
    ParsedPosition placement = parsed;
    placement.en_passant = kNoSquare;
    const Position position = Unchecked(placement);
    const Side waiting = Other(parsed.side_to_move);
    const Bitboard checkers = position.Attackers(
        parsed.side_to_move, position.King(waiting), position.Occupied());
    if (checkers != 0) {
      problems.push_back({"side", "the side not to move is in check",
                          LowerName(waiting) + " king on " +
                              ToString(position.King(waiting)) +
                              " attacked from " + List(checkers),
                          "that no king can be captured"});
    }
  }
  return problems;
}

std::optional<Position> Position::FromParsed(const ParsedPosition& parsed) {
  if (!FindProblems(parsed).empty()) return std::nullopt;
  return Unchecked(parsed);
}

absl::StatusOr<Position> CheckedPosition(const ParsedPosition& parsed) {
  const std::optional<Position> position = Position::FromParsed(parsed);
  if (position.has_value()) return *position;
  return ProblemsStatus(Position::FindProblems(parsed));
}

Position SwapColours(const Position& position) {
  const ParsedPosition parsed = position.ToParsed();
  ParsedPosition swapped = parsed;
  for (int s = 0; s < kSquares; ++s) {
    const Piece piece = parsed.board[s];
    swapped.board[FlipRank(Square(s))] =
        piece.empty() ? piece : Piece(Other(piece.side()), piece.kind());
  }
  swapped.side_to_move = Other(parsed.side_to_move);
  swapped.castling = CastlingRights();
  for (const Side side : kSides) {
    for (const Wing wing : kWings) {
      if (parsed.castling.Has(side, wing))
        swapped.castling.Add(Other(side), wing);
    }
  }
  if (parsed.en_passant != kNoSquare) {
    swapped.en_passant = FlipRank(parsed.en_passant);
  }
  return Position::Unchecked(swapped);
}

Position MirrorFiles(const Position& position) {
  const ParsedPosition parsed = position.ToParsed();
  ParsedPosition mirrored = parsed;
  for (int s = 0; s < kSquares; ++s) {
    mirrored.board[FlipFile(Square(s))] = parsed.board[s];
  }
  mirrored.castling = CastlingRights();
  if (parsed.en_passant != kNoSquare) {
    mirrored.en_passant = FlipFile(parsed.en_passant);
  }
  return Position::Unchecked(mirrored);
}

}  // namespace assay
