#include "assay/lesson/handout.h"

#include <algorithm>

#include "assay/explain/line_text.h"
#include "assay/explain/text.h"
#include "assay/explain/words.h"
#include "assay/lesson/diagram.h"
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

std::string CaptionOf(const Explanation& explanation, const DiagramMarks& marks,
                      const Catalogue& words) {
  std::vector<Message> sentences{
      Sentence(Say("handout.to_move", explanation.position.side_to_move()))};
  if (marks.for_white != 0) {
    sentences.push_back(Sentence(Say("handout.dotted", Side::kWhite)));
  }
  if (marks.for_black != 0) {
    sentences.push_back(Sentence(Say("handout.crossed", Side::kBlack)));
  }
  for (const DrawnRoute& route : marks.routes) {
    sentences.push_back(
        Sentence(Say(route.side == Side::kWhite ? "handout.whole_lines"
                                                : "handout.dashed_lines",
                     route.side)));
  }
  return words.Text(List("list.sentences", std::move(sentences)));
}

// A label by its row.
std::string Label(const Catalogue& words, std::string_view id) {
  return words.Text(Say(id));
}

std::string Numbered(const Catalogue& words, std::string_view id,
                     std::size_t index) {
  return words.Text(Say(id, static_cast<int>(index + 1)));
}

std::string Id(const char* kind, std::size_t index) {
  return kind + std::to_string(index + 1);
}

std::string Heading(std::size_t index, const std::string& place) {
  return std::to_string(index + 1) + ". " + Capitalised(place);
}

std::string Board(const Explanation& explanation, const Catalogue& words) {
  const DiagramMarks marks = MarksOf(explanation);
  return "<figure>\n" + Diagram(explanation.position, marks, words) +
         Element("figcaption", "", CaptionOf(explanation, marks, words)) +
         "</figure>\n";
}

std::string Told(const std::string& heading,
                 const std::vector<std::string>& texts) {
  if (texts.empty()) return "";
  std::string html = Element("h3", "", heading);
  for (const std::string& text : texts) html += Element("p", "", text);
  return html;
}

// The cautions, each with the line that bears it out.
std::vector<std::string> CareTexts(const Explanation& explanation,
                                   const Catalogue& words) {
  std::vector<std::string> texts;
  for (const Caution& caution : explanation.cautions) {
    std::string text = caution.text;
    if (caution.proof.has_value() && !caution.proof->line.empty()) {
      const std::string line =
          LineText(explanation.position, caution.proof->line);
      if (text.find(line) == std::string::npos) {
        text += " " + words.Text(Sentence(Say("handout.line", line)));
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

std::string ProvedText(const Explanation& explanation, const Catalogue& words) {
  if (!explanation.proof.has_value()) return "";
  const Proof& proof = *explanation.proof;
  if (proof.mate_in != 0 || explanation.verdict.quiet) return "";
  return words.Text(
      Sentence(Say("handout.played_out", PawnsText(explanation.score_cp),
                   PawnsText(proof.score_cp))));
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

Quiz QuizOf(const Explanation& explanation, const Catalogue& words) {
  const Side side = explanation.position.side_to_move();
  Quiz quiz;
  if (explanation.verdict.over) return quiz;
  const ToldPlan* plan = BestPlan(explanation, side);
  if (!explanation.cautions.empty() && explanation.cautions.front().leads) {
    quiz.question = words.Text(Say("quiz.caution", side));
    quiz.answer = explanation.cautions.front().text;
  } else if (!explanation.temptations.empty()) {
    const Temptation& tempting = explanation.temptations.front();
    quiz.question =
        words.Text(Say("quiz.tempting", side,
                       NumberedMove(explanation.position, tempting.move)));
    quiz.answer = tempting.text;
  } else if (plan != nullptr) {
    quiz.question = words.Text(Say("quiz.plan", side));
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
  html += Element(
      "p", "because",
      entry.words.Text(Say("handout.game", static_cast<int>(key.game) + 1,
                           title, key.because)));
  if (!key.also_reached.empty()) {
    html += Element("p", "because", Label(entry.words, "handout.elsewhere")) +
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
  const Catalogue& words = entry.words;
  const std::size_t index = entry.key.index;
  HandoutParts parts;
  parts.place = AfterText(entry.tree, entry.key.node, words);
  parts.verdict = explanation.verdict.text;
  parts.section = Opening(entry, parts.place) + "<div class=\"board\">\n" +
                  Board(explanation, words) + "<div>\n" +
                  VerdictHtml(explanation);
  if (explanation.advice.has_value()) {
    parts.section +=
        Element("p", "",
                Label(words, "handout.first") + " " + explanation.advice->text);
  }
  // The steps of the verdict follow here, beside the board.
  parts.section +=
      Told(Label(words, "handout.care"), CareTexts(explanation, words));
  parts.section_end = "</div>\n</div>\n" +
                      Element("h3", "", Label(words, "handout.steps")) +
                      Waterfall(explanation, words);
  const std::string proved = ProvedText(explanation, words);
  if (!proved.empty()) parts.section_end += Element("p", "", proved);
  const std::string race = TempoChart(explanation, words);
  if (!race.empty()) {
    parts.section_end += Element("h3", "", Label(words, "handout.race")) + race;
    for (const std::string& text : PlanTexts(explanation)) {
      parts.section_end += Element("p", "told", text);
    }
  }
  parts.section_end += "<p class=\"back\"><a href=\"#contents\">" +
                       Escaped(Label(words, "handout.contents")) +
                       "</a></p>\n"
                       "</article>\n";
  const Quiz quiz = QuizOf(explanation, words);
  if (quiz.question.empty()) return parts;
  parts.exercise = "<li id=\"" + Id("e", index) + "\">\n" +
                   Diagram(explanation.position, {}, words) + "<p><strong>" +
                   std::to_string(index + 1) + ".</strong> " +
                   Escaped(quiz.question) + " <a href=\"#" + Id("a", index) +
                   "\">" + Escaped(Numbered(words, "handout.answer", index)) +
                   "</a></p></li>\n";
  parts.answer =
      "<li id=\"" + Id("a", index) + "\" value=\"" + std::to_string(index + 1) +
      "\">" + Element("p", "", quiz.answer) +
      "<p class=\"because\"><a "
      "href=\"#" +
      Id("p", index) + "\">" +
      Escaped(Numbered(words, "handout.position", index)) + "</a></p></li>\n";
  return parts;
}

std::string HandoutOpening(const HandoutTitle& title, const Catalogue& words) {
  return "<!DOCTYPE html>\n<html lang=\"" + Label(words, "handout.language") +
         "\">\n<head>\n"
         "<meta charset=\"utf-8\">\n<meta name=\"viewport\" "
         "content=\"width=device-width, initial-scale=1\">\n" +
         Element("title", "", title.title) + "<style>" +
         HandoutStyle(title.paper) + "</style>\n</head>\n<body>\n" +
         "<a class=\"skip\" href=\"#lesson\">" +
         Escaped(Label(words, "handout.skip")) + "</a>\n" +
         DiagramDefinitions() + "<header>\n" + Element("h1", "", title.title) +
         Element("p", "", title.origin) +
         "</header>\n<nav id=\"contents\" aria-labelledby=\"contents-title\">\n"
         "<h2 id=\"contents-title\">" +
         Escaped(Label(words, "handout.contents")) + "</h2>\n<ol>\n";
}

std::string HandoutContentsLine(std::size_t index, const HandoutParts& parts,
                                const std::string& game) {
  std::string html;
  if (!game.empty()) html += Element("li", "game", game);
  return html + "<li value=\"" + std::to_string(index + 1) + "\"><a href=\"#" +
         Id("p", index) + "\">" + Escaped(Capitalised(parts.place)) +
         "</a>: " + Escaped(parts.verdict) + "</li>\n";
}

std::string HandoutContentsEnd(const Catalogue& words) {
  const auto entry = [&words](const char* part, std::string_view id) {
    return std::string("<li><a href=\"#") + part + "\">" +
           Escaped(Label(words, id)) + "</a></li>\n";
  };
  return "</ol>\n<ul>\n" + entry("exercises", "handout.exercises") +
         entry("answers", "handout.answers") +
         "</ul>\n</nav>\n<main id=\"lesson\">\n";
}

std::string HandoutVerdictSteps(const std::vector<VerdictStepText>& steps,
                                const Catalogue& words) {
  if (steps.size() < 2) return "";
  std::string html = Element("h3", "", Label(words, "handout.verdict_steps")) +
                     "<ol class=\"steps\">\n";
  for (const VerdictStepText& step : steps) {
    html += Element("li", "", Capitalised(step.place) + ": " + step.verdict);
  }
  return html + "</ol>\n";
}

namespace {

// A part at the end with its heading.
std::string PartOpening(const std::string& id, const std::string& heading) {
  return "<section class=\"part\" id=\"" + id + "\" aria-labelledby=\"" + id +
         "-title\">\n<h2 id=\"" + id + "-title\">" + Escaped(heading) +
         "</h2>\n";
}

}  // namespace

std::string HandoutExercisesOpening(const Catalogue& words) {
  return PartOpening("exercises", Label(words, "handout.exercises")) +
         Element("p", "", Label(words, "handout.without_help")) +
         "<ol class=\"quiz\">\n";
}

std::string HandoutAnswersOpening(const Catalogue& words) {
  return "</ol>\n</section>\n" +
         PartOpening("answers", Label(words, "handout.answers")) +
         "<ol class=\"answers\">\n";
}

std::string HandoutClosing(const Catalogue& words) {
  return "</ol>\n</section>\n</main>\n<footer>" +
         Element("p", "",
                 words.Text(Say("handout.made", std::string(kVersion)))) +
         "</footer>\n</body>\n</html>\n";
}

}  // namespace assay
