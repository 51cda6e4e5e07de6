// The rows of motif_positions.tsv, which says what its columns are.
#ifndef ASSAY_TESTS_EXPLAIN_MOTIF_ROWS_H_
#define ASSAY_TESTS_EXPLAIN_MOTIF_ROWS_H_

#include <fstream>
#include <ostream>
#include <sstream>
#include <string>
#include <vector>

namespace assay {
namespace testing_support {

struct MotifRow {
  std::string name;
  std::string fen;
  std::vector<std::string> kinds;
  std::string winner;  // "white", "black"; "-" where nothing decides
  std::vector<std::string> squares;
  std::string move;
  std::string gain;  // centipawns, or "mate"

  bool Decides() const { return winner != "-"; }

  friend std::ostream& operator<<(std::ostream& out, const MotifRow& row) {
    return out << row.name << ": " << row.fen;
  }
};

inline std::vector<std::string> Split(const std::string& text, char at) {
  std::vector<std::string> parts;
  std::istringstream in(text);
  for (std::string part; std::getline(in, part, at);) parts.push_back(part);
  return parts;
}

// Those with a winner, or those without; none where the file cannot be read
// or a row has not its seven columns.
inline std::vector<MotifRow> ReadMotifRows(const char* path, bool decides) {
  std::vector<MotifRow> rows;
  std::ifstream in(path);
  for (std::string line; std::getline(in, line);) {
    if (line.empty() || line[0] == '#') continue;
    const std::vector<std::string> columns = Split(line, '\t');
    if (columns.size() != 7) return {};
    const MotifRow row = {columns[0],
                          columns[1],
                          Split(columns[2], ','),
                          columns[3],
                          Split(columns[4], ','),
                          columns[5],
                          columns[6]};
    if (row.Decides() == decides) rows.push_back(row);
  }
  return rows;
}

}  // namespace testing_support
}  // namespace assay

#endif  // ASSAY_TESTS_EXPLAIN_MOTIF_ROWS_H_
