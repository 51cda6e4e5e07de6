#include "assay/explain/proved.h"
#include "assay/explain/win_text.h"

namespace assay {

Threat TellThreat(const Position& position, Side side, const Win& win,
                  ClaimTable& table) {
  const WinText told = TellWin(position, side, win, table);
  const bool to_move = position.side_to_move() == side;
  Threat threat;
  threat.side = side;
  threat.line = win.line;
  threat.claims = told.claims;
  if (win.mates()) {
    threat.said = Sentence(
        Say(to_move ? "threat.mates" : "threat.mate", side, told.line));
  } else {
    threat.line.resize(win.spoils->shown_plies);
    threat.gain_cp = win.spoils->gain;
    threat.object = told.what;
    threat.said = Sentence(Say(to_move ? "threat.wins" : "threat.win", side,
                               told.what, told.Evidence()));
  }
  return threat;
}

}  // namespace assay
