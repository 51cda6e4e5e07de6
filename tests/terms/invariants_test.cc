// What holds of the ledger of every position, on 100,000 from random play.
#include <algorithm>
#include <ostream>
#include <tuple>
#include <vector>

#include "assay/facts/claim_lists.h"
#include "gtest/gtest.h"
#include "tests/support/claims.h"
#include "tests/support/ledgers.h"
#include "tests/support/questions.h"
#include "tests/support/random_play.h"

namespace assay {
namespace {

using testing_support::LedgerOf;
using testing_support::PlayAtRandom;

constexpr int kPositions = 25000;  // a seed; there are four

// An entry as far as it can be compared.
struct Seen {
  TermId term;
  Side side;
  Centipawns value_cp;
  Bitboard squares;

  auto Key() const { return std::tie(term, side, value_cp, squares); }
  friend bool operator<(const Seen& a, const Seen& b) {
    return a.Key() < b.Key();
  }
  friend bool operator==(const Seen& a, const Seen& b) {
    return a.Key() == b.Key();
  }
  friend void PrintTo(const Seen& seen, std::ostream* out) {
    *out << Info(seen.term).name << ' ' << Name(seen.side) << ' '
         << seen.value_cp;
    for (const Square square : Each(seen.squares)) {
      *out << ' ' << ToString(square);
    }
  }
};

template <class Map>
std::vector<Seen> AllSeen(const Ledger& ledger, Map map) {
  std::vector<Seen> seen;
  for (const Entry& entry : ledger.entries) seen.push_back(map(entry));
  std::sort(seen.begin(), seen.end());
  return seen;
}

Seen AsItIs(const Entry& entry) {
  return {entry.term, entry.side, entry.value_cp, entry.squares};
}

Bitboard FlipFiles(Bitboard set) {
  Bitboard flipped = 0;
  for (const Square square : Each(set)) flipped |= Bit(FlipFile(square));
  return flipped;
}

Position WithoutCastling(const Position& position) {
  return MirrorFiles(MirrorFiles(position));
}

class RandomLedgers : public ::testing::TestWithParam<int> {
 protected:
  // Calls check(position) until something has failed.
  template <class Check>
  void OnEach(int count, Check check) const {
    const auto visit = [&](const Position& position, Move /*next*/) {
      if (HasFailure()) return;
      SCOPED_TRACE(::testing::PrintToString(position));
      check(position);
    };
    PlayAtRandom(static_cast<std::uint64_t>(GetParam()), count, visit);
  }
};

TEST_P(RandomLedgers, AddUpToTheScoreOfBothPaths) {
  OnEach(kPositions, [](const Position& position) {
    const Ledger ledger = LedgerOf(position);
    Centipawns sum = 0;
    for (const Entry& entry : ledger.entries) sum += entry.value_cp;
    EXPECT_EQ(sum, ledger.score_cp);
    EXPECT_EQ(ScoreOf(position, Weights()), sum);
  });
}

TEST_P(RandomLedgers, AreNegatedForTheOtherSide) {
  OnEach(kPositions, [](const Position& position) {
    const auto negated = [](const Entry& entry) {
      return Seen{entry.term, Other(entry.side), -entry.value_cp,
                  FlipRanks(entry.squares)};
    };
    const Ledger ledger = LedgerOf(position);
    const Ledger swapped = LedgerOf(SwapColours(position));
    EXPECT_EQ(AllSeen(swapped, AsItIs), AllSeen(ledger, negated));
    EXPECT_EQ(swapped.score_cp, -ledger.score_cp);
    EXPECT_EQ(swapped.claims.size(), ledger.claims.size());
  });
}

// A king on d1, or a queen there, is another thing than one on e1: these two
// terms are about start squares, and are left out.
std::vector<Entry> WithoutStartSquares(const Ledger& ledger) {
  std::vector<Entry> kept;
  for (const Entry& entry : ledger.entries) {
    if (entry.term != TermId::kUncastled && entry.term != TermId::kEarlyQueen) {
      kept.push_back(entry);
    }
  }
  return kept;
}

TEST_P(RandomLedgers, AreTheSameOnTheOtherWing) {
  OnEach(kPositions, [](const Position& position) {
    const auto mirrored = [](const Entry& entry) {
      return Seen{entry.term, entry.side, entry.value_cp,
                  FlipFiles(entry.squares)};
    };
    Ledger there = LedgerOf(MirrorFiles(position));
    Ledger here = LedgerOf(WithoutCastling(position));
    there.entries = WithoutStartSquares(there);
    here.entries = WithoutStartSquares(here);
    EXPECT_EQ(AllSeen(there, AsItIs), AllSeen(here, mirrored));
  });
}

TEST_P(RandomLedgers, HaveNoEntryWithoutValueOrClaim) {
  OnEach(kPositions, [](const Position& position) {
    const Ledger ledger = LedgerOf(position);
    std::size_t next_claim = 0;
    for (const Entry& entry : ledger.entries) {
      EXPECT_NE(entry.value_cp, 0) << Info(entry.term).name;
      EXPECT_GE(entry.claim_count, 1U) << Info(entry.term).name;
      EXPECT_EQ(entry.first_claim, next_claim) << Info(entry.term).name;
      next_claim += entry.claim_count;
    }
    EXPECT_EQ(next_claim, ledger.claims.size());
  });
}

TEST_P(RandomLedgers, ClaimOnlyWhatHolds) {
  OnEach(kPositions, [](const Position& position) {
    const Ledger ledger = LedgerOf(position);
    const std::vector<Claim> all = AllClaims(Facts(position));
    for (const Claim& claim : ledger.claims) {
      if (testing_support::TakesAQuestion(claim.kind)) {
        continue;
      }
      EXPECT_NE(std::find(all.begin(), all.end(), claim), all.end())
          << ToString(claim);
    }
  });
}

// Weights far from the defaults, so that no sign is taken for granted.
Weights OddWeights() {
  Weights weights;
  int value = 1;
  for (const WeightField& field : WeightFields()) {
    weights.*(field.field) = {value, -3 * value};
    value = value > 0 ? -value - 4 : -value + 3;
  }
  weights.knight_pawns = {0, 25};
  weights.rook_pawns = {0, -25};
  return weights;
}

TEST_P(RandomLedgers, KeepTheSumAndTheMirrorWithOddWeights) {
  const Weights weights = OddWeights();
  OnEach(kPositions / 5, [&weights](const Position& position) {
    const auto negated = [](const Entry& entry) {
      return Seen{entry.term, Other(entry.side), -entry.value_cp,
                  FlipRanks(entry.squares)};
    };
    const Ledger ledger = LedgerOf(position, weights);
    EXPECT_EQ(ScoreOf(position, weights), ledger.score_cp);
    EXPECT_EQ(AllSeen(LedgerOf(SwapColours(position), weights), AsItIs),
              AllSeen(ledger, negated));
  });
}

INSTANTIATE_TEST_SUITE_P(Seeds, RandomLedgers, ::testing::Range(11, 15));

// FIDE Laws of Chess 5.2.2 (number from memory): dead by material.
TEST(DeadPosition, ScoresExactlyNothing) {
  for (const char* fen :
       {"4k3/8/8/8/8/8/8/4K3 w - -", "4k3/8/8/8/8/8/8/4KB2 w - -",
        "4k3/8/8/8/8/5N2/8/4K3 b - -", "2b1k3/8/8/8/8/8/8/4KB2 w - -"}) {
    EXPECT_EQ(ScoreOf(testing_support::FromFen(fen), Weights()), 0) << fen;
  }
}

TEST(DeadPosition, IsNotClaimedWhereAMateExists) {
  for (const char* fen :
       {"4kb2/8/8/8/8/8/8/4KB2 w - -", "4k3/8/8/8/8/8/8/1N2K1N1 w - -",
        "1n2k3/8/8/8/8/8/8/4K1N1 w - -"}) {
    const Position position = testing_support::FromFen(fen);
    for (const Entry& entry : LedgerOf(position).entries) {
      EXPECT_NE(entry.term, TermId::kDeadPosition) << fen;
    }
  }
}

}  // namespace
}  // namespace assay
