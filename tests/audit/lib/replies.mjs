// BEST_REPLY's search: every other first reply, two plies full width, then
// captures and promotions, material only. It only asks whether the side can
// stay above a floor, so an ordinary alpha-beta with a null window answers.

import { MATERIAL, kindOf, nameOf } from './board.mjs';
import { capturedKind, inCheck, legalMoves, positionAfter } from './legal.mjs';
import { materialOf } from './words.mjs';

const MATED = -100000;

const isNoisy = (board, move) => move.promotion || capturedKind(board, move);

// What a move wins at once, for ordering: most first.
const prize = (board, move) => MATERIAL[capturedKind(board, move)] * 16 +
  MATERIAL[move.promotion] * 16 - kindOf(board[move.from]);

function ordered(position, moves) {
  const { board } = position;
  return moves.sort((a, b) => prize(board, b) - prize(board, a));
}

// From the view of the side to move. At depth 0 it may stand still or play
// captures and promotions.
function search(position, depth, alpha, beta) {
  const side = position.turn;
  let best = -Infinity;
  if (depth === 0) {
    best = materialOf(position.board, side);
    if (best >= beta) return best;
  }
  const moves = legalMoves(position);
  if (moves.length === 0) {
    return inCheck(position.board, side) ? MATED : materialOf(position.board, side);
  }
  let floor = Math.max(alpha, best);
  for (const move of ordered(position, moves)) {
    if (depth === 0 && !isNoisy(position.board, move)) continue;
    const next = positionAfter(position, move);
    const value = -search(next, Math.max(depth - 1, 0), -beta, -floor);
    if (value > best) best = value;
    if (best > floor) floor = best;
    if (floor >= beta) break;
  }
  return best;
}

// The name of another reply than `played` after which `side` ends at or below
// `floor`, or null. `played` is null when the line's reply is a pass.
export function worstReply(position, played, side, floor) {
  for (const move of legalMoves(position)) {
    const same = played && move.from === played.from &&
      move.to === played.to && move.promotion === played.promotion;
    if (same) continue;
    const next = positionAfter(position, move);
    if (search(next, 2, floor, floor + 1) <= floor) {
      return `${nameOf(move.from)}${nameOf(move.to)}`;
    }
  }
  return null;
}
