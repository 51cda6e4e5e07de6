// Published mates: problems, and the ends of published games. Every position
// and source is from memory; the games' positions were reached by playing the
// remembered moves from the start. That a mate takes as many moves as was
// published, and no fewer, is checked here by trying everything, but for
// Loyd's, which takes that some eight seconds (done once: five, with one key).
#include <gtest/gtest.h>

#include <algorithm>

#include "assay/notation/fen.h"
#include "assay/proof/search.h"
#include "assay/rules/draw.h"
#include "tests/support/plain_mates.h"
#include "tests/support/printers.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

using testing_support::FromFen;

struct PublishedMate : testing_support::Row {
  const char* source;
  const char* fen;
  int moves;  // of the side to move
};

constexpr PublishedMate kMates[] = {
    {{"ProblemByMorphy"},
     "P. Morphy, New York Clipper 1856",
     "kbK5/pp6/1P6/8/8/8/8/R7 w - - 0 1",
     2},
    {{"ProblemByDunsany"},
     "Lord Dunsany, The Week-End Problems Book 1932",
     "RNBKQBNR/8/8/8/8/8/pppppppp/rnbqkbnr w - - 0 1",
     4},
    {{"ExcelsiorByLoyd"},
     "S. Loyd, London Era 1861",
     "n1rb4/1p3p1p/1p6/1R5K/8/p3p1PN/1PP1R3/N6k w - - 0 1",
     5},
    {{"FoolsMate"},
     "F. Beale, The Royall Game of Chesse-Play 1656",
     "rnbqkbnr/pppp1ppp/8/4p3/6P1/5P2/PPPPP2P/RNBQKBNR b KQkq - 0 2",
     1},
    {{"GrecoQueenGiven"},
     "G. Greco, manuscript of about 1620: 7.gxh7+",
     "rn1qkb1r/p1ppp2p/1p3nP1/7Q/3P4/3B4/PPP2PbP/RNB1K1NR w KQkq - 1 7",
     2},
    {{"GrecoBishopMates"},
     "G. Greco, manuscript of about 1620: 8.Bg6#",
     "rn1qkb1r/p1ppp2P/1p6/7n/3P4/3B4/PPP2PbP/RNB1K1NR w KQkq - 0 8",
     1},
    {{"GrecoSmothered"},
     "G. Greco, manuscript of about 1620: 12...Qg1+",
     "r1b2rk1/pppp1ppp/8/2b1P3/2B3n1/5N2/PP3qPP/RNBQR2K b - - 1 12",
     2},
    {{"GrecoKingDrawnOut"},
     "G. Greco, manuscript of about 1620: 12.Be6+",
     "r1b3nr/pppk2qp/1bnp4/4p1BQ/2BPP3/2P5/PP3PPP/RN3RK1 w - - 1 12",
     3},
    {{"Legal"},
     "Legal v Saint Brie, Paris 1750: 6.Bxf7+",
     "rn1qkbnr/ppp2p1p/3p2p1/4N3/2B1P3/2N5/PPPP1PPP/R1BbK2R w KQkq - 0 6",
     2},
    {{"Buckle"},
     "H. Buckle v an amateur, London 1840: Nf6+",
     "r2qkb1r/pp2nppp/3p4/2pNN1B1/2BnP3/3P4/PPP2PPP/R2bK2R w KQkq - 1 1",
     2},
    {{"SeaCadet"},
     "E. Falkbeer v an amateur, Vienna 1847: 9.Bxf7+",
     "r2qkbnr/ppp2ppp/3p4/4N3/2B1P3/2N5/PP3PPP/R1Bb1RK1 w kq - 0 9",
     2},
    {{"ImmortalGame"},
     "A. Anderssen v L. Kieseritzky, London 1851: 21.Nxg7+",
     "r1b1k1nr/p2p1ppp/n2B4/1p1NPN1P/6P1/3P1Q2/P1P1K3/q5b1 w kq - 2 21",
     3},
    {{"EvergreenGame"},
     "A. Anderssen v J. Dufresne, Berlin 1852: 21.Qxd7+",
     "1r2k1r1/pbppnp1p/1b3P2/8/Q7/B1PB1q2/P4PPP/3R2K1 w - - 0 21",
     4},
    {{"EvergreenGameLater"},
     "A. Anderssen v J. Dufresne, Berlin 1852: 22.Bf5+",
     "1r4r1/pbpknp1p/1b3P2/8/8/B1PB1q2/P4PPP/3R2K1 w - - 0 22",
     3},
    {{"Boden"},
     "R. Schulder v S. Boden, London 1853: 14...Qxc3+",
     "2k1rb1r/ppp3pp/2n2q2/3B1b2/5P2/2P1BQ2/PP1N1P1P/2KR3R b - - 0 14",
     2},
    {{"Marache"},
     "N. Marache v P. Morphy, New York 1857: 20...Nde2#",
     "3r2k1/ppp2ppp/6Q1/b7/3n1B2/2p3n1/P4PPP/RN3RK1 b - - 0 20",
     1},
    {{"Paulsen"},
     "L. Paulsen v Blachy, New York 1857: Qd5+",
     "1rb4r/pkPp3p/1b1P3n/1Q6/N3Pp2/8/P1P3PP/7K w - - 1 1",
     2},
    {{"OperaGame"},
     "P. Morphy v Duke of Brunswick and Count Isouard, Paris 1858: 16.Qb8+",
     "4kb1r/p2n1ppp/4q3/4p1B1/4P3/1Q6/PPP2PPP/2KR4 w k - 0 16",
     2},
    {{"Lange"},
     "M. Lange v A. Anderssen, Breslau 1859: 19...Bg1+",
     "r3k3/ppp2pp1/8/2bpP2P/8/1B1p3Q/PPPP2PK/RNB1q3 b q - 6 19",
     3},
    {{"Steinitz"},
     "Reiner v W. Steinitz, Vienna 1860: 17...Qxh2+",
     "r5rk/ppp4p/3p4/2b2Q2/3pPP1q/2P2n2/PP3PRP/RNB4K b - - 2 17",
     2},
    {{"Zukertort"},
     "J. Zukertort v A. Anderssen, Breslau 1865: Qd8+",
     "r1b2k1r/ppp1bppp/8/1B1Q4/5q2/2P5/PPP2PPP/R3R1K1 w - - 1 1",
     2},
    {{"Neumann"},
     "G. Neumann v C. Mayet, Berlin 1866: Qxg6+",
     "5rkr/pp2Rp2/1b1p1Pb1/3P2Q1/2n3P1/2p5/P4P2/4R1K1 w - - 1 1",
     2},
    {{"Steel"},
     "R. Steel v an amateur, Calcutta 1886: Qg6+",
     "r4br1/3b1kpp/1q1P4/1pp1RP1N/p7/6Q1/PPB3PP/2KR4 w - - 1 1",
     2},
    {{"TraxlerFromFar"},
     "Reinisch v K. Traxler, Hostoun 1890: 14...Bd3+",
     "r2Nk2r/2pp2pp/b7/K1n1p3/3b4/1B6/PPPPQ1PP/RNB4R b kq - 0 14",
     4},
    {{"TraxlerNearer"},
     "Reinisch v K. Traxler, Hostoun 1890: 15...Na6+",
     "r2Nk2r/2pp2pp/8/2n1p3/1K1b4/1B1b4/PPPPQ1PP/RNB4R b kq - 2 15",
     3},
    {{"Traxler"},
     "Reinisch v K. Traxler, Hostoun 1890: 16...Nb4+",
     "r2Nk2r/2pp2pp/n7/4p3/K2b4/1B1b4/PPPPQ1PP/RNB4R b kq - 4 16",
     2},
    {{"Chigorin"},
     "M. Chigorin v W. Steinitz, Havana 1892: 32...Rxh2+",
     "8/pp2R2p/4Nkb1/3P1p2/1B5p/8/PP1rr2P/5R1K b - - 2 32",
     2},
    {{"Charousek"},
     "R. Charousek v J. Wollner, Kaschau 1893: 17.Qe8+",
     "r4k2/pppb1Pp1/2np3p/2b5/2B2Bnq/2N5/PP2Q1PP/4RR1K w - - 6 17",
     3},
    {{"Mieses"},
     "J. Mieses v Ohquist, Nuremberg 1895: 10.cxb7+",
     "r3kbnr/ppq1pppp/2P5/1B2N3/8/2N5/PPP2PPP/R1BbK2R w KQkq - 1 10",
     2},
    {{"Teed"},
     "F. Teed v E. Delmar, New York 1896: 7.Qxh5+",
     "rnbqkbn1/ppppp3/7r/6pp/3P1p2/3BP1B1/PPP2PPP/RN1QK1NR w KQq - 2 7",
     2},
    {{"Reti"},
     "R. Reti v S. Tartakower, Vienna 1910: 9.Qd8+",
     "rnb1kb1r/pp3ppp/2p5/4q3/4n3/3Q4/PPPB1PPP/2KR1BNR w kq - 0 9",
     3},
    {{"Kostic"},
     "Muhlock v B. Kostic, Cologne 1912: 7...Nf3#",
     "r1b1kbnr/pppp1Npp/8/8/3nq3/8/PPPPBP1P/RNBQKR2 b Qkq - 1 7",
     1},
    {{"LaskerKingHunt"},
     "Ed. Lasker v G. Thomas, London 1912: 17.Rh2+",
     "rn3r2/pbppq1p1/1p2pN2/8/3P2NP/6P1/PPP1BPk1/R3K2R w KQ - 3 17",
     2},
    {{"Nimzowitsch"},
     "A. Nimzowitsch v S. Alapin, St Petersburg 1914: 17.Qd8+",
     "r1b2k1r/1p2bppp/p1B2q2/8/8/8/PPPQ1P1P/2KRR3 w - - 1 17",
     2},
    {{"PolishImmortal"},
     "Glucksberg v M. Najdorf, Warsaw 1929: 21...Ne5+",
     "r4rk1/pp4pp/2p3n1/3p2N1/2P2PK1/3B2P1/PP5q/R1BQ1RN1 b - - 0 21",
     2},
    {{"Warren"},
     "Warren v J. Selman, by post 1930: 8...Nd3#",
     "r1b1k2r/ppppqppp/2n5/4n3/1PP2B2/5N2/1P1NPPPP/R2QKB1R b KQkq - 0 8",
     1},
    {{"Alekhine"},
     "A. Alekhine v Vasic, Banja Luka 1931: 10.Qxe6+",
     "r1bqk2r/p1pn1pp1/1p2pn1p/8/3P4/B1PB4/P1P1QPPP/R3K1NR w KQkq - 0 10",
     2},
    {{"PeruvianImmortal"},
     "E. Canal v an amateur, Budapest 1934: 13.Qxc6+",
     "2kr2nr/pp1n1ppp/2p1p3/8/1P1P1B2/2N2Q1P/1PPKBPP1/7q w - - 0 13",
     2},
    {{"Keres"},
     "P. Keres v E. Arlamowski, Szczawno-Zdroj 1950: 6.Nd6#",
     "r1bqkb1r/pp1npppp/2p2n2/8/4N3/5N2/PPPPQPPP/R1B1KB1R w KQkq - 3 6",
     1},
    {{"GameOfTheCentury"},
     "D. Byrne v R. Fischer, New York 1956: 39...Ne2+",
     "1Q6/5pk1/2p3p1/1p2N2p/1b5P/1b4n1/r5P1/2K5 b - - 11 39",
     3},
    {{"Fischer"},
     "R. Fischer v L. Miagmarsuren, Sousse 1967: 31.Qxh7+",
     "2r2qk1/r4p1p/b3pBpQ/n3P2P/p2p3R/P5P1/2p2PB1/R5K1 w - - 2 31",
     3},
};

// Nodes granted by the length of the mate: generous, for what is tested is that
// the length is right.
constexpr std::uint64_t kNodes[] = {0, 300, 5000, 80000, 500000, 3000000};
constexpr int kMostTried = 4;  // moves, by trying everything

class PublishedMates : public ::testing::TestWithParam<PublishedMate> {};

TEST_P(PublishedMates, TakesAsManyMovesAsPublished) {
  const PublishedMate& row = GetParam();
  const Position position = FromFen(row.fen);
  const int shortest =
      testing_support::ShortestMate(position, std::min(row.moves, kMostTried));
  EXPECT_EQ(shortest, row.moves <= kMostTried ? row.moves : 0) << row.source;
}

TEST_P(PublishedMates, AreFoundAtTheirLength) {
  const PublishedMate& row = GetParam();
  const Position position = FromFen(row.fen);
  SearchLimits limits;
  limits.nodes = kNodes[row.moves];
  const SearchResult found = Search(position, Weights(), limits);
  EXPECT_EQ(found.mate_in, row.moves * Sign(position.side_to_move()))
      << row.source;
  EXPECT_EQ(found.score_cp, 0);
  ASSERT_EQ(found.line.size(), 2U * static_cast<unsigned>(row.moves) - 1U);
  Position end = position;
  for (const Move move : found.line) {
    ASSERT_TRUE(IsLegal(end, move)) << ToFen(end);
    end = end.After(move);
  }
  EXPECT_TRUE(IsCheckmate(end)) << ToFen(end);
}

INSTANTIATE_TEST_SUITE_P(Table, PublishedMates, ::testing::ValuesIn(kMates),
                         testing_support::NameOfRow());

}  // namespace
}  // namespace assay
