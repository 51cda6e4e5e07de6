// Counts of move sequences ("perft"), to depths that add up to some 880
// million sequences.
//
// All counts were computed by an independent generator. Those of depths 1 to 3
// or 4 of CastlesAndPins, RookEnding, InCheck, PawnOnSeventh and Middlegame and
// those of the three en passant positions were also read in a published list,
// all agreeing. That these positions are the ones to count is common practice,
// no source.
#include <cstdint>

#include "assay/rules/movegen.h"
#include "gtest/gtest.h"
#include "tests/support/printers.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

// Builds made to find other faults count only what is done in a moment.
#if defined(NDEBUG) && !defined(__SANITIZE_ADDRESS__) && \
    !defined(__SANITIZE_THREAD__)
constexpr std::uint64_t kMostSequences = 1'000'000'000;
#else
constexpr std::uint64_t kMostSequences = 500'000;
#endif

struct Count : testing_support::Row {
  const char* fen;
  int depth;
  std::uint64_t sequences;
};

constexpr char kInitial[] =
    "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq -";
constexpr char kCastlesAndPins[] =
    "r3k2r/p1ppqpb1/bn2pnp1/3PN3/1p2P3/2N2Q1p/PPPBBPPP/R3K2R w KQkq -";
constexpr char kRookEnding[] = "8/2p5/3p4/KP5r/1R3p1k/8/4P1P1/8 w - -";
constexpr char kInCheck[] =
    "r3k2r/Pppp1ppp/1b3nbN/nP6/BBP1P3/q4N2/Pp1P2PP/R2Q1RK1 w kq -";
constexpr char kInCheckMirrored[] =
    "r2q1rk1/pP1p2pp/Q4n2/bbp1p3/Np6/1B3NBn/pPPP1PPP/R3K2R b KQ -";
constexpr char kPawnOnSeventh[] =
    "rnbq1k1r/pp1Pbppp/2p5/8/2B5/8/PPP1NnPP/RNBQK2R w KQ -";
constexpr char kMiddlegame[] =
    "r4rk1/1pp1qppp/p1np1n2/2b1p1B1/2B1P1b1/P1NP1N2/1PP1QPPP/R4RK1 w - -";
constexpr char kPromotions[] = "n1n5/PPPk4/8/8/8/8/4Kppp/5N1N b - -";
constexpr char kPassantPinned[] = "1b1k4/8/8/1rPpK3/8/8/8/8 w - d6";
constexpr char kPassantOnlyReply[] = "8/8/8/1k6/3Pp3/8/8/4KQ2 b - d3";
constexpr char kPassantInCheck[] =
    "rnbqk1nr/bb3p1p/1q2r3/2pPp3/3P4/7P/1PP1NpPP/R1BQKBNR w KQkq c6";

constexpr Count kCounts[] = {
    {{"InitialDepth1"}, kInitial, 1, 20},
    {{"InitialDepth2"}, kInitial, 2, 400},
    {{"InitialDepth3"}, kInitial, 3, 8'902},
    {{"InitialDepth4"}, kInitial, 4, 197'281},
    {{"InitialDepth5"}, kInitial, 5, 4'865'609},
    {{"InitialDepth6"}, kInitial, 6, 119'060'324},
    {{"CastlesAndPinsDepth1"}, kCastlesAndPins, 1, 48},
    {{"CastlesAndPinsDepth2"}, kCastlesAndPins, 2, 2'039},
    {{"CastlesAndPinsDepth3"}, kCastlesAndPins, 3, 97'862},
    {{"CastlesAndPinsDepth4"}, kCastlesAndPins, 4, 4'085'603},
    {{"CastlesAndPinsDepth5"}, kCastlesAndPins, 5, 193'690'690},
    {{"RookEndingDepth1"}, kRookEnding, 1, 14},
    {{"RookEndingDepth2"}, kRookEnding, 2, 191},
    {{"RookEndingDepth3"}, kRookEnding, 3, 2'812},
    {{"RookEndingDepth4"}, kRookEnding, 4, 43'238},
    {{"RookEndingDepth5"}, kRookEnding, 5, 674'624},
    {{"RookEndingDepth6"}, kRookEnding, 6, 11'030'083},
    {{"RookEndingDepth7"}, kRookEnding, 7, 178'633'661},
    {{"InCheckDepth1"}, kInCheck, 1, 6},
    {{"InCheckDepth2"}, kInCheck, 2, 264},
    {{"InCheckDepth3"}, kInCheck, 3, 9'467},
    {{"InCheckDepth4"}, kInCheck, 4, 422'333},
    {{"InCheckDepth5"}, kInCheck, 5, 15'833'292},
    {{"InCheckMirroredDepth1"}, kInCheckMirrored, 1, 6},
    {{"InCheckMirroredDepth2"}, kInCheckMirrored, 2, 264},
    {{"InCheckMirroredDepth3"}, kInCheckMirrored, 3, 9'467},
    {{"InCheckMirroredDepth4"}, kInCheckMirrored, 4, 422'333},
    {{"InCheckMirroredDepth5"}, kInCheckMirrored, 5, 15'833'292},
    {{"PawnOnSeventhDepth1"}, kPawnOnSeventh, 1, 44},
    {{"PawnOnSeventhDepth2"}, kPawnOnSeventh, 2, 1'486},
    {{"PawnOnSeventhDepth3"}, kPawnOnSeventh, 3, 62'379},
    {{"PawnOnSeventhDepth4"}, kPawnOnSeventh, 4, 2'103'487},
    {{"PawnOnSeventhDepth5"}, kPawnOnSeventh, 5, 89'941'194},
    {{"MiddlegameDepth1"}, kMiddlegame, 1, 46},
    {{"MiddlegameDepth2"}, kMiddlegame, 2, 2'079},
    {{"MiddlegameDepth3"}, kMiddlegame, 3, 89'890},
    {{"MiddlegameDepth4"}, kMiddlegame, 4, 3'894'594},
    {{"MiddlegameDepth5"}, kMiddlegame, 5, 164'075'551},
    {{"PromotionsDepth1"}, kPromotions, 1, 24},
    {{"PromotionsDepth2"}, kPromotions, 2, 496},
    {{"PromotionsDepth3"}, kPromotions, 3, 9'483},
    {{"PromotionsDepth4"}, kPromotions, 4, 182'838},
    {{"PromotionsDepth5"}, kPromotions, 5, 3'605'103},
    {{"PromotionsDepth6"}, kPromotions, 6, 71'179'139},
    {{"PassantPinnedDepth1"}, kPassantPinned, 1, 5},
    {{"PassantPinnedDepth2"}, kPassantPinned, 2, 100},
    {{"PassantPinnedDepth3"}, kPassantPinned, 3, 555},
    {{"PassantOnlyReplyDepth1"}, kPassantOnlyReply, 1, 6},
    {{"PassantOnlyReplyDepth2"}, kPassantOnlyReply, 2, 121},
    {{"PassantOnlyReplyDepth3"}, kPassantOnlyReply, 3, 711},
    {{"PassantInCheckDepth1"}, kPassantInCheck, 1, 2},
    {{"PassantInCheckDepth2"}, kPassantInCheck, 2, 92},
    {{"PassantInCheckDepth3"}, kPassantInCheck, 3, 2'528},
};

class Perft : public ::testing::TestWithParam<Count> {};

TEST_P(Perft, HasItsCount) {
  if (GetParam().sequences > kMostSequences) {
    GTEST_SKIP() << "too many sequences for this kind of build";
  }
  EXPECT_EQ(
      assay::Perft(testing_support::FromFen(GetParam().fen), GetParam().depth),
      GetParam().sequences);
}

INSTANTIATE_TEST_SUITE_P(Positions, Perft, ::testing::ValuesIn(kCounts),
                         testing_support::NameOfRow());

TEST(Perft, IsOneAtDepthZero) {
  EXPECT_EQ(assay::Perft(Position::Initial(), 0), 1U);
}

}  // namespace
}  // namespace assay
