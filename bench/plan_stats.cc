// How good the told plans are, over middlegames of real games: which kinds come
// first and how often, whether their first steps lose material, and whether the
// players went on to play them.
//
//   build/bin/plan_stats < $ASSAY_DATA/games-300.pgn
//   build/bin/plan_stats POSITIONS NODES < GAMES.pgn
//   build/bin/plan_stats --self-check          on a game of our own
//
// A middlegame is a position of a game's main line from White's tenth move on
// that has six or more pieces besides pawns and kings, is no check, and from
// which each side has three more moves in the game. Of all of them, POSITIONS
// (500) are taken evenly, in the order of the file. NODES (the default budget
// of an explanation) go into each explanation, and again into each first step
// of a plan in time.
//
// What to look for: no kind but develop first for more than 35 % of the sides,
// nor in time for more than 60 %; at most 1 % of first steps that lose 100 or
// more; a player's next three moves contain a step of a plan for that side at
// least twice as often as three random moves do.
#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <iostream>
#include <iterator>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "assay/explain/assayer.h"
#include "assay/notation/pgn_reader.h"
#include "assay/plans/plan.h"
#include "assay/proof/questions.h"
#include "assay/rules/movegen.h"

namespace assay::bench {
namespace {

constexpr int kFirstMove = 10;
constexpr int kLeastPieces = 6;
constexpr std::size_t kMovesLooked = 3;
constexpr Centipawns kLosesMaterial = 100;
constexpr std::uint64_t kSeed = 20261126;

// A position of a game, and what each side played next.
struct Sample {
  Position position;
  std::array<std::vector<Move>, 2> next;  // by Index(side), kMovesLooked each
};

bool IsMiddlegame(const Position& position) {
  if (position.InCheck() || position.fullmove_number() < kFirstMove) {
    return false;
  }
  int pieces = 0;
  for (const Square square : Each(position.Occupied())) {
    const PieceKind kind = position.At(square).kind();
    pieces += kind != PieceKind::kPawn && kind != PieceKind::kKing ? 1 : 0;
  }
  return pieces >= kLeastPieces;
}

void AddMiddlegames(const GameTree& tree, std::vector<Sample>& samples) {
  std::vector<Move> moves;
  for (const NodeIndex node : tree.MainLine()) {
    moves.push_back(tree.nodes[static_cast<std::size_t>(node)].move);
  }
  Position at = tree.start;
  for (std::size_t ply = 0; ply + 2 * kMovesLooked <= moves.size(); ++ply) {
    if (IsMiddlegame(at)) {
      Sample sample{at, {}};
      for (std::size_t i = 0; i < 2 * kMovesLooked; ++i) {
        const Side side =
            i % 2 == 0 ? at.side_to_move() : Other(at.side_to_move());
        sample.next[Index(side)].push_back(moves[ply + i]);
      }
      samples.push_back(std::move(sample));
    }
    // A pass of an annotator ends the game for our purposes.
    if (moves[ply].is_null()) return;
    at = at.After(moves[ply]);
  }
}

std::vector<Sample> ReadSamples(std::string_view pgn, std::size_t wanted) {
  std::vector<Sample> all;
  PgnReader reader(pgn);
  while (const std::optional<PgnItem> item = reader.Next()) {
    if (item->ok()) AddMiddlegames(item->tree, all);
  }
  if (all.size() <= wanted) return all;
  std::vector<Sample> taken;
  for (std::size_t i = 0; i < wanted; ++i) {
    taken.push_back(all[i * all.size() / wanted]);
  }
  return taken;
}

// Xorshift with a fixed seed: any generator will do.
class Random {
 public:
  std::size_t Below(std::size_t bound) {
    state_ ^= state_ << 13U;
    state_ ^= state_ >> 7U;
    state_ ^= state_ << 17U;
    return static_cast<std::size_t>(state_ % bound);
  }

 private:
  std::uint64_t state_ = kSeed;
};

// As many different legal moves of the side as it has, at most kMovesLooked.
std::vector<Move> RandomMoves(const Position& position, Side side,
                              Random& random) {
  const Position own =
      position.side_to_move() == side ? position : position.AfterPass();
  MoveList legal;
  LegalMoves(own, legal);
  std::vector<Move> moves(legal.begin(), legal.end());
  const std::size_t count = std::min(kMovesLooked, moves.size());
  for (std::size_t i = 0; i < count; ++i) {
    std::swap(moves[i], moves[i + random.Below(moves.size() - i)]);
  }
  moves.resize(count);
  return moves;
}

bool IsStepOf(const Plan& plan, Move move) {
  return std::any_of(plan.moves.begin(), plan.moves.end(), [move](Move step) {
    return step.from() == move.from() && step.to() == move.to();
  });
}

bool Contains(const std::vector<const Plan*>& plans,
              const std::vector<Move>& moves) {
  for (const Plan* plan : plans) {
    for (const Move move : moves) {
      if (IsStepOf(*plan, move)) return true;
    }
  }
  return false;
}

// What the first step loses to the best reply, by so many nodes, that the best
// move would not lose as well.
bool FirstStepLoses(const Position& position, const Plan& plan,
                    const Inquiry& inquiry) {
  const Position own =
      position.side_to_move() == plan.side ? position : position.AfterPass();
  const Proof proof = ProveMove(own, plan.moves.front(), inquiry);
  const auto lost = WinOf(own, Other(plan.side), proof);
  if (!lost.has_value()) return false;
  if (!lost->mates() && lost->spoils->gain < kLosesMaterial) return false;
  const Proof best = Prove(own, inquiry);
  return ScoreFor(best, plan.side) - ScoreFor(proof, plan.side) >=
         kLosesMaterial;
}

struct Tally {
  long positions = 0;
  long sides = 0;
  long silent = 0;
  long no_plan_in_time = 0;
  std::array<long, kPlanKinds> first = {};
  std::array<long, kPlanKinds> in_time = {};  // sides with one of the kind
  std::array<long, 4> standings = {};         // of plans
  long plans = 0;
  long proved_in_time = 0;
  long losing = 0;
  long played = 0;  // sides whose next moves contain a step of a plan
  long by_chance = 0;
  long told = 0;  // sides with a plan
};

void CountSide(const Sample& sample, Side side,
               const std::vector<const Plan*>& plans, const Inquiry& inquiry,
               Random& random, Tally& tally) {
  ++tally.sides;
  // Drawn for every side, so that other plans do not change the draw.
  const std::vector<Move> chance = RandomMoves(sample.position, side, random);
  if (plans.empty()) {
    ++tally.silent;
    ++tally.no_plan_in_time;
    return;
  }
  ++tally.told;
  ++tally.first[static_cast<std::size_t>(plans.front()->kind)];
  std::array<bool, kPlanKinds> in_time = {};
  for (const Plan* plan : plans) {
    ++tally.plans;
    ++tally.standings[static_cast<std::size_t>(plan->standing)];
    if (plan->standing != Standing::kInTime) continue;
    in_time[static_cast<std::size_t>(plan->kind)] = true;
    ++tally.proved_in_time;
    tally.losing += FirstStepLoses(sample.position, *plan, inquiry) ? 1 : 0;
  }
  for (std::size_t kind = 0; kind < in_time.size(); ++kind) {
    tally.in_time[kind] += in_time[kind] ? 1 : 0;
  }
  if (std::none_of(in_time.begin(), in_time.end(), [](bool x) { return x; })) {
    ++tally.no_plan_in_time;
  }
  tally.played += Contains(plans, sample.next[Index(side)]) ? 1 : 0;
  tally.by_chance += Contains(plans, chance) ? 1 : 0;
}

Tally Count(const std::vector<Sample>& samples, std::uint64_t nodes) {
  Tally tally;
  const Assayer assayer;
  const Inquiry inquiry{assayer.weights(), nodes, nullptr};
  ExplainOptions options;
  options.proof_nodes = nodes;
  Random random;
  for (const Sample& sample : samples) {
    ++tally.positions;
    const Explanation told = assayer.Explain(sample.position, options);
    for (const Side side : kSides) {
      std::vector<const Plan*> plans;
      for (const ToldPlan& plan : told.plans) {
        if (plan.plan.side == side) plans.push_back(&plan.plan);
      }
      CountSide(sample, side, plans, inquiry, random, tally);
    }
  }
  return tally;
}

double Percent(long part, long whole) {
  return whole == 0
             ? 0.0
             : 100.0 * static_cast<double>(part) / static_cast<double>(whole);
}

void Print(const Tally& tally) {
  std::printf("%ld positions, %ld sides, %ld plans\n", tally.positions,
              tally.sides, tally.plans);
  std::printf("sides without a plan %.1f %%, without one in time %.1f %%\n",
              Percent(tally.silent, tally.sides),
              Percent(tally.no_plan_in_time, tally.sides));
  std::printf("%-16s %9s %9s   (%% of sides)\n", "kind", "first", "in time");
  for (std::size_t kind = 0; kind < tally.first.size(); ++kind) {
    std::printf("%-16s %9.1f %9.1f\n", Name(static_cast<PlanKind>(kind)),
                Percent(tally.first[kind], tally.sides),
                Percent(tally.in_time[kind], tally.sides));
  }
  std::printf(
      "plans in time %.1f %%, slow %.1f %%, stopped %.1f %%, needing "
      "something %.1f %%\n",
      Percent(tally.standings[0], tally.plans),
      Percent(tally.standings[1], tally.plans),
      Percent(tally.standings[2], tally.plans),
      Percent(tally.standings[3], tally.plans));
  std::printf("first steps in time that lose material: %ld of %ld, %.2f %%\n",
              tally.losing, tally.proved_in_time,
              Percent(tally.losing, tally.proved_in_time));
  const double played = Percent(tally.played, tally.told);
  const double chance = Percent(tally.by_chance, tally.told);
  std::printf(
      "a step of a plan among the player's next three moves: %.1f %% of sides "
      "with a plan; among three random ones %.1f %%; ratio %.2f\n",
      played, chance, chance > 0 ? played / chance : 0.0);
}

// A game of our own, with a tenth move at which ten moves remain, the last of
// White's castling; the counts are seen by hand.
constexpr char kOwnGame[] =
    "[Result \"*\"]\n\n"
    "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. d3 d6 5. c3 Nf6 6. h3 h6 7. Nbd2 a6\n"
    "8. Bb3 Ba7 9. Nf1 O-O 10. Ng3 Re8 11. O-O Be6 12. Bc2 d5 *\n";

bool Expect(bool holds, const char* what) {
  if (!holds) std::cerr << "self-check: " << what << '\n';
  return holds;
}

bool SelfCheck() {
  bool good = true;
  const std::vector<Sample> samples = ReadSamples(kOwnGame, 500);
  good &= Expect(samples.size() == 1, "one middlegame with six moves to come");
  if (!good) return false;
  const Sample& sample = samples.front();
  const auto& white = sample.next[Index(Side::kWhite)];
  good &= Expect(white.size() == 3 && ToString(white[0].from()) == "f1" &&
                     ToString(white[1].to()) == "g1" &&
                     ToString(white[2].to()) == "c2",
                 "White's next moves are Ng3, O-O and Bc2");
  Plan plan;
  plan.moves = {white[2]};
  good &=
      Expect(Contains({&plan}, white), "a plan of the third move is played");
  good &= Expect(!Contains({&plan}, {white[0], white[1]}),
                 "it is not among the first two");
  Random random;
  const std::vector<Move> chance =
      RandomMoves(sample.position, Side::kBlack, random);
  const Position black = sample.position.AfterPass();
  good &= Expect(chance.size() == 3 && IsLegal(black, chance[0]) &&
                     IsLegal(black, chance[1]) && IsLegal(black, chance[2]) &&
                     chance[0] != chance[1] && chance[1] != chance[2] &&
                     chance[0] != chance[2],
                 "three different legal moves of the waiting side");
  const Weights weights;
  const Inquiry inquiry{weights, 2000, nullptr};
  plan.side = Side::kWhite;
  MoveList legal;
  LegalMoves(sample.position, legal);
  for (const Move move : legal) {
    // Bxf7+ gives a bishop for a pawn; Ng3 gives nothing.
    const bool gives =
        ToString(move.from()) == "b3" && ToString(move.to()) == "f7";
    if (!gives && move != white[0]) continue;
    plan.moves = {move};
    good &= Expect(FirstStepLoses(sample.position, plan, inquiry) == gives,
                   gives ? "Bxf7 loses material" : "Ng3 loses nothing");
  }
  const Tally tally = Count(samples, 2000);
  good &= Expect(tally.sides == 2 && tally.plans > 0, "plans are counted");
  long firsts = tally.silent;
  for (const long first : tally.first) firsts += first;
  good &= Expect(firsts == tally.sides, "each side has a first plan or none");
  return good;
}

int Run(int argc, char** argv) {
  if (argc > 1 && std::string_view(argv[1]) == "--self-check") {
    return SelfCheck() ? EXIT_SUCCESS : EXIT_FAILURE;
  }
  const long wanted = argc > 1 ? std::atol(argv[1]) : 500;
  const long nodes =
      argc > 2 ? std::atol(argv[2]) : static_cast<long>(kDefaultProofNodes);
  std::ios::sync_with_stdio(false);
  const std::string pgn{std::istreambuf_iterator<char>(std::cin), {}};
  if (wanted <= 0 || nodes <= 0) {
    std::cerr << "POSITIONS and NODES must be above 0\n";
    return EXIT_FAILURE;
  }
  const std::vector<Sample> samples =
      ReadSamples(pgn, static_cast<std::size_t>(wanted));
  if (samples.empty()) {
    std::cerr << "no middlegame was read\n";
    return EXIT_FAILURE;
  }
  Print(Count(samples, static_cast<std::uint64_t>(nodes)));
  return EXIT_SUCCESS;
}

}  // namespace
}  // namespace assay::bench

int main(int argc, char** argv) { return assay::bench::Run(argc, argv); }
