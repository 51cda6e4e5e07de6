#include "assay/explain/recaptures.h"

#include "assay/facts/exchange.h"
#include "assay/rules/movegen.h"

namespace assay {
namespace {

// Captures on one square are looked at no further.
constexpr std::size_t kMostCaptures = 8;
constexpr int kKingLast = 10000;

// The cheapest legal capture on the square; null for none.
Move CheapestCapture(const Position& position, Square square) {
  MoveList moves;
  LegalMoves(position, moves);
  Move best;
  int least = 0;
  for (const Move move : moves) {
    if (move.to() != square || position.At(square).empty()) continue;
    const PieceKind kind = position.At(move.from()).kind();
    const int value =
        kind == PieceKind::kKing ? kKingLast : ExchangeValue(kind);
    const bool queens =
        move.is_promotion() && move.promotion() != PieceKind::kQueen;
    if (queens || (!best.is_null() && value >= least)) continue;
    best = move;
    least = value;
  }
  return best;
}

}  // namespace

std::vector<Move> WithRecaptures(const Position& position, Move move) {
  std::vector<Move> line{move};
  if (position.At(move.to()).empty()) return line;
  Position at = position.After(move);
  while (line.size() < kMostCaptures && ExchangeValueOf(at, move.to()) > 0) {
    const Move capture = CheapestCapture(at, move.to());
    if (capture.is_null()) break;
    line.push_back(capture);
    at = at.After(capture);
  }
  return line;
}

}  // namespace assay
