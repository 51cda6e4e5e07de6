#include "assay/terms/weights.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <optional>
#include <set>

#include "assay/base/problem.h"

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

const std::vector<WeightField>& WeightFields() {
#define ASSAY_WEIGHT(name) \
  WeightField { #name, &Weights::name }
  static const auto& fields = *new std::vector<WeightField>{
      ASSAY_WEIGHT(pawn),
      ASSAY_WEIGHT(knight),
      ASSAY_WEIGHT(bishop),
      ASSAY_WEIGHT(rook),
      ASSAY_WEIGHT(queen),
      ASSAY_WEIGHT(knight_pawns),
      ASSAY_WEIGHT(rook_pawns),
      ASSAY_WEIGHT(second_rook),
      ASSAY_WEIGHT(bishop_pair),
      ASSAY_WEIGHT(bishop_pair_ram),
      ASSAY_WEIGHT(bishop_pair_pawn_gone),
      ASSAY_WEIGHT(bishop_pair_lever),
      ASSAY_WEIGHT(doubled_pawns),
      ASSAY_WEIGHT(doubled_isolated),
      ASSAY_WEIGHT(doubled_open),
      ASSAY_WEIGHT(doubled_lever),
      ASSAY_WEIGHT(isolated_pawn),
      ASSAY_WEIGHT(isolated_open),
      ASSAY_WEIGHT(backward_pawn),
      ASSAY_WEIGHT(backward_open),
      ASSAY_WEIGHT(weak_pawn_held),
      ASSAY_WEIGHT(weak_pawn_besieged),
      ASSAY_WEIGHT(hanging_pawns),
      ASSAY_WEIGHT(chain_base_hit),
      ASSAY_WEIGHT(pawn_island),
      ASSAY_WEIGHT(pawn_link),
      ASSAY_WEIGHT(advanced_pawn),
      ASSAY_WEIGHT(candidate),
      ASSAY_WEIGHT(wing_majority),
      ASSAY_WEIGHT(king_wing_minority),
      ASSAY_WEIGHT(centre_majority),
      ASSAY_WEIGHT(hole),
      ASSAY_WEIGHT(hole_occupied),
      ASSAY_WEIGHT(passed_rank2),
      ASSAY_WEIGHT(passed_rank3),
      ASSAY_WEIGHT(passed_rank4),
      ASSAY_WEIGHT(passed_rank5),
      ASSAY_WEIGHT(passed_rank6),
      ASSAY_WEIGHT(passed_rank7),
      ASSAY_WEIGHT(passed_protected),
      ASSAY_WEIGHT(passed_blockaded),
      ASSAY_WEIGHT(passed_connected),
      ASSAY_WEIGHT(passed_outside),
      ASSAY_WEIGHT(passed_free_path),
      ASSAY_WEIGHT(passed_king_nearer),
      ASSAY_WEIGHT(rook_behind_passer),
      ASSAY_WEIGHT(knight_outpost),
      ASSAY_WEIGHT(bishop_outpost),
      ASSAY_WEIGHT(outpost_uncontested),
      ASSAY_WEIGHT(outpost_in_reach),
      ASSAY_WEIGHT(bad_bishop),
      ASSAY_WEIGHT(screened_minor),
      ASSAY_WEIGHT(knight_for_bishop_ram),
      ASSAY_WEIGHT(knight_on_rim),
      ASSAY_WEIGHT(rook_open_file),
      ASSAY_WEIGHT(rook_half_open_file),
      ASSAY_WEIGHT(rook_seventh),
      ASSAY_WEIGHT(doubled_rooks),
      ASSAY_WEIGHT(hanging),
      ASSAY_WEIGHT(hanging_own_move),
      ASSAY_WEIGHT(hanging_second),
      ASSAY_WEIGHT(loose_piece),
      ASSAY_WEIGHT(pinned),
      ASSAY_WEIGHT(trapped),
      ASSAY_WEIGHT(under_fire),
      ASSAY_WEIGHT(thinly_guarded),
      ASSAY_WEIGHT(early_queen),
      ASSAY_WEIGHT(knight_scope),
      ASSAY_WEIGHT(bishop_scope),
      ASSAY_WEIGHT(rook_scope),
      ASSAY_WEIGHT(queen_scope),
      ASSAY_WEIGHT(knight_square_taken),
      ASSAY_WEIGHT(shelter_gap),
      ASSAY_WEIGHT(flank_pawn_moved),
      ASSAY_WEIGHT(diagonal_to_king),
      ASSAY_WEIGHT(diagonal_entered),
      ASSAY_WEIGHT(file_to_king_open),
      ASSAY_WEIGHT(file_to_king_occupied),
      ASSAY_WEIGHT(king_attackers),
      ASSAY_WEIGHT(king_weak_square),
      ASSAY_WEIGHT(king_zone_twice),
      ASSAY_WEIGHT(king_zone_open),
      ASSAY_WEIGHT(check_square),
      ASSAY_WEIGHT(near_king),
      ASSAY_WEIGHT(king_shut),
      ASSAY_WEIGHT(uncastled),
      ASSAY_WEIGHT(castling_lost),
      ASSAY_WEIGHT(king_ahead),
      ASSAY_WEIGHT(king_ahead_rank),
      ASSAY_WEIGHT(king_activity),
      ASSAY_WEIGHT(king_near_pawns),
      ASSAY_WEIGHT(king_raid),
      ASSAY_WEIGHT(undeveloped),
      ASSAY_WEIGHT(centre_control),
      ASSAY_WEIGHT(far_control),
      ASSAY_WEIGHT(space),
      ASSAY_WEIGHT(exact_win),
      ASSAY_WEIGHT(lucena),
      ASSAY_WEIGHT(lone_king_edge),
      ASSAY_WEIGHT(lone_king_corner),
      ASSAY_WEIGHT(lone_king_near),
      ASSAY_WEIGHT(tempo),
  };
#undef ASSAY_WEIGHT
  return fields;
}

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
