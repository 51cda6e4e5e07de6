// Checks the rows of tests/plans/ against the board, so that what the planner
// is judged by is itself sound: legal and plausible middlegames with nothing
// hanging, the pawns that name the structure in place, and key squares that
// hold what the row says they hold.
//
//   node handbook_check.mjs [FOLDER]     (tests/plans by default)
//
// chess.js is the authority on FEN and legal moves; exchange values are the
// auditor's. None of our library's code takes part.
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

import { problemsOfKey, readKey } from './handbook_keys.mjs';
import { problemsOfPosition } from './handbook_positions.mjs';
import { STRUCTURES, holds } from './handbook_structures.mjs';
import { problemsOfLine } from './handbook_lines.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const folder = process.argv[2] ?? join(here, '..', 'plans');

// DESIGN.md, section 6.
const KINDS = ['siege', 'lever', 'expansion', 'regroup', 'trade',
  'minority_attack', 'majority', 'passer', 'king_attack', 'king_walk',
  'develop', 'file', 'restrain', 'reshape'];
const STANDINGS = ['slow', 'stopped', 'needs'];

const FILES = {
  'handbook.tsv': {
    columns: ['name', 'structure', 'fen', 'side', 'kind', 'key', 'source',
      'also'],
    least: 66,
    structures: 24,
  },
  'handbook_fails.tsv': {
    columns: ['name', 'structure', 'fen', 'side', 'kind', 'key', 'standing',
      'line', 'why', 'source'],
    least: 22,
    structures: 8,
  },
  'common_practice.tsv': {
    columns: ['name', 'structure', 'fen', 'side', 'kind', 'key', 'rank',
      'source'],
    least: 12,
    structures: 2,
  },
};

const problems = [];
const names = new Set();
const kindsSeen = new Map();

function readRows(file, columns) {
  const rows = [];
  const lines = readFileSync(join(folder, file), 'utf8').split('\n');
  for (const [index, line] of lines.entries()) {
    if (line === '' || line.startsWith('#')) continue;
    const cells = line.split('\t');
    const where = `${file}:${index + 1}`;
    if (cells.length !== columns.length || cells.some((c) => c.trim() === '')) {
      problems.push(`${where}: ${cells.length} cells, not ${columns.length}, ` +
        'or an empty one');
      continue;
    }
    const row = Object.fromEntries(columns.map((c, i) => [c, cells[i]]));
    rows.push({ ...row, where });
  }
  return rows;
}

// "lever b2-b4; restrain a2-a4/b7-b5", or "-" for none.
function alternatives(text) {
  if (text === undefined || text === '-') return [];
  return text.split('; ').map((part) => {
    const at = part.indexOf(' ');
    return { kind: part.slice(0, at), key: part.slice(at + 1) };
  });
}

function checkRow(row, say) {
  if (!/^[A-Z][A-Za-z0-9]*$/.test(row.name)) say('name is not CamelCase');
  if (names.has(row.name)) say('name used twice');
  names.add(row.name);
  if (!/^[wb]$/.test(row.side)) return say(`side ${row.side}`);
  const wrong = problemsOfPosition(row.fen);
  wrong.forEach(say);
  if (wrong.length) return undefined;
  if (!STRUCTURES[row.structure]) say(`unknown structure ${row.structure}`);
  else if (!holds(row.structure, row.fen)) {
    say(`${row.structure}: its pawns are not there`);
  }
  for (const { kind, key } of [row, ...alternatives(row.also)]) {
    if (!KINDS.includes(kind)) say(`unknown kind ${kind}`);
    else problemsOfKey(row.fen, row.side, kind, key).forEach(say);
  }
  kindsSeen.set(row.kind, (kindsSeen.get(row.kind) ?? 0) + 1);
  if (row.standing !== undefined) {
    if (!STANDINGS.includes(row.standing)) say(`standing ${row.standing}`);
    problemsOfLine(row).forEach(say);
  }
  if (row.rank !== undefined) checkRank(row, say);
  return undefined;
}

// "first", "first or second", or "rather than KEY" with a key of the kind.
function checkRank(row, say) {
  if (/^first( or second)?$/.test(row.rank)) return;
  const other = row.rank.match(/^rather than (\S+)$/)?.[1];
  if (!other || !readKey(other)) say(`rank ${row.rank}`);
  else problemsOfKey(row.fen, row.side, row.kind, other).forEach(say);
}

// In one file, one row for a position and side.
function checkRepeats(rows) {
  const seen = new Map();
  for (const row of rows) {
    const id = `${row.fen.split(' ')[0]} ${row.side}`;
    if (seen.has(id)) {
      problems.push(`${row.where} ${row.name}: ${seen.get(id)} has this ` +
        'position and side');
    }
    seen.set(id, row.name);
  }
}

for (const [file, { columns, least, structures }] of Object.entries(FILES)) {
  const rows = readRows(file, columns);
  for (const row of rows) {
    checkRow(row, (what) =>
      problems.push(`${row.where} ${row.name}: ${what}`));
  }
  checkRepeats(rows);
  const different = new Set(rows.map((row) => row.structure)).size;
  const sides = new Set(rows.map((row) => row.side)).size;
  if (rows.length < least || different < structures || sides < 2) {
    problems.push(`${file}: ${rows.length} rows, ${different} structures, ` +
      `${sides} sides`);
  }
  console.log(`${file}: ${rows.length} rows, ${different} structures`);
}
for (const kind of KINDS) {
  if (!kindsSeen.has(kind)) problems.push(`no row has the kind ${kind}`);
}

for (const problem of problems) console.log(problem);
console.log(`${problems.length} problems`);
process.exitCode = problems.length ? 1 : 0;
