// Passed pawns and those that can become so: by rank, by who guards them, who
// stands in their way and which king is nearer.
#include <algorithm>

#include "assay/facts/claim_makers.h"
#include "assay/facts/pawn_groups.h"
#include "assay/terms/lead.h"
#include "assay/terms/sink.h"

namespace assay {
namespace {

// Ranks as numbers from 0: the fourth is 3.
constexpr int kThird = 2;
constexpr int kFourth = 3;
constexpr int kMostKingMoves = 4;

struct WingFiles {
  int first;
  int last;
};
constexpr WingFiles kFlanks[] = {{0, 2}, {5, 7}};

Tapered ValueByRank(const Weights& weights, int relative_rank) {
  const Tapered values[] = {weights.passed_rank2, weights.passed_rank3,
                            weights.passed_rank4, weights.passed_rank5,
                            weights.passed_rank6, weights.passed_rank7};
  return values[relative_rank - 1];
}

template <class Sink>
class PassedPawn {
 public:
  PassedPawn(const Facts& facts, const Weights& weights, Side side, Square pawn,
             Sink& sink)
      : facts_(facts),
        weights_(weights),
        side_(side),
        enemy_(Other(side)),
        pawn_(pawn),
        rank_(RelativeRank(side, pawn)),
        stop_(First(Forward(side, Bit(pawn)))),
        sink_(sink) {}

  void Run() {
    const bool guarded = Contains(facts_.Pawns(side_).attacks, pawn_);
    const bool blocked = IsBlockaded();
    const bool outside = IsOutsidePassed(facts_, side_, pawn_);
    const bool free_path = rank_ > kFourth && PathIsFree();
    const int king_lead = rank_ >= kFourth ? KingLead() : 0;
    const Bitboard partner = Partner();
    Tapered value = ValueByRank(weights_, rank_);
    if (guarded) value = value + weights_.passed_protected;
    if (blocked && rank_ > kThird) {
      value = value + weights_.passed_blockaded * (rank_ - kThird);
    }
    if (outside) value = value + weights_.passed_outside;
    if (free_path)
      value = value + weights_.passed_free_path * (rank_ - kFourth);
    if (partner != 0 && rank_ > kThird) {
      value = value + weights_.passed_connected * (rank_ - kThird);
    }
    value = value + weights_.passed_king_nearer * king_lead;
    sink_.Add(TermId::kPassedPawn, side_, value, [&](Details& details) {
      const auto add = [&](ClaimKind kind) {
        details.Add(SquaresClaim(kind, side_, Bit(pawn_)));
      };
      details.Squares(Bit(pawn_));
      add(ClaimKind::kPassed);
      if (guarded) add(ClaimKind::kProtectedPassed);
      if (blocked) details.Add(BlockadeClaim(enemy_, stop_));
      if (outside) add(ClaimKind::kOutsidePassed);
      if (partner != 0 && rank_ > kThird) {
        details.Add(SquaresClaim(ClaimKind::kConnectedPassed, side_,
                                 Bit(pawn_) | partner));
      }
      if (free_path) details.Add(ControlClaim(facts_, enemy_, stop_));
      if (king_lead != 0) {
        for (const Side king : kSides) {
          details.Add(KingDistanceClaim(facts_, king, stop_));
        }
      }
    });
  }

 private:
  bool IsBlockaded() const {
    const Piece there = facts_.position().At(stop_);
    return !there.empty() && there.side() == enemy_;
  }

  // Nothing stands on the squares ahead, and no enemy piece looks at them.
  bool PathIsFree() const {
    const Bitboard path = FrontSpan(side_, Bit(pawn_));
    return (path & (facts_.position().Occupied() | facts_.Attacked(enemy_))) ==
           0;
  }

  // By how many moves the own king is nearer to the square ahead.
  int KingLead() const {
    const Position& position = facts_.position();
    const int lead = KingDistance(position.King(enemy_), stop_) -
                     KingDistance(position.King(side_), stop_);
    return std::clamp(lead, -kMostKingMoves, kMostKingMoves);
  }

  // A connected passed pawn that is not further than this one; of two on one
  // rank, each is the other's partner, so the pair counts for both.
  Bitboard Partner() const {
    const Bitboard near = facts_.Pawns(side_).passed & ConnectedSquares(pawn_);
    for (const Square other : Each(near)) {
      if (RelativeRank(side_, other) <= rank_) return Bit(other);
    }
    return 0;
  }

  const Facts& facts_;
  const Weights& weights_;
  const Side side_;
  const Side enemy_;
  const Square pawn_;
  const int rank_;
  const Square stop_;
  Sink& sink_;
};

template <class Sink>
void AddCandidates(const Facts& facts, const Weights& weights, Side side,
                   Sink& sink) {
  for (const Square pawn : Each(facts.Pawns(side).candidates)) {
    const int rank = RelativeRank(side, pawn);
    if (rank < kThird) continue;
    sink.Add(
        TermId::kCandidate, side, weights.candidate * (rank - 1),
        [&](Details& details) {
          details.Squares(Bit(pawn));
          details.Add(SquaresClaim(ClaimKind::kCandidate, side, Bit(pawn)));
        });
  }
}

// More pawns on a flank: with the own king there they have its help; where the
// enemy king is, it is short of them. Away from both they count for nothing
// measurable.
template <class Sink>
void AddMajorities(const Facts& facts, const Weights& weights, Side side,
                   Sink& sink) {
  for (const WingFiles flank : kFlanks) {
    Bitboard files = 0;
    for (int f = flank.first; f <= flank.last; ++f) files |= FileMask(f);
    const bool with_king = (facts.Own(side, PieceKind::kKing) & files) != 0;
    const bool at_king =
        (facts.Own(Other(side), PieceKind::kKing) & files) != 0;
    if (!with_king && !at_king) continue;
    const Bitboard own = facts.Pawns(side).pawns & files;
    const int enemies = PopCount(facts.Pawns(Other(side)).pawns & files);
    const int surplus = PopCount(own) - enemies;
    if (surplus <= 0 || enemies == 0) continue;  // without enemies: passed
    const auto describe = [&](Details& details) {
      details.Squares(own);
      details.Add(MajorityClaim(side, own, enemies));
    };
    if (at_king) {
      sink.Add(TermId::kKingWing, Other(side),
               weights.king_wing_minority * surplus, describe);
    } else {
      sink.Add(TermId::kWingMajority, side, weights.wing_majority * surplus,
               [&](Details& details) {
                 describe(details);
                 details.Squares(own | facts.Own(side, PieceKind::kKing));
               });
    }
  }
}

// More pawns on the d- and e-files.
template <class Sink>
void AddCentreMajority(const Facts& facts, const Weights& weights, Sink& sink) {
  constexpr Bitboard kCentrePair = FileMask(3) | FileMask(4);
  const Bitboard white = facts.Pawns(Side::kWhite).pawns & kCentrePair;
  const Bitboard black = facts.Pawns(Side::kBlack).pawns & kCentrePair;
  const Lead lead(PopCount(white) - PopCount(black));
  if (lead.by == 0) return;
  sink.Add(TermId::kCentreMajority, lead.side,
           weights.centre_majority * lead.by, [&](Details& details) {
             const bool is_white = lead.side == Side::kWhite;
             const Bitboard own = is_white ? white : black;
             details.Squares(own);
             details.Add(MajorityClaim(lead.side, own,
                                       PopCount(is_white ? black : white)));
           });
}

}  // namespace

template <class Sink>
void AddPassedPawns(const Facts& facts, const Weights& weights, Sink& sink) {
  for (const Side side : kSides) {
    for (const Square pawn : Each(facts.Pawns(side).passed)) {
      PassedPawn<Sink>(facts, weights, side, pawn, sink).Run();
    }
    AddCandidates(facts, weights, side, sink);
    AddMajorities(facts, weights, side, sink);
  }
  AddCentreMajority(facts, weights, sink);
}

ASSAY_INSTANTIATE_THEME(AddPassedPawns);

}  // namespace assay
