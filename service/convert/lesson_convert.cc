#include "service/convert/lesson_convert.h"

#include "assay/notation/fen.h"

namespace assay::service {
namespace {

void SetProvenance(const Assayer& assayer, v1::Provenance* provenance) {
  provenance->set_version(kVersion);
  provenance->set_catalogue_version(kCatalogueVersion);
  provenance->set_weights_fingerprint(assayer.weights_fingerprint());
}

// Counts of one file of games: far below the limit of the field.
std::uint32_t Small(std::size_t count) {
  return static_cast<std::uint32_t>(count);
}

void HabitToProto(const Habit& habit, v1::Habit* message) {
  message->set_id(habit.id);
  message->set_name(habit.name);
  message->set_count(Small(habit.own.count));
  message->set_chances(Small(habit.own.chances));
  message->set_opponents_count(Small(habit.others.count));
  message->set_opponents_chances(Small(habit.others.chances));
  message->set_share_low(habit.interval.low);
  message->set_share_high(habit.interval.high);
  for (const auto& structure : habit.structures) {
    v1::HabitStructure* counted = message->add_structures();
    counted->set_name(structure.first);
    counted->set_count(Small(structure.second));
  }
  for (const HabitPlace& place : habit.clearest) {
    v1::HabitPlace* shown = message->add_clearest();
    shown->set_game(place.game);
    shown->set_ply(static_cast<std::uint32_t>(place.ply));
    shown->set_fen(ToFen(place.position));
    shown->set_where(place.where);
    shown->set_text(place.text);
    shown->set_cost_cp(static_cast<std::uint32_t>(place.cost_cp));
  }
}

}  // namespace

void ToProto(const KeyPosition& key, const Explanation& explanation,
             const Assayer& assayer, v1::LessonItem* message) {
  message->set_game(key.game);
  for (const std::string& san : key.path) message->add_path(san);
  message->set_chosen_because(key.because);
  for (const std::string& other : key.also_reached) {
    message->add_also_reached(other);
  }
  ToProto(explanation, assayer, message->mutable_explanation());
}

void ToProto(const Finding& finding, const Assayer& assayer,
             v1::Finding* message) {
  message->set_game(finding.game);
  for (const std::string& san : finding.path) message->add_path(san);
  message->set_kind(finding.kind);
  message->set_title(finding.title);
  message->set_place(finding.place);
  message->set_author_says(finding.author_says);
  message->set_found(finding.found);
  if (finding.proof.has_value()) {
    ToProto(finding.position, *finding.proof, message->mutable_proof());
  }
  SetProvenance(assayer, message->mutable_provenance());
}

void ToProto(const StudentReport& report, const Assayer& assayer,
             v1::StudentReport* message) {
  message->set_games(Small(report.games));
  message->set_moves(Small(report.moves));
  for (const Habit& habit : report.concessions) {
    HabitToProto(habit, message->add_concessions());
  }
  for (const Habit& habit : report.ignored) {
    HabitToProto(habit, message->add_ignored_plans());
  }
  SetProvenance(assayer, message->mutable_provenance());
}

}  // namespace assay::service
