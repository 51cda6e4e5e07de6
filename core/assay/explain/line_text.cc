#include "assay/explain/line_text.h"

#include "assay/notation/san.h"

namespace assay {

std::string NumberedMove(const Position& before, Move move) {
  return std::to_string(before.fullmove_number()) +
         (before.side_to_move() == Side::kWhite ? ". " : "... ") +
         ToSan(before, move);
}

std::string LineText(const Position& position, const std::vector<Move>& line) {
  std::string text;
  Position at = position;
  for (const Move move : line) {
    if (text.empty() || at.side_to_move() == Side::kWhite) {
      if (!text.empty()) text += ' ';
      text += NumberedMove(at, move);
    } else {
      text += ' ' + ToSan(at, move);
    }
    at = at.AfterStep(move);
  }
  return text;
}

Message UnitOn(const Position& position, Square square) {
  return Unit(position.At(square).kind(), square);
}

Message UnitsOn(const Position& position, Bitboard squares) {
  std::vector<Message> units;
  const Bitboard kings = squares & position.Pieces(PieceKind::kKing);
  for (const Bitboard part : {squares & ~kings, kings}) {
    for (const Square square : Each(part)) {
      units.push_back(UnitOn(position, square));
    }
  }
  return And(std::move(units));
}

std::vector<Move> SettledPart(const Position& position,
                              const std::vector<Move>& line, std::size_t least,
                              std::size_t most) {
  std::vector<Move> part;
  Position at = position;
  for (std::size_t i = 0; i < line.size(); ++i) {
    const Position next = at.After(line[i]);
    // What hangs may wait for one quiet move, a threat say.
    const bool taken_next =
        i + 1 < line.size() && !next.At(line[i + 1].to()).empty();
    const bool settled =
        !at.InCheck() && at.At(line[i].to()).empty() && !taken_next;
    if (part.size() >= least && settled) return part;
    if (part.size() == most) return {};
    part.push_back(line[i]);
    at = next;
  }
  return part;
}

}  // namespace assay
