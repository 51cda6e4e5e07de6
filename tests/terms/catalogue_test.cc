// The catalogue of terms: complete, consistent, and within the PGN standard's
// numbers (1994, section 10: $10 to $135 assess a position; from $14 on,
// White's are even and Black's the next odd one).
#include <cctype>
#include <set>
#include <string>

#include "assay/notation/nag.h"
#include "assay/terms/term.h"
#include "gtest/gtest.h"

namespace assay {
namespace {

class Catalogue : public ::testing::TestWithParam<int> {
 protected:
  const TermId id_ = static_cast<TermId>(GetParam());
  const TermInfo& info_ = Info(id_);
};

std::string NameOf(const ::testing::TestParamInfo<int>& info) {
  std::string name;
  bool upper = true;
  for (const char c : Info(static_cast<TermId>(info.param)).name) {
    if (c != '_') {
      name += upper ? static_cast<char>(std::toupper(c)) : c;
    }
    upper = c == '_';
  }
  return name;
}

TEST_P(Catalogue, RowIsTheTermsOwn) { EXPECT_EQ(info_.id, id_); }

TEST_P(Catalogue, HasEveryText) {
  const auto is_sentence = [](std::string_view text) {
    return text.size() > 10 && std::isupper(text.front()) != 0 &&
           text.back() == '.' && text.find("  ") == std::string_view::npos;
  };
  EXPECT_TRUE(is_sentence(info_.definition)) << info_.definition;
  EXPECT_TRUE(is_sentence(info_.reason)) << info_.reason;
  EXPECT_FALSE(info_.title.empty());
  EXPECT_NE(info_.title.back(), '.');
  EXPECT_FALSE(info_.source.empty());
  EXPECT_FALSE(Name(info_.theme).empty());
}

TEST_P(Catalogue, NameIsLowerCase) {
  EXPECT_EQ(info_.name.find_first_not_of("abcdefghijklmnopqrstuvwxyz_"),
            std::string_view::npos)
      << info_.name;
  EXPECT_FALSE(info_.name.empty());
}

TEST_P(Catalogue, NagsAssessPositionsInPairs) {
  for (std::size_t i = 0; i < info_.nags.size(); ++i) {
    const int nag = info_.nags[i];
    EXPECT_GE(nag, 10);
    EXPECT_LE(nag, 135);
    EXPECT_FALSE(NagMeaning(nag).empty()) << nag;
    if (nag < 14) continue;  // the same for both sides
    if (nag % 2 == 0) {
      ASSERT_LT(i + 1, info_.nags.size()) << nag;
      EXPECT_EQ(info_.nags[i + 1], nag + 1);
    } else {
      ASSERT_GT(i, 0U) << nag;
      EXPECT_EQ(info_.nags[i - 1], nag - 1);
    }
  }
}

TEST_P(Catalogue, WeightIsOfTheList) {
  if (info_.weight == nullptr) {
    // Its value follows from the other entries.
    EXPECT_EQ(info_.theme, Theme::kEndings);
    return;
  }
  int found = 0;
  for (const WeightField& field : WeightFields()) {
    found += field.field == info_.weight ? 1 : 0;
  }
  EXPECT_EQ(found, 1);
}

INSTANTIATE_TEST_SUITE_P(Terms, Catalogue, ::testing::Range(0, kTerms), NameOf);

TEST(CatalogueAsAWhole, HasUniqueNamesAndTitles) {
  std::set<std::string_view> names;
  std::set<std::string_view> titles;
  for (int i = 0; i < kTerms; ++i) {
    const TermInfo& info = Info(static_cast<TermId>(i));
    EXPECT_TRUE(names.insert(info.name).second) << info.name;
    EXPECT_TRUE(titles.insert(info.title).second) << info.title;
  }
}

// Clients store the pair: whoever adds or removes a term must raise the
// version.
TEST(CatalogueAsAWhole, HasTheVersionOfItsTerms) {
  EXPECT_EQ(kCatalogueVersion, 7U);
  EXPECT_EQ(kTerms, 68);
}

}  // namespace
}  // namespace assay
