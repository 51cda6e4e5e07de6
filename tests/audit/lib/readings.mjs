// Where TERMS.md leaves room, the reading that the auditor takes. Each is one
// switch, explained in QUESTIONS.md under the same name, so that an answer to
// a question is one line here.

export const READINGS = {
  // "none in check" in "lever move": no lever moves for either side while the
  // side to move is in check. False: only the pass is forbidden in check.
  noLeverMovesInCheck: true,
  // TRAPPED and EARLY_QUEEN: "after a pass" needs a legal pass, so there is no
  // such claim where the side to pass is in check. False: the turn is simply
  // handed over.
  noPassInCheck: true,
  // TRAPPED: a capture of at least its own value is a way out. False: such
  // captures are merely left out of "every legal move".
  equalCaptureFrees: true,
  // OUTPOST_ROUTE and SIEGE_COUNT: a stop on the way may take an enemy piece
  // (a capture is a move). False: every stop must be empty.
  routesMayCapture: true,
  // SIEGE_COUNT: kings walk too. False: the king counts only where it
  // attacks the target now.
  siegeMovesKings: false,
  // KING_ATTACKERS: the enemy king counts as a piece.
  kingAttackersCountKing: true,
  // CONTESTABLE may say "by none" (no others).
  contestableByNone: true,
  // BLOCKADE: the king is a piece; a pawn is not.
  kingBlockades: true,
  // FORK: what is forked are pieces. True would let pawns count too.
  forkCountsPawns: false,
};
