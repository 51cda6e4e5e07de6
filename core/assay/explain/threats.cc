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
  const std::string who = Name(side);
  if (win.mates()) {
    threat.text =
        who + (to_move ? " mates" : " threatens mate") + ": " + told.line + ".";
  } else {
    threat.line.resize(win.spoils->shown_plies);
    threat.gain_cp = win.spoils->gain;
    threat.text = who + (to_move ? " wins " : " threatens to win ") +
                  told.what + told.Evidence() + ".";
  }
  return threat;
}

}  // namespace assay
