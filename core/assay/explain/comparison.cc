// The one that scores best is held against the runner-up, and the last against
// the best: by what falls, else by the topic in which they differ most.
#include "assay/explain/comparison.h"

#include <algorithm>
#include <cstdlib>
#include <numeric>

#include "assay/explain/account.h"
#include "assay/explain/catalogue.h"
#include "assay/explain/claim_shift.h"
#include "assay/explain/line_text.h"
#include "assay/explain/recaptures.h"
#include "assay/explain/term_title.h"
#include "assay/explain/text_writer.h"
#include "assay/explain/wording.h"
#include "assay/facts/claim_makers.h"

namespace assay {
namespace {

// Closer than this, a reader would not feel the difference.
constexpr Centipawns kLittle = 15;
// A topic that differs by less is no reason.
constexpr Centipawns kLeastTopic = 10;
// The last of several is spoken of from here on.
constexpr Centipawns kClearlyWorse = 60;
constexpr int kAPawn = 75;
constexpr std::size_t kMostPlies = 8;

constexpr std::string_view kOrdinals[kMostCompared] = {
    "position.first", "position.second", "position.third",   "position.fourth",
    "position.fifth", "position.sixth",  "position.seventh", "position.eighth"};

// One of those compared.
struct Contender {
  Message name;  // "12. Nf3", "the second position"
  bool is_move = false;
  const Position* start = nullptr;  // what its claims are about
  std::vector<Move> prefix;         // the candidate move, if it is one
  const Explanation* told = nullptr;
  ClaimTable* table = nullptr;
  Centipawns value = 0;  // White's view, mates far out
  ClaimTable own;        // of the reasons
  std::vector<Reason> reasons;
};

class Judge {
 public:
  Judge(const Assayer& assayer, const Position& position, bool by_moves)
      : weights_(assayer.weights()),
        view_(by_moves ? position.side_to_move() : Side::kWhite) {}

  void Add(Contender contender) {
    const Explanation& told = *contender.told;
    std::vector<Move> line = contender.prefix;
    if (told.proof.has_value()) {
      contender.value = ScoreFor(*told.proof, Side::kWhite);
      line.insert(line.end(), told.proof->line.begin(), told.proof->line.end());
      line = SettledPart(*contender.start, line, contender.prefix.size(),
                         kMostPlies);
      if (line.size() < contender.prefix.size()) line = contender.prefix;
    } else if (!contender.prefix.empty()) {
      line = WithRecaptures(*contender.start, contender.prefix.front());
      contender.value = ScoreOf(AfterLine(*contender.start, line), weights_);
    } else {
      contender.value = told.score_cp;
    }
    contender.reasons =
        ReasonsAfter(*contender.start, line, weights_, contender.own);
    // What the move itself is: the claim that is there whatever else is.
    if (!line.empty()) {
      contender.table->Add(LineClaim(*contender.start, view_, line));
    } else {
      const Facts facts(*contender.start);
      contender.table->Add(ToMoveClaim(facts));
    }
    contenders_.push_back(std::move(contender));
  }

  Message Decide() {
    std::vector<std::size_t> order(contenders_.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) {
                       return Value(contenders_[a]) > Value(contenders_[b]);
                     });
    Contender& best = contenders_[order[0]];
    Contender& second = contenders_[order[1]];
    Contender& last = contenders_[order.back()];
    std::vector<Message> sentences{Sentence(Lead(best, second))};
    if (&last != &second && Value(best) - Value(last) >= kClearlyWorse &&
        Value(second) - Value(last) >= kLittle) {
      spoken_of_ = &last;
      Message why = Against(best, last);
      sentences.push_back(
          Sentence(Say("compare.last", last.name, std::move(why))));
    }
    return List("list.sentences", std::move(sentences));
  }

 private:
  Centipawns Value(const Contender& contender) const {
    return Sign(view_) * contender.value;
  }

  Message Lead(Contender& best, Contender& second) {
    const Centipawns margin = Value(best) - Value(second);
    const bool two = contenders_.size() == 2;
    const int mate =
        best.told->proof.has_value() ? best.told->proof->mate_in : 0;
    if (Sign(view_) * mate > 0) return Say("compare.mates", best.name);
    if (margin < kLittle) {
      Message here = For(best, second);
      Message there = For(second, best);
      const auto is_fact = [](const Message& clause) {
        return clause.id == "compare.there";
      };
      if (is_fact(here) && is_fact(there) &&
          here.arguments[0] == there.arguments[0]) {
        here = Say("compare.both", here.arguments[0], here.arguments[1],
                   there.arguments[1]);
        there = {};
      }
      return Say("compare.little", best.name, second.name, std::move(here),
                 std::move(there));
    }
    Message ahead;
    if (margin < kMateScore / 2) {
      ahead = best.is_move || second.is_move
                  ? Say("compare.by", AmountText(margin))
                  : Say("compare.for_by", view_, AmountText(margin));
    }
    Message why = Against(best, second);
    if (why.empty()) why = For(best, second);
    return Say(two ? "compare.better" : "compare.best", best.name, second.name,
               std::move(ahead), std::move(why));
  }

  // What the worse one suffers from, else what the better one has.
  Message Against(Contender& better, Contender& worse) {
    const Threat* theirs = LossOf(worse);
    const Threat* ours = LossOf(better);
    const bool mates = theirs != nullptr && theirs->gain_cp == 0;
    if (theirs != nullptr && (ours == nullptr || mates ||
                              theirs->gain_cp >= ours->gain_cp + kAPawn)) {
      Note(worse, worse.told->claims, theirs->claims);
      return There(worse, ClauseOf(theirs->said));
    }
    // Where counting misleads, what search found.
    const std::vector<Caution>& cautions = worse.told->cautions;
    if (!cautions.empty() && cautions.front().leads &&
        cautions.front().proof.has_value()) {
      Note(worse, worse.told->claims, cautions.front().claims);
      return There(worse, ClauseOf(cautions.front().said));
    }
    return For(better, worse);
  }

  // What the view's opponent, to move, wins there.
  const Threat* LossOf(const Contender& contender) const {
    for (const Threat& threat : contender.told->threats) {
      if (threat.side != view_ &&
          threat.side == contender.told->position.side_to_move()) {
        return &threat;
      }
    }
    return nullptr;
  }

  static const Reason* Find(const Contender& contender, Topic topic) {
    for (const Reason& reason : contender.reasons) {
      if (reason.topic == topic) return &reason;
    }
    return nullptr;
  }

  // "White then has the safer king": the topic in which `better` does more for
  // the view's side than `other` does; empty where there is none of weight.
  Message For(Contender& better, Contender& other) {
    Centipawns most = kLeastTopic - 1;
    std::optional<Topic> decisive;
    for (int t = 0; t < kTopics; ++t) {
      const auto topic = static_cast<Topic>(t);
      if (topic == Topic::kMove) continue;
      const Centipawns gain =
          Sign(view_) * (ValueOf(better, topic) - ValueOf(other, topic));
      const bool said =
          Owner(better, topic) == view_ || Owner(other, topic) == Other(view_);
      if (gain <= most || !said) continue;
      most = gain;
      decisive = topic;
    }
    if (!decisive.has_value()) return {};
    const bool own = Owner(better, *decisive) == view_;
    Contender& told = own ? better : other;
    Contender& rest = own ? other : better;
    const Reason& reason = *Find(told, *decisive);
    Note(told, told.own.claims(), reason.claims, false);
    const Side side = reason.favours();
    if (Owner(rest, *decisive) != side) {
      return There(told, Say("compare.has", side, reason.phrase));
    }
    // So it is in both, but not by as much.
    Note(rest, rest.own.claims(), Find(rest, *decisive)->claims, false);
    return Say("compare.weighs", side, reason.phrase, Place(told), Place(rest));
  }

  static Centipawns ValueOf(const Contender& contender, Topic topic) {
    const Reason* reason = Find(contender, topic);
    return reason == nullptr ? 0 : reason->value_cp;
  }
  // Whom the topic speaks for, in words; nobody where there are none.
  static std::optional<Side> Owner(const Contender& contender, Topic topic) {
    const Reason* reason = Find(contender, topic);
    if (reason == nullptr || reason->phrase.empty()) return std::nullopt;
    return reason->favours();
  }

  static Message Place(const Contender& contender) {
    return Say(contender.is_move ? "compare.after" : "compare.in",
               contender.name);
  }

  // What holds there; its name is not said again where the sentence is about
  // it.
  Message There(const Contender& contender, Message fact) const {
    return &contender == spoken_of_
               ? std::move(fact)
               : Say("compare.there", Place(contender), std::move(fact));
  }

  // Claims behind what is said; of the position after the candidate move where
  // `shifted`.
  static void Note(Contender& contender, const std::vector<Claim>& claims,
                   const ClaimRefs& refs, bool shifted = true) {
    for (const std::uint32_t ref : refs) {
      contender.table->Add(shifted ? ShiftedClaim(*contender.start,
                                                  contender.prefix, claims[ref])
                                   : claims[ref]);
    }
  }

  const Weights& weights_;
  const Side view_;
  const Contender* spoken_of_ = nullptr;
  std::vector<Contender> contenders_;
};

std::vector<TermComparison> ByTerm(const std::vector<Explanation>& explanations,
                                   const Catalogue& words) {
  std::vector<TermComparison> by_term;
  for (int t = 0; t < kTerms; ++t) {
    TermComparison row;
    row.term = static_cast<TermId>(t);
    bool occurs = false;
    for (const Explanation& explanation : explanations) {
      Centipawns sum = 0;
      for (const ExplainedEntry& explained : explanation.ledger) {
        if (explained.entry.term != row.term) continue;
        sum += explained.entry.value_cp;
        occurs = true;
      }
      row.value_cp.push_back(sum);
    }
    if (!occurs) continue;
    row.title = TermTitle(Info(row.term), words);
    by_term.push_back(std::move(row));
  }
  return by_term;
}

}  // namespace

Comparison Compare(const Assayer& assayer, const Position& position,
                   const std::vector<Move>& moves,
                   const std::vector<Position>& others,
                   const ExplainOptions& options) {
  Comparison comparison;
  std::vector<Explanation>& explanations = comparison.explanations;
  if (moves.empty()) explanations.push_back(assayer.Explain(position, options));
  for (const Move move : moves) {
    explanations.push_back(assayer.Explain(position.After(move), options));
  }
  for (const Position& other : others) {
    explanations.push_back(assayer.Explain(other, options));
  }
  comparison.by_term = ByTerm(
      explanations, Catalogue::OrEnglish(options.language, options.audience));
  ClaimTable table;
  std::vector<ClaimTable> other_tables(others.size());
  Judge judge(assayer, position, !moves.empty());
  const std::size_t own = explanations.size() - others.size();
  for (std::size_t i = 0; i < explanations.size(); ++i) {
    Contender contender;
    contender.told = &explanations[i];
    contender.is_move = i < moves.size();
    contender.start = i < own ? &position : &others[i - own];
    contender.table = i < own ? &table : &other_tables[i - own];
    if (contender.is_move) {
      contender.prefix = {moves[i]};
      contender.name = Moves(NumberedMove(position, moves[i]));
    } else {
      contender.name = Say(kOrdinals[std::min(i, kMostCompared - 1)]);
    }
    judge.Add(std::move(contender));
  }
  if (explanations.size() >= kLeastCompared) {
    comparison.decides_said = judge.Decide();
  }
  PutIntoWords(Catalogue::OrEnglish(options.language, options.audience),
               comparison);
  comparison.claims = table.Take();
  for (ClaimTable& other : other_tables) {
    comparison.claims_of_others.push_back(other.Take());
  }
  return comparison;
}

}  // namespace assay
