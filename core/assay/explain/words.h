// Small words: lists, squares, files, counts, as a coach would say them.
#ifndef ASSAY_EXPLAIN_WORDS_H_
#define ASSAY_EXPLAIN_WORDS_H_

#include <string>
#include <vector>

#include "assay/base/bitboard.h"
#include "assay/base/piece.h"
#include "assay/facts/claim.h"

namespace assay {

// "a", "a and b", "a, b and c".
std::string Join(const std::vector<std::string>& items);

// "two" to "ten", digits beyond; "a" or "an" never.
std::string NumberText(int number);

// "a pawn", "two knights".
std::string CountText(int count, PieceKind kind);

// A move apart from a line: "c4" for White, "...c4" for Black.
std::string NamedMove(Side side, const std::string& san);

// A pawn break by its arrival square: "e5" for White, "...e5" for Black.
std::string BreakText(const Claim& lever_move);

// The first letter in upper case.
std::string Capitalised(std::string text);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_WORDS_H_
