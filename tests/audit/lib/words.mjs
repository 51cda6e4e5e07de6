// Part 1 of TERMS.md: the words that the claims are made of. Everything here
// takes a board and answers about one side; nothing knows of claims.

import {
  BISHOP, KING, KNIGHT, MATERIAL, PAWN, QUEEN, ROOK, WHITE, WORTH,
  at, fileOf, kindOf, onRank, rankFor, rowOf, sideOf, squaresOf,
} from './board.mjs';
import {
  RAYS, attackersOf, isPawnAttacked, pawnReach, slideDirections,
} from './attacks.mjs';

export const PIECES = [KNIGHT, BISHOP, ROOK, QUEEN];
export const WINGS = [[0, 1, 2], [3, 4], [5, 6, 7]];

export const pawnsOf = (board, side) => squaresOf(board, side, PAWN);
export const minorsOf = (board, side) => squaresOf(board, side, KNIGHT, BISHOP);

export const stopSquare = (pawn, side) => pawn + 8 * side;

// The enemy pawn on a pawn's stop square, or -1.
export function rammedPawn(board, pawn, side) {
  const stop = stopSquare(pawn, side);
  return board[stop] === -PAWN * side ? stop : -1;
}

// The enemy pawns that a pawn on `square` forms a lever with. Attack between
// opposing pawns is mutual, so looking one way is enough.
export const leverPawns = (board, square, side) =>
  pawnReach(square, side).filter((to) => board[to] === -PAWN * side);

export const onAdjacentFile = (a, b) => Math.abs(fileOf(a) - fileOf(b)) === 1;

export const isAhead = (square, of, side) =>
  rankFor(square, side) > rankFor(of, side);

export const pawnsOnFile = (board, file, side) =>
  pawnsOf(board, side).filter((square) => fileOf(square) === file);

function fileState(board, file) {
  const white = pawnsOnFile(board, file, WHITE).length;
  const black = pawnsOnFile(board, file, -WHITE).length;
  return { [WHITE]: white, [-WHITE]: black };
}

export function isOpenFile(board, file) {
  const state = fileState(board, file);
  return state[1] === 0 && state[-1] === 0;
}

export function isHalfOpenFile(board, file, side) {
  const state = fileState(board, file);
  return state[side] === 0 && state[-side] > 0;
}

export function islandCount(board, side) {
  const has = [0, 1, 2, 3, 4, 5, 6, 7].map(
    (file) => pawnsOnFile(board, file, side).length > 0);
  return has.filter((here, file) => here && !has[file - 1]).length;
}

export function isPassed(board, pawn, side) {
  const file = fileOf(pawn);
  const free = (square) =>
    Math.abs(fileOf(square) - file) > 1 || !isAhead(square, pawn, side);
  const ownFree = (square) =>
    fileOf(square) !== file || !isAhead(square, pawn, side);
  return pawnsOf(board, -side).every(free) && pawnsOf(board, side).every(ownFree);
}

export const isIsolated = (board, pawn, side) =>
  !pawnsOf(board, side).some((other) => onAdjacentFile(other, pawn));

export function isBackward(board, pawn, side) {
  const neighbours = pawnsOf(board, side).filter(
    (other) => onAdjacentFile(other, pawn));
  if (neighbours.length === 0) return false;
  if (!neighbours.every((other) => isAhead(other, pawn, side))) return false;
  const stop = stopSquare(pawn, side);
  return isPawnAttacked(board, stop, -side) && !isPawnAttacked(board, stop, side);
}

export function isHole(board, square, side) {
  const rank = rankFor(square, side);
  const file = fileOf(square);
  if (rank < 3 || rank > 5 || file < 1 || file > 6) return false;
  return !pawnsOf(board, side).some(
    (pawn) => onAdjacentFile(pawn, square) && isAhead(square, pawn, side));
}

export function isOutpost(board, square, side) {
  const rank = rankFor(square, side);
  if (rank < 4 || rank > 6) return false;
  if (!isPawnAttacked(board, square, side)) return false;
  return !pawnsOf(board, -side).some(
    (pawn) => onAdjacentFile(pawn, square) && isAhead(pawn, square, side));
}

export const isLoose = (board, square) => {
  const kind = kindOf(board[square]);
  if (kind < KNIGHT || kind === KING) return false;
  return attackersOf(board, square, sideOf(board[square])).length === 0;
};

// Every pin on the board: { pinned, slider, behind, side }, the side being
// that of the pinned piece.
export function pinsOn(board) {
  const pins = [];
  for (let slider = 0; slider < 64; slider += 1) {
    if (board[slider] === 0) continue;
    const side = -sideOf(board[slider]);
    const price = WORTH[kindOf(board[slider])];
    for (const direction of slideDirections(kindOf(board[slider]))) {
      const [pinned, behind] = RAYS[slider][direction].filter(
        (square) => board[square] !== 0);
      if (behind === undefined) continue;
      const ofOneSide = sideOf(board[pinned]) === side &&
        sideOf(board[behind]) === side;
      if (!ofOneSide) continue;
      if (kindOf(board[pinned]) === KING) continue;
      const worth = WORTH[kindOf(board[behind])];
      const absolute = kindOf(board[behind]) === KING;
      if (absolute || (worth > WORTH[kindOf(board[pinned])] && worth > price)) {
        pins.push({ pinned, slider, behind, side });
      }
    }
  }
  return pins;
}

export const isPinned = (board, square) =>
  pinsOn(board).some((pin) => pin.pinned === square);

const START_FILES = { [KNIGHT]: [1, 6], [BISHOP]: [2, 5] };

export const undevelopedMinors = (board, side) =>
  minorsOf(board, side).filter((square) =>
    rankFor(square, side) === 1 &&
    START_FILES[kindOf(board[square])].includes(fileOf(square)));

export const queenStart = (side) => onRank(3, 1, side);

// Squares strictly between two squares of one line; null when not aligned.
export function between(a, b) {
  const df = Math.sign(fileOf(b) - fileOf(a));
  const dr = Math.sign(rowOf(b) - rowOf(a));
  const steps = Math.max(
    Math.abs(fileOf(b) - fileOf(a)), Math.abs(rowOf(b) - rowOf(a)));
  if (steps === 0) return null;
  if (at(fileOf(a) + df * steps, rowOf(a) + dr * steps) !== b) return null;
  if (fileOf(a) + df * steps !== fileOf(b)) return null;
  const found = [];
  for (let step = 1; step < steps; step += 1) {
    found.push(at(fileOf(a) + df * step, rowOf(a) + dr * step));
  }
  return found;
}

export const isClear = (board, a, b) => {
  const squares = between(a, b);
  return squares !== null && squares.every((square) => board[square] === 0);
};

export const isRookOrQueen = (piece) =>
  kindOf(piece) === ROOK || kindOf(piece) === QUEEN;
export const isMinor = (piece) =>
  kindOf(piece) === KNIGHT || kindOf(piece) === BISHOP;

// The least piece value among the attackers of a side; Infinity for none.
export const cheapestAttacker = (board, square, side) =>
  Math.min(...attackersOf(board, square, side).map(
    (from) => WORTH[kindOf(board[from])]));

// All units of a side less the other's; kings count nothing.
export function materialOf(board, side) {
  let sum = 0;
  for (const piece of board) {
    sum += MATERIAL[kindOf(piece)] * Math.sign(piece) * side;
  }
  return sum;
}
