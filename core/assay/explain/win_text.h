// In words: what a side wins, and by which idea.
#ifndef ASSAY_EXPLAIN_WIN_TEXT_H_
#define ASSAY_EXPLAIN_WIN_TEXT_H_

#include <string>

#include "assay/explain/claim_table.h"
#include "assay/explain/message.h"
#include "assay/proof/motif.h"
#include "assay/proof/questions.h"

namespace assay {

// Parts of sentences; claims are those that all of them stand on.
struct WinText {
  Motif motif = Motif::kNone;
  Message what;      // "the rook on a8", "the exchange"; none where it mates
  Message how;       // "12. Nc7+ forks ..."; none where no one idea says how
  std::string line;  // "12. Nc7+ Kd8 13. Nxa8"
  ClaimRefs claims;

  // "how (line)", for the end of a sentence.
  Message Evidence() const { return Say("win.evidence", how, line); }
};

// The win is of the side; its line starts at the position.
WinText TellWin(const Position& position, Side side, const Win& win,
                ClaimTable& table);

// What captures gain, in words by the size of the gain: "a piece's worth".
Message GainOf(int value);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_WIN_TEXT_H_
