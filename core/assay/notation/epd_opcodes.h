// The opcodes of the EPD section of the PGN standard of 1994 (16.2.5), and
// what each takes.
#ifndef ASSAY_NOTATION_EPD_OPCODES_H_
#define ASSAY_NOTATION_EPD_OPCODES_H_

#include <cstddef>
#include <cstdint>
#include <string_view>

namespace assay {

// What an opcode's operands are.
enum class EpdOperands : std::uint8_t {
  kNone,       // no operand
  kString,     // texts in double quotes
  kText,       // strings or symbols
  kInteger,    // whole numbers within the row's range
  kMoves,      // legal moves of the position, each by itself
  kLine,       // legal moves, one after another
  kUnchecked,  // anything
};

// An opcode of the standard.
struct EpdOpcode {
  std::string_view name;
  EpdOperands operands;
  std::size_t fewest = 1;  // operands
  std::size_t most = 1;
  std::int64_t lowest = 0;  // of integers
  std::int64_t highest = 0;
};

// The standard's row of the opcode; null for others. c0 to c9 and v0 to v9
// have rows of their own.
const EpdOpcode* FindEpdOpcode(std::string_view name);

// Whether the text is an opcode's name: a letter, then at most 14 letters,
// digits and underscores (16.2.3).
bool IsEpdOpcodeName(std::string_view text);

}  // namespace assay

#endif  // ASSAY_NOTATION_EPD_OPCODES_H_
