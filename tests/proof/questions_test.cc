// What the explainer asks of search, on positions of our own whose answers
// are plain to a player (common practice, no source).
#include "assay/proof/questions.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <atomic>

#include "assay/facts/kpk.h"
#include "assay/notation/fen.h"
#include "assay/notation/san.h"
#include "assay/proof/temptations.h"
#include "assay/rules/draw.h"
#include "assay/rules/movegen.h"
#include "tests/support/plausible_play.h"
#include "tests/support/printers.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

using testing_support::FromFen;

const Weights& DefaultWeights() {
  static const auto& weights = *new Weights();
  return weights;
}

Inquiry Asking(std::uint64_t nodes = 20000) {
  return {DefaultWeights(), nodes, nullptr};
}

std::vector<Move> Line(Position position, const char* sans) {
  std::vector<Move> line;
  std::string word;
  for (const char* c = sans;; ++c) {
    if (*c != ' ' && *c != '\0') {
      word += *c;
      continue;
    }
    if (!word.empty()) {
      line.push_back(*ParseSan(position, word));
      position = position.After(line.back());
      word.clear();
    }
    if (*c == '\0') return line;
  }
}

std::string Sans(const Position& position, const std::vector<Move>& line) {
  std::string text;
  for (const std::string& san : ToSan(position, line)) text += san + " ";
  return text;
}

// --- threats ---

struct ThreatRow : testing_support::Row {
  const char* fen;
  Side side;
  const char* line_start;  // "" where nothing is threatened
  int gain;                // 0 for mate
};

constexpr ThreatRow kThreats[] = {
    {{"KnightWillFork"},
     "r3k3/ppp2ppp/8/3N4/8/8/PP3PPP/4K3 b - - 0 1",
     Side::kWhite,
     "-- Nxc7+ ",
     175},
    {{"RookIsAttacked"},
     "4k3/ppp2ppp/8/8/6b1/8/PPP2PPP/3RK3 w - - 0 1",
     Side::kBlack,
     "-- Bxd1 ",
     175},
    {{"MateOnTheBackRank"},
     "6k1/5ppp/8/8/8/8/5PPP/R5K1 b - - 0 1",
     Side::kWhite,
     "-- Ra8# ",
     0},
    {{"NothingInSymmetry"},
     "4k3/ppp2ppp/8/8/8/8/PPP2PPP/4K3 b - - 0 1",
     Side::kWhite,
     "",
     0},
    {{"NoPassInCheck"},
     "4k3/8/8/8/8/8/4q3/R3K2n w - - 0 1",
     Side::kBlack,
     "",
     0},
    {{"TheMoversOwn"},
     "4k3/ppp2ppp/8/3n4/8/8/PPP2PPP/3RK3 w - - 0 1",
     Side::kWhite,
     "Rxd5 ",
     325},
};

class Threats : public ::testing::TestWithParam<ThreatRow> {};

TEST_P(Threats, AreWhatASideWouldWin) {
  const ThreatRow& row = GetParam();
  const Position position = FromFen(row.fen);
  const auto win = FindThreat(position, row.side, Asking());
  if (*row.line_start == '\0') {
    EXPECT_FALSE(win.has_value()) << Sans(position, win->line);
    return;
  }
  ASSERT_TRUE(win.has_value());
  const std::string line = Sans(position, win->line);
  EXPECT_EQ(line.compare(0, std::string(row.line_start).size(), row.line_start),
            0)
      << line;
  EXPECT_EQ(win->mates(), row.gain == 0);
  if (win->mates()) return;
  EXPECT_GE(win->spoils->gain, row.gain) << line;
}

INSTANTIATE_TEST_SUITE_P(Positions, Threats, ::testing::ValuesIn(kThreats),
                         testing_support::NameOfRow());

// --- what a move allows ---

TEST(WhatItAllows, NamesTheReply) {
  const Position position = FromFen("3r2k1/5ppp/8/8/8/8/1Q3PPP/6K1 w - - 0 1");
  const auto loses =
      WhatItAllows(position, Line(position, "Qd4").front(), Asking());
  ASSERT_TRUE(loses.has_value());
  EXPECT_EQ(Sans(position, loses->line).substr(0, 9), "Qd4 Rxd4 ");
  EXPECT_EQ(loses->spoils->gain, 975);
  EXPECT_EQ(loses->proof.line, loses->line);
}

TEST(WhatItAllows, CountsMateFromThePosition) {
  const Position position =
      FromFen("rnbqkbnr/pppp1ppp/8/4p3/8/5P2/PPPPP1PP/RNBQKBNR w KQkq e6 0 2");
  const auto mate =
      WhatItAllows(position, Line(position, "g4").front(), Asking());
  ASSERT_TRUE(mate.has_value());
  EXPECT_TRUE(mate->mates());
  EXPECT_EQ(mate->proof.mate_in, -1);
  EXPECT_EQ(Sans(position, mate->line), "g4 Qh4# ");
  const auto quiet =
      WhatItAllows(position, Line(position, "e4").front(), Asking());
  EXPECT_FALSE(quiet.has_value());
}

TEST(WhatItAllows, KnowsAMateGivenAtOnce) {
  const Position position = FromFen("6k1/5ppp/8/8/8/8/8/R5K1 w - - 0 1");
  EXPECT_FALSE(WhatItAllows(position, Line(position, "Ra8#").front(), Asking())
                   .has_value());
  // And a stalemate is no mate.
  const Position other = FromFen("7k/8/6K1/8/8/8/8/5Q2 w - - 0 1");
  EXPECT_FALSE(
      WhatItAllows(other, Line(other, "Qf7").front(), Asking()).has_value());
}

// --- claims of winning material ---

TEST(WinsAtLeast, AsksForTheBestDefence) {
  Win win;
  const Position fork = FromFen("q3k3/ppp2ppp/8/3N4/8/8/PP3PPP/4K3 w - - 0 1");
  EXPECT_TRUE(WinsAtLeast(fork, Side::kWhite, 600, Asking(), win));
  EXPECT_FALSE(WinsAtLeast(fork, Side::kWhite, 1200, Asking(), win));
  EXPECT_FALSE(WinsAtLeast(fork, Side::kBlack, 100, Asking(), win));
  // The knight looks loose, but its taker is mated on the back rank.
  const Position poisoned = FromFen("6k1/5ppp/8/3n4/8/8/r4PPP/3R2K1 w - - 0 1");
  EXPECT_FALSE(WinsAtLeast(poisoned, Side::kWhite, 325, Asking(), win));
}

// --- lines ---

struct LineRow : testing_support::Row {
  const char* fen;
  const char* line;
  int fault_at;  // -1: sound
};

constexpr LineRow kLines[] = {
    {{"BestPlay"},
     "q3k3/ppp2ppp/8/3N4/8/8/PP3PPP/4K3 w - - 0 1",
     "Nxc7+ Kd8 Nxa8",
     -1},
    {{"MissesTheQueen"},
     "q3k3/ppp2ppp/8/3N4/8/8/PP3PPP/4K3 w - - 0 1",
     "Nxc7+ Kd8 Nd5",
     2},
    {{"MissesTheFork"},
     "q3k3/ppp2ppp/8/3N4/8/8/PP3PPP/4K3 w - - 0 1",
     "Kd2",
     0},
    {{"OpponentMissesAKnight"},
     "4k3/ppp2ppp/8/8/3N4/8/PPP2PPP/r3K1N1 w - - 0 1",
     "Kd2 Rxg1",
     -1},
    {{"OpponentMissesIt"},
     "4k3/ppp2ppp/8/8/8/1P6/P1P1KPPP/1r4N1 b - - 0 1",
     "a6 Nf3",
     0},
    {{"Opening"},
     "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1",
     "e4 e5 Nf3 Nc6 Bb5 a6",
     -1},
};

class Lines : public ::testing::TestWithParam<LineRow> {};

TEST_P(Lines, AreSoundOrAtFault) {
  const Position position = FromFen(GetParam().fen);
  const std::vector<Move> line = Line(position, GetParam().line);
  const auto fault = FindFault(position, line, Asking(60000));
  if (GetParam().fault_at < 0) {
    EXPECT_FALSE(fault.has_value()) << fault->ply;
    return;
  }
  ASSERT_TRUE(fault.has_value());
  EXPECT_EQ(static_cast<int>(fault->ply), GetParam().fault_at);
  EXPECT_FALSE(fault->illegal);
  EXPECT_FALSE(fault->better.line.empty());
}

INSTANTIATE_TEST_SUITE_P(Positions, Lines, ::testing::ValuesIn(kLines),
                         testing_support::NameOfRow());

TEST(Lines, MayNotBeIllegal) {
  const Position position = Position::Initial();
  const auto fault =
      FindFault(position, {Move(kE2, kE4), Move(kE2, kE4)}, Asking(2000));
  ASSERT_TRUE(fault.has_value());
  EXPECT_TRUE(fault->illegal);
  EXPECT_EQ(fault->ply, 1U);
  // A pass in check.
  const Position checked = FromFen("4k3/8/8/8/8/8/4r3/4K3 w - - 0 1");
  const auto pass = FindFault(checked, {Move()}, Asking(2000));
  ASSERT_TRUE(pass.has_value());
  EXPECT_TRUE(pass->illegal);
}

// --- moves that keep ---

TEST(MovesThatKeep, FindTheOnlyOne) {
  // King and pawn against king: exactly the moves that the exact table calls
  // drawn.
  const Position position = FromFen("8/4k3/8/3KP3/8/8/8/8 b - - 0 1");
  MoveList legal;
  LegalMoves(position, legal);
  std::vector<Move> drawn;
  for (const Move move : legal) {
    const auto result = LookUpKpk(position.After(move));
    if (result.has_value() && !result->won) drawn.push_back(move);
  }
  const auto moves = MovesThatKeep(position, -50, Asking(60000));
  ASSERT_EQ(moves.size(), drawn.size());
  EXPECT_LT(drawn.size(), legal.size());
  for (const Kept& each : moves) {
    EXPECT_NE(std::find(drawn.begin(), drawn.end(), each.move), drawn.end());
  }
  // Taking back is the only way not to stay a rook down.
  const Position recapture =
      FromFen("4k3/pp3ppp/8/8/8/8/PP3PPP/3rK2R w K - 0 1");
  const auto kept = MovesThatKeep(recapture, -100, Asking(60000));
  ASSERT_FALSE(kept.empty());
  for (const Kept& each : kept) {
    EXPECT_EQ(each.move.to(), kD1) << ToCoordinates(each.move);
    EXPECT_EQ(each.proof.line.front(), each.move);
  }
}

TEST(MovesThatKeep, AreBestFirst) {
  const Position position =
      FromFen("q3k3/ppp2ppp/8/3N4/8/8/PP3PPP/4K3 w - - 0 1");
  const auto moves = MovesThatKeep(position, -2000, Asking(60000));
  ASSERT_EQ(static_cast<int>(moves.size()), CountLegalMoves(position));
  EXPECT_EQ(ToCoordinates(moves.front().move), "d5c7");
  EXPECT_TRUE(std::is_sorted(moves.begin(), moves.end(),
                             [](const Kept& a, const Kept& b) {
                               return ScoreFor(a.proof, Side::kWhite) >
                                      ScoreFor(b.proof, Side::kWhite);
                             }));
}

// --- temptations ---

struct TemptingRow : testing_support::Row {
  const char* fen;
  const char* move;
  const char* reply;
};

constexpr TemptingRow kTempting[] = {
    {{"CaptureForgetsTheBackRank"},
     "r2r2k1/5ppp/8/8/3b4/8/3R1PPP/3R2K1 w - - 0 1",
     "Rxd4",
     "Rxd4"},
    {{"CastlingLeavesThePawn"},
     "r2qkb1r/1b3ppp/p2ppn2/P7/2pNP1P1/2N1BP2/1PPQ3P/R3K2R w KQkq - 1 13",
     "O-O-O",
     "Qxa5"},
    {{"KnightTakesAndIsPinned"},
     "4k2r/ppp2ppp/8/4n3/8/5N2/PPP2PPP/4K2R w K - 0 1",
     "Nxe5",
     ""},
};

TEST(Temptations, FindNoneInQuietPlaces) {
  for (const char* fen :
       {"4k3/ppp2ppp/8/8/8/8/PPP2PPP/4K3 w - - 0 1",
        "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1",
        "8/8/3k4/8/8/3K4/3P4/8 w - - 0 1"}) {
    const Position position = FromFen(fen);
    const Proof best = Prove(position, Asking());
    EXPECT_TRUE(FindTemptations(position, best, std::nullopt, Asking()).empty())
        << fen;
  }
}

// Every temptation is natural, legal, not the best move, and really loses what
// it is said to by the line that is shown.
TEST(Temptations, FailToTheirRefutations) {
  int found = 0;
  testing_support::PlayPlausibly(61, 250, [&](const Position& position) {
    if (!HasLegalMove(position)) return;
    const Side side = position.side_to_move();
    const Proof best = Prove(position, Asking(4000));
    const auto threat = FindThreat(position, Other(side), Asking(1000));
    for (const TemptingMove& tempting :
         FindTemptations(position, best, threat, Asking(4000))) {
      ++found;
      ASSERT_TRUE(IsLegal(position, tempting.move));
      EXPECT_NE(tempting.move, best.line.front());
      const std::vector<Move>& line = tempting.refutation.line;
      ASSERT_GE(line.size(), 2U);
      EXPECT_EQ(line.front(), tempting.move);
      Position at = position;
      for (const Move move : line) {
        ASSERT_TRUE(IsLegal(at, move)) << ToFen(position);
        at = at.After(move);
      }
      if (tempting.refutation.mates()) {
        EXPECT_TRUE(IsCheckmate(at));
        EXPECT_EQ(at.side_to_move(), side);
      } else {
        EXPECT_GE(tempting.loss, 100);
      }
      const bool natural = !position.At(tempting.move.to()).empty() ||
                           position.After(tempting.move).InCheck() ||
                           tempting.appeal == Appeal::kDevelops ||
                           tempting.appeal == Appeal::kCastles;
      EXPECT_TRUE(natural);
    }
  });
  EXPECT_GE(found, 20);
}

class Tempting : public ::testing::TestWithParam<TemptingRow> {};

TEST_P(Tempting, AreFoundWithTheirReplies) {
  const TemptingRow& row = GetParam();
  const Position position = FromFen(row.fen);
  const Move move = Line(position, row.move).front();
  const Proof best = Prove(position, Asking());
  const auto threat =
      FindThreat(position, Other(position.side_to_move()), Asking());
  const auto tempting = FindTemptations(position, best, threat, Asking(60000));
  const auto found =
      std::find_if(tempting.begin(), tempting.end(),
                   [&](const TemptingMove& each) { return each.move == move; });
  if (*row.reply == '\0') {
    EXPECT_TRUE(found == tempting.end());
    return;
  }
  ASSERT_TRUE(found != tempting.end());
  EXPECT_EQ(ToSan(position.After(move), found->refutation.line[1]), row.reply);
}

INSTANTIATE_TEST_SUITE_P(Positions, Tempting, ::testing::ValuesIn(kTempting),
                         testing_support::NameOfRow());

// --- budgets ---

TEST(Questions, TakeAnyBudget) {
  const Position position = FromFen(
      "r1bq1rk1/pp3ppp/2n1pn2/2bp4/8/2NBPN2/PPP2PPP/R1BQ1RK1 w - - 0 8");
  const std::atomic<bool> cancelled{true};
  for (const std::uint64_t nodes :
       {std::uint64_t{0}, std::uint64_t{1}, std::uint64_t{4000000000}}) {
    const Inquiry inquiry{DefaultWeights(), nodes, &cancelled};
    const Proof proof = Prove(position, inquiry);
    EXPECT_FALSE(proof.complete);
    EXPECT_FALSE(proof.line.empty());
    FindTemptations(position, proof,
                    FindThreat(position, Side::kBlack, inquiry), inquiry);
    EXPECT_EQ(MovesThatKeep(position, -30000, inquiry).size(),
              static_cast<std::size_t>(CountLegalMoves(position)));
  }
}

}  // namespace
}  // namespace assay
