// Lessons as messages of the public contract.
#ifndef ASSAY_SERVICE_CONVERT_LESSON_CONVERT_H_
#define ASSAY_SERVICE_CONVERT_LESSON_CONVERT_H_

#include "assay/lesson/key_positions.h"
#include "assay/lesson/proofread.h"
#include "assay/lesson/student.h"
#include "assay/v1/student.pb.h"
#include "service/convert/convert.h"

namespace assay::service {

void ToProto(const KeyPosition& key, const Explanation& explanation,
             const Assayer& assayer, v1::LessonItem* message);
void ToProto(const Finding& finding, const Assayer& assayer,
             v1::Finding* message);
void ToProto(const StudentReport& report, const Assayer& assayer,
             v1::StudentReport* message);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CONVERT_LESSON_CONVERT_H_
