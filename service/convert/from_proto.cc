#include "service/convert/from_proto.h"

#include <utility>

#include "assay/notation/fen.h"

namespace assay::service {
namespace {

Proof ProofFrom(const v1::Proof& message) {
  Proof proof;
  proof.score_cp = message.score_cp();
  proof.mate_in = message.mate_in();
  proof.depth = static_cast<int>(message.depth());
  proof.nodes = message.nodes();
  proof.complete = message.complete();
  return proof;
}

}  // namespace

absl::StatusOr<Explanation> FromProto(const v1::Explanation& message) {
  const absl::StatusOr<Position> position = PositionFromFen(message.fen());
  if (!position.ok()) return position.status();
  Explanation explanation(*position);
  explanation.score_cp = message.score_cp();
  explanation.verdict.nag = message.verdict().nag();
  explanation.verdict.text = message.verdict().text();
  explanation.summary = message.summary();
  for (const v1::Reason& from : message.reasons()) {
    Reason reason;
    reason.text = from.text();
    reason.value_cp = from.value_cp();
    explanation.reasons.push_back(std::move(reason));
  }
  explanation.structure.name = message.structure().name();
  explanation.structure.notes.assign(message.structure().notes().begin(),
                                     message.structure().notes().end());
  for (const v1::Plan& from : message.plans()) {
    ToldPlan plan;
    plan.text = from.text();
    explanation.plans.push_back(std::move(plan));
  }
  for (const v1::Caution& from : message.cautions()) {
    Caution caution;
    caution.text = from.text();
    explanation.cautions.push_back(std::move(caution));
  }
  for (const v1::Threat& from : message.threats()) {
    Threat threat;
    threat.side = from.side() == v1::SIDE_WHITE ? Side::kWhite : Side::kBlack;
    threat.text = from.text();
    explanation.threats.push_back(std::move(threat));
  }
  for (const v1::Temptation& from : message.temptations()) {
    Temptation temptation;
    temptation.text = from.text();
    explanation.temptations.push_back(std::move(temptation));
  }
  if (message.has_advice()) {
    explanation.advice.emplace().text = message.advice().text();
  }
  for (const v1::LedgerEntry& from : message.ledger()) {
    ExplainedEntry entry;
    entry.entry.value_cp = from.value_cp();
    entry.text = from.text();
    explanation.ledger.push_back(std::move(entry));
  }
  if (message.has_proof()) explanation.proof = ProofFrom(message.proof());
  return explanation;
}

}  // namespace assay::service
