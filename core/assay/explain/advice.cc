// A first move is advised for what it wins, else for what it changes most;
// an only move is said to be one.
#include <algorithm>

#include "assay/explain/account.h"
#include "assay/explain/deed.h"
#include "assay/explain/line_text.h"
#include "assay/explain/proved.h"
#include "assay/explain/verdict.h"
#include "assay/explain/win_text.h"
#include "assay/facts/claim_makers.h"

namespace assay {
namespace {

// The best line as far as a change of the ledger is looked for in it.
constexpr std::size_t kFewPlies = 5;
constexpr std::size_t kMostPlies = 8;

// A win that the count does not see, or that no count could hide.
constexpr Centipawns kMoreThanCounted = 40;
constexpr int kPlainGain = 300;

Message WinClause(const Proved& proved, const std::string& move, Advice& advice,
                  ClaimTable& table) {
  const Side side = proved.position.side_to_move();
  const Proof& proof = proved.proof;
  Win win{proof, proof.line, std::nullopt};
  if (!win.mates()) {
    win.spoils = FindSpoils(proved.position, proof.line, side);
    const Centipawns more =
        ScoreFor(proof, side) - Sign(side) * proved.static_cp;
    if (!win.spoils.has_value() ||
        (more < kMoreThanCounted && win.spoils->gain < kPlainGain)) {
      return {};
    }
  } else if (ScoreFor(proof, side) < 0) {
    return {};
  }
  const WinText told = TellWin(proved.position, side, win, table);
  Merge(told.claims, advice.claims);
  if (win.mates()) {
    return Say("advice.mate", move, win.line.size() == 1);
  }
  return Say("advice.wins", move, told.what);
}

Message ChangeClause(const Proved& proved, const std::string& move,
                     Advice& advice, ClaimTable& table) {
  const Side side = proved.position.side_to_move();
  for (const std::size_t least : {std::size_t{1}, kFewPlies}) {
    const std::vector<Move> line =
        SettledPart(proved.position, proved.proof.line, least, kMostPlies);
    if (line.empty()) continue;
    const auto change = FindChange(proved.position, proved.reasons, side, line,
                                   proved.weights, table);
    if (!change.has_value()) continue;
    Merge(change->claims, advice.claims);
    const std::string text =
        line.size() == 1 ? move : LineText(proved.position, line);
    return Say("advice.gives", text, side, change->phrase);
  }
  std::vector<Move> line = proved.proof.line;
  line.resize(std::min(kFewPlies, line.size()));
  table.Add(LineClaim(proved.position, side, line), advice.claims);
  return Say("advice.search", LineText(proved.position, line));
}

// That the opponent's threat comes to nothing after the best line's first move.
Message MeetsThreat(const Proved& proved, const std::vector<Threat>& threats,
                    Advice& advice, ClaimTable& table) {
  const Side other = Other(proved.position.side_to_move());
  const auto threat =
      std::find_if(threats.begin(), threats.end(),
                   [other](const Threat& one) { return one.side == other; });
  if (threat == threats.end() ||
      WinOf(proved.position, other, proved.proof).has_value()) {
    return {};
  }
  Merge(threat->claims, advice.claims);
  table.Add(LineClaim(proved.position, Other(other), proved.proof.line),
            advice.claims);
  if (threat->object.empty()) return Say("deed.meets_mate");
  return Say("deed.meets_threat", threat->object);
}

// What the move does on the board, else what it changes in the ledger.
Message DeedClause(const Proved& proved, const std::vector<Threat>& threats,
                   const std::string& move, Advice& advice, ClaimTable& table) {
  Message deed =
      DeedOf(proved.position, proved.proof.line, table, advice.claims);
  if (deed.empty()) deed = MeetsThreat(proved, threats, advice, table);
  if (deed.empty()) return ChangeClause(proved, move, advice, table);
  return Say("advice.deed", move, deed);
}

// "14.a3 prepares the break b4." A move that is not search's first choice says
// so.
Message BeginningOf(const Proved& proved, const ToldPlan& told,
                    const PlanToBegin& plan, Advice& advice,
                    ClaimTable& table) {
  advice.move = told.plan.moves.front();
  advice.plan = plan.index;
  Merge(told.claims, advice.claims);
  Merge(told.steps.front().claims, advice.claims);
  Message begins = Sentence(Say(
      "advice.deed", NumberedMove(proved.position, advice.move), told.begins));
  if (plan.is_best) return begins;
  const Move best = proved.proof.line.front();
  table.Add(LineClaim(proved.position, proved.position.side_to_move(), {best}),
            advice.claims);
  return List("list.sentences",
              {begins, Sentence(Say("advice.as_soon",
                                    NumberedMove(proved.position, best)))});
}

// What the next best move loses, where it loses a step of the verdict and
// something concrete.
Message OnlyMoveClause(const Proved& proved, const Proof& second,
                       Advice& advice, ClaimTable& table) {
  const Side side = proved.position.side_to_move();
  const Centipawns best_cp = ScoreFor(proved.proof, side);
  const Centipawns second_cp = ScoreFor(second, side);
  if (second.line.empty() || VerdictStep(second_cp) >= VerdictStep(best_cp)) {
    return {};
  }
  Win win{second, second.line, std::nullopt};
  if (!win.mates()) {
    win.spoils = FindSpoils(proved.position, second.line, Other(side));
    if (!win.spoils.has_value()) return {};
  } else if (second_cp > 0) {
    return {};
  }
  const WinText told = TellWin(proved.position, Other(side), win, table);
  Merge(told.claims, advice.claims);
  return Say("advice.only", NumberedMove(proved.position, second.line.front()),
             told.what, told.line);
}

}  // namespace

std::optional<Advice> TellAdvice(const Proved& proved,
                                 const std::optional<Proof>& second,
                                 const std::vector<Threat>& threats,
                                 const std::vector<ToldPlan>& plans,
                                 const std::optional<PlanToBegin>& plan,
                                 ClaimTable& table) {
  if (proved.proof.line.empty()) return std::nullopt;
  Advice advice;
  advice.move = proved.proof.line.front();
  const std::string move = NumberedMove(proved.position, advice.move);
  if (plan.has_value() && plan->is_best) advice.plan = plan->index;
  const Message win = WinClause(proved, move, advice, table);
  std::vector<Message> sentences;
  if (!win.empty()) {
    sentences.push_back(Sentence(win));
  } else if (plan.has_value()) {
    sentences.push_back(
        BeginningOf(proved, plans[plan->index], *plan, advice, table));
  } else {
    sentences.push_back(
        Sentence(DeedClause(proved, threats, move, advice, table)));
  }
  const bool begins_other = win.empty() && plan.has_value() && !plan->is_best;
  if (begins_other) {
    // Another move is as good.
  } else if (!second.has_value()) {
    sentences.push_back(Sentence(Say("advice.only_legal")));
  } else if (win.empty()) {
    const Message only = OnlyMoveClause(proved, *second, advice, table);
    if (!only.empty()) sentences.push_back(Sentence(only));
  }
  advice.said = List("list.sentences", std::move(sentences));
  return advice;
}

}  // namespace assay
