// The exchange value of a square, as part 1 of TERMS.md defines it ("hanging"):
// the sides alternately capture on that square by legal moves or stop. Brute
// force over every order of capture; a state is fixed by which pieces have
// come and which stands on the square now, so states are remembered.

import { KING, MATERIAL, PAWN, QUEEN, kindOf, rankFor } from './board.mjs';
import { attackersOf, isAttacked } from './attacks.mjs';

const PROMOTION_GAIN = MATERIAL[QUEEN] - MATERIAL[PAWN];

// Plays one capture on `square` and returns the board, or null when it would
// leave the own king attacked.
function capture(board, from, square, side) {
  const piece = board[from];
  const next = board.slice();
  next[from] = 0;
  const promotes = kindOf(piece) === PAWN && rankFor(square, side) === 8;
  next[square] = promotes ? QUEEN * side : piece;
  const king = next.indexOf(KING * side);
  if (king >= 0 && isAttacked(next, king, -side)) return null;
  return { next, promotes };
}

function best(board, square, side, memory, came) {
  const attackers = attackersOf(board, square, side);
  if (attackers.length === 0) return 0;
  // `came` lists who has captured so far; the last one stands there. Sorting
  // the earlier ones makes different orders of the same captures one state.
  const key = came.length > 2
    ? `${came.slice(0, -1).sort().join()}|${came[came.length - 1]}`
    : '';
  if (key && memory.has(key)) return memory.get(key);
  const prize = MATERIAL[kindOf(board[square])];
  let value = 0;
  for (const from of attackers) {
    const played = capture(board, from, square, side);
    if (!played) continue;
    const gain = prize + (played.promotes ? PROMOTION_GAIN : 0);
    // Not even an unanswered capture would improve on what is known.
    if (gain <= value) continue;
    const answer = best(played.next, square, -side, memory, [...came, from]);
    if (gain - answer > value) value = gain - answer;
  }
  if (key) memory.set(key, value);
  return value;
}

// What the other side gains by starting captures on `square`, never below 0.
// Whose turn it is does not matter: TERMS.md lets the other side begin, after
// a pass if need be.
export function exchangeValue(board, square) {
  const piece = board[square];
  if (piece === 0 || kindOf(piece) === KING) return 0;
  const other = piece > 0 ? -1 : 1;
  return best(board, square, other, new Map(), []);
}

export const isHanging = (board, square) => exchangeValue(board, square) > 0;
