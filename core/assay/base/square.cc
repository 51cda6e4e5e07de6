#include "assay/base/square.h"

namespace assay {

std::string ToString(Square square) {
  if (square >= kNoSquare) return "-";
  return {static_cast<char>('a' + FileOf(square)),
          static_cast<char>('1' + RankOf(square))};
}

Square ParseSquare(std::string_view text) {
  if (text.size() != 2) return kNoSquare;
  const int file = text[0] - 'a';
  const int rank = text[1] - '1';
  if (file < 0 || file > 7 || rank < 0 || rank > 7) return kNoSquare;
  return MakeSquare(file, rank);
}

}  // namespace assay
