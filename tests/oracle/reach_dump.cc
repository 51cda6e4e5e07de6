// Says in JSON who gets where and what bears on what, for reach_oracle.mjs to
// recompute with an independent rules library.
//
// Reads a FEN a line from standard input; writes a JSON object a line:
//   {"levers":["w c2-c4 d5",...],        lever moves and what they attack
//    "reach":{"wg1":"..2...0.",...},     by walking piece: moves to each square
//                                        from a1, b1 to h8, "." for over three
//    "routes":["b1 d2 c4",...],          to empty outposts, of both sides
//    "control":["1/0",...],              White's and Black's attackers, a1 to
//    h8 "attacks":["w d5 2/1",...],         ATTACK_COUNT of every enemy man
//    "sieges":["w d5 3 4/2 a1 c3",...]}  SIEGE_COUNT: side, target, tempi,
//                                        counts, the pieces counted
// or {"error":true} for a bad FEN.
#include <iostream>
#include <string>

#include "assay/facts/claim_makers.h"
#include "assay/facts/facts.h"
#include "assay/facts/levers.h"
#include "assay/facts/routes.h"
#include "assay/facts/siege.h"
#include "assay/notation/fen.h"

namespace assay {
namespace {

constexpr int kMostMoves = 3;       // as far as reach is told
constexpr int kMostTempi = 4;       // of sieges of men
constexpr int kTempiOfSquares = 3;  // of sieges of empty squares

char Letter(Side side) { return side == Side::kWhite ? 'w' : 'b'; }

std::string Counts(const Claim& claim) {
  return std::to_string(claim.count) + '/' + std::to_string(claim.other_count);
}

// A JSON list of strings that need no escapes.
class List {
 public:
  explicit List(const char* name) {
    std::cout << (*name == 'l' ? "{\"" : ",\"") << name << "\":[";
  }
  ~List() { std::cout << ']'; }
  List(const List&) = delete;
  List& operator=(const List&) = delete;
  void Add(const std::string& item) {
    std::cout << separator_ << '"' << item << '"';
    separator_ = ",";
  }

 private:
  const char* separator_ = "";
};

void WriteLevers(const Facts& facts) {
  List list("levers");
  for (const Side side : kSides) {
    for (const LeverMove& move : FindLeverMoves(facts, side)) {
      std::string item = std::string(1, Letter(side)) + ' ' +
                         ToString(move.from) + '-' + ToString(move.to);
      for (const Square target : Each(move.targets)) {
        item += ' ' + ToString(target);
      }
      list.Add(item);
    }
  }
}

void WriteReach(const Facts& facts) {
  std::cout << ",\"reach\":{";
  const char* separator = "";
  const Position& position = facts.position();
  for (const Side side : kSides) {
    for (const Square from : Each(position.Pieces(side))) {
      if (position.At(from).kind() == PieceKind::kPawn) continue;
      const Reach reach(facts, from, kMostMoves);
      std::cout << separator << '"' << Letter(side) << ToString(from)
                << "\":\"";
      for (const Square goal : Each(~Bitboard{0})) {
        const int moves = reach.MovesTo(goal);
        std::cout << (moves < 0 ? std::string(".") : std::to_string(moves));
      }
      std::cout << '"';
      separator = ",";
    }
  }
  std::cout << '}';
}

void WriteRoutes(const Facts& facts) {
  List list("routes");
  for (const Side side : kSides) {
    for (const SquareList& route : OutpostRoutes(facts, side)) {
      std::string item;
      for (const Square square : route) {
        item += (item.empty() ? "" : " ") + ToString(square);
      }
      list.Add(item);
    }
  }
}

void WriteControl(const Facts& facts) {
  List list("control");
  for (const Square square : Each(~Bitboard{0})) {
    list.Add(Counts(ControlClaim(facts, Side::kWhite, square)));
  }
}

void WriteAttacks(const Facts& facts) {
  List list("attacks");
  for (const Side side : kSides) {
    for (const Square target : Each(facts.position().Pieces(Other(side)))) {
      list.Add(std::string(1, Letter(side)) + ' ' + ToString(target) + ' ' +
               Counts(AttackCountClaim(facts, side, target)));
    }
  }
}

void AddSiege(const Facts& facts, Side side, Square target, int tempi,
              List& list) {
  const Claim claim = SiegeCountClaim(facts, side, target, tempi);
  std::string item = std::string(1, Letter(side)) + ' ' + ToString(target) +
                     ' ' + std::to_string(claim.tempi) + ' ' + Counts(claim);
  for (const Square from : claim.others) item += ' ' + ToString(from);
  list.Add(item);
}

void WriteSieges(const Facts& facts) {
  List list("sieges");
  const Position& position = facts.position();
  for (const Side side : kSides) {
    for (const Square target : Each(position.Pieces(Other(side)))) {
      for (int tempi = 0; tempi <= kMostTempi; ++tempi) {
        AddSiege(facts, side, target, tempi, list);
      }
    }
    for (const Square target : Each(~position.Occupied())) {
      AddSiege(facts, side, target, kTempiOfSquares, list);
    }
  }
}

void WritePosition(const Position& position) {
  const Facts facts(position);
  WriteLevers(facts);
  WriteReach(facts);
  WriteRoutes(facts);
  WriteControl(facts);
  WriteAttacks(facts);
  WriteSieges(facts);
  std::cout << "}\n";
}

}  // namespace
}  // namespace assay

int main() {
  std::ios::sync_with_stdio(false);
  for (std::string fen; std::getline(std::cin, fen);) {
    const absl::StatusOr<assay::Position> position =
        assay::PositionFromFen(fen);
    if (position.ok()) {
      assay::WritePosition(*position);
    } else {
      std::cout << "{\"error\":true}\n";
    }
  }
  return 0;
}
