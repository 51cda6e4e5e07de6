// Messages from and to gRPC's bytes.
//
// The service reads and writes bytes itself: so a message that cannot be read
// is the client's fault, said with its reason (gRPC would say INTERNAL);
// requests are held against the contract's own limit; and answers are built and
// serialised on the worker that found them, in a message that is used again.
#ifndef ASSAY_SERVICE_SERVER_WIRE_H_
#define ASSAY_SERVICE_SERVER_WIRE_H_

#include "absl/status/status.h"
#include "google/protobuf/message.h"
#include "grpcpp/support/byte_buffer.h"

namespace assay::service {

// INVALID_ARGUMENT for more than `most_bytes`, a text that is not UTF-8, or
// bytes that are no such message.
absl::Status ReadMessage(const grpc::ByteBuffer& buffer, std::size_t most_bytes,
                         google::protobuf::Message& message);

grpc::Slice WriteMessage(const google::protobuf::MessageLite& message);

// A message kept by each thread, handed out empty. Its memory is given back now
// and then if it has grown out of all proportion; to look costs as much as a
// third of filling it.
template <class Message>
Message& ReusedMessage() {
  constexpr std::size_t kKeptBytes = std::size_t{1} << 20U;
  constexpr unsigned kLookEvery = 256;
  thread_local Message message;
  thread_local unsigned uses = 0;
  if (++uses % kLookEvery == 0 && message.SpaceUsedLong() > kKeptBytes) {
    message = Message();
  }
  message.Clear();
  return message;
}

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_WIRE_H_
