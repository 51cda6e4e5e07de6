// Does handbook_check.mjs refuse damaged rows? Each row is damaged in ways
// that make its key, its structure or its position false, and each damage must
// be told.
//
//   node handbook_selftest.mjs [FOLDER]     (tests/plans by default)
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

import { isPawnAttacked } from '../audit/lib/attacks.mjs';
import { KING, nameOf, parseFen } from '../audit/lib/board.mjs';
import { problemsOfKey } from './handbook_keys.mjs';
import { problemsOfLine } from './handbook_lines.mjs';
import { problemsOfPosition } from './handbook_positions.mjs';
import { holds } from './handbook_structures.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const folder = process.argv[2] ?? join(here, '..', 'plans');

// Rows as lists of cells; the first six columns are the same in every file.
const rows = ['handbook', 'handbook_fails', 'common_practice'].flatMap((file) =>
  readFileSync(join(folder, `${file}.tsv`), 'utf8').split('\n')
    .filter((line) => line && !line.startsWith('#'))
    .map((line) => line.split('\t')));

// The FEN with another man, or none ('1'), on a square.
function withMan(fen, square, man) {
  const fields = fen.split(' ');
  const ranks = fields[0].split('/').map((rank) =>
    [...rank.replace(/\d/g, (count) => '1'.repeat(Number(count)))]);
  ranks[8 - Number(square[1])]['abcdefgh'.indexOf(square[0])] = man;
  fields[0] = ranks.map((rank) => rank.join('')
    .replace(/1+/g, (ones) => String(ones.length))).join('/');
  return fields.join(' ');
}

// Squares that a key says hold something: all that moves begin from, unless an
// earlier move of the key got there; both pieces of a trade; a siege's target.
function occupied(kind, key) {
  if (kind === 'siege') return [key];
  if (kind === 'trade') return key.match(/[a-h][1-8]/g);
  return key.split(/[/:]/).flatMap((part) => {
    const reached = new Set();
    return part.split(',').flatMap((step) => {
      const squares = step.match(/[a-h][1-8]/g) ?? [];
      const fresh = squares.length && !reached.has(squares[0]);
      if (squares.length) reached.add(squares[1]);
      return fresh ? [squares[0]] : [];
    });
  });
}

// Structures that are not made of pawns alone.
const PAWNLESS = ['BishopPair', 'OpenCentre', 'OpenFile', 'OppositeCastling',
  'Queenless', 'Uncastled'];

// A square that a pawn of Black's attacks and that holds no man of Black's or
// king: a rook of White's hangs there.
function pawnGuarded(fen) {
  const { board } = parseFen(fen);
  const square = [...board.keys()].find((at) =>
    board[at] >= 0 && board[at] < KING && isPawnAttacked(board, at, -1));
  return nameOf(square);
}

let damages = 0;
const missed = [];
function mustTell(name, what, problems) {
  damages += 1;
  if (!problems.length) missed.push(`${name}: ${what}`);
}

for (const row of rows) {
  const [name, structure, fen, side, kind, key, standing, line, why] = row;
  for (const square of occupied(kind, key)) {
    mustTell(name, `${square} emptied`,
      problemsOfKey(withMan(fen, square, '1'), side, kind, key));
  }
  const man = side === 'w' ? 'P' : 'p';
  const goal = kind === 'file' ? `${key[0]}4`
    : key.split('/')[0].match(/[a-h][1-8]/g)?.at(-1);
  if (goal && kind !== 'trade' && withMan(fen, goal, man) !== fen) {
    mustTell(name, `an own pawn put on ${goal}`,
      problemsOfKey(withMan(fen, goal, man), side, kind, key));
  }
  const other = side === 'w' ? 'b' : 'w';
  if (!key.includes('O-O') && kind !== 'file') {
    mustTell(name, 'the other side named',
      problemsOfKey(fen, other, kind, key));
  }
  mustTell(name, 'an unreadable key', problemsOfKey(fen, side, kind, 'zz'));
  if (!PAWNLESS.includes(structure)) {
    const bare = fen.split(' ');
    bare[0] = bare[0].replace(/p/gi, '1');
    mustTell(name, 'the pawns taken off',
      holds(structure, bare.join(' ')) ? [] : ['not the structure']);
  }
  const corners = ['a8', 'a1', 'h8', 'h1'];
  mustTell(name, 'two bishops of one colour', problemsOfPosition(
    corners.reduce((text, square) => withMan(text, square, 'B'), fen)));
  mustTell(name, 'a piece left to be taken', problemsOfPosition(
    withMan(fen, pawnGuarded(fen), 'R')));
  if (line && why && /\bloses\b/.test(why)) {
    mustTell(name, 'a line cut short', problemsOfLine({ fen, side, standing,
      line: line.split(' ').slice(0, -1).join(' ') || '-', why }));
  }
}

for (const what of missed) console.log(`not told: ${what}`);
console.log(`${rows.length} rows, ${damages} damages, ` +
  `${missed.length} not told`);
process.exitCode = missed.length || damages < 5 * rows.length ? 1 : 0;
