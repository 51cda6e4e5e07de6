// Legal moves on the light board. chess.js is the authority on the rules but
// is too slow for the thousands of trial moves that TRAPPED, EARLY_QUEEN and
// BEST_REPLY need, so this generator exists, and selftest.mjs proves it equal
// to chess.js, move for move, on a seeded sample.
//
// It also serves a side that is not to move ("after a pass"), which chess.js
// refuses to set up when the passing side is in check.

import {
  BISHOP, BLACK, KING, KNIGHT, PAWN, QUEEN, ROOK, WHITE,
  findKing, kindOf, rankFor,
} from './board.mjs';
import { attacksFrom, isAttacked, pawnReach } from './attacks.mjs';

const PROMOTIONS = [QUEEN, ROOK, BISHOP, KNIGHT];

function addPawnMove(moves, from, to, side, extra) {
  if (rankFor(to, side) === 8) {
    for (const promotion of PROMOTIONS) moves.push({ from, to, promotion });
  } else {
    moves.push({ from, to, promotion: 0, ...extra });
  }
}

function pawnMoves(position, from, moves) {
  const { board, turn: side, enPassant } = position;
  const step = from + 8 * side;
  if (board[step] === 0) {
    addPawnMove(moves, from, step, side);
    const leap = step + 8 * side;
    if (rankFor(from, side) === 2 && board[leap] === 0) {
      moves.push({ from, to: leap, promotion: 0 });
    }
  }
  for (const to of pawnReach(from, side)) {
    if (board[to] * side < 0) {
      addPawnMove(moves, from, to, side);
    } else if (to === enPassant && rankFor(to, side) === 6) {
      const victim = to - 8 * side;
      if (board[to] === 0 && board[victim] === -PAWN * side) {
        moves.push({ from, to, promotion: 0, victim });
      }
    }
  }
}

// [right, king from, king to, rook from, rook to]; the king's path is the
// three squares from `king from` to `king to`.
const CASTLINGS = {
  [WHITE]: [['K', 4, 6, 7, 5], ['Q', 4, 2, 0, 3]],
  [BLACK]: [['k', 60, 62, 63, 61], ['q', 60, 58, 56, 59]],
};

function castlingMoves(position, moves) {
  const { board, turn: side, castling } = position;
  for (const [right, from, to, rookFrom, rookTo] of CASTLINGS[side]) {
    if (!castling.includes(right)) continue;
    if (board[from] !== KING * side || board[rookFrom] !== ROOK * side) continue;
    const low = Math.min(from, rookFrom) + 1;
    const high = Math.max(from, rookFrom);
    let free = true;
    for (let square = low; square < high; square += 1) {
      if (board[square] !== 0) free = false;
    }
    if (!free) continue;
    const path = [from, rookTo, to];
    if (path.some((square) => isAttacked(board, square, -side))) continue;
    moves.push({ from, to, promotion: 0, rookFrom, rookTo });
  }
}

function pseudoMoves(position, from, moves) {
  const { board, turn: side } = position;
  const kind = kindOf(board[from]);
  if (kind === PAWN) {
    pawnMoves(position, from, moves);
    return;
  }
  for (const to of attacksFrom(board, from)) {
    if (board[to] * side <= 0) moves.push({ from, to, promotion: 0 });
  }
  if (kind === KING) castlingMoves(position, moves);
}

// The board after a move; the given board is left alone.
export function boardAfter(board, move) {
  const next = board.slice();
  const piece = next[move.from];
  next[move.from] = 0;
  if (move.victim !== undefined) next[move.victim] = 0;
  next[move.to] = move.promotion ? move.promotion * Math.sign(piece) : piece;
  if (move.rookFrom !== undefined) {
    next[move.rookTo] = next[move.rookFrom];
    next[move.rookFrom] = 0;
  }
  return next;
}

const CORNER_RIGHT = { 7: 'K', 0: 'Q', 63: 'k', 56: 'q' };

// The whole position after a move: rights and en passant kept up to date.
export function positionAfter(position, move) {
  const { board, turn: side } = position;
  const kind = kindOf(board[move.from]);
  let castling = position.castling;
  if (castling) {
    if (kind === KING) {
      castling = castling.replace(side === WHITE ? /[KQ]/g : /[kq]/g, '');
    }
    for (const square of [move.from, move.to]) {
      const right = CORNER_RIGHT[square];
      if (right) castling = castling.replace(right, '');
    }
  }
  const leap = kind === PAWN && Math.abs(move.to - move.from) === 16;
  return {
    board: boardAfter(board, move),
    turn: -side,
    castling,
    enPassant: leap ? move.from + 8 * side : -1,
  };
}

export function inCheck(board, side) {
  const king = findKing(board, side);
  return king >= 0 && isAttacked(board, king, -side);
}

// All legal moves of the side to move, or only those from one square.
export function legalMoves(position, only = -1) {
  const { board, turn: side } = position;
  const moves = [];
  for (let from = 0; from < 64; from += 1) {
    if (board[from] * side <= 0 || (only >= 0 && from !== only)) continue;
    pseudoMoves(position, from, moves);
  }
  return moves.filter((move) => {
    // A king is never taken: with the other side passing in check this could
    // otherwise come up.
    if (kindOf(board[move.to]) === KING) return false;
    return !inCheck(boardAfter(board, move), side);
  });
}

// The value of what a move takes, as a piece kind; 0 for none.
export const capturedKind = (board, move) =>
  move.victim !== undefined ? PAWN : kindOf(board[move.to]);
