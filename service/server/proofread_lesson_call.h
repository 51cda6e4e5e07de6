// ProofreadLesson: findings as they are made, progress now and then.
#ifndef ASSAY_SERVICE_SERVER_PROOFREAD_LESSON_CALL_H_
#define ASSAY_SERVICE_SERVER_PROOFREAD_LESSON_CALL_H_

#include <memory>
#include <optional>
#include <vector>

#include "assay/lesson/proofread.h"
#include "service/server/lesson_call.h"

namespace assay::service {

class ProofreadLessonCall : public LessonCall {
 public:
  using LessonCall::LessonCall;

 protected:
  absl::Status Prepare() override;
  std::unique_ptr<Piece> Next() override;
  std::uint64_t Units() const override;
  void Work(Piece& piece) override;
  void Tell(Piece& piece) override;
  void TellEnd() override;

 private:
  struct Game {
    std::uint32_t game = 0;
    PgnItem item;
    std::vector<ProofreadTask> tasks;
  };
  struct Check : Piece {
    std::shared_ptr<const Game> game;
    std::size_t task = 0;
    Checked checked;
  };

  ProofreadSettings Settings();
  void TellProgress();

  v1::ProofreadLessonRequest lesson_request_;
  std::optional<PgnReader> reader_;  // of the request's PGN
  std::shared_ptr<const Game> game_;
  std::size_t task_ = 0;     // to begin with next
  std::uint32_t games_ = 0;  // read
  ClashFinder clashes_;
  std::uint64_t done_ = 0;  // of those that were told
  std::uint64_t told_ = 0;  // when progress was last told
  std::uint64_t total_ = 0;
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_PROOFREAD_LESSON_CALL_H_
