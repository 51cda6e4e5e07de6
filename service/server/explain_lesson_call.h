// ExplainLesson: a progress message before each item, the last one at the end.
#ifndef ASSAY_SERVICE_SERVER_EXPLAIN_LESSON_CALL_H_
#define ASSAY_SERVICE_SERVER_EXPLAIN_LESSON_CALL_H_

#include <memory>
#include <optional>

#include "assay/lesson/key_positions.h"
#include "service/server/lesson_call.h"

namespace assay::service {

class ExplainLessonCall : public LessonCall {
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
  // A key position of a game to explain, or behind the last what is wrong with
  // the game.
  struct Place : Piece {
    std::shared_ptr<const LessonGame> game;
    std::size_t key = 0;
    grpc::Slice answer;

    bool is_fault() const { return key == game->keys.size(); }
  };

  void TellProgress();
  void Explain(const KeyPosition& key, v1::LessonItem* item);

  v1::ExplainLessonRequest lesson_request_;  // without its PGN
  std::optional<Lesson> lesson_;
  std::optional<LessonReader> reader_;
  std::shared_ptr<const LessonGame> game_;
  std::size_t key_ = 0;     // to begin with next
  std::uint64_t done_ = 0;  // of those that were told
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_EXPLAIN_LESSON_CALL_H_
