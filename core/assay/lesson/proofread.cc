#include "assay/lesson/proofread.h"

#include <algorithm>
#include <cstdlib>
#include <utility>

#include "assay/explain/catalogue.h"
#include "assay/explain/line_text.h"
#include "assay/explain/text.h"
#include "assay/explain/verdict.h"
#include "assay/explain/wording.h"
#include "assay/lesson/lesson_comment.h"
#include "assay/lesson/own_comments.h"
#include "assay/lesson/place.h"
#include "assay/notation/pgn_writer.h"
#include "assay/notation/san.h"
#include "assay/rules/draw.h"
#include "assay/rules/movegen.h"

namespace assay {
namespace {

// How far a proved score has to be from what an author says before it is
// called wrong. Small searches disagree with each other by some 10 to 15
// centipawns (measured on 300 games); own reasoning beyond that.
constexpr Centipawns kDoubt = 20;
// What a move marked good may cost, and how bad it may stand afterwards.
constexpr Centipawns kGoodMoveLoss = 150;
constexpr Centipawns kLosing = -60;
// A reply that is better by this much should not be left out: more than a
// pawn and a half.
constexpr Centipawns kBetterReply = 180;
// Who wins by as much anyway need not be shown how to win by more.
constexpr Centipawns kWonAnyway = 500;
// What falls at a line's end has to be worth a pawn and to change the score.
constexpr Centipawns kHangingShift = 80;
// Of a line in a finding.
constexpr std::size_t kMostShownPlies = 8;

// The kinds of finding with their titles.
struct KindOfFault {
  std::string_view kind;
  std::string_view title;
};
constexpr KindOfFault kKinds[] = {{"illegal_move", "fault.illegal_move"},
                                  {"ambiguous_move", "fault.ambiguous_move"},
                                  {"unreadable", "fault.unreadable"},
                                  {"assessment", "fault.assessment"},
                                  {"hanging_end", "fault.hanging_end"},
                                  {"good_move", "fault.good_move"},
                                  {"missing_reply", "fault.missing_reply"},
                                  {"transposition", "fault.transposition"},
                                  {"structure", "fault.structure"},
                                  {"own_comment", "fault.own_comment"}};

void SetKind(std::string_view kind, const Catalogue& words, Finding& finding) {
  finding.kind = kind;
  for (const KindOfFault& known : kKinds) {
    if (known.kind == kind) finding.title = words.Text(Say(known.title));
  }
}

bool HasNag(const GameNode& node, std::initializer_list<int> nags) {
  for (const int nag : nags) {
    for (const std::uint8_t given : node.nags) {
      if (given == nag) return true;
    }
  }
  return false;
}

bool HasOurs(const GameNode& node) {
  for (const PgnComment& comment : node.comments) {
    if (OursBegin(comment.text) != std::string::npos) return true;
  }
  return false;
}

// The author's own assessment: not one that we added.
int AuthorAssessment(const GameNode& node) {
  const int nag = AssessmentOf(node);
  for (const PgnComment& comment : node.comments) {
    if (nag != 0 && OurNag(comment.text) == nag) return 0;
  }
  return nag;
}

bool IsOver(const Position& position) {
  return !HasLegalMove(position) || IsInsufficientMaterial(position);
}

// "+0.42 for White", "White mates in 3".
Message ScoreClause(const Proof& proof) {
  if (proof.mate_in == 0) return Say("text.score", PawnsText(proof.score_cp));
  return Say("finding.mates", proof.mate_in > 0 ? Side::kWhite : Side::kBlack,
             std::abs(proof.mate_in));
}

std::string ShownLine(const Position& position, const Proof& proof) {
  std::vector<Move> line = proof.line;
  if (line.size() > kMostShownPlies) line.resize(kMostShownPlies);
  return LineText(position, line);
}

// Checks of one node.
class Checker {
 public:
  Checker(NodeIndex node, std::uint32_t game, const PgnItem& item,
          const ProofreadSettings& settings)
      : tree_(item.tree),
        node_(tree_.nodes[node]),
        index_(node),
        game_(game),
        settings_(settings),
        words_(settings.words),
        after_(tree_.PositionAfter(node)),
        before_(node_.starts_line ? after_
                                  : tree_.PositionAfter(node_.parent)) {}

  // For comparison with others alone.
  void KeepAssessment() {
    checked_.assessed = PlaceHere();
    checked_.assessed->off = true;
  }

  void CheckAssessment() {
    AssessedPlace place = PlaceHere();
    const int nag = place.nag;
    Centipawns score = 0;
    Proof proof;
    if (IsOver(after_)) {
      ExplainOptions options;
      options.static_only = true;
      score = StepScore(settings_.assayer.Explain(after_, options).verdict);
    } else {
      proof = Prove(after_, First());
      score = ScoreFor(proof, Side::kWhite);
      if (DistanceFrom(nag, score) > kDoubt) {
        const Proof again = Prove(after_, Second());
        const Centipawns second = ScoreFor(again, Side::kWhite);
        // Both looks have to say so.
        if (DistanceFrom(nag, second) < DistanceFrom(nag, score)) {
          proof = again;
          score = second;
        }
      }
    }
    place.proved_cp = score;
    place.off = DistanceFrom(nag, score) > kDoubt;
    if (place.off) {
      Finding finding = Make("assessment");
      finding.author_says = NagText(nag);
      finding.position = after_;
      if (proof.line.empty()) {
        finding.found = Told(Say("finding.over"));
      } else {
        finding.found = Told(Say("finding.played_out", ScoreClause(proof),
                                 ShownLine(after_, proof)));
        finding.proof = std::move(proof);
      }
      checked_.findings.push_back(std::move(finding));
    }
    checked_.assessed = std::move(place);
  }

  // Whether something falls.
  bool CheckLineEnd() {
    if (IsOver(after_)) return false;
    const Side mover = after_.side_to_move();
    const Centipawns counted = Sign(mover) * settings_.assayer.Score(after_);
    for (const Inquiry& inquiry : {First(), Second()}) {
      Proof proof = Prove(after_, inquiry);
      const std::optional<Win> win = WinOf(after_, mover, proof);
      if (!win.has_value() ||
          ScoreFor(proof, mover) - counted < kHangingShift ||
          AuthorMentions(after_, proof.line.front())) {
        return false;
      }
      last_ = std::move(proof);
    }
    Finding finding = Make("hanging_end");
    finding.author_says =
        Told(Say("finding.line_ends", AfterText(tree_, index_, words_)));
    finding.position = after_;
    finding.found = Told(Say("finding.falls", mover, last_.mate_in != 0,
                             ShownLine(after_, last_)));
    finding.proof = last_;
    checked_.findings.push_back(std::move(finding));
    return true;
  }

  void CheckMarkedGood() {
    const Side mover = before_.side_to_move();
    Proof best;
    Proof played;
    for (const Inquiry& inquiry : {First(), Second()}) {
      best = Prove(before_, inquiry);
      played = ProveMove(before_, node_.move, inquiry);
      const Centipawns after = ScoreFor(played, mover);
      if (after > kLosing || ScoreFor(best, mover) - after < kGoodMoveLoss) {
        return;
      }
    }
    Finding finding = Make("good_move");
    finding.author_says =
        Told(Say("finding.marked", NumberedMove(before_, node_.move),
                 HasNag(node_, {3})));
    finding.found = Told(
        Say("finding.loses", ShownLine(before_, played), ScoreClause(played),
            NumberedMove(before_, best.line.front()), ScoreClause(best)));
    // Told from the place itself, which is after the move.
    finding.position = after_;
    played.line.erase(played.line.begin());
    finding.proof = std::move(played);
    checked_.findings.push_back(std::move(finding));
  }

  void CheckReplies() {
    const Side mover = before_.side_to_move();
    std::vector<Move> given;
    bool defended = false;  // some reply is not marked as a mistake
    for (const NodeIndex i : Alternatives()) {
      const GameNode& reply = tree_.nodes[i];
      given.push_back(reply.move);
      if (reply.move.is_null()) return;
      defended |= !HasNag(reply, {2, 4, 6});
    }
    if (!defended) return;
    Proof best;
    for (const Inquiry& inquiry : {First(), Second()}) {
      best = Prove(before_, inquiry);
      if (best.line.empty() ||
          std::find(given.begin(), given.end(), best.line.front()) !=
              given.end() ||
          AuthorMentions(before_, best.line.front())) {
        return;
      }
      Centipawns of_given = -2 * kMateScore;
      for (const Move move : given) {
        of_given = std::max(of_given,
                            ScoreFor(ProveMove(before_, move, inquiry), mover));
      }
      if (of_given >= kWonAnyway ||
          ScoreFor(best, mover) - of_given < kBetterReply) {
        return;
      }
    }
    Finding finding = Make("missing_reply");
    std::vector<Message> moves;
    moves.reserve(given.size());
    for (const Move move : given) {
      moves.push_back(Moves(NumberedMove(before_, move)));
    }
    finding.author_says = words_.Text(List("list.or", std::move(moves)));
    finding.position = before_;
    finding.found = Told(
        Say("finding.missing", ShownLine(before_, best), ScoreClause(best)));
    finding.proof = best;
    checked_.findings.push_back(std::move(finding));
  }

  void CheckOwnComment() {
    ExplainOptions options;
    options.proof_nodes = settings_.nodes;
    Explanation explanation = settings_.assayer.Explain(after_, options);
    // Which number the place had in its lesson is not known any more, nor the
    // language that was asked for.
    std::vector<std::string> now;
    std::vector<std::string> elsewhere;  // how a repeated position is told
    for (const char* language : {"en", "de"}) {
      const Catalogue& words = *Catalogue::Of(language);
      for (std::size_t opening = 0; opening < kOpenings; ++opening) {
        PutIntoWords(words, explanation, opening);
        now.push_back(LessonComment(explanation));
      }
      elsewhere.push_back(
          words.Text(Sentence(Say("lesson.same", std::string()))));
      elsewhere.back().pop_back();  // the full stop
    }
    const auto holds = [&now](const std::string& sentence) {
      return std::any_of(now.begin(), now.end(), [&](const std::string& text) {
        return text.find(MakeComment(sentence).text) != std::string::npos ||
               MakeComment(text).text.find(sentence) != std::string::npos;
      });
    };
    for (const PgnComment& comment : node_.comments) {
      const std::string words = OurWords(comment.text);
      const bool same = std::any_of(
          elsewhere.begin(), elsewhere.end(),
          [&](const std::string& start) { return words.rfind(start, 0) == 0; });
      if (words.empty() || same) continue;
      for (const std::string& sentence : Sentences(words)) {
        if (holds(sentence)) continue;
        Finding finding = Make("own_comment");
        finding.author_says = sentence;
        finding.position = after_;
        finding.found = Told(Say("finding.no_longer")) + " " +
                        words_.Text(explanation.verdict.said);
        finding.proof = explanation.proof;
        checked_.findings.push_back(std::move(finding));
      }
    }
  }

  Checked Take() { return std::move(checked_); }

 private:
  Inquiry First() const { return Look(1); }
  Inquiry Second() const { return Look(kSecondLook); }
  Inquiry Look(std::uint64_t times) const {
    const std::uint64_t nodes =
        settings_.nodes == 0 ? kDefaultSearchNodes : settings_.nodes;
    return {settings_.assayer.weights(), nodes * times, settings_.cancelled};
  }

  Finding Make(const char* kind) const {
    Finding finding;
    finding.game = game_;
    finding.path = PathTo(tree_, index_);
    finding.place = PlaceText(game_, tree_, index_, words_);
    SetKind(kind, words_, finding);
    return finding;
  }

  AssessedPlace PlaceHere() const {
    AssessedPlace place;
    place.hash = after_.hash();
    place.structure = StructureKey();
    place.to_move = after_.side_to_move();
    place.nag = AuthorAssessment(node_);
    place.finding = Make("");
    return place;
  }

  std::string Told(Message clause) const {
    return words_.Text(Sentence(std::move(clause)));
  }

  std::string NagText(int nag) const {
    return "$" + std::to_string(nag) + ": " + std::string(words_.Nag(nag));
  }

  static Centipawns StepScore(const Verdict& verdict) {
    if (!verdict.favours.has_value()) return 0;
    return Sign(*verdict.favours) * kMateScore;
  }

  // As AssessedPlace::structure says: all from the view of the side to move.
  std::uint64_t StructureKey() const {
    std::uint64_t key = 0;
    const auto mix = [&key](std::uint64_t value) {
      key = (key ^ value) * 0x9E3779B97F4A7C15ULL;
      key ^= key >> 29U;
    };
    const Side mover = after_.side_to_move();
    for (const Side side : {mover, Other(mover)}) {
      const Bitboard pawns = after_.Pieces(side, PieceKind::kPawn);
      mix(mover == Side::kWhite ? pawns : FlipRanks(pawns));
      for (const PieceKind kind : kAllKinds) {
        mix(static_cast<std::uint64_t>(PopCount(after_.Pieces(side, kind))) +
            7);
      }
    }
    return key;
  }

  // The move of the node and those that the author gives instead.
  std::vector<NodeIndex> Alternatives() const {
    std::vector<NodeIndex> nodes = {index_};
    for (const NodeIndex line : node_.variations) {
      if (tree_.nodes[line].next != kNoNode) {
        nodes.push_back(tree_.nodes[line].next);
      }
    }
    return nodes;
  }

  // Whether a comment near the place names the move.
  bool AuthorMentions(const Position& position, Move move) const {
    std::string san = ToSan(position, move);
    while (!san.empty() && (san.back() == '+' || san.back() == '#')) {
      san.pop_back();
    }
    for (const NodeIndex i : {index_, node_.parent}) {
      if (i == kNoNode) continue;
      if (AuthorWords(tree_, tree_.nodes[i]).find(san) != std::string::npos) {
        return true;
      }
    }
    return false;
  }

  // Cut after each full stop that a capital letter follows; move numbers are
  // followed by moves, of which none follows a blank with a capital alone.
  static std::vector<std::string> Sentences(const std::string& words) {
    std::vector<std::string> sentences;
    std::size_t begin = 0;
    for (std::size_t i = 0; i + 2 < words.size(); ++i) {
      const bool ends = words[i] == '.' && words[i + 1] == ' ' &&
                        (i == 0 || words[i - 1] < '0' || words[i - 1] > '9') &&
                        words[i - 1] != '.' && words[i + 2] >= 'A' &&
                        words[i + 2] <= 'Z';
      if (!ends) continue;
      sentences.push_back(words.substr(begin, i + 1 - begin));
      begin = i + 2;
    }
    if (begin < words.size()) sentences.push_back(words.substr(begin));
    return sentences;
  }

  const GameTree& tree_;
  const GameNode& node_;
  const NodeIndex index_;
  const std::uint32_t game_;
  const ProofreadSettings& settings_;
  const Catalogue& words_;
  const Position after_;
  const Position before_;
  Proof last_;
  Checked checked_;
};

// Whether the end of the main line is to be asked about: a game that was
// decided there may stop where it likes.
bool EndIsLoose(const GameTree& tree, int depth) {
  return depth > 0 || tree.result == GameResult::kUnknown ||
         tree.result == GameResult::kDraw;
}

// What is wrong with a move that the author wrote: `after` is the position that
// it was to be made in.
Message MoveFault(const Problem& problem, const Position& after) {
  if (problem.reason == "illegal move") {
    return Say("fault.not_legal", after.side_to_move());
  }
  // The reader has the moves with "or" between them.
  constexpr std::string_view kOr = " or ";
  std::vector<Message> moves;
  std::size_t begin = 0;
  while (true) {
    const std::size_t end = problem.expected.find(kOr, begin);
    moves.push_back(Moves(problem.expected.substr(begin, end - begin)));
    if (end == std::string::npos) break;
    begin = end + kOr.size();
  }
  return Say("fault.could_be", List("list.or", std::move(moves)));
}

Checked FaultsOf(std::uint32_t game, const PgnItem& item,
                 const Catalogue& words) {
  Checked checked;
  for (const PgnFault& fault : item.faults) {
    Finding finding;
    finding.game = game;
    const PgnPlace& place = fault.place;
    finding.place = words.Text(Say("fault.place", static_cast<int>(place.game),
                                   static_cast<int>(place.line),
                                   static_cast<int>(place.column)));
    const std::string& reason = fault.problem.reason;
    SetKind(reason == "illegal move"     ? "illegal_move"
            : reason == "ambiguous move" ? "ambiguous_move"
                                         : "unreadable",
            words, finding);
    finding.path = PathTo(item.tree, fault.node);
    finding.author_says = fault.problem.found;
    if (finding.kind == "unreadable") {
      // Of the text itself, as every reader of such texts is told it.
      finding.found = fault.problem.field + ": " + reason +
                      (fault.problem.expected.empty()
                           ? ""
                           : "; expected " + fault.problem.expected);
    } else {
      finding.found = words.Text(Sentence(
          MoveFault(fault.problem, item.tree.PositionAfter(fault.node))));
    }
    checked.findings.push_back(std::move(finding));
  }
  return checked;
}

}  // namespace

int AssessmentStep(int nag) {
  if (nag < 14 || nag > 21) return 0;
  const int step = std::min((nag - 14) / 2 + 1, 3);
  return nag % 2 == 0 ? step : -step;
}

Centipawns DistanceFrom(int nag, Centipawns score_cp) {
  const int step = AssessmentStep(nag);
  if (step < 0) return DistanceFrom(nag - 1, -score_cp);
  // Unclear means that neither side need be surprised.
  const Centipawns even = nag == 13 ? kModerateFrom : kSlightFrom;
  constexpr Centipawns kNoEnd = 4 * kMateScore;
  const Centipawns from[] = {-even, kSlightFrom, kModerateFrom, kDecisiveFrom};
  const Centipawns to[] = {even, kModerateFrom, kDecisiveFrom, kNoEnd};
  if (score_cp < from[step]) return from[step] - score_cp;
  return std::max(0, score_cp - to[step]);
}

std::vector<ProofreadTask> ProofreadTasks(const PgnItem& item) {
  const GameTree& tree = item.tree;
  std::vector<ProofreadTask> tasks;
  WalkTree(tree, [&](const TreeStep& step) {
    const GameNode& node = step.node;
    ProofreadTask task;
    task.node = step.index;
    task.own_comment = HasOurs(node);
    if (!node.starts_line && !node.move.is_null()) {
      task.assessment = AuthorAssessment(node) != 0;
      // A faulty line does not end where it stops being readable.
      task.line_end = node.next == kNoNode && !task.assessment && item.ok() &&
                      EndIsLoose(tree, step.depth);
      task.marked_good = HasNag(node, {1, 3});
      const bool in_line =
          step.depth > 0 && !tree.nodes[node.parent].starts_line;
      task.replies = !node.variations.empty() || in_line;
    }
    if (task.assessment || task.line_end || task.marked_good || task.replies ||
        task.own_comment) {
      tasks.push_back(task);
    }
  });
  if (!item.ok()) {
    tasks.emplace_back();
    tasks.back().node = kNoNode;
  }
  return tasks;
}

Checked Proofread(const ProofreadTask& task, std::uint32_t game,
                  const PgnItem& item, const ProofreadSettings& settings) {
  if (task.node == kNoNode) return FaultsOf(game, item, settings.words);
  Checker checker(task.node, game, item, settings);
  if (!settings.search) {
    if (task.assessment) checker.KeepAssessment();
    return checker.Take();
  }
  // Where the line's last move lets something fall, that says it all.
  const bool hangs = task.line_end && checker.CheckLineEnd();
  if (task.replies && !hangs) checker.CheckReplies();
  if (task.marked_good) checker.CheckMarkedGood();
  if (task.assessment) checker.CheckAssessment();
  if (task.own_comment) checker.CheckOwnComment();
  return checker.Take();
}

void ClashFinder::Add(Checked& checked, const Catalogue& words) {
  if (!checked.assessed.has_value()) return;
  AssessedPlace& place = *checked.assessed;
  const Known known{place.nag, place.proved_cp, place.to_move,
                    place.finding.place};
  const auto says = [&words](const Known& other) {
    return "$" + std::to_string(other.nag) + " (" +
           std::string(words.Nag(other.nag)) + ")";
  };
  const auto same = positions_.emplace(place.hash, known);
  if (!same.second) {
    const Known& other = same.first->second;
    if (AssessmentStep(other.nag) == AssessmentStep(place.nag)) return;
    SetKind("transposition", words, place.finding);
    place.finding.author_says = says(known);
    place.finding.found = words.Text(
        Sentence(Say("finding.same_position", other.place, says(other))));
    checked.findings.push_back(place.finding);
    return;
  }
  if (place.off) return;
  std::vector<Known>& alike = structures_[place.structure];
  for (const Known& other : alike) {
    if (std::abs(other.Step() - known.Step()) < kClashingSteps ||
        std::abs(other.Proved() - known.Proved()) > kNearlySame) {
      continue;
    }
    SetKind("structure", words, place.finding);
    place.finding.author_says = says(known);
    place.finding.found = words.Text(
        Sentence(Say("finding.same_structure", other.place, says(other),
                     PawnsText(place.proved_cp), PawnsText(other.proved_cp),
                     other.to_move != place.to_move)));
    checked.findings.push_back(place.finding);
    break;
  }
  alike.push_back(known);
}

}  // namespace assay
