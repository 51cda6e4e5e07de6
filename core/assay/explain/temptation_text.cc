#include "assay/explain/line_text.h"
#include "assay/explain/proved.h"
#include "assay/explain/win_text.h"

namespace assay {
namespace {

const char* Noun(Appeal appeal) {
  switch (appeal) {
    case Appeal::kCaptures:
      return "tempting.capture";
    case Appeal::kChecks:
      return "tempting.check";
    case Appeal::kCastles:
      return "tempting.castling";
    case Appeal::kDevelops:
      break;
  }
  return "tempting.developing";
}

}  // namespace

Temptation TellTemptation(const Position& position, const TemptingMove& move,
                          ClaimTable& table) {
  const Side opponent = Other(position.side_to_move());
  const WinText told = TellWin(position, opponent, move.refutation, table);
  Temptation temptation;
  temptation.move = move.move;
  temptation.proof = move.refutation.proof;
  temptation.claims = told.claims;
  std::vector<Move> line = move.refutation.line;
  if (!move.refutation.mates()) {
    line.resize(move.refutation.spoils->shown_plies);
    temptation.loss_cp = move.loss;
  }
  temptation.refutation.assign(line.begin() + 1, line.end());
  const Position after = position.After(move.move);
  temptation.said = Sentence(
      Say("tempting", Say(Noun(move.appeal), NumberedMove(position, move.move)),
          NumberedMove(after, line[1]), told.what, told.Evidence()));
  return temptation;
}

}  // namespace assay
