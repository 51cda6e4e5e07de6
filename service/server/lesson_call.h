// What the calls with one request and a stream of answers have in common.
//
//   Prepare, once -> Next -> workers, side by side -> Tell -> OnWriteDone
//
// The work is cut into pieces, which are begun in order and told in order; as
// many are worked on at a time as the pool has workers. What is done waits for
// its turn: at most kLessonWindow pieces a worker are held, so a client that
// does not read costs that much memory, and its pace is the call's. All state
// is under one lock; what is to be started is decided under it and started
// after it, as in stream_call.h.
#ifndef ASSAY_SERVICE_SERVER_LESSON_CALL_H_
#define ASSAY_SERVICE_SERVER_LESSON_CALL_H_

#include <cstdint>
#include <deque>
#include <memory>
#include <mutex>

#include "grpcpp/support/byte_buffer.h"
#include "grpcpp/support/server_callback.h"
#include "service/server/call.h"

namespace assay::service {

class LessonCall : public grpc::ServerWriteReactor<grpc::ByteBuffer>,
                   public std::enable_shared_from_this<LessonCall> {
 public:
  LessonCall(Backend& backend, Method method,
             grpc::CallbackServerContext* context,
             const grpc::ByteBuffer& request)
      : call_(backend, method, context, request.Length()), request_(request) {}

  template <class Kind>
  static LessonCall* Start(Backend& backend, Method method,
                           grpc::CallbackServerContext* context,
                           const grpc::ByteBuffer& request) {
    const std::shared_ptr<LessonCall> made =
        std::make_shared<Kind>(backend, method, context, request);
    made->self_ = made;
    made->Begin();
    return made.get();
  }

  void OnCancel() override;
  void OnWriteDone(bool ok) override;
  void OnDone() override { self_.reset(); }

 protected:
  // A piece of the work, and what came of it.
  class Piece {
   public:
    virtual ~Piece() = default;
  };

  // On a worker, once, before all else: reads the request. A failure ends the
  // call.
  virtual absl::Status Prepare() = 0;
  // On a worker, one at a time: the next piece; null where there is none.
  virtual std::unique_ptr<Piece> Next() = 0;
  // What each takes, in the pool's units.
  virtual std::uint64_t Units() const = 0;
  // On workers, for several pieces at once.
  virtual void Work(Piece& piece) = 0;
  // In the order of the pieces, one at a time: says what came of one, and what
  // there is to say when all were told.
  virtual void Tell(Piece& piece) = 0;
  virtual void TellEnd() = 0;

  // For Tell and TellEnd: the next answer.
  void Answer(grpc::Slice slice) { answers_.emplace_back(&slice, 1); }

  Call& call() { return call_; }
  const grpc::ByteBuffer& request() const { return request_; }

 private:
  struct Held {
    std::unique_ptr<Piece> piece;
    bool done = false;
  };
  // What follows from the state; see Advance.
  struct Decision {
    bool write = false;
    bool work = false;
    bool finish = false;
  };

  void Begin();
  void PrepareOnWorker();
  void Advance();
  bool AdvanceOnce();
  Decision Decide();
  void TellWhatIsDone();
  absl::Status EndStatus() const;
  void WorkOnOne();

  Call call_;
  const grpc::ByteBuffer request_;
  std::shared_ptr<LessonCall> self_;

  std::mutex mutex_;
  std::deque<Held> pieces_;               // begun and not yet told, in order
  std::uint64_t first_ = 0;               // number of pieces_.front()
  std::deque<grpc::ByteBuffer> answers_;  // told and not yet written
  grpc::ByteBuffer outgoing_;
  absl::Status status_;    // of what came before the first piece
  int workers_ = 0;        // tasks of ours in the pool
  int starting_ = 0;       // threads about to start a write
  bool prepared_ = false;  // pieces may be begun
  bool begun_all_ = false;
  bool told_all_ = false;
  bool writing_ = false;
  bool broken_ = false;  // nothing can be written any more, or is wanted
  bool finished_ = false;
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_LESSON_CALL_H_
