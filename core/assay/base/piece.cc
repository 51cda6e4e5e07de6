#include "assay/base/piece.h"

namespace assay {
namespace {

constexpr char kLetters[] = "PNBRQK?";
constexpr const char* kNames[] = {"pawn",  "knight", "bishop", "rook",
                                  "queen", "king",   ""};

}  // namespace

const char* Name(PieceKind kind) { return kNames[Index(kind)]; }

char Letter(PieceKind kind) { return kLetters[Index(kind)]; }

char FenLetter(Piece piece) {
  if (piece.empty()) return '.';
  const char letter = Letter(piece.kind());
  return piece.side() == Side::kWhite ? letter
                                      : static_cast<char>(letter + ('a' - 'A'));
}

Piece PieceFromFenLetter(char letter) {
  for (const PieceKind kind : kAllKinds) {
    for (const Side side : kSides) {
      const Piece piece(side, kind);
      if (FenLetter(piece) == letter) return piece;
    }
  }
  return Piece();
}

}  // namespace assay
