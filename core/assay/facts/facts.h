// What is true of a position by definition, found once and shared.
//
// Facts holds what the terms and claims of a position are made from: the pawn
// skeleton, the squares that each piece attacks, files, the centre, kings. It
// is computed in one pass without allocation and never changes; it keeps a
// reference to the position, which must outlive it. No judgement here: what a
// fact is worth is the terms room's business.
//
//   const Facts facts(position);
//   facts.Pawns(Side::kWhite).isolated   // a set of squares
//   facts.Attacks(kF3)                   // what the piece on f3 attacks
#ifndef ASSAY_FACTS_FACTS_H_
#define ASSAY_FACTS_FACTS_H_

#include <cstdint>

#include "assay/base/bitboard.h"
#include "assay/base/score.h"
#include "assay/facts/king_shields.h"
#include "assay/facts/pawns.h"
#include "assay/rules/position.h"

namespace assay {

// The five types of centre and the rest, as the CENTRE_* claims define them.
enum class Centre : std::uint8_t {
  kUnresolved = 0,
  kOpen,
  kClosed,
  kFixed,
  kTension,
  kMobile,
};

// "closed", "open", ...
const char* Name(Centre centre);

class Facts {
 public:
  explicit Facts(const Position& position);
  explicit Facts(Position&&) = delete;  // it would not outlive the facts

  const Position& position() const { return position_; }
  Bitboard Own(Side side, PieceKind kind) const {
    return position_.Pieces(side, kind);
  }

  const PawnFacts& Pawns(Side side) const { return pawns_[Index(side)]; }

  // The squares that the piece or pawn on an occupied square attacks.
  Bitboard Attacks(Square square) const { return attacks_from_[square]; }
  // The squares that any piece, pawn or king of the side attacks.
  Bitboard Attacked(Side side) const { return attacked_[Index(side)]; }
  // Those that two or more of them attack.
  Bitboard AttackedTwice(Side side) const {
    return attacked_twice_[Index(side)];
  }
  // The squares that pieces of one kind of the side attack.
  Bitboard AttackedBy(Side side, PieceKind kind) const {
    return attacked_by_[Index(side)][Index(kind)];
  }
  // The squares that a piece of the side attacks that hold no own piece or
  // pawn and that no enemy pawn attacks: where it can usefully go.
  Bitboard Scope(Side side, Square square) const {
    return Attacks(square) & ~position_.Pieces(side) &
           ~Pawns(Other(side)).attacks;
  }
  // Pieces, pawns and king of the side that attack the square: no x-ray, pins
  // ignored.
  Bitboard Attackers(Side side, Square square) const {
    return position_.Attackers(side, square, position_.Occupied());
  }

  // Pieces and pawns of the side that are pinned, as the PINNED claim says.
  Bitboard Pinned(Side side) const { return pinned_[Index(side)]; }

  // What stands between the kings and enemy sliders.
  const KingShields& Shields() const { return shields_; }
  bool InCheck() const { return shields_.in_check(); }

  // All squares of files without pawns of either side.
  Bitboard OpenFiles() const { return ~(pawns_[0].files | pawns_[1].files); }
  // All squares of files with enemy pawns and none of the side's own.
  Bitboard HalfOpenFiles(Side side) const {
    return Pawns(Other(side)).files & ~Pawns(side).files;
  }

  Centre centre() const { return centre_; }
  // Pawns of the side on files c to f that are rammed.
  Bitboard CentreRams(Side side) const {
    return Pawns(side).rammed & kCentreFiles;
  }

  // The squares that the SPACE claim counts for the side.
  Bitboard Space(Side side) const;

  // Rooks and queens of the side on its seventh rank, where the enemy king
  // stands on its own first rank or enemy pawns on that seventh.
  Bitboard SeventhRank(Side side) const;

  // The king's square and the up to eight around it.
  Bitboard KingNeighbourhood(Side side) const {
    return Attacks(position_.King(side)) | Bit(position_.King(side));
  }

  // 256 in the middlegame, 0 in a pure ending: see facts.cc.
  int phase() const { return phase_; }

  // Files c to f.
  static constexpr Bitboard kCentreFiles =
      FileMask(2) | FileMask(3) | FileMask(4) | FileMask(5);

 private:
  const Position& position_;
  PawnFacts pawns_[2];
  Bitboard attacked_[2];
  Bitboard attacked_twice_[2];
  Bitboard pinned_[2] = {0, 0};
  KingShields shields_;
  Bitboard attacked_by_[2][kPieceKinds];
  Bitboard attacks_from_[kSquares];  // only occupied squares are set
  Centre centre_ = Centre::kUnresolved;
  int phase_ = 0;
};

}  // namespace assay

#endif  // ASSAY_FACTS_FACTS_H_
