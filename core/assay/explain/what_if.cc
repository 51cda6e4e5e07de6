#include "assay/explain/what_if.h"

#include <algorithm>
#include <cstdlib>

#include "assay/explain/text_writer.h"
#include "assay/explain/words.h"
#include "assay/facts/claim_makers.h"

namespace assay {
namespace {

// A part of the difference that is told.
constexpr Centipawns kWorthSaying = 4;
constexpr std::size_t kMostParts = 3;

std::string ColouredText(Piece piece) {
  return std::string(piece.side() == Side::kWhite ? "white " : "black ") +
         Name(piece.kind());
}

// "With the pawn back on f2", "Without the bishop on c4", ...
std::string EditText(const Edit& edit) {
  const std::string to = edit.to == kNoSquare ? "" : ToString(edit.to);
  switch (edit.kind) {
    case Edit::Kind::kMove: {
      const int rank = edit.piece.side() == Side::kWhite ? 1 : 6;
      const bool back =
          edit.piece.kind() == PieceKind::kPawn && RankOf(edit.to) == rank;
      return std::string("with the ") + Name(edit.piece.kind()) +
             (back ? " back on " + to
                   : " on " + to + " instead of " + ToString(edit.from));
    }
    case Edit::Kind::kOff:
      return std::string("without the ") + Name(edit.piece.kind()) + " on " +
             to;
    case Edit::Kind::kOn:
      return "with a " + ColouredText(edit.piece) + " on " + to;
    case Edit::Kind::kPass:
      return "with the other side to move";
    case Edit::Kind::kSwap:
      break;
  }
  return "with colours exchanged";
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
      told_.summary = "Nothing was edited.";
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

  // "0.19 the diagonal ..., 0.12 the knight's square": what favours the side.
  std::string Parts(Side side) {
    std::vector<std::string> parts;
    for (const LedgerChange& change : told_.changes) {
      if (parts.size() == kMostParts) break;
      if (Sign(side) * change.change_cp < kWorthSaying) continue;
      parts.push_back(AmountText(change.change_cp) + " " + change.noun);
      Merge(change.claims, told_.summary_claims);
      Merge(change.claims_before, told_.summary_claims_before);
    }
    return Join(parts);
  }

  void Summarise() {
    NoteEdits();
    std::vector<std::string> edits;
    for (const Edit& edit : edited_.edits) {
      if (edits.size() == kMostParts) {
        edits.emplace_back("so on");
        break;
      }
      edits.push_back(EditText(edit));
    }
    std::string text = Capitalised(Join(edits));
    const Centipawns change = told_.score_after_cp - told_.score_before_cp;
    const Side better = change >= 0 ? Side::kWhite : Side::kBlack;
    if (change == 0) {
      text += " the count would stay the same";
    } else {
      text += " " + std::string(Name(better)) + " would be " +
              AmountText(change) + " better";
    }
    const std::string with = Parts(better);
    const std::string against = Parts(Other(better));
    if (!with.empty()) text += ": " + with;
    if (!against.empty()) {
      text += (with.empty() ? ": less " : ", less ") + against;
    }
    told_.summary = text + ".";
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
                                 const std::vector<std::string>& edits) {
  const absl::StatusOr<Edited> edited = ApplyEdits(position, edits);
  if (!edited.ok()) return edited.status();
  WhatIf told(position);
  told.after = edited->position;
  WhatIfTeller(assayer.weights(), *edited, told).Tell();
  told.attributions = Attribute(position, assayer.weights());
  return told;
}

}  // namespace assay
