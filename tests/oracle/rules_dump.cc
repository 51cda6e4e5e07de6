// Says in JSON what the library thinks of positions, for rules_oracle.mjs to
// compare with an independent rules library.
//
// Reads a FEN a line from standard input; writes a JSON object a line:
//   {"moves":[["Nf3","<FEN after it>"],...],"check":false,"mate":false,
//    "stalemate":false,"insufficient":false}
// with the moves in SAN and sorted by it, or {"error":"..."} for a bad FEN.
// Strings need no escapes: SAN, FEN and our messages of them are plain ASCII,
// and double quotes in messages are written as single ones.
#include <algorithm>
#include <iostream>
#include <string>
#include <utility>
#include <vector>

#include "assay/notation/fen.h"
#include "assay/notation/san.h"
#include "assay/rules/draw.h"
#include "assay/rules/movegen.h"

namespace assay {
namespace {

void WriteError(const absl::Status& status, std::ostream& out) {
  std::string message(status.message());
  std::replace(message.begin(), message.end(), '"', '\'');
  std::replace(message.begin(), message.end(), '\\', '/');
  out << "{\"error\":\"" << message << "\"}\n";
}

void WriteFlag(const char* name, bool flag, std::ostream& out) {
  out << ",\"" << name << "\":" << (flag ? "true" : "false");
}

void WritePosition(const Position& position, std::ostream& out) {
  MoveList moves;
  LegalMoves(position, moves);
  std::vector<std::pair<std::string, std::string>> lines;
  lines.reserve(moves.size());
  for (const Move move : moves) {
    lines.emplace_back(ToSan(position, move), ToFen(position.After(move)));
  }
  std::sort(lines.begin(), lines.end());
  out << "{\"moves\":[";
  const char* separator = "";
  for (const auto& [san, fen] : lines) {
    out << separator << "[\"" << san << "\",\"" << fen << "\"]";
    separator = ",";
  }
  out << ']';
  WriteFlag("check", position.InCheck(), out);
  WriteFlag("mate", IsCheckmate(position), out);
  WriteFlag("stalemate", IsStalemate(position), out);
  WriteFlag("insufficient", IsInsufficientMaterial(position), out);
  out << "}\n";
}

}  // namespace
}  // namespace assay

int main() {
  std::ios::sync_with_stdio(false);
  for (std::string fen; std::getline(std::cin, fen);) {
    const absl::StatusOr<assay::Position> position =
        assay::PositionFromFen(fen);
    if (position.ok()) {
      assay::WritePosition(*position, std::cout);
    } else {
      assay::WriteError(position.status(), std::cout);
    }
  }
  return 0;
}
