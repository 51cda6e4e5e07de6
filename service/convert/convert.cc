#include "service/convert/convert.h"

#include <string>

#include "assay/base/problem.h"
#include "assay/base/problem_status.h"
#include "assay/notation/fen.h"
#include "assay/notation/san.h"
#include "assay/terms/term.h"

namespace assay::service {
namespace {

using service::ToProto;  // overloads below would hide them

constexpr std::size_t kMostProblems = 10;

// The contract's numbers are the library's, one higher: 0 is unspecified.
v1::PieceKind ToProto(PieceKind kind) {
  return kind == PieceKind::kNone ? v1::PIECE_KIND_UNSPECIFIED
                                  : static_cast<v1::PieceKind>(Index(kind) + 1);
}

v1::Centre ToProto(Centre centre) {
  switch (centre) {
    case Centre::kOpen:
      return v1::CENTRE_OPEN;
    case Centre::kClosed:
      return v1::CENTRE_CLOSED;
    case Centre::kFixed:
      return v1::CENTRE_FIXED;
    case Centre::kTension:
      return v1::CENTRE_TENSION;
    case Centre::kMobile:
      return v1::CENTRE_MOBILE;
    case Centre::kUnresolved:
      break;
  }
  return v1::CENTRE_UNRESOLVED;
}

template <class Repeated>
void AddRefs(const ClaimRefs& refs, Repeated* repeated) {
  repeated->Add(refs.begin(), refs.end());
}

void ToProto(const Verdict& verdict, v1::Verdict* message) {
  message->set_nag(verdict.nag);
  if (verdict.favours.has_value()) {
    message->set_favours(ToProto(*verdict.favours));
  }
  message->set_text(verdict.text);
  message->set_quiet(verdict.quiet);
  AddRefs(verdict.claims, message->mutable_claims());
}

void ToProto(const ExplainedEntry& explained, v1::LedgerEntry* message) {
  const Entry& entry = explained.entry;
  const TermInfo& term = Info(entry.term);
  message->set_term(std::string(term.name));
  message->set_theme(std::string(Name(term.theme)));
  message->set_side(ToProto(entry.side));
  message->set_value_cp(entry.value_cp);
  message->set_midgame_cp(entry.tapered.midgame);
  message->set_endgame_cp(entry.tapered.endgame);
  for (const Square square : Each(entry.squares)) {
    message->add_squares(ToString(square));
  }
  AddRefs(explained.claims, message->mutable_claims());
  message->set_text(explained.text);
}

void ToProto(const Reason& reason, v1::Reason* message) {
  message->set_text(reason.text);
  message->set_value_cp(reason.value_cp);
  message->mutable_entries()->Add(reason.entries.begin(), reason.entries.end());
  AddRefs(reason.claims, message->mutable_claims());
}

void ToProto(const Structure& structure, v1::Structure* message) {
  message->set_name(structure.name);
  message->set_centre(ToProto(structure.centre));
  for (const std::string& note : structure.notes) message->add_notes(note);
  AddRefs(structure.claims, message->mutable_claims());
}

template <class Repeated>
void AddSan(const Position& position, const std::vector<Move>& line,
            Repeated* repeated) {
  for (std::string& san : ToSan(position, line)) {
    repeated->Add(std::move(san));
  }
}

v1::Standing ToProto(Standing standing) {
  switch (standing) {
    case Standing::kInTime:
      return v1::STANDING_IN_TIME;
    case Standing::kSlow:
      return v1::STANDING_SLOW;
    case Standing::kStopped:
      return v1::STANDING_STOPPED;
    case Standing::kNeeds:
      break;
  }
  return v1::STANDING_NEEDS;
}

void ToProto(const ToldStep& step, v1::PlanStep* message) {
  message->set_san(step.san);
  message->set_from(ToString(step.move.from()));
  message->set_to(ToString(step.move.to()));
  for (const Square square : step.route) message->add_route(ToString(square));
  message->set_purpose(step.purpose);
  AddRefs(step.claims, message->mutable_claims());
}

void ToProto(const Position& position, const Caution& caution,
             v1::Caution* message) {
  message->set_kind(caution.kind);
  message->set_leads(caution.leads);
  message->set_text(caution.text);
  AddRefs(caution.claims, message->mutable_claims());
  if (caution.proof.has_value()) {
    ToProto(position, *caution.proof, message->mutable_proof());
  }
}

void ToProto(const Position& position, const Temptation& temptation,
             v1::Temptation* message) {
  message->set_san(ToSan(position, temptation.move));
  AddSan(position.After(temptation.move), temptation.refutation,
         message->mutable_refutation());
  message->set_loss_cp(temptation.loss_cp);
  message->set_text(temptation.text);
  AddRefs(temptation.claims, message->mutable_claims());
  ToProto(position, temptation.proof, message->mutable_proof());
}

void ToProto(const Position& position, const Advice& advice,
             v1::Advice* message) {
  message->set_san(ToSan(position, advice.move));
  if (advice.plan.has_value()) message->set_plan(*advice.plan);
  message->set_text(advice.text);
  AddRefs(advice.claims, message->mutable_claims());
}

}  // namespace

v1::Side ToProto(Side side) {
  return side == Side::kWhite ? v1::SIDE_WHITE : v1::SIDE_BLACK;
}

void ToProto(const Position& position, const Proof& proof, v1::Proof* message) {
  message->set_score_cp(proof.score_cp);
  message->set_mate_in(proof.mate_in);
  AddSan(position, proof.line, message->mutable_line());
  message->set_depth(static_cast<unsigned>(proof.depth));
  message->set_nodes(proof.nodes);
  message->set_complete(proof.complete);
}

void ToProto(const Position& position, const ToldPlan& told,
             v1::Plan* message) {
  const Plan& plan = told.plan;
  message->set_side(ToProto(plan.side));
  message->set_kind(Name(plan.kind));
  message->set_title(told.title);
  message->set_text(told.text);
  for (const ToldStep& step : told.steps) ToProto(step, message->add_steps());
  message->set_tempi(static_cast<unsigned>(plan.tempi()));
  message->set_gain_cp(plan.gain);
  message->set_promise_cp(plan.gain - told.ignored_gain);
  message->set_standing(ToProto(plan.standing));
  message->set_needs(told.needs);
  for (const Square square : plan.targets) {
    message->add_targets(ToString(square));
  }
  if (!told.counter.empty()) {
    v1::Counter* counter = message->mutable_counter();
    for (const ToldStep& step : told.counter) {
      ToProto(step, counter->add_steps());
    }
    counter->set_tempi(static_cast<unsigned>(told.counter.size()));
    counter->set_text(told.counter_text);
    AddRefs(told.counter_claims, counter->mutable_claims());
  }
  v1::IfIgnored* ignored = message->mutable_if_ignored();
  AddSan(position, told.ignored_line, ignored->mutable_line());
  ignored->set_gain_cp(told.ignored_gain);
  ignored->set_text(told.ignored_text);
  AddRefs(told.ignored_claims, ignored->mutable_claims());
  AddRefs(told.claims, message->mutable_claims());
  if (!plan.proof.line.empty()) {
    ToProto(position, plan.proof, message->mutable_proof());
  }
}

void ToProto(const Position& position, const Threat& threat,
             v1::Threat* message) {
  message->set_side(ToProto(threat.side));
  AddSan(position, threat.line, message->mutable_line());
  message->set_gain_cp(threat.gain_cp);
  message->set_text(threat.text);
  AddRefs(threat.claims, message->mutable_claims());
}

void ToProto(const Position& position, const Claim& claim, v1::Claim* message) {
  message->set_kind(static_cast<v1::ClaimKind>(claim.kind));
  if (claim.has_side) message->set_side(ToProto(claim.side));
  for (const Square square : claim.squares) {
    message->add_squares(ToString(square));
  }
  for (const Square square : claim.others) {
    message->add_others(ToString(square));
  }
  message->set_count(claim.count);
  message->set_other_count(claim.other_count);
  for (std::string& san : ToSan(position, claim.line)) {
    message->add_line(std::move(san));
  }
  message->set_piece(ToProto(claim.piece));
  message->set_tempi(static_cast<unsigned>(claim.tempi));
}

void ToProto(const Explanation& explanation, const Assayer& assayer,
             v1::Explanation* message) {
  message->set_fen(ToFen(explanation.position));
  message->set_side_to_move(ToProto(explanation.position.side_to_move()));
  message->set_score_cp(explanation.score_cp);
  ToProto(explanation.verdict, message->mutable_verdict());
  for (const ExplainedEntry& entry : explanation.ledger) {
    ToProto(entry, message->add_ledger());
  }
  for (const Reason& reason : explanation.reasons) {
    ToProto(reason, message->add_reasons());
  }
  const Position& position = explanation.position;
  for (const ToldPlan& plan : explanation.plans) {
    ToProto(position, plan, message->add_plans());
  }
  for (const Caution& caution : explanation.cautions) {
    ToProto(position, caution, message->add_cautions());
  }
  for (const Temptation& temptation : explanation.temptations) {
    ToProto(position, temptation, message->add_temptations());
  }
  for (const Threat& threat : explanation.threats) {
    ToProto(position, threat, message->add_threats());
  }
  if (explanation.advice.has_value()) {
    ToProto(position, *explanation.advice, message->mutable_advice());
  }
  ToProto(explanation.structure, message->mutable_structure());
  for (const Claim& claim : explanation.claims) {
    ToProto(position, claim, message->add_claims());
  }
  if (explanation.proof.has_value()) {
    ToProto(position, *explanation.proof, message->mutable_proof());
  }
  message->set_summary(explanation.summary);
  AddRefs(explanation.summary_claims, message->mutable_summary_claims());
  ToProto(assayer, message->mutable_provenance());
}

void ToProto(const Assayer& assayer, v1::Provenance* message) {
  message->set_version(kVersion);
  message->set_catalogue_version(kCatalogueVersion);
  message->set_weights_fingerprint(assayer.weights_fingerprint());
}

void ToProto(const absl::Status& status, v1::ItemError* message) {
  message->set_code(static_cast<int>(status.code()));
  message->set_message(std::string(status.message()));
  for (const Problem& problem : ProblemsOf(status)) {
    if (message->problems_size() == static_cast<int>(kMostProblems)) break;
    v1::FieldProblem* added = message->add_problems();
    added->set_field(problem.field);
    added->set_reason(problem.reason);
    added->set_found(problem.found);
    added->set_expected(problem.expected);
  }
}

void ToProto(const Assayer& assayer, v1::ListTermsResponse* message) {
  for (int i = 0; i < kTerms; ++i) {
    const TermInfo& info = Info(static_cast<TermId>(i));
    v1::Term* term = message->add_terms();
    term->set_id(std::string(info.name));
    term->set_theme(std::string(Name(info.theme)));
    term->set_title(std::string(info.title));
    term->set_definition(std::string(info.definition));
    if (info.weight != nullptr) {
      term->set_midgame_cp((assayer.weights().*info.weight).midgame);
      term->set_endgame_cp((assayer.weights().*info.weight).endgame);
    }
    term->set_reason(std::string(info.reason));
    term->set_source(std::string(info.source));
    for (const int nag : info.nags) term->add_nags(nag);
  }
  message->set_catalogue_version(kCatalogueVersion);
  message->set_weights_fingerprint(assayer.weights_fingerprint());
}

}  // namespace assay::service
