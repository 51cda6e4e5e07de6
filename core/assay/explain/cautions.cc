#include "assay/explain/cautions.h"

#include <algorithm>

#include "assay/explain/verdict.h"
#include "assay/explain/words.h"
#include "assay/facts/claim_makers.h"
#include "assay/facts/danger.h"
#include "assay/facts/exchange.h"
#include "assay/notation/san.h"
#include "assay/rules/movegen.h"

namespace assay {
namespace {

struct Hanging {
  Square square;
  int value;
};

// What captures gain, in words by the size of the gain.
std::string GainText(int value) {
  if (value >= 900) return "a queen's worth";
  if (value >= 450) return "a rook's worth";
  if (value >= 300) return "a piece's worth";
  if (value >= 150) return "about two pawns' worth";
  return "a pawn's worth";
}

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
  caution.text =
      std::string(Name(side)) + "'s " +
      Name(facts.position().At(hanging.square).kind()) + " on " +
      ToString(hanging.square) + " hangs: captures there win " +
      GainText(hanging.value) +
      (at_once ? ", and it is " + std::string(Name(taker)) + "'s move."
               : std::string(" unless ") + Name(side) + " acts.");
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
    caution.text = std::string(Name(position.side_to_move())) +
                   " is in check from " + SquaresText(position.Checkers()) +
                   ": what is counted here waits for the answer.";
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

namespace {

// As much of a line as a reader follows.
constexpr std::size_t kMostPlies = 8;

// "23. Rxd5 exd5 24. Qxd5": moves with their numbers.
std::string LineText(const Position& position, const std::vector<Move>& line) {
  std::string text;
  Position at = position;
  for (const Move move : line) {
    if (!text.empty()) text += ' ';
    if (at.side_to_move() == Side::kWhite || text.empty()) {
      text += std::to_string(at.fullmove_number());
      text += at.side_to_move() == Side::kWhite ? ". " : "... ";
    }
    text += ToSan(at, move);
    at = at.After(move);
  }
  return text;
}

std::string OutcomeText(Side mover, int material) {
  const std::string name = Name(mover);
  if (material >= 75) return name + " wins " + GainText(material) + ": ";
  if (material <= -75) {
    return name + " loses " + GainText(-material) + " at best: ";
  }
  return "Counting alone misjudges this, for play goes ";
}

}  // namespace

void AddProof(const Facts& facts, const Proof& proof, Centipawns static_cp,
              ClaimTable& table, std::vector<Caution>& cautions) {
  if (proof.mate_in == 0 && AgreesWithCount(proof, static_cp)) {
    cautions.erase(std::remove_if(cautions.begin(), cautions.end(),
                                  [](const Caution& caution) {
                                    return caution.kind == "hanging";
                                  }),
                   cautions.end());
    return;
  }
  const Position& position = facts.position();
  const Side mover = position.side_to_move();
  std::vector<Move> line = proof.line;
  Caution caution;
  caution.leads = true;
  if (proof.mate_in != 0) {
    caution.kind = "mate";
    caution.text = "There is a mate: " + LineText(position, line) + ".";
    table.Add(
        MateInClaim(proof.mate_in > 0 ? Side::kWhite : Side::kBlack, line),
        caution.claims);
  } else {
    if (line.size() > kMostPlies) line.resize(kMostPlies);
    const Claim claim = LineClaim(position, mover, line);
    caution.kind = "search";
    caution.text =
        OutcomeText(mover, claim.count) + LineText(position, line) + ".";
    table.Add(claim, caution.claims);
  }
  cautions.insert(cautions.begin(), caution);
}

}  // namespace assay
