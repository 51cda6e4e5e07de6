// EXACT: recomputed from the auditor's own tables where one side has a bare
// king and the other a king and at most one unit, or where material cannot
// mate. Larger endings are counted as not audited.

import { KING, WHITE, findKing, kindOf, sideOf } from './board.mjs';
import { isInsufficient } from './endings.mjs';
import { isWon } from './tables.mjs';

export const SKIPPED = Symbol('not audited');

const flip = (square, side) => (side === WHITE ? square : square ^ 56);

// 1, 0 or -1 for the side to move; undefined when no table covers it.
function exactResult({ board, turn }) {
  if (isInsufficient(board)) return 0;
  const units = [...board.keys()].filter(
    (square) => board[square] !== 0 && kindOf(board[square]) !== KING);
  if (units.length !== 1) return undefined;
  const [unit] = units;
  const owner = sideOf(board[unit]);
  const won = isWon(
    kindOf(board[unit]), turn === owner, flip(findKing(board, owner), owner),
    flip(findKing(board, -owner), owner), flip(unit, owner));
  if (!won) return 0;
  return turn === owner ? 1 : -1;
}

const EXACT = {
  verify(position, { side, squares, others, count, otherCount }) {
    if (squares.length || others.length || otherCount) return 'the row has a count';
    if (![1, 0, -1].includes(count)) return 'no result';
    if (side && side !== position.turn) return 'the other side is to move';
    const result = exactResult(position);
    if (result === undefined) return SKIPPED;
    return result === count ? null : `the result is ${result}`;
  },
};

export const EXACT_KINDS = { EXACT };
