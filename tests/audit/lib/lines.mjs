// Rows whose `line` is the statement itself: LINE, BEST_REPLY, MATE_IN and
// BACK_RANK. `verify` gets the played line: positions (one more than steps)
// and steps (null for a pass).

import {
  KING, fileOf, findKing, onRank, rankFor,
} from './board.mjs';
import { isAttacked } from './attacks.mjs';
import { worstReply } from './replies.mjs';
import { materialOf } from './words.mjs';

const only = ({ squares, others, otherCount }) =>
  (squares.length || others.length || otherCount ? 'the row has no squares' : null);

function checkLine(claim, { positions }) {
  if (!claim.side) return 'no side';
  if (positions.length < 2) return 'no line';
  const before = materialOf(positions[0].board, claim.side);
  const after = materialOf(positions[positions.length - 1].board, claim.side);
  if (after - before === claim.count) return null;
  return `the material changes by ${after - before}`;
}

const LINE = {
  ownLine: true,
  verify: (position, claim, played) => only(claim) ?? checkLine(claim, played),
};

const BEST_REPLY = {
  ownLine: true,
  verify(position, claim, played) {
    const wrong = only(claim) ?? checkLine(claim, played);
    if (wrong) return wrong;
    const { positions, steps } = played;
    // The opponent's first move in the line after one by the side.
    const index = positions.findIndex((each, ply) => ply > 0 &&
      ply < steps.length && each.turn === -claim.side);
    if (index < 0) return 'the line has no reply';
    const before = materialOf(positions[0].board, claim.side);
    const floor = before + claim.count - 100;
    const worse = worstReply(positions[index], steps[index], claim.side, floor);
    return worse ? `${worse} leaves the side 100 or more worse` : null;
  },
};

function checkMate(claim, { positions, steps }) {
  const last = steps[steps.length - 1];
  if (!claim.side) return 'no side';
  if (!last || !last.mate) return 'the line does not end in mate';
  if (positions[steps.length - 1].turn !== claim.side) {
    return 'the other side mates';
  }
  const moves = steps.filter(
    (step, ply) => positions[ply].turn === claim.side).length;
  return moves === claim.count ? null : `it takes ${moves} moves`;
}

const MATE_IN = {
  ownLine: true,
  verify: (position, claim, played) => only(claim) ?? checkMate(claim, played),
};

const BACK_RANK = {
  ownLine: true,
  verify(position, claim, played) {
    const { side, squares, others, otherCount } = claim;
    const wrong = checkMate(claim, played);
    if (wrong) return wrong;
    const { board } = played.positions[played.positions.length - 1];
    const king = findKing(board, -side);
    // The row names no squares of its own; the mated king may be given.
    if (others.length || otherCount ||
        squares.some((square) => board[square] !== -side * KING)) {
      return 'squares may be the mated king only';
    }
    if (rankFor(king, -side) !== 1) return 'the king is not on its first rank';
    for (let file = fileOf(king) - 1; file <= fileOf(king) + 1; file += 1) {
      if (file < 0 || file > 7) continue;
      const square = onRank(file, 2, -side);
      if (board[square] !== -side && !isAttacked(board, square, side)) {
        return 'a square ahead is neither a pawn\'s nor attacked';
      }
    }
    return null;
  },
};

export const LINE_KINDS = { LINE, BEST_REPLY, MATE_IN, BACK_RANK };
