#include "assay/plans/prove_plan.h"

#include <algorithm>
#include <tuple>

#include "assay/facts/claim_makers.h"
#include "assay/plans/first_step.h"
#include "assay/plans/stops.h"
#include "assay/rules/movegen.h"
#include "assay/terms/ledger.h"

namespace assay {
namespace {

// A plan of one move that leaves its side this much worse has not worked. Own
// reasoning: a fifth of a pawn is more than what one search and the next
// differ by in a quiet position.
constexpr Centipawns kBringsNothing = 20;

// Preparing moves that are tried before the plan is given up.
constexpr std::size_t kMostPreparing = 3;

// Steps after the first that are searched.
constexpr std::size_t kMostLaterSteps = 2;

Centipawns CountFor(const Position& position, Side side,
                    const Weights& weights) {
  return Sign(side) * ScoreOf(position, weights);
}

// Material that falls in a line is lost where the score drops by half a pawn:
// else it comes back after the end of the line, or is paid for. Own reasoning.
constexpr Centipawns kFelt = 50;

// What the side loses by the proof's line, which starts at the position, and
// could have kept with a score of `else_cp`.
Centipawns LossIn(const Position& position, Side side, const Proof& proof,
                  Centipawns else_cp) {
  const auto win = WinOf(position, Other(side), proof);
  if (!win.has_value()) return 0;
  if (win->mates()) return kMateScore;
  return else_cp - ScoreFor(proof, side) < kFelt ? 0 : win->spoils->gain;
}

class Prover {
 public:
  Prover(const Position& position, const Proof& best, const Inquiry& inquiry,
         Plan& plan)
      : position_(position),
        own_(position.side_to_move() == plan.side ? position
                                                  : position.AfterPass()),
        best_(best),
        inquiry_(inquiry),
        plan_(plan),
        to_move_(position.side_to_move() == plan.side) {}

  void Run() {
    const Proof proof =
        IsBest() ? best_ : ProveMove(own_, plan_.moves.front(), Part(2, 3));
    Take(proof);
    if (proof.line.size() < 2) return;  // it mates or is a draw at once
    if (Collapses(proof)) {
      GiveUp(proof);
    } else if (plan_.standing == Standing::kNeeds && !StillLoses()) {
      // Search sees an answer to what counting was afraid of.
      plan_.standing = Standing::kInTime;
      plan_.needed = Move();
      plan_.counter.clear();
    }
    if (plan_.standing == Standing::kInTime) SearchOn(proof.line[1]);
  }

  void RunFirstStep() {
    if (IsBest() || plan_.proof.complete) return;
    const Proof proof = ProveMove(own_, plan_.moves.front(), inquiry_);
    Take(proof);
    if (proof.line.size() >= 2 && Collapses(proof)) GiveUp(proof);
  }

 private:
  bool IsBest() const {
    return to_move_ && !best_.line.empty() &&
           best_.line.front() == plan_.moves.front();
  }

  void Take(const Proof& proof) {
    plan_.proof = proof;
    if (!to_move_) plan_.proof.line.insert(plan_.proof.line.begin(), Move());
  }

  void GiveUp(const Proof& proof) {
    if (FallsAnyway(proof)) {
      ComesTooLate(proof.line[1]);
    } else {
      StopOrPrepare(proof);
    }
  }

  Inquiry Part(std::uint64_t share, std::uint64_t of) const {
    Inquiry part = inquiry_;
    part.nodes = std::max<std::uint64_t>(1, inquiry_.nodes * share / of);
    return part;
  }

  Centipawns Loss(const Position& position, const Proof& proof) const {
    Centipawns else_cp = Sign(plan_.side) * ScoreOf(position, inquiry_.weights);
    if (to_move_ && &position == &own_) {
      else_cp = std::max(else_cp, ScoreFor(best_, plan_.side));
    }
    return LossIn(position, plan_.side, proof, else_cp);
  }

  // Whether the first step loses material, or a pawn's worth in all.
  bool Collapses(const Proof& proof) const {
    if (Loss(own_, proof) >= kLosesMaterial) return true;
    const Centipawns lost = Counted() - ScoreFor(proof, plan_.side);
    if (lost >= kLosesMaterial) return true;
    // A plan of one move is carried out by then, and has to have brought
    // something unless nothing else does either.
    return plan_.tempi() == 1 && to_move_ && lost >= kBringsNothing &&
           ScoreFor(best_, plan_.side) - ScoreFor(proof, plan_.side) >=
               kBringsNothing;
  }

  Centipawns Counted() const {
    return CountFor(position_, plan_.side, inquiry_.weights);
  }

  // What falls anyway is not the plan's doing.
  bool FallsAnyway(const Proof& proof) const {
    if (Loss(position_, best_) >= kLosesMaterial) {
      return !to_move_ ||
             ScoreFor(best_, plan_.side) - ScoreFor(proof, plan_.side) <
                 kLosesMaterial;
    }
    return Loss(own_, proof) < kLosesMaterial && to_move_ &&
           Counted() - ScoreFor(best_, plan_.side) >= kLosesMaterial;
  }

  // Whether the capture that counting was afraid of wins material after all,
  // though something else may be better still, or there is play for it.
  bool StillLoses() const {
    if (plan_.counter.empty()) return false;
    const Position after = own_.After(plan_.moves.front());
    const Move capture = plan_.counter.front();
    if (!IsLegal(after, capture)) return false;
    const Proof proof = ProveMove(after, capture, Part(1, 6));
    return LossIn(after, plan_.side, proof, kMateScore) >= kLosesMaterial;
  }

  void Counter(const std::vector<Move>& replies) {
    plan_.counter = replies;
    plan_.counter_from = 1;
  }

  void ComesTooLate(Move reply) {
    if (plan_.standing == Standing::kStopped) return;
    plan_.standing = Standing::kSlow;
    plan_.needed = Move();
    Counter({reply});
  }

  void StopOrPrepare(const Proof& proof) {
    const Move first = plan_.moves.front();
    const Move reply = proof.line[1];
    std::vector<Move> tries =
        PreparingMoves(own_, inquiry_.weights, first, reply, kMostPreparing);
    if (!plan_.needed.is_null()) {
      tries.erase(std::remove(tries.begin(), tries.end(), plan_.needed),
                  tries.end());
      tries.insert(tries.begin(), plan_.needed);
    }
    if (tries.size() > kMostPreparing) tries.resize(kMostPreparing);
    Counter({reply});
    plan_.needed = Move();
    plan_.standing = Standing::kStopped;
    // What costs no material is mended by none.
    if (Loss(own_, proof) < kLosesMaterial) return;
    for (const Move move : tries) {
      if (!Prepares(move)) continue;
      plan_.needed = move;
      plan_.standing = Standing::kNeeds;
      return;
    }
  }

  // Whether the plan's first step holds once the move has been made, by half of
  // the nodes at least that saw it fail.
  bool Prepares(Move move) const {
    const Proof alone = ProveMove(own_, move, Part(1, 6));
    if (Loss(own_, alone) >= kLosesMaterial) return false;
    const Position after = own_.After(move);
    if (after.InCheck()) return false;
    const Position next = after.AfterPass();
    if (!IsLegal(next, plan_.moves.front())) return false;
    Inquiry half = inquiry_;
    half.nodes = plan_.proof.nodes / 2;
    const Proof then = ProveMove(next, plan_.moves.front(), half);
    if (then.nodes < half.nodes && !then.complete) return false;
    return Loss(next, then) < kLosesMaterial;
  }

  // The steps after the first, each against the best reply to the one before.
  void SearchOn(Move reply) {
    const int before = MaterialBalance(own_, plan_.side);
    std::vector<Move> replies;
    Position at = own_.After(plan_.moves.front());
    const std::size_t most = std::min(plan_.moves.size(), kMostLaterSteps + 1);
    for (std::size_t i = 1; i < most; ++i) {
      replies.push_back(reply);
      at = at.After(reply);
      const Move step = plan_.moves[i];
      if (!IsLegal(at, step)) {
        // An answer that is check, or that a detour goes round, only delays.
        const std::vector<Move> rest(
            plan_.moves.begin() + static_cast<std::ptrdiff_t>(i),
            plan_.moves.end());
        if (at.InCheck() || HasSecondWay(at, plan_.side, rest)) return;
        return StopBy(replies);
      }
      const int won = MaterialBalance(at, plan_.side) - before;
      const Proof proof = ProveMove(at, step, Part(1, 6));
      const Centipawns lost = Loss(at, proof) - won;
      if (lost >= kLosesMaterial) {
        // What the reply threatens can be met first.
        if (at.InCheck()) return;
        const Proof waits = ProveMove(at, Move(), Part(1, 6));
        const Centipawns waiting = Loss(at, waits) - won;
        if (2 * waiting >= lost) return;
        return StopBy(replies);
      }
      if (proof.line.size() < 2) return;
      reply = proof.line[1];
      at = at.After(step);
    }
  }

  void StopBy(const std::vector<Move>& replies) {
    plan_.standing = Standing::kStopped;
    Counter(replies);
  }

  const Position& position_;
  const Position own_;
  const Proof& best_;
  const Inquiry& inquiry_;
  Plan& plan_;
  const bool to_move_;
};

// What a natural move is, the most natural first.
int Naturalness(const Position& position, Move move) {
  const Side side = position.side_to_move();
  if (move.type() == Move::Type::kCastling) return 0;
  const PieceKind kind = position.At(move.from()).kind();
  const bool from_home = RelativeRank(side, move.from()) == 0;
  if (kind == PieceKind::kKnight || kind == PieceKind::kBishop) {
    return from_home ? 0 : 2;
  }
  if (kind == PieceKind::kRook || kind == PieceKind::kQueen) {
    return from_home && RelativeRank(side, move.to()) <= 1 ? 1 : 2;
  }
  return kind == PieceKind::kPawn ? 3 : 4;
}

// Natural moves of the side to move that have nothing to do with the plan of
// the other side and lose nothing, the most natural first; at most `most`.
std::vector<Move> DevelopingMoves(const Position& position,
                                  const Weights& weights,
                                  const std::vector<Move>& rest,
                                  Bitboard targets, std::size_t most) {
  const std::vector<Move> answers = AnswersTo(position, rest, targets);
  const Side side = position.side_to_move();
  struct Natural {
    Move move;
    std::tuple<int, Centipawns, Square, Square> order;
  };
  std::vector<Natural> natural;
  MoveList moves;
  LegalMoves(position, moves);
  for (const Move move : moves) {
    if (!position.At(move.to()).empty() || move.is_promotion() ||
        move.type() == Move::Type::kEnPassant) {
      continue;
    }
    if (std::count(answers.begin(), answers.end(), move) > 0) continue;
    const Position after = position.After(move);
    if (after.InCheck()) continue;
    natural.push_back(
        {move,
         {Naturalness(position, move), -Sign(side) * ScoreOf(after, weights),
          Relative(side, move.from()), Relative(side, move.to())}});
  }
  std::sort(
      natural.begin(), natural.end(),
      [](const Natural& a, const Natural& b) { return a.order < b.order; });
  const Centipawns hangs = HangsBefore(position);
  std::vector<Move> found;
  for (const Natural& one : natural) {
    if (found.size() == most) break;
    if (CostOf(position, one.move, hangs) < kLosingStep) {
      found.push_back(one.move);
    }
  }
  return found;
}

// Ways of developing that a plan is tried against.
constexpr std::size_t kWaysToDevelop = 2;

// An opponent who loses this much has overlooked a threat, not ignored a plan;
// but for the queen that a passed pawn becomes. A piece.
constexpr int kOverlooked = 300;

// An ignored plan has gained something if its side stands so much better by
// search than with best play from both now. Own reasoning: what two searches of
// a quiet position differ by.
constexpr Centipawns kGained = 10;

// What became of an ignored plan, and the score for its side that search gives
// to the end.
struct Outcome {
  Position end;  // of what is told
  IfIgnored ignored;
  Centipawns score = 0;
  int material() const { return ignored.material; }
};

// Plays the plan against an opponent who does nothing about it.
class Ignoring {
 public:
  Ignoring(const Position& position, const Inquiry& inquiry, const Plan& plan)
      : position_(position), inquiry_(inquiry), plan_(plan) {
    inquiry_.nodes =
        std::max<std::uint64_t>(1, inquiry.nodes / (2 * plan.moves.size() + 4));
  }

  // The opponent only waits. None where a step fails or the end is no better
  // than the start.
  std::optional<Outcome> AgainstWaiting() { return Play(0); }

  // It develops, the first time in the nth most natural way, from 1 on. None
  // also where there is none.
  std::optional<Outcome> AgainstDeveloping(std::size_t way) {
    return Play(way);
  }

 private:
  std::optional<Outcome> Play(std::size_t way) {
    const bool develops = way > 0;
    Outcome outcome{position_, {}, 0};
    std::vector<Move>& line = outcome.ignored.line;
    Position at = position_;
    std::size_t next = 0;
    while (next < plan_.moves.size()) {
      if (at.side_to_move() != plan_.side) {
        if (!Ignore(way, next, at, line)) return std::nullopt;
        if (develops) way = 1;
        continue;
      }
      const Move step = plan_.moves[next++];
      if (!IsLegal(at, step)) return std::nullopt;
      const int won = Balance(at);
      const Proof proof = ProveMove(at, step, inquiry_);
      const Centipawns counted = CountFor(at, plan_.side, inquiry_.weights);
      if (LossIn(at, plan_.side, proof, counted) - won >= kLosesMaterial) {
        return std::nullopt;
      }
      line.push_back(step);
      at = at.After(step);
    }
    outcome.end = at;
    if (!Ignore(way, next, at, line)) return std::nullopt;
    Harvest(at, outcome);
    if (outcome.material() == 0) line.pop_back();
    return outcome;
  }

  int Balance(const Position& at) const {
    return MaterialBalance(at, plan_.side) -
           MaterialBalance(position_, plan_.side);
  }

  bool Ignore(std::size_t way, std::size_t next, Position& at,
              std::vector<Move>& line) const {
    if (at.InCheck()) return false;
    Move move;
    if (way > 0) {
      // Once all is played, what it aims at is still left alone.
      const std::size_t from = std::min(next, plan_.moves.size() - 1);
      const std::vector<Move> rest(
          plan_.moves.begin() + static_cast<std::ptrdiff_t>(from),
          plan_.moves.end());
      const std::vector<Move> natural = DevelopingMoves(
          at, inquiry_.weights, rest, plan_.targets.ToSet(), way);
      if (natural.size() < way) return false;
      move = natural.back();
    }
    line.push_back(move);
    at = at.AfterStep(move);
    return HasLegalMove(at);
  }

  // What the side has now and wins, by search.
  void Harvest(const Position& at, Outcome& outcome) const {
    const Proof proof = Prove(at, inquiry_);
    outcome.score = ScoreFor(proof, plan_.side);
    const auto win = WinOf(at, plan_.side, proof);
    if (!win.has_value() || win->mates()) return;
    std::vector<Move> line = proof.line;
    line.resize(std::min(line.size(), win->spoils->shown_plies));
    const Position end = AfterLine(at, line);
    const int won = Balance(end);
    if (won < kLosesMaterial) return;
    outcome.end = end;
    outcome.ignored.material = won;
    std::vector<Move>& played = outcome.ignored.line;
    played.insert(played.end(), line.begin(), line.end());
  }

  const Position& position_;
  Inquiry inquiry_;
  const Plan& plan_;
};

// The opponent has had a move to ignore it with, and it has been worth it.
bool Gains(const Position& position, const Proof& best, Side side,
           const Outcome& outcome) {
  const std::size_t own_first = position.side_to_move() == side ? 1 : 0;
  return outcome.ignored.line.size() > own_first &&
         outcome.score - ScoreFor(best, side) >= kGained;
}

}  // namespace

void ProvePlan(const Position& position, const Proof& best,
               const Inquiry& inquiry, Plan& plan) {
  Prover(position, best, inquiry, plan).Run();
}

void ProveFirstStep(const Position& position, const Proof& best,
                    const Inquiry& inquiry, Plan& plan) {
  Prover(position, best, inquiry, plan).RunFirstStep();
}

void ProveIfIgnored(const Position& position, const Proof& best,
                    const Inquiry& inquiry, Plan& plan) {
  Inquiry half = inquiry;
  half.nodes = inquiry.nodes / 2;
  Inquiry quarter = inquiry;
  quarter.nodes = inquiry.nodes / 4;
  Ignoring ignoring(position, quarter, plan);
  const auto waits = ignoring.AgainstWaiting();
  if (!waits.has_value()) return;
  auto told = ignoring.AgainstDeveloping(1);
  if (!told.has_value() || !Gains(position, best, plan.side, *told)) return;
  // What falls without the plan is not its gain.
  const Side victim = Other(plan.side);
  const bool already = LossIn(position, victim, best,
                              CountFor(position, victim, inquiry.weights)) > 0;
  if ((waits->material() == 0 || already) && told->material() > 0) return;
  const bool may_queen =
      plan.kind == PlanKind::kPasser || plan.kind == PlanKind::kMajority;
  if (told->material() >= kOverlooked && !may_queen) return;
  for (std::size_t way = 2; way <= kWaysToDevelop; ++way) {
    const auto other = ignoring.AgainstDeveloping(way);
    if (!other.has_value() || other->material() < told->material() ||
        !Gains(position, best, plan.side, *other)) {
      return;
    }
  }
  // What is told is looked at more closely.
  told->score = ScoreFor(Prove(told->end, half), plan.side);
  if (!Gains(position, best, plan.side, *told)) return;
  plan.if_ignored = std::move(told->ignored);
}

}  // namespace assay
