#include "assay/explain/text.h"

#include <cstdlib>

#include "assay/notation/fen.h"
#include "assay/notation/nag.h"

namespace assay {
namespace {

// "+0.42 for White", and what search made of it.
std::string ScoreText(const Explanation& explanation) {
  std::string text = PawnsText(explanation.score_cp) + " for White";
  if (!explanation.proof.has_value()) return text;
  const Proof& proof = *explanation.proof;
  if (proof.mate_in != 0) {
    return text + " counted, mate in " +
           std::to_string(std::abs(proof.mate_in)) + " proved";
  }
  return text + " counted, " + PawnsText(proof.score_cp) + " proved";
}

// The last note is on the centre, those before it on the named structure.
void WriteStructure(const std::vector<std::string>& notes, TextWriter& out) {
  std::string structure;
  for (std::size_t i = 0; i + 1 < notes.size(); ++i) {
    if (i > 0) structure += ' ';
    structure += notes[i];
  }
  if (!structure.empty()) out.Wrapped("structure  ", structure);
  if (!notes.empty()) out.Wrapped("   centre  ", notes.back());
}

}  // namespace

std::string ToText(const Explanation& explanation, const TextStyle& style) {
  TextWriter out(style);
  out.Dim(ToFen(explanation.position));
  const int nag = explanation.verdict.nag;
  out.Bold("$" + std::to_string(nag) + " " + std::string(NagMeaning(nag)) +
           "; " + ScoreText(explanation));
  out.Wrapped("  ", explanation.summary);
  for (const Reason& reason : explanation.reasons) {
    out.Wrapped(Padded(PawnsText(reason.value_cp), 7) + "  ", reason.text);
  }
  WriteStructure(explanation.structure.notes, out);
  for (const ToldPlan& plan : explanation.plans) {
    out.Wrapped("     plan  ", plan.text);
  }
  for (const Caution& caution : explanation.cautions) {
    out.Wrapped("  caution  ", caution.text);
  }
  for (const Threat& threat : explanation.threats) {
    // What the mover wins is its advice.
    if (threat.side == explanation.position.side_to_move()) continue;
    out.Wrapped("   threat  ", threat.text);
  }
  for (const Temptation& temptation : explanation.temptations) {
    out.Wrapped(" tempting  ", temptation.text);
  }
  if (explanation.advice.has_value()) {
    out.Wrapped("    first  ", explanation.advice->text);
  }
  if (style.ledger) {
    for (const ExplainedEntry& entry : explanation.ledger) {
      out.Wrapped("  " + Padded(PawnsText(entry.entry.value_cp), 7) + "  ",
                  entry.text);
    }
  }
  return out.Take();
}

}  // namespace assay
