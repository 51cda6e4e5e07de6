// Candidates are few and cheap to find; each gets a small search first, and
// those that seem to fail a larger one.
#include "assay/proof/temptations.h"

#include <algorithm>

#include "assay/facts/danger.h"
#include "assay/facts/exchange.h"
#include "assay/facts/facts.h"
#include "assay/rules/movegen.h"
#include "assay/terms/ledger.h"

namespace assay {
namespace {

// Less is a matter of taste, and of the small search's depth.
constexpr Centipawns kLeastLoss = 120;
constexpr std::size_t kMostCandidates = 10;

struct Candidate {
  Move move;
  Appeal appeal = Appeal::kDevelops;
  Centipawns looks = 0;  // the count after it, mover's view
};

std::optional<Appeal> AppealOf(const Position& position, const Facts& facts,
                               Move move, const Position& after) {
  const Side side = position.side_to_move();
  if (!position.At(move.to()).empty()) return Appeal::kCaptures;
  if (after.InCheck()) return Appeal::kChecks;
  if (move.type() == Move::Type::kCastling) return Appeal::kCastles;
  if (Contains(UndevelopedPieces(facts, side), move.from())) {
    return Appeal::kDevelops;
  }
  return std::nullopt;
}

// What one look at the board refutes: the moved piece is simply taken.
bool IsPlainLoss(const Position& position, Move move, const Position& after) {
  const int taken = ExchangeValue(position.At(move.to()).kind());
  return ExchangeValueOf(after, move.to()) > taken;
}

// Natural moves, those that look best first.
std::vector<Candidate> FindCandidates(const Position& position, Move best,
                                      const Weights& weights) {
  const Facts facts(position);
  const Side side = position.side_to_move();
  MoveList moves;
  LegalMoves(position, moves);
  std::vector<Candidate> candidates;
  for (const Move move : moves) {
    if (move == best || move.is_promotion()) continue;
    const Position after = position.After(move);
    const auto appeal = AppealOf(position, facts, move, after);
    if (!appeal.has_value() || IsPlainLoss(position, move, after)) continue;
    candidates.push_back({move, *appeal, Sign(side) * ScoreOf(after, weights)});
  }
  std::stable_sort(
      candidates.begin(), candidates.end(),
      [](const Candidate& a, const Candidate& b) { return a.looks > b.looks; });
  if (candidates.size() > kMostCandidates) candidates.resize(kMostCandidates);
  return candidates;
}

// Whether both mate, or both win the same piece.
bool WinTheSame(const Win& a, const Win& b) {
  if (a.mates() || b.mates()) return a.mates() && b.mates();
  return a.spoils->start == b.spoils->start && a.spoils->kind == b.spoils->kind;
}

// Whether the same reply refutes another tempting move, and in the same way:
// one of them is enough to warn of it.
bool IsKnown(const TemptingMove& move, const std::vector<TemptingMove>& known) {
  return std::any_of(
      known.begin(), known.end(), [&](const TemptingMove& other) {
        return move.refutation.line[1] == other.refutation.line[1] &&
               WinTheSame(move.refutation, other.refutation);
      });
}

}  // namespace

std::vector<TemptingMove> FindTemptations(const Position& position,
                                          const Proof& best,
                                          const std::optional<Win>& threat,
                                          const Inquiry& inquiry) {
  std::vector<TemptingMove> tempting;
  if (best.line.empty()) return tempting;
  const Side side = position.side_to_move();
  const Centipawns best_cp = ScoreFor(best, side);
  const std::vector<Candidate> candidates =
      FindCandidates(position, best.line.front(), inquiry.weights);
  if (candidates.empty()) return tempting;
  Inquiry look = inquiry;  // half for a first look, half for those that fail
  look.nodes = inquiry.nodes / 2 / candidates.size();
  Inquiry proper = inquiry;
  proper.nodes = inquiry.nodes / 2 / kMostTemptations;
  const auto refute = [&](const Candidate& candidate,
                          const Inquiry& with) -> std::optional<TemptingMove> {
    auto win = WhatItAllows(position, candidate.move, with);
    // What was threatened anyway is not the move's fault.
    if (!win.has_value() || (threat.has_value() && WinTheSame(*win, *threat))) {
      return std::nullopt;
    }
    TemptingMove found{candidate.move, candidate.appeal, *std::move(win), 0};
    found.loss = best_cp - ScoreFor(found.refutation.proof, side);
    if (found.loss < kLeastLoss || IsKnown(found, tempting)) {
      return std::nullopt;
    }
    return found;
  };
  std::size_t looked_at = 0;
  for (const Candidate& candidate : candidates) {
    if (looked_at == kMostTemptations) break;
    if (!refute(candidate, look).has_value()) continue;
    ++looked_at;
    if (auto found = refute(candidate, proper)) {
      tempting.push_back(*std::move(found));
    }
  }
  std::stable_sort(tempting.begin(), tempting.end(),
                   [](const TemptingMove& a, const TemptingMove& b) {
                     return a.loss > b.loss;
                   });
  return tempting;
}

}  // namespace assay
