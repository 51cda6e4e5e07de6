#include "assay/explain/win_text.h"

#include "assay/explain/line_text.h"
#include "assay/explain/words.h"
#include "assay/facts/claim_makers.h"

namespace assay {
namespace {

// "the rook on a8"; "the rook from a8" where it falls elsewhere.
std::string FallenText(const Position& position, const Spoils& spoils) {
  return "the " + std::string(Name(position.At(spoils.start).kind())) +
         (spoils.start == spoils.square ? " on " : " from ") +
         ToString(spoils.start);
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
  std::string Text(int sign, PieceKind named = PieceKind::kNone,
                   const std::string& name = "") const {
    std::vector<std::string> texts;
    for (int k = kPieceKinds - 1; k >= 0; --k) {
      const int count = of[k] * sign;
      const auto kind = static_cast<PieceKind>(k);
      if (count == 1 && kind == named) {
        texts.push_back(name);
      } else if (count > 0) {
        texts.push_back(CountText(count, kind));
      }
    }
    return Join(texts);
  }
};

// "the rook on a8", "the queen on a8 for a knight", "the exchange".
std::string WhatText(const Position& position, const std::vector<Move>& line,
                     const Spoils& spoils) {
  const Losses losses(position, AfterLine(position, line),
                      Other(spoils.winner));
  if (spoils.promotes) {
    return spoils.gain >= kNewQueen ? "a new queen" : GainText(spoils.gain);
  }
  const int rook = losses.of[Index(PieceKind::kRook)];
  const int minors = losses.of[Index(PieceKind::kKnight)] +
                     losses.of[Index(PieceKind::kBishop)];
  if (rook == 1 && minors == -1 && losses.Sum(1) == 1 && losses.Sum(-1) == 1) {
    return "the exchange";
  }
  const PieceKind fallen = position.At(spoils.start).kind();
  const std::string won = losses.Text(1, fallen, FallenText(position, spoils));
  const std::string given = losses.Text(-1);
  return given.empty() ? won : won + " for " + given;
}

// How the idea works, from the claim that comes first.
class HowText {
 public:
  HowText(const Position& position, const std::vector<Move>& line,
          const Spoils& spoils, const MotifFound& found, bool named)
      : line_(line), spoils_(spoils), found_(found), named_(named) {
    const auto upto = line.begin() + static_cast<std::ptrdiff_t>(found.ply);
    before_ = AfterLine(position, {line.begin(), upto});
    after_ = AfterLine(before_, {line[found.ply]});
  }

  std::string Write() const {
    switch (found_.motif) {
      case Motif::kFork:
        return Shown() + " forks " + UnitsText(after_, Others());
      case Motif::kSkewer:
        return Shown() + " skewers " + UnitText(after_, First().others[0]) +
               " and " + UnitText(after_, First().others[1]) + " behind it";
      case Motif::kDiscovered:
        return Shown() + " uncovers an attack by " +
               UnitText(after_, First().squares[0]) + " on " +
               UnitsText(after_, Others());
      case Motif::kPin:
        return PinText();
      case Motif::kOverloaded:
        return UnitText(before_, First().squares[0]) + " alone guards " +
               UnitsText(before_, Others());
      case Motif::kGuardRemoved:
        return Shown() + " takes the only guard of " +
               UnitText(before_, First().squares[0]);
      case Motif::kPinnedDefender:
        return UnitText(before_, First().squares[0]) + ", which guards " +
               ToString(spoils_.square) + ", is pinned to " +
               UnitText(before_, First().others[1]);
      case Motif::kTrapped:
        return TrappedText();
      case Motif::kUndefended:
        return "nothing guards " + Fallen();
      case Motif::kExchange:
        return ExchangeText();
      case Motif::kPromotion:
        return UnitText(before_, line_[found_.ply].from()) +
               " goes through to promote";
      case Motif::kBackRankMate:
      case Motif::kMate:
      case Motif::kNone:
        break;
    }
    return "";
  }

 private:
  const Claim& First() const { return found_.claims.front(); }
  Bitboard Others() const { return First().others.ToSet(); }
  std::string Shown() const { return NumberedMove(before_, line_[found_.ply]); }

  // What falls, as "it" where the sentence has just named it.
  std::string Fallen() const {
    return named_ && spoils_.start == spoils_.square
               ? "it"
               : UnitText(before_, spoils_.square);
  }

  std::string ExchangeText() const {
    const Square from = line_[found_.ply].from();
    if (ExchangeValue(before_.At(from).kind()) < ExchangeValue(spoils_.kind)) {
      return UnitText(before_, from) + " attacks " + Fallen() +
             " and is worth less";
    }
    return "captures on " + ToString(spoils_.square) + " come out ahead";
  }

  std::string PinText() const {
    const std::string pinned = UnitText(after_, First().squares[0]);
    const std::string behind = UnitText(after_, First().others[1]);
    if (line_[found_.ply].to() == First().others[0]) {
      return Shown() + " pins " + pinned + " to " + behind;
    }
    return Shown() + " goes for " + pinned + ", which is pinned to " + behind;
  }

  std::string TrappedText() const {
    const Square square = First().squares[0];
    if (First().line.empty()) {
      return UnitText(before_, square) + " is trapped";
    }
    return Shown() + " leaves " + UnitText(after_, square) +
           " without a way out";
  }

  const std::vector<Move>& line_;
  const Spoils& spoils_;
  const MotifFound& found_;
  const bool named_;  // the sentence has just named what falls, alone
  Position before_ = Position::Initial();
  Position after_ = Position::Initial();
};

}  // namespace

std::string GainText(int value) {
  if (value >= 900) return "a queen's worth";
  if (value >= 450) return "a rook's worth";
  if (value >= 300) return "a piece's worth";
  if (value >= 150) return "about two pawns' worth";
  return "a pawn's worth";
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
    told.what = WhatText(position, line, *win.spoils);
    const bool named = told.what == FallenText(position, *win.spoils);
    told.how = HowText(position, line, *win.spoils, found, named).Write();
    table.Add(LineClaim(position, side, line), told.claims);
  }
  told.motif = found.motif;
  told.line = LineText(position, line);
  for (const Claim& claim : found.claims) table.Add(claim, told.claims);
  return told;
}

}  // namespace assay
