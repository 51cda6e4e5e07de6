// Attacks by geometry alone: TERMS.md counts attackers on the current board,
// pins ignored and without x-rays, so no legality belongs here.

import {
  BISHOP, KING, KNIGHT, PAWN, QUEEN, ROOK, WHITE,
  at, fileOf, kindOf, rowOf,
} from './board.mjs';

// Four straight directions, then four diagonal ones.
const DIRECTIONS = [
  [0, 1], [0, -1], [1, 0], [-1, 0],
  [1, 1], [-1, 1], [1, -1], [-1, -1],
];
const KNIGHT_JUMPS = [
  [1, 2], [2, 1], [2, -1], [1, -2], [-1, -2], [-2, -1], [-2, 1], [-1, 2],
];

const inside = (file, row) => file >= 0 && file < 8 && row >= 0 && row < 8;

function jumps(square, offsets) {
  const found = [];
  for (const [df, dr] of offsets) {
    const file = fileOf(square) + df;
    const row = rowOf(square) + dr;
    if (inside(file, row)) found.push(at(file, row));
  }
  return found;
}

function ray(square, [df, dr]) {
  const found = [];
  let file = fileOf(square) + df;
  let row = rowOf(square) + dr;
  while (inside(file, row)) {
    found.push(at(file, row));
    file += df;
    row += dr;
  }
  return found;
}

const all = Array.from({ length: 64 }, (_, square) => square);

// RAYS[square][direction]: the squares from there to the edge, nearest first.
export const RAYS = all.map((s) => DIRECTIONS.map((d) => ray(s, d)));
const KNIGHT_REACH = all.map((s) => jumps(s, KNIGHT_JUMPS));
export const KING_REACH = all.map((s) => jumps(s, DIRECTIONS));
const WHITE_PAWN_REACH = all.map((s) => jumps(s, [[-1, 1], [1, 1]]));
const BLACK_PAWN_REACH = all.map((s) => jumps(s, [[-1, -1], [1, -1]]));

export const pawnReach = (square, side) =>
  (side === WHITE ? WHITE_PAWN_REACH : BLACK_PAWN_REACH)[square];

// The directions (indices into DIRECTIONS) that a slider moves in.
const STRAIGHT = [0, 1, 2, 3];
const DIAGONAL = [4, 5, 6, 7];
const EVERY = [0, 1, 2, 3, 4, 5, 6, 7];
const NONE = [];
export function slideDirections(kind) {
  if (kind === BISHOP) return DIAGONAL;
  if (kind === ROOK) return STRAIGHT;
  return kind === QUEEN ? EVERY : NONE;
}

// The squares of `side` that attack `square`.
export function attackersOf(board, square, side) {
  const found = [];
  for (const from of pawnReach(square, -side)) {
    if (board[from] === PAWN * side) found.push(from);
  }
  for (const from of KNIGHT_REACH[square]) {
    if (board[from] === KNIGHT * side) found.push(from);
  }
  for (const from of KING_REACH[square]) {
    if (board[from] === KING * side) found.push(from);
  }
  for (let direction = 0; direction < 8; direction += 1) {
    const slider = direction < 4 ? ROOK : BISHOP;
    for (const from of RAYS[square][direction]) {
      const piece = board[from] * side;
      if (piece === 0) continue;
      if (piece === slider || piece === QUEEN) found.push(from);
      break;
    }
  }
  return found;
}

export function isAttacked(board, square, side) {
  for (const from of pawnReach(square, -side)) {
    if (board[from] === PAWN * side) return true;
  }
  for (const from of KNIGHT_REACH[square]) {
    if (board[from] === KNIGHT * side) return true;
  }
  for (const from of KING_REACH[square]) {
    if (board[from] === KING * side) return true;
  }
  for (let direction = 0; direction < 8; direction += 1) {
    const slider = direction < 4 ? ROOK : BISHOP;
    for (const from of RAYS[square][direction]) {
      const piece = board[from] * side;
      if (piece === 0) continue;
      if (piece === slider || piece === QUEEN) return true;
      break;
    }
  }
  return false;
}

export function isPawnAttacked(board, square, side) {
  return pawnReach(square, -side).some((from) => board[from] === PAWN * side);
}

// What a piece of `kind` and `side` would attack from `square`, whatever
// stands there now.
export function reachFrom(board, square, kind, side) {
  if (kind === PAWN) return pawnReach(square, side);
  if (kind === KNIGHT) return KNIGHT_REACH[square];
  if (kind === KING) return KING_REACH[square];
  const found = [];
  for (const direction of slideDirections(kind)) {
    for (const to of RAYS[square][direction]) {
      found.push(to);
      if (board[to] !== 0) break;
    }
  }
  return found;
}

// What the piece that stands on `square` attacks.
export function attacksFrom(board, square) {
  const piece = board[square];
  return reachFrom(board, square, kindOf(piece), piece > 0 ? 1 : -1);
}
