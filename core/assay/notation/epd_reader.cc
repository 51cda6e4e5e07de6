// The line is cut into the position's fields and raw operations first; what
// the operations mean is judged when the position is known.
#include <algorithm>
#include <utility>

#include "assay/base/problem_status.h"
#include "assay/notation/epd.h"
#include "assay/notation/epd_check.h"
#include "assay/notation/epd_opcodes.h"
#include "assay/notation/fen.h"
#include "assay/rules/position_check.h"

namespace assay {
namespace {

bool IsBlank(char c) { return c == ' ' || c == '\t'; }

// Walks over the fields of a line.
class Cursor {
 public:
  explicit Cursor(std::string_view text) : text_(text) {}

  void SkipBlanks() {
    while (at_ < text_.size() && IsBlank(text_[at_])) ++at_;
  }
  bool AtEnd() const { return at_ >= text_.size(); }
  char Peek() const { return text_[at_]; }
  void Skip() { ++at_; }
  std::size_t at() const { return at_; }
  void Return(std::size_t at) { at_ = at; }

  // Up to a blank, and also to ";" and a quote if asked.
  std::string_view Word(bool ends_at_signs) {
    const std::size_t start = at_;
    while (at_ < text_.size() && !IsBlank(text_[at_]) &&
           !(ends_at_signs && (text_[at_] == ';' || text_[at_] == '"'))) {
      ++at_;
    }
    return text_.substr(start, at_ - start);
  }
  // Up to the next quote, which is passed; false where there is none.
  bool String(std::string_view* string) {
    const std::size_t start = ++at_;
    const std::size_t end = text_.find('"', start);
    at_ = end == std::string_view::npos ? text_.size() : end + 1;
    *string = text_.substr(start, end - start);
    return end != std::string_view::npos;
  }
  std::string_view Rest() const { return text_.substr(at_); }

 private:
  std::string_view text_;
  std::size_t at_ = 0;
};

bool IsNumber(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) {
    return c >= '0' && c <= '9';
  });
}

// The operands up to ";"; false where the line ends first.
bool ReadOperands(Cursor& cursor, EpdOperation& operation,
                  std::vector<Problem>& problems) {
  while (true) {
    cursor.SkipBlanks();
    if (cursor.AtEnd()) return false;
    if (cursor.Peek() == ';') {
      cursor.Skip();
      return true;
    }
    std::string_view text;
    EpdOperand operand;
    if (cursor.Peek() == '"') {
      if (!cursor.String(&text)) {
        problems.push_back({operation.opcode, "string not closed", Quoted(text),
                            "a double quote"});
        return true;  // the missing ";" is not told as well
      }
      operand = EpdString(text);
    } else {
      text = cursor.Word(true);
      operand = EpdSymbol(text);
      if (const auto integer = ReadEpdInteger(text)) {
        operand.kind = EpdOperand::Kind::kInteger;
        operand.integer = *integer;
      }
    }
    if (text.size() > kMostEpdOperandBytes) {
      problems.push_back(
          {operation.opcode, "operand too long", Quoted(text),
           "at most " + std::to_string(kMostEpdOperandBytes) + " bytes"});
    }
    operation.operands.push_back(std::move(operand));
  }
}

void ReadOperations(Cursor& cursor, EpdRecord& record,
                    std::vector<Problem>& problems) {
  while (true) {
    cursor.SkipBlanks();
    if (cursor.AtEnd()) return;
    if (record.operations.size() >= kMostEpdOperations) {
      problems.push_back({"epd", "too many operations", Quoted(cursor.Rest()),
                          "at most " + std::to_string(kMostEpdOperations)});
      return;
    }
    EpdOperation operation;
    const std::string_view opcode = cursor.Word(true);
    const bool known = IsEpdOpcodeName(opcode);
    operation.opcode = known ? std::string(opcode) : "epd";
    if (!known) {
      problems.push_back(
          {"epd", "text without an opcode",
           Quoted(opcode.empty() ? cursor.Rest().substr(0, 1) : opcode),
           "a letter, then at most 14 letters, digits and underscores"});
    }
    const std::size_t before = problems.size();
    if (!ReadOperands(cursor, operation, problems)) {
      problems.push_back({operation.opcode, "not ended", "the line's end",
                          "\";\" after the operation"});
    }
    if (operation.operands.size() > kMostEpdOperands) {
      problems.push_back({operation.opcode, "wrong number of operands",
                          std::to_string(operation.operands.size()),
                          "at most " + std::to_string(kMostEpdOperands)});
    }
    if (!known || problems.size() > before) continue;
    if (record.Find(operation.opcode) != nullptr) {
      problems.push_back(
          {operation.opcode, "given twice", Quoted(operation.opcode), "once"});
      continue;
    }
    record.operations.push_back(std::move(operation));
  }
}

// The counter that an operation gives, unless FEN's own field says otherwise.
void TakeCounter(const EpdRecord& record, const char* opcode, int lowest,
                 bool told, int& counter, std::vector<Problem>& problems) {
  const EpdOperation* operation = record.Find(opcode);
  if (operation == nullptr || operation->operands.size() != 1) return;
  const EpdOperand& operand = operation->operands[0];
  if (operand.kind != EpdOperand::Kind::kInteger || operand.integer < lowest ||
      operand.integer > kMostEpdCounter) {
    return;  // told by the check of operands
  }
  if (told && operand.integer != counter) {
    problems.push_back({opcode, "differs from the FEN counter",
                        std::to_string(operand.integer),
                        std::to_string(counter)});
    return;
  }
  counter = static_cast<int>(operand.integer);
}

}  // namespace

absl::StatusOr<EpdRecord> ParseEpd(std::string_view line) {
  if (line.size() > kMostEpdBytes) {
    return ProblemStatus({"epd", "too long",
                          std::to_string(line.size()) + " bytes",
                          "at most " + std::to_string(kMostEpdBytes)});
  }
  while (!line.empty() && (line.back() == '\n' || line.back() == '\r')) {
    line.remove_suffix(1);
  }
  Cursor cursor(line);
  for (int field = 0; field < 4; ++field) {
    cursor.SkipBlanks();
    cursor.Word(false);
  }
  const std::size_t four = cursor.at();
  cursor.SkipBlanks();
  bool counters = IsNumber(cursor.Word(false));
  cursor.SkipBlanks();
  counters = IsNumber(cursor.Word(false)) && counters;
  if (!counters) cursor.Return(four);

  std::vector<Problem> problems;
  const absl::StatusOr<ParsedPosition> parsed =
      ParseFen(line.substr(0, cursor.at()));
  if (!parsed.ok()) problems = ProblemsOf(parsed.status());
  EpdRecord record;
  ReadOperations(cursor, record, problems);
  bool has_position = false;
  if (parsed.ok()) {
    ParsedPosition with = *parsed;
    TakeCounter(record, "hmvc", 0, counters, with.halfmove_clock, problems);
    TakeCounter(record, "fmvn", 1, counters, with.fullmove_number, problems);
    const absl::StatusOr<Position> position = CheckedPosition(with);
    has_position = position.ok();
    if (has_position) {
      record.position = *position;
    } else {
      for (Problem& problem : ProblemsOf(position.status())) {
        problems.push_back(std::move(problem));
      }
    }
  }
  for (EpdOperation& operation : record.operations) {
    CheckEpdOperation(has_position ? &record.position : nullptr, operation,
                      problems);
  }
  if (!problems.empty()) return ProblemsStatus(problems);
  return record;
}

}  // namespace assay
