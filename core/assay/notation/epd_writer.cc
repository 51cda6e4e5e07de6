#include <algorithm>
#include <utility>

#include "assay/base/problem.h"
#include "assay/base/problem_status.h"
#include "assay/notation/epd.h"
#include "assay/notation/epd_check.h"
#include "assay/notation/epd_opcodes.h"
#include "assay/notation/fen.h"
#include "assay/notation/san.h"

namespace assay {
namespace {

using Kind = EpdOperand::Kind;

// Printing bytes only, none of which ends the operand.
bool CanBeWritten(const EpdOperand& operand) {
  const std::string_view ends = operand.kind == Kind::kString ? "\"" : "\"; ";
  if (operand.kind != Kind::kString && operand.text.empty()) return false;
  return std::all_of(operand.text.begin(), operand.text.end(), [&](char c) {
    const auto byte = static_cast<unsigned char>(c);
    return byte >= 0x20U && byte != 0x7FU &&
           ends.find(c) == std::string_view::npos;
  });
}

void CheckTexts(const EpdOperation& operation, std::vector<Problem>& problems) {
  if (!IsEpdOpcodeName(operation.opcode)) {
    problems.push_back({operation.opcode, "not an opcode",
                        Quoted(operation.opcode),
                        "a letter, then letters, digits and underscores"});
  }
  for (const EpdOperand& operand : operation.operands) {
    if (operand.kind == Kind::kMove) continue;
    if (!CanBeWritten(operand)) {
      problems.push_back({operation.opcode, "cannot be written",
                          Quoted(operand.text),
                          "printing characters without a quote"});
    }
    if (operand.text.size() > kMostEpdOperandBytes) {
      problems.push_back(
          {operation.opcode, "operand too long", Quoted(operand.text),
           "at most " + std::to_string(kMostEpdOperandBytes) + " bytes"});
    }
  }
}

std::vector<std::string> OperandTexts(const Position& start,
                                      const EpdOperation& operation) {
  const EpdOpcode* row = FindEpdOpcode(operation.opcode);
  const bool line = row != nullptr && row->operands == EpdOperands::kLine;
  std::vector<std::string> texts;
  Position position = start;
  for (const EpdOperand& operand : operation.operands) {
    switch (operand.kind) {
      case Kind::kString:
        texts.push_back('"' + operand.text + '"');
        break;
      case Kind::kSymbol:
        texts.push_back(operand.text);
        break;
      case Kind::kInteger:  // of a private opcode as it was written
        texts.push_back(row == nullptr ? operand.text
                                       : std::to_string(operand.integer));
        break;
      case Kind::kMove:
        texts.push_back(ToSan(position, operand.move));
        if (line) position.Make(operand.move);
        break;
    }
  }
  if (operation.opcode == "am" || operation.opcode == "bm") {
    std::sort(texts.begin(), texts.end());
  }
  return texts;
}

void SetCounter(EpdRecord& record, const char* opcode, int counter, int usual) {
  if (counter == usual && record.Find(opcode) == nullptr) return;
  record.Set({opcode, {EpdInteger(counter)}});
}

}  // namespace

absl::StatusOr<std::string> WriteEpd(const EpdRecord& record) {
  EpdRecord checked = record;
  SetCounter(checked, "hmvc", record.position.halfmove_clock(), 0);
  SetCounter(checked, "fmvn", record.position.fullmove_number(), 1);
  std::stable_sort(checked.operations.begin(), checked.operations.end(),
                   [](const EpdOperation& a, const EpdOperation& b) {
                     return a.opcode < b.opcode;
                   });
  std::vector<Problem> problems;
  for (std::size_t i = 0; i < checked.operations.size(); ++i) {
    EpdOperation& operation = checked.operations[i];
    CheckTexts(operation, problems);
    CheckEpdOperation(&record.position, operation, problems);
    if (i > 0 && checked.operations[i - 1].opcode == operation.opcode) {
      problems.push_back(
          {operation.opcode, "given twice", Quoted(operation.opcode), "once"});
    }
  }
  if (!problems.empty()) return ProblemsStatus(problems);
  std::string text = ToFen(record.position);
  text.resize(text.rfind(' ', text.rfind(' ') - 1));  // without the counters
  for (const EpdOperation& operation : checked.operations) {
    text += ' ' + operation.opcode;
    for (const std::string& operand :
         OperandTexts(record.position, operation)) {
      text += ' ' + operand;
    }
    text += ';';
  }
  return text;
}

}  // namespace assay
