// Mates in two and three against a solver that tries everything. The positions
// are found by that solver in random and plausible games and among few-piece
// set-ups, the same ones on every machine.
#include <gtest/gtest.h>

#include <iterator>
#include <random>
#include <set>
#include <vector>

#include "assay/notation/fen.h"
#include "assay/proof/search.h"
#include "assay/rules/draw.h"
#include "tests/support/plain_mates.h"
#include "tests/support/plausible_play.h"
#include "tests/support/printers.h"
#include "tests/support/random_play.h"

namespace assay {
namespace {

// The most that a mate in two or three may take.
constexpr std::uint64_t kNodes = 300000;
constexpr int kEachKind = 60;
// A clock further on would bring the drawing rules in, which the solver does
// not know.
constexpr int kLatestClock = 90;

struct Mate {
  Position position;
  int moves;
};

// Distinct positions in which the side to move mates in exactly `moves`.
class Collection {
 public:
  explicit Collection(int moves) : moves_(moves) {}
  bool full() const { return mates_.size() == kEachKind; }
  const std::vector<Mate>& mates() const { return mates_; }

  void Offer(const Position& position) {
    if (full() || position.halfmove_clock() > kLatestClock ||
        testing_support::ShortestMate(position, moves_) != moves_ ||
        !known_.insert(position.hash()).second) {
      return;
    }
    mates_.push_back({position, moves_});
  }

 private:
  const int moves_;
  std::set<std::uint64_t> known_;
  std::vector<Mate> mates_;
};

// A king and two to four pieces against a king on the edge with up to three,
// White to move or, every second time, the same for Black; where by chance it
// is no position, the next one.
Position FewPieces(std::mt19937_64& random) {
  constexpr PieceKind kAttackers[] = {PieceKind::kQueen,  PieceKind::kRook,
                                      PieceKind::kRook,   PieceKind::kBishop,
                                      PieceKind::kKnight, PieceKind::kPawn};
  constexpr PieceKind kDefenders[] = {PieceKind::kRook, PieceKind::kBishop,
                                      PieceKind::kKnight, PieceKind::kPawn,
                                      PieceKind::kPawn};
  while (true) {
    ParsedPosition parsed;
    const auto put = [&](Side side, PieceKind kind) {
      const auto square = static_cast<Square>(random() % kSquares);
      if (parsed.board[square].empty()) {
        parsed.board[square] = Piece(side, kind);
      }
    };
    const auto edge = static_cast<Square>(random() % 8);
    parsed.board[random() % 2 == 0 ? edge : edge * 8] =
        Piece(Side::kBlack, PieceKind::kKing);
    put(Side::kWhite, PieceKind::kKing);
    for (std::uint64_t n = 2 + random() % 3; n > 0; --n) {
      put(Side::kWhite, kAttackers[random() % std::size(kAttackers)]);
    }
    for (std::uint64_t n = random() % 4; n > 0; --n) {
      put(Side::kBlack, kDefenders[random() % std::size(kDefenders)]);
    }
    const std::optional<Position> position = Position::FromParsed(parsed);
    if (!position.has_value()) continue;
    return random() % 2 == 0 ? *position : SwapColours(*position);
  }
}

std::vector<Mate> MatesOfFewPieces(int moves) {
  Collection found(moves);
  std::mt19937_64 random(2026);
  while (!found.full()) found.Offer(FewPieces(random));
  return found.mates();
}

std::vector<Mate> MatesOfRandomGames() {
  Collection found(2);
  for (std::uint64_t seed = 1; !found.full(); ++seed) {
    testing_support::PlayAtRandom(
        seed, 1000,
        [&](const Position& position, Move) { found.Offer(position); });
  }
  return found.mates();
}

std::vector<Mate> MatesOfPlausibleGames() {
  Collection found(2);
  for (std::uint64_t seed = 1; !found.full(); ++seed) {
    testing_support::PlayPlausibly(
        seed, 1000, [&](const Position& position) { found.Offer(position); });
  }
  return found.mates();
}

SearchResult Searched(const Position& position, std::uint64_t nodes = kNodes) {
  SearchLimits limits;
  limits.nodes = nodes;
  return Search(position, Weights(), limits);
}

// The line is legal, as long as the mate, and ends in it.
void ExpectMatingLine(const Position& position, const SearchResult& result,
                      std::size_t plies) {
  ASSERT_EQ(result.line.size(), plies) << ToFen(position);
  Position end = position;
  for (const Move move : result.line) {
    ASSERT_TRUE(IsLegal(end, move)) << ToFen(end);
    end = end.After(move);
  }
  EXPECT_TRUE(IsCheckmate(end)) << ToFen(position);
}

void ExpectMatesFound(const std::vector<Mate>& mates) {
  ASSERT_EQ(mates.size(), static_cast<std::size_t>(kEachKind));
  for (const Mate& mate : mates) {
    const SearchResult result = Searched(mate.position);
    EXPECT_EQ(result.mate_in, mate.moves * Sign(mate.position.side_to_move()))
        << ToFen(mate.position);
    ExpectMatingLine(mate.position, result,
                     2U * static_cast<unsigned>(mate.moves) - 1U);
  }
}

TEST(ExhaustiveMates, FewPiecesInTwo) { ExpectMatesFound(MatesOfFewPieces(2)); }

TEST(ExhaustiveMates, FewPiecesInThree) {
  ExpectMatesFound(MatesOfFewPieces(3));
}

TEST(ExhaustiveMates, RandomGames) { ExpectMatesFound(MatesOfRandomGames()); }

TEST(ExhaustiveMates, PlausibleGames) {
  ExpectMatesFound(MatesOfPlausibleGames());
}

// The side that is mated by force holds out as long as it can.
TEST(ExhaustiveMates, TheLosingSideHoldsOut) {
  int checked = 0;
  for (const Mate& mate : MatesOfFewPieces(3)) {
    MoveList tries;
    LegalMoves(mate.position, tries);
    for (const Move move : tries) {
      const Position lost = mate.position.After(move);
      if (!testing_support::IsMatedWithin(lost, 2)) continue;
      const SearchResult result = Searched(lost);
      EXPECT_EQ(result.mate_in, 2 * Sign(mate.position.side_to_move()))
          << ToFen(lost);
      ExpectMatingLine(lost, result, 4);
      ++checked;
      break;
    }
  }
  EXPECT_EQ(checked, kEachKind);
}

// The other way round: no mate is announced that is not there.
TEST(ExhaustiveMates, NoneIsAnnouncedThatIsNotThere) {
  std::mt19937_64 random(1845);
  constexpr std::uint64_t kFewNodes = 20000;
  int announced = 0;
  int none = 0;
  for (int i = 0; i < 400; ++i) {
    const Position position = FewPieces(random);
    const SearchResult result = Searched(position, kFewNodes);
    const int moves = result.mate_in * Sign(position.side_to_move());
    if (moves > 0 && moves <= 3) {
      ++announced;
      EXPECT_EQ(testing_support::ShortestMate(position, 3), moves)
          << ToFen(position);
    } else {
      ++none;
      EXPECT_EQ(testing_support::ShortestMate(position, 2), 0)
          << ToFen(position);
    }
  }
  EXPECT_GE(announced, 40);
  EXPECT_GE(none, 40);
}

}  // namespace
}  // namespace assay
