#include "assay/explain/move_explanation.h"

#include <algorithm>
#include <cstdlib>
#include <string_view>

#include "assay/explain/claim_shift.h"
#include "assay/explain/line_text.h"
#include "assay/explain/move_effects.h"
#include "assay/explain/plan_changes.h"
#include "assay/explain/recaptures.h"
#include "assay/explain/standing_text.h"
#include "assay/explain/verdict.h"
#include "assay/explain/win_text.h"
#include "assay/explain/wording.h"
#include "assay/explain/words.h"
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

constexpr std::string_view kTheMove = "The move ";

std::string Decapitalised(std::string text) {
  for (const char* name : {"White", "Black"}) {
    if (text.compare(0, 5, name) == 0) return text;
  }
  if (!text.empty() && text[0] >= 'A' && text[0] <= 'Z' && text.size() > 1 &&
      text[1] >= 'a') {
    text[0] = static_cast<char>(text[0] - 'A' + 'a');
  }
  return text;
}

std::string WithoutFullStop(std::string text) {
  if (!text.empty() && text.back() == '.') text.pop_back();
  return text;
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
    reply.text = English(reply.said);
    reply.claims = text.claims;
    told_.reply_to_fear = std::move(reply);
  }

  void TellPlans() {
    const std::size_t most = options_.max_plans_per_side;
    const PlanChanges changes = FindPlanChanges(before_.facts, told_.move,
                                                after_.facts, weights_, most);
    if (!changes.begun.empty()) {
      ClaimTable claims;
      const ToldPlan begun =
          TellPlan(before_.facts, changes.begun.front(), claims);
      begins_ = English(begun.begins);
      for (const std::uint32_t ref : begun.claims) {
        table_.Add(claims.claims()[ref], begins_claims_);
      }
    }
    for (const Plan& plan : changes.stops) {
      told_.stops.push_back(TellPlan(before_.facts, plan, table_));
      PutIntoWords(Catalogue::English(), told_.stops.back());
    }
    const std::vector<Move> line{told_.move};
    const auto tell = [&](const std::vector<Plan>& plans,
                          std::vector<ToldPlan>& list) {
      for (const Plan& plan : plans) {
        ClaimTable after;
        ToldPlan told = TellPlan(after_.facts, plan, after);
        PutIntoWords(Catalogue::English(), told);
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
    AddSentence(Opening(), {});
    AddConcessions();
    AddPlans();
    if (told_.reply_to_fear.has_value()) {
      AddSentence(told_.reply_to_fear->text, told_.reply_to_fear->claims);
    } else {
      AddStanding();
    }
  }

  void AddSentence(const std::string& sentence, const ClaimRefs& refs) {
    if (sentence.empty()) return;
    if (!told_.summary.empty()) told_.summary += ' ';
    told_.summary += sentence;
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

  // "12. g4 attacks the knight on f6."
  std::string Opening() {
    const std::string move = NumberedMove(told_.position, told_.move);
    const std::vector<Move> line = told_.settled.has_value()
                                       ? told_.settled->line
                                       : std::vector<Move>{told_.move};
    table_.Add(LineClaim(told_.position, side_, line), told_.summary_claims);
    const std::string shown =
        told_.settled.has_value() ? LineText(told_.position, line) : move;
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
    const bool predicate =
        deed != nullptr &&
        deed->text.compare(0, kTheMove.size(), kTheMove) == 0;
    std::string text = shown;
    bool said = false;
    if (predicate) {
      text += " " + WithoutFullStop(deed->text.substr(kTheMove.size()));
      Merge(deed->claims, told_.summary_claims);
      said = true;
    }
    // Beside a deed, only what weighs; a threat is the deed's own.
    const bool adds = counted != nullptr &&
                      (!said || (std::abs(counted->change_cp) >= kWeighs &&
                                 !IsTheDeedItself(*counted->term)));
    const LedgerChange* more = adds ? counted : said ? nullptr : deed;
    if (more != nullptr) {
      text += (said ? "; " : ": ") + WithoutFullStop(Decapitalised(more->text));
      Merge(more->claims, told_.summary_claims);
      said = true;
    }
    return said ? text + "." : text + " gains nothing that counts.";
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
    std::vector<std::string> parts;
    ClaimRefs refs;
    for (const LedgerChange* change : said) {
      parts.push_back(WithoutFullStop(Decapitalised(change->text)));
      Merge(change->claims, refs);
    }
    std::string text = parts[0];
    for (std::size_t i = 1; i < parts.size(); ++i) text += "; " + parts[i];
    AddSentence("What it gives up: " + text + ".", refs);
  }

  void AddPlans() {
    if (!begins_.empty()) AddSentence("It " + begins_ + ".", begins_claims_);
    if (!told_.stops.empty()) {
      AddSentence("It stops " + std::string(Name(Other(side_))) + "'s " +
                      PlanNoun(told_.stops.front()) + ".",
                  told_.stops.front().claims);
    }
    if (!told_.allows.empty()) {
      AddSentence("It allows " + std::string(Name(Other(side_))) + " " +
                      told_.allows.front().title + ".",
                  told_.allows.front().claims);
    }
  }

  // "the break c5" as "break c5".
  static std::string PlanNoun(const ToldPlan& plan) {
    for (const char* article : {"the ", "an ", "a "}) {
      const std::string text = article;
      if (plan.title.compare(0, text.size(), text) == 0) {
        return plan.title.substr(text.size());
      }
    }
    return plan.title;
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
      return AddSentence(English(verdict.said), shift(verdict.claims));
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
    AddSentence(StandingSentence(before, after), refs);
  }

  const Weights& weights_;
  const ExplainOptions& options_;
  MoveExplanation told_;
  const Side side_;
  const Snapshot before_;
  const Snapshot after_;
  ClaimTable table_;
  std::optional<Proof> proof_before_;
  std::string begins_;  // "begins the minority attack"
  ClaimRefs begins_claims_;
};

}  // namespace

MoveExplanation ExplainMove(const Assayer& assayer, const Position& position,
                            Move move, const ExplainOptions& options) {
  return MoveTeller(assayer, position, move, options).Tell();
}

}  // namespace assay
