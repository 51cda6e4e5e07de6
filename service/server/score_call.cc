#include "service/server/score_call.h"

#include <algorithm>
#include <string>

#include "assay/base/problem_status.h"
#include "assay/notation/fen.h"
#include "service/convert/convert.h"
#include "service/server/limits.h"
#include "service/server/status.h"
#include "service/server/wire.h"

namespace assay::service {
namespace {

// Positions of one part: about a quarter of a millisecond.
constexpr int kPart = 128;

// Whether there was a position to score.
bool ScoreOne(const Assayer& assayer, const v1::ScoreRequest& request, int i,
              v1::ScoreOutcome* outcome) {
  const absl::StatusOr<Position> position = PositionFromFen(request.fens(i));
  if (position.ok()) {
    outcome->set_score_cp(assayer.Score(*position));
    return true;
  }
  const std::string path = "fens[" + std::to_string(i) + "]";
  ToItemError(ReadFen(request.fens(i), path).status(),
              outcome->mutable_error());
  return false;
}

}  // namespace

void ScoreCall::Begin() {
  const absl::Status read = ReadMessage(request(), kMostRequestBytes, score_);
  if (!read.ok()) return Fail(read);
  const int fens = score_.fens_size();
  if (fens > kMostScores) {
    return Fail(ProblemStatus({"fens", "too many", std::to_string(fens),
                               "at most " + std::to_string(kMostScores)}));
  }
  if (fens <= kPart) return Answer({MakePart(0)});
  MakeParts(static_cast<std::size_t>((fens + kPart - 1) / kPart));
}

// The first part says what made the scores.
grpc::Slice ScoreCall::MakePart(std::size_t part) {
  const Assayer& assayer = call().backend().assayer;
  auto& answer = ReusedMessage<v1::ScoreResponse>();
  const int first = static_cast<int>(part) * kPart;
  const int last = std::min(first + kPart, score_.fens_size());
  int good = 0;
  for (int i = first; i < last; ++i) {
    good += ScoreOne(assayer, score_, i, answer.add_outcomes()) ? 1 : 0;
  }
  call().CountItems(static_cast<std::uint64_t>(good),
                    static_cast<std::uint64_t>(last - first - good));
  if (part == 0) {
    ToProto(assayer, answer.mutable_provenance());
  }
  return WriteMessage(answer);
}

// Reading and scoring a position takes about half of a searched node's time.
std::uint64_t ScoreCall::UnitsOf(std::size_t /*part*/) const {
  return kPart / 2;
}

}  // namespace assay::service
