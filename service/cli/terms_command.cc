#include "assay/terms/weights_text.h"
#include "service/cli/commands.h"
#include "service/cli/print.h"
#include "service/convert/convert.h"

namespace assay::service {

int RunTerms(const Arguments& arguments, const Assayer& assayer,
             std::ostream& out) {
  if (arguments.format == Format::kWeights) {
    out << ToText(assayer.weights());
    return kSuccess;
  }
  v1::ListTermsResponse catalogue;
  ToProto(assayer, &catalogue);
  PrintTerms(catalogue, arguments.format, out);
  return kSuccess;
}

}  // namespace assay::service
