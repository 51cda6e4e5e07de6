#include "assay/explain/text.h"

#include <cstdlib>

#include "assay/explain/catalogue.h"
#include "assay/explain/line_text.h"
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

// The words around the texts.
class Labels {
 public:
  explicit Labels(const TextStyle& style)
      : words_(Catalogue::OrEnglish(style.language, style.audience)) {}

  // What stands before a line: right-aligned.
  std::string operator()(std::string_view id) const {
    return Padded(std::string(words_.Find(id)), 9) + "  ";
  }

  std::string Head(const Explanation& explanation) const {
    const std::string nag = std::to_string(explanation.verdict.nag);
    const std::string verdict(words_.Nag(explanation.verdict.nag));
    if (words_.audience() != Audience::kNewcomer) {
      return "$" + nag + " " + verdict + "; " +
             words_.Text(ScoreOf(explanation));
    }
    // No values but one: a mate is what it is.
    const auto& proof = explanation.proof;
    const bool mates = proof.has_value() && proof->mate_in != 0;
    return mates ? verdict + "; " + words_.Text(ScoreOf(explanation)) : verdict;
  }

  // Newcomers read no values; experts have them in the sentence.
  std::string Margin(Centipawns value) const {
    return words_.audience() == Audience::kClub
               ? Padded(PawnsText(value), 7) + "  "
               : "  ";
  }

  // The line that was searched; experts want to see it.
  std::string Line(const Explanation& explanation) const {
    const auto& proof = explanation.proof;
    if (words_.audience() != Audience::kExpert || !proof.has_value() ||
        proof->line.empty()) {
      return "";
    }
    return words_.Text(Say("text.line",
                           LineText(explanation.position, proof->line),
                           proof->depth, static_cast<int>(proof->nodes)));
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
  const Labels label(style);
  out.Bold(label.Head(explanation));
  out.Wrapped("  ", explanation.summary);
  for (const Reason& reason : explanation.reasons) {
    out.Wrapped(label.Margin(reason.value_cp), reason.text);
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
  const std::string line = label.Line(explanation);
  if (!line.empty()) out.Wrapped(label("label.line"), line);
  if (style.ledger) {
    for (const ExplainedEntry& entry : explanation.ledger) {
      out.Wrapped("  " + Padded(PawnsText(entry.entry.value_cp), 7) + "  ",
                  entry.text);
    }
  }
  return out.Take();
}

}  // namespace assay
