// Within a lesson, explanations that are read one after the other do not open
// with the same words.
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "assay/explain/assayer.h"
#include "assay/explain/catalogue.h"
#include "assay/explain/wording.h"
#include "assay/lesson/key_positions.h"
#include "gtest/gtest.h"
#include "tests/support/golden_files.h"
#include "tests/support/plausible_play.h"

namespace assay {
namespace {

std::string FirstWords(const std::string& text) {
  std::istringstream words(text);
  std::string first;
  std::string word;
  for (int i = 0; i < 3 && words >> word; ++i) first += word + " ";
  return first;
}

// The lesson of the examples, a club's course of ordinary positions.
TEST(Openings, DifferBetweenNeighboursOfALesson) {
  const std::string pgn = testing_support::ContentOf(ASSAY_LESSON_FILE);
  const Assayer assayer;
  const Lesson lesson(pgn, {}, assayer);
  for (const char* language : {"en", "de"}) {
    std::vector<std::string> openings(lesson.size());
    LessonReader reader(lesson);
    while (const std::optional<LessonGame> game = reader.Next()) {
      for (const KeyPosition& key : game->keys) {
        if (!key.explained_at.empty()) continue;
        ExplainOptions options;
        options.language = language;
        options.opening = key.index;
        openings[key.index] =
            FirstWords(assayer.Explain(key.position, options).summary);
      }
    }
    ASSERT_GE(openings.size(), 10U);
    for (std::size_t i = 0; i < openings.size(); ++i) {
      for (std::size_t j = i + 1; j < openings.size() && j < i + kOpenings;
           ++j) {
        EXPECT_NE(openings[i], openings[j]) << i << " and " << j;
      }
    }
  }
}

// Whatever two explanations stand side by side: none of the ways to open begins
// as another does, and each says the same as the usual one but for its opening.
TEST(Openings, OfOneWayBeginAsNoneOfAnother) {
  const Assayer assayer;
  for (const char* language : {"en", "de"}) {
    const Catalogue& words = *Catalogue::Of(language);
    std::vector<std::set<std::string>> seen(kOpenings);
    for (const bool proved : {false, true}) {
      ExplainOptions options;
      options.static_only = !proved;
      options.proof_nodes = 500;
      testing_support::PlayPlausibly(
          81, proved ? 150 : 300, [&](const Position& position) {
            Explanation explanation = assayer.Explain(position, options);
            for (std::size_t way = 0; way < kOpenings; ++way) {
              PutIntoWords(words, explanation, way);
              seen[way].insert(FirstWords(explanation.summary));
            }
          });
    }
    for (std::size_t way = 0; way < kOpenings; ++way) {
      EXPECT_GE(seen[way].size(), 8U) << language << way;
      for (std::size_t other = way + 1; other < kOpenings; ++other) {
        for (const std::string& opening : seen[way]) {
          EXPECT_EQ(seen[other].count(opening), 0U)
              << opening << "in " << way << " and " << other;
        }
      }
    }
  }
}

}  // namespace
}  // namespace assay
