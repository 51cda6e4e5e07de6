// The files that a lesson becomes, put together from the journal of its work.
#ifndef ASSAY_SERVICE_CLI_LESSON_OUTPUTS_H_
#define ASSAY_SERVICE_CLI_LESSON_OUTPUTS_H_

#include <ostream>
#include <string>

#include "assay/explain/catalogue.h"
#include "assay/lesson/handout.h"
#include "assay/lesson/key_positions.h"

namespace assay::service {

// A line of JSON for each key position and each game with faults.
void WriteItems(const std::string& journal, std::ostream& out);

// The lesson's own text with our comments and NAGs put in.
void WriteAnnotated(const Lesson& lesson, const std::string& journal,
                    std::ostream& out);

// A handout's title; `origin` is the name of the lesson's file for a reader.
void WriteHandout(const Lesson& lesson, const std::string& journal,
                  const HandoutTitle& title, const Catalogue& words,
                  std::ostream& out);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CLI_LESSON_OUTPUTS_H_
