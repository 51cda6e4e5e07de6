#include "assay/explain/line_text.h"
#include "assay/explain/proved.h"
#include "assay/explain/win_text.h"

namespace assay {
namespace {

// "The capture 15. Nxe5", "The check ...".
const char* Noun(Appeal appeal) {
  switch (appeal) {
    case Appeal::kCaptures:
      return "The capture ";
    case Appeal::kChecks:
      return "The check ";
    case Appeal::kCastles:
      return "Castling, ";
    case Appeal::kDevelops:
      break;
  }
  return "The developing move ";
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
  const std::string castles = move.appeal == Appeal::kCastles ? "," : "";
  temptation.text = Noun(move.appeal) + NumberedMove(position, move.move) +
                    castles + " fails to " + NumberedMove(after, line[1]) +
                    ", which " +
                    (move.refutation.mates() ? "mates" : "wins " + told.what) +
                    told.Evidence() + ".";
  return temptation;
}

}  // namespace assay
