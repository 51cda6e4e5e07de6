// What a text says of a position, before anyone has asked whether it can be.
//
// ParsedPosition is syntax only. Position::FromParsed() checks it, and only a
// Position reaches anything else in the library.
#ifndef ASSAY_RULES_PARSED_POSITION_H_
#define ASSAY_RULES_PARSED_POSITION_H_

#include <array>

#include "assay/base/piece.h"
#include "assay/base/square.h"
#include "assay/rules/castling.h"

namespace assay {

struct ParsedPosition {
  std::array<Piece, kSquares> board;
  Side side_to_move = Side::kWhite;
  CastlingRights castling;
  Square en_passant = kNoSquare;
  int halfmove_clock = 0;   // plies since a capture or a pawn's move
  int fullmove_number = 1;  // goes up after Black's move
};

}  // namespace assay

#endif  // ASSAY_RULES_PARSED_POSITION_H_
