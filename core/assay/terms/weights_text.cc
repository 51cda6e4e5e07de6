#include "assay/terms/weights_text.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <optional>
#include <set>
#include <utility>
#include <vector>

#include "assay/base/problem_status.h"

namespace assay {
namespace {

constexpr int kLargest = 10000;

std::vector<std::string_view> Words(std::string_view line) {
  std::vector<std::string_view> words;
  std::size_t at = 0;
  constexpr std::string_view kBlank = " \t\r";
  while ((at = line.find_first_not_of(kBlank, at)) != std::string_view::npos) {
    const std::size_t end =
        std::min(line.find_first_of(kBlank, at), line.size());
    words.push_back(line.substr(at, end - at));
    at = end;
  }
  return words;
}

std::optional<int> WholeNumber(std::string_view text) {
  const bool negative = !text.empty() && text.front() == '-';
  if (negative) text.remove_prefix(1);
  if (text.empty() || text.size() > 6) return std::nullopt;
  int value = 0;
  for (const char c : text) {
    if (c < '0' || c > '9') return std::nullopt;
    value = value * 10 + (c - '0');
  }
  return negative ? -value : value;
}

const WeightField* FindField(std::string_view name) {
  for (const WeightField& field : WeightFields()) {
    if (field.name == name) return &field;
  }
  return nullptr;
}

// Reads one line's words into the weights; a Problem where it cannot.
std::optional<Problem> ReadLine(const std::vector<std::string_view>& words,
                                const std::string& where,
                                std::set<std::string_view>& named,
                                Weights& weights) {
  const WeightField* field = FindField(words[0]);
  if (field == nullptr) {
    return Problem{where, "no such weight", Quoted(words[0]),
                   "a name that `assay terms --format weights` lists"};
  }
  if (!named.insert(field->name).second) {
    return Problem{where, "weight named twice", Quoted(words[0]),
                   "each weight at most once"};
  }
  std::optional<int> values[2];
  for (std::size_t i = 0; i < 2 && i + 1 < words.size(); ++i) {
    values[i] = WholeNumber(words[i + 1]);
  }
  if (words.size() != 3 || !values[0].has_value() || !values[1].has_value()) {
    return Problem{where, "not a name and two numbers",
                   Quoted(words.size() > 1 ? words[1] : ""),
                   "name, middlegame and ending value in whole centipawns"};
  }
  for (const std::optional<int>& value : values) {
    if (std::abs(*value) > kLargest) {
      return Problem{where, "out of range", std::to_string(*value),
                     "-10000 to 10000"};
    }
  }
  weights.*(field->field) = {*values[0], *values[1]};
  return std::nullopt;
}

}  // namespace

absl::StatusOr<Weights> ParseWeights(std::string_view text) {
  if (text.size() > kMostWeightsBytes) {
    return ProblemStatus({"weights", "too long",
                          std::to_string(text.size()) + " bytes",
                          "at most 65536"});
  }
  Weights weights;
  std::vector<Problem> problems;
  std::set<std::string_view> named;
  int line_number = 0;
  while (!text.empty()) {
    ++line_number;
    const std::size_t end = std::min(text.find('\n'), text.size());
    std::string_view line = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    line = line.substr(0, line.find('#'));
    const std::vector<std::string_view> words = Words(line);
    if (words.empty()) continue;
    std::optional<Problem> problem = ReadLine(
        words, "weights line " + std::to_string(line_number), named, weights);
    if (problem.has_value()) problems.push_back(*std::move(problem));
  }
  if (!problems.empty()) return ProblemsStatus(problems);
  return weights;
}

std::string ToText(const Weights& weights) {
  std::string text = "# name midgame endgame, in centipawns\n";
  for (const WeightField& field : WeightFields()) {
    const Tapered value = weights.*(field.field);
    text += std::string(field.name) + " " + std::to_string(value.midgame) +
            " " + std::to_string(value.endgame) + "\n";
  }
  return text;
}

std::string Fingerprint(const Weights& weights) {
  // FNV-1a, 64 bits (Fowler, Noll, Vo; offset basis and prime as published).
  std::uint64_t hash = 0xCBF29CE484222325ULL;
  for (const char c : ToText(weights)) {
    hash ^= static_cast<unsigned char>(c);
    hash *= 0x100000001B3ULL;
  }
  char text[17];
  std::snprintf(text, sizeof(text), "%016llx",
                static_cast<unsigned long long>(hash));
  return text;
}

}  // namespace assay
