// The files of the catalogues, as a test reads them for itself.
#ifndef ASSAY_TESTS_EXPLAIN_CATALOGUE_ROWS_H_
#define ASSAY_TESTS_EXPLAIN_CATALOGUE_ROWS_H_

#include <algorithm>
#include <map>
#include <set>
#include <sstream>
#include <string>
#include <string_view>

#include "gtest/gtest.h"
#include "tests/support/golden_files.h"

namespace assay::testing_support {

// The arguments that a template names.
inline std::set<char> ArgumentsIn(std::string_view row) {
  std::set<char> named;
  for (std::size_t i = 0; i + 1 < row.size(); ++i) {
    if (row[i] == '{' && row[i + 1] >= '1' && row[i + 1] <= '9') {
      named.insert(row[i + 1]);
    }
  }
  return named;
}

// The rows of catalogue/NAME.txt by their ids: each once, with closed braces.
inline std::map<std::string, std::string> RowsOf(const std::string& name) {
  std::istringstream file(ContentOf(std::string(ASSAY_EXPLAIN_DIR) +
                                    "/catalogue/" + name + ".txt"));
  std::map<std::string, std::string> rows;
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line[0] == '#') continue;
    const std::size_t tab = line.find('\t');
    EXPECT_NE(tab, std::string::npos) << name << ": " << line;
    if (tab == std::string::npos) continue;
    EXPECT_TRUE(rows.emplace(line.substr(0, tab), line.substr(tab + 1)).second)
        << name << ": " << line;
    EXPECT_EQ(std::count(line.begin(), line.end(), '{'),
              std::count(line.begin(), line.end(), '}'))
        << name << ": " << line;
  }
  return rows;
}

}  // namespace assay::testing_support

#endif  // ASSAY_TESTS_EXPLAIN_CATALOGUE_ROWS_H_
