// The piece rows of TERMS.md, part 2, that can be enumerated. Those that are
// verified one by one (routes, attack and siege counts) are in sieges.mjs.

import {
  BISHOP, KING, KNIGHT, PAWN, QUEEN, ROOK, SIDES, WORTH,
  fileOf, kindOf, onRank, rankFor, shadeOf, squaresOf, withTurn,
} from './board.mjs';
import { attackersOf, attacksFrom, isPawnAttacked } from './attacks.mjs';
import { exchangeValue, isHanging } from './exchange.mjs';
import {
  boardAfter, capturedKind, inCheck, legalMoves,
} from './legal.mjs';
import { READINGS } from './readings.mjs';
import {
  cheapestAttacker, isLoose, isOutpost, minorsOf, pawnsOf, pinsOn, queenStart,
  stopSquare, undevelopedMinors,
} from './words.mjs';

const bothSides = (make) => ({
  enumerate: (position) => SIDES.flatMap((side) =>
    make(position.board, side, position).map((claim) => ({ side, ...claim }))),
});

const unitsOf = (board, side) =>
  squaresOf(board, side, PAWN, KNIGHT, BISHOP, ROOK, QUEEN);

const BISHOP_PAIR = bothSides((board, side) => {
  const bishops = squaresOf(board, side, BISHOP);
  return new Set(bishops.map(shadeOf)).size === 2 ? [{ squares: bishops }] : [];
});

const OPPOSITE_BISHOPS = bothSides((board, side) => {
  const own = squaresOf(board, side, BISHOP);
  const enemy = squaresOf(board, -side, BISHOP);
  const holds = own.length === 1 && enemy.length === 1 &&
    shadeOf(own[0]) !== shadeOf(enemy[0]);
  return holds ? [{ squares: own, others: enemy }] : [];
});

const BAD_BISHOP = bothSides((board, side) => squaresOf(board, side, BISHOP)
  .map((bishop) => {
    const pawns = pawnsOf(board, side).filter((pawn) =>
      fileOf(pawn) >= 2 && fileOf(pawn) <= 5 &&
      shadeOf(pawn) === shadeOf(bishop) &&
      kindOf(board[stopSquare(pawn, side)]) === PAWN);
    return { squares: [bishop], others: pawns, count: pawns.length };
  })
  .filter(({ squares: [bishop], others }) => others.length >= 2 &&
    others.some((pawn) => rankFor(bishop, side) <= rankFor(pawn, side))));

const KNIGHT_RIM = bothSides((board, side) => squaresOf(board, side, KNIGHT)
  .filter((square) => fileOf(square) === 0 || fileOf(square) === 7)
  .map((square) => ({ squares: [square] })));

const OUTPOST = bothSides((board, side) => minorsOf(board, side)
  .filter((square) => isOutpost(board, square, side))
  .map((square) => ({ squares: [square] })));

const contesters = (board, square, side) => minorsOf(board, -side).filter(
  (minor) => kindOf(board[minor]) === KNIGHT ||
    shadeOf(minor) === shadeOf(square));

// True of every outpost square; demanded only where a minor piece stands on
// it and something can contest it.
const CONTESTABLE = bothSides((board, side) => [...board.keys()]
  .filter((square) => isOutpost(board, square, side))
  .map((square) => {
    const others = contesters(board, square, side);
    const settled = minorsOf(board, side).includes(square);
    return { squares: [square], others, required: settled && others.length > 0 };
  })
  .filter((claim) => READINGS.contestableByNone || claim.others.length > 0));

const LOOSE = bothSides((board, side) => unitsOf(board, side)
  .filter((square) => isLoose(board, square))
  .map((square) => ({ squares: [square] })));

const HANGING = bothSides((board, side) => (inCheck(board, side) ? [] :
  unitsOf(board, side)
    .map((square) => ({ squares: [square], count: exchangeValue(board, square) }))
    .filter((claim) => claim.count > 0)));

const SCOPE = bothSides((board, side) =>
  squaresOf(board, side, PAWN, KNIGHT, BISHOP, ROOK, QUEEN, KING)
    .map((square) => ({
      squares: [square],
      count: attacksFrom(board, square).filter((to) =>
        board[to] * side <= 0 && !isPawnAttacked(board, to, -side)).length,
      required: ![PAWN, KING].includes(kindOf(board[square])),
    })));

const SQUARE_TAKEN = bothSides((board, side) => [[2, 1], [5, 6]]
  .map(([pawnFile, knightFile]) => ({
    squares: [onRank(pawnFile, 3, side)],
    others: [onRank(knightFile, 1, side)],
  }))
  .filter(({ squares: [pawn], others: [knight] }) =>
    board[pawn] === PAWN * side && board[knight] === KNIGHT * side));

const PINNED = {
  ordered: ['others'],
  ...bothSides((board, side) => pinsOn(board)
    .filter((pin) => pin.side === side)
    .map((pin) => ({ squares: [pin.pinned], others: [pin.slider, pin.behind] }))),
};

const UNDEVELOPED = bothSides((board, side) => {
  const minors = undevelopedMinors(board, side);
  const count = minors.length;
  // "None" is true as well, and nobody has to say it.
  return [{ squares: minors, count, required: count > 0 }];
});

// A way out: a move that does not leave the piece hanging where it lands, or
// (a reading) a capture that is worth the piece.
function isWayOut(board, move) {
  const kind = kindOf(board[move.from]);
  if (WORTH[capturedKind(board, move)] >= WORTH[kind]) {
    return READINGS.equalCaptureFrees;
  }
  return !isHanging(boardAfter(board, move), move.to);
}

function isTrapped(position, square, side) {
  const { board } = position;
  const cheaper = cheapestAttacker(board, square, -side) <
    WORTH[kindOf(board[square])];
  if (!cheaper && !isHanging(board, square)) return false;
  return !legalMoves(withTurn(position, side), square).some(
    (move) => isWayOut(board, move));
}

// Whether the side to move would have to pass while in check.
const passesInCheck = (position, side) =>
  READINGS.noPassInCheck && position.turn !== side &&
  inCheck(position.board, position.turn);

const TRAPPED = bothSides((board, side, position) => {
  if (inCheck(board, side) || passesInCheck(position, side)) return [];
  return squaresOf(board, side, KNIGHT, BISHOP, ROOK, QUEEN)
    .filter((square) => isTrapped(position, square, side))
    .map((square) => ({ squares: [square] }));
});

// Enemy units, queens and kings left out, with a legal move of their own after
// which they attack the queen and are not hanging.
function chasers(position, queen, side) {
  const { board } = position;
  const turned = withTurn(position, -side);
  return squaresOf(board, -side, PAWN, KNIGHT, BISHOP, ROOK).filter((unit) =>
    legalMoves(turned, unit).some((move) => {
      if (move.to === queen) return false;
      const next = boardAfter(board, move);
      return attackersOf(next, queen, -side).includes(move.to) &&
        !isHanging(next, move.to);
    })).length;
}

const EARLY_QUEEN = bothSides((board, side, position) => {
  if (undevelopedMinors(board, side).length < 2) return [];
  if (passesInCheck(position, -side)) return [];
  return squaresOf(board, side, QUEEN)
    .filter((queen) => queen !== queenStart(side))
    .map((queen) => ({
      squares: [queen],
      count: chasers(position, queen, side),
    }));
});

export const PIECE_KINDS = {
  BISHOP_PAIR,
  OPPOSITE_BISHOPS,
  BAD_BISHOP,
  KNIGHT_RIM,
  OUTPOST,
  CONTESTABLE,
  LOOSE,
  HANGING,
  SCOPE,
  SQUARE_TAKEN,
  PINNED,
  UNDEVELOPED,
  TRAPPED,
  EARLY_QUEEN,
};
