#include "assay/notation/epd_check.h"

#include <limits>

#include "assay/base/problem_status.h"
#include "assay/notation/epd_opcodes.h"
#include "assay/notation/san.h"
#include "assay/rules/movegen.h"

namespace assay {
namespace {

using Kind = EpdOperand::Kind;

std::string InQuotes(const EpdOperand& operand) { return Quoted(operand.text); }

void WrongKind(const EpdOperation& operation, const EpdOperand& operand,
               const char* expected, std::vector<Problem>& problems) {
  problems.push_back(
      {operation.opcode, "wrong kind of operand", InQuotes(operand), expected});
}

void CheckInteger(const EpdOperation& operation, const EpdOpcode& row,
                  const EpdOperand& operand, std::vector<Problem>& problems) {
  if (operand.kind != Kind::kInteger) {
    return WrongKind(operation, operand, "a whole number", problems);
  }
  if (operand.integer >= row.lowest && operand.integer <= row.highest) return;
  const bool open = row.highest == std::numeric_limits<std::int64_t>::max();
  problems.push_back(
      {operation.opcode, "out of range", std::to_string(operand.integer),
       std::to_string(row.lowest) +
           (open ? " or more" : " to " + std::to_string(row.highest))});
}

// Makes the operand a legal move of the position; false where it is none.
bool ResolveMove(const Position& position, const EpdOperation& operation,
                 EpdOperand& operand, std::vector<Problem>& problems) {
  if (operand.kind == Kind::kMove) {
    if (IsLegal(position, operand.move)) return true;
    problems.push_back(
        {operation.opcode, "illegal move", Quoted(ToCoordinates(operand.move)),
         std::string("a legal move for ") + Name(position.side_to_move())});
    return false;
  }
  if (operand.kind != Kind::kSymbol) {
    WrongKind(operation, operand, "a move in SAN", problems);
    return false;
  }
  const absl::StatusOr<Move> move = ParseMove(position, operand.text);
  if (!move.ok()) {
    for (Problem& problem : ProblemsOf(move.status())) {
      problem.field = operation.opcode;
      problems.push_back(std::move(problem));
    }
    return false;
  }
  operand.kind = Kind::kMove;
  operand.move = *move;
  return true;
}

void CheckMoves(const Position& start, EpdOperands kind,
                EpdOperation& operation, std::vector<Problem>& problems) {
  Position position = start;
  for (EpdOperand& operand : operation.operands) {
    const bool legal = ResolveMove(position, operation, operand, problems);
    if (kind != EpdOperands::kLine) continue;
    if (!legal) return;  // what follows an illegal move says nothing
    position.Make(operand.move);
  }
}

}  // namespace

std::optional<std::int64_t> ReadEpdInteger(std::string_view text) {
  const bool minus = !text.empty() && text[0] == '-';
  if (minus || (!text.empty() && text[0] == '+')) text.remove_prefix(1);
  if (text.empty() || text.size() > 18) return std::nullopt;
  std::int64_t value = 0;
  for (const char c : text) {
    if (c < '0' || c > '9') return std::nullopt;
    value = value * 10 + (c - '0');
  }
  return minus ? -value : value;
}

void CheckEpdOperation(const Position* position, EpdOperation& operation,
                       std::vector<Problem>& problems) {
  const EpdOpcode* row = FindEpdOpcode(operation.opcode);
  if (row == nullptr) return;
  const std::size_t count = operation.operands.size();
  if (count < row->fewest || count > row->most) {
    const std::string fewest = std::to_string(row->fewest);
    problems.push_back({operation.opcode, "wrong number of operands",
                        std::to_string(count),
                        row->fewest == row->most
                            ? fewest
                            : fewest + " to " + std::to_string(row->most)});
    return;
  }
  if (row->operands == EpdOperands::kMoves ||
      row->operands == EpdOperands::kLine) {
    if (position != nullptr) {
      CheckMoves(*position, row->operands, operation, problems);
    }
    return;
  }
  for (const EpdOperand& operand : operation.operands) {
    if (row->operands == EpdOperands::kInteger) {
      CheckInteger(operation, *row, operand, problems);
    } else if (row->operands == EpdOperands::kString &&
               operand.kind != Kind::kString) {
      WrongKind(operation, operand, "a text in double quotes", problems);
    } else if (row->operands == EpdOperands::kText &&
               operand.kind == Kind::kMove) {
      WrongKind(operation, operand, "a text", problems);
    }
  }
}

}  // namespace assay
