#include "assay/explain/text.h"

#include <cstdlib>

#include "assay/notation/fen.h"
#include "assay/notation/nag.h"

namespace assay {
namespace {

class Writer {
 public:
  explicit Writer(const TextStyle& style) : style_(style) {}

  void Plain(const std::string& line) { text_ += line + '\n'; }
  void Bold(const std::string& line) { Styled("\x1b[1m", line); }
  void Dim(const std::string& line) { Styled("\x1b[2m", line); }

  // Words wrapped to the width; the first line starts with `first`, the others
  // with as many blanks.
  void Wrapped(const std::string& first, const std::string& words) {
    std::string line = first;
    bool line_is_empty = true;
    std::size_t at = 0;
    while (at < words.size()) {
      const std::size_t end = std::min(words.find(' ', at), words.size());
      const std::string word = words.substr(at, end - at);
      if (!line_is_empty && line.size() + 1 + word.size() > style_.width) {
        Plain(line);
        line.assign(first.size(), ' ');
        line_is_empty = true;
      }
      if (!line_is_empty) line += ' ';
      line += word;
      line_is_empty = false;
      at = end + 1;
    }
    Plain(line);
  }

  std::string Take() { return std::move(text_); }

 private:
  void Styled(const char* code, const std::string& line) {
    Plain(style_.colour ? code + line + "\x1b[0m" : line);
  }

  const TextStyle& style_;
  std::string text_;
};

// "+0.42 for White", and what search made of it.
std::string ScoreText(const Explanation& explanation) {
  std::string text = PawnsText(explanation.score_cp) + " for White";
  if (!explanation.proof.has_value()) return text;
  const Proof& proof = *explanation.proof;
  if (proof.mate_in != 0) {
    return text + " counted, mate in " +
           std::to_string(std::abs(proof.mate_in)) + " proved";
  }
  return text + " counted, " + PawnsText(proof.score_cp) + " proved";
}

std::string Padded(const std::string& text, std::size_t width) {
  return text.size() >= width ? text
                              : std::string(width - text.size(), ' ') + text;
}

// The last note is on the centre, those before it on the named structure.
void WriteStructure(const std::vector<std::string>& notes, Writer& out) {
  std::string structure;
  for (std::size_t i = 0; i + 1 < notes.size(); ++i) {
    if (i > 0) structure += ' ';
    structure += notes[i];
  }
  if (!structure.empty()) out.Wrapped("structure  ", structure);
  if (!notes.empty()) out.Wrapped("   centre  ", notes.back());
}

}  // namespace

std::string PawnsText(Centipawns value) {
  const int size = std::abs(value);
  const std::string hundredths = std::to_string(size % 100);
  return std::string(value > 0   ? "+"
                     : value < 0 ? "-"
                                 : "") +
         std::to_string(size / 100) + "." +
         (hundredths.size() == 1 ? "0" : "") + hundredths;
}

std::string ToText(const Explanation& explanation, const TextStyle& style) {
  Writer out(style);
  out.Dim(ToFen(explanation.position));
  const int nag = explanation.verdict.nag;
  out.Bold("$" + std::to_string(nag) + " " + std::string(NagMeaning(nag)) +
           "; " + ScoreText(explanation));
  out.Wrapped("  ", explanation.summary);
  for (const Reason& reason : explanation.reasons) {
    out.Wrapped(Padded(PawnsText(reason.value_cp), 7) + "  ", reason.text);
  }
  WriteStructure(explanation.structure.notes, out);
  for (const ToldPlan& plan : explanation.plans) {
    out.Wrapped("     plan  ", plan.text);
  }
  for (const Caution& caution : explanation.cautions) {
    out.Wrapped("  caution  ", caution.text);
  }
  for (const Threat& threat : explanation.threats) {
    // What the mover wins is its advice.
    if (threat.side == explanation.position.side_to_move()) continue;
    out.Wrapped("   threat  ", threat.text);
  }
  for (const Temptation& temptation : explanation.temptations) {
    out.Wrapped(" tempting  ", temptation.text);
  }
  if (explanation.advice.has_value()) {
    out.Wrapped("    first  ", explanation.advice->text);
  }
  if (style.ledger) {
    for (const ExplainedEntry& entry : explanation.ledger) {
      out.Wrapped("  " + Padded(PawnsText(entry.entry.value_cp), 7) + "  ",
                  entry.text);
    }
  }
  return out.Take();
}

}  // namespace assay
