#include "service/server/wire.h"

#include <string>
#include <vector>

#include "assay/base/problem.h"
#include "assay/base/problem_status.h"
#include "grpcpp/support/proto_buffer_reader.h"
#include "service/server/utf8.h"

namespace assay::service {
namespace {

std::string BytesOf(const grpc::ByteBuffer& buffer) {
  std::vector<grpc::Slice> slices;
  std::string bytes;
  if (!buffer.Dump(&slices).ok()) return bytes;
  for (const grpc::Slice& slice : slices) {
    bytes.append(reinterpret_cast<const char*>(slice.begin()), slice.size());
  }
  return bytes;
}

bool Parse(const grpc::ByteBuffer& buffer, google::protobuf::Message& message) {
  grpc::Slice slice;
  if (buffer.TrySingleSlice(&slice).ok()) {
    return message.ParseFromArray(slice.begin(),
                                  static_cast<int>(slice.size()));
  }
  grpc::ByteBuffer copy(buffer);  // of references to the slices
  grpc::ProtoBufferReader reader(&copy);
  return reader.status().ok() && message.ParseFromZeroCopyStream(&reader);
}

}  // namespace

absl::Status ReadMessage(const grpc::ByteBuffer& buffer, std::size_t most_bytes,
                         google::protobuf::Message& message) {
  if (buffer.Length() > most_bytes) {
    return ProblemStatus({"request", "too large",
                          std::to_string(buffer.Length()) + " bytes",
                          "at most " + std::to_string(most_bytes)});
  }
  // A request without any field has no bytes.
  if (buffer.Length() == 0 || Parse(buffer, message)) return absl::OkStatus();
  message.Clear();
  const std::vector<Problem> problems =
      Utf8Problems(BytesOf(buffer), *message.GetDescriptor());
  if (!problems.empty()) return ProblemsStatus(problems);
  return ProblemStatus({"request", "not a message",
                        std::to_string(buffer.Length()) + " bytes",
                        "a " + message.GetTypeName()});
}

grpc::Slice WriteMessage(const google::protobuf::MessageLite& message) {
  const std::size_t bytes = message.ByteSizeLong();
  grpc::Slice slice(bytes);
  message.SerializeWithCachedSizesToArray(
      const_cast<std::uint8_t*>(slice.begin()));
  return slice;
}

}  // namespace assay::service
