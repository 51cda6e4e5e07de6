#include "service/convert/from_proto.h"

#include <string>
#include <utility>

#include "assay/notation/fen.h"
#include "assay/notation/san.h"
#include "assay/rules/draw.h"
#include "assay/rules/movegen.h"
#include "service/convert/wording.h"

namespace assay::service {
namespace {

using Texts = google::protobuf::RepeatedPtrField<std::string>;

std::vector<Move> LineFrom(const Position& position, const Texts& texts) {
  std::vector<Move> line;
  Position at = position;
  for (const std::string& text : texts) {
    const bool pass = text == kPassText;
    if (pass && at.InCheck()) break;
    const absl::StatusOr<Move> move =
        pass ? absl::StatusOr<Move>(Move()) : ParseMove(at, text);
    if (!move.ok()) break;
    line.push_back(*move);
    at = at.AfterStep(*move);
  }
  return line;
}

Proof ProofFrom(const Position& position, const v1::Proof& message) {
  Proof proof;
  proof.score_cp = message.score_cp();
  proof.mate_in = message.mate_in();
  proof.line = LineFrom(position, message.line());
  proof.depth = static_cast<int>(message.depth());
  proof.nodes = message.nodes();
  proof.complete = message.complete();
  return proof;
}

Side SideFrom(v1::Side side) {
  return side == v1::SIDE_BLACK ? Side::kBlack : Side::kWhite;
}

Standing StandingFrom(v1::Standing standing) {
  switch (standing) {
    case v1::STANDING_IN_TIME:
      return Standing::kInTime;
    case v1::STANDING_SLOW:
      return Standing::kSlow;
    case v1::STANDING_STOPPED:
      return Standing::kStopped;
    default:
      return Standing::kNeeds;
  }
}

ToldStep StepFrom(const v1::PlanStep& message) {
  ToldStep step;
  step.san = message.san();
  const Square from = ParseSquare(message.from());
  const Square to = ParseSquare(message.to());
  // Where it goes; a castling's or promotion's kind is not looked at.
  if (from != kNoSquare && to != kNoSquare) step.move = Move(from, to);
  return step;
}

ToldPlan PlanFrom(const v1::Plan& message) {
  ToldPlan plan;
  plan.plan.side = SideFrom(message.side());
  plan.plan.standing = StandingFrom(message.standing());
  plan.title_said = FromProto(message.title_wording());
  plan.text = message.text();
  plan.needs_said = FromProto(message.needs_wording());
  plan.ignored_text = message.if_ignored().text();
  for (const v1::PlanStep& from : message.steps()) {
    plan.steps.push_back(StepFrom(from));
    plan.plan.moves.push_back(plan.steps.back().move);
  }
  for (const v1::PlanStep& from : message.counter().steps()) {
    plan.counter.push_back(StepFrom(from));
  }
  return plan;
}

Verdict VerdictFrom(const Position& position, const v1::Verdict& message) {
  Verdict verdict;
  verdict.nag = message.nag();
  if (message.favours() != v1::SIDE_UNSPECIFIED) {
    verdict.favours = SideFrom(message.favours());
  }
  verdict.text = message.text();
  verdict.said = FromProto(message.wording());
  verdict.quiet = message.quiet();
  verdict.over = !HasLegalMove(position) || IsInsufficientMaterial(position);
  return verdict;
}

ExplainedEntry EntryFrom(const v1::LedgerEntry& message) {
  ExplainedEntry entry;
  entry.entry.value_cp = message.value_cp();
  for (const std::string& name : message.squares()) {
    const Square square = ParseSquare(name);
    if (square != kNoSquare) entry.entry.squares |= Bit(square);
  }
  entry.text = message.text();
  return entry;
}

Reason ReasonFrom(const v1::Reason& message, std::size_t entries) {
  Reason reason;
  reason.text = message.text();
  reason.phrase = FromProto(message.phrase_wording());
  reason.value_cp = message.value_cp();
  for (const std::uint32_t entry : message.entries()) {
    if (entry < entries) reason.entries.push_back(entry);
  }
  return reason;
}

Caution CautionFrom(const Position& position, const v1::Caution& message) {
  Caution caution;
  caution.kind = message.kind();
  caution.leads = message.leads();
  caution.text = message.text();
  if (message.has_proof()) {
    caution.proof = ProofFrom(position, message.proof());
  }
  return caution;
}

Temptation TemptationFrom(const Position& position,
                          const v1::Temptation& message) {
  Temptation temptation;
  const absl::StatusOr<Move> move = ParseMove(position, message.san());
  if (move.ok()) temptation.move = *move;
  temptation.text = message.text();
  return temptation;
}

}  // namespace

absl::StatusOr<Explanation> FromProto(const v1::Explanation& message) {
  const absl::StatusOr<Position> position = PositionFromFen(message.fen());
  if (!position.ok()) return position.status();
  Explanation explanation(*position);
  explanation.score_cp = message.score_cp();
  explanation.verdict = VerdictFrom(*position, message.verdict());
  explanation.summary = message.summary();
  explanation.summary_said = FromProto(message.summary_wording());
  for (const v1::LedgerEntry& from : message.ledger()) {
    explanation.ledger.push_back(EntryFrom(from));
  }
  for (const v1::Reason& from : message.reasons()) {
    explanation.reasons.push_back(ReasonFrom(from, explanation.ledger.size()));
  }
  explanation.structure.name = message.structure().name();
  explanation.structure.notes.assign(message.structure().notes().begin(),
                                     message.structure().notes().end());
  for (const v1::Plan& from : message.plans()) {
    explanation.plans.push_back(PlanFrom(from));
  }
  for (const v1::Caution& from : message.cautions()) {
    explanation.cautions.push_back(CautionFrom(*position, from));
  }
  for (const v1::Threat& from : message.threats()) {
    Threat threat;
    threat.side = SideFrom(from.side());
    threat.text = from.text();
    explanation.threats.push_back(std::move(threat));
  }
  for (const v1::Temptation& from : message.temptations()) {
    explanation.temptations.push_back(TemptationFrom(*position, from));
  }
  if (message.has_advice()) {
    explanation.advice.emplace().text = message.advice().text();
  }
  if (message.has_proof()) {
    explanation.proof = ProofFrom(*position, message.proof());
  }
  return explanation;
}

}  // namespace assay::service
