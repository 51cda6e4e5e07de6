#include "assay/proof/questions.h"

#include <algorithm>
#include <cstdlib>

#include "assay/facts/textbook_endings.h"
#include "assay/rules/draw.h"
#include "assay/rules/movegen.h"
#include "assay/terms/ledger.h"

namespace assay {
namespace {

// A side that misses this much has missed a minor piece, give or take the
// small change of position.
constexpr Centipawns kMissedPiece = 200;

// The proof as one of the position before the move. A mate keeps its number
// where the other side moved, and takes one move more where the mater did.
Proof WithFirst(Move first, Side mover, Proof proof) {
  if (proof.mate_in * Sign(mover) > 0 && !first.is_null()) {
    proof.mate_in += Sign(mover);
  }
  proof.line.insert(proof.line.begin(), first);
  return proof;
}

// What the textbooks know of every such position stands against a bounded
// search: a side that can never win has no more than the count gives it, and
// one that wins for certain no less.
void LimitByWhatIsKnown(const Position& position, const Inquiry& inquiry,
                        Proof& proof) {
  if (proof.mate_in != 0) return;
  const Facts facts(position);
  const Centipawns counted = ScoreOf(position, inquiry.weights);
  const Side ahead = proof.score_cp > 0 ? Side::kWhite : Side::kBlack;
  if (CannotWin(facts, ahead) && std::abs(counted) < std::abs(proof.score_cp)) {
    proof.score_cp = counted;
  }
  for (const Side side : kSides) {
    if (IsLucena(facts, side) &&
        counted * Sign(side) > proof.score_cp * Sign(side)) {
      proof.score_cp = counted;
    }
  }
}

// All weights nothing but the five of material.
const Weights& MaterialAlone() {
  static const Weights material = [] {
    Weights weights;
    for (const WeightField& field : WeightFields()) {
      weights.*field.field = Tapered{};
    }
    const Weights usual;
    for (Tapered Weights::*const unit :
         {&Weights::pawn, &Weights::knight, &Weights::bishop, &Weights::rook,
          &Weights::queen}) {
      weights.*unit = usual.*unit;
    }
    return weights;
  }();
  return material;
}

}  // namespace

std::optional<Win> WinOf(const Position& position, Side side, Proof proof) {
  Win win;
  win.line = proof.line;
  win.proof = std::move(proof);
  if (win.proof.mate_in != 0) {
    if (win.proof.mate_in * Sign(side) < 0) return std::nullopt;
    return win;
  }
  win.spoils = FindSpoils(position, win.line, side);
  if (!win.spoils.has_value()) return std::nullopt;
  return win;
}

Centipawns ScoreFor(const Proof& proof, Side side) {
  if (proof.mate_in == 0) return Sign(side) * proof.score_cp;
  const Centipawns size = kMateScore - std::abs(proof.mate_in);
  return proof.mate_in * Sign(side) > 0 ? size : -size;
}

Proof Prove(const Position& position, const Inquiry& inquiry, Move excluded) {
  SearchLimits limits;
  limits.nodes = inquiry.left == nullptr
                     ? inquiry.nodes
                     : std::min(inquiry.nodes, *inquiry.left);
  limits.cancelled = inquiry.cancelled;
  limits.excluded = excluded;
  Proof proof = Search(position, inquiry.weights, limits);
  if (inquiry.left != nullptr) {
    *inquiry.left -= std::min(*inquiry.left, proof.nodes);
  }
  // A mate is claimed with its moves or not at all.
  if (proof.mate_in != 0 && !IsCheckmate(AfterLine(position, proof.line))) {
    proof.score_cp = proof.mate_in > 0 ? kMateScore : -kMateScore;
    proof.mate_in = 0;
  }
  if (excluded.is_null()) LimitByWhatIsKnown(position, inquiry, proof);
  return proof;
}

Proof ProveMove(const Position& position, Move move, const Inquiry& inquiry) {
  const Side mover = position.side_to_move();
  const Position next = position.AfterStep(move);
  if (!HasLegalMove(next)) {
    Proof proof;
    proof.complete = true;
    if (next.InCheck()) proof.mate_in = Sign(mover);
    proof.line = {move};
    return proof;
  }
  return WithFirst(move, mover, Prove(next, inquiry));
}

std::optional<Win> FindThreat(const Position& position, Side side,
                              const Inquiry& inquiry) {
  if (position.side_to_move() == side) {
    return WinOf(position, side, Prove(position, inquiry));
  }
  if (position.InCheck() || !HasLegalMove(position)) return std::nullopt;
  return WinOf(position, side, ProveMove(position, Move(), inquiry));
}

std::optional<Win> WhatItAllows(const Position& position, Move move,
                                const Inquiry& inquiry) {
  return WinOf(position, Other(position.side_to_move()),
               ProveMove(position, move, inquiry));
}

bool IsForced(const Position& position, Side side, const Inquiry& inquiry) {
  const Inquiry count{MaterialAlone(), inquiry.nodes, inquiry.cancelled,
                      inquiry.left};
  return FindThreat(position, side, count).has_value();
}

bool WinsAtLeast(const Position& position, Side side, int gain,
                 const Inquiry& inquiry, Win& win) {
  std::optional<Win> found = WinOf(position, side, Prove(position, inquiry));
  if (!found.has_value()) return false;
  win = *std::move(found);
  return win.mates() || win.spoils->gain >= gain;
}

std::optional<LineFault> FindFault(const Position& position,
                                   const std::vector<Move>& line,
                                   const Inquiry& inquiry) {
  Inquiry share = inquiry;
  share.nodes = inquiry.nodes / (line.size() + 1);
  Position at = position;
  // From each ply's position, best play; a move is at fault where the position
  // after it is that much worse for its mover.
  for (std::size_t ply = 0; ply < line.size(); ++ply) {
    LineFault fault;
    fault.ply = ply;
    const bool pass = line[ply].is_null();
    fault.illegal = pass ? at.InCheck() : !IsLegal(at, line[ply]);
    if (fault.illegal) return fault;
    const Side mover = at.side_to_move();
    const Proof best = Prove(at, share);
    if (!best.line.empty() && best.line.front() != line[ply]) {
      const Proof played = ProveMove(at, line[ply], share);
      if (ScoreFor(best, mover) - ScoreFor(played, mover) >= kMissedPiece) {
        fault.better = best;
        return fault;
      }
    }
    at = at.AfterStep(line[ply]);
  }
  return std::nullopt;
}

std::vector<Kept> MovesThatKeep(const Position& position, Centipawns least_cp,
                                const Inquiry& inquiry) {
  MoveList moves;
  LegalMoves(position, moves);
  Inquiry share = inquiry;
  share.nodes = moves.empty() ? 0 : inquiry.nodes / moves.size();
  const Side mover = position.side_to_move();
  std::vector<Kept> kept;
  for (const Move move : moves) {
    Proof proof = ProveMove(position, move, share);
    if (ScoreFor(proof, mover) < least_cp) continue;
    kept.push_back({move, std::move(proof)});
  }
  std::stable_sort(kept.begin(), kept.end(),
                   [mover](const Kept& a, const Kept& b) {
                     return ScoreFor(a.proof, mover) > ScoreFor(b.proof, mover);
                   });
  return kept;
}

}  // namespace assay
