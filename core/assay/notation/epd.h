// EPD: a position on a line with operations, as section 16.2 of the PGN
// standard of 1994 defines it.
//
//   r1b1k2r/... w kq - bm Nd5; ce 34; id "lesson 3";
//
//   absl::StatusOr<EpdRecord> record = ParseEpd(line);
//   if (const EpdOperation* best = record->Find("bm")) {
//     Use(best->operands[0].move);
//   }
//   EpdRecord own;
//   own.position = position;
//   own.Set({"ce", {EpdInteger(CeFromWhite(score, side))}});
//   std::string text = *WriteEpd(own);
//
// Everything here is a plain value or a function without state: safe from any
// number of threads.
//
// A line is the first four fields of a FEN, then operations, each an opcode,
// operands and ";". Also read, as many files have it (common practice, no
// source): FEN's two counters after its four fields, so that a line of FEN is a
// record without operations. Opcodes of the standard have their operands
// checked (epd_opcodes.h); others, private ones that begin with a capital
// letter among them, are kept as they are.
//
// All faults of a line are reported at once, as Problems in INVALID_ARGUMENT:
//   the fields and reasons of fen.h for the position
//   epd        "too long", "too many operations", "text without an opcode"
//   the opcode, e.g. "bm":
//              "not ended", "given twice", "wrong number of operands", "wrong
//              kind of operand", "out of range", "string not closed",
//              "operand too long", "differs from the FEN counter", and for
//              moves the reasons of san.h
#ifndef ASSAY_NOTATION_EPD_H_
#define ASSAY_NOTATION_EPD_H_

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "absl/status/statusor.h"
#include "assay/base/score.h"
#include "assay/base/side.h"
#include "assay/rules/position.h"

namespace assay {

// Longer lines are refused unread. The standard asks readers to take 1,024
// characters (16.2.2).
inline constexpr std::size_t kMostEpdBytes = 8192;
inline constexpr std::size_t kMostEpdOperations = 128;
inline constexpr std::size_t kMostEpdOperands = 512;      // of one operation
inline constexpr std::size_t kMostEpdOpcodeBytes = 15;    // 16.2.3
inline constexpr std::size_t kMostEpdOperandBytes = 255;  // 16.2.3
inline constexpr int kMostEpdCounter = 10'000;            // as in a FEN

// The range of ce (16.2.5): centipawns, from the side to move's point of view.
inline constexpr int kLowestEpdCe = -32767;       // the position is illegal
inline constexpr int kHighestEpdCe = 32766;       // mate in one
inline constexpr int kMostEpdCentipawns = 32000;  // beyond: a mate

struct EpdOperand {
  enum class Kind : std::uint8_t { kString, kSymbol, kInteger, kMove };
  Kind kind = Kind::kSymbol;
  std::string text;  // without quotes; a move's SAN as it was written
  std::int64_t integer = 0;
  Move move;
};

EpdOperand EpdString(std::string_view text);
EpdOperand EpdSymbol(std::string_view text);
EpdOperand EpdInteger(std::int64_t value);
EpdOperand EpdMove(Move move);

struct EpdOperation {
  std::string opcode;
  std::vector<EpdOperand> operands;
};

struct EpdRecord {
  // With the counters of hmvc and fmvn, or of FEN's fields; else 0 and 1.
  Position position = Position::Initial();
  std::vector<EpdOperation> operations;  // in the line's order

  // The operation of an opcode; null where there is none.
  const EpdOperation* Find(std::string_view opcode) const;
  // Adds an operation or replaces the one of the same opcode. Setting c0 to c9
  // clears those with higher digits, and so with v0 to v9 (16.2.5).
  void Set(EpdOperation operation);
};

absl::StatusOr<EpdRecord> ParseEpd(std::string_view line);

// The canonical form: operations in ASCII order of their opcodes, moves in
// SAN, the moves of am and bm in ASCII order (from memory), one space between
// parts, no line end. hmvc and fmvn are the position's counters, left out
// where they are 0 and 1 and no operation asks for them. INVALID_ARGUMENT for
// what ParseEpd() would refuse, with the same fields and reasons, and for
//   the opcode  "not an opcode", "cannot be written" (an operand with a byte
//               that ends it or does not print)
absl::StatusOr<std::string> WriteEpd(const EpdRecord& record);

// Our score, White's view, as the value of ce: the side to move's view, kept
// within what is no mate.
int CeFromWhite(Centipawns white_score, Side side_to_move);
// The same back; meaningless for a mate.
Centipawns WhiteFromCe(int ce, Side side_to_move);
// The side to move mates in so many of its moves (1 or more): 32766 for 1.
int CeOfMateIn(int moves);
// The side to move is mated in so many moves of the other side: -32765 for 1.
int CeOfMatedIn(int moves);
// Moves to the mate that a ce stands for: positive where the side to move
// mates, negative where it is mated; nothing where ce is no mate.
std::optional<int> MateMovesOfCe(int ce);

}  // namespace assay

#endif  // ASSAY_NOTATION_EPD_H_
