#include "assay/proof/mate_scan.h"

#include <algorithm>

#include "assay/proof/checking_squares.h"
#include "assay/rules/draw.h"
#include "assay/rules/movegen.h"

namespace assay {
namespace {

constexpr std::uint64_t kCancelEvery = 256;

}  // namespace

bool MateScan::Count() {
  if (nodes_ >= most_nodes_) exhausted_ = true;
  if (exhausted_) return false;
  ++nodes_;
  const bool cancelled = nodes_ % kCancelEvery == 0 && cancelled_ != nullptr &&
                         cancelled_->load(std::memory_order_relaxed);
  exhausted_ = cancelled;
  return !exhausted_;
}

// Whether the side to move mates within the moves; false where exhausted.
bool MateScan::Mates(const Position& position, int moves) {
  if (!Count()) return false;
  const CheckingSquares checks(position);
  MoveList tries;
  LegalMoves(position, tries);
  for (const Move move : tries) {
    if (moves == 1 && !checks.MayCheck(position, move)) continue;
    const Position next = position.After(move);
    if (moves == 1 ? IsCheckmate(next) : IsMated(next, moves - 1)) return true;
    if (exhausted_) return false;
  }
  return false;
}

bool MateScan::Refutes(const Position& position, Move reply, int moves) {
  if (Mates(position.After(reply), moves)) return false;
  refutations_[static_cast<std::size_t>(moves)] = reply;
  return true;
}

// Whether the side to move is mated within the moves whatever it does.
bool MateScan::IsMated(const Position& position, int moves) {
  MoveList replies;
  LegalMoves(position, replies);
  if (replies.empty()) return position.InCheck();
  const Move known = refutations_[static_cast<std::size_t>(moves)];
  const bool legal =
      std::find(replies.begin(), replies.end(), known) != replies.end();
  if (legal && Refutes(position, known, moves)) return false;
  return std::none_of(replies.begin(), replies.end(), [&](Move reply) {
    return !(legal && reply == known) && Refutes(position, reply, moves);
  });
}

// The rest of a line once the side to move is known to be mated in exactly
// `moves`: a reply that holds out so long, and the move that still mates.
std::vector<Move> MateScan::LineAfter(const Position& position, int moves) {
  if (moves == 0) return {};
  MoveList replies;
  LegalMoves(position, replies);
  for (const Move reply : replies) {
    const Position next = position.After(reply);
    if (moves > 1 && Mates(next, moves - 1)) continue;
    MoveList tries;
    LegalMoves(next, tries);
    std::vector<Move> rest = Find(next, tries, moves);
    if (rest.empty()) break;
    rest.insert(rest.begin(), reply);
    return rest;
  }
  return {};
}

std::vector<Move> MateScan::Find(const Position& position,
                                 const MoveList& first_moves, int moves) {
  if (moves > kMostMoves) return {};
  for (const Move move : first_moves) {
    const Position next = position.After(move);
    if (moves == 1 ? !IsCheckmate(next) : !IsMated(next, moves - 1)) continue;
    std::vector<Move> line = LineAfter(next, moves - 1);
    line.insert(line.begin(), move);
    if (exhausted_ || line.size() != 2U * static_cast<unsigned>(moves) - 1U) {
      return {};
    }
    return line;
  }
  return {};
}

}  // namespace assay
