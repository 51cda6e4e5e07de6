// An explanation: what a reader, a client or a handout is given.
//
// The fields are those of the public contract (proto/assay/v1); scores are
// centipawns from White's point of view. Each text stands on the claims that
// its refs point to, and is the message beside it, put into words.
#ifndef ASSAY_EXPLAIN_EXPLANATION_H_
#define ASSAY_EXPLAIN_EXPLANATION_H_

#include <optional>
#include <string>
#include <vector>

#include "assay/explain/claim_table.h"
#include "assay/explain/message.h"
#include "assay/explain/plan_text.h"
#include "assay/explain/topic.h"
#include "assay/facts/facts.h"
#include "assay/proof/questions.h"
#include "assay/rules/position.h"
#include "assay/terms/ledger.h"

namespace assay {

struct Verdict {
  int nag = 0;                  // 10 to 21, PGN standard of 1994
  std::optional<Side> favours;  // nobody: balanced
  std::string text;
  Message said;
  bool over = false;   // mate, stalemate or a dead position
  bool quiet = false;  // static and proved scores within 60 cp; false unproved
  ClaimRefs claims;
};

// A ledger entry in words.
struct ExplainedEntry {
  Entry entry;
  Message phrase;    // without its owner: "an isolated pawn on d4"
  std::string text;  // "White: an isolated pawn on d4"
  Message said;
  ClaimRefs claims;
};

// Entries about one thing, and what they come to.
struct Reason {
  Topic topic = Topic::kMaterial;
  std::string text;  // a sentence with squares
  Message said;
  Message phrase;           // what the side that it favours has: "more space"
  bool adds_detail = true;  // the sentence says more than the phrase
  bool drawish = false;     // takes back a surplus that cannot be used
  Centipawns value_cp = 0;
  Centipawns of[2] = {0, 0};  // of it, each side's entries; White's view
  Centipawns rank_cp = 0;     // what it is ranked by, never negative: ranking.h
  std::vector<std::uint32_t> entries;  // indices into Explanation::ledger
  ClaimRefs claims;

  Side favours() const { return value_cp > 0 ? Side::kWhite : Side::kBlack; }
};

// Why a static verdict may mislead here.
struct Caution {
  std::string kind;    // "check", "hanging", ...
  bool leads = false;  // grave enough to open the summary
  std::string text;
  Message said;
  ClaimRefs claims;
  std::optional<Proof> proof;  // the line and score that bear it out
};

// A natural move of the side to move that fails.
struct Temptation {
  Move move;
  std::vector<Move> refutation;  // from the position after the move
  // Against the best move, positive; 0 where it costs mate: proof.mate_in.
  Centipawns loss_cp = 0;
  std::string text;
  Message said;
  ClaimRefs claims;
  Proof proof;  // its line has the move first
};

// What a side would do if it were to move now.
struct Threat {
  Side side = Side::kWhite;
  std::vector<Move> line;  // a pass first where the side is not to move
  // For the threatening side, by exchange values; 0 where it mates.
  Centipawns gain_cp = 0;
  Message object;  // what it wins; empty where it mates
  std::string text;
  Message said;
  ClaimRefs claims;
};

// A first move for the side to move.
struct Advice {
  Move move;
  std::optional<std::uint32_t> plan;  // that it serves: index of the plans
  std::string text;
  Message said;
  ClaimRefs claims;
};

struct Structure {
  Centre centre = Centre::kUnresolved;
  // "isolated queen's pawn (White)"; empty where it has no name.
  std::string name;
  Message name_said;
  // On the structure where it has a name; the last is on the centre.
  std::vector<std::string> notes;
  std::vector<Message> notes_said;
  ClaimRefs claims;
};

struct Explanation {
  explicit Explanation(const Position& explained) : position(explained) {}

  Position position;
  Centipawns score_cp = 0;  // the sum of the ledger's values
  Verdict verdict;
  std::vector<ExplainedEntry> ledger;
  // What a strong player would name first comes first: ranking.h.
  std::vector<Reason> reasons;
  std::vector<ToldPlan> plans;  // White's, then Black's; best first
  std::vector<Caution> cautions;
  Structure structure;
  std::optional<Proof> proof;  // of the verdict; none where nothing is searched
  std::vector<Temptation> temptations;  // costliest first
  std::vector<Threat> threats;          // at most one a side
  std::optional<Advice> advice;
  std::string summary;
  Message summary_said;
  ClaimRefs summary_claims;
  std::vector<Claim> claims;
};

}  // namespace assay

#endif  // ASSAY_EXPLAIN_EXPLANATION_H_
