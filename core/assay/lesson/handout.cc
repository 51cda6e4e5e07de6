#include "assay/lesson/handout.h"

#include <algorithm>

#include "assay/explain/line_text.h"
#include "assay/explain/text.h"
#include "assay/explain/words.h"
#include "assay/lesson/diagram.h"
#include "assay/lesson/handout_style.h"
#include "assay/lesson/markup.h"
#include "assay/lesson/own_comments.h"
#include "assay/lesson/place.h"
#include "assay/lesson/tempo_chart.h"
#include "assay/lesson/waterfall.h"
#include "assay/notation/nag.h"

namespace assay {
namespace {

// Squares of so many reasons are marked: more would mark the whole board.
constexpr std::size_t kMarkedReasons = 3;
// Squares of a reason that marks more than these says little on a board.
constexpr int kMostMarked = 8;

const ToldPlan* BestPlan(const Explanation& explanation, Side side) {
  for (const ToldPlan& plan : explanation.plans) {
    if (plan.plan.side == side) return &plan;
  }
  return nullptr;
}

DiagramMarks MarksOf(const Explanation& explanation) {
  DiagramMarks marks;
  for (std::size_t i = 0;
       i < std::min(kMarkedReasons, explanation.reasons.size()); ++i) {
    const Reason& reason = explanation.reasons[i];
    Bitboard squares = 0;
    for (const std::uint32_t entry : reason.entries) {
      squares |= explanation.ledger[entry].entry.squares;
    }
    if (PopCount(squares) > kMostMarked) continue;
    (reason.favours() == Side::kWhite ? marks.for_white : marks.for_black) |=
        squares;
  }
  for (const Side side : kSides) {
    const ToldPlan* plan = BestPlan(explanation, side);
    if (plan != nullptr) marks.routes.push_back({side, plan->plan.moves});
  }
  return marks;
}

std::string CaptionOf(const Explanation& explanation,
                      const DiagramMarks& marks) {
  std::string text =
      std::string(Name(explanation.position.side_to_move())) + " to move.";
  if (marks.for_white != 0) {
    text += " Dotted: squares that count for White.";
  }
  if (marks.for_black != 0) {
    text += " Crossed: squares that count for Black.";
  }
  for (const DrawnRoute& route : marks.routes) {
    text += route.side == Side::kWhite ? " Whole lines: White's plan."
                                       : " Dashed lines: Black's plan.";
  }
  return text;
}

std::string Id(const char* kind, std::size_t index) {
  return kind + std::to_string(index + 1);
}

std::string Heading(std::size_t index, const std::string& place) {
  return std::to_string(index + 1) + ". " + Capitalised(place);
}

std::string Board(const Explanation& explanation) {
  const DiagramMarks marks = MarksOf(explanation);
  return "<figure>\n" + Diagram(explanation.position, marks) +
         Element("figcaption", "", CaptionOf(explanation, marks)) +
         "</figure>\n";
}

std::string Told(const char* heading, const std::vector<std::string>& texts) {
  if (texts.empty()) return "";
  std::string html = Element("h3", "", heading);
  for (const std::string& text : texts) html += Element("p", "", text);
  return html;
}

// The cautions, each with the line that bears it out.
std::vector<std::string> CareTexts(const Explanation& explanation) {
  std::vector<std::string> texts;
  for (const Caution& caution : explanation.cautions) {
    std::string text = caution.text;
    if (caution.proof.has_value() && !caution.proof->line.empty()) {
      const std::string line =
          LineText(explanation.position, caution.proof->line);
      if (text.find(line) == std::string::npos) {
        text += " The line: " + line + ".";
      }
    }
    texts.push_back(std::move(text));
  }
  for (const Threat& threat : explanation.threats) {
    if (threat.side != explanation.position.side_to_move()) {
      texts.push_back(threat.text);
    }
  }
  for (const Temptation& temptation : explanation.temptations) {
    texts.push_back(temptation.text);
  }
  return texts;
}

// Whether the summary says the verdict first, in whatever words.
bool BeginsWithVerdict(const Explanation& explanation) {
  const Message& summary = explanation.summary_said;
  if (summary.empty()) return false;
  const Message first =
      ClauseOf(summary.id == "list.sentences"
                   ? std::get<Message>(summary.arguments.front().value())
                   : summary);
  const Message verdict = ClauseOf(explanation.verdict.said);
  return first == verdict ||
         (first.id == "summary.with" && first.arguments[0] == verdict);
}

// The summary, under the verdict where it does not begin with it.
std::string VerdictHtml(const Explanation& explanation) {
  const std::string& summary = explanation.summary;
  const bool said = BeginsWithVerdict(explanation);
  std::string html;
  if (!said) html += Element("p", "verdict", explanation.verdict.text);
  if (!summary.empty()) html += Element("p", said ? "verdict" : "", summary);
  return html;
}

std::string ProvedText(const Explanation& explanation) {
  if (!explanation.proof.has_value()) return "";
  const Proof& proof = *explanation.proof;
  if (proof.mate_in != 0 || explanation.verdict.quiet) return "";
  return "Counting alone says " + PawnsText(explanation.score_cp) +
         "; played out, it is " + PawnsText(proof.score_cp) + ".";
}

std::vector<std::string> PlanTexts(const Explanation& explanation) {
  std::vector<std::string> texts;
  for (const ToldPlan& plan : explanation.plans) {
    // What a single move does, its sentence has said.
    const bool more = plan.steps.size() > 1 && !plan.ignored_text.empty();
    texts.push_back(plan.text + (more ? " " + plan.ignored_text : ""));
  }
  return texts;
}

// What to ask of a position, and what to say to it.
struct Quiz {
  std::string question;
  std::string answer;
};

Quiz QuizOf(const Explanation& explanation) {
  const Side side = explanation.position.side_to_move();
  const std::string name = Name(side);
  Quiz quiz;
  if (explanation.verdict.over) return quiz;
  const ToldPlan* plan = BestPlan(explanation, side);
  if (!explanation.cautions.empty() && explanation.cautions.front().leads) {
    quiz.question =
        name + " to move. Before any plan: what is about to happen?";
    quiz.answer = explanation.cautions.front().text;
  } else if (!explanation.temptations.empty()) {
    const Temptation& tempting = explanation.temptations.front();
    quiz.question = name + " to move. What is wrong with the natural " +
                    NumberedMove(explanation.position, tempting.move) + "?";
    quiz.answer = tempting.text;
  } else if (plan != nullptr) {
    quiz.question = name + " to move. What is " + name + "'s plan here?";
    quiz.answer = plan->text;
  } else {
    return quiz;
  }
  if (explanation.advice.has_value()) {
    quiz.answer += " " + explanation.advice->text;
  }
  return quiz;
}

std::string Opening(const HandoutEntry& entry, const std::string& place) {
  const KeyPosition& key = entry.key;
  std::string html = "<article id=\"" + Id("p", key.index) + "\">\n" +
                     Element("h2", "", Heading(key.index, place));
  const std::string title = GameTitle(entry.tree);
  html += Element("p", "because",
                  "Game " + std::to_string(key.game + 1) +
                      (title.empty() ? "" : ", " + title) +
                      ". Chosen because " + key.because + ".");
  if (!key.also_reached.empty()) {
    html +=
        "<p class=\"because\">The same position arises elsewhere:</p>\n"
        "<ul class=\"because\">\n";
    for (const std::string& other : key.also_reached) {
      html += Element("li", "", other);
    }
    html += "</ul>\n";
  }
  const std::string author =
      AuthorWords(entry.tree, entry.tree.nodes[key.node]);
  if (!author.empty()) {
    html += "<blockquote>" + Element("p", "", author) + "</blockquote>\n";
  }
  return html;
}

}  // namespace

HandoutParts MakeHandoutParts(const HandoutEntry& entry) {
  const Explanation& explanation = entry.explanation;
  const std::size_t index = entry.key.index;
  HandoutParts parts;
  parts.place = AfterText(entry.tree, entry.key.node);
  parts.verdict = explanation.verdict.text;
  parts.section = Opening(entry, parts.place) + "<div class=\"board\">\n" +
                  Board(explanation) + "<div>\n" + VerdictHtml(explanation);
  if (explanation.advice.has_value()) {
    parts.section += Element("p", "", "First: " + explanation.advice->text);
  }
  // The steps of the verdict follow here, beside the board.
  parts.section += Told("Take care", CareTexts(explanation));
  parts.section_end = "</div>\n</div>\n" +
                      Element("h3", "", "What it comes to, step by step") +
                      Waterfall(explanation);
  const std::string proved = ProvedText(explanation);
  if (!proved.empty()) parts.section_end += Element("p", "", proved);
  const std::string race = TempoChart(explanation);
  if (!race.empty()) {
    parts.section_end += Element("h3", "", "The race") + race;
    for (const std::string& text : PlanTexts(explanation)) {
      parts.section_end += Element("p", "told", text);
    }
  }
  parts.section_end +=
      "<p class=\"back\"><a href=\"#contents\">Contents</a></p>\n"
      "</article>\n";
  const Quiz quiz = QuizOf(explanation);
  if (quiz.question.empty()) return parts;
  parts.exercise = "<li id=\"" + Id("e", index) + "\">\n" +
                   Diagram(explanation.position, {}) + "<p><strong>" +
                   std::to_string(index + 1) + ".</strong> " +
                   Escaped(quiz.question) + " <a href=\"#" + Id("a", index) +
                   "\">Answer " + std::to_string(index + 1) + "</a></p></li>\n";
  parts.answer = "<li id=\"" + Id("a", index) + "\" value=\"" +
                 std::to_string(index + 1) + "\">" +
                 Element("p", "", quiz.answer) +
                 "<p class=\"because\"><a "
                 "href=\"#" +
                 Id("p", index) + "\">Position " + std::to_string(index + 1) +
                 "</a></p></li>\n";
  return parts;
}

std::string HandoutOpening(const HandoutTitle& title) {
  return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n"
         "<meta charset=\"utf-8\">\n<meta name=\"viewport\" "
         "content=\"width=device-width, initial-scale=1\">\n" +
         Element("title", "", title.title) + "<style>" +
         std::string(HandoutStyle()) + "</style>\n</head>\n<body>\n" +
         "<a class=\"skip\" href=\"#lesson\">To the positions</a>\n" +
         DiagramDefinitions() + "<header>\n" + Element("h1", "", title.title) +
         Element("p", "", title.origin) +
         "</header>\n<nav id=\"contents\" aria-labelledby=\"contents-title\">\n"
         "<h2 id=\"contents-title\">Contents</h2>\n<ol>\n";
}

std::string HandoutContentsLine(std::size_t index, const HandoutParts& parts,
                                const std::string& game) {
  std::string html;
  if (!game.empty()) html += Element("li", "game", game);
  return html + "<li value=\"" + std::to_string(index + 1) + "\"><a href=\"#" +
         Id("p", index) + "\">" + Escaped(Capitalised(parts.place)) +
         "</a>: " + Escaped(parts.verdict) + "</li>\n";
}

std::string HandoutContentsEnd() {
  return "</ol>\n<ul>\n<li><a href=\"#exercises\">Exercises</a></li>\n"
         "<li><a href=\"#answers\">Answers</a></li>\n</ul>\n</nav>\n"
         "<main id=\"lesson\">\n";
}

std::string HandoutVerdictSteps(const std::vector<VerdictStepText>& steps) {
  if (steps.size() < 2) return "";
  std::string html = Element("h3", "", "How the verdict came about") +
                     "<ol class=\"steps\">\n";
  for (const VerdictStepText& step : steps) {
    html += Element("li", "", Capitalised(step.place) + ": " + step.verdict);
  }
  return html + "</ol>\n";
}

std::string HandoutExercisesOpening() {
  return "<section class=\"part\" id=\"exercises\" "
         "aria-labelledby=\"exercises-title\">\n"
         "<h2 id=\"exercises-title\">Exercises</h2>\n"
         "<p>The same positions without help. Answers are on the last "
         "pages.</p>\n<ol class=\"quiz\">\n";
}

std::string HandoutAnswersOpening() {
  return "</ol>\n</section>\n<section class=\"part\" id=\"answers\" "
         "aria-labelledby=\"answers-title\">\n"
         "<h2 id=\"answers-title\">Answers</h2>\n<ol class=\"answers\">\n";
}

std::string HandoutClosing() {
  return "</ol>\n</section>\n</main>\n<footer><p>Made with Assay " +
         std::string(kVersion) +
         ". Scores are in pawns, from White's point of view.</p></footer>\n"
         "</body>\n</html>\n";
}

}  // namespace assay
