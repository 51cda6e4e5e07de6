#include "assay/facts/claim.h"

#include <algorithm>

namespace assay {

bool operator==(const SquareList& a, const SquareList& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end());
}

bool operator==(const Claim& a, const Claim& b) {
  return a.kind == b.kind && a.has_side == b.has_side && a.side == b.side &&
         a.piece == b.piece && a.squares == b.squares && a.others == b.others &&
         a.count == b.count && a.other_count == b.other_count &&
         a.tempi == b.tempi && a.line == b.line;
}

std::string ToString(const Claim& claim) {
  std::string text = Name(claim.kind);
  if (claim.has_side) text += std::string(" ") + Name(claim.side);
  if (claim.piece != PieceKind::kNone) {
    text += std::string(" ") + Name(claim.piece);
  }
  for (const Square square : claim.squares) text += ' ' + ToString(square);
  if (!claim.others.empty()) text += " /";
  for (const Square square : claim.others) text += ' ' + ToString(square);
  text += " (" + std::to_string(claim.count) + ", " +
          std::to_string(claim.other_count) + ")";
  return text;
}

}  // namespace assay
