// What the explainer asks of bounded search. Each answer carries its proof.
//
// Scores and mates in a Proof are White's view, as everywhere; gains and
// losses are the view of the side that they are about.
#ifndef ASSAY_PROOF_QUESTIONS_H_
#define ASSAY_PROOF_QUESTIONS_H_

#include <optional>
#include <vector>

#include "assay/proof/search.h"
#include "assay/proof/spoils.h"

namespace assay {

// What bounded search found: the score or mate, best play, depth, nodes.
using Proof = SearchResult;

// How much may be searched for one question, and by which weights.
struct Inquiry {
  const Weights& weights;
  std::uint64_t nodes = kDefaultSearchNodes;
  const std::atomic<bool>* cancelled = nullptr;
  // What all searches that share this counter may still visit between them;
  // each takes off what it visited. Null: no limit but each one's own.
  std::uint64_t* left = nullptr;
};

// What a mate counts as where scores must be compared, and where its last
// moves cannot be shown: far beyond any verdict's cut-off.
inline constexpr Centipawns kMateScore = 10000;

// The proof's score for the side; mates count as kMateScore, nearer ones more.
Centipawns ScoreFor(const Proof& proof, Side side);

// The score and best line of the position. A mate whose line does not reach it
// is given as a score, so that every mate_in can be played through; a side that
// can never win (CannotWin, facts/textbook_endings.h) gets no more than the
// count gives it, and one that wins for certain (IsLucena) no less.
Proof Prove(const Position& position, const Inquiry& inquiry,
            Move excluded = Move());

// Something that a side wins against the best defence.
struct Win {
  Proof proof;                   // of the line from the position
  std::vector<Move> line;        // a pass first where the side is not to move
  std::optional<Spoils> spoils;  // none where it mates
  bool mates() const { return proof.mate_in != 0; }
};

// The score and line after the legal move (or pass, not in check), as a proof
// of the position: its line has the move first.
Proof ProveMove(const Position& position, Move move, const Inquiry& inquiry);

// What the side has won at the end of the proof's line, which starts at the
// position; none where it wins less than a pawn, and no mate.
std::optional<Win> WinOf(const Position& position, Side side, Proof proof);

// What the side would win if it were to move now: material worth a pawn or
// more, or mate. None in check for the side that is not to move, as no pass is
// legal; none where it wins nothing.
std::optional<Win> FindThreat(const Position& position, Side side,
                              const Inquiry& inquiry);

// Whether the side, or the side after a pass, wins material or mates however
// the opponent plays where both count nothing but material: what one may give
// up for play elsewhere is not won.
bool IsForced(const Position& position, Side side, const Inquiry& inquiry);

// What the opponent's best reply to the legal move wins; none where it wins
// nothing. The line has the move first.
std::optional<Win> WhatItAllows(const Position& position, Move move,
                                const Inquiry& inquiry);

// Whether the side wins at least `gain` (exchange values) against the best
// defence, the side to move beginning: mate counts as anything.
bool WinsAtLeast(const Position& position, Side side, int gain,
                 const Inquiry& inquiry, Win& win);

// Where a line first goes wrong: a side misses a reply that wins at least a
// minor piece more than the move of the line does, or a move is illegal.
struct LineFault {
  std::size_t ply = 0;
  bool illegal = false;
  Proof better;  // from the position before the ply; empty where illegal
};
// None for a sound line. Each move gets an equal share of the nodes.
std::optional<LineFault> FindFault(const Position& position,
                                   const std::vector<Move>& line,
                                   const Inquiry& inquiry);

// The legal moves after which the mover's score is at least `least_cp` (the
// mover's view), best first, each with its proof (from the position, the move
// first). One alone: the only move. Equal shares of the nodes.
struct Kept {
  Move move;
  Proof proof;
};
std::vector<Kept> MovesThatKeep(const Position& position, Centipawns least_cp,
                                const Inquiry& inquiry);

}  // namespace assay

#endif  // ASSAY_PROOF_QUESTIONS_H_
