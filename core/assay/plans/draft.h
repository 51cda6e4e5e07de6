// What the finders of plans work with, and the finders themselves.
//
// A finder looks at a position for one side and adds drafts of its kind, the
// best few. It is silent where the kind does not apply: a kind that fires on
// everything says nothing. It is cheap: facts and a few ScoreOf() calls, no
// search.
#ifndef ASSAY_PLANS_DRAFT_H_
#define ASSAY_PLANS_DRAFT_H_

#include <optional>
#include <vector>

#include "assay/facts/facts.h"
#include "assay/plans/plan.h"
#include "assay/plans/scores.h"
#include "assay/terms/ledger.h"

namespace assay {

struct Outlook {
  const Position& position;
  const Facts& facts;  // of the position
  const Weights& weights;
  Side side;  // whose plans are looked for; it need not be to move
  // Where drafts go that are refused for their first step alone: what it needs
  // may be worth saying. Null: nowhere.
  std::vector<Draft>* refused = nullptr;
  // Where scores are remembered. Null: each is counted anew.
  Scores* scores = nullptr;

  // The ledger's score of a position, for the side, without what is momentary.
  Centipawns Score(const Position& at) const;

  Side enemy() const { return Other(side); }
};

// The position after the side's moves, the opponent passing in between (and
// first, where it is to move); none where a move is not legal or a pass would
// be made in check. It is then the opponent's move.
std::optional<Position> PlayAlone(const Position& position, Side side,
                                  const std::vector<Move>& moves);

// The moves as a line of a claim: with the passes.
std::vector<Move> WithPasses(const Position& position, Side side,
                             const std::vector<Move>& moves);

// What the side's score changes by if it makes these moves unanswered: the
// ledger's change without the tempo, since the same side is to move before
// and after. None where PlayAlone() has none.
std::optional<Centipawns> GainAlone(const Outlook& outlook,
                                    const std::vector<Move>& moves);

// Whether the piece or pawn that moved last stands safely: captures of it gain
// nothing.
bool StandsSafely(const Position& position, Square square);

// The legal move of the side from one square to another (to a queen where it
// promotes), after the position's owner has passed where it must; null where
// there is none.
Move FindMove(const Position& position, Side side, Square from, Square to);

// The route as moves of the piece that stands on its first square, each legal
// alone and each stop safe but perhaps the last; empty where one is not.
std::vector<Move> MovesOfRoute(const Outlook& outlook, const SquareList& route);

// The finders, in the files of their names.
void DraftSieges(const Outlook& outlook, std::vector<Draft>& drafts);
void DraftLevers(const Outlook& outlook, std::vector<Draft>& drafts);
void DraftExpansions(const Outlook& outlook, std::vector<Draft>& drafts);
void DraftRegroups(const Outlook& outlook, std::vector<Draft>& drafts);
void DraftTrades(const Outlook& outlook, std::vector<Draft>& drafts);
void DraftMinorityAttacks(const Outlook& outlook, std::vector<Draft>& drafts);
void DraftMajorities(const Outlook& outlook, std::vector<Draft>& drafts);
void DraftPassers(const Outlook& outlook, std::vector<Draft>& drafts);
void DraftKingAttacks(const Outlook& outlook, std::vector<Draft>& drafts);
void DraftKingWalks(const Outlook& outlook, std::vector<Draft>& drafts);
void DraftDevelopment(const Outlook& outlook, std::vector<Draft>& drafts);
void DraftFiles(const Outlook& outlook, std::vector<Draft>& drafts);
void DraftReshapes(const Outlook& outlook, std::vector<Draft>& drafts);
// The moves that stop a plan of the opponent's (restraints.cc).
void DraftRestraints(const Outlook& outlook, const std::vector<Plan>& enemy,
                     std::vector<Draft>& drafts);

}  // namespace assay

#endif  // ASSAY_PLANS_DRAFT_H_
