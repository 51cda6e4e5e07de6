// Weights as a file: round trip, fingerprint, and every way to get it wrong.
#include "assay/terms/weights.h"

#include <set>
#include <string>

#include "assay/terms/weights_text.h"
#include "gtest/gtest.h"
#include "tests/support/bad_input.h"
#include "tests/support/from_pieces.h"
#include "tests/support/ledgers.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

bool Same(const Weights& a, const Weights& b) {
  for (const WeightField& field : WeightFields()) {
    if (!(a.*(field.field) == b.*(field.field))) return false;
  }
  return true;
}

TEST(WeightFields, AreAllOfTheStructAndUnique) {
  std::set<std::string_view> names;
  for (const WeightField& field : WeightFields()) {
    EXPECT_TRUE(names.insert(field.name).second) << field.name;
  }
  // The struct is nothing but pairs: none may be missing from the list.
  EXPECT_EQ(WeightFields().size() * sizeof(Tapered), sizeof(Weights));
}

TEST(ParseWeights, ReadsWhatToTextWrites) {
  Weights weights;
  int value = -10000;
  for (const WeightField& field : WeightFields()) {
    weights.*(field.field) = {value, -value};
    value += 190;
  }
  const absl::StatusOr<Weights> read = ParseWeights(ToText(weights));
  ASSERT_TRUE(read.ok()) << read.status();
  EXPECT_TRUE(Same(*read, weights));
}

TEST(ParseWeights, KeepsDefaultsThatAreNotNamed) {
  const absl::StatusOr<Weights> read = ParseWeights("rook 510 520\n");
  ASSERT_TRUE(read.ok()) << read.status();
  Weights expected;
  expected.rook = {510, 520};
  EXPECT_TRUE(Same(*read, expected));
}

struct GoodText : testing_support::Row {
  const char* text;
  Tapered tempo;
};

constexpr GoodText kGoodTexts[] = {
    {{"Empty"}, "", Weights().tempo},
    {{"OnlyComments"}, "# nothing\n  # here\n", Weights().tempo},
    {{"CommentAfterAWeight"}, "tempo 1 2 # why", {1, 2}},
    {{"BlanksAndTabs"}, "\n  tempo\t1   2  \n\n", {1, 2}},
    {{"WindowsLineEnds"}, "tempo 1 2\r\nrook 500 500\r\n", {1, 2}},
    {{"Negative"}, "tempo -1 -2", {-1, -2}},
    {{"Limits"}, "tempo 10000 -10000", {10000, -10000}},
    {{"LeadingZeros"}, "tempo 0001 -002", {1, -2}},
};

class GoodTexts : public ::testing::TestWithParam<GoodText> {};

TEST_P(GoodTexts, AreRead) {
  const absl::StatusOr<Weights> read = ParseWeights(GetParam().text);
  ASSERT_TRUE(read.ok()) << read.status();
  Weights expected;
  expected.tempo = GetParam().tempo;
  EXPECT_TRUE(Same(*read, expected));
}

INSTANTIATE_TEST_SUITE_P(Texts, GoodTexts, ::testing::ValuesIn(kGoodTexts),
                         testing_support::NameOfRow());

struct BadText : testing_support::Row {
  std::string text;
  std::string faults;
};

constexpr char kShape[] = "not a name and two numbers";

const BadText kBadTexts[] = {
    {{"UnknownName"}, "horse 1 2", "weights line 1: no such weight"},
    {{"NameInUpperCase"}, "Tempo 1 2", "weights line 1: no such weight"},
    {{"NameAlone"}, "tempo", std::string("weights line 1: ") + kShape},
    {{"OneNumber"}, "tempo 1", std::string("weights line 1: ") + kShape},
    {{"ThreeNumbers"}, "tempo 1 2 3", std::string("weights line 1: ") + kShape},
    {{"Words"}, "tempo one two", std::string("weights line 1: ") + kShape},
    {{"Fraction"}, "tempo 1.5 2", std::string("weights line 1: ") + kShape},
    {{"PlusSign"}, "tempo +1 2", std::string("weights line 1: ") + kShape},
    {{"MinusAlone"}, "tempo - 2", std::string("weights line 1: ") + kShape},
    {{"EqualsSign"}, "tempo = 1 2", std::string("weights line 1: ") + kShape},
    {{"AboveTheLimit"}, "tempo 10001 2", "weights line 1: out of range"},
    {{"BelowTheLimit"}, "tempo 1 -10001", "weights line 1: out of range"},
    {{"BeyondAnyInteger"},
     "tempo 99999999999999999999 2",
     std::string("weights line 1: ") + kShape},
    {{"NamedTwice"},
     "tempo 1 2\ntempo 1 2",
     "weights line 2: weight named twice"},
    {{"NulByte"},
     std::string("tempo 1\0 2", 10),
     std::string("weights line 1: ") + kShape},
    {{"NotText"}, "\xff\xfe\x01", "weights line 1: no such weight"},
    {{"TooLong"}, std::string(kMostWeightsBytes + 1, ' '), "weights: too long"},
    {{"EveryFaultIsSaid"},
     "horse 1 2\n# fine\ntempo 1\nrook 1 2\nrook 1 2\npawn 0 20000\n",
     std::string("weights line 1: no such weight; weights line 3: ") + kShape +
         "; weights line 5: weight named twice; "
         "weights line 6: out of range"},
};

class BadTexts : public ::testing::TestWithParam<BadText> {};

TEST_P(BadTexts, AreRefusedWithEveryFault) {
  const absl::StatusOr<Weights> read = ParseWeights(GetParam().text);
  testing_support::ExpectFaults(read.status(), GetParam().faults);
}

INSTANTIATE_TEST_SUITE_P(Texts, BadTexts, ::testing::ValuesIn(kBadTexts),
                         testing_support::NameOfRow());

TEST(Fingerprint, ChangesWithEveryWeight) {
  std::set<std::string> fingerprints = {Fingerprint(Weights())};
  for (const WeightField& field : WeightFields()) {
    Weights midgame;
    (midgame.*(field.field)).midgame += 1;
    Weights endgame;
    (endgame.*(field.field)).endgame += 1;
    for (const Weights& weights : {midgame, endgame}) {
      const std::string fingerprint = Fingerprint(weights);
      EXPECT_EQ(fingerprint.size(), 16U);
      EXPECT_EQ(fingerprint.find_first_not_of("0123456789abcdef"),
                std::string::npos);
      EXPECT_TRUE(fingerprints.insert(fingerprint).second) << field.name;
    }
  }
}

// Positions of ours in which, together, every weight counts.
constexpr const char* kWithEveryWeight[] = {
    "Ke3 Qd1 a2 v Kg8 Qd8 a7",
    "r1b1k1n1/p1p3p1/2pp1p2/2P1pP1q/1B2P2P/P1N2BP1/P6Q/R3K1NR w - - 0 1",
    "4k1nr/1P4p1/2p2P2/q7/3pP1b1/P1n2P1P/1B4B1/RN2K1R1 w - - 0 1",
    "Kg2 Bc1 Bf1 Ra1 a2 b3 c4 d5 e6 f7 v Kh8 Rd8 Ne7 Nd6 h4",
    "Kg1 Qd1 Re1 e4 f2 h2 v Kg8 Qd8 Rf8 d6 e5 h7",
    "Kh1 Nb1 c3 d2 a7 v Kg8 Ra8 Qd8 Nf6 f3 g4",
    "Kg1 a2 c4 d4 f2 g2 h2 v Kg8 a7 b7 e6 f7 g7 h7",
    "Kg1 Bb5 Na4 Rd1 Rd7 c4 v Kh8 h7",
    "Ke1 Nd2 Qd1 v Kg8 Bb4 Qd8",
    "Kg1 Bh7 f2 v Kg7 Rh8 f7 g6",
    "Kg1 f2 g2 h2 v Kg8 Qh4 Ng4 Re8",
    "Ke6 e5 v Ke8",
    "Kb8 b7 Rc1 v Kd8 Ra2",
    "Kc3 Bd3 Ne3 v Kd6",
    "Kd6 a2 Bc1 v Kg8 e5 a7",
    "Kg1 Rd6 d3 e4 f2 g2 h2 v Kc8 Rh8 a7 c5 e5 g7",
};

TEST(EveryWeight, ChangesAScore) {
  for (const WeightField& field : WeightFields()) {
    Weights changed;
    changed.*(field.field) = changed.*(field.field) + Tapered{400, 400};
    bool differs = false;
    for (const char* text : kWithEveryWeight) {
      const Position position = testing_support::FromPieces(text);
      differs |= ScoreOf(position, changed) != ScoreOf(position, Weights());
    }
    EXPECT_TRUE(differs) << field.name;
  }
}

}  // namespace
}  // namespace assay
