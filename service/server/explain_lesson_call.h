// ExplainLesson: a progress message before each item, the last one at the end.
#ifndef ASSAY_SERVICE_SERVER_EXPLAIN_LESSON_CALL_H_
#define ASSAY_SERVICE_SERVER_EXPLAIN_LESSON_CALL_H_

#include <optional>

#include "assay/lesson/key_positions.h"
#include "service/server/lesson_call.h"

namespace assay::service {

class ExplainLessonCall : public LessonCall {
 public:
  using LessonCall::LessonCall;

 protected:
  absl::Status Prepare() override;
  bool MakeNext(grpc::ByteBuffer& answer) override;
  std::uint64_t NextUnits() const override;

 private:
  bool FindNext();
  void Explain(const KeyPosition& key, v1::LessonItem* item);

  v1::ExplainLessonRequest lesson_request_;  // without its PGN
  std::optional<Lesson> lesson_;
  std::optional<LessonReader> reader_;
  std::optional<LessonGame> game_;
  std::size_t key_ = 0;
  bool fault_told_ = false;
  bool progress_next_ = true;
  std::uint64_t done_ = 0;
  bool ended_ = false;
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_EXPLAIN_LESSON_CALL_H_
