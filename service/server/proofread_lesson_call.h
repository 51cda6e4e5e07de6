// ProofreadLesson: findings as they are made, progress now and then.
#ifndef ASSAY_SERVICE_SERVER_PROOFREAD_LESSON_CALL_H_
#define ASSAY_SERVICE_SERVER_PROOFREAD_LESSON_CALL_H_

#include <deque>
#include <optional>
#include <string>
#include <vector>

#include "assay/lesson/proofread.h"
#include "service/server/lesson_call.h"

namespace assay::service {

class ProofreadLessonCall : public LessonCall {
 public:
  using LessonCall::LessonCall;

 protected:
  absl::Status Prepare() override;
  bool MakeNext(grpc::ByteBuffer& answer) override;
  std::uint64_t NextUnits() const override;

 private:
  bool NextGame();
  void Check();

  v1::ProofreadLessonRequest lesson_request_;
  std::optional<PgnReader> reader_;  // of the request's PGN
  std::optional<PgnItem> item_;
  std::vector<ProofreadTask> tasks_;
  std::size_t task_ = 0;
  std::uint32_t game_ = 0;
  ClashFinder clashes_;
  std::deque<Finding> findings_;
  std::uint64_t done_ = 0;
  std::uint64_t told_ = 0;
  std::uint64_t total_ = 0;
  bool last_told_ = false;
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_PROOFREAD_LESSON_CALL_H_
