// The rows on files, centre and space of TERMS.md, part 2.

import {
  BLACK, ROOK, SIDES, WHITE, fileOf, fileSquares, findKing, onRank,
  rankFor, squaresOf,
} from './board.mjs';
import { attackersOf, isPawnAttacked } from './attacks.mjs';
import {
  isClear, isHalfOpenFile, isOpenFile, isRookOrQueen, leverPawns, pawnsOf,
  pawnsOnFile, rammedPawn,
} from './words.mjs';

const FILES = [0, 1, 2, 3, 4, 5, 6, 7];

const bothSides = (make) => ({
  enumerate: (position) => SIDES.flatMap((side) =>
    make(position.board, side).map((claim) => ({ side, ...claim }))),
});

// A statement about the board, not about a side: one claim in all.
const ofNoSide = (make) => ({
  sideless: true,
  enumerate: (position) => make(position.board).map(
    (claim) => ({ side: 0, ...claim })),
});

const isFreeFor = (board, file, side) =>
  isOpenFile(board, file) || isHalfOpenFile(board, file, side);

const OPEN_FILE = ofNoSide((board) => FILES
  .filter((file) => isOpenFile(board, file))
  .map((file) => ({ squares: fileSquares(file) })));

const HALF_OPEN_FILE = bothSides((board, side) => FILES
  .filter((file) => isHalfOpenFile(board, file, side))
  .map((file) => ({ squares: fileSquares(file) })));

const heavyPieces = (board, side) => [...board.keys()].filter(
  (square) => board[square] * side > 0 && isRookOrQueen(board[square]));

const ROOK_ON_FILE = bothSides((board, side) => heavyPieces(board, side)
  .filter((square) => isFreeFor(board, fileOf(square), side))
  .map((square) => ({ squares: [square] })));

const SEVENTH_RANK = bothSides((board, side) => {
  const caged = rankFor(findKing(board, -side), side) === 8;
  const prey = pawnsOf(board, -side).some((pawn) => rankFor(pawn, side) === 7);
  if (!caged && !prey) return [];
  return heavyPieces(board, side)
    .filter((square) => rankFor(square, side) === 7)
    .map((square) => ({ squares: [square] }));
});

const DOUBLED_ROOKS = bothSides((board, side) => {
  const rooks = squaresOf(board, side, ROOK);
  return rooks.flatMap((a) => rooks
    .filter((b) => b > a && fileOf(a) === fileOf(b) &&
      isFreeFor(board, fileOf(a), side) && isClear(board, a, b))
    .map((b) => ({ squares: [a, b] })));
});

const isCentral = (square) => fileOf(square) >= 2 && fileOf(square) <= 5;
const isInner = (square) => fileOf(square) === 3 || fileOf(square) === 4;

// Rams are counted as pairs, by their white pawn; see QUESTIONS.md.
function centreFacts(board) {
  const rams = pawnsOf(board, WHITE).filter(
    (pawn) => isCentral(pawn) && rammedPawn(board, pawn, WHITE) >= 0);
  const levers = { [WHITE]: [], [BLACK]: [] };
  for (const side of SIDES) {
    levers[side] = pawnsOf(board, side).filter((pawn) => isCentral(pawn) &&
      leverPawns(board, pawn, side).some(isCentral));
  }
  const inner = {
    [WHITE]: pawnsOf(board, WHITE).filter(isInner),
    [BLACK]: pawnsOf(board, BLACK).filter(isInner),
  };
  return { rams, levers, inner };
}

const spansBoth = (pawns) => new Set(pawns.map(fileOf)).size === 2;

// The one centre kind that holds, in the order that the rows exclude each
// other.
export function centreKind(board) {
  const { rams, levers, inner } = centreFacts(board);
  const innerRams = rams.filter(isInner);
  if (inner[WHITE].length + inner[BLACK].length <= 1) return 'CENTRE_OPEN';
  const tension = levers[WHITE].length > 0;
  if (rams.length >= 2 && innerRams.length >= 1 && !tension) {
    return 'CENTRE_CLOSED';
  }
  if (tension) return 'CENTRE_TENSION';
  if (innerRams.length >= 1) return 'CENTRE_FIXED';
  const mobile = SIDES.some(
    (side) => spansBoth(inner[side]) && inner[-side].length <= 1);
  return mobile ? 'CENTRE_MOBILE' : 'CENTRE_UNRESOLVED';
}

// The pawns named with each kind, White's then Black's. Where the row names
// none, the claim may carry none or the pawns that decide it (not required).
function centreVariants(board, kind) {
  const { rams, levers, inner } = centreFacts(board);
  const ramPair = (pawns) => ({
    squares: pawns,
    others: pawns.map((pawn) => pawn + 8),
  });
  const innerPawns = { squares: inner[WHITE], others: inner[BLACK] };
  switch (kind) {
    case 'CENTRE_CLOSED':
      return [ramPair(rams)];
    case 'CENTRE_TENSION':
      return [{ squares: levers[WHITE], others: levers[BLACK] }];
    case 'CENTRE_FIXED':
      return [{}, { ...ramPair(rams.filter(isInner)), required: false },
        { ...ramPair(rams), required: false }];
    default:
      return [{}, { ...innerPawns, required: false }];
  }
}

const centre = (kind) => ({
  // "None or those": either satisfies completeness, see registry.mjs.
  oneOf: true,
  ...ofNoSide((board) =>
    (centreKind(board) === kind ? centreVariants(board, kind) : [])),
});

function spaceCount(board, side) {
  let count = 0;
  for (const file of FILES) {
    const ranks = pawnsOnFile(board, file, side).map((p) => rankFor(p, side));
    // A file without own pawns gives Math.max() = -Infinity: no squares.
    const foremost = Math.max(...ranks);
    for (let rank = 2; rank < foremost; rank += 1) {
      const square = onRank(file, rank, side);
      const ownPawn = board[square] === side;
      if (!ownPawn && !isPawnAttacked(board, square, -side)) count += 1;
    }
  }
  return count;
}

const SPACE = bothSides((board, side) => [
  { count: spaceCount(board, side), otherCount: spaceCount(board, -side) },
]);

// Any square may be named, so this one is recounted and not listed.
const CONTROL = {
  verify(position, { side, squares, others, count, otherCount }) {
    if (!side) return 'no side';
    if (squares.length !== 1 || others.length) return 'one square is needed';
    const own = attackersOf(position.board, squares[0], side).length;
    const enemy = attackersOf(position.board, squares[0], -side).length;
    if (own === count && enemy === otherCount) return null;
    return `attackers are ${own} and ${enemy}`;
  },
};

export const FILE_AND_CENTRE_KINDS = {
  OPEN_FILE,
  HALF_OPEN_FILE,
  ROOK_ON_FILE,
  SEVENTH_RANK,
  DOUBLED_ROOKS,
  CENTRE_CLOSED: centre('CENTRE_CLOSED'),
  CENTRE_OPEN: centre('CENTRE_OPEN'),
  CENTRE_TENSION: centre('CENTRE_TENSION'),
  CENTRE_FIXED: centre('CENTRE_FIXED'),
  CENTRE_MOBILE: centre('CENTRE_MOBILE'),
  CENTRE_UNRESOLVED: centre('CENTRE_UNRESOLVED'),
  SPACE,
  CONTROL,
};
