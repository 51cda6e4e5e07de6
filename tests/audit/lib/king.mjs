// The king rows of TERMS.md, part 2.

import {
  BISHOP, KING, KNIGHT, QUEEN, ROOK, SIDES,
  fileOf, fileSquares, findKing, hasCastlingRight, onRank, rankFor, shadeOf,
  squaresOf,
} from './board.mjs';
import {
  KING_REACH, RAYS, attackersOf, attacksFrom,
} from './attacks.mjs';
import { READINGS } from './readings.mjs';
import { isHalfOpenFile, isOpenFile, pawnsOf } from './words.mjs';

const bothSides = (make) => ({
  enumerate: (position) => SIDES.flatMap((side) => {
    const king = findKing(position.board, side);
    return make(position.board, side, king, position).map(
      (claim) => ({ side, ...claim }));
  }),
});

const filesAround = (king) => [fileOf(king) - 1, fileOf(king), fileOf(king) + 1]
  .filter((file) => file >= 0 && file < 8);

const SHELTER = bothSides((board, side, king) => {
  const pawns = pawnsOf(board, side).filter((pawn) => {
    const ahead = rankFor(pawn, side) - rankFor(king, side);
    return filesAround(king).includes(fileOf(pawn)) && ahead >= 1 && ahead <= 2;
  });
  const bare = filesAround(king).filter(
    (file) => !pawns.some((pawn) => fileOf(pawn) === file));
  return [{ squares: pawns, count: bare.length }];
});

// The flank files that matter for a king on a file of rank 1. A king on d has
// the queen's side only, one on e the king's side only.
const flankFiles = (kingFile) => (kingFile >= 4 ? [5, 6, 7] : [0, 1, 2]);

const FLANK_PAWN_MOVED = {
  ordered: ['squares'],
  ...bothSides((board, side, king) => {
    if (rankFor(king, side) !== 1) return [];
    const files = flankFiles(fileOf(king));
    return pawnsOf(board, side)
      .filter((pawn) => files.includes(fileOf(pawn)) && rankFor(pawn, side) > 2)
      .map((pawn) => ({ squares: [pawn, onRank(fileOf(pawn), 2, side)] }))
      .filter(({ squares: [, start] }) => board[start] !== side);
  }),
};

const DIAGONAL_OPEN = {
  ordered: ['squares'],
  ...bothSides((board, side, king) => {
    const others = squaresOf(board, -side, QUEEN).concat(
      squaresOf(board, -side, BISHOP).filter(
        (bishop) => shadeOf(bishop) === shadeOf(king)));
    if (others.length === 0) return [];
    return [4, 5, 6, 7].map((direction) => {
      const ray = RAYS[king][direction];
      const blocked = ray.findIndex((square) => board[square] !== 0);
      const empty = blocked < 0 ? ray : ray.slice(0, blocked);
      return { squares: [king, ...empty], others };
    }).filter((claim) => claim.squares.length >= 3);
  }),
};

const FILE_TO_KING = bothSides((board, side, king) => {
  const others = squaresOf(board, -side, ROOK, QUEEN);
  if (others.length === 0) return [];
  return filesAround(king)
    .filter((file) => isOpenFile(board, file) ||
      isHalfOpenFile(board, file, -side))
    .map((file) => ({ squares: fileSquares(file), others }));
});

const KING_ATTACKERS = bothSides((board, side, king) => {
  const around = [king, ...KING_REACH[king]];
  const kinds = [KNIGHT, BISHOP, ROOK, QUEEN];
  if (READINGS.kingAttackersCountKing) kinds.push(KING);
  const others = squaresOf(board, -side, ...kinds).filter(
    (square) => attacksFrom(board, square).some((to) => around.includes(to)));
  const count = others.length;
  return [{ squares: [king], others, count, required: count > 0 }];
});

const IN_CHECK = bothSides((board, side, king) => {
  const others = attackersOf(board, king, -side);
  return others.length ? [{ squares: [king], others }] : [];
});

// The squares of the king's rank from its neighbour to the nearer edge.
function towardsEdge(king) {
  const files = fileOf(king) <= 3 ? [0, 1, 2, 3] : [4, 5, 6, 7];
  const beyond = fileOf(king) <= 3
    ? (file) => file < fileOf(king)
    : (file) => file > fileOf(king);
  return files.filter(beyond).map((file) => king - fileOf(king) + file);
}

const CASTLED = bothSides((board, side, king, position) => {
  const flank = [0, 1, 2, 6, 7].includes(fileOf(king));
  const holds = flank && rankFor(king, side) <= 2 &&
    !hasCastlingRight(position, side) &&
    !towardsEdge(king).some((square) => board[square] === ROOK * side);
  return holds ? [{ squares: [king] }] : [];
});

const UNCASTLED = bothSides((board, side, king, position) => {
  const home = [3, 4, 5].includes(fileOf(king)) && rankFor(king, side) === 1;
  const bothQueens = SIDES.every(
    (each) => squaresOf(board, each, QUEEN).length > 0);
  const holds = home && (hasCastlingRight(position, side) || bothQueens);
  return holds ? [{ squares: [king] }] : [];
});

export const KING_KINDS = {
  SHELTER,
  FLANK_PAWN_MOVED,
  DIAGONAL_OPEN,
  FILE_TO_KING,
  KING_ATTACKERS,
  IN_CHECK,
  CASTLED,
  UNCASTLED,
};
