// Features that name a structure which no fixed list of pawns can. Each asks
// about White; the caller flips the board for Black.
import {
  BISHOP, KING, PAWN, QUEEN, fileOf, rankFor, rowOf, shadeOf, squaresOf,
} from '../audit/lib/board.mjs';
import { isPawnAttacked } from '../audit/lib/attacks.mjs';

export const flipBoard = (board) =>
  board.map((_, square) => -board[square ^ 56] || 0);

const pawnsOf = (board, side) => squaresOf(board, side, PAWN);
const onFile = (board, side, file) =>
  pawnsOf(board, side).filter((square) => fileOf(square) === file);
const near = (a, b) => Math.abs(fileOf(a) - fileOf(b));
const FILE_NUMBERS = [0, 1, 2, 3, 4, 5, 6, 7];

function wing(square) {
  if (fileOf(square) < 3) return 'a';
  return fileOf(square) > 4 ? 'h' : '';
}

export function kingsOnDifferentWings({ board }) {
  const wings = wing(board.indexOf(KING)) + wing(board.indexOf(-KING));
  return wings === 'ah' || wings === 'ha';
}

export const isPassed = (board, pawn, side) =>
  pawnsOf(board, -side).every((enemy) =>
    near(enemy, pawn) > 1 || rankFor(enemy, side) <= rankFor(pawn, side)) &&
  onFile(board, side, fileOf(pawn))
    .every((own) => rankFor(own, side) <= rankFor(pawn, side));

export const hasPasser = ({ board }) =>
  pawnsOf(board, 1).some((pawn) => isPassed(board, pawn, 1));

const shades = (board, side) =>
  new Set(squaresOf(board, side, BISHOP).map(shadeOf)).size;
export const hasBishopPair = ({ board }) =>
  shades(board, 1) === 2 && shades(board, -1) < 2;

export const openFile = ({ board }) => FILE_NUMBERS.some((file) =>
  !onFile(board, 1, file).length && !onFile(board, -1, file).length);

export const openCentre = ({ board }) =>
  [1, -1].flatMap((side) => pawnsOf(board, side))
    .filter((pawn) => [3, 4].includes(fileOf(pawn))).length <= 1;

// TERMS.md, CENTRE_CLOSED.
export function lockedCentre({ board }) {
  const inside = (square) => fileOf(square) >= 2 && fileOf(square) <= 5;
  const rams = pawnsOf(board, 1).filter((square) =>
    inside(square) && board[square + 8] === -PAWN);
  const levers = pawnsOf(board, 1).filter(inside).some((square) =>
    [7, 9].some((step) => board[square + step] === -PAWN &&
      Math.abs(fileOf(square + step) - fileOf(square)) === 1 &&
      inside(square + step)));
  return rams.length >= 2 && !levers &&
    rams.some((square) => [3, 4].includes(fileOf(square)));
}

// Doubled on a file that is half-open for Black, and no pawn of White's that
// guards the front one or could come to.
const frontPawns = (board) => FILE_NUMBERS.flatMap((file) => {
  const own = onFile(board, 1, file);
  if (own.length < 2 || onFile(board, -1, file).length) return [];
  const front = own.reduce((a, b) => (rowOf(b) > rowOf(a) ? b : a));
  const helped = pawnsOf(board, 1).some((pawn) =>
    near(pawn, front) === 1 && rowOf(pawn) < rowOf(front));
  return helped ? [] : [front];
});
export const hasDoubled = ({ board }) => frontPawns(board).length > 0;

// TERMS.md, BACKWARD, on a file half-open for the opponent.
export const weakPawn = ({ board }) => pawnsOf(board, 1).some((pawn) => {
  const neighbours = pawnsOf(board, 1).filter((own) => near(own, pawn) === 1);
  return neighbours.length > 0 &&
    neighbours.every((own) => rowOf(own) > rowOf(pawn)) &&
    isPawnAttacked(board, pawn + 8, -1) &&
    !isPawnAttacked(board, pawn + 8, 1) &&
    !onFile(board, -1, fileOf(pawn)).length;
});

export const kingUncastled = ({ board, castling }) =>
  castling !== '' && (board[4] === KING || board[60] === -KING);

// More pawns than the other on files a to c or a to d, the fewer on the rest.
export function majorityOnA({ board }) {
  const count = (side, last) =>
    pawnsOf(board, side).filter((pawn) => fileOf(pawn) <= last).length;
  const total = (side) => pawnsOf(board, side).length;
  return [2, 3].some((last) => count(1, last) > count(-1, last) &&
    total(1) - count(1, last) <= total(-1) - count(-1, last));
}

export const queenless = ({ board }) =>
  !board.includes(QUEEN) && !board.includes(-QUEEN);
