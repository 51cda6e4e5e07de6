// Pawns first, then every piece's attacks once, then what follows from both.
#include "assay/facts/facts.h"

#include <algorithm>

#include "assay/facts/danger.h"

namespace assay {
namespace {

constexpr Bitboard kCentralPair = FileMask(3) | FileMask(4);

Centre FindCentre(const PawnFacts (&pawns)[2]) {
  const PawnFacts& white = pawns[Index(Side::kWhite)];
  const PawnFacts& black = pawns[Index(Side::kBlack)];
  const int white_central = PopCount(white.pawns & kCentralPair);
  const int black_central = PopCount(black.pawns & kCentralPair);
  if (white_central + black_central <= 1) return Centre::kOpen;
  // A lever counts here only where both pawns stand on files c to f.
  const Bitboard inner = white.pawns & Facts::kCentreFiles;
  const bool lever = (PawnAttacks(Side::kWhite, inner) & black.pawns &
                      Facts::kCentreFiles) != 0;
  if (lever) return Centre::kTension;
  const Bitboard rams = white.rammed & Facts::kCentreFiles;
  const bool central_ram = (rams & kCentralPair) != 0;
  if (central_ram) {
    return HasMany(rams) ? Centre::kClosed : Centre::kFixed;
  }
  const auto has_both = [](Bitboard own) {
    return (own & FileMask(3)) != 0 && (own & FileMask(4)) != 0;
  };
  if ((has_both(white.pawns) && black_central <= 1) ||
      (has_both(black.pawns) && white_central <= 1)) {
    return Centre::kMobile;
  }
  return Centre::kUnresolved;
}

// Pieces (pawns left out) by their exchange values, both sides together; the
// initial position has 6,550. The middlegame is full down to 5,900, about one
// pair of minor pieces less; with 1,650 left, a rook and a minor piece a side,
// ending values count alone. Own reasoning, no source.
constexpr int kFullMaterial = 5900;
constexpr int kEndingMaterial = 1650;

int FindPhase(const Position& position) {
  int material = 0;
  for (const PieceKind kind : {PieceKind::kKnight, PieceKind::kBishop,
                               PieceKind::kRook, PieceKind::kQueen}) {
    material += ExchangeValue(kind) * PopCount(position.Pieces(kind));
  }
  const int above =
      std::clamp(material, kEndingMaterial, kFullMaterial) - kEndingMaterial;
  return above * kFullPhase / (kFullMaterial - kEndingMaterial);
}

}  // namespace

const char* Name(Centre centre) {
  constexpr const char* kNames[] = {"unresolved", "open",    "closed",
                                    "fixed",      "tension", "mobile"};
  return kNames[static_cast<int>(centre)];
}

Facts::Facts(const Position& position)
    : position_(position), shields_(position) {
  FindPawnFacts(position, pawns_);
  const Bitboard occupied = position.Occupied();
  for (const Side side : kSides) {
    const int us = Index(side);
    Bitboard once = pawns_[us].attacks;
    Bitboard twice = pawns_[us].attacked_twice;
    const auto note = [&](PieceKind kind, Square square, Bitboard attacks) {
      attacks_from_[square] = attacks;
      attacked_by_[us][Index(kind)] |= attacks;
      twice |= once & attacks;
      once |= attacks;
    };
    for (Bitboard& attacked : attacked_by_[us]) attacked = 0;
    for (const Square s : Each(pawns_[us].pawns)) {
      attacks_from_[s] = PawnAttacks(side, s);
    }
    attacked_by_[us][Index(PieceKind::kPawn)] = pawns_[us].attacks;
    for (const Square s : Each(Own(side, PieceKind::kKnight))) {
      note(PieceKind::kKnight, s, KnightAttacks(s));
    }
    for (const Square s : Each(Own(side, PieceKind::kBishop))) {
      note(PieceKind::kBishop, s, BishopAttacks(s, occupied));
    }
    for (const Square s : Each(Own(side, PieceKind::kRook))) {
      note(PieceKind::kRook, s, RookAttacks(s, occupied));
    }
    for (const Square s : Each(Own(side, PieceKind::kQueen))) {
      note(PieceKind::kQueen, s, QueenAttacks(s, occupied));
    }
    const Square king = position.King(side);
    note(PieceKind::kKing, king, KingAttacks(king));
    attacked_[us] = once;
    attacked_twice_[us] = twice;
  }
  for (const Side side : kSides) {
    for (const Pin& pin : FindPins(position, side)) {
      pinned_[Index(side)] |= Bit(pin.pinned);
    }
  }
  centre_ = FindCentre(pawns_);
  phase_ = FindPhase(position);
}

Bitboard Facts::Space(Side side) const {
  const PawnFacts& own = Pawns(side);
  const Bitboard behind_foremost =
      RearSpan(side, own.pawns) & ~RelativeRankMask(side, 0);
  return behind_foremost & ~own.pawns & ~Pawns(Other(side)).attacks;
}

Bitboard Facts::SeventhRank(Side side) const {
  const Bitboard seventh = RelativeRankMask(side, 6);
  const Side enemy = Other(side);
  const bool counts = RelativeRank(enemy, position_.King(enemy)) == 0 ||
                      (Pawns(enemy).pawns & seventh) != 0;
  if (!counts) return 0;
  return seventh & (Own(side, PieceKind::kRook) | Own(side, PieceKind::kQueen));
}

}  // namespace assay
