#include <string>

#include "service/cli/commands.h"
#include "service/convert/convert.h"

namespace assay::service {
namespace {

std::string Nags(const v1::Term& term) {
  std::string text;
  for (const int nag : term.nags()) text += " $" + std::to_string(nag);
  return text;
}

}  // namespace

int RunTerms(const Arguments& arguments, const Assayer& assayer,
             std::ostream& out) {
  if (arguments.format == Format::kWeights) {
    out << ToText(assayer.weights());
    return kSuccess;
  }
  v1::ListTermsResponse catalogue;
  ToProto(assayer, &catalogue);
  if (arguments.format == Format::kJson) {
    out << JsonLine(catalogue);
    return kSuccess;
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
  return kSuccess;
}

}  // namespace assay::service
