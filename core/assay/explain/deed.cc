// Asks one kind of deed after the other, the most telling first.
#include "assay/explain/deed.h"

#include <optional>

#include "assay/explain/line_text.h"
#include "assay/facts/claim_makers.h"
#include "assay/facts/danger.h"
#include "assay/facts/exchange.h"
#include "assay/facts/kings.h"

namespace assay {
namespace {

class Describer {
 public:
  Describer(const Position& position, const std::vector<Move>& line,
            ClaimTable& table, ClaimRefs& refs)
      : before_(position),
        line_(line),
        move_(line.front()),
        side_(position.side_to_move()),
        after_(position.After(move_)),
        facts_(before_),
        facts_after_(after_),
        table_(table),
        refs_(refs) {}

  Message Describe() {
    using Deed = Message (Describer::*)();
    constexpr Deed kDeeds[] = {
        &Describer::Castles, &Describer::Trades,      &Describer::Takes,
        &Describer::Saves,   &Describer::Guards,      &Describer::Attacks,
        &Describer::Pins,    &Describer::Unpins,      &Describer::Develops,
        &Describer::Breaks,  &Describer::SeventhRank, &Describer::TakesFile,
        &Describer::Outpost, &Describer::PushesPasser};
    for (const Deed deed : kDeeds) {
      Message said = (this->*deed)();
      if (said.empty()) continue;
      Add(LineClaim(before_, side_, {move_}));
      return said;
    }
    return {};
  }

 private:
  PieceKind MovedKind() const { return before_.At(move_.from()).kind(); }
  bool Captures() const { return !before_.At(move_.to()).empty(); }
  bool TakenBack() const {
    return line_.size() > 1 && line_[1].to() == move_.to();
  }

  void Add(const Claim& claim) { table_.Add(claim, refs_); }
  // A claim that holds after the move.
  void AddAfter(Claim claim) {
    claim.line = {move_};
    Add(claim);
  }
  Message Castles() {
    if (move_.type() != Move::Type::kCastling) return {};
    if (IsCastled(facts_after_, side_)) {
      AddAfter(
          SquaresClaim(ClaimKind::kCastled, side_, Bit(after_.King(side_))));
    }
    return Say("deed.castles");
  }

  Message Trades() {
    if (!Captures() || !TakenBack() || move_.is_promotion()) return {};
    const PieceKind taken = before_.At(move_.to()).kind();
    const PieceKind given = MovedKind();
    if (ExchangeValue(taken) != ExchangeValue(given)) return {};
    Add(LineClaim(before_, side_, {move_, line_[1]}));
    if (taken == given) return Say("deed.trades_alike", taken);
    return Say("deed.trades", given, Unit(taken, move_.to()));
  }

  Message Takes() {
    if (!Captures()) return {};
    return Say("deed.takes", UnitOn(before_, move_.to()));
  }

  // The exchange value of an own unit before the move, when the opponent
  // could begin; 0 in check, where nothing is claimed to hang.
  int HangsBefore(Square square) const {
    return facts_.InCheck() ? 0 : ExchangeValueOf(facts_, square);
  }

  Message Saves() {
    const int value = HangsBefore(move_.from());
    if (value == 0 || ExchangeValueOf(facts_after_, move_.to()) > 0) return {};
    Add(HangingClaim(side_, move_.from(), value));
    return Say("deed.saves", MovedKind());
  }

  Message Guards() {
    const Bitboard others = AttackedPieces(facts_, side_) & ~Bit(move_.from());
    for (const Square square : Each(others)) {
      const int value = HangsBefore(square);
      if (value == 0 || ExchangeValueOf(facts_after_, square) > 0) continue;
      Add(HangingClaim(side_, square, value));
      AddAfter(AttackCountClaim(facts_after_, Other(side_), square));
      return Say("deed.guards", UnitOn(after_, square));
    }
    return {};
  }

  Message Attacks() {
    if (after_.InCheck()) return {};  // nothing is claimed to hang
    const Bitboard targets = AttackedPieces(facts_after_, Other(side_));
    for (const Square square : Each(targets)) {
      if (!Contains(facts_after_.Attacks(move_.to()), square)) continue;
      const int value = ExchangeValueOf(facts_after_, square);
      if (value == 0 || ExchangeValueOf(facts_, square) > 0) continue;
      AddAfter(HangingClaim(Other(side_), square, value));
      return Say("deed.attacks", UnitOn(after_, square));
    }
    return {};
  }

  // A piece that is pinned in one position and stands free in the other.
  static std::optional<Pin> NewPin(const Facts& with, const Facts& without,
                                   Side side) {
    const Bitboard pieces =
        without.position().Pieces(side) & ~with.Pawns(side).pawns;
    const Bitboard pinned = with.Pinned(side) & ~without.Pinned(side) & pieces;
    for (const Pin& pin : FindPins(with.position(), side)) {
      if (Contains(pinned, pin.pinned)) return pin;
    }
    return std::nullopt;
  }

  Message Pins() {
    const auto pin = NewPin(facts_after_, facts_, Other(side_));
    if (!pin.has_value()) return {};
    AddAfter(PinnedClaim(Other(side_), *pin));
    return Say("deed.pins", UnitOn(after_, pin->pinned));
  }

  Message Unpins() {
    const auto pin = NewPin(facts_, facts_after_, side_);
    if (!pin.has_value()) return {};
    Add(PinnedClaim(side_, *pin));
    return Say("deed.unpins", UnitOn(after_, pin->pinned));
  }

  Message SeventhRank() {
    if (MovedKind() != PieceKind::kRook ||
        !Contains(facts_after_.SeventhRank(side_), move_.to())) {
      return {};
    }
    AddAfter(SquaresClaim(ClaimKind::kSeventhRank, side_, Bit(move_.to())));
    return Say("deed.seventh_rank");
  }

  Message Develops() {
    const Bitboard undeveloped = UndevelopedPieces(facts_, side_);
    if (!Contains(undeveloped, move_.from())) return {};
    Add(UndevelopedClaim(side_, undeveloped));
    return Say("deed.develops", MovedKind());
  }

  Message Breaks() {
    if (MovedKind() != PieceKind::kPawn || move_.is_promotion()) return {};
    const Bitboard attacked = facts_after_.Attacks(move_.to()) &
                              facts_after_.Pawns(Other(side_)).pawns;
    if (attacked == 0) return {};
    AddAfter(LeverClaim(facts_after_, side_, move_.to()));
    return Say("deed.challenges", UnitsOn(after_, attacked));
  }

  Message TakesFile() {
    if (MovedKind() != PieceKind::kRook) return {};
    const Bitboard file = FileMask(FileOf(move_.to()));
    const bool open = (file & facts_after_.OpenFiles()) != 0;
    const bool half_open = (file & facts_after_.HalfOpenFiles(side_)) != 0;
    if ((!open && !half_open) || FileOf(move_.from()) == FileOf(move_.to())) {
      return {};
    }
    AddAfter(SquaresClaim(ClaimKind::kRookOnFile, side_, Bit(move_.to())));
    AddAfter(open ? OpenFileClaim(FileOf(move_.to()))
                  : HalfOpenFileClaim(side_, FileOf(move_.to())));
    return Say("deed.takes_file", open, Files{file});
  }

  Message Outpost() {
    const bool minor =
        MovedKind() == PieceKind::kKnight || MovedKind() == PieceKind::kBishop;
    if (!minor || !Contains(facts_after_.Pawns(side_).outposts, move_.to())) {
      return {};
    }
    AddAfter(SquaresClaim(ClaimKind::kOutpost, side_, Bit(move_.to())));
    return Say("deed.outpost", MovedKind(), move_.to());
  }

  Message PushesPasser() {
    if (!Contains(facts_after_.Pawns(side_).passed, move_.to())) return {};
    AddAfter(SquaresClaim(ClaimKind::kPassed, side_, Bit(move_.to())));
    return Say("deed.pushes_passer");
  }

  const Position& before_;
  const std::vector<Move>& line_;
  const Move move_;
  const Side side_;
  const Position after_;
  const Facts facts_;
  const Facts facts_after_;
  ClaimTable& table_;
  ClaimRefs& refs_;
};

}  // namespace

Message DeedOf(const Position& position, const std::vector<Move>& line,
               ClaimTable& table, ClaimRefs& refs) {
  return Describer(position, line, table, refs).Describe();
}

}  // namespace assay
