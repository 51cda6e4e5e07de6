#include "assay/explain/cautions.h"

#include <algorithm>

#include "assay/explain/win_text.h"
#include "assay/facts/claim_makers.h"
#include "assay/facts/danger.h"
#include "assay/facts/exchange.h"
#include "assay/rules/movegen.h"

namespace assay {
namespace {

struct Hanging {
  Square square;
  int value;
};

std::vector<Hanging> FindHanging(const Facts& facts, Side side) {
  const Position& position = facts.position();
  std::vector<Hanging> hanging;
  if (position.side_to_move() == side && position.InCheck()) return hanging;
  for (const Square square : Each(AttackedPieces(facts, side))) {
    const int value = ExchangeValueOf(facts, square);
    if (value > 0) hanging.push_back({square, value});
  }
  std::stable_sort(
      hanging.begin(), hanging.end(),
      [](const Hanging& a, const Hanging& b) { return a.value > b.value; });
  return hanging;
}

Caution HangingCaution(const Facts& facts, Side side, const Hanging& hanging,
                       ClaimTable& table) {
  Caution caution;
  caution.kind = "hanging";
  const Side taker = Other(side);
  const bool at_once = facts.position().side_to_move() == taker;
  caution.leads = at_once;  // else the side to move may simply look after it
  caution.said = Sentence(
      Say("caution.hanging", side, facts.position().At(hanging.square).kind(),
          hanging.square, GainOf(hanging.value), at_once, taker));
  table.Add(HangingClaim(side, hanging.square, hanging.value), caution.claims);
  table.Add(ToMoveClaim(facts), caution.claims);
  return caution;
}

}  // namespace

std::vector<Caution> FindCautions(const Facts& facts, ClaimTable& table) {
  std::vector<Caution> cautions;
  const Position& position = facts.position();
  if (!HasLegalMove(position)) return cautions;
  if (position.InCheck()) {
    Caution caution;
    caution.kind = "check";
    caution.leads = true;
    caution.said = Sentence(Say("caution.check", position.side_to_move(),
                                Squares{position.Checkers()}));
    table.Add(InCheckClaim(facts), caution.claims);
    cautions.push_back(caution);
  }
  // What the side to move can take comes before what it must look after.
  for (const Side side :
       {Other(position.side_to_move()), position.side_to_move()}) {
    for (const Hanging& hanging : FindHanging(facts, side)) {
      cautions.push_back(HangingCaution(facts, side, hanging, table));
    }
  }
  return cautions;
}

}  // namespace assay
