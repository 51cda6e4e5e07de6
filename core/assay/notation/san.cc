// A move's text is split into what it demands (kind of piece, origin file or
// rank, destination, promotion); the legal moves that meet the demands are the
// candidates. One is the move, none is illegal, several are ambiguous.
#include "assay/notation/san.h"

#include <optional>

#include "assay/base/problem.h"
#include "assay/base/problem_status.h"
#include "assay/rules/draw.h"
#include "assay/rules/movegen.h"

namespace assay {
namespace {

struct Demand {
  PieceKind kind = PieceKind::kPawn;
  int from_file = -1;  // -1: any
  int from_rank = -1;
  Square to = kNoSquare;
  PieceKind promotion = PieceKind::kNone;
};

absl::Status NotAMove(std::string_view text) {
  return ProblemStatus({"move", "not a move", Quoted(text),
                        "SAN such as \"Nf3\" or coordinates such as \"g1f3\""});
}

bool IsFile(char c) { return c >= 'a' && c <= 'h'; }
bool IsRank(char c) { return c >= '1' && c <= '8'; }

PieceKind KindFromLetter(char letter) {
  for (const PieceKind kind : kAllKinds) {
    if (Letter(kind) == letter) return kind;
  }
  return PieceKind::kNone;
}

// Without check and mate signs and the six suffix marks.
std::string_view WithoutMarks(std::string_view text) {
  while (!text.empty() &&
         std::string_view("+#!?").find(text.back()) != std::string_view::npos) {
    text.remove_suffix(1);
  }
  return text;
}

std::optional<Wing> CastlingWing(std::string_view text) {
  if (text == "O-O" || text == "0-0" || text == "o-o") return Wing::kKingside;
  if (text == "O-O-O" || text == "0-0-0" || text == "o-o-o") {
    return Wing::kQueenside;
  }
  return std::nullopt;
}

// What plain SAN (no castling, no marks) demands; nothing where it is not SAN.
std::optional<Demand> ReadDemand(std::string_view text) {
  Demand demand;
  if (!text.empty() && KindFromLetter(text.front()) != PieceKind::kNone) {
    demand.kind = KindFromLetter(text.front());
    text.remove_prefix(1);
  }
  if (text.size() >= 3) {  // a promotion: "=Q", or "Q" alone
    const PieceKind kind = KindFromLetter(text.back());
    const bool is_promotion = kind != PieceKind::kNone;
    if (is_promotion) {
      if (kind == PieceKind::kPawn || kind == PieceKind::kKing ||
          demand.kind != PieceKind::kPawn) {
        return std::nullopt;
      }
      demand.promotion = kind;
      text.remove_suffix(1);
      if (text.back() == '=') text.remove_suffix(1);
    }
  }
  if (text.size() < 2) return std::nullopt;
  demand.to = ParseSquare(text.substr(text.size() - 2));
  if (demand.to == kNoSquare) return std::nullopt;
  text.remove_suffix(2);
  const bool sign = !text.empty() && (text.back() == 'x' || text.back() == '-');
  if (sign) text.remove_suffix(1);
  if (!text.empty() && IsFile(text.front())) {
    demand.from_file = text.front() - 'a';
    text.remove_prefix(1);
  }
  if (!text.empty() && IsRank(text.front())) {
    demand.from_rank = text.front() - '1';
    text.remove_prefix(1);
  }
  if (!text.empty()) return std::nullopt;
  // A pawn's capture names its file: "b5" is a step, never "axb5".
  if (demand.kind == PieceKind::kPawn && demand.from_file < 0 && !sign) {
    demand.from_file = FileOf(demand.to);
  }
  return demand;
}

bool Meets(const Position& position, Move move, const Demand& demand) {
  return position.At(move.from()).kind() == demand.kind &&
         move.to() == demand.to && move.type() != Move::Type::kCastling &&
         (demand.from_file < 0 || FileOf(move.from()) == demand.from_file) &&
         (demand.from_rank < 0 || RankOf(move.from()) == demand.from_rank) &&
         move.promotion() == demand.promotion;
}

absl::StatusOr<Move> OnlyCandidate(const Position& position,
                                   std::string_view text,
                                   const std::vector<Move>& candidates) {
  if (candidates.size() == 1) return candidates.front();
  if (candidates.empty()) {
    return ProblemStatus(
        {"move", "illegal move", Quoted(text),
         std::string("a legal move for ") + Name(position.side_to_move())});
  }
  std::string names;
  for (const Move move : candidates) {
    if (!names.empty()) names += " or ";
    names += ToSan(position, move);
  }
  return ProblemStatus({"move", "ambiguous move", Quoted(text), names});
}

absl::StatusOr<Move> ParseCoordinates(const Position& position,
                                      std::string_view text) {
  const std::string_view plain = WithoutMarks(text);
  if (plain.size() != 4 && plain.size() != 5) return NotAMove(text);
  const Square from = ParseSquare(plain.substr(0, 2));
  const Square to = ParseSquare(plain.substr(2, 2));
  PieceKind promotion = PieceKind::kNone;
  if (plain.size() == 5) {
    promotion = PieceFromFenLetter(plain[4]).kind();
    if (promotion == PieceKind::kNone || promotion == PieceKind::kPawn ||
        promotion == PieceKind::kKing) {
      return NotAMove(text);
    }
  }
  if (from == kNoSquare || to == kNoSquare) return NotAMove(text);
  MoveList moves;
  LegalMoves(position, moves);
  std::vector<Move> candidates;
  for (const Move move : moves) {
    if (move.from() == from && move.to() == to &&
        move.promotion() == promotion) {
      candidates.push_back(move);
    }
  }
  return OnlyCandidate(position, text, candidates);
}

// The part between piece letter and destination: file, else rank, else both,
// by the first that tells the move apart from the other legal ones.
std::string Disambiguation(const Position& position, Move move,
                           const MoveList& moves) {
  bool other = false;
  bool same_file = false;
  bool same_rank = false;
  for (const Move rival : moves) {
    if (rival.to() != move.to() || rival.from() == move.from() ||
        position.At(rival.from()) != position.At(move.from())) {
      continue;
    }
    other = true;
    same_file |= FileOf(rival.from()) == FileOf(move.from());
    same_rank |= RankOf(rival.from()) == RankOf(move.from());
  }
  std::string square = ToString(move.from());
  if (!other) return "";
  if (!same_file) return square.substr(0, 1);
  if (!same_rank) return square.substr(1, 1);
  return square;
}

std::string CheckSign(const Position& after) {
  if (!after.InCheck()) return "";
  return HasLegalMove(after) ? "+" : "#";
}

std::string PlainSan(const Position& position, Move move) {
  if (move.type() == Move::Type::kCastling) {
    return FileOf(move.to()) == 6 ? "O-O" : "O-O-O";
  }
  const PieceKind kind = position.At(move.from()).kind();
  const bool capture =
      !position.At(move.to()).empty() || move.type() == Move::Type::kEnPassant;
  std::string san;
  if (kind == PieceKind::kPawn) {
    if (capture) san += ToString(move.from())[0];
  } else {
    san += Letter(kind);
    MoveList moves;
    LegalMoves(position, moves);
    san += Disambiguation(position, move, moves);
  }
  if (capture) san += 'x';
  san += ToString(move.to());
  if (move.is_promotion()) {
    san += '=';
    san += Letter(move.promotion());
  }
  return san;
}

}  // namespace

absl::StatusOr<Move> ParseSan(const Position& position, std::string_view text) {
  if (text.size() > kMostMoveBytes) return NotAMove(text);
  const std::string_view plain = WithoutMarks(text);
  MoveList moves;
  LegalMoves(position, moves);
  std::vector<Move> candidates;
  if (const std::optional<Wing> wing = CastlingWing(plain)) {
    const Square to = CastledKing(position.side_to_move(), *wing);
    for (const Move move : moves) {
      if (move.type() == Move::Type::kCastling && move.to() == to) {
        candidates.push_back(move);
      }
    }
    return OnlyCandidate(position, text, candidates);
  }
  const std::optional<Demand> demand = ReadDemand(plain);
  if (!demand.has_value()) return NotAMove(text);
  for (const Move move : moves) {
    if (Meets(position, move, *demand)) candidates.push_back(move);
  }
  return OnlyCandidate(position, text, candidates);
}

absl::StatusOr<Move> ParseMove(const Position& position,
                               std::string_view text) {
  if (text.size() > kMostMoveBytes) return NotAMove(text);
  absl::StatusOr<Move> san = ParseSan(position, text);
  if (san.ok()) return san;
  // "b1c3" reads as a pawn's move in long notation, too; coordinates decide.
  absl::StatusOr<Move> move = ParseCoordinates(position, text);
  if (move.ok()) return move;
  const std::vector<Problem> problems = ProblemsOf(san.status());
  const bool unread = !problems.empty() && problems[0].reason == "not a move";
  return unread ? move : san;
}

std::string ToSan(const Position& position, Move move) {
  if (move.is_null()) return std::string(kPassText);
  return PlainSan(position, move) + CheckSign(position.After(move));
}

std::vector<std::string> ToSan(const Position& position,
                               const std::vector<Move>& line) {
  std::vector<std::string> texts;
  texts.reserve(line.size());
  Position at = position;
  for (const Move move : line) {
    texts.push_back(ToSan(at, move));
    at = at.AfterStep(move);
  }
  return texts;
}

std::string ToCoordinates(Move move) {
  std::string text = ToString(move.from()) + ToString(move.to());
  if (move.is_promotion()) {
    text += FenLetter(Piece(Side::kBlack, move.promotion()));
  }
  return text;
}

}  // namespace assay
