#include "assay/explain/win_text.h"

#include "assay/explain/line_text.h"
#include "assay/facts/claim_makers.h"

namespace assay {
namespace {

// "the rook on a8"; "the rook from a8" where it falls elsewhere.
Message Fallen(const Position& position, const Spoils& spoils) {
  const PieceKind kind = position.At(spoils.start).kind();
  return spoils.start == spoils.square ? Unit(kind, spoils.start)
                                       : Say("unit.from", kind, spoils.start);
}

// A pawn that becomes a queen, and some small change lost.
constexpr int kNewQueen = 775;

// What a side loses by the line more than the other, kind by kind.
struct Losses {
  int of[kPieceKinds] = {};

  Losses(const Position& before, const Position& after, Side side) {
    for (const PieceKind kind : kAllKinds) {
      const auto lost = [&](Side whose) {
        return PopCount(before.Pieces(whose, kind)) -
               PopCount(after.Pieces(whose, kind));
      };
      of[Index(kind)] = lost(side) - lost(Other(side));
    }
  }
  int Sum(int sign) const {
    int sum = 0;
    for (const int n : of) sum += n * sign > 0 ? n * sign : 0;
    return sum;
  }
  // "a queen and two pawns": what is lost (1) or gained (-1), dearest first;
  // the one of `named` is called `name`.
  Message Told(int sign, PieceKind named = PieceKind::kNone,
               const Message& name = {}) const {
    std::vector<Message> counts;
    for (int k = kPieceKinds - 1; k >= 0; --k) {
      const int count = of[k] * sign;
      const auto kind = static_cast<PieceKind>(k);
      if (count == 1 && kind == named) {
        counts.push_back(name);
      } else if (count > 0) {
        counts.push_back(Count(count, kind));
      }
    }
    return And(std::move(counts));
  }
};

// "the rook on a8", "the queen on a8 for a knight", "the exchange".
Message WhatFalls(const Position& position, const std::vector<Move>& line,
                  const Spoils& spoils) {
  const Losses losses(position, AfterLine(position, line),
                      Other(spoils.winner));
  if (spoils.promotes) {
    return spoils.gain >= kNewQueen ? Say("new_queen") : GainOf(spoils.gain);
  }
  const int rook = losses.of[Index(PieceKind::kRook)];
  const int minors = losses.of[Index(PieceKind::kKnight)] +
                     losses.of[Index(PieceKind::kBishop)];
  if (rook == 1 && minors == -1 && losses.Sum(1) == 1 && losses.Sum(-1) == 1) {
    return Say("the_exchange");
  }
  const PieceKind fallen = position.At(spoils.start).kind();
  const Message won = losses.Told(1, fallen, Fallen(position, spoils));
  const Message given = losses.Told(-1);
  return given.empty() ? won : Say("for", won, given);
}

// How the idea works, from the claim that comes first.
class How {
 public:
  How(const Position& position, const std::vector<Move>& line,
      const Spoils& spoils, const MotifFound& found, bool named)
      : line_(line), spoils_(spoils), found_(found), named_(named) {
    const auto upto = line.begin() + static_cast<std::ptrdiff_t>(found.ply);
    before_ = AfterLine(position, {line.begin(), upto});
    after_ = AfterLine(before_, {line[found.ply]});
  }

  Message Tell() const {
    switch (found_.motif) {
      case Motif::kFork:
        return Say("how.fork", Shown(), UnitsOn(after_, Others()));
      case Motif::kSkewer:
        return Say("how.skewer", Shown(), UnitOn(after_, First().others[0]),
                   UnitOn(after_, First().others[1]));
      case Motif::kDiscovered:
        return Say("how.discovered", Shown(),
                   UnitOn(after_, First().squares[0]),
                   UnitsOn(after_, Others()));
      case Motif::kPin:
        return Pin();
      case Motif::kOverloaded:
        return Say("how.overloaded", UnitOn(before_, First().squares[0]),
                   UnitsOn(before_, Others()));
      case Motif::kGuardRemoved:
        return Say("how.guard_removed", Shown(),
                   UnitOn(before_, First().squares[0]));
      case Motif::kPinnedDefender:
        return Say("how.pinned_defender", UnitOn(before_, First().squares[0]),
                   spoils_.square, UnitOn(before_, First().others[1]));
      case Motif::kTrapped:
        return Trapped();
      case Motif::kUndefended:
        return Say("how.undefended", FallenNow());
      case Motif::kExchange:
        return Exchange();
      case Motif::kPromotion:
        return Say("how.promotion", UnitOn(before_, line_[found_.ply].from()));
      case Motif::kBackRankMate:
      case Motif::kMate:
      case Motif::kNone:
        break;
    }
    return {};
  }

 private:
  const Claim& First() const { return found_.claims.front(); }
  Bitboard Others() const { return First().others.ToSet(); }
  std::string Shown() const { return NumberedMove(before_, line_[found_.ply]); }

  // What falls, as "it" where the sentence has just named it.
  Message FallenNow() const {
    return named_ && spoils_.start == spoils_.square
               ? Say("it", before_.At(spoils_.square).kind())
               : UnitOn(before_, spoils_.square);
  }

  Message Exchange() const {
    const Square from = line_[found_.ply].from();
    if (ExchangeValue(before_.At(from).kind()) < ExchangeValue(spoils_.kind)) {
      return Say("how.worth_less", UnitOn(before_, from), FallenNow());
    }
    return Say("how.captures", spoils_.square);
  }

  Message Pin() const {
    const bool pins = line_[found_.ply].to() == First().others[0];
    return Say(pins ? "how.pins" : "how.goes_for_pinned", Shown(),
               UnitOn(after_, First().squares[0]),
               UnitOn(after_, First().others[1]));
  }

  Message Trapped() const {
    const Square square = First().squares[0];
    if (First().line.empty()) {
      return Say("how.is_trapped", UnitOn(before_, square));
    }
    return Say("how.traps", Shown(), UnitOn(after_, square));
  }

  const std::vector<Move>& line_;
  const Spoils& spoils_;
  const MotifFound& found_;
  const bool named_;  // the sentence has just named what falls, alone
  Position before_ = Position::Initial();
  Position after_ = Position::Initial();
};

}  // namespace

Message GainOf(int value) {
  return Say(value >= 900   ? "worth.queen"
             : value >= 450 ? "worth.rook"
             : value >= 250 ? "worth.piece"
             : value >= 150 ? "worth.two_pawns"
                            : "worth.pawn");
}

WinText TellWin(const Position& position, Side side, const Win& win,
                ClaimTable& table) {
  WinText told;
  std::vector<Move> line = win.line;
  MotifFound found;
  if (win.mates()) {
    found = FindMateMotif(position, line, side);
  } else {
    line.resize(win.spoils->shown_plies);
    found = FindMotif(position, line, *win.spoils);
    told.what = WhatFalls(position, line, *win.spoils);
    const bool named = told.what == Fallen(position, *win.spoils);
    told.how = How(position, line, *win.spoils, found, named).Tell();
    table.Add(LineClaim(position, side, line), told.claims);
  }
  told.motif = found.motif;
  told.line = LineText(position, line);
  for (const Claim& claim : found.claims) table.Add(claim, told.claims);
  return told;
}

}  // namespace assay
