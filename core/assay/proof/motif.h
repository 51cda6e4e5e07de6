// The idea by which a line wins what it wins.
#ifndef ASSAY_PROOF_MOTIF_H_
#define ASSAY_PROOF_MOTIF_H_

#include <vector>

#include "assay/facts/claim.h"
#include "assay/proof/spoils.h"

namespace assay {

enum class Motif : std::uint8_t {
  kNone,            // play wins, but no single idea says how
  kFork,            // one piece attacks two things
  kSkewer,          // one must leave, and what is behind it falls
  kDiscovered,      // a move uncovers another piece's attack
  kPin,             // a pinned piece falls
  kOverloaded,      // one guard cannot guard two things
  kGuardRemoved,    // the guard is captured first
  kPinnedDefender,  // what seems to guard is pinned
  kTrapped,         // a piece has no way out
  kUndefended,      // nothing guards what falls
  kExchange,        // captures on one square come out ahead
  kPromotion,       // a pawn goes through
  kMate,
  kBackRankMate,
};

// "fork", "back_rank", ...: Caution.kind of the public contract; "search" for
// kNone.
const char* Name(Motif motif);

struct MotifFound {
  Motif motif = Motif::kNone;
  // Of the move that shows it; with kUndefended, kExchange, kPinnedDefender
  // and others that stand on the board already, of the capture itself.
  std::size_t ply = 0;
  // What it rests on, the most telling first; each with the line after which
  // it holds. With kPin, kPinnedDefender: PIN_WINS or PINNED. With kOverloaded:
  // SOLE_GUARD.
  std::vector<Claim> claims;
};

// The idea behind what the line wins.
MotifFound FindMotif(const Position& position, const std::vector<Move>& line,
                     const Spoils& spoils);

// The same for a line that ends in mate by the side.
MotifFound FindMateMotif(const Position& position,
                         const std::vector<Move>& line, Side side);

}  // namespace assay

#endif  // ASSAY_PROOF_MOTIF_H_
