#include "assay/explain/wording.h"

#include "assay/explain/comparison.h"
#include "assay/explain/glossary.h"
#include "assay/explain/move_explanation.h"
#include "assay/explain/text_writer.h"
#include "assay/explain/what_if.h"

namespace assay {
namespace {

template <class List>
void ExplainEach(List& list, Glossary& glossary) {
  for (auto& item : list) glossary.Explain(item.text);
}

// What stands beside the summary and the plans.
void ExplainDetails(Explanation& explanation, Glossary& glossary) {
  ExplainEach(explanation.cautions, glossary);
  ExplainEach(explanation.threats, glossary);
  ExplainEach(explanation.temptations, glossary);
  if (explanation.advice.has_value()) {
    glossary.Explain(explanation.advice->text);
  }
}

void ExplainGrounds(Explanation& explanation, Glossary& glossary) {
  ExplainEach(explanation.reasons, glossary);
  for (std::string& note : explanation.structure.notes) glossary.Explain(note);
}

// With the details first, so that the summary stays short.
void ExplainTradeWords(const Catalogue& words, Explanation& explanation) {
  if (words.glossary().empty()) return;
  Glossary glossary(words.glossary());
  ExplainGrounds(explanation, glossary);
  ExplainEach(explanation.plans, glossary);
  ExplainDetails(explanation, glossary);
  glossary.Explain(explanation.summary);
}

// What a reader of the move is shown at once comes before the rest.
void ExplainTradeWords(const Catalogue& words, MoveExplanation& told) {
  if (words.glossary().empty()) return;
  Glossary glossary(words.glossary());
  Balance* settled =
      told.settled.has_value() ? &told.settled->balance : nullptr;
  const auto changes = [&](Balance& balance, bool felt) {
    for (auto* list : {&balance.gains, &balance.concessions}) {
      for (LedgerChange& change : *list) {
        if (IsFelt(change) == felt) glossary.Explain(change.text);
      }
    }
  };
  Balance& shown = settled != nullptr ? *settled : told.balance;
  changes(shown, true);
  for (auto* plans : {&told.starts, &told.stops, &told.allows}) {
    for (ToldPlan& plan : *plans) glossary.Explain(plan.text);
  }
  if (told.reply_to_fear.has_value()) {
    glossary.Explain(told.reply_to_fear->text);
  }
  glossary.Explain(told.summary);
  changes(shown, false);
  if (settled == nullptr) return;
  changes(told.balance, true);
  changes(told.balance, false);
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

namespace {

// Without what trade words mean.
void PutTextsIntoWords(const Catalogue& words, Explanation& explanation,
                       std::size_t opening) {
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
  structure.notes.clear();
  for (const Message& note : structure.notes_said) {
    structure.notes.push_back(words.Text(note));
  }
  if (explanation.advice.has_value()) {
    explanation.advice->text = words.Text(explanation.advice->said);
  }
  explanation.summary = words.Text(explanation.summary_said, opening);
}

}  // namespace

void PutIntoWords(const Catalogue& words, LedgerChange& change) {
  change.text = words.Text(change.said);
}

void PutIntoWords(const Catalogue& words, MoveExplanation& told) {
  const auto each = [&](Balance& balance) {
    for (auto* list : {&balance.gains, &balance.concessions}) {
      for (LedgerChange& change : *list) PutIntoWords(words, change);
    }
  };
  each(told.balance);
  if (told.settled.has_value()) each(told.settled->balance);
  for (auto* plans : {&told.starts, &told.stops, &told.allows}) {
    for (ToldPlan& plan : *plans) PutIntoWords(words, plan);
  }
  if (told.reply_to_fear.has_value()) {
    told.reply_to_fear->text = words.Text(told.reply_to_fear->said);
  }
  told.summary = words.Text(told.summary_said);
  ExplainTradeWords(words, told);
}

void PutIntoWords(const Catalogue& words, Comparison& comparison) {
  comparison.decides = words.Text(comparison.decides_said);
  if (words.glossary().empty()) return;
  // Each word once in all of it: summaries and plans stand side by side.
  Glossary glossary(words.glossary());
  glossary.Explain(comparison.decides);
  for (Explanation& explanation : comparison.explanations) {
    PutTextsIntoWords(words, explanation, 0);
    glossary.Explain(explanation.summary);
    ExplainEach(explanation.plans, glossary);
  }
  for (Explanation& explanation : comparison.explanations) {
    ExplainGrounds(explanation, glossary);
    ExplainDetails(explanation, glossary);
  }
}

void PutIntoWords(const Catalogue& words, WhatIf& told) {
  Glossary glossary(words.glossary());
  for (const bool felt : {true, false}) {
    for (LedgerChange& change : told.changes) {
      if (IsFelt(change) != felt) continue;
      PutIntoWords(words, change);
      glossary.Explain(change.text);
    }
    if (!felt) continue;
    told.summary = words.Text(told.summary_said);
    glossary.Explain(told.summary);
  }
}

void PutIntoWords(const Catalogue& words, Explanation& explanation,
                  std::size_t opening) {
  PutTextsIntoWords(words, explanation, opening);
  if (words.audience() == Audience::kExpert) {
    for (Reason& reason : explanation.reasons) AddValue(words, reason);
  }
  ExplainTradeWords(words, explanation);
}

}  // namespace assay
