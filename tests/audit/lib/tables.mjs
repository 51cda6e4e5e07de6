// Exact results of a king and one unit against a bare king, worked out from
// the end backwards: which positions does the stronger side win? The bare
// king can never win, so one bit a position is enough.

import {
  BISHOP, KNIGHT, PAWN, QUEEN, ROOK, rowOf,
} from './board.mjs';
import { KING_REACH, isAttacked, reachFrom } from './attacks.mjs';

const UNKNOWN = 0;
const WON = 1;
const IMPOSSIBLE = 2;
const DRAWN = 3; // Never changes: the unit was lost, or there are no moves.

const STRONG = 0;
const WEAK = 1;

// The stronger side plays up the board, as White.
const indexOf = (turn, strong, weak, unit) =>
  ((turn * 64 + strong) * 64 + weak) * 64 + unit;

function boardOf(kind, strong, weak, unit) {
  const board = new Int8Array(64);
  board[strong] = 6;
  board[weak] = -6;
  board[unit] = kind;
  return board;
}

function isPossible(kind, turn, strong, weak, unit) {
  if (strong === weak || strong === unit || weak === unit) return false;
  if (KING_REACH[strong].includes(weak)) return false;
  if (kind === PAWN && (rowOf(unit) === 0 || rowOf(unit) === 7)) return false;
  const board = boardOf(kind, strong, weak, unit);
  return turn === WEAK || !isAttacked(board, weak, 1);
}

// Indices reached by each move; -1 for a lost unit, and a promotion is asked
// of the other tables at once (-2: it wins).
function movesFrom(kind, turn, strong, weak, unit, promoted) {
  const board = boardOf(kind, strong, weak, unit);
  const targets = [];
  if (turn === WEAK) {
    for (const to of KING_REACH[weak]) {
      const next = board.slice();
      next[weak] = 0;
      next[to] = -6;
      if (isAttacked(next, to, 1) || to === strong) continue;
      targets.push(to === unit ? -1 : indexOf(STRONG, strong, to, unit));
    }
    return targets;
  }
  for (const to of KING_REACH[strong]) {
    if (to === unit || KING_REACH[weak].includes(to)) continue;
    targets.push(indexOf(WEAK, to, weak, unit));
  }
  const steps = kind === PAWN ? pawnSteps(board, unit)
    : reachFrom(board, unit, kind, 1).filter((to) => board[to] === 0);
  for (const to of steps) {
    if (kind !== PAWN || rowOf(to) < 7) {
      targets.push(indexOf(WEAK, strong, weak, to));
    } else if (promoted.some((t) => t[indexOf(WEAK, strong, weak, to)] === WON)) {
      targets.push(-2);
    }
  }
  return targets;
}

function pawnSteps(board, unit) {
  if (board[unit + 8] !== 0) return [];
  const leap = rowOf(unit) === 1 && board[unit + 16] === 0;
  return leap ? [unit + 8, unit + 16] : [unit + 8];
}

function eachState(visit) {
  for (let index = 0; index < 2 * 64 ** 3; index += 1) {
    visit(index, index >> 18, (index >> 12) & 63, (index >> 6) & 63, index & 63);
  }
}

function solve(kind, promoted) {
  const table = new Uint8Array(2 * 64 ** 3);
  const open = [];
  eachState((index, turn, strong, weak, unit) => {
    if (!isPossible(kind, turn, strong, weak, unit)) {
      table[index] = IMPOSSIBLE;
      return;
    }
    const moves = movesFrom(kind, turn, strong, weak, unit, promoted);
    if (turn === WEAK && moves.length === 0) {
      const mated = isAttacked(boardOf(kind, strong, weak, unit), weak, 1);
      table[index] = mated ? WON : DRAWN;
    } else if (turn === WEAK && moves.includes(-1)) {
      table[index] = DRAWN;
    } else if (moves.includes(-2)) {
      table[index] = WON;
    } else {
      open.push([index, turn, Int32Array.from(moves)]);
    }
  });
  // Sweep until nothing changes: each sweep adds the wins one move longer.
  for (let changed = true; changed;) {
    changed = false;
    for (const [index, turn, moves] of open) {
      if (table[index] !== UNKNOWN) continue;
      const won = (to) => table[to] === WON;
      if (turn === STRONG ? moves.some(won) : moves.every(won)) {
        table[index] = WON;
        changed = true;
      }
    }
  }
  return table;
}

const solved = new Map();

function tableOf(kind) {
  if (!solved.has(kind)) {
    const promoted = kind === PAWN ? [tableOf(QUEEN), tableOf(ROOK)] : [];
    solved.set(kind, solve(kind, promoted));
  }
  return solved.get(kind);
}

// Whether the side with the unit (as White, going up) wins.
export function isWon(kind, strongToMove, strong, weak, unit) {
  if (kind === KNIGHT || kind === BISHOP) return false;
  const turn = strongToMove ? STRONG : WEAK;
  return tableOf(kind)[indexOf(turn, strong, weak, unit)] === WON;
}
