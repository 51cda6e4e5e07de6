#include <algorithm>
#include <cstdlib>

#include "assay/explain/account.h"
#include "assay/explain/line_text.h"
#include "assay/explain/proved.h"
#include "assay/explain/verdict.h"
#include "assay/explain/win_text.h"
#include "assay/facts/claim_makers.h"

namespace assay {
namespace {

// As much of a line as a reader follows where nothing concrete falls.
constexpr std::size_t kFewPlies = 6;
constexpr std::size_t kMostPlies = 10;

Caution MateCaution(const Proved& proved, Side side, ClaimTable& table) {
  const Win win{proved.proof, proved.proof.line, std::nullopt};
  const WinText told = TellWin(proved.position, side, win, table);
  Caution caution;
  caution.kind = Name(told.motif);
  caution.said = Sentence(
      Say("caution.mate", told.motif == Motif::kBackRankMate, told.line));
  caution.claims = told.claims;
  return caution;
}

// "White wins the rook on a8: 12. Nc7+ forks ... (12. Nc7+ Kd8 13. Nxa8)."
Caution WinCaution(const Proved& proved, Side side, const Win& win,
                   ClaimTable& table) {
  const WinText told = TellWin(proved.position, side, win, table);
  Caution caution;
  caution.kind = Name(told.motif);
  const bool to_move = proved.position.side_to_move() == side;
  caution.said = Sentence(Say(to_move ? "caution.wins" : "caution.wins_anyway",
                              side, told.what, told.Evidence(), Other(side)));
  caution.claims = told.claims;
  return caution;
}

// Nothing falls: what play changes is said instead, where the line is settled.
Caution LineCaution(const Proved& proved, Side side,
                    const std::vector<Move>& line, bool settled,
                    ClaimTable& table) {
  Caution caution;
  caution.kind = Name(Motif::kNone);
  std::optional<Change> change;
  if (settled) {
    change = FindChange(proved.position, proved.reasons, side, line,
                        proved.weights, table);
  }
  if (change.has_value()) Merge(change->claims, caution.claims);
  caution.said =
      Sentence(Say("caution.play", side, LineText(proved.position, line),
                   change.has_value() ? change->phrase : Message()));
  table.Add(LineClaim(proved.position, proved.position.side_to_move(), line),
            caution.claims);
  return caution;
}

}  // namespace

std::vector<Move> LeadWithProof(const Proved& proved, ClaimTable& table,
                                std::vector<Caution>& cautions) {
  const Proof& proof = proved.proof;
  // What one square's captures come to is settled by search.
  cautions.erase(std::remove_if(cautions.begin(), cautions.end(),
                                [](const Caution& caution) {
                                  return caution.kind == "hanging";
                                }),
                 cautions.end());
  if (AgreesWithCount(proof, proved.static_cp)) return {};
  const Side side = ScoreFor(proof, Side::kWhite) > proved.static_cp
                        ? Side::kWhite
                        : Side::kBlack;
  Caution caution;
  std::vector<Move> line;
  if (proof.mate_in != 0) {
    caution = MateCaution(proved, side, table);
  } else if (auto spoils = FindSpoils(proved.position, proof.line, side)) {
    const Win win{proof, proof.line, spoils};
    caution = WinCaution(proved, side, win, table);
    line.assign(
        proof.line.begin(),
        proof.line.begin() + static_cast<std::ptrdiff_t>(spoils->shown_plies));
  } else {
    line = SettledPart(proved.position, proof.line, kFewPlies, kMostPlies);
    const bool settled = !line.empty();
    std::vector<Move> told = settled ? line : proof.line;
    if (!settled) told.resize(std::min(kFewPlies, told.size()));
    caution = LineCaution(proved, side, told, settled, table);
    // What the verdict rests on is the end of it all.
    if (!settled) line = proof.line;
  }
  caution.leads = true;
  caution.proof = proof;
  cautions.insert(cautions.begin(), caution);
  return line;
}

}  // namespace assay
