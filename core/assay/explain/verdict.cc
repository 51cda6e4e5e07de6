// Cut-offs by what the score came to in real games. Over the quiet positions
// of the fit file (measured; static score, share of points for the better
// side): below 25 centipawns 51 %, 25 to 60 57 %, 60 to 110 63 %, 110 to 200
// 75 %, 200 to 300 87 %, above that 93 % and more (what is missing to 100 is
// play, and captures that a static score cannot see). So: up to 53 % is equal,
// up to two thirds slight, up to five sixths moderate; 500, a rook, is beyond
// dispute.
#include "assay/explain/verdict.h"

#include <cstdlib>

#include "assay/facts/claim_makers.h"
#include "assay/facts/kpk.h"
#include "assay/rules/draw.h"
#include "assay/rules/movegen.h"

namespace assay {
namespace {

constexpr int kEqualQuiet = 11;
constexpr int kEqualActive = 12;
constexpr int kUnclear = 13;
constexpr int kSlight = 14;

// Both sides have reasons of at least this weight: the balance is unclear
// rather than quiet; half of it makes it active. About one moderate advantage
// set against another. Own reasoning.
constexpr Centipawns kUnclearWeight = 120;

// A claim that the game is drawn with best play, whatever else was counted.
bool ProvesADraw(const Claim& claim) {
  return (claim.kind == ClaimKind::kExact && claim.count == 0) ||
         claim.kind == ClaimKind::kWrongBishop ||
         claim.kind == ClaimKind::kQueenHeld;
}

// Claims of the reasons, and the table of king and pawn against king, which has
// no reason of its own where all others cancel out anyway.
bool IsDrawnByTable(const Facts& facts) {
  const std::optional<KpkResult> exact = LookUpKpk(facts.position());
  return exact.has_value() && !exact->won;
}

bool IsProvenDraw(const Facts& facts, const std::vector<Reason>& reasons,
                  const ClaimTable& table) {
  if (IsDrawnByTable(facts)) return true;
  for (const Reason& reason : reasons) {
    for (const std::uint32_t ref : reason.claims) {
      if (ProvesADraw(table.claims()[ref])) return true;
    }
  }
  return false;
}

int EqualNag(const Facts& facts, const std::vector<Reason>& reasons,
             const std::vector<Caution>& cautions) {
  if (IsDrawnByTable(facts)) return kDrawish;
  Centipawns for_side[2] = {0, 0};
  for (const Reason& reason : reasons) {
    if (reason.drawish) return kDrawish;
    for_side[Index(reason.favours())] += std::abs(reason.value_cp);
  }
  const Centipawns both = std::min(for_side[0], for_side[1]);
  if (both >= kUnclearWeight) return kUnclear;
  const bool tension = facts.centre() == Centre::kTension ||
                       (!cautions.empty() && cautions.front().leads);
  return tension || both >= kUnclearWeight / 2 ? kEqualActive : kEqualQuiet;
}

Message ClauseOf(int nag, std::optional<Side> favours) {
  switch (nag) {
    case kDrawish:
      return Say("verdict.drawish");
    case kEqualQuiet:
      return Say("verdict.quiet");
    case kEqualActive:
      return Say("verdict.active");
    case kUnclear:
      return Say("verdict.unclear");
    default:
      break;
  }
  constexpr const char* kDegrees[] = {"verdict.slight", "verdict.clear",
                                      "verdict.decisive", "verdict.crushing"};
  return Say(kDegrees[(nag - kSlight) / 2], *favours);
}

// A finished game: mate, stalemate or a dead position.
bool IsOver(const Facts& facts, Verdict& verdict, ClaimTable& table) {
  const Position& position = facts.position();
  const Side side = position.side_to_move();
  if (!HasLegalMove(position)) {
    const bool mate = position.InCheck();
    if (mate) {
      verdict.nag = side == Side::kBlack ? 20 : 21;
      verdict.favours = Other(side);
      verdict.said = Sentence(Say("verdict.checkmate", side));
      table.Add(InCheckClaim(facts), verdict.claims);
    } else {
      verdict.nag = kDrawish;
      verdict.said = Sentence(Say("verdict.stalemate", side));
    }
    table.Add(NoLegalMoveClaim(facts), verdict.claims);
    verdict.over = true;
    return true;
  }
  if (IsInsufficientMaterial(position)) {
    verdict.nag = kDrawish;
    verdict.said = Sentence(Say("verdict.dead"));
    table.Add(InsufficientClaim(), verdict.claims);
    verdict.over = true;
    return true;
  }
  return false;
}

}  // namespace

int VerdictStep(Centipawns score_cp) {
  int step = 0;
  for (const Centipawns from :
       {kSlightFrom, kModerateFrom, kDecisiveFrom, kCrushingFrom}) {
    if (std::abs(score_cp) >= from) ++step;
  }
  return score_cp < 0 ? -step : step;
}

Verdict FindVerdict(const Facts& facts, Centipawns score_cp,
                    const std::vector<Reason>& reasons,
                    const std::vector<Caution>& cautions, ClaimTable& table) {
  Verdict verdict;
  if (IsOver(facts, verdict, table)) return verdict;
  for (const Reason& reason : reasons) Merge(reason.claims, verdict.claims);
  // Weights may be such that nothing counts; whose move it is always holds.
  if (verdict.claims.empty()) table.Add(ToMoveClaim(facts), verdict.claims);
  const int step = VerdictStep(score_cp);
  if (step == 0) {
    verdict.nag = EqualNag(facts, reasons, cautions);
    if (IsDrawnByTable(facts)) table.Add(ExactClaim(facts), verdict.claims);
  } else {
    verdict.favours = step > 0 ? Side::kWhite : Side::kBlack;
    verdict.nag = kSlight + 2 * (std::abs(step) - 1) + Index(*verdict.favours);
  }
  verdict.said =
      Sentence(verdict.nag == kDrawish && IsProvenDraw(facts, reasons, table)
                   ? Say("verdict.draw")
                   : ClauseOf(verdict.nag, verdict.favours));
  return verdict;
}

Verdict FindProvedVerdict(const Facts& facts, const Proof& proof,
                          Centipawns static_cp,
                          const std::vector<Reason>& reasons,
                          const std::vector<Caution>& cautions,
                          ClaimTable& table) {
  if (proof.mate_in == 0) {
    Verdict verdict =
        FindVerdict(facts, proof.score_cp, reasons, cautions, table);
    verdict.quiet = !verdict.over && AgreesWithCount(proof, static_cp);
    return verdict;
  }
  Verdict verdict;
  verdict.favours = proof.mate_in > 0 ? Side::kWhite : Side::kBlack;
  verdict.nag = proof.mate_in > 0 ? 20 : 21;
  verdict.said =
      Sentence(Say("verdict.mates", *verdict.favours, std::abs(proof.mate_in)));
  table.Add(MateInClaim(*verdict.favours, proof.line), verdict.claims);
  return verdict;
}

}  // namespace assay
