// EPD: the standard's rules on records and opcodes, round trips, faults.
#include "assay/notation/epd.h"

#include <gtest/gtest.h>

#include <random>
#include <string>
#include <vector>

#include "assay/base/problem_status.h"
#include "assay/notation/epd_opcodes.h"
#include "assay/notation/fen.h"
#include "assay/notation/san.h"
#include "assay/rules/movegen.h"
#include "tests/support/printers.h"

namespace assay {
namespace {

using testing_support::FromFen;
using testing_support::MoveOf;

constexpr char kStart[] =
    "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - ";
constexpr char kKnights[] = "4k3/8/8/8/1b6/2N5/8/4K1N1 w - - ";

EpdRecord Read(const std::string& line) {
  absl::StatusOr<EpdRecord> record = ParseEpd(line);
  EXPECT_TRUE(record.ok()) << line << ": " << record.status().message();
  return record.ok() ? *std::move(record) : EpdRecord();
}

std::string Write(const EpdRecord& record) {
  const absl::StatusOr<std::string> text = WriteEpd(record);
  EXPECT_TRUE(text.ok()) << text.status().message();
  return text.value_or("");
}

// PGN standard of 1994, 16.2.2: four fields, then operations.
TEST(Epd, ReadsTypedOperands) {
  const EpdRecord record = Read(std::string(kKnights) +
                                "bm Ne2 Nf3+; ce -25; id \"lesson; 3\"; "
                                "pv Ne2 Kd7 Nd4; acn 123456789012;");
  EXPECT_EQ(ToFen(record.position), std::string(kKnights) + "0 1");
  ASSERT_EQ(record.operations.size(), 5U);
  const EpdOperation* best = record.Find("bm");
  ASSERT_NE(best, nullptr);
  EXPECT_EQ(best->operands[0].kind, EpdOperand::Kind::kMove);
  // The pinned knight on c3 is no rival (8.2.3.4).
  EXPECT_EQ(best->operands[0].move, MoveOf(record.position, "g1e2"));
  EXPECT_EQ(record.Find("ce")->operands[0].integer, -25);
  EXPECT_EQ(record.Find("id")->operands[0].text, "lesson; 3");
  EXPECT_EQ(record.Find("id")->operands[0].kind, EpdOperand::Kind::kString);
  EXPECT_EQ(record.Find("pv")->operands.size(), 3U);
  EXPECT_EQ(ToCoordinates(record.Find("pv")->operands[2].move), "e2d4");
  EXPECT_EQ(record.Find("acn")->operands[0].integer, 123456789012);
  EXPECT_EQ(record.Find("am"), nullptr);
}

TEST(Epd, ReadsFenAsARecord) {
  const EpdRecord fen = Read("4k3/8/8/4K3/4P3/8/8/8 b - - 3 40\n");
  EXPECT_EQ(fen.position, FromFen("4k3/8/8/4K3/4P3/8/8/8 b - - 3 40"));
  EXPECT_TRUE(fen.operations.empty());
  const EpdRecord both = Read("4k3/8/8/4K3/4P3/8/8/8 b - - 3 40 bm Kd7;\r\n");
  EXPECT_EQ(both.position.halfmove_clock(), 3);
  EXPECT_EQ(both.operations.size(), 1U);
  EXPECT_TRUE(Read("  4k3/8/8/4K3/4P3/8/8/8  b - -  ").operations.empty());
}

TEST(Epd, CountersComeFromOperations) {
  const EpdRecord record = Read("4k3/8/8/4K3/4P3/8/8/8 b - - hmvc 7; fmvn 33;");
  EXPECT_EQ(record.position.halfmove_clock(), 7);
  EXPECT_EQ(record.position.fullmove_number(), 33);
}

TEST(Epd, WritesCanonicalForm) {
  const EpdRecord record =
      Read(std::string(kKnights) +
           "  sm  Nge2 ;id \"b\";Zz 1.5 x \"y z\";bm Nf3 Kd2 Ne2;pm g1f3;"
           "c1 \"\";c0 \"a\";acd +12;");
  EXPECT_EQ(Write(record),
            std::string(kKnights) +
                "Zz 1.5 x \"y z\"; acd +12; bm Kd2 Ne2 Nf3; c0 \"a\"; c1 \"\"; "
                "id \"b\"; pm Nf3; sm Ne2;");
}

TEST(Epd, WritesThePositionsCounters) {
  EpdRecord record;
  record.position = FromFen("4k3/8/8/4K3/4P3/8/8/8 b - - 3 40");
  EXPECT_EQ(Write(record), "4k3/8/8/4K3/4P3/8/8/8 b - - fmvn 40; hmvc 3;");
  record.position = Position::Initial();
  EXPECT_EQ(Write(record) + ' ', kStart);
  record.Set({"hmvc", {EpdInteger(0)}});
  EXPECT_EQ(Write(record), std::string(kStart) + "hmvc 0;");
}

// 16.2.5: setting a register clears the higher ones.
TEST(Epd, SettingARegisterClearsTheHigherOnes) {
  EpdRecord record =
      Read(std::string(kStart) +
           "c0 \"a\"; c1 \"b\"; c2 \"c\"; v1 \"d\"; ce 0; v0 \"e\";");
  record.Set({"c1", {EpdString("new")}});
  record.Set({"ce", {EpdInteger(5)}});
  EXPECT_EQ(Write(record), std::string(kStart) +
                               "c0 \"a\"; c1 \"new\"; ce 5; v0 \"e\"; v1 "
                               "\"d\";");
  record.Set({"v0", {EpdString("x")}});
  EXPECT_EQ(record.Find("v1"), nullptr);
}

TEST(Epd, OwnRecordsAreWritten) {
  EpdRecord record;
  record.Set({"bm", {EpdMove(MoveOf(record.position, "e4"))}});
  record.Set({"ce", {EpdInteger(CeFromWhite(31, Side::kWhite))}});
  record.Set({"Terms", {EpdSymbol("SPACE"), EpdInteger(12)}});
  EXPECT_EQ(Write(record),
            std::string(kStart) + "Terms SPACE 12; bm e4; ce 31;");
}

// Every opcode of the PGN standard of 1994, 16.2, each with operands it takes.
TEST(Epd, AllOpcodesOfTheStandard) {
  const std::vector<std::string> operations = {
      "acn 0",    "acs 1",       "am e4 d4",    "bm Nf3",      "ce 0",
      "dm 4",     "draw_accept", "draw_claim",  "draw_offer",  "draw_reject",
      "eco",      "eco E12",     "eco \"E12\"", "fmvn 1",      "hmvc 0",
      "id \"x\"", "nic",         "nic NI.01",   "noop",        "noop a 1 \"b\"",
      "pm e4",    "pv",          "pv e4 e5",    "rc 1",        "resign",
      "sm e4",    "tcgs 1",      "tcri a b",    "tcsi \"a\" b"};
  for (const std::string& operation : operations) {
    const EpdRecord record = Read(kStart + operation + ';');
    ASSERT_EQ(record.operations.size(), 1U);
    EXPECT_NE(FindEpdOpcode(record.operations[0].opcode), nullptr);
    EXPECT_EQ(Write(Read(Write(record))), Write(record));
  }
  for (const char letter : {'c', 'v'}) {
    for (char digit = '0'; digit <= '9'; ++digit) {
      Read(std::string(kStart) + letter + digit + " \"text\";");
    }
  }
}

// PGN standard of 1994, 16.2.5: the encoding of mates.
TEST(EpdCe, MatesAsTheStandardHasThem) {
  EXPECT_EQ(CeOfMateIn(1), 32766);
  EXPECT_EQ(CeOfMateIn(5), 32758);
  EXPECT_EQ(CeOfMatedIn(1), -32765);
  EXPECT_EQ(CeOfMatedIn(5), -32757);
  for (int moves = 1; moves < 300; ++moves) {
    EXPECT_EQ(MateMovesOfCe(CeOfMateIn(moves)), moves);
    EXPECT_EQ(MateMovesOfCe(CeOfMatedIn(moves)), -moves);
  }
  EXPECT_FALSE(MateMovesOfCe(0).has_value());
  EXPECT_FALSE(MateMovesOfCe(32000).has_value());
  EXPECT_FALSE(MateMovesOfCe(-32000).has_value());
  EXPECT_FALSE(MateMovesOfCe(-32767).has_value());  // an illegal position
}

TEST(EpdCe, IsTheMoversView) {
  EXPECT_EQ(CeFromWhite(30, Side::kWhite), 30);
  EXPECT_EQ(CeFromWhite(30, Side::kBlack), -30);
  EXPECT_EQ(CeFromWhite(50'000, Side::kBlack), -32'000);
  EXPECT_EQ(WhiteFromCe(CeFromWhite(-7, Side::kBlack), Side::kBlack), -7);
}

// Every position of random games, with its moves, through a line and back.
TEST(Epd, RoundTripsRandomPositions) {
  std::mt19937_64 random(3);
  for (int game = 0; game < 40; ++game) {
    Position position = Position::Initial();
    for (int ply = 0; ply < 100; ++ply) {
      MoveList moves;
      LegalMoves(position, moves);
      if (moves.empty()) break;
      EpdRecord record;
      record.position = position;
      EpdOperation best{"bm", {}};
      for (const Move move : moves) best.operands.push_back(EpdMove(move));
      record.Set(best);
      const std::string line = Write(record);
      const EpdRecord read = Read(line);
      ASSERT_EQ(read.position, position);
      ASSERT_EQ(read.Find("bm")->operands.size(), moves.size());
      ASSERT_EQ(Write(read), line);
      position.Make(moves[random() % moves.size()]);
    }
  }
}

struct Row {
  const char* name;
  std::string line;
  const char* field;
  const char* reason;
};

std::vector<Row> BadLines() {
  const std::string start = kStart;
  return {
      {"Empty", "", "fen", "empty"},
      {"ThreeFields", "8/8/8/8/8/8/8/8 w -", "fen", "wrong number of fields"},
      {"NoKings", "8/8/8/8/8/8/8/8 w - - bm e4;", "placement", "no king"},
      {"TooLong", start + "id \"" + std::string(kMostEpdBytes, 'x') + "\";",
       "epd", "too long"},
      {"OneCounter", start + "0 bm e4;", "epd", "text without an opcode"},
      {"NotEnded", start + "bm e4", "bm", "not ended"},
      {"NotEndedBeforeNext", start + "ce 5 id \"x\";", "ce",
       "wrong number of operands"},
      {"NoOpcode", start + "bm e4; 5;", "epd", "text without an opcode"},
      {"OnlySemicolon", start + ";", "epd", "text without an opcode"},
      {"StringFirst", start + "\"id\" x;", "epd", "text without an opcode"},
      {"OpcodeTooLong", start + "abcdefghijklmnop 1;", "epd",
       "text without an opcode"},
      {"OpcodeOdd", start + "b-m e4;", "epd", "text without an opcode"},
      {"GivenTwice", start + "bm e4; bm d4;", "bm", "given twice"},
      {"StringNotClosed", start + "id \"x;", "id", "string not closed"},
      {"StringTooLong", start + "id \"" + std::string(256, 'x') + "\";", "id",
       "operand too long"},
      {"IllegalMove", start + "bm e5;", "bm", "illegal move"},
      {"AmbiguousMove", "4k3/8/8/8/8/8/1K6/R6R w - - bm Rd1;", "bm",
       "ambiguous move"},
      {"NoMove", start + "am pawn;", "am", "not a move"},
      {"MoveInQuotes", start + "bm \"e4\";", "bm", "wrong kind of operand"},
      {"NoMoves", start + "bm;", "bm", "wrong number of operands"},
      {"TwoPredicted", start + "pm e4 d4;", "pm", "wrong number of operands"},
      {"LineBreaksOff", start + "pv e4 e5 e6;", "pv", "illegal move"},
      {"CeNotANumber", start + "ce good;", "ce", "wrong kind of operand"},
      {"CeNotWhole", start + "ce 1.5;", "ce", "wrong kind of operand"},
      {"CeTooHigh", start + "ce 32767;", "ce", "out of range"},
      {"CeTooLow", start + "ce -32768;", "ce", "out of range"},
      {"DmZero", start + "dm 0;", "dm", "out of range"},
      {"HmvcNegative", start + "hmvc -1;", "hmvc", "out of range"},
      {"FmvnZero", start + "fmvn 0;", "fmvn", "out of range"},
      {"NumberOver64Bits", start + "acn 99999999999999999999;", "acn",
       "wrong kind of operand"},
      {"IdNotQuoted", start + "id x;", "id", "wrong kind of operand"},
      {"CommentNotQuoted", start + "c0 x;", "c0", "wrong kind of operand"},
      {"ResignWithOperand", start + "resign now;", "resign",
       "wrong number of operands"},
      {"TcriWithOne", start + "tcri a;", "tcri", "wrong number of operands"},
      {"CounterDiffers", start + "0 1 hmvc 5;", "hmvc",
       "differs from the FEN counter"},
  };
}

class EpdBadLine : public ::testing::TestWithParam<Row> {};

TEST_P(EpdBadLine, IsRefused) {
  const absl::StatusOr<EpdRecord> record = ParseEpd(GetParam().line);
  ASSERT_FALSE(record.ok());
  const std::vector<Problem> problems = ProblemsOf(record.status());
  ASSERT_FALSE(problems.empty());
  EXPECT_EQ(problems[0].field, GetParam().field);
  EXPECT_EQ(problems[0].reason, GetParam().reason);
  EXPECT_FALSE(problems[0].expected.empty());
}

INSTANTIATE_TEST_SUITE_P(Table, EpdBadLine, ::testing::ValuesIn(BadLines()),
                         [](const ::testing::TestParamInfo<Row>& row) {
                           return row.param.name;
                         });

void PrintTo(const Row& row, std::ostream* out) { *out << row.name; }

TEST(Epd, AllFaultsAtOnce) {
  const absl::StatusOr<EpdRecord> record =
      ParseEpd(std::string(kStart) + "bm e5; ce x; ?; dm 0; id \"y\"; id z;");
  std::string fields;
  for (const Problem& problem : ProblemsOf(record.status())) {
    fields += problem.field + ' ';
  }
  EXPECT_EQ(fields, "epd id bm ce dm ");
}

TEST(Epd, LimitsOfOperations) {
  std::string line = kStart;
  for (std::size_t i = 0; i <= kMostEpdOperations; ++i) {
    line += "X" + std::to_string(i) + "; ";
  }
  EXPECT_EQ(ProblemsOf(ParseEpd(line).status())[0].reason,
            "too many operations");
  std::string operands = std::string(kStart) + "noop";
  for (std::size_t i = 0; i <= kMostEpdOperands; ++i) operands += " a";
  EXPECT_EQ(ProblemsOf(ParseEpd(operands + ';').status())[0].reason,
            "wrong number of operands");
  // The standard asks for 1,024 characters.
  Read(std::string(kStart) + "c0 \"" + std::string(255, 'x') + "\"; c1 \"" +
       std::string(255, 'x') + "\"; c2 \"" + std::string(255, 'x') +
       "\"; c3 \"" + std::string(255, 'x') + "\";");
}

TEST(Epd, WriterRefusesWhatReadersWould) {
  const auto reason = [](EpdOperation operation) {
    EpdRecord record;
    record.Set(std::move(operation));
    const auto text = WriteEpd(record);
    return text.ok() ? "" : ProblemsOf(text.status())[0].reason;
  };
  EXPECT_EQ(reason({"id", {EpdString("ok; fine")}}), "");
  EXPECT_EQ(reason({"id", {EpdString("a \"b\"")}}), "cannot be written");
  EXPECT_EQ(reason({"id", {EpdString("a\nb")}}), "cannot be written");
  EXPECT_EQ(reason({"Own", {EpdSymbol("a b")}}), "cannot be written");
  EXPECT_EQ(reason({"Own", {EpdSymbol("")}}), "cannot be written");
  EXPECT_EQ(reason({"9x", {}}), "not an opcode");
  EXPECT_EQ(reason({"bm", {EpdMove(Move(kE2, kE5))}}), "illegal move");
  EXPECT_EQ(reason({"ce", {EpdInteger(40'000)}}), "out of range");
  EXPECT_EQ(reason({"id", {EpdString(std::string(256, 'x'))}}),
            "operand too long");
}

}  // namespace
}  // namespace assay
