#include "assay/notation/pgn_marks.h"

namespace assay {
namespace {

struct Row {
  std::string_view text;
  std::uint8_t nag;
};

constexpr Row kMarks[] = {{"!", 1},  {"?", 2},  {"!!", 3},
                          {"??", 4}, {"!?", 5}, {"?!", 6}};

constexpr Row kSigns[] = {{"=", 10},   {"~", 13},   {"inf", 13}, {"+/=", 14},
                          {"+=", 14},  {"=/+", 15}, {"=+", 15},  {"+/-", 16},
                          {"-/+", 17}, {"+-", 18},  {"-+", 19},  {"RR", 145},
                          {"N", 146}};

template <std::size_t kRows>
std::optional<std::uint8_t> Find(const Row (&rows)[kRows],
                                 std::string_view text) {
  for (const Row& row : rows) {
    if (row.text == text) return row.nag;
  }
  return std::nullopt;
}

}  // namespace

std::optional<std::uint8_t> NagOfMark(std::string_view mark) {
  return Find(kMarks, mark);
}

std::optional<std::uint8_t> NagOfSign(std::string_view sign) {
  return Find(kSigns, sign);
}

}  // namespace assay
