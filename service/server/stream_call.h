// ExplainStream: requests in, answers out in the same order, worked on side by
// side in between.
//
//   OnReadDone -> items_ (at most kStreamWindow) -> workers -> OnWriteDone
//
// The next request is read only while the window has room, so a client that
// does not read its answers holds at most the window; gRPC's own flow control
// then stops the client. All state is under one lock; what is to be started is
// decided under it and started after it.
#ifndef ASSAY_SERVICE_SERVER_STREAM_CALL_H_
#define ASSAY_SERVICE_SERVER_STREAM_CALL_H_

#include <cstdint>
#include <deque>
#include <memory>
#include <mutex>

#include "grpcpp/support/byte_buffer.h"
#include "grpcpp/support/server_callback.h"
#include "service/server/call.h"

namespace assay::service {

using RawBidiReactor =
    grpc::ServerBidiReactor<grpc::ByteBuffer, grpc::ByteBuffer>;

class StreamRegistry;

class StreamCall : public RawBidiReactor,
                   public std::enable_shared_from_this<StreamCall> {
 public:
  static RawBidiReactor* Start(Backend& backend, StreamRegistry& registry,
                               grpc::CallbackServerContext* context);

  StreamCall(Backend& backend, StreamRegistry& registry,
             grpc::CallbackServerContext* context);

  // Reads no further, answers what was read, and ends with UNAVAILABLE.
  void Drain();

  void OnReadDone(bool ok) override;
  void OnWriteDone(bool ok) override;
  void OnCancel() override;
  void OnDone() override;

 private:
  struct Item {
    grpc::ByteBuffer request;
    grpc::ByteBuffer answer;
    bool done = false;
  };
  // What follows from the state; see Advance.
  struct Next {
    bool read = false;
    bool write = false;
    bool finish = false;
    bool work = false;
  };

  absl::Status MayBegin() const;
  void Advance();
  bool AdvanceOnce();
  Next Decide();
  bool MayRead() const;
  bool Ending() const { return ended_ || draining_ || broken_; }
  absl::Status EndStatus() const;
  void Submit();
  void Work();
  bool WorkOnOne();
  grpc::ByteBuffer Explain(const grpc::ByteBuffer& request,
                           std::uint64_t index);

  Call call_;
  StreamRegistry& registry_;
  std::shared_ptr<StreamCall> self_;

  std::mutex mutex_;
  std::deque<Item> items_;         // read and not yet written, in order
  std::uint64_t first_ = 0;        // index of items_.front() in the stream
  std::uint64_t untaken_ = 0;      // index of the first that no worker has
  std::size_t waiting_bytes_ = 0;  // of requests that no worker has
  int workers_ = 0;                // tasks of ours in the pool
  int starting_ = 0;               // threads about to start a read or write
  bool reading_ = false;
  bool writing_ = false;
  bool ended_ = false;     // the client has sent its last request
  bool draining_ = false;  // the server is to stop
  bool broken_ = false;    // nothing can be written any more
  bool finished_ = false;
  absl::Status refused_;
  grpc::ByteBuffer incoming_;
  grpc::ByteBuffer outgoing_;
};

// The streams that are open, so that a server that is to stop can end them.
class StreamRegistry {
 public:
  // False once draining: the stream must not begin.
  bool Add(StreamCall* stream);
  void Remove(StreamCall* stream);
  void DrainAll();

 private:
  std::mutex mutex_;
  std::deque<StreamCall*> streams_;
  bool draining_ = false;
};

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_STREAM_CALL_H_
