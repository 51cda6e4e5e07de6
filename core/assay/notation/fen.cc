// Splits the text into fields, reads each field by itself and collects what is
// wrong with each; where the syntax is whole, faults of the position itself
// are collected by CheckedPosition.
#include "assay/notation/fen.h"

#include <algorithm>
#include <cctype>
#include <optional>
#include <vector>

#include "assay/base/problem.h"
#include "assay/base/problem_status.h"
#include "assay/rules/position_check.h"

namespace assay {
namespace {

std::vector<std::string_view> Fields(std::string_view text) {
  std::vector<std::string_view> fields;
  std::size_t at = 0;
  while (true) {
    at = text.find_first_not_of(' ', at);
    if (at == std::string_view::npos) return fields;
    const std::size_t end = std::min(text.find(' ', at), text.size());
    fields.push_back(text.substr(at, end - at));
    at = end;
  }
}

// One rank of the placement, from file a; false where it has faults.
bool ReadRank(std::string_view text, int rank, ParsedPosition& parsed,
              std::vector<Problem>& problems) {
  const std::string where = "rank " + std::to_string(rank + 1);
  int file = 0;
  bool last_was_digit = false;
  for (const char c : text) {
    const bool digit = c >= '1' && c <= '8';
    const Piece piece = PieceFromFenLetter(c);
    if (!digit && (piece.empty() || c == '.')) {
      problems.push_back({"placement", "unknown character in " + where,
                          Quoted(std::string(1, c)),
                          "a letter of PNBRQKpnbrqk or a digit 1 to 8"});
      return false;
    }
    if (digit && last_was_digit) {
      problems.push_back({"placement", "two digits in a row in " + where,
                          Quoted(text),
                          "one digit for a run of empty squares"});
      return false;
    }
    last_was_digit = digit;
    if (!digit && file < 8) parsed.board[MakeSquare(file, rank)] = piece;
    file += digit ? c - '0' : 1;
  }
  if (file == 8) return true;
  problems.push_back({"placement", "wrong number of squares in " + where,
                      std::to_string(file) + " in " + Quoted(text), "8"});
  return false;
}

void ReadPlacement(std::string_view text, ParsedPosition& parsed,
                   std::vector<Problem>& problems) {
  std::vector<std::string_view> ranks;
  std::size_t at = 0;
  while (true) {
    const std::size_t end = text.find('/', at);
    ranks.push_back(text.substr(at, end - at));
    if (end == std::string_view::npos) break;
    at = end + 1;
  }
  if (ranks.size() != 8) {
    problems.push_back({"placement", "wrong number of ranks",
                        std::to_string(ranks.size()) + " in " + Quoted(text),
                        "8 ranks separated by '/'"});
    return;
  }
  for (int i = 0; i < 8; ++i) ReadRank(ranks[i], 7 - i, parsed, problems);
}

void ReadSide(std::string_view text, ParsedPosition& parsed,
              std::vector<Problem>& problems) {
  if (text == "w" || text == "b") {
    parsed.side_to_move = text == "w" ? Side::kWhite : Side::kBlack;
    return;
  }
  problems.push_back(
      {"side", "unknown side to move", Quoted(text), "\"w\" or \"b\""});
}

void ReadCastling(std::string_view text, ParsedPosition& parsed,
                  std::vector<Problem>& problems) {
  if (text == "-") return;
  constexpr std::string_view kOrder = "KQkq";
  std::size_t next = 0;
  for (const char c : text) {
    const std::size_t at = kOrder.find(c);
    if (at == std::string_view::npos || at < next) {
      problems.push_back({"castling",
                          at == std::string_view::npos
                              ? "unknown character"
                              : "letters repeated or out of order",
                          Quoted(text), "\"-\" or letters of KQkq in order"});
      return;
    }
    next = at + 1;
    parsed.castling.Add(at < 2 ? Side::kWhite : Side::kBlack,
                        at % 2 == 0 ? Wing::kKingside : Wing::kQueenside);
  }
}

void ReadEnPassant(std::string_view text, ParsedPosition& parsed,
                   std::vector<Problem>& problems) {
  if (text == "-") return;
  parsed.en_passant = ParseSquare(text);
  if (parsed.en_passant == kNoSquare) {
    problems.push_back({"en_passant", "not a square", Quoted(text),
                        "\"-\" or a square such as \"e3\""});
  }
}

// A whole number of at most six digits; larger ones are out of every range.
std::optional<int> ReadNumber(std::string_view text) {
  if (text.empty() || text.size() > 6) return std::nullopt;
  int value = 0;
  for (const char c : text) {
    if (c < '0' || c > '9') return std::nullopt;
    value = value * 10 + (c - '0');
  }
  return value;
}

void ReadCounter(std::string_view text, const char* field, int& counter,
                 std::vector<Problem>& problems) {
  const std::optional<int> value = ReadNumber(text);
  if (value.has_value()) {
    counter = *value;
  } else {
    problems.push_back(
        {field, "not a whole number", Quoted(text), "digits only"});
  }
}

}  // namespace

namespace {

bool Names(const std::vector<Problem>& problems, std::string_view field) {
  return std::any_of(problems.begin(), problems.end(),
                     [&](const Problem& p) { return p.field == field; });
}

// What the text says, and all that is wrong with it as text.
ParsedPosition ReadFields(std::string_view text,
                          std::vector<Problem>& problems) {
  ParsedPosition parsed;
  if (text.size() > kMostFenBytes) {
    problems.push_back({"fen", "too long", Quoted(text),
                        "at most " + std::to_string(kMostFenBytes) + " bytes"});
    return parsed;
  }
  while (!text.empty() &&
         std::isspace(static_cast<unsigned char>(text.back())) != 0) {
    text.remove_suffix(1);
  }
  const std::vector<std::string_view> fields = Fields(text);
  if (fields.empty()) {
    problems.push_back({"fen", "empty", Quoted(text), "four or six fields"});
    return parsed;
  }
  if (fields.size() != 4 && fields.size() != 6) {
    problems.push_back({"fen", "wrong number of fields",
                        std::to_string(fields.size()) + " in " + Quoted(text),
                        "6, or 4 without the two counters"});
  }
  ReadPlacement(fields[0], parsed, problems);
  if (fields.size() > 1) ReadSide(fields[1], parsed, problems);
  if (fields.size() > 2) ReadCastling(fields[2], parsed, problems);
  if (fields.size() > 3) ReadEnPassant(fields[3], parsed, problems);
  if (fields.size() == 6) {
    ReadCounter(fields[4], "halfmove_clock", parsed.halfmove_clock, problems);
    ReadCounter(fields[5], "fullmove_number", parsed.fullmove_number, problems);
  }
  return parsed;
}

}  // namespace

absl::StatusOr<ParsedPosition> ParseFen(std::string_view text) {
  std::vector<Problem> problems;
  const ParsedPosition parsed = ReadFields(text, problems);
  if (!problems.empty()) return ProblemsStatus(problems);
  return parsed;
}

absl::StatusOr<Position> PositionFromFen(std::string_view text) {
  std::vector<Problem> problems;
  ParsedPosition parsed = ReadFields(text, problems);
  if (problems.empty()) return CheckedPosition(parsed);
  // Fields that could be read are still checked as a position, so that a text
  // with faults of both sorts is mended in one go.
  if (Names(problems, "fen") || Names(problems, "placement")) {
    return ProblemsStatus(problems);
  }
  if (Names(problems, "side")) parsed.en_passant = kNoSquare;
  for (const Problem& problem : Position::FindProblems(parsed)) {
    if (!Names(problems, problem.field)) problems.push_back(problem);
  }
  return ProblemsStatus(problems);
}

std::string ToFen(const Position& position) {
  std::string fen;
  for (int rank = 7; rank >= 0; --rank) {
    int empty = 0;
    const auto flush = [&fen, &empty] {
      if (empty > 0) fen += static_cast<char>('0' + empty);
      empty = 0;
    };
    for (int file = 0; file < 8; ++file) {
      const Piece piece = position.At(MakeSquare(file, rank));
      if (piece.empty()) {
        ++empty;
      } else {
        flush();
        fen += FenLetter(piece);
      }
    }
    flush();
    if (rank > 0) fen += '/';
  }
  fen += position.side_to_move() == Side::kWhite ? " w " : " b ";
  if (position.castling().empty()) fen += '-';
  for (const Side side : kSides) {
    for (const Wing wing : kWings) {
      if (!position.castling().Has(side, wing)) continue;
      fen +=
          FenLetter(Piece(side, wing == Wing::kKingside ? PieceKind::kKing
                                                        : PieceKind::kQueen));
    }
  }
  fen += ' ' + ToString(position.en_passant());
  fen += ' ' + std::to_string(position.halfmove_clock());
  fen += ' ' + std::to_string(position.fullmove_number());
  return fen;
}

}  // namespace assay
