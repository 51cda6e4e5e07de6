#include "assay/lesson/lesson_comment.h"

namespace assay {
namespace {

void Add(const std::string& sentence, std::string& text) {
  if (sentence.empty() || text.find(sentence) != std::string::npos) return;
  if (!text.empty()) text += ' ';
  text += sentence;
}

}  // namespace

std::string LessonComment(const Explanation& explanation) {
  std::string text;
  Add(explanation.summary, text);
  if (text.empty()) Add(explanation.verdict.text, text);
  for (const Side side : kSides) {
    for (const ToldPlan& plan : explanation.plans) {
      if (plan.plan.side != side) continue;
      Add(plan.text, text);
      break;
    }
  }
  for (const Threat& threat : explanation.threats) {
    if (threat.side != explanation.position.side_to_move()) {
      Add(threat.text, text);
    }
  }
  return text;
}

}  // namespace assay
