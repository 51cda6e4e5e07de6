#include "service/cli/print.h"

#include "service/cli/commands.h"
#include "service/convert/convert.h"
#include "service/convert/json.h"

namespace assay::service {
namespace {

// The record with our score as its ce, from the side to move's view.
std::string EpdText(const EpdRecord& record, Centipawns score) {
  EpdRecord scored = record;
  const Side side = record.position.side_to_move();
  scored.Set({"ce", {EpdInteger(CeFromWhite(score, side))}});
  const absl::StatusOr<std::string> text = WriteEpd(scored);
  return text.ok() ? *text + '\n' : std::string("error\n");
}

std::string Nags(const v1::Term& term) {
  std::string text;
  for (const int nag : term.nags()) text += " $" + std::to_string(nag);
  return text;
}

}  // namespace

std::string JsonLine(const google::protobuf::Message& message) {
  return ToJson(message) + '\n';
}

TextStyle StyleOf(const Arguments& arguments) {
  TextStyle style;
  style.colour = UseColour();
  style.ledger = arguments.ledger;
  style.language = arguments.language;
  style.audience = arguments.audience;
  return style;
}

ItemOutput ExplainedText(const NamedRecord& named,
                         const Explanation& explanation,
                         const TextStyle& style) {
  const std::string title = named.label.empty() ? "" : named.label + '\n';
  return {title + ToText(explanation, style) + '\n', false};
}

ItemOutput ExplainedJson(const NamedRecord& named,
                         v1::Explanation* explanation) {
  v1::ExplainResponse response;
  response.set_tag(named.label);
  response.mutable_explanation()->Swap(explanation);
  return {JsonLine(response), false};
}

ItemOutput NotExplained(const Item& item, const absl::Status& status,
                        Format format) {
  if (format == Format::kText) {
    return {"error: " + std::string(status.message()) + "\n\n", true};
  }
  // An ExplainStreamResponse's outcome without its index.
  v1::ExplainStreamResponse response;
  response.set_tag(item.label);
  ToProto(status, response.mutable_error());
  return {JsonLine(response), true};
}

ItemOutput Scored(const NamedRecord& named, Centipawns score, Format format) {
  if (format == Format::kEpd) return {EpdText(named.record, score), false};
  if (format == Format::kText) return {std::to_string(score) + '\n', false};
  v1::ScoreOutcome outcome;
  outcome.set_score_cp(score);
  return {JsonLine(outcome), false};
}

ItemOutput NotScored(const absl::Status& status, Format format) {
  if (format != Format::kJson) return {"error\n", true};
  v1::ScoreOutcome outcome;
  ToProto(status, outcome.mutable_error());
  return {JsonLine(outcome), true};
}

void PrintTerms(const v1::ListTermsResponse& catalogue, Format format,
                std::ostream& out) {
  if (format == Format::kJson) {
    out << JsonLine(catalogue);
    return;
  }
  out << "catalogue " << catalogue.catalogue_version() << ", weights "
      << catalogue.weights_fingerprint() << "\n";
  for (const v1::Term& term : catalogue.terms()) {
    out << "\n"
        << term.id() << " (" << term.theme() << "): " << term.title()
        << "\n  is       " << term.definition() << "\n  because  "
        << term.reason() << "\n  worth    " << term.midgame_cp()
        << " cp in the middlegame, " << term.endgame_cp()
        << " cp in the ending\n  source   " << term.source() << "\n";
    if (term.nags_size() > 0) out << "  NAG     " << Nags(term) << "\n";
  }
}

}  // namespace assay::service
