#include "assay/explain/what_if.h"

#include <algorithm>
#include <cstdlib>

#include "assay/explain/catalogue.h"
#include "assay/explain/text_writer.h"
#include "assay/explain/wording.h"
#include "assay/facts/claim_makers.h"

namespace assay {
namespace {

// A part of the difference that is told.
constexpr Centipawns kWorthSaying = 4;
constexpr std::size_t kMostParts = 3;

// "with the pawn back on f2", "without the bishop on c4", ...
Message EditClause(const Edit& edit) {
  switch (edit.kind) {
    case Edit::Kind::kMove: {
      const int rank = edit.piece.side() == Side::kWhite ? 1 : 6;
      const bool back =
          edit.piece.kind() == PieceKind::kPawn && RankOf(edit.to) == rank;
      return back ? Say("edit.back", edit.piece.kind(), edit.to)
                  : Say("edit.moved", edit.piece.kind(), edit.to, edit.from);
    }
    case Edit::Kind::kOff:
      return Say("edit.off", edit.piece.kind(), edit.to);
    case Edit::Kind::kOn:
      return Say("edit.on", edit.piece.side(), edit.piece.kind(), edit.to);
    case Edit::Kind::kPass:
      return Say("edit.pass");
    case Edit::Kind::kSwap:
      break;
  }
  return Say("edit.swap");
}

class WhatIfTeller {
 public:
  WhatIfTeller(const Weights& weights, const Edited& edited, WhatIf& told)
      : edited_(edited),
        told_(told),
        before_(told.position, weights),
        after_(told.after, weights) {}

  void Tell() {
    told_.score_before_cp = before_.ledger.score_cp;
    told_.score_after_cp = after_.ledger.score_cp;
    const Pairing pairing{before_, after_, edited_.moved};
    told_.changes = DiffLedgers(pairing, claims_before_, claims_);
    if (edited_.edits.empty()) {
      told_.summary_said = Sentence(Say("what_if.nothing"));
      claims_.Add(ToMoveClaim(after_.facts), told_.summary_claims);
    } else {
      Summarise();
    }
    told_.claims = claims_.Take();
    told_.claims_before = claims_before_.Take();
  }

 private:
  // What stands on the squares of the edits, before or after.
  void NoteEdits() {
    for (const Edit& edit : edited_.edits) {
      for (const Square square : {edit.from, edit.to}) {
        if (square == kNoSquare) continue;
        claims_before_.Add(ControlClaim(before_.facts, Side::kWhite, square),
                           told_.summary_claims_before);
        claims_.Add(ControlClaim(after_.facts, Side::kWhite, square),
                    told_.summary_claims);
      }
    }
    claims_.Add(ToMoveClaim(after_.facts), told_.summary_claims);
  }

  bool Passes() const {
    return std::any_of(
        edited_.edits.begin(), edited_.edits.end(),
        [](const Edit& edit) { return edit.kind == Edit::Kind::kPass; });
  }

  // "0.19 the diagonal ..., 0.12 the knight's square": what favours the side.
  Message Parts(Side side) {
    std::vector<Message> parts;
    std::vector<Message> nouns;
    for (const LedgerChange& change : told_.changes) {
      if (parts.size() == kMostParts) break;
      if (Sign(side) * change.change_cp < kWorthSaying) continue;
      // Who has the move is what was asked; what both sides have is said once.
      if (change.term == TermId::kTempo && Passes()) continue;
      if (std::find(nouns.begin(), nouns.end(), change.noun) != nouns.end()) {
        continue;
      }
      nouns.push_back(change.noun);
      parts.push_back(
          Say("what_if.part", AmountText(change.change_cp), change.noun));
      Merge(change.claims, told_.summary_claims);
      Merge(change.claims_before, told_.summary_claims_before);
    }
    return And(std::move(parts));
  }

  void Summarise() {
    NoteEdits();
    std::vector<Message> edits;
    for (const Edit& edit : edited_.edits) {
      if (edits.size() == kMostParts) {
        edits.push_back(Say("edit.rest"));
        break;
      }
      edits.push_back(EditClause(edit));
    }
    const Centipawns change = told_.score_after_cp - told_.score_before_cp;
    const Side better = change >= 0 ? Side::kWhite : Side::kBlack;
    Message with = Parts(better);
    Message against = Parts(Other(better));
    Message what = And(std::move(edits));
    if (change == 0) {
      told_.summary_said = Sentence(Say("what_if.same", std::move(what),
                                        std::move(with), std::move(against)));
      return;
    }
    told_.summary_said =
        Sentence(Say("what_if.better", std::move(what), better,
                     AmountText(change), std::move(with), std::move(against)));
  }

  const Edited& edited_;
  WhatIf& told_;
  const Snapshot before_;
  const Snapshot after_;
  ClaimTable claims_;
  ClaimTable claims_before_;
};

Centipawns MaterialOf(const Ledger& ledger) {
  Centipawns sum = 0;
  for (const Entry& entry : ledger.entries) {
    if (entry.term == TermId::kMaterial) sum += entry.value_cp;
  }
  return sum;
}

}  // namespace

std::vector<Attribution> Attribute(const Position& position,
                                   const Weights& weights) {
  std::vector<Attribution> attributions;
  const Snapshot with(position, weights);
  const Bitboard units =
      position.Occupied() & ~position.Pieces(PieceKind::kKing);
  for (const Square square : Each(units)) {
    const absl::StatusOr<Position> rest = Without(position, square);
    if (!rest.ok()) continue;
    const Snapshot without(*rest, weights);
    attributions.push_back(
        {square, (with.ledger.score_cp - MaterialOf(with.ledger)) -
                     (without.ledger.score_cp - MaterialOf(without.ledger))});
  }
  return attributions;
}

absl::StatusOr<WhatIf> AskWhatIf(const Assayer& assayer,
                                 const Position& position,
                                 const std::vector<std::string>& edits,
                                 const ExplainOptions& options) {
  const absl::StatusOr<Edited> edited = ApplyEdits(position, edits);
  if (!edited.ok()) return edited.status();
  WhatIf told(position);
  told.after = edited->position;
  WhatIfTeller(assayer.weights(), *edited, told).Tell();
  PutIntoWords(Catalogue::OrEnglish(options.language, options.audience), told);
  told.attributions = Attribute(position, assayer.weights());
  return told;
}

}  // namespace assay
