// Any bytes as a lesson: key positions, handout, our comments in the author's
// text and out of it again, proofreading, a player's habits.
#include "assay/lesson/handout.h"
#include "assay/lesson/lesson_comment.h"
#include "assay/lesson/own_comments.h"
#include "assay/lesson/proofread.h"
#include "assay/lesson/student.h"
#include "tests/fuzz/fuzz.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data,
                                      std::size_t size) {
  static const auto* const assayer = new assay::Assayer();
  constexpr std::size_t kMostKeys = 4;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  assay::LessonSelection selection;
  if (!text.empty()) selection.every_plies = text[0] % 4;
  const assay::Lesson lesson(text, selection, *assayer);
  assay::fuzz::Require(assay::WithoutOurs(lesson.text()) == lesson.text(),
                       "nothing of ours is left");
  assay::ExplainOptions options;
  options.proof_nodes = 40;
  const assay::ProofreadSettings settings{*assayer, 20};
  assay::LessonReader reader(lesson);
  std::size_t told = 0;
  while (const std::optional<assay::LessonGame> game = reader.Next()) {
    const assay::GameTree& tree = game->item.tree;
    for (const assay::KeyPosition& key : game->keys) {
      if (!key.explained_at.empty() || ++told > kMostKeys) continue;
      const assay::Explanation explanation =
          assayer->Explain(key.position, options);
      assay::MakeHandoutParts({key, tree, explanation});
      assay::InsertionsAt(game->item, key.node, explanation.verdict.nag,
                          assay::LessonComment(explanation), "\n");
    }
    if (!game->item.ok() || tree.nodes.size() > 12) continue;
    for (const assay::ProofreadTask& task : assay::ProofreadTasks(game->item)) {
      assay::Proofread(task, game->game, game->item, settings);
    }
    assay::StudyGame(game->game, game->item, "Cordes", *assayer);
  }
  return 0;
}
