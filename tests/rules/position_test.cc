// What has to hold of every position: checked along 100,000 positions of
// random games from a fixed seed.
#include "assay/rules/position.h"

#include <string>
#include <unordered_map>

#include "assay/notation/fen.h"
#include "assay/rules/movegen.h"
#include "gtest/gtest.h"
#include "tests/support/printers.h"
#include "tests/support/random_play.h"

namespace assay {
namespace {

constexpr int kPositions = 100'000;

bool HasFailed() { return ::testing::Test::HasFailure(); }

void ExpectBoardAndSetsAgree(const Position& position) {
  for (int s = 0; s < kSquares; ++s) {
    const auto square = static_cast<Square>(s);
    const Piece piece = position.At(square);
    ASSERT_EQ(Contains(position.Occupied(), square), !piece.empty());
    for (const Side side : kSides) {
      for (const PieceKind kind : kAllKinds) {
        ASSERT_EQ(Contains(position.Pieces(side, kind), square),
                  piece == Piece(side, kind));
      }
    }
  }
}

TEST(Position, MakingAndCopyingAgreeAndUnmakingRestores) {
  testing_support::PlayAtRandom(4, kPositions, [](const Position& p, Move) {
    if (HasFailed()) return;
    MoveList moves;
    LegalMoves(p, moves);
    Position in_place = p;
    for (const Move move : moves) {
      const Position copied = p.After(move);
      const Position::Undo undo = in_place.Make(move);
      ASSERT_EQ(in_place, copied) << ToFen(p);
      ASSERT_EQ(in_place.hash(), copied.hash()) << ToFen(p);
      in_place.Unmake(move, undo);
      ASSERT_EQ(in_place, p);
      ASSERT_EQ(in_place.hash(), p.hash());
      ASSERT_EQ(in_place.Occupied(), p.Occupied());
    }
    ExpectBoardAndSetsAgree(in_place);
  });
}

TEST(Position, HashKeptMoveByMoveIsTheHashFromScratch) {
  testing_support::PlayAtRandom(5, kPositions, [](const Position& p, Move) {
    if (HasFailed()) return;
    ASSERT_EQ(p.hash(), p.HashFromScratch()) << ToFen(p);
    ASSERT_EQ(p.hash(), testing_support::FromFen(ToFen(p)).hash());
  });
}

// The four fields of a FEN before the counters are what the repetition rule
// asks for (FIDE Laws 9.2.3, number from memory); 64 bits do not collide on so
// few.
TEST(Position, HashIsEqualExactlyForEqualPositions) {
  std::unordered_map<std::uint64_t, std::string> fields_of;
  std::unordered_map<std::string, std::uint64_t> hash_of;
  testing_support::PlayAtRandom(6, kPositions, [&](const Position& p, Move) {
    std::string fields = ToFen(p);
    fields.resize(fields.rfind(' ', fields.rfind(' ') - 1));
    EXPECT_EQ(fields_of.emplace(p.hash(), fields).first->second, fields);
    EXPECT_EQ(hash_of.emplace(fields, p.hash()).first->second, p.hash());
  });
  EXPECT_GT(hash_of.size(), 50'000U);
}

TEST(Position, WhatPlayReachesIsSound) {
  testing_support::PlayAtRandom(7, kPositions, [](const Position& p, Move) {
    if (HasFailed()) return;
    const std::optional<Position> again = Position::FromParsed(p.ToParsed());
    ASSERT_TRUE(again.has_value()) << ToFen(p);
    ASSERT_EQ(*again, p);
  });
}

TEST(Position, SwappingColoursTwiceChangesNothing) {
  testing_support::PlayAtRandom(8, kPositions, [](const Position& p, Move) {
    if (HasFailed()) return;
    const Position swapped = SwapColours(p);
    ASSERT_NE(swapped, p);
    ASSERT_EQ(SwapColours(swapped), p);
    ASSERT_EQ(swapped.hash(), swapped.HashFromScratch());
    ASSERT_EQ(swapped.side_to_move(), Other(p.side_to_move()));
    MoveList moves;
    LegalMoves(p, moves);
    ASSERT_EQ(static_cast<std::size_t>(CountLegalMoves(swapped)), moves.size());
    for (const Move move : moves) {
      ASSERT_EQ(swapped.At(FlipRank(move.from())).kind(),
                p.At(move.from()).kind());
    }
  });
}

TEST(Position, SwapsColoursOfEveryField) {
  EXPECT_EQ(ToFen(SwapColours(testing_support::FromFen(
                "rnbqk2r/ppp1pppp/8/3pP3/8/8/PPPP1PPP/RNBQKBNR w KQk d6 0 9"))),
            "rnbqkbnr/pppp1ppp/8/8/3Pp3/8/PPP1PPPP/RNBQK2R b Kkq d3 0 9");
}

TEST(Position, MirroringFilesTwiceOnlyLosesCastling) {
  testing_support::PlayAtRandom(9, kPositions, [](const Position& p, Move) {
    if (HasFailed()) return;
    const Position mirrored = MirrorFiles(p);
    ParsedPosition without_rights = p.ToParsed();
    without_rights.castling = CastlingRights();
    const Position plain = *Position::FromParsed(without_rights);
    ASSERT_TRUE(mirrored.castling().empty());
    ASSERT_EQ(MirrorFiles(mirrored), plain);
    ASSERT_EQ(mirrored.hash(), mirrored.HashFromScratch());
    ASSERT_EQ(CountLegalMoves(mirrored), CountLegalMoves(plain));
  });
}

TEST(Position, MirrorsFilesOfEveryField) {
  EXPECT_EQ(ToFen(MirrorFiles(testing_support::FromFen(
                "rnbqkbnr/ppp1pppp/8/3pP3/8/8/PPPP1PPP/RNBQKBNR w KQkq d6 "
                "0 9"))),
            "rnbkqbnr/pppp1ppp/8/3Pp3/8/8/PPP1PPPP/RNBKQBNR w - e6 0 9");
}

// The counters stop at the checker's upper limit: what play leads to can always
// be written as a FEN that the reader takes.
TEST(Position, StopsItsCountersWhereTheReaderDoes) {
  Position position =
      testing_support::FromFen("4k3/8/8/8/8/8/8/4K2R b K - 10000 10000");
  const Position before = position;
  const Move move = testing_support::MoveOf(position, "e8d8");
  const Position::Undo undo = position.Make(move);
  EXPECT_EQ(position.fullmove_number(), 10000);
  EXPECT_EQ(position.halfmove_clock(), 10000);
  EXPECT_EQ(testing_support::FromFen(ToFen(position)), position);
  EXPECT_EQ(SwapColours(SwapColours(position)), position);
  position.Unmake(move, undo);
  EXPECT_EQ(position, before);
}

TEST(Position, PassGivesTheOtherSideTheMove) {
  int passes = 0;
  testing_support::PlayAtRandom(10, kPositions, [&](const Position& p, Move) {
    if (HasFailed() || p.InCheck()) return;
    ++passes;
    const Position passed = p.AfterPass();
    ASSERT_EQ(passed.hash(), passed.HashFromScratch());
    ASSERT_EQ(passed.en_passant(), kNoSquare);
    ASSERT_TRUE(Position::FromParsed(passed.ToParsed()).has_value())
        << ToFen(p);
    ParsedPosition expected = p.ToParsed();
    expected.en_passant = kNoSquare;
    expected.side_to_move = Other(p.side_to_move());
    expected.halfmove_clock += 1;
    if (p.side_to_move() == Side::kBlack) expected.fullmove_number += 1;
    ASSERT_EQ(passed, *Position::FromParsed(expected));
  });
  EXPECT_GT(passes, kPositions / 2);
}

TEST(Position, PassForfeitsEnPassant) {
  const Position position =
      testing_support::FromFen("4k3/8/8/3pP3/8/8/8/4K3 w - d6 0 9");
  EXPECT_EQ(ToFen(position.AfterPass()), "4k3/8/8/3pP3/8/8/8/4K3 b - - 1 9");
  EXPECT_EQ(ToFen(position.AfterPass().AfterPass()),
            "4k3/8/8/3pP3/8/8/8/4K3 w - - 2 10");
}

TEST(Position, InitialIsTheStandardsOwn) {
  EXPECT_EQ(Position::Initial(),
            testing_support::FromFen(
                "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1"));
}

}  // namespace
}  // namespace assay
