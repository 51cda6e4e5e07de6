// Compares the library's table of king and pawn against king, position by
// position, with one of our own here whose legal positions, moves and checks
// all come from chess.js, an independent rules library (BSD-2).
//
//   node kpk_oracle.mjs <path of kpk_dump>
//
// Retrograde analysis of the pawn and of the queen or rook that it may become:
// nothing is won at first; sweep n finds the positions that White wins in n
// plies. Bare kings and a single bishop or knight never win. The counts below
// were computed independently. chess.js's private parts are used for speed
// (see rules_oracle.mjs); package.json pins them. Takes under a minute.
import { spawnSync } from 'node:child_process';

import { Chess } from 'chess.js';

const KINDS = ['p', 'q', 'r'];
const TURNS = ['w', 'b'];
const PLACEMENTS = 64 ** 3;
const OPEN = 255;  // not won so far
const ILLEGAL = 254;
const DRAW = -1;  // where a move leads when White has no more to win with

// Legal positions and wins by side to move, the share of wins in per cent by
// rank (2 to 7) and file (a to d) of the pawn; White's moves to mate in the
// longest win with pawn, queen and rook.
const EXPECTED = {
  w: {
    legal: 163328,
    won: 124960,
    shares: [
      [53.5, 68.3, 70.6, 74.8], [54.8, 64.5, 65.4, 68.9],
      [67.1, 69.9, 69.3, 70.6], [78.7, 77.9, 75.9, 75.4],
      [88.8, 87.4, 85.3, 86.1], [96.6, 95.4, 95.7, 95.7],
    ],
  },
  b: {
    legal: 168024,
    won: 97604,
    shares: [
      [34.7, 45.0, 44.8, 45.1], [37.4, 44.8, 43.0, 41.6],
      [51.2, 52.4, 48.9, 47.5], [64.6, 61.9, 57.9, 55.1],
      [76.9, 73.5, 69.8, 67.2], [87.3, 83.5, 79.8, 80.1],
    ],
  },
};
const LONGEST_WINS = { p: 28, q: 10, r: 16 };

const problems = [];
const expect = (what, found, expected) => {
  if (found !== expected) problems.push(`${what}: ${found}, not ${expected}`);
};

// Squares from 0 (a1) to 63 (h8); chess.js has 0 for a8 and 16 a rank.
const nameOf = (square) => 'abcdefgh'[square & 7] + ((square >> 3) + 1);
const theirs = (square) => (7 - (square >> 3)) * 16 + (square & 7);
const ours = (square) => (7 - (square >> 4)) * 8 + (square & 7);

const indexOf = (kind, turn, unit, king, bare) =>
  (KINDS.indexOf(kind) * 2 + TURNS.indexOf(turn)) * PLACEMENTS +
  (unit * 64 + king) * 64 + bare;

// Successors of all positions, one after the other.
class Successors {
  constructor(positions) {
    this.from = new Int32Array(positions);
    this.count = new Uint8Array(positions);
    this.targets = new Int32Array(1 << 24);
    this.size = 0;
  }

  set(index, targets) {
    this.from[index] = this.size;
    this.count[index] = targets.length;
    this.targets.set(targets, this.size);
    this.size += targets.length;
  }

  // Whether `test` holds of the plies of some target.
  some(index, plies, test) {
    const end = this.from[index] + this.count[index];
    for (let at = this.from[index]; at < end; ++at) {
      const target = this.targets[at];
      if (test(target === DRAW ? OPEN : plies[target])) return true;
    }
    return false;
  }
}

const POSITIONS = KINDS.length * 2 * PLACEMENTS;
const plies = new Uint8Array(POSITIONS).fill(ILLEGAL);
const successors = new Successors(POSITIONS);

// Where a move of chess.js leads.
function targetOf({ from, to, captured, promotion }, kind, unit, king, bare) {
  const [origin, goal] = [ours(from), ours(to)];
  if (captured) return DRAW;
  if (promotion && !KINDS.includes(promotion)) return DRAW;
  if (origin === bare) return indexOf(kind, 'w', unit, king, goal);
  if (origin === king) return indexOf(kind, 'b', unit, goal, bare);
  return indexOf(promotion ?? kind, 'b', goal, king, bare);
}

function addPosition(chess, kind, turn, unit, king, bare) {
  chess._turn = turn;
  if (chess._isKingAttacked(turn === 'w' ? 'b' : 'w')) return;
  const index = indexOf(kind, turn, unit, king, bare);
  const moves = chess._moves();
  const mate = moves.length === 0 && turn === 'b' && chess.isCheck();
  plies[index] = mate ? 0 : OPEN;
  successors.set(index, moves.map(
    (move) => targetOf(move, kind, unit, king, bare)));
}

const squares = [...Array(64).keys()];
const pawnSquares = squares.slice(8, 56);

function addPlacements(kind) {
  const chess = new Chess();
  for (const unit of kind === 'p' ? pawnSquares : squares) {
    for (const king of squares) {
      if (king === unit) continue;
      chess.clear();
      chess._put({ type: kind, color: 'w' }, nameOf(unit));
      chess._put({ type: 'k', color: 'w' }, nameOf(king));
      for (const bare of squares) {
        if (bare === unit || bare === king) continue;
        chess._put({ type: 'k', color: 'b' }, nameOf(bare));
        for (const turn of TURNS) {
          addPosition(chess, kind, turn, unit, king, bare);
        }
        chess._clear(theirs(bare));
        chess._kings.b = -1;
      }
    }
  }
}

// Finds all wins in n plies for n = 1, 2, ... until there are no longer ones.
function solve() {
  let open = [];
  plies.forEach((value, index) => value === OPEN && open.push(index));
  for (let n = 1; ; ++n) {
    const found = [];
    const still = [];
    for (const index of open) {
      const whiteMoves = Math.floor(index / PLACEMENTS) % 2 === 0;
      const won = whiteMoves
        ? successors.some(index, plies, (value) => value < ILLEGAL)
        : successors.count[index] > 0 &&
          !successors.some(index, plies, (value) => value >= ILLEGAL);
      (won ? found : still).push(index);
    }
    if (found.length === 0) return;
    for (const index of found) plies[index] = n;
    open = still;
  }
}

function longestWin(kind) {
  const first = indexOf(kind, 'w', 0, 0, 0);
  const most = plies.subarray(first, first + 2 * PLACEMENTS)
    .filter((value) => value < ILLEGAL)
    .reduce((longest, value) => Math.max(longest, value), 0);
  return Math.ceil(most / 2);
}

const letterOf = (value) =>
  (value === ILLEGAL ? '.' : value === OPEN ? 'd' : 'w');

// Compares all positions with the dump, line by line.
function compare(dump) {
  let compared = 0;
  let different = 0;
  for (const turn of TURNS) {
    for (const pawn of pawnSquares) {
      for (const king of squares) {
        const line = dump.shift() ?? '';
        for (const bare of squares) {
          const letter = letterOf(plies[indexOf('p', turn, pawn, king, bare)]);
          compared += letter === '.' && line[bare] === '.' ? 0 : 1;
          if (line[bare] === letter) continue;
          different += 1;
          if (different > 5) continue;
          console.error(
            `${turn} to move, pawn ${nameOf(pawn)}, kings ${nameOf(king)} ` +
            `${nameOf(bare)}: ${line[bare]}, here ${letter}`);
        }
      }
    }
  }
  expect('lines left in the dump', dump.length, 0);
  return { compared, different };
}

function countWins(turn, pawns) {
  let legal = 0;
  let won = 0;
  for (const pawn of pawns) {
    const first = indexOf('p', turn, pawn, 0, 0);
    for (const value of plies.subarray(first, first + 64 ** 2)) {
      legal += value === ILLEGAL ? 0 : 1;
      won += value < ILLEGAL ? 1 : 0;
    }
  }
  return { legal, won, share: (100 * won / legal).toFixed(1) };
}

function checkCounts() {
  for (const turn of TURNS) {
    const { legal, won, shares } = EXPECTED[turn];
    const all = countWins(turn, pawnSquares);
    console.log(`${turn} to move: ${all.legal} legal, ${all.won} won`);
    expect(`legal with ${turn} to move`, all.legal, legal);
    expect(`won with ${turn} to move`, all.won, won);
    shares.forEach((row, rank) => row.forEach((share, file) => {
      const pawn = (rank + 1) * 8 + file;
      expect(`share won, ${turn} to move, ${nameOf(pawn)}`,
             countWins(turn, [pawn]).share, share.toFixed(1));
    }));
  }
  for (const [kind, longest] of Object.entries(LONGEST_WINS)) {
    expect(`moves of the longest win, ${kind}`, longestWin(kind), longest);
  }
}

// What the library takes as given: a queen or rook wins unless Black, to move,
// takes it or is stalemated.
function checkNewPieces() {
  let exceptions = 0;
  for (const kind of ['q', 'r']) {
    const first = indexOf(kind, 'w', 0, 0, 0);
    for (let index = first; index < first + 2 * PLACEMENTS; ++index) {
      if (plies[index] !== OPEN) continue;
      const blackMoves = index >= first + PLACEMENTS;
      const begin = successors.from[index];
      const targets = successors.targets.subarray(
        begin, begin + successors.count[index]);
      const lost = targets.length === 0 || targets.includes(DRAW);
      exceptions += blackMoves && lost ? 0 : 1;
    }
  }
  expect('queens and rooks that do not win', exceptions, 0);
}

KINDS.forEach(addPlacements);
solve();
const run = spawnSync(process.argv[2],
                      { encoding: 'utf8', maxBuffer: 1 << 24 });
if (run.status !== 0) throw new Error(`kpk_dump failed: ${run.stderr}`);
const { compared, different } = compare(run.stdout.trimEnd().split('\n'));
console.log(`${compared} positions compared, ${different} differ`);
expect('positions compared', compared, EXPECTED.w.legal + EXPECTED.b.legal);
checkCounts();
checkNewPieces();
for (const problem of problems) console.error(problem);
process.exitCode = different > 0 || problems.length > 0 ? 1 : 0;
