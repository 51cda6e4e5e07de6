// Numbers and texts as tables and JSON want them.
#ifndef ASSAY_BENCH_FORMAT_H_
#define ASSAY_BENCH_FORMAT_H_

#include <cstdio>
#include <fstream>
#include <iostream>
#include <string>
#include <string_view>

namespace assay::bench {

inline std::string Fixed(double value, int digits) {
  char text[64];
  std::snprintf(text, sizeof text, "%.*f", digits, value);
  return text;
}

// With blanks after or before it, up to the width.
inline std::string Left(std::string text, std::size_t width) {
  if (text.size() < width) text.append(width - text.size(), ' ');
  return text;
}
inline std::string Right(const std::string& text, std::size_t width) {
  return text.size() < width ? std::string(width - text.size(), ' ') + text
                             : text;
}

// A string of JSON; control characters become blanks.
inline std::string Quoted(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') out += '\\';
    out += static_cast<unsigned char>(c) < 0x20 ? ' ' : c;
  }
  return out + '"';
}

// "" is no file, "-" standard output. False, with the reason on standard
// error, where the file cannot be written.
inline bool WriteFile(const std::string& path, const std::string& text) {
  if (path.empty()) return true;
  if (path == "-") {
    std::cout << text;
    return true;
  }
  std::ofstream file(path, std::ios::binary);
  file << text;
  file.flush();
  if (!file) std::cerr << path << ": cannot be written\n";
  return static_cast<bool>(file);
}

}  // namespace assay::bench

#endif  // ASSAY_BENCH_FORMAT_H_
