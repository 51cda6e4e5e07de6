#include "assay/explain/race_text.h"

#include "assay/explain/line_text.h"
#include "assay/facts/claim_makers.h"

namespace assay {
namespace {

class RaceTeller {
 public:
  RaceTeller(const Race& race, const Position& position,
             const std::vector<ToldPlan>& plans)
      : race_(race), position_(position), plans_(plans) {
    for (const Side side : kSides) runner_[Index(side)] = Runner(side);
  }

  Message Tell(ClaimTable& table, ClaimRefs& refs) const {
    const Message said = Clause(table, refs);
    if (said.empty()) return {};
    for (const ToldPlan* told : runner_) {
      if (told != nullptr) Merge(told->claims, refs);
    }
    return Sentence(said);
  }

 private:
  // Told plans are White's, then Black's, each side's best first.
  const ToldPlan* Runner(Side side) const {
    const auto& place = race_.runner[Index(side)];
    if (!place.has_value()) return nullptr;
    std::size_t at = 0;
    for (const ToldPlan& told : plans_) {
      if (told.plan.side == side && at++ == *place) return &told;
    }
    return nullptr;
  }

  Message Clause(ClaimTable& table, ClaimRefs& refs) const {
    const ToldPlan* white = runner_[0];
    const ToldPlan* black = runner_[1];
    if (white == nullptr && black == nullptr) return {};
    if (race_.compensated.has_value()) return Compensation();
    if (race_.start == Start::kStopping) return Stopping(table, refs);
    if (white == nullptr || black == nullptr) {
      const ToldPlan& only = white == nullptr ? *black : *white;
      return Say("race.bigger", only.plan.side, only.title_said);
    }
    if (!race_.faster.has_value()) return {};
    const ToldPlan& faster = *runner_[Index(*race_.faster)];
    const ToldPlan& slower = *runner_[Index(Other(*race_.faster))];
    if (faster.plan.kind == slower.plan.kind) {
      // Who is first is news on a file that both want.
      if (faster.plan.kind == PlanKind::kDevelop) return {};
      const Square goal = faster.plan.moves.back().to();
      if (faster.plan.kind == PlanKind::kFile &&
          FileOf(goal) == FileOf(slower.plan.moves.back().to())) {
        return Say("race.first_on", faster.plan.side, Files{Bit(goal)});
      }
    }
    // Where both take as long, the one to move is first.
    if (faster.plan.tempi() >= slower.plan.tempi()) {
      return Say("race.first", faster.plan.side, faster.title_said,
                 slower.title_said);
    }
    return Say("race.quicker", faster.plan.side, faster.plan.tempi(),
               faster.title_said, slower.plan.tempi(), slower.title_said);
  }

  Message Compensation() const {
    const ToldPlan* told = runner_[Index(*race_.compensated)];
    if (told == nullptr) return {};
    return Say("race.compensation", *race_.compensated, told->title_said);
  }

  // What the side to move starts with is no plan of its own.
  Message Stopping(ClaimTable& table, ClaimRefs& refs) const {
    const Side mover = position_.side_to_move();
    const ToldPlan* danger = runner_[Index(Other(mover))];
    if (danger == nullptr || race_.first.is_null()) return {};
    for (const ToldPlan& told : plans_) {
      // Search may hold that the stop does not work.
      if (told.plan.side == mover && told.plan.moves.front() == race_.first &&
          told.plan.standing != Standing::kInTime) {
        return {};
      }
    }
    table.Add(LineClaim(position_, mover, {race_.first}), refs);
    return Say("race.stopping", mover, danger->title_said,
               NumberedMove(position_, race_.first));
  }

  const Race& race_;
  const Position& position_;
  const std::vector<ToldPlan>& plans_;
  const ToldPlan* runner_[2] = {};
};

}  // namespace

Message RaceText(const Race& race, const Position& position,
                 const std::vector<ToldPlan>& plans, ClaimTable& table,
                 ClaimRefs& refs) {
  return RaceTeller(race, position, plans).Tell(table, refs);
}

}  // namespace assay
