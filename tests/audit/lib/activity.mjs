// The project's own kinds on activity, from their definitions beside their
// numbers in proto/assay/v1/claim.proto.

import {
  BISHOP, KNIGHT, PAWN, QUEEN, ROOK, SIDES,
  findKing, kindOf, kingSteps, rankFor, squaresOf,
} from './board.mjs';
import {
  KING_REACH, attackersOf, attacksFrom,
} from './attacks.mjs';
import { isPinned, minorsOf, pawnsOf, stopSquare } from './words.mjs';

const bothSides = (make) => ({
  enumerate: (position) => SIDES.flatMap((side) =>
    make(position.board, side).map((claim) => ({ side, ...claim }))),
});

const everySquare = (board) => [...board.keys()];
const allPawns = (board) => SIDES.flatMap((side) => pawnsOf(board, side));

// What a piece of `side` on `from` would attack on `square`, all else as it is.
function wouldAttack(board, from, square) {
  const moved = board.slice();
  moved[square] = board[from];
  return attacksFrom(moved, square);
}

const CHECK_SQUARE = bothSides((board, side) => {
  const king = findKing(board, -side);
  const pieces = squaresOf(board, side, KNIGHT, BISHOP, ROOK, QUEEN)
    .filter((from) => !isPinned(board, from));
  return everySquare(board)
    .filter((square) => board[square] * side <= 0 && square !== king)
    .map((square) => ({
      squares: [square],
      others: pieces.filter((from) => attacksFrom(board, from).includes(square) &&
        wouldAttack(board, from, square).includes(king)),
    }))
    .filter(({ others }) => others.length > 0)
    .filter(({ squares: [square] }) => {
      const guards = attackersOf(board, square, -side);
      if (guards.length === 0) return true;
      return guards.length === 1 && guards[0] === king &&
        attackersOf(board, square, side).length >= 2;
    });
});

const advance = (board, side) => pawnsOf(board, side)
  .reduce((sum, pawn) => sum + Math.max(0, rankFor(pawn, side) - 3), 0);

const PAWN_ADVANCE = bothSides((board, side) => [{
  squares: pawnsOf(board, side).filter((pawn) => rankFor(pawn, side) > 3),
  count: advance(board, side), otherCount: advance(board, -side),
}]);

const farControl = (board, side) => everySquare(board).filter((square) =>
  rankFor(square, side) >= 5 &&
  attackersOf(board, square, side).length > 0).length;

const FAR_CONTROL = bothSides((board, side) => [{
  count: farControl(board, side), otherCount: farControl(board, -side),
}]);

const stepsToPawns = (board, king) => allPawns(board)
  .reduce((sum, pawn) => sum + kingSteps(king, pawn), 0);

const KING_PAWNS = bothSides((board, side) => {
  if (allPawns(board).length === 0) return [];
  const own = findKing(board, side);
  const other = findKing(board, -side);
  return [{
    squares: [own],
    others: [other],
    count: stepsToPawns(board, own),
    otherCount: stepsToPawns(board, other),
  }];
});

const KING_ZONE = bothSides((board, side) => {
  const king = findKing(board, side);
  const zone = everySquare(board).filter((to) => kingSteps(king, to) <= 2);
  const enemies = (square) => attackersOf(board, square, -side).length;
  const guards = (square) => attackersOf(board, square, side).length;
  const squares = zone.filter((to) => enemies(to) >= 2);
  const others = zone.filter((to) => enemies(to) > 0 && guards(to) < 2);
  return [{
    squares,
    others,
    count: squares.length,
    otherCount: others.length,
  }];
});

const SCREENED = bothSides((board, side) => minorsOf(board, side)
  .map((minor) => ({ squares: [minor], others: [stopSquare(minor, side)] }))
  .filter(({ others: [ahead] }) => kindOf(board[ahead] ?? 0) === PAWN));

const KING_SHUT = bothSides((board, side) => {
  const king = findKing(board, side);
  const shut = KING_REACH[king].every((to) => board[to] * side > 0 ||
    attackersOf(board, to, -side).length > 0);
  return shut ? [{ squares: [king] }] : [];
});

export const ACTIVITY_KINDS = {
  CHECK_SQUARE,
  PAWN_ADVANCE,
  FAR_CONTROL,
  KING_PAWNS,
  KING_ZONE,
  SCREENED,
  KING_SHUT,
};
