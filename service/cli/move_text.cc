#include "service/cli/move_text.h"

#include <algorithm>
#include <cstdlib>
#include <string_view>

#include "assay/explain/catalogue.h"
#include "assay/explain/ledger_change.h"
#include "assay/explain/line_text.h"
#include "assay/notation/fen.h"
#include "assay/notation/san.h"
#include "assay/terms/term.h"

namespace assay::service {
namespace {

using Changes = google::protobuf::RepeatedPtrField<v1::LedgerChange>;

// Smaller changes than are felt, and the tempo that every move passes on, are
// shown with the whole ledger alone.
bool IsShown(const v1::LedgerChange& change, const TextStyle& style) {
  if (style.ledger || change.term().empty()) return true;
  return std::abs(change.change_cp()) >= kFelt &&
         change.term() != Info(TermId::kTempo).name;
}

// The two halves of an even trade of unlike pieces say nothing.
bool IsEvenTrade(const Changes& gains, const Changes& concessions) {
  constexpr int kEven = 50;
  int sum = 0;
  for (const Changes* changes : {&gains, &concessions}) {
    for (const v1::LedgerChange& change : *changes) {
      if (change.term() == Info(TermId::kMaterial).name) {
        sum += change.change_cp();
      }
    }
  }
  return std::abs(sum) < kEven;
}

// A line with its numbers.
std::string NumberedLine(
    const Position& position,
    const google::protobuf::RepeatedPtrField<std::string>& sans) {
  std::vector<Move> line;
  Position at = position;
  for (const std::string& san : sans) {
    const absl::StatusOr<Move> move = ParseMove(at, san);
    if (!move.ok()) break;
    line.push_back(*move);
    at = at.After(*move);
  }
  return LineText(position, line);
}

// The words around the texts, in the style's language.
class Frame {
 public:
  Frame(const TextStyle& style, TextWriter& out)
      : words_(Catalogue::OrEnglish(style.language, style.audience)),
        style_(style),
        out_(out) {}

  bool values() const { return words_.audience() != Audience::kNewcomer; }
  std::string Text(const Message& said) const { return words_.Text(said); }
  std::string Nag(int nag) const { return std::string(words_.Nag(nag)); }

  // Right-aligned, before a text.
  void Labelled(std::string_view label, const std::string& text) {
    out_.Wrapped(Padded(std::string(words_.Find(label)), 9) + "  ", text);
  }

  // "    gains  +0.12  ...": the label on the first line alone.
  void Changes(std::string_view label,
               const google::protobuf::RepeatedPtrField<v1::LedgerChange>& list,
               bool even_trade) {
    std::string shown(words_.Find(label));
    for (const v1::LedgerChange& change : list) {
      const bool silent = even_trade && !style_.ledger &&
                          change.term() == Info(TermId::kMaterial).name;
      if (silent || !IsShown(change, style_)) continue;
      std::string margin = Padded(shown, 9);
      if (values()) margin += Padded(Value(change), 7);
      out_.Wrapped(margin + "  ", change.text());
      shown.clear();
    }
  }

  // A term's short name; its id where there is no row.
  std::string Term(std::string id) const {
    const std::string_view row = words_.Find("term." + id);
    if (!row.empty()) return std::string(row);
    std::replace(id.begin(), id.end(), '_', ' ');
    return id;
  }

  // A change by itself.
  void Change(const v1::LedgerChange& change) {
    out_.Wrapped((values() ? Padded(Value(change), 7) : "") + "  ",
                 change.text());
  }

  void Plans(std::string_view label,
             const google::protobuf::RepeatedPtrField<v1::Plan>& plans) {
    for (const v1::Plan& plan : plans) Labelled(label, plan.text());
  }

  // "+0.14 proved"; for newcomers a mate alone.
  template <class Answer>
  Message Proved(const Answer& answer) const {
    if (!answer.has_proof()) return {};
    const v1::Proof& proof = answer.proof();
    if (proof.mate_in() != 0) {
      return Say("text.mate_proved", std::abs(proof.mate_in()));
    }
    if (!values()) return {};
    return Say("text.proved", PawnsText(proof.score_cp()));
  }

  // The line that was searched; experts want to see it.
  void Line(const Position& position, const v1::Proof& proof) {
    if (words_.audience() != Audience::kExpert || proof.line_size() == 0) {
      return;
    }
    Labelled("label.line",
             Text(Say("text.line", NumberedLine(position, proof.line()),
                      static_cast<int>(proof.depth()),
                      static_cast<int>(proof.nodes()))));
  }

 private:
  static std::string Value(const v1::LedgerChange& change) {
    return change.term().empty() ? "" : PawnsText(change.change_cp());
  }

  const Catalogue& words_;
  const TextStyle& style_;
  TextWriter& out_;
};

std::string NumberedSan(const Position& position, const std::string& san) {
  const absl::StatusOr<Move> move = ParseMove(position, san);
  return move.ok() ? NumberedMove(position, *move) : san;
}

}  // namespace

std::string MoveText(const Position& position, const v1::MoveExplanation& told,
                     const TextStyle& style) {
  TextWriter out(style);
  Frame frame(style, out);
  out.Dim(ToFen(position));
  out.Bold(
      frame.Text(Say("text.move", NumberedSan(position, told.san()),
                     PawnsText(told.score_before_cp()),
                     PawnsText(told.score_after_cp()), frame.Proved(told))));
  out.Wrapped("  ", told.summary());
  const bool settled = told.has_settled() && !style.ledger;
  if (settled) {
    out.Wrapped("  ",
                frame.Text(Say("text.once_over",
                               NumberedLine(position, told.settled().line()),
                               PawnsText(told.settled().score_cp()))));
  }
  const Changes& gains = settled ? told.settled().gains() : told.gains();
  const Changes& concessions =
      settled ? told.settled().concessions() : told.concessions();
  const bool even = IsEvenTrade(gains, concessions);
  frame.Changes("label.gains", gains, even);
  frame.Changes("label.gives", concessions, even);
  frame.Plans("label.starts", told.starts());
  frame.Plans("label.stops", told.stops());
  frame.Plans("label.allows", told.allows());
  if (told.has_reply_to_fear()) {
    frame.Labelled("label.reply", told.reply_to_fear().text());
  }
  frame.Line(position, told.proof());
  return out.Take();
}

std::string ComparisonText(const Position& position,
                           const std::vector<std::string>& names,
                           const v1::CompareResponse& told,
                           const TextStyle& style) {
  TextWriter out(style);
  Frame frame(style, out);
  out.Dim(ToFen(position));
  out.Wrapped("  ", told.decides());
  for (int i = 0; i < told.explanations_size(); ++i) {
    const v1::Explanation& one = told.explanations(i);
    const int nag = one.verdict().nag();
    out.Bold(frame.Text(Say("text.compared", names[static_cast<std::size_t>(i)],
                            std::to_string(nag), frame.Nag(nag),
                            PawnsText(one.score_cp()), frame.Proved(one))));
    out.Wrapped("  ", one.summary());
    frame.Plans("label.plan", one.plans());
    const absl::StatusOr<Position> at = PositionFromFen(one.fen());
    if (at.ok()) frame.Line(*at, one.proof());
  }
  // The terms that tell them apart.
  if (!frame.values()) return out.Take();
  std::string columns = Padded("", 24);
  std::size_t width = 8;
  for (const std::string& name : names) {
    width = std::max(width, std::min<std::size_t>(name.size(), 12) + 2);
  }
  for (std::size_t i = 0; i < names.size(); ++i) {
    const bool fits = names[i].size() <= 12;
    columns +=
        Padded(fits ? names[i]
                    : frame.Text(Say("text.number", static_cast<int>(i + 1))),
               width);
  }
  bool headed = false;
  for (const v1::LedgerComparison& row : told.by_term()) {
    const auto [least, most] =
        std::minmax_element(row.value_cp().begin(), row.value_cp().end());
    if (*most - *least < kFelt && !style.ledger) continue;
    if (!headed) out.Plain(columns);
    headed = true;
    std::string line = Padded(frame.Term(row.term()), 24);
    for (const int value : row.value_cp()) {
      line += Padded(PawnsText(value), width);
    }
    out.Plain(line);
  }
  return out.Take();
}

std::string WhatIfText(const Position& position, const v1::WhatIfResponse& told,
                       const TextStyle& style) {
  TextWriter out(style);
  Frame frame(style, out);
  out.Dim(ToFen(position));
  out.Dim(told.fen_after());
  if (frame.values()) {
    out.Bold(frame.Text(Say("text.what_if", PawnsText(told.score_before_cp()),
                            PawnsText(told.score_after_cp()))));
  }
  out.Wrapped("  ", told.summary());
  for (const v1::LedgerChange& change : told.changes()) {
    const bool shown = style.ledger || std::abs(change.change_cp()) >= kFelt;
    if (shown) frame.Change(change);
  }
  if (!style.ledger) return out.Take();
  out.Plain("  " + frame.Text(Say("text.attributions")));
  for (const v1::Attribution& attribution : told.attributions()) {
    out.Plain(Padded(PawnsText(attribution.beyond_material_cp()), 7) + "  " +
              attribution.square());
  }
  return out.Take();
}

}  // namespace assay::service
