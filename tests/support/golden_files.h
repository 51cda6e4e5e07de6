// Transcripts kept as text files for people to read.
#ifndef ASSAY_TESTS_SUPPORT_GOLDEN_FILES_H_
#define ASSAY_TESTS_SUPPORT_GOLDEN_FILES_H_

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "gtest/gtest.h"

namespace assay::testing_support {

// The folder's text files, by name.
inline std::vector<std::string> GoldenFiles(const std::string& folder) {
  std::vector<std::string> files;
  for (const auto& file : std::filesystem::directory_iterator(folder)) {
    if (file.path().extension() == ".txt") files.push_back(file.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

// "bishop_pair.txt" becomes "BishopPair".
inline std::string NameOfFile(
    const ::testing::TestParamInfo<std::string>& info) {
  std::string name;
  bool upper = true;
  for (const char c : std::filesystem::path(info.param).stem().string()) {
    if (c != '_') name += upper ? static_cast<char>(std::toupper(c)) : c;
    upper = c == '_';
  }
  return name;
}

inline std::string ContentOf(const std::string& path) {
  std::ifstream file(path);
  std::stringstream content;
  content << file.rdbuf();
  return content.str();
}

}  // namespace assay::testing_support

#endif  // ASSAY_TESTS_SUPPORT_GOLDEN_FILES_H_
