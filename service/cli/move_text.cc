#include "service/cli/move_text.h"

#include <algorithm>
#include <cstdlib>
#include <string_view>

#include "assay/explain/line_text.h"
#include "assay/notation/fen.h"
#include "assay/notation/nag.h"
#include "assay/notation/san.h"
#include "assay/terms/term.h"

namespace assay::service {
namespace {

// Smaller changes, and the tempo that every move passes on, are shown with the
// whole ledger alone.
constexpr int kWorthShowing = 5;

using Changes = google::protobuf::RepeatedPtrField<v1::LedgerChange>;

bool IsShown(const v1::LedgerChange& change, const TextStyle& style) {
  if (style.ledger || change.term().empty()) return true;
  return std::abs(change.change_cp()) >= kWorthShowing &&
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

// "    gains  +0.12  ...": the label on the first line alone.
void WriteChanges(std::string label, const Changes& changes, bool even_trade,
                  const TextStyle& style, TextWriter& out) {
  for (const v1::LedgerChange& change : changes) {
    const bool silent = even_trade && !style.ledger &&
                        change.term() == Info(TermId::kMaterial).name;
    if (silent || !IsShown(change, style)) continue;
    const std::string value =
        change.term().empty() ? "" : PawnsText(change.change_cp());
    out.Wrapped(Padded(label, 9) + Padded(value, 7) + "  ", change.text());
    label.clear();
  }
}

void WritePlans(const std::string& label,
                const google::protobuf::RepeatedPtrField<v1::Plan>& plans,
                TextWriter& out) {
  for (const v1::Plan& plan : plans) {
    out.Wrapped(Padded(label, 9) + "  ", plan.text());
  }
}

std::string ProvedText(const v1::Proof& proof) {
  if (proof.mate_in() != 0) {
    return "mate in " + std::to_string(std::abs(proof.mate_in())) + " proved";
  }
  return PawnsText(proof.score_cp()) + " proved";
}

// The line of a settled capture with its numbers.
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

std::string NumberedSan(const Position& position, const std::string& san) {
  const absl::StatusOr<Move> move = ParseMove(position, san);
  return move.ok() ? NumberedMove(position, *move) : san;
}

}  // namespace

std::string MoveText(const Position& position, const v1::MoveExplanation& told,
                     const TextStyle& style) {
  TextWriter out(style);
  out.Dim(ToFen(position));
  std::string heading = NumberedSan(position, told.san()) + ": " +
                        PawnsText(told.score_before_cp()) + " before, " +
                        PawnsText(told.score_after_cp()) +
                        " after, counted for White";
  if (told.has_proof()) heading += "; " + ProvedText(told.proof());
  out.Bold(heading);
  out.Wrapped("  ", told.summary());
  const bool settled = told.has_settled() && !style.ledger;
  if (settled) {
    out.Wrapped("  ", "Once " + NumberedLine(position, told.settled().line()) +
                          " is over (" + PawnsText(told.settled().score_cp()) +
                          "):");
  }
  const Changes& gains = settled ? told.settled().gains() : told.gains();
  const Changes& concessions =
      settled ? told.settled().concessions() : told.concessions();
  const bool even = IsEvenTrade(gains, concessions);
  WriteChanges("gains", gains, even, style, out);
  WriteChanges("gives", concessions, even, style, out);
  WritePlans("starts", told.starts(), out);
  WritePlans("stops", told.stops(), out);
  WritePlans("allows", told.allows(), out);
  if (told.has_reply_to_fear()) {
    out.Wrapped(Padded("reply", 9) + "  ", told.reply_to_fear().text());
  }
  return out.Take();
}

std::string ComparisonText(const Position& position,
                           const std::vector<std::string>& names,
                           const v1::CompareResponse& told,
                           const TextStyle& style) {
  TextWriter out(style);
  out.Dim(ToFen(position));
  out.Wrapped("  ", told.decides());
  for (int i = 0; i < told.explanations_size(); ++i) {
    const v1::Explanation& one = told.explanations(i);
    const int nag = one.verdict().nag();
    std::string heading = names[static_cast<std::size_t>(i)] + ": $" +
                          std::to_string(nag) + " " +
                          std::string(NagMeaning(nag)) + "; " +
                          PawnsText(one.score_cp()) + " for White counted";
    if (one.has_proof()) heading += ", " + ProvedText(one.proof());
    out.Bold(heading);
    out.Wrapped("  ", one.summary());
    WritePlans("plan", one.plans(), out);
  }
  // The terms that tell them apart.
  std::string columns = Padded("", 24);
  std::size_t width = 8;
  for (const std::string& name : names) {
    width = std::max(width, std::min<std::size_t>(name.size(), 12) + 2);
  }
  for (std::size_t i = 0; i < names.size(); ++i) {
    const bool fits = names[i].size() <= 12;
    columns += Padded(fits ? names[i] : "no. " + std::to_string(i + 1), width);
  }
  bool headed = false;
  for (const v1::LedgerComparison& row : told.by_term()) {
    const auto [least, most] =
        std::minmax_element(row.value_cp().begin(), row.value_cp().end());
    if (*most - *least < kWorthShowing && !style.ledger) continue;
    if (!headed) out.Plain(columns);
    headed = true;
    std::string line = row.term();
    std::replace(line.begin(), line.end(), '_', ' ');
    line = Padded(line, 24);
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
  out.Dim(ToFen(position));
  out.Dim(told.fen_after());
  out.Bold(PawnsText(told.score_before_cp()) + " before, " +
           PawnsText(told.score_after_cp()) + " after, counted for White");
  out.Wrapped("  ", told.summary());
  for (const v1::LedgerChange& change : told.changes()) {
    const bool shown =
        style.ledger || std::abs(change.change_cp()) >= kWorthShowing;
    if (!shown) continue;
    out.Wrapped(Padded(PawnsText(change.change_cp()), 7) + "  ", change.text());
  }
  if (!style.ledger) return out.Take();
  out.Plain("  What each piece and pawn adds beyond its material:");
  for (const v1::Attribution& attribution : told.attributions()) {
    out.Plain(Padded(PawnsText(attribution.beyond_material_cp()), 7) + "  " +
              attribution.square());
  }
  return out.Take();
}

}  // namespace assay::service
