#include "assay/notation/epd_opcodes.h"

#include <algorithm>
#include <iterator>
#include <limits>

#include "assay/notation/epd.h"

namespace assay {
namespace {

constexpr std::int64_t kAny = std::numeric_limits<std::int64_t>::max();
constexpr std::size_t kMany = kMostEpdOperands;

// In ASCII order. The names and the range of ce are those of the standard;
// how many operands each takes is from memory.
constexpr EpdOpcode kOpcodes[] = {
    {"acn", EpdOperands::kInteger, 1, 1, 0, kAny},  // nodes of the analysis
    {"acs", EpdOperands::kInteger, 1, 1, 0, kAny},  // its seconds
    {"am", EpdOperands::kMoves, 1, kMany},          // moves to avoid
    {"bm", EpdOperands::kMoves, 1, kMany},          // best moves
    {"c0", EpdOperands::kString},
    {"c1", EpdOperands::kString},
    {"c2", EpdOperands::kString},
    {"c3", EpdOperands::kString},
    {"c4", EpdOperands::kString},
    {"c5", EpdOperands::kString},
    {"c6", EpdOperands::kString},
    {"c7", EpdOperands::kString},
    {"c8", EpdOperands::kString},
    {"c9", EpdOperands::kString},
    {"ce", EpdOperands::kInteger, 1, 1, kLowestEpdCe, kHighestEpdCe},
    {"dm", EpdOperands::kInteger, 1, 1, 1, kAny},  // mate in so many moves
    {"draw_accept", EpdOperands::kNone, 0, 0},
    {"draw_claim", EpdOperands::kNone, 0, 0},
    {"draw_offer", EpdOperands::kNone, 0, 0},
    {"draw_reject", EpdOperands::kNone, 0, 0},
    {"eco", EpdOperands::kText, 0, 1},
    {"fmvn", EpdOperands::kInteger, 1, 1, 1, kMostEpdCounter},
    {"hmvc", EpdOperands::kInteger, 1, 1, 0, kMostEpdCounter},
    {"id", EpdOperands::kString},
    {"nic", EpdOperands::kText, 0, 1},
    {"noop", EpdOperands::kUnchecked, 0, kMany},
    {"pm", EpdOperands::kMoves},                   // predicted move
    {"pv", EpdOperands::kLine, 0, kMany},          // predicted variation
    {"rc", EpdOperands::kInteger, 1, 1, 1, kAny},  // repetition count
    {"resign", EpdOperands::kNone, 0, 0},
    {"sm", EpdOperands::kMoves},                     // supplied move
    {"tcgs", EpdOperands::kInteger, 1, 1, 0, kAny},  // game selector
    {"tcri", EpdOperands::kText, 2, 2},              // receiver
    {"tcsi", EpdOperands::kText, 2, 2},              // sender
    {"v0", EpdOperands::kString},
    {"v1", EpdOperands::kString},
    {"v2", EpdOperands::kString},
    {"v3", EpdOperands::kString},
    {"v4", EpdOperands::kString},
    {"v5", EpdOperands::kString},
    {"v6", EpdOperands::kString},
    {"v7", EpdOperands::kString},
    {"v8", EpdOperands::kString},
    {"v9", EpdOperands::kString},
};

bool IsLetter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

}  // namespace

const EpdOpcode* FindEpdOpcode(std::string_view name) {
  const auto* const row = std::find_if(
      std::begin(kOpcodes), std::end(kOpcodes),
      [name](const EpdOpcode& opcode) { return opcode.name == name; });
  return row != std::end(kOpcodes) ? row : nullptr;
}

bool IsEpdOpcodeName(std::string_view text) {
  if (text.empty() || text.size() > kMostEpdOpcodeBytes || !IsLetter(text[0])) {
    return false;
  }
  return std::all_of(text.begin(), text.end(), [](char c) {
    return IsLetter(c) || (c >= '0' && c <= '9') || c == '_';
  });
}

}  // namespace assay
