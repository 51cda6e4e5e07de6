// The ending rows of TERMS.md, part 2, and the small facts beside them.

import {
  BISHOP, KING, KNIGHT, PAWN, ROOK, SIDES,
  fileOf, findKing, kindOf, kingSteps, onRank, rankFor, shadeOf, squaresOf,
} from './board.mjs';
import { legalMoves } from './legal.mjs';
import {
  between, isAhead, isClear, isPassed, pawnsOf,
} from './words.mjs';

const bothSides = (make) => ({
  enumerate: (position) => SIDES.flatMap((side) =>
    make(position.board, side, position).map((claim) => ({ side, ...claim }))),
});

// Everything on the board but the kings.
const others = (board) => [...board.keys()].filter(
  (square) => board[square] !== 0 && kindOf(board[square]) !== KING);

// FIDE Laws 5.2.2 as material: K v K, K+B v K, K+N v K, bishops of one colour.
export function isInsufficient(board) {
  const units = others(board);
  if (units.length === 0) return true;
  if (units.length === 1 && kindOf(board[units[0]]) === KNIGHT) return true;
  return units.every((square) => kindOf(board[square]) === BISHOP) &&
    new Set(units.map(shadeOf)).size === 1;
}

const INSUFFICIENT = {
  sideless: true,
  enumerate: ({ board }) => (isInsufficient(board) ? [{ side: 0 }] : []),
};

const promotionSquare = (pawn, side) => onRank(fileOf(pawn), 8, side);

const WRONG_BISHOP = bothSides((board, side) => {
  const bishops = squaresOf(board, side, BISHOP);
  const pawns = pawnsOf(board, side);
  const alone = others(board).length === bishops.length + pawns.length;
  if (!alone || bishops.length !== 1 || pawns.length === 0) return [];
  const wrong = pawns.every((pawn) =>
    (fileOf(pawn) === 0 || fileOf(pawn) === 7) &&
    shadeOf(promotionSquare(pawn, side)) !== shadeOf(bishops[0]));
  return wrong ? [{ squares: [...bishops, ...pawns] }] : [];
});

const SQUARE_RULE = bothSides((board, side, position) => {
  const [pawn, ...rest] = others(board);
  if (pawn === undefined || rest.length || board[pawn] !== PAWN * side) return [];
  const need = 8 - Math.max(rankFor(pawn, side), 3);
  const goal = promotionSquare(pawn, side);
  const distance = kingSteps(findKing(board, -side), goal);
  const king = findKing(board, side);
  if (fileOf(king) === fileOf(pawn) && isAhead(king, pawn, side)) return [];
  const margin = position.turn === side ? need : need + 1;
  return distance > margin ? [{ squares: [pawn] }] : [];
});

const OPPOSITION = bothSides((board, side, position) => {
  const kings = [findKing(board, 1), findKing(board, -1)];
  const gap = between(...kings);
  const holds = gap !== null && gap.length % 2 === 1 && position.turn !== side;
  return holds ? [{ squares: kings }] : [];
});

const TO_MOVE = bothSides((board, side, position) =>
  (position.turn === side ? [{}] : []));

// Beyond TERMS.md, the project's own kind: the side is to move and has no
// legal move; the square is its king's.
const NO_LEGAL_MOVE = bothSides((board, side, position) =>
  (position.turn === side && legalMoves(position).length === 0
    ? [{ squares: [findKing(board, side)] }] : []));

const ROOK_BEHIND = bothSides((board, side) => squaresOf(board, side, ROOK)
  .flatMap((rook) => SIDES.flatMap((owner) => pawnsOf(board, owner)
    .filter((pawn) => fileOf(pawn) === fileOf(rook) &&
      isPassed(board, pawn, owner) && isAhead(pawn, rook, owner) &&
      isClear(board, rook, pawn))
    .map((pawn) => ({ squares: [rook], others: [pawn] })))));

// Any square may be named, so the distance is recounted and not listed.
const KING_DISTANCE = {
  verify({ board }, { side, squares, others: rest, count, otherCount }) {
    if (squares.length !== 2 || rest.length || otherCount) {
      return 'a king and a square are needed';
    }
    const [king, square] = squares;
    const owned = side ? board[king] === KING * side
      : kindOf(board[king]) === KING;
    if (!owned) return 'no king of that side on the first square';
    const steps = kingSteps(king, square);
    return steps === count ? null : `the distance is ${steps}`;
  },
};

export const ENDING_KINDS = {
  INSUFFICIENT,
  WRONG_BISHOP,
  SQUARE_RULE,
  OPPOSITION,
  TO_MOVE,
  NO_LEGAL_MOVE,
  ROOK_BEHIND,
  KING_DISTANCE,
};
