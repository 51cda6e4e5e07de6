#include "assay/notation/epd.h"

#include <algorithm>
#include <utility>

namespace assay {
namespace {

// c0 to c9 and v0 to v9.
bool IsRegister(std::string_view opcode) {
  return opcode.size() == 2 && (opcode[0] == 'c' || opcode[0] == 'v') &&
         opcode[1] >= '0' && opcode[1] <= '9';
}

}  // namespace

EpdOperand EpdString(std::string_view text) {
  EpdOperand operand;
  operand.kind = EpdOperand::Kind::kString;
  operand.text = text;
  return operand;
}

EpdOperand EpdSymbol(std::string_view text) {
  EpdOperand operand;
  operand.text = text;
  return operand;
}

EpdOperand EpdInteger(std::int64_t value) {
  EpdOperand operand;
  operand.kind = EpdOperand::Kind::kInteger;
  operand.text = std::to_string(value);
  operand.integer = value;
  return operand;
}

EpdOperand EpdMove(Move move) {
  EpdOperand operand;
  operand.kind = EpdOperand::Kind::kMove;
  operand.move = move;
  return operand;
}

const EpdOperation* EpdRecord::Find(std::string_view opcode) const {
  for (const EpdOperation& operation : operations) {
    if (operation.opcode == opcode) return &operation;
  }
  return nullptr;
}

void EpdRecord::Set(EpdOperation operation) {
  const std::string& opcode = operation.opcode;
  const auto replaced = [&opcode](const EpdOperation& old) {
    return old.opcode == opcode ||
           (IsRegister(opcode) && IsRegister(old.opcode) &&
            old.opcode[0] == opcode[0] && old.opcode[1] > opcode[1]);
  };
  operations.erase(
      std::remove_if(operations.begin(), operations.end(), replaced),
      operations.end());
  operations.push_back(std::move(operation));
}

int CeFromWhite(Centipawns white_score, Side side_to_move) {
  return std::clamp(white_score, -kMostEpdCentipawns, kMostEpdCentipawns) *
         Sign(side_to_move);
}

Centipawns WhiteFromCe(int ce, Side side_to_move) {
  return ce * Sign(side_to_move);
}

// The plies to the mate are what the value lacks to 32767 (16.2.5).
int CeOfMateIn(int moves) { return 32767 - (2 * moves - 1); }

int CeOfMatedIn(int moves) { return -32767 + 2 * moves; }

std::optional<int> MateMovesOfCe(int ce) {
  if (ce > kMostEpdCentipawns) return (32767 - ce + 1) / 2;
  if (ce < -kMostEpdCentipawns && ce > kLowestEpdCe) return -(ce + 32767) / 2;
  return std::nullopt;
}

}  // namespace assay
