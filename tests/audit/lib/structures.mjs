// STRUCTURE: pawn structures with a name, by their numbers in claim.proto.
//
// Each row is a list of demands on one side's pawns, written as a list of
// [files, ranks] from the owner's first rank; claim.proto says the same in
// squares as they are for a white owner.
import {
  QUEEN, SIDES, WHITE, fileOf, findKing, rankFor, squaresOf,
} from './board.mjs';
import { pawnReach } from './attacks.mjs';
import { centreKind } from './files_centre.mjs';
import { KING_KINDS } from './king.mjs';
import {
  isBackward, isHalfOpenFile, pawnsOf, pawnsOnFile, stopSquare,
} from './words.mjs';

const LETTERS = 'abcdefgh';
const ABCD = [0, 1, 2, 3];
const EFGH = [4, 5, 6, 7];

// A pawn of `side` on a file at one of some ranks; ranks always count from the
// owner's first rank, whoever's pawn it is.
const on = (letter, ...ranks) => ({
  named: true,
  find: (board, side, owner) =>
    pawnsOnFile(board, LETTERS.indexOf(letter), side)
      .filter((pawn) => ranks.includes(rankFor(pawn, owner))),
  holds: (found) => found.length > 0,
});
// The only one on its file.
const only = (letter, rank) => ({
  named: true,
  find: (board, side) => pawnsOnFile(board, LETTERS.indexOf(letter), side),
  holds: (found, owner) =>
    found.length === 1 && rankFor(found[0], owner) === rank,
});
// None at these ranks of a file; none at all where no ranks are given.
const no = (letter, ...ranks) => ({
  named: false,
  find: (board, side, owner) =>
    pawnsOnFile(board, LETTERS.indexOf(letter), side).filter((pawn) =>
      ranks.length === 0 || ranks.includes(rankFor(pawn, owner))),
  holds: (found) => found.length === 0,
});

// The pawns that the demands name, or null where one of them fails.
function pawnsFor(demands, board, side, owner) {
  const pawns = [];
  for (const { named, find, holds } of demands) {
    const found = find(board, side, owner);
    if (!holds(found, owner)) return null;
    if (named) pawns.push(...found);
  }
  return pawns;
}

function inShape([own, enemy], board, owner) {
  const squares = pawnsFor(own, board, owner, owner);
  const others = pawnsFor(enemy, board, -owner, owner);
  return squares && others ? { squares, others } : null;
}

// The first of several shapes that holds.
const shapes = (...all) => (board, owner) => {
  for (const shape of all) {
    const found = inShape(shape, board, owner);
    if (found) return found;
  }
  return null;
};

function doubledOnC(board, owner) {
  const pawns = pawnsOnFile(board, 2, owner);
  const beside = pawnsOnFile(board, 3, owner);
  if (pawns.length !== 2 || beside.length === 0) return null;
  if (pawnsOnFile(board, 1, owner).length > 0) return null;
  return { squares: [...pawns, ...beside], others: [] };
}

const inFiles = (pawns, files) =>
  pawns.filter((pawn) => files.includes(fileOf(pawn)));

function exchangeRuy(board, owner) {
  const shape = inShape([
    [on('c', 2, 3, 4), on('e', 4, 5), no('d')],
    [on('c', 5, 6, 7), no('d'), no('e')],
  ], board, owner);
  if (!shape || pawnsOnFile(board, 2, -owner).length !== 2) return null;
  const own = pawnsOf(board, owner);
  const enemy = pawnsOf(board, -owner);
  const extra = inFiles(own, EFGH).length - inFiles(enemy, EFGH).length;
  if (extra !== 1) return null;
  const told = [2, ...EFGH];
  return { squares: inFiles(own, told), others: inFiles(enemy, told) };
}

function threeAgainstTwo(board, owner) {
  const squares = pawnsOf(board, owner);
  const others = pawnsOf(board, -owner);
  if (squares.length !== 3 || others.length !== 2) return null;
  const all = [...squares, ...others];
  const oneWing = [ABCD, EFGH].some(
    (files) => inFiles(all, files).length === all.length);
  return oneWing ? { squares, others } : null;
}

function backwardPawns(board, owner) {
  const squares = pawnsOf(board, owner).filter((pawn) =>
    isBackward(board, pawn, owner) &&
    isHalfOpenFile(board, fileOf(pawn), -owner));
  if (squares.length === 0) return null;
  const stops = squares.map((pawn) => stopSquare(pawn, owner));
  const others = pawnsOf(board, -owner).filter((enemy) =>
    pawnReach(enemy, -owner).some((square) => stops.includes(square)));
  return { squares, others };
}

function symmetrical(board) {
  let files = 0;
  for (let file = 0; file < 8; file += 1) {
    const [white, black] = SIDES.map((side) => pawnsOnFile(board, file, side));
    if (white.length !== black.length || white.length > 1) return null;
    if (white.length === 0) continue;
    files += 1;
    const facing = rankFor(white[0], 1) === rankFor(black[0], -1);
    if (file >= 2 && file <= 5 && !facing) return null;
  }
  return files >= 5 && files <= 7
    ? { squares: pawnsOf(board, 1), others: pawnsOf(board, -1) } : null;
}

function oppositeCastling(board, owner, position) {
  if (KING_KINDS.CASTLED.enumerate(position).length !== 2) return null;
  const queens = SIDES.every((side) => squaresOf(board, side, QUEEN).length);
  const kings = SIDES.map((side) => findKing(board, side));
  const [white, black] = kings.map((king) => EFGH.includes(fileOf(king)));
  if (!queens || white === black) return null;
  return { squares: [kings[0]], others: [kings[1]] };
}

const inCentre = (kinds, make) => (board, owner) =>
  (kinds.includes(centreKind(board)) ? make(board, owner) : null);

const CLOSED_BENONI = [[on('c', 4), on('d', 5), on('e', 4)],
  [on('c', 5), on('d', 6), on('e', 5)]];
const BESIDE_HANGING = [no('b'), no('e')];

// By number: whose it is ("of both" are found once, as White's), and how it is
// found.
const ROWS = [
  [1, 'hedgehog', shapes([
    [on('a', 3), on('b', 3), on('d', 3), on('e', 3), no('c')],
    [on('c', 5), on('e', 5, 6, 7), no('d')]])],
  [2, 'Maroczy bind', shapes([[on('c', 4), on('e', 4), no('d')],
    [on('d', 6, 7), on('e', 6, 7), no('c')]])],
  [3, 'Dragon structure', shapes([
    [on('d', 3), on('e', 2), on('g', 3), no('c')],
    [on('e', 5), on('c', 6, 7), no('d')]])],
  [4, 'hole in front of a backward d-pawn', shapes([
    [on('d', 3), only('e', 4), no('c')], [on('e', 5), no('d')]])],
  [5, 'small centre', shapes([[on('d', 3), on('e', 3), no('c')],
    [on('e', 5), on('c', 6, 7), no('d')]])],
  [6, 'doubled c-pawns in a closed centre',
    inCentre(['CENTRE_CLOSED'], doubledOnC)],
  [7, 'closed Benoni', shapes(CLOSED_BENONI)],
  [8, "King's Indian chain", shapes([[on('c', 4, 5), on('d', 5), on('e', 4)],
    [on('c', 6, 7), on('d', 6), on('e', 5)]])],
  [9, 'Spanish chain', shapes([
    [on('c', 2, 3), no('c', 4), on('d', 5), on('e', 4)],
    [on('b', 4, 5), on('c', 4, 5, 7), on('d', 6), on('e', 5)]])],
  [10, 'French chain', shapes([[on('c', 2, 3), on('d', 4), on('e', 5)],
    [on('d', 5), on('e', 6)]])],
  [11, 'French chain without c-pawns', shapes([
    [on('d', 4), on('e', 5), no('c')], [on('d', 5), on('e', 6), no('c')]])],
  [12, 'stone wall', shapes([
    [on('c', 2, 3), on('d', 4), on('e', 3), on('f', 4)], [on('d', 5)]])],
  [13, 'modern Benoni', shapes([[on('c', 4), on('d', 3), no('e')],
    [on('d', 4), on('e', 5, 6, 7), no('c')]])],
  [14, 'Carlsbad structure', shapes([
    [on('b', 2, 3, 4, 5), only('d', 4), on('e', 3), no('c')],
    [on('b', 5, 6, 7), only('c', 6), only('d', 5), no('e')]])],
  [15, "isolated queen's pawn", (board, owner) => {
    const own = pawnsFor([only('d', 4), no('c'), no('e')], board, owner, owner);
    const guards = [on('c', 6, 7), on('e', 6, 7)].flatMap(
      ({ find }) => find(board, -owner, owner));
    const free = pawnsFor([no('d'), no('c', 5), no('e', 5)],
      board, -owner, owner);
    return own && free && guards.length
      ? { squares: own, others: guards } : null;
  }],
  [16, 'hanging pawns', shapes(
    [[only('c', 4), only('d', 4), ...BESIDE_HANGING],
      [on('b', 5, 6, 7), on('e', 5, 6, 7), no('c'), no('d')]],
    [[only('c', 4), only('d', 5), ...BESIDE_HANGING],
      [on('b', 5, 6, 7), on('e', 6, 7), no('c'), no('d')]],
    [[only('c', 5), only('d', 4), ...BESIDE_HANGING],
      [on('b', 6, 7), on('e', 5, 6, 7), no('c'), no('d')]])],
  [17, 'isolated pawn couple', shapes([
    [only('c', 3), only('d', 4), ...BESIDE_HANGING],
    [on('b', 4, 5, 6, 7), on('e', 5, 6, 7), no('c'), no('d')]])],
  [18, 'Caro-Kann structure', shapes([[on('d', 4), no('e')],
    [on('c', 6), on('e', 6), no('d')]])],
  [19, 'open d-file with blocked e-pawns', shapes([
    [only('c', 2), on('e', 4), no('d')], [only('c', 6), on('e', 5), no('d')]])],
  [19, 'open d-file with blocked e-pawns', shapes([
    [only('c', 3), on('e', 4), no('d')],
    [only('c', 6), on('e', 5), no('d')]]), 'of both'],
  [20, 'exchange Ruy Lopez', exchangeRuy],
  [21, 'exchange French', shapes([[on('c', 2, 3), on('d', 4), no('e')],
    [on('c', 6, 7), on('d', 5), no('e')]]), 'of both'],
  [22, 'doubled c-pawns', inCentre(['CENTRE_TENSION', 'CENTRE_FIXED',
    'CENTRE_MOBILE', 'CENTRE_UNRESOLVED'], doubledOnC)],
  [23, 'two-pawn centre', shapes(
    [[on('d', 4), on('e', 4)], [on('e', 6, 7), no('e', 5), no('d')]],
    [[on('d', 4), on('e', 4)], [on('d', 6, 7), no('d', 5), no('e')]])],
  [24, 'three pawns against two on one wing', threeAgainstTwo],
  [25, 'opposite castling', oppositeCastling, 'of both'],
  [26, 'symmetrical pawns', symmetrical, 'of both'],
  [27, 'backward pawn on a half-open file', backwardPawns],
];

function claimsOf([number, , find, both], position) {
  const owners = both ? [WHITE] : SIDES;
  return owners.flatMap((owner) => {
    const found = find(position.board, owner, position);
    return found ? [{ side: both ? 0 : owner, count: number, ...found }] : [];
  });
}

export const STRUCTURE_KINDS = {
  STRUCTURE: {
    enumerate: (position) => ROWS.flatMap((row) => claimsOf(row, position)),
  },
};

// The name that explanation.proto asks for, '' where nothing has one, and its
// number.
export function structureName(position) {
  const claims = STRUCTURE_KINDS.STRUCTURE.enumerate(position);
  if (claims.length === 0) return { name: '', number: 0 };
  const number = Math.min(...claims.map((claim) => claim.count));
  const sides = claims.filter((claim) => claim.count === number)
    .map((claim) => claim.side);
  const name = ROWS.find((row) => row[0] === number)[1];
  if (sides.includes(0)) return { name, number };
  const whose = sides.length === 2 ? 'both sides'
    : sides[0] === WHITE ? 'White' : 'Black';
  return { name: `${name} (${whose})`, number };
}
