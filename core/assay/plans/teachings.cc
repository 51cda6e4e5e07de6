// Condensed from the handbooks of pawn structure and the middlegame
// (Nimzowitsch 1925, Kmoch 1959, Pachman 1963, Keres and Kotov 1964, Soltis
// 1976, Flores Rios 2015), from memory. Squares are the owner's: its own pawns
// go up the board, whatever its colour.
#include "assay/plans/teachings.h"

#include <algorithm>
#include <iterator>
#include <string_view>

#include "assay/facts/claim_makers.h"
#include "assay/facts/routes.h"
#include "assay/plans/best_drafts.h"

namespace assay {
namespace {

enum class Holder : std::uint8_t { kOwner, kOther };

// The squares that matter to a teaching, as "d5" or "c4 d4"; none: any, or the
// structure's own pawns where it is one of sieges.
struct Teaching {
  PawnStructure structure;
  Holder holder;
  PlanKind kind;
  std::string_view goals;
  PieceKind piece = PieceKind::kNone;  // that goes there, or is traded

  Bitboard Goals() const {
    Bitboard squares = 0;
    for (std::size_t i = 0; i + 1 < goals.size(); i += 3) {
      squares |= Bit(MakeSquare(goals[i] - 'a', goals[i + 1] - '1'));
    }
    return squares;
  }
};

// What the ledger cannot know of a plan that generations have found to be the
// one to follow. Own reasoning: about a third of a pawn for the plan that a
// structure is known for, the first in its list, and half of it for the others.
constexpr Centipawns kKnownFor = 36;
constexpr Centipawns kAlsoTaught = 20;

// As regroups.cc has it: less is not worth the way.
constexpr Centipawns kLeastWay = 25;

// Moves that a piece may take to where it is taught to go.
constexpr int kLongestWay = 2;

using S = PawnStructure;
using K = PlanKind;
constexpr Holder kOwner = Holder::kOwner;
constexpr Holder kOther = Holder::kOther;
constexpr PieceKind kKnight = PieceKind::kKnight;
constexpr PieceKind kBishop = PieceKind::kBishop;

// For each structure and holder, the plan that it is known for first.
constexpr Teaching kTeachings[] = {
    {S::kHedgehog, kOwner, K::kLever, "d4"},
    {S::kHedgehog, kOwner, K::kLever, "b4"},
    {S::kHedgehog, kOther, K::kRestrain, "b4 d4 a5"},
    {S::kBind, kOwner, K::kRegroup, "d5", kKnight},
    {S::kBind, kOwner, K::kRestrain, "b5 d5 f5 a4"},
    {S::kBind, kOther, K::kLever, "b5"},
    {S::kBind, kOther, K::kTrade, ""},
    {S::kBind, kOther, K::kLever, "d5 f5"},
    {S::kDragon, kOwner, K::kLever, "d4"},
    {S::kDragon, kOwner, K::kRegroup, "c5", kKnight},
    {S::kDragon, kOwner, K::kFile, "c1 c2 c3"},
    {S::kDragon, kOther, K::kRegroup, "d4", kKnight},
    {S::kBackwardBehindHole, kOwner, K::kLever, "d4"},
    {S::kBackwardBehindHole, kOwner, K::kRestrain, "d4"},
    {S::kBackwardBehindHole, kOwner, K::kFile, "c1 c2 c3"},
    {S::kBackwardBehindHole, kOther, K::kRegroup, "d4", kKnight},
    {S::kBackwardBehindHole, kOther, K::kTrade, "f3 e3 b3 c2 d2", kKnight},
    {S::kSmallCentre, kOwner, K::kLever, "d4"},
    {S::kSmallCentre, kOwner, K::kExpansion, "b4"},
    {S::kSmallCentre, kOther, K::kLever, "e4"},
    {S::kSmallCentre, kOther, K::kKingAttack, ""},
    {S::kSmallCentre, kOther, K::kLever, "f4"},
    {S::kDoubledCPawnsClosed, kOwner, K::kKingAttack, ""},
    {S::kDoubledCPawnsClosed, kOther, K::kSiege, "c4 c5"},
    {S::kClosedBenoni, kOwner, K::kLever, "b4 f4"},
    {S::kClosedBenoni, kOther, K::kLever, "f5"},
    {S::kClosedBenoni, kOther, K::kTrade, "", kBishop},
    {S::kClosedBenoni, kOther, K::kLever, "b5"},
    {S::kKingsIndianChain, kOwner, K::kLever, "c5"},
    {S::kKingsIndianChain, kOwner, K::kExpansion, "b4 c5"},
    {S::kKingsIndianChain, kOther, K::kLever, "f5"},
    {S::kKingsIndianChain, kOther, K::kKingAttack, ""},
    {S::kKingsIndianChain, kOther, K::kRegroup, "f4", kKnight},
    {S::kSpanishChain, kOwner, K::kLever, "a4"},
    {S::kSpanishChain, kOwner, K::kRegroup, "f5 g3", kKnight},
    {S::kSpanishChain, kOther, K::kExpansion, "c4"},
    {S::kSpanishChain, kOther, K::kRegroup, "b6", kKnight},
    {S::kFrenchChain, kOwner, K::kKingAttack, ""},
    {S::kFrenchChain, kOwner, K::kLever, "f5"},
    {S::kFrenchChain, kOther, K::kLever, "f6 c5"},
    {S::kFrenchChain, kOther, K::kSiege, "d4"},
    {S::kFrenchChain, kOther, K::kTrade, "", kBishop},
    {S::kFrenchChainWithoutCPawns, kOwner, K::kLever, "f5"},
    {S::kFrenchChainWithoutCPawns, kOwner, K::kKingAttack, ""},
    {S::kFrenchChainWithoutCPawns, kOther, K::kSiege, "d4"},
    {S::kFrenchChainWithoutCPawns, kOther, K::kLever, "f6"},
    {S::kStoneWall, kOwner, K::kRegroup, "e5", kKnight},
    {S::kStoneWall, kOwner, K::kKingAttack, ""},
    {S::kStoneWall, kOwner, K::kRegroup, "h4 a3", kBishop},
    {S::kStoneWall, kOther, K::kRegroup, "e4", kKnight},
    {S::kStoneWall, kOther, K::kTrade, "", kBishop},
    {S::kBenoniMajority, kOwner, K::kMajority, "b4 c5"},
    {S::kBenoniMajority, kOwner, K::kLever, "b4"},
    {S::kBenoniMajority, kOther, K::kLever, "e4"},
    {S::kBenoniMajority, kOther, K::kRegroup, "c5", kKnight},
    {S::kBenoniMajority, kOther, K::kRestrain, "b4 a5"},
    {S::kMinorityAttack, kOwner, K::kMinorityAttack, ""},
    {S::kMinorityAttack, kOwner, K::kLever, "e4"},
    {S::kMinorityAttack, kOwner, K::kRegroup, "e5", kKnight},
    {S::kMinorityAttack, kOther, K::kRegroup, "e4 c4", kKnight},
    {S::kMinorityAttack, kOther, K::kLever, "c5"},
    {S::kMinorityAttack, kOther, K::kKingAttack, ""},
    {S::kIsolatedQueensPawn, kOwner, K::kLever, "d5"},
    {S::kIsolatedQueensPawn, kOwner, K::kRegroup, "e5", kKnight},
    {S::kIsolatedQueensPawn, kOwner, K::kKingAttack, ""},
    {S::kIsolatedQueensPawn, kOther, K::kRegroup, "d5", kKnight},
    {S::kIsolatedQueensPawn, kOther, K::kSiege, "d4"},
    {S::kIsolatedQueensPawn, kOther, K::kTrade, ""},
    {S::kHangingPawns, kOwner, K::kLever, "d5"},
    {S::kHangingPawns, kOwner, K::kLever, "c5"},
    {S::kHangingPawns, kOther, K::kSiege, ""},
    {S::kIsolatedCouple, kOwner, K::kExpansion, "c4"},
    {S::kIsolatedCouple, kOwner, K::kKingAttack, ""},
    {S::kIsolatedCouple, kOther, K::kSiege, "c3"},
    {S::kIsolatedCouple, kOther, K::kRegroup, "d5", kKnight},
    {S::kCaroSlav, kOwner, K::kLever, "d5"},
    {S::kCaroSlav, kOwner, K::kRegroup, "e5", kKnight},
    {S::kCaroSlav, kOwner, K::kRestrain, "c5 e5"},
    {S::kCaroSlav, kOther, K::kLever, "c5 e5"},
    {S::kOpenDFile, kOwner, K::kFile, "d1 d2 d3"},
    {S::kOpenDFile, kOwner, K::kRegroup, "f5 d5 c4 d6", kKnight},
    {S::kOpenDFile, kOther, K::kFile, "d8 d7 d6"},
    {S::kOpenDFile, kOther, K::kRegroup, "f4 d4 c5", kKnight},
    {S::kExchangeRuyLopez, kOwner, K::kMajority, ""},
    {S::kExchangeRuyLopez, kOwner, K::kTrade, ""},
    {S::kExchangeRuyLopez, kOther, K::kLever, "f5"},
    {S::kExchangeFrench, kOwner, K::kFile, "e1 e2 e3"},
    {S::kExchangeFrench, kOwner, K::kRegroup, "e5", kKnight},
    {S::kExchangeFrench, kOther, K::kFile, "e8 e7 e6"},
    {S::kExchangeFrench, kOther, K::kRegroup, "e4", kKnight},
    {S::kDoubledCPawns, kOther, K::kSiege, "c4 c5"},
    {S::kTwoPawnCentre, kOwner, K::kExpansion, "d5 e5"},
    {S::kTwoPawnCentre, kOwner, K::kLever, "d5 e5"},
    {S::kTwoPawnCentre, kOther, K::kSiege, "d4 e4"},
    {S::kTwoPawnCentre, kOther, K::kTrade, "", kKnight},
    {S::kThreeAgainstTwo, kOwner, K::kMajority, ""},
    {S::kOppositeCastling, kOwner, K::kKingAttack, ""},
    {S::kOppositeCastling, kOther, K::kKingAttack, ""},
    {S::kBackwardPawn, kOther, K::kSiege, ""},
};

// Whether the draft is what the teaching says, its goals on the board.
bool IsTaught(const Outlook& outlook, const Draft& draft,
              const Teaching& teaching, const NamedStructure& structure,
              Bitboard goals) {
  if (draft.kind != teaching.kind || draft.moves.empty()) return false;
  const Bitboard targets = draft.targets.ToSet();
  const Square end = draft.moves.back().to();
  switch (teaching.kind) {
    case PlanKind::kSiege:
      return (targets & (goals == 0 ? structure.own : goals)) != 0;
    case PlanKind::kTrade: {
      const Square other = draft.targets.empty() ? kNoSquare : draft.targets[0];
      if (other == kNoSquare) return false;
      const bool is_piece = teaching.piece == PieceKind::kNone ||
                            outlook.position.At(other).kind() == teaching.piece;
      return is_piece && (goals == 0 || Contains(goals, other));
    }
    case PlanKind::kRestrain:
      return ((targets | Bit(end)) & goals) != 0;
    case PlanKind::kRegroup:
      return Contains(goals, end) &&
             outlook.position.At(draft.moves.back().from()).kind() !=
                 PieceKind::kRook &&
             outlook.position.At(draft.moves.front().from()).kind() ==
                 teaching.piece;
    default:
      return goals == 0 || Contains(goals, end);
  }
}

// The shortest safe way of a piece of the kind to one of the goals, of several
// the best by the ledger: what a finder passes over where the ledger sees
// little in it. No moves where there is none.
Draft WayTo(const Outlook& outlook, PieceKind piece, Bitboard goals) {
  Draft best;
  best.kind = PlanKind::kRegroup;
  std::optional<Centipawns> most;
  const Facts& facts = outlook.facts;
  const Bitboard open = goals & ~facts.position().Occupied() &
                        ~facts.Pawns(outlook.enemy()).attacks;
  const Bitboard pieces =
      facts.Own(outlook.side, piece) & ~facts.Pinned(outlook.side);
  for (int length = 1; length <= kLongestWay && !most.has_value(); ++length) {
    for (const Square from : InOrder(outlook.side, pieces)) {
      const Reach reach(facts, from, length);
      for (const Square goal :
           InOrder(outlook.side, reach.NewAfter(length) & open)) {
        for (const SquareList& route :
             RoutesInOrder(reach, outlook.side, goal, 2)) {
          std::vector<Move> moves;
          if (!PlayRoute(outlook.position, outlook.side, route, moves) ||
              !FirstStepIsSound(outlook, moves.front())) {
            continue;
          }
          const auto gain = GainAlone(outlook, moves);
          if (!gain.has_value() || (most.has_value() && *gain <= *most)) {
            continue;
          }
          most = gain;
          best.moves = std::move(moves);
          best.targets = {goal};
        }
      }
    }
  }
  if (most.has_value()) {
    best.claims = {ControlClaim(facts, outlook.side, best.targets[0])};
  }
  return best;
}

}  // namespace

void CreditTeachings(const Outlook& outlook, const StructureList& structures,
                     bool may_add, std::vector<Draft>& drafts) {
  for (const NamedStructure& structure : structures) {
    bool first[2] = {true, true};
    for (const Teaching& teaching : kTeachings) {
      if (teaching.structure != structure.structure) continue;
      const Centipawns credit =
          first[static_cast<int>(teaching.holder)] ? kKnownFor : kAlsoTaught;
      first[static_cast<int>(teaching.holder)] = false;
      const Side holder = teaching.holder == Holder::kOwner
                              ? structure.owner
                              : Other(structure.owner);
      if (holder != outlook.side) continue;
      const Bitboard goals = structure.owner == Side::kWhite
                                 ? teaching.Goals()
                                 : FlipRanks(teaching.Goals());
      auto draft = std::find_if(
          drafts.begin(), drafts.end(), [&](const Draft& candidate) {
            return candidate.taught == PawnStructure::kNone &&
                   IsTaught(outlook, candidate, teaching, structure, goals);
          });
      if (draft == drafts.end() && may_add &&
          teaching.kind == PlanKind::kRegroup) {
        Draft way = WayTo(outlook, teaching.piece, goals);
        const auto gain = GainAlone(outlook, way.moves);
        if (way.moves.empty() || gain.value_or(-credit) + credit < kLeastWay) {
          continue;
        }
        drafts.push_back(std::move(way));
        draft = std::prev(drafts.end());
      }
      if (draft == drafts.end()) continue;
      draft->promise += credit;
      const bool siege = draft->kind == PlanKind::kSiege;
      const SquareList targets = draft->targets;
      // A siege by fewer pieces is as much taught, though it does less.
      for (Draft& way : drafts) {
        const bool smaller = siege && way.kind == PlanKind::kSiege &&
                             way.targets == targets &&
                             way.taught == PawnStructure::kNone;
        if (!smaller && &way != &*draft) continue;
        way.taught = structure.structure;
        way.claims.push_back(StructureClaim(structure));
      }
    }
  }
}

}  // namespace assay
