// The answer to one request of a stream or batch, good or bad.
#ifndef ASSAY_SERVICE_SERVER_ANSWER_H_
#define ASSAY_SERVICE_SERVER_ANSWER_H_

#include <cstdint>

#include "service/server/call.h"

namespace assay::service {

// An ExplainStreamResponse in the message that it is part of, or alone, for as
// long as it takes to serialise that. Its explanation is the thread's own and
// only lent: protobuf would free and build again that of a oneof each time.
class ItemAnswer {
 public:
  ItemAnswer(Call& call, const v1::ExplainRequest& request, std::uint64_t index,
             v1::ExplainStreamResponse* answer);
  ~ItemAnswer();
  ItemAnswer(const ItemAnswer&) = delete;
  ItemAnswer& operator=(const ItemAnswer&) = delete;

 private:
  v1::ExplainStreamResponse* const answer_;
};

// What the request counts for in the pool's queue.
std::uint64_t ItemUnits(const v1::ExplainRequest& request,
                        const SearchBudget& budget);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_SERVER_ANSWER_H_
