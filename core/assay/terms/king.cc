// The king's shelter and what has been opened towards it.
//
// All of it needs something to attack with: values are in proportion to the
// opponent's heavy pieces, a queen counting as two rooks of four units in all.
#include <algorithm>

#include "assay/facts/claim_makers.h"
#include "assay/facts/kings.h"
#include "assay/terms/sink.h"

namespace assay {
namespace {

// A queen 2, a rook 1, at most 4: what there is to attack a king with.
constexpr int kFullForce = 4;
int AttackingForce(const Facts& facts, Side attacker) {
  const int force = 2 * PopCount(facts.Own(attacker, PieceKind::kQueen)) +
                    PopCount(facts.Own(attacker, PieceKind::kRook));
  return std::min(force, kFullForce);
}

template <class Sink>
class KingTerms {
 public:
  KingTerms(const Facts& facts, const Weights& weights, Side side, Sink& sink)
      : facts_(facts),
        weights_(weights),
        side_(side),
        enemy_(Other(side)),
        king_(facts.Own(side, PieceKind::kKing)),
        force_(AttackingForce(facts, Other(side))),
        sink_(sink) {}

  void Run() {
    if (force_ == 0) return;
    Shelter();
    for (const Square pawn : Each(MovedFlankPawns(facts_, side_))) {
      sink_.Add(TermId::kFlankPawnMoved, side_,
                ByForce(weights_.flank_pawn_moved), [&](Details& details) {
                  details.Squares(Bit(pawn) | king_);
                  details.Add(FlankPawnMovedClaim(side_, pawn));
                });
    }
    for (const OpenDiagonal& diagonal : FindOpenDiagonals(facts_, side_)) {
      Diagonal(diagonal);
    }
    for (const Square first : Each(FilesToKing(facts_, side_) & RankMask(0))) {
      File(FileOf(first));
    }
  }

 private:
  Tapered ByForce(Tapered value) const {
    return Scale(value, force_, kFullForce);
  }

  void Shelter() {
    const int gaps = ShelterGaps(facts_, side_);
    if (gaps == 0) return;
    sink_.Add(
        TermId::kShelter, side_, ByForce(weights_.shelter_gap * gaps),
        [&](Details& details) {
          details.Squares(king_);
          details.Add(ShelterClaim(facts_, side_));
          if (IsUncastled(facts_, side_)) {
            details.Add(SquaresClaim(ClaimKind::kUncastled, side_, king_));
          }
        });
  }

  void Diagonal(const OpenDiagonal& diagonal) {
    const bool entered = CanEnter(diagonal);
    Tapered value = weights_.diagonal_to_king;
    if (entered) value = value + weights_.diagonal_entered;
    sink_.Add(TermId::kDiagonalToKing, side_, ByForce(value),
              [&](Details& details) {
                details.Squares(diagonal.squares.ToSet() | king_);
                details.Add(DiagonalOpenClaim(facts_, side_, diagonal));
              });
  }

  // Whether an enemy queen or bishop moves onto the diagonal at once, to a
  // square that the side does not guard (its king's own guard left out).
  bool CanEnter(const OpenDiagonal& diagonal) const {
    const Bitboard guarded = facts_.AttackedBy(side_, PieceKind::kPawn) |
                             facts_.AttackedBy(side_, PieceKind::kKnight) |
                             facts_.AttackedBy(side_, PieceKind::kBishop) |
                             facts_.AttackedBy(side_, PieceKind::kRook) |
                             facts_.AttackedBy(side_, PieceKind::kQueen);
    const Bitboard goals = diagonal.squares.ToSet() & ~guarded;
    for (const Square square : Each(diagonal.attackers)) {
      if ((facts_.Attacks(square) & goals) != 0) return true;
    }
    return false;
  }

  void File(int file) {
    const Bitboard squares = FileMask(file);
    const bool open = (facts_.OpenFiles() & squares) != 0;
    const Bitboard majors = facts_.Own(enemy_, PieceKind::kRook) |
                            facts_.Own(enemy_, PieceKind::kQueen);
    if (!open && (majors & squares) == 0) return;
    Tapered value;
    if (open) value = value + weights_.file_to_king_open;
    if ((majors & squares) != 0) value = value + weights_.file_to_king_occupied;
    sink_.Add(TermId::kFileToKing, side_, ByForce(value),
              [&](Details& details) {
                details.Squares(king_ | (majors & squares));
                details.Add(FileToKingClaim(facts_, side_, file));
                details.Add(open ? OpenFileClaim(file)
                                 : HalfOpenFileClaim(enemy_, file));
                for (const Square rook : Each(majors & squares)) {
                  details.Add(
                      SquaresClaim(ClaimKind::kRookOnFile, enemy_, Bit(rook)));
                }
              });
  }

  const Facts& facts_;
  const Weights& weights_;
  const Side side_;
  const Side enemy_;
  const Bitboard king_;
  const int force_;
  Sink& sink_;
};

}  // namespace

template <class Sink>
void AddKing(const Facts& facts, const Weights& weights, Sink& sink) {
  for (const Side side : kSides) {
    KingTerms<Sink>(facts, weights, side, sink).Run();
  }
}

ASSAY_INSTANTIATE_THEME(AddKing);

}  // namespace assay
