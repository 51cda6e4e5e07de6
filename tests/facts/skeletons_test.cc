// Pawn skeletons that the handbooks teach, and what is true of each.
//
// Names of structures are common practice (Kmoch 1959, Soltis 1976, Flores
// Rios 2015). The answers are those of a program of some 60 lines that was
// written from the definitions alone, apart from this library, on lists of
// files and ranks.
#include <algorithm>
#include <string>
#include <vector>

#include "assay/facts/facts.h"
#include "assay/facts/levers.h"
#include "assay/facts/pawn_groups.h"
#include "gtest/gtest.h"
#include "tests/support/claims.h"
#include "tests/support/from_pieces.h"
#include "tests/support/printers.h"

namespace assay {
namespace {

// How the board is looked at, so that answers can be compared.
struct View {
  bool swapped = false;
  bool mirrored = false;

  Side SideOf(Side side) const { return swapped ? Other(side) : side; }
  Bitboard Squares(Bitboard set) const {
    Bitboard seen = 0;
    for (const Square square : Each(set)) {
      const Square flipped = swapped ? FlipRank(square) : square;
      seen |= Bit(mirrored ? FlipFile(flipped) : flipped);
    }
    return seen;
  }
};

class Answers {
 public:
  explicit Answers(const View& view) : view_(view) {}

  void Say(const std::string& text) { answers_.push_back(text); }
  void Squares(const std::string& what, Bitboard set) {
    if (set == 0) return;
    std::string text = what;
    for (const Square s : Each(view_.Squares(set))) text += ' ' + ToString(s);
    Say(text);
  }
  void Files(const std::string& what, Bitboard files) {
    if (files == 0) return;
    std::string text = what;
    for (const Square first : Each(view_.Squares(files) & kRank1)) {
      text += {' ', static_cast<char>('a' + FileOf(first))};
    }
    Say(text);
  }
  std::vector<std::string> Sorted() {
    std::sort(answers_.begin(), answers_.end());
    return answers_;
  }

 private:
  const View& view_;
  std::vector<std::string> answers_;
};

std::vector<std::string> Describe(const Position& position, const View& view) {
  const Facts facts(position);
  Answers answers(view);
  const PawnFacts& white = facts.Pawns(view.SideOf(Side::kWhite));
  const PawnFacts& black = facts.Pawns(view.SideOf(Side::kBlack));
  answers.Say(Name(facts.centre()));
  answers.Say("islands " + std::to_string(white.islands) + "/" +
              std::to_string(black.islands));
  answers.Squares("rams", white.rammed);
  answers.Squares("levers", white.levers);
  answers.Files("open", facts.OpenFiles());
  for (const Side named : kSides) {
    const Side side = view.SideOf(named);
    const PawnFacts& own = facts.Pawns(side);
    const std::string name = std::string(Name(named)) + ' ';
    answers.Files(name + "half-open", facts.HalfOpenFiles(side));
    answers.Squares(name + "doubled", own.doubled);
    answers.Squares(name + "isolated", own.isolated);
    answers.Squares(name + "backward", own.backward);
    answers.Squares(name + "passed", own.passed);
    answers.Squares(name + "hanging", HangingPair(facts, side));
    answers.Squares(name + "candidates", own.candidates);
    answers.Squares(name + "outposts", own.outposts);
    answers.Squares(name + "holes", own.holes);
    Bitboard breaks = 0;
    for (const LeverMove& move : FindLeverMoves(facts, side)) {
      breaks |= Bit(move.to);
    }
    answers.Squares(name + "breaks", breaks);
  }
  return answers.Sorted();
}

struct Skeleton : testing_support::Row {
  const char* pawns;
  const char* answers;  // rams and levers by White's pawns
};

constexpr Skeleton kSkeletons[] = {
    {{"Carlsbad"},
     "Kg1 a2 b2 d4 e3 f2 g2 h2 v "
     "Kg8 a7 b7 c6 d5 f7 g7 h7",
     "fixed; islands 2/2; rams d4; White half-open c; White holes d3; "
     "White breaks e4; Black half-open e; Black holes d6; Black breaks c5"},
    {{"IsolatedQueensPawn"},
     "Kg1 a2 b2 d4 f2 g2 h2 v "
     "Kg8 a7 b7 e6 f7 g7 h7",
     "unresolved; islands 3/2; open c; White half-open e; "
     "White isolated d4; White holes d3 d4 d5; White breaks d5; "
     "Black half-open d; Black outposts d5; Black holes d6; Black breaks e5"},
    {{"HangingPawns"},
     "Kg1 a2 c4 d4 f2 g2 h2 v "
     "Kg8 a7 b7 e6 f7 g7 h7",
     "unresolved; islands 3/2; White half-open b e; White isolated a2; "
     "White hanging c4 d4; White candidates c4 d4; White holes c3 d3 c4 d4; "
     "White breaks d5; Black half-open c d; Black holes d6; "
     "Black breaks b5 e5"},
    {{"IsolatedCouple"},
     "Kg1 a2 c3 d4 f2 g2 h2 v "
     "Kg8 a7 b7 e6 f7 g7 h7",
     "unresolved; islands 3/2; White half-open b e; White isolated a2; "
     "White candidates d4; White holes c3 d3 c4; White breaks d5; "
     "Black half-open c d; Black holes d6; Black breaks e5"},
    {{"Stonewall"},
     "Kg1 a2 b2 c4 d4 e3 f2 g3 h2 v "
     "Kg8 a7 b7 c6 d5 e6 f5 g7 h7",
     "tension; islands 1/1; rams d4; levers c4; White outposts e5; "
     "White holes d3 f3; White breaks e4 g4; Black backward e6; "
     "Black holes e5 d6 e6; Black breaks f4 b5 c5 e5"},
    {{"FrenchChain"},
     "Kg1 a2 b2 c3 d4 e5 f2 g2 h2 v "
     "Kg8 a7 b7 c5 d5 e6 f7 g7 h7",
     "tension; islands 1/1; rams d4 e5; levers d4; White outposts d6; "
     "White holes d3; White breaks b4 c4; Black holes d6; Black breaks f6"},
    {{"FrenchChainWithoutCPawns"},
     "Kg1 a2 b2 d4 e5 f2 g2 h2 v "
     "Kg8 a7 b7 d5 e6 f7 g7 h7",
     "closed; islands 2/2; rams d4 e5; open c; White backward d4; "
     "White outposts d6; White holes d3 d4 d5; Black outposts d5; "
     "Black holes d6; Black breaks f6"},
    {{"KingsIndianChain"},
     "Kg1 a2 b2 c4 d5 e4 f2 g2 h2 v "
     "Kg8 a7 b7 c7 d6 e5 f7 g6 h7",
     "closed; islands 1/1; rams e4 d5; White holes d3 d4; "
     "White breaks f4 c5; Black outposts d4; Black holes f6; "
     "Black breaks b5 f5 c6"},
    {{"ModernBenoni"},
     "Kg1 a2 b2 d5 e4 f2 g2 h2 v "
     "Kg8 a7 b7 c5 d6 f7 g6 h7",
     "fixed; islands 2/2; rams d5; White half-open c; White outposts d5; "
     "White holes d3 d4; White breaks b4 e5; Black half-open e; "
     "Black backward d6; Black candidates c5; Black outposts d4; "
     "Black holes d5 d6 f6; Black breaks f5"},
    {{"ClosedBenoni"},
     "Kg1 a2 b2 c4 d5 e4 f2 g2 h2 v "
     "Kg8 a7 b7 c5 d6 e5 f7 g7 h7",
     "closed; islands 1/1; rams c4 e4 d5; White outposts d5; "
     "White holes d3 d4; White breaks b4 f4; Black backward d6; "
     "Black outposts d4; Black holes d5 d6; Black breaks b5 f5"},
    {{"MaroczyBind"},
     "Kg1 a2 b2 c4 e4 f2 g2 h2 v "
     "Kg8 a7 b7 d6 e7 f7 g6 h7",
     "mobile; islands 2/2; White half-open d; White holes d3 d4; "
     "White breaks c5 e5; Black half-open c; Black breaks b5 d5 f5"},
    {{"Hedgehog"},
     "Kg1 a2 b2 c4 e4 f3 g2 h2 v "
     "Kg8 a6 b6 d6 e6 f7 g7 h7",
     "mobile; islands 2/2; White half-open d; White holes d3 e3 d4; "
     "White breaks c5 e5; Black half-open c; Black holes b6 c6 d6; "
     "Black breaks b5 d5 f5"},
    {{"D4AgainstC6AndE6"},
     "Kg1 a2 b2 c4 d4 f2 g2 h2 v "
     "Kg8 a7 b7 c6 e6 f7 g7 h7",
     "unresolved; islands 2/2; White half-open e; White holes d3 d4; "
     "White breaks d5; Black half-open d; Black holes d6; "
     "Black breaks b5 c5 e5"},
    {{"SmallCentre"},
     "Kg1 a2 b2 c2 e4 f2 g2 h2 v "
     "Kg8 a6 b7 d6 e6 f7 g7 h7",
     "mobile; islands 2/2; White half-open d; White breaks e5; "
     "Black half-open c; Black holes b6 d6; Black breaks d5 f5"},
    {{"HoleOnD5"},
     "Kg1 a2 b2 c2 e4 f2 g2 h2 v "
     "Kg8 a6 b7 d6 e5 f7 g7 h7",
     "fixed; islands 2/2; rams e4; White half-open d; White outposts d5; "
     "White breaks f4; Black half-open c; Black backward d6; "
     "Black holes d5 b6 d6; Black breaks d5 f5"},
    {{"Dragon"},
     "Kg1 a2 b2 c2 e4 f2 g2 h2 v "
     "Kg8 a7 b7 d6 e7 f7 g6 h7",
     "mobile; islands 2/2; White half-open d; White breaks e5; "
     "Black half-open c; Black breaks d5 f5"},
    {{"OpenDFile"},
     "Kg1 a2 b2 c2 e4 f2 g2 h2 v "
     "Kg8 a7 b7 c6 e5 f7 g7 h7",
     "fixed; islands 2/2; rams e4; open d; White breaks f4; Black holes d6; "
     "Black breaks f5"},
    {{"DoubledCPawns"},
     "Kg1 a2 b2 c2 e4 f2 g2 h2 v "
     "Kg8 a7 b7 c6 c7 f7 g7 h7",
     "open; islands 2/2; open d; White candidates e4; Black half-open e; "
     "Black doubled c6 c7; Black breaks f5"},
    {{"ExchangeFrench"},
     "Kg1 a2 b2 c2 d4 f2 g2 h2 v "
     "Kg8 a7 b7 c7 d5 f7 g7 h7",
     "fixed; islands 2/2; rams d4; open e; White breaks c4; Black breaks c5"},
    {{"MobileCentre"},
     "Kg1 a2 c3 d4 e4 f2 g2 h2 v "
     "Kg8 a7 b7 c5 e7 f7 g6 h7",
     "tension; islands 2/2; levers d4; White half-open b; "
     "White isolated a2; White candidates d4; White holes c3 d3 c4; "
     "Black half-open d; Black breaks e5 f5"},
    {{"InitialPawns"},
     "Kg1 a2 b2 c2 d2 e2 f2 g2 h2 v "
     "Kg8 a7 b7 c7 d7 e7 f7 g7 h7",
     "unresolved; islands 1/1"},
};

class Skeletons : public ::testing::TestWithParam<Skeleton> {
 protected:
  const Position position_ = testing_support::FromPieces(GetParam().pawns);
  const std::vector<std::string> expected_ =
      testing_support::Parts(GetParam().answers);
};

TEST_P(Skeletons, AreDescribed) {
  EXPECT_EQ(Describe(position_, {}), expected_)
      << ::testing::PrintToString(position_);
}

TEST_P(Skeletons, AreTheSameForTheOtherSide) {
  EXPECT_EQ(Describe(SwapColours(position_), {true, false}), expected_);
}

TEST_P(Skeletons, AreTheSameOnTheOtherWing) {
  EXPECT_EQ(Describe(MirrorFiles(position_), {false, true}), expected_);
}

INSTANTIATE_TEST_SUITE_P(Positions, Skeletons, ::testing::ValuesIn(kSkeletons),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
