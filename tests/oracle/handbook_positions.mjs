// Is this a legal and plausible position in which nothing hangs?
import { Chess, validateFen } from 'chess.js';

import { isAttacked } from '../audit/lib/attacks.mjs';
import {
  BISHOP, KNIGHT, PAWN, QUEEN, ROOK, SIDES, WHITE,
  fileOf, findKing, kindOf, nameOf, parseFen, rankFor, shadeOf, squareOf,
  squaresOf,
} from '../audit/lib/board.mjs';
import { exchangeValue } from '../audit/lib/exchange.mjs';

const HOMES = {
  K: ['e1', 'h1'], Q: ['e1', 'a1'], k: ['e8', 'h8'], q: ['e8', 'a8'],
};

const bits = (mask) => mask.toString(2).replaceAll('0', '').length;

// Fewest captures that bring the pawns to their files from rank 2, one pawn a
// file to begin with: a capture is a step to the next file, a rank ahead.
function capturesNeeded(board, side) {
  const pawns = squaresOf(board, side, PAWN);
  const cost = new Map([[0, 0]]);  // by the set of start files in use
  for (const pawn of pawns) {
    const before = [...cost];
    cost.clear();
    for (const [used, sum] of before) {
      for (let file = 0; file < 8; file += 1) {
        const steps = Math.abs(file - fileOf(pawn));
        if (used & (1 << file) || steps > rankFor(pawn, side) - 2) continue;
        const next = used | (1 << file);
        cost.set(next, Math.min(cost.get(next) ?? 99, sum + steps));
      }
    }
  }
  const sums = [...cost].filter(([used]) => bits(used) === pawns.length)
    .map(([, sum]) => sum);
  return sums.length ? Math.min(...sums) : 99;
}

const unitsOf = (board, side) =>
  board.reduce((sum, piece) => sum + (piece * side > 0 ? 1 : 0), 0);

// A set of men that no promotion has added to.
function problemsOfSet(board, side) {
  const most = { [KNIGHT]: 2, [BISHOP]: 2, [ROOK]: 2, [QUEEN]: 1, [PAWN]: 8 };
  const found = [];
  for (const [kind, limit] of Object.entries(most)) {
    const squares = squaresOf(board, side, Number(kind));
    if (squares.length > limit) found.push(`${squares.length} of kind ${kind}`);
    if (Number(kind) === BISHOP && squares.length === 2 &&
        shadeOf(squares[0]) === shadeOf(squares[1])) {
      found.push('both bishops on one colour');
    }
  }
  return found;
}

// A bishop cannot have left a corner that its own pawns never opened.
function problemsOfBishops(board, side) {
  const rank = side === WHITE ? ['1', '2'] : ['8', '7'];
  const found = [];
  for (const [home, gates] of [['c', 'bd'], ['f', 'eg']]) {
    const start = squareOf(home + rank[0]);
    const shut = [...gates].every((file) =>
      board[squareOf(file + rank[1])] === PAWN * side);
    const away = squaresOf(board, side, BISHOP).some((square) =>
      shadeOf(square) === shadeOf(start) && square !== start);
    if (shut && away) found.push(`a bishop got out of ${nameOf(start)}`);
  }
  return found;
}

function problemsOfCastling({ board, castling }) {
  return [...castling].filter((right) => {
    const [king, rook] = HOMES[right].map(squareOf);
    const side = right === right.toUpperCase() ? 1 : -1;
    return board[king] !== 6 * side || board[rook] !== ROOK * side;
  }).map((right) => `castling right ${right}`);
}

export function problemsOfPosition(fen) {
  const valid = validateFen(fen);
  if (!valid.ok) return [`FEN: ${valid.error}`];
  const position = parseFen(fen);
  const { board, turn } = position;
  const found = problemsOfCastling(position);
  if (isAttacked(board, findKing(board, -turn), turn)) {
    found.push('the side not to move is in check');
  }
  const chess = new Chess(fen);
  if (chess.isCheck()) found.push('a check');
  if (chess.moves().length < 10) found.push('fewer than ten legal moves');
  for (const side of SIDES) {
    found.push(...problemsOfSet(board, side));
    found.push(...problemsOfBishops(board, side));
    const needed = capturesNeeded(board, side);
    const taken = 16 - unitsOf(board, -side);
    if (needed > taken) {
      found.push(`pawns of ${side > 0 ? 'White' : 'Black'} need ${needed} ` +
        `captures, ${taken} were possible`);
    }
  }
  for (let square = 0; square < 64; square += 1) {
    if (board[square] === 0 || kindOf(board[square]) === 6) continue;
    const value = exchangeValue(board, square);
    if (value > 0) found.push(`${nameOf(square)} hangs (${value})`);
  }
  return found;
}
