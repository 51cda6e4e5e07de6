#include "assay/explain/text.h"

#include <cstdlib>

#include "assay/explain/catalogue.h"
#include "assay/notation/fen.h"

namespace assay {
namespace {

// "+0.42 for White", and what search made of it.
Message ScoreOf(const Explanation& explanation) {
  const std::string counted = PawnsText(explanation.score_cp);
  if (!explanation.proof.has_value()) return Say("text.score", counted);
  const Proof& proof = *explanation.proof;
  if (proof.mate_in != 0) {
    return Say("text.score_mate", counted, std::abs(proof.mate_in));
  }
  return Say("text.score_proved", counted, PawnsText(proof.score_cp));
}

// The words of one explanation in a language.
class Labels {
 public:
  explicit Labels(const std::string& language)
      : words_(Catalogue::Of(language) == nullptr ? Catalogue::English()
                                                  : *Catalogue::Of(language)) {}

  // What stands before a line: right-aligned.
  std::string operator()(std::string_view id) const {
    return Padded(std::string(words_.Find(id)), 9) + "  ";
  }
  std::string Head(const Explanation& explanation) const {
    const std::string nag = std::to_string(explanation.verdict.nag);
    return "$" + nag + " " + std::string(words_.Find("nag." + nag)) + "; " +
           words_.Text(ScoreOf(explanation));
  }

 private:
  const Catalogue& words_;
};

// The last note is on the centre, those before it on the named structure.
void WriteStructure(const std::vector<std::string>& notes, const Labels& label,
                    TextWriter& out) {
  std::string structure;
  for (std::size_t i = 0; i + 1 < notes.size(); ++i) {
    if (i > 0) structure += ' ';
    structure += notes[i];
  }
  if (!structure.empty()) out.Wrapped(label("label.structure"), structure);
  if (!notes.empty()) out.Wrapped(label("label.centre"), notes.back());
}

}  // namespace

std::string ToText(const Explanation& explanation, const TextStyle& style) {
  TextWriter out(style);
  out.Dim(ToFen(explanation.position));
  const Labels label(style.language);
  out.Bold(label.Head(explanation));
  out.Wrapped("  ", explanation.summary);
  for (const Reason& reason : explanation.reasons) {
    out.Wrapped(Padded(PawnsText(reason.value_cp), 7) + "  ", reason.text);
  }
  WriteStructure(explanation.structure.notes, label, out);
  for (const ToldPlan& plan : explanation.plans) {
    out.Wrapped(label("label.plan"), plan.text);
  }
  for (const Caution& caution : explanation.cautions) {
    out.Wrapped(label("label.caution"), caution.text);
  }
  for (const Threat& threat : explanation.threats) {
    // What the mover wins is its advice.
    if (threat.side == explanation.position.side_to_move()) continue;
    out.Wrapped(label("label.threat"), threat.text);
  }
  for (const Temptation& temptation : explanation.temptations) {
    out.Wrapped(label("label.tempting"), temptation.text);
  }
  if (explanation.advice.has_value()) {
    out.Wrapped(label("label.first"), explanation.advice->text);
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
