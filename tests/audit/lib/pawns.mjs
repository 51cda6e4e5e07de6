// The pawn rows of TERMS.md, part 2. Every kind here can be enumerated: the
// list is complete, so a claim is true exactly when it is in the list.

import {
  PAWN, SIDES, fileOf, kindOf, rankFor, sideOf, squaresOf, withTurn,
} from './board.mjs';
import { isPawnAttacked } from './attacks.mjs';
import { boardAfter, inCheck, legalMoves } from './legal.mjs';
import { READINGS } from './readings.mjs';
import {
  WINGS, isAhead, isBackward, isHole, isIsolated, isPassed, islandCount,
  leverPawns, onAdjacentFile, pawnsOf, pawnsOnFile, rammedPawn, stopSquare,
} from './words.mjs';

// One list for both sides, made of what `make` finds for one side.
const bothSides = (make) => ({
  enumerate: (position) => SIDES.flatMap((side) =>
    make(position.board, side, position).map((claim) => ({ side, ...claim }))),
});

// Claims of a single pawn that passes a test.
const eachPawn = (test) => bothSides((board, side) =>
  pawnsOf(board, side)
    .filter((pawn) => test(board, pawn, side))
    .map((pawn) => ({ squares: [pawn] })));

const DOUBLED = bothSides((board, side) =>
  [0, 1, 2, 3, 4, 5, 6, 7]
    .map((file) => pawnsOnFile(board, file, side))
    .filter((pawns) => pawns.length >= 2)
    .map((pawns) => ({ squares: pawns, count: pawns.length })));

function hangingPair(board, side, left) {
  const files = [left, left + 1];
  const own = files.map((file) => pawnsOnFile(board, file, side));
  if (own.some((pawns) => pawns.length !== 1)) return [];
  const pair = own.flat();
  const ranks = pair.map((pawn) => rankFor(pawn, side));
  if (!ranks.every((rank) => rank === 4 || rank === 5)) return [];
  if (pair.some((pawn) => isPassed(board, pawn, side))) return [];
  const beside = [left - 1, left + 2];
  if (beside.some((file) => pawnsOnFile(board, file, side).length)) return [];
  if (files.some((file) => pawnsOnFile(board, file, -side).length)) return [];
  return [{ squares: pair }];
}

const HANGING_PAIR = bothSides((board, side) =>
  [1, 2, 3, 4, 5].flatMap((left) => hangingPair(board, side, left)));

const CONNECTED_PASSED = bothSides((board, side) => {
  const passers = pawnsOf(board, side).filter((p) => isPassed(board, p, side));
  return passers.flatMap((a) => passers
    .filter((b) => fileOf(b) === fileOf(a) + 1 &&
      Math.abs(rankFor(a, side) - rankFor(b, side)) <= 1)
    .map((b) => ({ squares: [a, b] })));
});

function isOutside(board, pawn, side) {
  const enemies = pawnsOf(board, -side);
  return isPassed(board, pawn, side) && enemies.length > 0 &&
    pawnsOf(board, side).length > 1 &&
    enemies.every((enemy) => Math.abs(fileOf(enemy) - fileOf(pawn)) >= 3);
}

function isCandidate(board, pawn, side) {
  if (isPassed(board, pawn, side)) return false;
  const all = squaresOf(board, 1, PAWN).concat(squaresOf(board, -1, PAWN));
  const blocks = (other) =>
    fileOf(other) === fileOf(pawn) && isAhead(other, pawn, side);
  if (all.some(blocks)) return false;
  const beside = all.filter((other) => onAdjacentFile(other, pawn));
  const helpers = beside.filter(
    (other) => sideOf(board[other]) === side && !isAhead(other, pawn, side));
  const sentries = beside.filter(
    (other) => sideOf(board[other]) === -side && isAhead(other, pawn, side));
  return helpers.length >= 1 && helpers.length >= sentries.length;
}

const LEVER = bothSides((board, side) => pawnsOf(board, side)
  .map((pawn) => ({ squares: [pawn], others: leverPawns(board, pawn, side) }))
  .filter((claim) => claim.others.length > 0));

const LEVER_MOVE = {
  ordered: ['squares'],
  ...bothSides((board, side, position) => {
    const mover = position.turn;
    const checked = inCheck(board, mover);
    // No pass out of check.
    if (checked && (side !== mover || READINGS.noLeverMovesInCheck)) return [];
    const turned = withTurn(position, side);
    return pawnsOf(board, side).flatMap((pawn) => legalMoves(turned, pawn)
      .filter((move) => fileOf(move.to) === fileOf(pawn) && !move.promotion)
      .map((move) => ({
        squares: [move.from, move.to],
        others: leverPawns(boardAfter(board, move), move.to, side),
      }))
      .filter((claim) => claim.others.length > 0));
  }),
};

const RAM = bothSides((board, side) => pawnsOf(board, side)
  .filter((pawn) => rammedPawn(board, pawn, side) >= 0)
  .map((pawn) => ({ squares: [pawn], others: [stopSquare(pawn, side)] })));

const CHAIN_BASE = bothSides((board, side) => pawnsOf(board, side)
  .filter((pawn) => !isPawnAttacked(board, pawn, side))
  .map((pawn) => ({
    squares: [pawn],
    others: pawnsOf(board, side).filter((other) =>
      onAdjacentFile(other, pawn) &&
      rankFor(other, side) === rankFor(pawn, side) + 1),
  }))
  .filter((claim) => claim.others.length > 0));

const ISLANDS = bothSides((board, side) => [{
  count: islandCount(board, side),
  otherCount: islandCount(board, -side),
}]);

const MAJORITY = bothSides((board, side) => WINGS.map((wing) => {
  const own = pawnsOf(board, side).filter((p) => wing.includes(fileOf(p)));
  const enemy = pawnsOf(board, -side).filter((p) => wing.includes(fileOf(p)));
  return { squares: own, count: own.length, otherCount: enemy.length };
}).filter((claim) => claim.count > claim.otherCount));

const HOLE = bothSides((board, side) => [...board.keys()]
  .filter((square) => isHole(board, square, side))
  .map((square) => ({ squares: [square] })));

const isTarget = (board, pawn, side) => isPassed(board, pawn, side) ||
  isIsolated(board, pawn, side) || isBackward(board, pawn, side);

const BLOCKADE = bothSides((board, side) => pawnsOf(board, -side)
  .filter((pawn) => isTarget(board, pawn, -side))
  .map((pawn) => ({ squares: [stopSquare(pawn, -side)], others: [pawn] }))
  .filter(({ squares: [square] }) => {
    const kind = kindOf(board[square]);
    return sideOf(board[square]) === side && kind !== PAWN &&
      (READINGS.kingBlockades || kind !== 6);
  }));

const MATERIAL = {
  usesPiece: true,
  ...bothSides((board, side) => [1, 2, 3, 4, 5, 6].map((piece) => {
    const squares = squaresOf(board, side, piece);
    const others = squaresOf(board, -side, piece);
    const count = squares.length;
    const otherCount = others.length;
    const required = count + otherCount > 0;
    return { piece, squares, others, count, otherCount, required };
  })),
};

export const PAWN_KINDS = {
  DOUBLED,
  ISOLATED: eachPawn(isIsolated),
  BACKWARD: eachPawn(isBackward),
  HANGING_PAIR,
  PASSED: eachPawn(isPassed),
  PROTECTED_PASSED: eachPawn((board, pawn, side) =>
    isPassed(board, pawn, side) && isPawnAttacked(board, pawn, side)),
  CONNECTED_PASSED,
  OUTSIDE_PASSED: eachPawn(isOutside),
  CANDIDATE: eachPawn(isCandidate),
  LEVER,
  LEVER_MOVE,
  RAM,
  CHAIN_BASE,
  ISLANDS,
  MAJORITY,
  HOLE,
  BLOCKADE,
  MATERIAL,
};
