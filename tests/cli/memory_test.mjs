// Lessons of any length in the same memory: the key positions of a hundred games
// and of a thousand. Of a longer lesson, only its text and a few words a key
// position are held besides (core/assay/lesson/key_positions.h).
//
//   node --test tests/cli/memory_test.mjs    with ASSAY=.../assay; GAMES=10000
//   and more: how many the longer one has
//
// The games are those that the npm package chess.js has for its benchmark, each
// left at ten places for a few moves of chance, so that no position repeats.

import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { createReadStream, existsSync, mkdtempSync, readFileSync, rmSync,
  statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const benchmark = join(here, '..', 'node_modules', 'chess.js', 'benchmarks',
  'benchmark.pgn');
if (!existsSync(benchmark)) {
  console.log('skipped: npm ci --prefix tests');
  process.exit(77);
}
const { Chess } = await import('chess.js');

const program = process.env.ASSAY;
const many = Number(process.env.GAMES ?? 1000);
const folder = mkdtempSync(join(tmpdir(), 'assay-'));
after(() => rmSync(folder, { recursive: true }));

let state = 20261127;
const random = (below) => {
  state = (state * 1103515245 + 12345) % 2147483648;
  return Math.floor(state / 2147483648 * below);
};

// A game of its own number: so many plies of the given one, a few by chance,
// and a comment on each of the last three.
function leftGame(moves, number) {
  const game = new Chess();
  const plies = Math.min(moves.length, 8 + random(moves.length));
  for (const move of moves.slice(0, plies)) game.move(move);
  for (let i = 0; i < 4 && !game.isGameOver(); i += 1) {
    const legal = game.moves();
    game.move(legal[random(legal.length)]);
  }
  const played = game.history();
  let text = `[Event "${number}"]\n[White "Amsel"]\n[Black "Brandt"]\n\n`;
  played.forEach((move, i) => {
    text += i % 2 === 0 ? `${i / 2 + 1}. ${move} ` : `${move} `;
    if (i + 3 >= played.length) text += `{Place ${i} of ${number}.} `;
  });
  return `${text}*\n\n`;
}

const played = readFileSync(benchmark, 'utf8').split(/(?=^\[Event )/m)
  .filter((text) => text.startsWith('[Event '))
  .map((text) => {
    const game = new Chess();
    game.loadPgn(text);
    return game.history();
  }).filter((moves) => moves.length > 20);
const games = Array.from({ length: many },
  (_, i) => leftGame(played[i % played.length], i));
const file = (count) => {
  const path = join(folder, `${count}.pgn`);
  if (!existsSync(path)) writeFileSync(path, games.slice(0, count).join(''));
  return path;
};

// The most memory that the program had, in MiB, and its exit code.
function peakOf(args) {
  const child = spawn(program, args, { stdio: ['ignore', 'ignore', 'inherit'] });
  let peak = 0;
  const look = setInterval(() => {
    try {
      const status = readFileSync(`/proc/${child.pid}/status`, 'utf8');
      peak = Math.max(peak, Number(status.match(/VmHWM:\s+(\d+)/)?.[1] ?? 0));
    } catch {
      // It has just ended.
    }
  }, 5);
  return new Promise((resolve) => {
    child.on('close', (code) => {
      clearInterval(look);
      resolve({ code, peak: peak / 1024 });
    });
  });
}

async function linesOf(path) {
  let lines = 0;
  for await (const chunk of createReadStream(path)) {
    for (const byte of chunk) lines += byte === 10 ? 1 : 0;
  }
  return lines;
}

// What the longer run may take beyond the shorter: its text, held a few times
// over while it is read, and a mebibyte of chance.
function assertFlat(what, few, all, fewGames) {
  const text = (statSync(file(many)).size - statSync(file(fewGames)).size) /
    (1 << 20);
  console.log(`${what}: ${few.toFixed(1)} MiB for ${fewGames} games, ` +
    `${all.toFixed(1)} MiB for ${many}`);
  assert.ok(few > 1);
  assert.ok(all < few + 4 * text + 1, `${what}: ${few} MiB, then ${all} MiB`);
}

test('a lesson with all its files', async () => {
  const peaks = [];
  for (const count of [100, many]) {
    const out = join(folder, `lesson${count}`);
    const { code, peak } = await peakOf(['lesson', file(count),
      '--proof-nodes', '100', '--items', `${out}.jsonl`, '--annotated',
      `${out}.pgn`, '--handout', `${out}.html`]);
    assert.equal(code, 0);
    assert.ok(await linesOf(`${out}.jsonl`) > 2.5 * count);
    assert.ok(statSync(`${out}.html`).size > 20000 * count);
    peaks.push(peak);
  }
  assertFlat('lesson', ...peaks, 100);
});

test('proofreading, looking for positions, and a student', async () => {
  for (const [what, ...more] of [['proofread', '--proof-nodes', '100'],
    ['find', 'centre=closed'], ['student', '--name', 'Amsel']]) {
    const peaks = [];
    for (const count of [100, many]) {
      const { code, peak } = await peakOf([what, file(count), ...more]);
      assert.ok(code === 0 || (what === 'proofread' && code === 1), what);
      peaks.push(peak);
    }
    assertFlat(what, ...peaks, 100);
  }
});
