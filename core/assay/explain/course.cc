// The verdict is followed with some inertia: a score that hovers about a
// boundary turns nothing. What is in the middle of an exchange is judged after
// it, structure included.
#include "assay/explain/course.h"

#include <cstdlib>
#include <string_view>

#include "assay/explain/catalogue.h"
#include "assay/explain/claim_shift.h"
#include "assay/explain/glossary.h"
#include "assay/explain/line_text.h"
#include "assay/explain/move_explanation.h"
#include "assay/explain/plan_changes.h"
#include "assay/explain/standing_text.h"
#include "assay/explain/structure.h"
#include "assay/explain/structure_notes.h"
#include "assay/explain/verdict.h"
#include "assay/facts/claim_makers.h"

namespace assay {
namespace {

// A verdict turns when its step changes and the score by this much.
constexpr Centipawns kTurns = 40;
// Plans of less worth make no turn.
constexpr Centipawns kPlanTurns = 40;

class Follower {
 public:
  Follower(const Assayer& assayer, const Position& start,
           const std::vector<Move>& line, const ExplainOptions& options)
      : assayer_(assayer), start_(start), line_(line), options_(options) {}

  Course Follow() {
    Position at = start_;
    Standpoint stood = Judge(at);
    Message named = NameOf(at);
    std::size_t judged = 0;  // moves played when it was
    for (std::size_t ply = 0; ply < line_.size(); ++ply) {
      if (options_.cancelled != nullptr && *options_.cancelled) break;
      const Position before = at;
      at = at.After(line_[ply]);
      PlanTurn(before, at, ply);
      if (GoesOn(ply)) continue;
      const Message name = NameOf(at);
      if (name != named) StructureTurn(named, name, at, judged, ply);
      named = name;
      const Standpoint stands = Judge(at);
      if (Turns(stood, stands)) {
        VerdictTurn(stood, stands, before, ply);
        stood = stands;
      }
      judged = ply + 1;
    }
    const Catalogue& words =
        Catalogue::OrEnglish(options_.language, options_.audience);
    Glossary glossary(words.glossary());
    for (Turn& turn : turns_) {
      turn.text = words.Text(turn.said);
      glossary.Explain(turn.text);
    }
    Course course;
    course.turns = std::move(turns_);
    course.claims = table_.Take();
    return course;
  }

 private:
  // Whether the next move of the line takes back what this one took.
  bool GoesOn(std::size_t ply) const {
    return ply + 1 < line_.size() && line_[ply + 1].to() == line_[ply].to();
  }

  std::vector<Move> Upto(std::size_t count) const {
    return {line_.begin(), line_.begin() + static_cast<std::ptrdiff_t>(count)};
  }

  Standpoint Judge(const Position& position) const {
    if (options_.static_only) return {assayer_.Score(position), 0};
    const std::uint64_t nodes =
        options_.proof_nodes == 0 ? kDefaultSearchNodes : options_.proof_nodes;
    return StandpointOf(
        Prove(position, {assayer_.weights(), nodes, options_.cancelled}));
  }

  static bool Turns(const Standpoint& before, const Standpoint& after) {
    if ((before.mate_in != 0) != (after.mate_in != 0)) return true;
    if (before.mate_in != 0) return (before.mate_in > 0) != (after.mate_in > 0);
    return VerdictStep(before.score_cp) != VerdictStep(after.score_cp) &&
           std::abs(before.score_cp - after.score_cp) >= kTurns;
  }

  // The structure's name; where it has none, the centre's kind.
  static Message NameOf(const Position& position) {
    const Facts facts(position);
    ClaimTable scratch;
    Message name = DescribeStructure(facts, scratch).name_said;
    if (!name.empty()) return name;
    return CentreName(facts.centre());
  }

  Turn& Add(std::size_t ply, Turn::Kind kind) {
    Turn turn;
    turn.ply = ply;
    turn.kind = kind;
    table_.Add(LineClaim(start_, start_.side_to_move(), Upto(ply + 1)),
               turn.claims);
    turns_.push_back(std::move(turn));
    return turns_.back();
  }

  void Shift(const std::vector<Claim>& claims, const ClaimRefs& refs,
             std::size_t played, Turn& turn) {
    const std::vector<Move> prefix = Upto(played);
    for (const std::uint32_t ref : refs) {
      table_.Add(ShiftedClaim(start_, prefix, claims[ref]), turn.claims);
    }
  }

  void StructureTurn(const Message& was, const Message& is,
                     const Position& after, std::size_t judged,
                     std::size_t ply) {
    Turn& turn = Add(ply, Turn::Kind::kStructure);
    const Position before = AfterLine(start_, Upto(ply));
    turn.said = Sentence(
        Say("course.structure", NumberedMove(before, line_[ply]), was, is));
    for (const std::size_t played : {judged, ply + 1}) {
      const Position there =
          played == judged ? AfterLine(start_, Upto(judged)) : after;
      const Facts facts(there);
      ClaimTable claims;
      const Structure structure = DescribeStructure(facts, claims);
      Shift(claims.claims(), structure.claims, played, turn);
    }
  }

  void PlanTurn(const Position& before, const Position& after,
                std::size_t ply) {
    const Facts facts(before);
    const Facts facts_after(after);
    const PlanChanges changes =
        FindPlanChanges(facts, line_[ply], facts_after, assayer_.weights(), 1);
    const std::string move = NumberedMove(before, line_[ply]);
    const auto tell = [&](const Plan& plan, const Facts& at, std::size_t played,
                          std::string_view id) {
      if (plan.worth < kPlanTurns) return;
      ClaimTable claims;
      ToldPlan told = TellPlan(at, plan, assayer_.weights(), claims);
      Turn& turn = Add(ply, Turn::Kind::kPlan);
      turn.said = Sentence(Say(id, move, plan.side, ClauseOf(told.said)));
      Shift(claims.claims(), told.claims, played, turn);
    };
    if (!changes.stops.empty()) {
      tell(changes.stops.front(), facts, ply, "course.ends_plan");
    }
    if (!changes.allows.empty()) {
      tell(changes.allows.front(), facts_after, ply + 1, "course.allows_plan");
    }
  }

  void VerdictTurn(const Standpoint& stood, const Standpoint& stands,
                   const Position& before, std::size_t ply) {
    const MoveExplanation told =
        ExplainMove(assayer_, before, line_[ply], options_);
    Turn& turn = Add(ply, Turn::Kind::kVerdict);
    const auto tell = [&turn](Message sentence) {
      turn.said = List("list.sentences", {turn.said, std::move(sentence)});
    };
    turn.said =
        Sentence(Say("course.verdict", NumberedMove(before, line_[ply])));
    tell(StandingSentence(stood, stands));
    const bool for_white = stands.mate_in != 0
                               ? stands.mate_in > 0
                               : stands.score_cp > stood.score_cp;
    const bool for_mover = (before.side_to_move() == Side::kWhite) == for_white;
    if (!for_mover && told.reply_to_fear.has_value()) {
      tell(told.reply_to_fear->said);
      Shift(told.claims, told.reply_to_fear->claims, ply, turn);
      return;
    }
    const Balance& balance =
        told.settled.has_value() ? told.settled->balance : told.balance;
    for (const LedgerChange& change :
         for_mover ? balance.gains : balance.concessions) {
      if (change.term == TermId::kTempo) continue;
      tell(change.said);
      Shift(told.claims, change.claims, ply, turn);
      return;
    }
  }

  const Assayer& assayer_;
  const Position& start_;
  const std::vector<Move>& line_;
  const ExplainOptions& options_;
  ClaimTable table_;
  std::vector<Turn> turns_;
};

}  // namespace

Course FollowLine(const Assayer& assayer, const Position& start,
                  const std::vector<Move>& line,
                  const ExplainOptions& options) {
  return Follower(assayer, start, line, options).Follow();
}

}  // namespace assay
