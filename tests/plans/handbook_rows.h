// Rows of tests/plans/*.tsv: what handbooks teach, and whether a plan is it.
#ifndef ASSAY_TESTS_PLANS_HANDBOOK_ROWS_H_
#define ASSAY_TESTS_PLANS_HANDBOOK_ROWS_H_

#include <algorithm>
#include <fstream>
#include <map>
#include <sstream>
#include <string>
#include <vector>

#include "assay/plans/planner.h"

namespace assay::testing_support {

inline std::vector<std::string> Split(const std::string& text, char at) {
  std::vector<std::string> parts;
  std::stringstream stream(text);
  for (std::string part; std::getline(stream, part, at);) {
    const std::size_t first = part.find_first_not_of(' ');
    parts.push_back(first == std::string::npos ? "" : part.substr(first));
  }
  return parts;
}

struct HandbookRow {
  std::vector<std::string> cells;

  const std::string& name() const { return cells[0]; }
  const std::string& structure() const { return cells[1]; }
  const std::string& fen() const { return cells[2]; }
  Side side() const { return cells[3] == "w" ? Side::kWhite : Side::kBlack; }
  // "kind key", the row's own first, then the others that are as good.
  std::vector<std::string> Ways(std::size_t also_column) const {
    std::vector<std::string> ways = {cells[4] + " " + cells[5]};
    if (cells.size() > also_column && cells[also_column] != "-") {
      for (const std::string& way : Split(cells[also_column], ';')) {
        ways.push_back(way);
      }
    }
    return ways;
  }
};

inline std::vector<HandbookRow> ReadRows(const std::string& path) {
  std::vector<HandbookRow> rows;
  std::ifstream file(path);
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line[0] == '#') continue;
    rows.push_back({Split(line, '\t')});
  }
  return rows;
}

// The squares that a text names, in order.
inline std::vector<Square> SquaresOf(const std::string& text) {
  std::vector<Square> squares;
  for (std::size_t i = 0; i + 1 < text.size(); ++i) {
    const Square square = ParseSquare(text.substr(i, 2));
    if (square != kNoSquare) squares.push_back(square);
  }
  return squares;
}

// Where each piece that the plan moves ends: from its first square.
inline std::map<Square, Square> Journeys(const Plan& plan) {
  std::map<Square, Square> journeys;
  for (const Move move : plan.moves) {
    const auto begun = std::find_if(
        journeys.begin(), journeys.end(),
        [move](const auto& journey) { return journey.second == move.from(); });
    if (begun == journeys.end()) {
      journeys[move.from()] = move.to();
    } else {
      begun->second = move.to();
    }
  }
  return journeys;
}

// Whether the plan is the one that "kind key" names: a key is a way, so the
// square aimed at counts, not each step on it.
inline bool IsTaught(const Plan& plan, const std::string& way) {
  const std::size_t blank = way.find(' ');
  const std::string kind = way.substr(0, blank);
  const std::string key = way.substr(blank + 1);
  if (kind != Name(plan.kind)) return false;
  const std::vector<Square> squares = SquaresOf(key);
  if (squares.empty() && plan.kind != PlanKind::kFile &&
      plan.kind != PlanKind::kDevelop) {
    return false;
  }
  const Bitboard targets = plan.targets.ToSet();
  const std::map<Square, Square> journeys = Journeys(plan);
  const auto goes = [&](Square from, Square to) {
    const auto journey = journeys.find(from);
    return journey != journeys.end() && journey->second == to;
  };
  const auto visits = [&](Square to) {
    return std::any_of(plan.moves.begin(), plan.moves.end(),
                       [to](Move move) { return move.to() == to; });
  };
  switch (plan.kind) {
    case PlanKind::kSiege:
      return Contains(targets, squares.front());
    case PlanKind::kTrade:
      return journeys.count(squares[0]) > 0 && Contains(targets, squares[1]);
    case PlanKind::kFile: {
      const int file = key[0] - 'a';
      return std::any_of(journeys.begin(), journeys.end(),
                         [file](const auto& journey) {
                           return FileOf(journey.second) == file;
                         });
    }
    case PlanKind::kRestrain:
      return plan.moves.front().to() == squares[1] ||
             Contains(targets, squares.back());
    case PlanKind::kLever:
    case PlanKind::kReshape:
      return plan.moves.back().to() == squares.back();
    case PlanKind::kRegroup:
    case PlanKind::kKingWalk:
    case PlanKind::kPasser:
      if (key.find('>') == std::string::npos) return visits(squares.back());
      return goes(squares[0], squares[1]) ||
             (plan.kind != PlanKind::kRegroup && visits(squares[1]));
    case PlanKind::kDevelop: {
      if (key.find("O-O") != std::string::npos) {
        return std::any_of(plan.moves.begin(), plan.moves.end(), [](Move move) {
          return move.type() == Move::Type::kCastling;
        });
      }
      const std::string last = Split(key, ',').back();
      const std::vector<Square> ends = SquaresOf(last);
      return ends.size() == 2 ? goes(ends[0], ends[1])
                              : journeys.count(squares.front()) > 0;
    }
    case PlanKind::kExpansion:
    case PlanKind::kMinorityAttack:
    case PlanKind::kMajority:
    case PlanKind::kKingAttack:
      break;
  }
  for (std::size_t i = 1; i < squares.size(); i += 2) {
    if (visits(squares[i])) return true;
  }
  return false;
}

}  // namespace assay::testing_support

#endif  // ASSAY_TESTS_PLANS_HANDBOOK_ROWS_H_
