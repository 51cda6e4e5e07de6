#include "assay/explain/move_explanation.h"

#include <algorithm>
#include <cstdlib>

#include "assay/explain/catalogue.h"
#include "assay/explain/claim_shift.h"
#include "assay/explain/line_text.h"
#include "assay/explain/move_effects.h"
#include "assay/explain/plan_changes.h"
#include "assay/explain/recaptures.h"
#include "assay/explain/standing_text.h"
#include "assay/explain/verdict.h"
#include "assay/explain/win_text.h"
#include "assay/explain/wording.h"
#include "assay/facts/claim_makers.h"
#include "assay/rules/movegen.h"

namespace assay {
namespace {

// How a budget is shared out: half for the move, a quarter for what was there
// before it; the rest is not needed.
constexpr std::uint64_t kMoveShare = 2;
constexpr std::uint64_t kBeforeShare = 4;

// A change that is told in a summary.
constexpr Centipawns kWorthSaying = 10;
constexpr Centipawns kWeighs = 18;
// Pieces of about the same worth: a bishop for a knight.
constexpr Centipawns kEvenTrade = 50;
constexpr std::size_t kMostUncounted = 3;
constexpr std::size_t kMostSaid = 2;
// What a move costs at least for a reply to it to be feared.
constexpr Centipawns kOwnFault = 75;

// Where the mover's pieces stand after the line, as far as the line's own moves
// tell: castling moves two.
std::vector<std::pair<Square, Square>> MovedBy(const Position& position,
                                               const std::vector<Move>& line) {
  std::vector<std::pair<Square, Square>> moved;
  Position at = position;
  for (const Move move : line) {
    moved.erase(std::remove_if(
                    moved.begin(), moved.end(),
                    [&](const auto& pair) { return pair.second == move.to(); }),
                moved.end());
    moved.emplace_back(move.from(), move.to());
    if (move.type() == Move::Type::kCastling) {
      const int rank = RankOf(move.from());
      const bool kingside = FileOf(move.to()) == 6;
      moved.emplace_back(MakeSquare(kingside ? 7 : 0, rank),
                         MakeSquare(kingside ? 5 : 3, rank));
    }
    at = at.After(move);
  }
  return moved;
}

// What castling, developing, attacking and the like come to by the count.
bool IsTheDeedItself(TermId term) {
  return term == TermId::kHanging || term == TermId::kUncastled ||
         term == TermId::kUndeveloped || term == TermId::kRookOnFile ||
         term == TermId::kOutpost;
}

class MoveTeller {
 public:
  MoveTeller(const Assayer& assayer, const Position& position, Move move,
             const ExplainOptions& options)
      : weights_(assayer.weights()),
        options_(options),
        told_(position, move),
        side_(position.side_to_move()),
        before_(told_.position, weights_),
        after_(told_.after, weights_) {}

  MoveExplanation Tell() {
    told_.score_before_cp = before_.ledger.score_cp;
    told_.score_after_cp = after_.ledger.score_cp;
    const std::vector<Move> played{told_.move};
    told_.balance = BalanceOf(after_, played);
    Settle();
    if (!options_.static_only) Search();
    TellPlans();
    Summarise();
    told_.claims = table_.Take();
    PutIntoWords(Catalogue::OrEnglish(options_.language, options_.audience),
                 told_);
    return std::move(told_);
  }

 private:
  Inquiry Share(std::uint64_t part) const {
    const std::uint64_t nodes =
        options_.proof_nodes == 0 ? kDefaultProofNodes : options_.proof_nodes;
    return {weights_, std::max<std::uint64_t>(nodes / part, 1),
            options_.cancelled};
  }

  Balance BalanceOf(const Snapshot& end, const std::vector<Move>& line) {
    const Pairing pairing{before_, end, MovedBy(told_.position, line)};
    ClaimTable after;
    std::vector<LedgerChange> changes = DiffLedgers(pairing, table_, after);
    const ClaimShift shift{told_.position, line, after, table_};
    Balance balance;
    for (LedgerChange& change : changes) {
      change.claims = shift(change.claims);
      Merge(change.claims_before, change.claims);
      change.claims_before.clear();
      const bool good = Sign(side_) * change.change_cp > 0;
      (good ? balance.gains : balance.concessions).push_back(change);
    }
    const MoveView view{before_, end, line};
    for (LedgerChange& gain :
         UncountedGains(view, changes, kMostUncounted, table_)) {
      balance.gains.push_back(std::move(gain));
    }
    for (LedgerChange& concession :
         UncountedConcessions(view, changes, kMostUncounted, table_)) {
      balance.concessions.push_back(std::move(concession));
    }
    return balance;
  }

  void Settle() {
    const std::vector<Move> line = WithRecaptures(told_.position, told_.move);
    if (line.size() < 2) return;
    Settled& settled = told_.settled.emplace(AfterLine(told_.position, line));
    settled.line = line;
    const Snapshot end(settled.position, weights_);
    settled.score_cp = end.ledger.score_cp;
    settled.balance = BalanceOf(end, line);
  }

  void Search() {
    proof_before_ = Prove(told_.position, Share(kBeforeShare));
    told_.proof = ProveMove(told_.position, told_.move, Share(kMoveShare));
    const auto win = WinOf(told_.position, Other(side_), *told_.proof);
    if (!win.has_value() || win->line.size() < 2) return;
    // What falls anyway is not the move's doing.
    if (ScoreFor(*proof_before_, side_) - ScoreFor(*told_.proof, side_) <
        kOwnFault) {
      return;
    }
    const WinText text = TellWin(told_.position, Other(side_), *win, table_);
    Threat reply;
    reply.side = Other(side_);
    reply.line.assign(win->line.begin() + 1, win->line.end());
    if (win->mates()) {
      reply.said = Sentence(Say("threat.mates", reply.side, text.line));
    } else {
      reply.line.resize(std::max<std::size_t>(win->spoils->shown_plies, 2) - 1);
      reply.gain_cp = win->spoils->gain;
      reply.said =
          Sentence(Say("threat.wins", reply.side, text.what, text.Evidence()));
    }
    reply.claims = text.claims;
    told_.reply_to_fear = std::move(reply);
  }

  void TellPlans() {
    const std::size_t most = options_.max_plans_per_side;
    const PlanChanges changes = FindPlanChanges(before_.facts, told_.move,
                                                after_.facts, weights_, most);
    if (!changes.begun.empty()) {
      ClaimTable claims;
      ToldPlan begun =
          TellPlan(before_.facts, changes.begun.front(), weights_, claims);
      begins_ = std::move(begun.begins);
      for (const std::uint32_t ref : begun.claims) {
        table_.Add(claims.claims()[ref], begins_claims_);
      }
    }
    for (const Plan& plan : changes.stops) {
      told_.stops.push_back(TellPlan(before_.facts, plan, weights_, table_));
    }
    const std::vector<Move> line{told_.move};
    const auto tell = [&](const std::vector<Plan>& plans,
                          std::vector<ToldPlan>& list) {
      for (const Plan& plan : plans) {
        ClaimTable after;
        ToldPlan told = TellPlan(after_.facts, plan, weights_, after);
        ClaimShift{told_.position, line, after, table_}.Apply(told);
        list.push_back(std::move(told));
      }
    };
    tell(changes.starts, told_.starts);
    tell(changes.allows, told_.allows);
  }

  // --- the summary ---

  const Balance& Shown() const {
    return told_.settled.has_value() ? told_.settled->balance : told_.balance;
  }

  void Summarise() {
    AddSentence(Sentence(Opening()), {});
    AddConcessions();
    AddPlans();
    if (told_.reply_to_fear.has_value()) {
      AddSentence(told_.reply_to_fear->said, told_.reply_to_fear->claims);
    } else {
      AddStanding();
    }
    told_.summary_said = List("list.sentences", std::move(sentences_));
  }

  void AddSentence(Message sentence, const ClaimRefs& refs) {
    sentences_.push_back(std::move(sentence));
    Merge(refs, told_.summary_claims);
  }

  // Whether the change says nothing to a reader: the move that is passed on,
  // and the two halves of an even trade of unlike pieces.
  bool IsSilent(const LedgerChange& change) const {
    if (change.term == TermId::kTempo) return true;
    if (change.term != TermId::kMaterial) return false;
    Centipawns sum = 0;
    for (const auto* list : {&Shown().gains, &Shown().concessions}) {
      for (const LedgerChange& other : *list) {
        if (other.term == TermId::kMaterial) sum += other.change_cp;
      }
    }
    return std::abs(sum) < kEvenTrade;
  }

  // "12. g4 attacks the knight on f6".
  Message Opening() {
    const std::vector<Move> line = told_.settled.has_value()
                                       ? told_.settled->line
                                       : std::vector<Move>{told_.move};
    table_.Add(LineClaim(told_.position, side_, line), told_.summary_claims);
    const std::string shown = LineText(told_.position, line);
    const LedgerChange* deed = nullptr;
    const LedgerChange* counted = nullptr;
    for (const LedgerChange& gain : Shown().gains) {
      if (!gain.term.has_value()) {
        if (deed == nullptr) deed = &gain;
      } else if (counted == nullptr && !IsSilent(gain) &&
                 std::abs(gain.change_cp) >= kWorthSaying) {
        counted = &gain;
      }
    }
    Message does;
    if (deed != nullptr) {
      const Message clause = ClauseOf(deed->said);
      if (clause.id == kDeedOfMove) {
        does = std::get<Message>(clause.arguments.front().value());
        Merge(deed->claims, told_.summary_claims);
      }
    }
    const bool said = !does.empty();
    // Beside a deed, only what weighs; a threat is the deed's own.
    const bool adds = counted != nullptr &&
                      (!said || (std::abs(counted->change_cp) >= kWeighs &&
                                 !IsTheDeedItself(*counted->term)));
    const LedgerChange* more = adds ? counted : said ? nullptr : deed;
    Message comes;
    if (more != nullptr) {
      comes = ClauseOf(more->said);
      if (!said && comes.id == "effect.lets_out") {
        // The move is the subject.
        does = Say("effect.opens", comes.arguments.front());
        comes = {};
      }
      Merge(more->claims, told_.summary_claims);
    }
    if (does.empty() && comes.empty()) return Say("move.gains_nothing", shown);
    return Say("move.opening", shown, std::move(does), std::move(comes));
  }

  void AddConcessions() {
    std::vector<const LedgerChange*> said;
    // The weightiest that counts, and the most telling that does not.
    for (const LedgerChange& change : Shown().concessions) {
      if (IsSilent(change)) continue;
      const bool heavy = std::abs(change.change_cp) >= kWorthSaying;
      if ((heavy || !change.term.has_value()) && said.size() < kMostSaid) {
        const bool second_counted =
            change.term.has_value() && !said.empty() &&
            std::any_of(Shown().concessions.begin(), Shown().concessions.end(),
                        [](const LedgerChange& other) {
                          return !other.term.has_value();
                        });
        if (!second_counted) said.push_back(&change);
      }
    }
    // However little it is.
    for (const LedgerChange& change : Shown().concessions) {
      if (said.empty() && !IsSilent(change)) {
        said.push_back(&change);
      }
    }
    if (said.empty()) return;
    std::vector<Message> parts;
    ClaimRefs refs;
    for (const LedgerChange* change : said) {
      parts.push_back(ClauseOf(change->said));
      Merge(change->claims, refs);
    }
    AddSentence(Sentence(Say("move.gives_up",
                             List("list.semicolon", std::move(parts)))),
                refs);
  }

  void AddPlans() {
    if (!begins_.empty()) {
      AddSentence(Sentence(Say("move.begins", std::move(begins_))),
                  begins_claims_);
    }
    if (!told_.stops.empty()) {
      const ToldPlan& plan = told_.stops.front();
      AddSentence(Sentence(Say("move.stops", Other(side_), plan.title_said)),
                  plan.claims);
    }
    if (!told_.allows.empty()) {
      const ToldPlan& plan = told_.allows.front();
      AddSentence(Sentence(Say("move.allows", Other(side_), plan.title_said)),
                  plan.claims);
    }
  }

  // Who stands better, before and after.
  void AddStanding() {
    ClaimRefs refs;
    table_.Add(LineClaim(told_.position, side_, {told_.move}), refs);
    if (!HasLegalMove(told_.after)) {
      ClaimTable after;
      const Verdict verdict =
          FindVerdict(after_.facts, told_.score_after_cp, {}, {}, after);
      const std::vector<Move> line{told_.move};
      const ClaimShift shift{told_.position, line, after, table_};
      return AddSentence(verdict.said, shift(verdict.claims));
    }
    const Standpoint before = proof_before_.has_value()
                                  ? StandpointOf(*proof_before_)
                                  : Standpoint{told_.score_before_cp, 0};
    const Standpoint after =
        told_.proof.has_value()
            ? StandpointOf(*told_.proof)
            : Standpoint{told_.settled.has_value() ? told_.settled->score_cp
                                                   : told_.score_after_cp,
                         0};
    for (const auto* proof : {&proof_before_, &told_.proof}) {
      if (proof->has_value()) AddMate(**proof, refs);
    }
    AddSentence(StandingSentence(before, after), refs);
  }

  // The mate that the sentence counts.
  void AddMate(const Proof& proof, ClaimRefs& refs) {
    if (proof.mate_in == 0 || proof.line.empty()) return;
    const Side mates = proof.mate_in > 0 ? Side::kWhite : Side::kBlack;
    table_.Add(MateInClaim(mates, proof.line), refs);
  }

  const Weights& weights_;
  const ExplainOptions& options_;
  MoveExplanation told_;
  const Side side_;
  const Snapshot before_;
  const Snapshot after_;
  ClaimTable table_;
  std::optional<Proof> proof_before_;
  std::vector<Message> sentences_;  // of the summary
  Message begins_;                  // "begins the minority attack"
  ClaimRefs begins_claims_;
};

}  // namespace

MoveExplanation ExplainMove(const Assayer& assayer, const Position& position,
                            Move move, const ExplainOptions& options) {
  return MoveTeller(assayer, position, move, options).Tell();
}

}  // namespace assay
