// CheckedPosition by itself: what no text can say (texts are the matter
// of tests/notation/bad_input_test.cc), and several faults at once.
#include "assay/rules/position_check.h"

#include <functional>
#include <string>
#include <vector>

#include "assay/base/problem.h"
#include "assay/base/problem_status.h"
#include "assay/rules/position.h"
#include "gtest/gtest.h"
#include "tests/support/bad_input.h"
#include "tests/support/printers.h"
#include "tests/support/rows.h"

namespace assay {
namespace {

struct Fault : testing_support::Row {
  std::function<void(ParsedPosition&)> spoil;
  std::string problems;  // "field: reason", separated by "; "
};

const Fault kFaults[] = {
    {{"NegativeHalfmoveClock"},
     [](ParsedPosition& p) { p.halfmove_clock = -1; },
     "halfmove_clock: out of range"},
    {{"NegativeFullmoveNumber"},
     [](ParsedPosition& p) { p.fullmove_number = -1; },
     "fullmove_number: out of range"},
    {{"LargestNumbers"},
     [](ParsedPosition& p) {
       p.halfmove_clock = 2147483647;
       p.fullmove_number = 2147483647;
     },
     "halfmove_clock: out of range; fullmove_number: out of range"},
    {{"EmptyBoard"},
     [](ParsedPosition& p) {
       p.board.fill(Piece());
       p.castling = CastlingRights();
     },
     "placement: no king; placement: no king"},
    {{"EmptyBoardWithOneRight"},
     [](ParsedPosition& p) {
       p.board.fill(Piece());
       p.castling.Keep(1);
     },
     "placement: no king; placement: no king; "
     "castling: right without the king in place; "
     "castling: right without the rook in place"},
    {{"OneFaultInEachField"},
     [](ParsedPosition& p) {
       p.board[kA1] = Piece(Side::kWhite, PieceKind::kPawn);
       p.en_passant = kE4;
       p.halfmove_clock = -1;
       p.fullmove_number = 0;
     },
     "placement: too many pawns; "
     "placement: pawn on a first or last rank; "
     "castling: right without the rook in place; "
     "en_passant: wrong rank; halfmove_clock: out of range; "
     "fullmove_number: out of range"},
};

class Faults : public ::testing::TestWithParam<Fault> {};

TEST_P(Faults, AreAllReported) {
  ParsedPosition parsed = Position::Initial().ToParsed();
  GetParam().spoil(parsed);
  const absl::StatusOr<Position> position = CheckedPosition(parsed);
  ASSERT_FALSE(position.ok());
  testing_support::ExpectFaults(position.status(), GetParam().problems);
}

INSTANTIATE_TEST_SUITE_P(Parsed, Faults, ::testing::ValuesIn(kFaults),
                         testing_support::NameOfRow());

TEST(FromParsed, NamesWhatWasFoundAndExpected) {
  ParsedPosition parsed = Position::Initial().ToParsed();
  parsed.board[kE8] = Piece();
  parsed.castling = CastlingRights();
  const absl::Status status = CheckedPosition(parsed).status();
  const Problem expected{"placement", "no king", "0 black kings",
                         "1 black king"};
  EXPECT_EQ(ProblemsOf(status), std::vector<Problem>{expected});
  EXPECT_EQ(status.message(),
            "placement: no king: found 0 black kings, expected 1 black king");
}

}  // namespace
}  // namespace assay
