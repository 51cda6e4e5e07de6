// The one that scores best is held against the runner-up, and the last against
// the best: by what falls, else by the topic in which they differ most.
#include "assay/explain/comparison.h"

#include <algorithm>
#include <cctype>
#include <cstdlib>
#include <numeric>

#include "assay/explain/account.h"
#include "assay/explain/catalogue.h"
#include "assay/explain/claim_shift.h"
#include "assay/explain/line_text.h"
#include "assay/explain/recaptures.h"
#include "assay/explain/text_writer.h"
#include "assay/explain/words.h"
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

constexpr const char* kOrdinals[kMostCompared] = {"first",   "second", "third",
                                                  "fourth",  "fifth",  "sixth",
                                                  "seventh", "eighth"};

// One of those compared.
struct Contender {
  std::string name;  // "12. Nf3", "the second position"
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

  std::string Decide() {
    std::vector<std::size_t> order(contenders_.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) {
                       return Value(contenders_[a]) > Value(contenders_[b]);
                     });
    Contender& best = contenders_[order[0]];
    Contender& second = contenders_[order[1]];
    Contender& last = contenders_[order.back()];
    std::string text = Lead(best, second);
    if (&last != &second && Value(best) - Value(last) >= kClearlyWorse &&
        Value(second) - Value(last) >= kLittle) {
      const std::string why = Against(best, last);
      text += " " + Capitalised(last.name) + " comes last" +
              (why.empty() ? "." : ": " + why + ".");
    }
    return text;
  }

 private:
  Centipawns Value(const Contender& contender) const {
    return Sign(view_) * contender.value;
  }

  std::string Lead(Contender& best, Contender& second) {
    const Centipawns margin = Value(best) - Value(second);
    const bool two = contenders_.size() == 2;
    const int mate =
        best.told->proof.has_value() ? best.told->proof->mate_in : 0;
    if (Sign(view_) * mate > 0) {
      return Capitalised(best.name) + " leads to mate.";
    }
    if (margin < kLittle) {
      std::string text =
          "Little separates " + best.name + " and " + second.name;
      const std::string here = For(best, second);
      const std::string there = For(second, best);
      if (!here.empty()) text += ": " + here;
      if (!there.empty()) text += (here.empty() ? ": " : "; ") + there;
      return text + ".";
    }
    const std::string ahead = margin >= kMateScore / 2
                                  ? ""
                                  : (best.is_move || second.is_move
                                         ? " by " + AmountText(margin)
                                         : " for " + std::string(Name(view_)) +
                                               " by " + AmountText(margin));
    std::string text =
        Capitalised(best.name) +
        (two ? " is better than " + second.name + ahead
             : " is the best of them, ahead of " + second.name + ahead);
    std::string why = Against(best, second);
    if (why.empty()) why = For(best, second);
    return text + (why.empty() ? "" : ": " + why) + ".";
  }

  // What the worse one suffers from, else what the better one has.
  std::string Against(Contender& better, Contender& worse) {
    const Threat* theirs = LossOf(worse);
    const Threat* ours = LossOf(better);
    const bool mates = theirs != nullptr && theirs->gain_cp == 0;
    if (theirs != nullptr && (ours == nullptr || mates ||
                              theirs->gain_cp >= ours->gain_cp + kAPawn)) {
      Note(worse, worse.told->claims, theirs->claims);
      std::string text = theirs->text;
      if (!text.empty() && text.back() == '.') text.pop_back();
      return "after " + worse.name + " " + text;
    }
    // Where counting misleads, what search found.
    const std::vector<Caution>& cautions = worse.told->cautions;
    if (!cautions.empty() && cautions.front().leads &&
        cautions.front().proof.has_value()) {
      Note(worse, worse.told->claims, cautions.front().claims);
      std::string text = cautions.front().text;
      if (!text.empty() && text.back() == '.') text.pop_back();
      return "after " + worse.name + " " + Lowered(text);
    }
    return For(better, worse);
  }

  // "Play is better ..." in the middle of a sentence.
  static std::string Lowered(std::string text) {
    const bool side = text.compare(0, 5, Name(Side::kWhite)) == 0 ||
                      text.compare(0, 5, Name(Side::kBlack)) == 0;
    if (!side && text.size() > 1 && text[1] >= 'a' && text[1] <= 'z') {
      text[0] = static_cast<char>(std::tolower(text[0]));
    }
    return text;
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
  std::string For(Contender& better, Contender& other) {
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
    if (!decisive.has_value()) return "";
    const bool own = Owner(better, *decisive) == view_;
    Contender& told = own ? better : other;
    Contender& rest = own ? other : better;
    const Reason& reason = *Find(told, *decisive);
    Note(told, told.own.claims(), reason.claims, false);
    const std::string fact =
        std::string(Name(reason.favours())) + " has " + English(reason.phrase);
    if (Owner(rest, *decisive) != reason.favours()) return Where(told) + fact;
    // So it is in both, but not by as much.
    Note(rest, rest.own.claims(), Find(rest, *decisive)->claims, false);
    return "that " + fact + " weighs more " + Where(told) + "than " +
           Where(rest).substr(0, Where(rest).size() - 1);
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

  static std::string Where(const Contender& contender) {
    return (contender.is_move ? "after " : "in ") + contender.name + " ";
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
  std::vector<Contender> contenders_;
};

std::vector<TermComparison> ByTerm(
    const std::vector<Explanation>& explanations) {
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
    if (occurs) by_term.push_back(std::move(row));
  }
  return by_term;
}

}  // namespace

Comparison Compare(const Assayer& assayer, const Position& position,
                   const std::vector<Move>& moves,
                   const std::vector<Position>& others,
                   const ExplainOptions& asked) {
  ExplainOptions options = asked;
  options.language.clear();  // what decides is told in English
  Comparison comparison;
  std::vector<Explanation>& explanations = comparison.explanations;
  if (moves.empty()) explanations.push_back(assayer.Explain(position, options));
  for (const Move move : moves) {
    explanations.push_back(assayer.Explain(position.After(move), options));
  }
  for (const Position& other : others) {
    explanations.push_back(assayer.Explain(other, options));
  }
  comparison.by_term = ByTerm(explanations);
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
      contender.name = NumberedMove(position, moves[i]);
    } else {
      contender.name = "the " +
                       std::string(kOrdinals[std::min(i, kMostCompared - 1)]) +
                       " position";
    }
    judge.Add(std::move(contender));
  }
  if (explanations.size() >= kLeastCompared) {
    comparison.decides = judge.Decide();
  }
  comparison.claims = table.Take();
  for (ClaimTable& other : other_tables) {
    comparison.claims_of_others.push_back(other.Take());
  }
  return comparison;
}

}  // namespace assay
