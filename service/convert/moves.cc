#include "service/convert/moves.h"

#include <string>

#include "assay/notation/fen.h"
#include "assay/notation/san.h"
#include "service/convert/convert.h"

namespace assay::service {
namespace {

using service::ToProto;  // overloads below would hide them

template <class Repeated>
void AddRefs(const ClaimRefs& refs, Repeated* repeated) {
  repeated->Add(refs.begin(), refs.end());
}

void ToProto(const LedgerChange& change, v1::LedgerChange* message) {
  if (change.term.has_value()) {
    message->set_term(std::string(Info(*change.term).name));
  }
  message->set_side(ToProto(change.side));
  message->set_change_cp(change.change_cp);
  for (const Square square : Each(change.squares)) {
    message->add_squares(ToString(square));
  }
  message->set_text(change.text);
  AddRefs(change.claims, message->mutable_claims());
  AddRefs(change.claims_before, message->mutable_claims_before());
}

void AddLine(const Position& position, const std::vector<Move>& line,
             google::protobuf::RepeatedPtrField<std::string>* repeated) {
  for (std::string& san : ToSan(position, line)) repeated->Add(std::move(san));
}

void AddClaims(const Position& position, const std::vector<Claim>& claims,
               google::protobuf::RepeatedPtrField<v1::Claim>* repeated) {
  for (const Claim& claim : claims) {
    ToProto(position, claim, repeated->Add());
  }
}

void ToProto(const MoveExplanation& told, const Settled& settled,
             v1::Settled* message) {
  AddLine(told.position, settled.line, message->mutable_line());
  message->set_fen(ToFen(settled.position));
  message->set_score_cp(settled.score_cp);
  for (const LedgerChange& gain : settled.balance.gains) {
    ToProto(gain, message->add_gains());
  }
  for (const LedgerChange& concession : settled.balance.concessions) {
    ToProto(concession, message->add_concessions());
  }
}

}  // namespace

void ToProto(const MoveExplanation& told, const Assayer& assayer,
             v1::MoveExplanation* message) {
  message->set_san(ToSan(told.position, told.move));
  message->set_fen_after(ToFen(told.after));
  message->set_score_before_cp(told.score_before_cp);
  message->set_score_after_cp(told.score_after_cp);
  for (const LedgerChange& gain : told.balance.gains) {
    ToProto(gain, message->add_gains());
  }
  for (const LedgerChange& concession : told.balance.concessions) {
    ToProto(concession, message->add_concessions());
  }
  for (const ToldPlan& plan : told.starts) {
    ToProto(told.after, plan, message->add_starts());
  }
  for (const ToldPlan& plan : told.stops) {
    ToProto(told.position, plan, message->add_stops());
  }
  for (const ToldPlan& plan : told.allows) {
    ToProto(told.after, plan, message->add_allows());
  }
  if (told.reply_to_fear.has_value()) {
    ToProto(told.after, *told.reply_to_fear, message->mutable_reply_to_fear());
  }
  message->set_summary(told.summary);
  AddRefs(told.summary_claims, message->mutable_summary_claims());
  AddClaims(told.position, told.claims, message->mutable_claims());
  if (told.proof.has_value()) {
    ToProto(told.position, *told.proof, message->mutable_proof());
  }
  if (told.settled.has_value()) {
    ToProto(told, *told.settled, message->mutable_settled());
  }
  ToProto(assayer, message->mutable_provenance());
}

void ToProto(const Comparison& comparison, const Position& position,
             const std::vector<Position>& others, const Assayer& assayer,
             v1::CompareResponse* message) {
  for (const Explanation& explanation : comparison.explanations) {
    ToProto(explanation, assayer, message->add_explanations());
  }
  for (const TermComparison& row : comparison.by_term) {
    v1::LedgerComparison* added = message->add_by_term();
    added->set_term(std::string(Info(row.term).name));
    added->set_title(row.title);
    added->mutable_value_cp()->Add(row.value_cp.begin(), row.value_cp.end());
  }
  message->set_decides(comparison.decides);
  AddClaims(position, comparison.claims, message->mutable_claims());
  for (std::size_t i = 0; i < comparison.claims_of_others.size(); ++i) {
    AddClaims(others[i], comparison.claims_of_others[i],
              message->add_claims_of_others()->mutable_claims());
  }
}

void ToProto(const WhatIf& told, const Assayer& assayer,
             v1::WhatIfResponse* message) {
  message->set_fen_after(ToFen(told.after));
  for (const LedgerChange& change : told.changes) {
    ToProto(change, message->add_changes());
  }
  message->set_summary(told.summary);
  for (const Attribution& attribution : told.attributions) {
    v1::Attribution* added = message->add_attributions();
    added->set_square(ToString(attribution.square));
    added->set_beyond_material_cp(attribution.beyond_material_cp);
  }
  AddClaims(told.after, told.claims, message->mutable_claims());
  AddRefs(told.summary_claims, message->mutable_summary_claims());
  AddClaims(told.position, told.claims_before,
            message->mutable_claims_before());
  AddRefs(told.summary_claims_before, message->mutable_summary_claims_before());
  message->set_score_before_cp(told.score_before_cp);
  message->set_score_after_cp(told.score_after_cp);
  ToProto(assayer, message->mutable_provenance());
}

}  // namespace assay::service
