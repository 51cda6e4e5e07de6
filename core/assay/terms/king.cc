// The king's shelter and what has been opened towards it.
//
// All of it needs something to attack with: values are in proportion to the
// opponent's heavy pieces, a queen counting as two rooks of four units in all.
#include "assay/facts/claim_makers.h"
#include "assay/facts/kings.h"
#include "assay/terms/attacking_force.h"
#include "assay/terms/lead.h"
#include "assay/terms/openness.h"
#include "assay/terms/sink.h"

namespace assay {
namespace {

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
    Attackers();
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

  // A diagonal counts where a bishop works along it against a king on its wing;
  // what a queen alone can do there is counted by its checks.
  void Diagonal(const OpenDiagonal& diagonal) {
    const Bitboard bishops = facts_.Own(enemy_, PieceKind::kBishop);
    if ((diagonal.attackers & bishops) == 0 || !IsOnItsWing()) return;
    const bool contested =
        (facts_.Own(side_, PieceKind::kBishop) & ColourOf(First(king_))) != 0;
    Tapered value = weights_.diagonal_to_king;
    if (!contested) value = value + weights_.diagonal_uncontested;
    sink_.Add(TermId::kDiagonalToKing, side_, ByForce(value),
              [&](Details& details) {
                details.Squares(diagonal.squares.ToSet() | king_);
                details.Add(DiagonalOpenClaim(facts_, side_, diagonal));
                details.Add(MaterialClaim(facts_, enemy_, PieceKind::kBishop));
              });
  }

  // On files a to c or f to h of the first rank, where a castled king stands.
  bool IsOnItsWing() const {
    constexpr Bitboard kMiddle = FileMask(3) | FileMask(4);
    return (king_ & RelativeRankMask(side_, 0) & ~kMiddle) != 0;
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

  // Pieces that look at the king together count by pairs; one alone is no
  // attack.
  void Attackers() {
    const Bitboard attackers =
        KingAttackers(facts_, side_) & ~facts_.Own(enemy_, PieceKind::kKing);
    const int count = PopCount(attackers);
    if (count < 2) return;
    const Bitboard weak = WeakSquares();
    sink_.Add(TermId::kKingAttackers, side_,
              ByForce(weights_.king_attackers * (count * (count - 1) / 2) +
                      weights_.king_weak_square * PopCount(weak)),
              [&](Details& details) {
                details.Squares(king_ | attackers);
                details.Add(KingAttackersClaim(facts_, side_));
                for (const Square square : Each(weak)) {
                  details.Add(ControlClaim(facts_, enemy_, square));
                }
              });
  }

  // Squares around the king that the enemy attacks and the king alone guards.
  Bitboard WeakSquares() const {
    return facts_.Attacks(First(king_)) & facts_.Attacked(enemy_) &
           ~GuardedByOthers() & ~facts_.position().Pieces(enemy_);
  }

  Bitboard GuardedByOthers() const {
    return facts_.AttackedBy(side_, PieceKind::kPawn) |
           facts_.AttackedBy(side_, PieceKind::kKnight) |
           facts_.AttackedBy(side_, PieceKind::kBishop) |
           facts_.AttackedBy(side_, PieceKind::kRook) |
           facts_.AttackedBy(side_, PieceKind::kQueen);
  }

  const Facts& facts_;
  const Weights& weights_;
  const Side side_;
  const Side enemy_;
  const Bitboard king_;
  const int force_;
  Sink& sink_;
};

// A king in the middle, by how open the centre is; queens make it matter.
template <class Sink>
void AddUncastled(const Facts& facts, const Weights& weights, Side side,
                  Sink& sink) {
  if (!IsUncastled(facts, side) ||
      facts.Own(Other(side), PieceKind::kQueen) == 0) {
    return;
  }
  Tapered value = weights.uncastled;
  if (!facts.position().castling().HasAny(side)) {
    value = value + weights.castling_lost;
  }
  sink.Add(TermId::kUncastled, side,
           Scale(value, Openness(facts.centre()), kFullOpenness),
           [&](Details& details) {
             const Bitboard king = facts.Own(side, PieceKind::kKing);
             details.Squares(king);
             details.Add(SquaresClaim(ClaimKind::kUncastled, side, king));
             details.Add(CentreClaim(facts));
           });
}

// A king that walks ahead of its pieces.
template <class Sink>
void AddKingAhead(const Facts& facts, const Weights& weights, Side side,
                  Sink& sink) {
  const Square king = facts.position().King(side);
  const int beyond = RelativeRank(side, king) - 1;  // beyond the second rank
  const bool in_the_middle = FileOf(king) >= 2 && FileOf(king) <= 5;
  if (beyond < 0 || (beyond == 0 && !in_the_middle) ||
      facts.Own(Other(side), PieceKind::kQueen) == 0) {
    return;
  }
  const Tapered value = weights.king_ahead + weights.king_ahead_rank * beyond;
  sink.Add(TermId::kKingAhead, side,
           Scale(value, Openness(facts.centre()), kFullOpenness),
           [&](Details& details) {
             details.Squares(Bit(king));
             // How far it is from where it would have castled.
             const Square home = Relative(side, FileOf(king) < 4 ? kB1 : kG1);
             details.Add(KingDistanceClaim(facts, side, home));
             details.Add(MaterialClaim(facts, Other(side), PieceKind::kQueen));
             details.Add(CentreClaim(facts));
           });
}

// The centre square nearest to the king, the lowest-numbered of equals.
Square NearestCentre(Square king) {
  Square nearest = kD4;
  for (const Square square : {kE4, kD5, kE5}) {
    if (KingDistance(king, square) < KingDistance(king, nearest)) {
      nearest = square;
    }
  }
  return nearest;
}

// One entry for the king that is nearer to the centre.
template <class Sink>
void AddActivity(const Facts& facts, const Weights& weights, Sink& sink) {
  if (facts.phase() == kFullPhase) return;
  int distance[2];
  for (const Side side : kSides) {
    const Square king = facts.position().King(side);
    distance[Index(side)] = KingDistance(king, NearestCentre(king));
  }
  const Lead lead(distance[1] - distance[0]);
  if (lead.by == 0) return;
  sink.Add(TermId::kKingActivity, lead.side, weights.king_activity * lead.by,
           [&](Details& details) {
             details.Squares(facts.Own(lead.side, PieceKind::kKing));
             for (const Side king : {lead.side, Other(lead.side)}) {
               details.Add(KingDistanceClaim(
                   facts, king, NearestCentre(facts.position().King(king))));
             }
           });
}

// One entry for the king that is nearer to the pawns.
template <class Sink>
void AddNearPawns(const Facts& facts, const Weights& weights, Sink& sink) {
  if (facts.phase() == kFullPhase) return;
  const int pawns = PopCount(facts.position().Pieces(PieceKind::kPawn));
  const Lead lead(KingMovesToPawns(facts, Side::kBlack) -
                  KingMovesToPawns(facts, Side::kWhite));
  if (lead.by == 0) return;
  sink.Add(TermId::kKingNearPawns, lead.side,
           Scale(weights.king_near_pawns, lead.by, pawns),
           [&](Details& details) {
             details.Squares(facts.Own(lead.side, PieceKind::kKing));
             details.Add(KingPawnsClaim(facts, lead.side));
           });
}

// Enemy pawns beside the king that no pawn guards, in the ending.
template <class Sink>
void AddRaids(const Facts& facts, const Weights& weights, Side side,
              Sink& sink) {
  if (facts.phase() == kFullPhase) return;
  const PawnFacts& enemy = facts.Pawns(Other(side));
  const Square king = facts.position().King(side);
  const Bitboard raided = facts.Attacks(king) & enemy.pawns & ~enemy.attacks;
  if (raided == 0) return;
  sink.Add(TermId::kKingRaid, side, weights.king_raid * PopCount(raided),
           [&](Details& details) {
             details.Squares(Bit(king) | raided);
             for (const Square pawn : Each(raided)) {
               details.Add(AttackCountClaim(facts, side, pawn));
               details.Add(KingDistanceClaim(facts, side, pawn));
             }
           });
}

}  // namespace

template <class Sink>
void AddKing(const Facts& facts, const Weights& weights, Sink& sink) {
  for (const Side side : kSides) {
    KingTerms<Sink>(facts, weights, side, sink).Run();
    AddUncastled(facts, weights, side, sink);
    AddKingAhead(facts, weights, side, sink);
    AddRaids(facts, weights, side, sink);
  }
  AddActivity(facts, weights, sink);
  AddNearPawns(facts, weights, sink);
}

ASSAY_INSTANTIATE_THEME(AddKing);

}  // namespace assay
