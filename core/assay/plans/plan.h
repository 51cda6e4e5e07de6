// A plan: something that a side can set out to do, how long it takes, and what
// stops it.
#ifndef ASSAY_PLANS_PLAN_H_
#define ASSAY_PLANS_PLAN_H_

#include <cstdint>
#include <vector>

#include "assay/facts/claim.h"
#include "assay/facts/structures.h"
#include "assay/proof/questions.h"

namespace assay {

// The kinds of plans; each has its file, which says when the trade recommends
// it and when not.
enum class PlanKind : std::uint8_t {
  kSiege,           // more attackers than defenders on a fixed weakness
  kLever,           // a pawn break
  kExpansion,       // a supported pawn advance for space
  kRegroup,         // the worst-placed piece to a better square
  kTrade,           // an exchange that helps
  kMinorityAttack,  // fewer pawns against more, to leave a weak one
  kMajority,        // more pawns against fewer, to make a passed one
  kPasser,          // advance a passed pawn, or blockade one
  kKingAttack,      // pieces and pawns against the king
  kKingWalk,        // the king to where it works
  kDevelop,         // castle, develop, connect the rooks
  kFile,            // a rook to an open file or the seventh rank
  kRestrain,        // stop the opponent's best plan
  kReshape,         // open or close the centre
};
inline constexpr int kPlanKinds = static_cast<int>(PlanKind::kReshape) + 1;

// "siege", "minority_attack", ...: Plan.kind of the public contract.
const char* Name(PlanKind kind);

// The plan of the other side that a restraint takes away; no moves for none.
struct Prevented {
  PlanKind kind = PlanKind::kRegroup;
  std::vector<Move> moves;
  SquareList targets;
};

// What a finder proposes: own moves in order, each legal if the opponent only
// passes. Nothing is said yet of whether it works.
struct Draft {
  PlanKind kind = PlanKind::kRegroup;
  std::vector<Move> moves;  // one to five
  SquareList targets;       // what it aims at
  // What the trade makes of it where the ledger cannot see that far, in
  // centipawns for the side: own reasoning, said beside the number. 0 where
  // the ledger tells all.
  Centipawns promise = 0;
  // What it rests on as the position stands, the most telling first; those
  // with a `line` hold after it.
  std::vector<Claim> claims;
  // The structure that the plan is taught for (teachings.h); kNone for none.
  PawnStructure taught = PawnStructure::kNone;
  Prevented prevented;
};

enum class Standing : std::uint8_t { kInTime, kSlow, kStopped, kNeeds };
inline constexpr int kStandings = static_cast<int>(Standing::kNeeds) + 1;

// "in_time", "slow", "stopped", "needs".
const char* Name(Standing standing);

// What search found to come of a plan that the opponent does nothing about: it
// goes through against waiting moves and against natural developing ones.
struct IfIgnored {
  // Both sides' moves; the opponent develops. A null move waits.
  std::vector<Move> line;
  // What the line wins, by exchange values; 0 where it wins no material for
  // good.
  int material = 0;
};

struct Plan {
  Side side = Side::kWhite;
  PlanKind kind = PlanKind::kRegroup;
  std::vector<Move> moves;  // the side's own
  SquareList targets;
  Centipawns gain = 0;   // for the side, if unanswered
  Centipawns worth = 0;  // what plans are ranked by
  // What search holds its first move to cost its side, to move, against the
  // best; 0 unproved.
  Centipawns behind_best = 0;
  Standing standing = Standing::kInTime;
  Move needed;                // with kNeeds: what has to come first
  std::vector<Move> counter;  // the opponent's cheapest stop; empty: none found
  // The first step loses something at once; the counter is the capture.
  bool first_step_loses = false;
  // How many of the plan's moves are made before the counter's first; one more
  // is made before each that follows it.
  std::size_t counter_from = 0;
  Proof proof;  // of its first move; its line is empty where none was made
  IfIgnored if_ignored;  // its line is empty where nothing was proved
  std::vector<Claim> claims;
  PawnStructure taught = PawnStructure::kNone;  // as in Draft
  Prevented prevented;

  int tempi() const { return static_cast<int>(moves.size()); }
};

}  // namespace assay

#endif  // ASSAY_PLANS_PLAN_H_
