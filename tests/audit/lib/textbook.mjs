// Endings known by name: the project's own kinds, from their definitions
// beside the numbers in proto/assay/v1/claim.proto.

import {
  BISHOP, KING, PAWN, QUEEN, ROOK, SIDES,
  fileOf, findKing, kindOf, kingSteps, onRank, rankFor, shadeOf, squaresOf,
} from './board.mjs';
import { attackersOf } from './attacks.mjs';
import { between, isAhead, isClear, isPinned } from './words.mjs';

// Everything on the board but the kings, as "side kind" in one sorted text:
// what "alone on the board" is asked of.
const unitsOf = (board, side) => [...board]
  .filter((piece) => piece !== 0 && kindOf(piece) !== KING)
  .map((piece) => piece * side)
  .sort((a, b) => a - b)
  .join();

const onlyOne = (board, side, kind) => squaresOf(board, side, kind)[0];

const isAttacked = (board, square, bySide) =>
  attackersOf(board, square, bySide).length > 0;

const filesApart = (a, b) => Math.abs(fileOf(a) - fileOf(b));
const isRookFile = (square) => fileOf(square) === 0 || fileOf(square) === 7;

// A kind of either side; find(position, side) gives the claim or undefined.
const textbook = (find) => ({
  enumerate: (position) => SIDES.flatMap((side) => {
    const claim = find(position, side);
    return claim ? [{ side, ...claim }] : [];
  }),
});

const KEY_SQUARES = textbook(({ board }, side) => {
  if (unitsOf(board, side) !== `${PAWN}`) return undefined;
  const pawn = onlyOne(board, side, PAWN);
  const king = findKing(board, side);
  if (isRookFile(pawn) || filesApart(king, pawn) > 1) return undefined;
  const rank = rankFor(pawn, side);
  const ahead = rankFor(king, side) - rank;
  const holds = rank === 7 ? ahead === 1 || ahead === 0
    : ahead === 2 || (rank >= 5 && ahead === 1);
  return holds ? { squares: [king, pawn] } : undefined;
});

// The side with the pawn is `owner`; undefined unless each side has a king and
// one piece of the kind, and the owner one pawn.
function oneEachAndPawn(board, owner, kind) {
  const wanted = [-kind, PAWN, kind].join();
  if (unitsOf(board, owner) !== wanted) return undefined;
  return {
    pawn: onlyOne(board, owner, PAWN),
    own: onlyOne(board, owner, kind),
    ownKing: findKing(board, owner),
    enemy: onlyOne(board, -owner, kind),
    enemyKing: findKing(board, -owner),
  };
}

const LUCENA = textbook(({ board, turn }, side) => {
  const units = oneEachAndPawn(board, side, ROOK);
  if (!units || isRookFile(units.pawn)) return undefined;
  const { pawn, own: rook, ownKing, enemyKing } = units;
  if (rankFor(pawn, side) !== 7) return undefined;
  if (ownKing !== onRank(fileOf(pawn), 8, side)) return undefined;
  const file = fileOf(pawn);
  // The side of the pawn that has more files: to the right of d, the left of e.
  const away = (square) =>
    (file <= 3 ? fileOf(square) - file : file - fileOf(square));
  if (![2, 3].includes(away(enemyKing))) return undefined;
  if (away(rook) <= 0 || away(rook) >= away(enemyKing)) return undefined;
  if (isAttacked(board, rook, -side)) return undefined;
  if (turn !== side && isAttacked(board, pawn, -side)) return undefined;
  return { squares: [ownKing, pawn, rook], others: [enemyKing] };
});

// Neither rook attacked, the defender not in check.
const isQuiet = (board, side, { own, enemy, enemyKing }) =>
  !isAttacked(board, enemy, -side) && !isAttacked(board, own, side) &&
  !isAttacked(board, enemyKing, -side);

// The two stages of Philidor's defence, by `owner`'s ranks.
function keepsTheRank(owner, units, toMove) {
  const { pawn, ownKing, enemy: rook, enemyKing: king } = units;
  if (![4, 5].includes(rankFor(pawn, owner))) return false;
  if (rankFor(ownKing, owner) > 5 || rankFor(rook, owner) !== 6) return false;
  const rank = rankFor(king, owner);
  const apart = filesApart(king, pawn);
  if (rank === 8 && apart === 0) return true;
  if (rank === 7 && apart === 0 && fileOf(rook) !== fileOf(pawn)) return true;
  return toMove && rank >= 7 && apart <= 1;
}

function checksFromBehind(owner, units, toMove) {
  const { pawn, ownKing, enemy: rook, enemyKing: king } = units;
  if (rankFor(pawn, owner) !== 6 || rankFor(rook, owner) > 3) return false;
  if (fileOf(king) !== fileOf(pawn)) return false;
  if (rankFor(king, owner) === 7) return true;
  const beside = rankFor(ownKing, owner) === 6 && filesApart(ownKing, pawn) === 1;
  return rankFor(king, owner) === 8 && (toMove || !beside);
}

const PHILIDOR = textbook(({ board, turn }, side) => {
  const units = oneEachAndPawn(board, -side, ROOK);
  if (!units || isRookFile(units.pawn) || !isQuiet(board, side, units)) {
    return undefined;
  }
  const toMove = turn === side;
  const holds = keepsTheRank(-side, units, toMove) ||
    checksFromBehind(-side, units, toMove);
  return holds
    ? { squares: [units.enemyKing, units.enemy], others: [units.pawn] }
    : undefined;
});

const VANCURA = textbook(({ board }, side) => {
  const owner = -side;
  const units = oneEachAndPawn(board, owner, ROOK);
  if (!units || !isRookFile(units.pawn)) return undefined;
  const { pawn, own, ownKing, enemy: rook, enemyKing: king } = units;
  const rank = rankFor(pawn, owner);
  const holds = rank >= 4 && rank <= 6 &&
    own === onRank(fileOf(pawn), 8, owner) &&
    rank - rankFor(ownKing, owner) >= 3 &&
    rankFor(rook, owner) === rank && filesApart(rook, pawn) >= 4 &&
    isClear(board, rook, pawn) &&
    rankFor(king, owner) === 7 && filesApart(king, pawn) >= 6 &&
    isQuiet(board, side, units);
  return holds ? { squares: [king, rook], others: [pawn, own] } : undefined;
});

const QUEEN_HELD = textbook(({ board, turn }, side) => {
  if (unitsOf(board, side) !== [-QUEEN, PAWN].join()) return undefined;
  const pawn = onlyOne(board, side, PAWN);
  const queen = onlyOne(board, -side, QUEEN);
  const king = findKing(board, side);
  const enemyKing = findKing(board, -side);
  const promotion = onRank(fileOf(pawn), 8, side);
  if (rankFor(pawn, side) !== 7 || ![0, 2, 5, 7].includes(fileOf(pawn))) {
    return undefined;
  }
  if (filesApart(king, pawn) !== 1 || rankFor(king, side) < 7) return undefined;
  if (kingSteps(enemyKing, promotion) < 5) return undefined;
  const shields = [king, promotion].some(
    (square) => (between(queen, square) ?? []).includes(enemyKing));
  if (shields) return undefined;
  const falls = turn === side ? isAttacked(board, queen, side)
    : isPinned(board, pawn);
  return falls ? undefined : { squares: [king, pawn], others: [queen] };
});

const BISHOP_HELD = textbook(({ board }, side) => {
  const owner = -side;
  const units = oneEachAndPawn(board, owner, BISHOP);
  if (!units) return undefined;
  const { pawn, own, enemy: bishop, enemyKing: king } = units;
  const holds = shadeOf(own) !== shadeOf(bishop) &&
    shadeOf(king) === shadeOf(bishop) &&
    rankFor(pawn, owner) >= 4 &&
    fileOf(king) === fileOf(pawn) && isAhead(king, pawn, owner) &&
    !isAttacked(board, bishop, owner);
  return holds ? { squares: [king, bishop], others: [pawn] } : undefined;
});

export const TEXTBOOK_KINDS = {
  KEY_SQUARES,
  LUCENA,
  PHILIDOR,
  VANCURA,
  QUEEN_HELD,
  BISHOP_HELD,
};
