#include "assay/explain/wording.h"

#include "assay/explain/glossary.h"
#include "assay/explain/text_writer.h"

namespace assay {
namespace {

// With the details first, so that the summary stays short.
void ExplainTradeWords(const Catalogue& words, Explanation& explanation) {
  if (words.glossary().empty()) return;
  Glossary glossary(words.glossary());
  const auto each = [&](auto& list) {
    for (auto& item : list) glossary.Explain(item.text);
  };
  each(explanation.reasons);
  for (std::string& note : explanation.structure.notes) glossary.Explain(note);
  each(explanation.plans);
  each(explanation.cautions);
  each(explanation.threats);
  each(explanation.temptations);
  if (explanation.advice.has_value()) {
    glossary.Explain(explanation.advice->text);
  }
  glossary.Explain(explanation.summary);
}

// "White: more space (+0.16)."
void AddValue(const Catalogue& words, Reason& reason) {
  reason.said = Sentence(
      Say("reason.value", ClauseOf(reason.said), PawnsText(reason.value_cp)));
  reason.text = words.Text(reason.said);
}

}  // namespace

void PutIntoWords(const Catalogue& words, ToldPlan& plan) {
  plan.title = words.Text(plan.title_said);
  plan.text = words.Text(plan.said);
  for (ToldStep& step : plan.steps) {
    step.purpose = words.Text(step.purpose_said);
  }
  plan.needs = words.Text(plan.needs_said);
  plan.counter_text = words.Text(plan.counter_said);
  plan.ignored_text = words.Text(plan.ignored_said);
}

void PutIntoWords(const Catalogue& words, Explanation& explanation) {
  const auto each = [&](auto& list) {
    for (auto& item : list) item.text = words.Text(item.said);
  };
  explanation.verdict.text = words.Text(explanation.verdict.said);
  each(explanation.ledger);
  each(explanation.reasons);
  each(explanation.cautions);
  each(explanation.temptations);
  each(explanation.threats);
  for (ToldPlan& plan : explanation.plans) PutIntoWords(words, plan);
  Structure& structure = explanation.structure;
  structure.name = words.Text(structure.name_said);
  for (const Message& note : structure.notes_said) {
    structure.notes.push_back(words.Text(note));
  }
  if (explanation.advice.has_value()) {
    explanation.advice->text = words.Text(explanation.advice->said);
  }
  explanation.summary = words.Text(explanation.summary_said);
  if (words.audience() == Audience::kExpert) {
    for (Reason& reason : explanation.reasons) AddValue(words, reason);
  }
  ExplainTradeWords(words, explanation);
}

}  // namespace assay
