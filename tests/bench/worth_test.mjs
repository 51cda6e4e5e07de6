// What assay_worth says of a few games, against sums of our own: positions,
// games, slices, losses and calibration are found here from the results and
// from what `assay score` says of each position. The JSON is read, the page
// validated and searched for anything from elsewhere.
//
//   BUILD=build node --test tests/bench/worth_test.mjs
import assert from 'node:assert/strict';
import {spawnSync} from 'node:child_process';
import {mkdtempSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {after, test} from 'node:test';

let Chess;
let HtmlValidate;
try {
  ({Chess} = await import('chess.js'));
  ({HtmlValidate} = await import('html-validate'));
} catch {
  console.log('skipped: run npm ci --prefix tests');
  process.exit(77);
}

const build = process.env.BUILD;
const folder = mkdtempSync(join(tmpdir(), 'worth-'));
after(() => rmSync(folder, {recursive: true}));
const file = (name) => join(folder, name);

function run(program, words, input = '') {
  const ran = spawnSync(join(build, 'bin', program), words,
    {encoding: 'utf8', input, maxBuffer: 2 ** 26});
  assert.equal(ran.status, 0, ran.stderr);
  return ran.stdout;
}

// Games at random, the same each time: whoever has more on the board at the end
// has won.
let state = 12345;
function random(below) {
  state = (state * 1103515245 + 12345) % 2 ** 31;
  return Math.floor(state / 2 ** 31 * below);
}
const WORTH = {p: 1, n: 3, b: 3, r: 5, q: 9, k: 0};
function balance(chess) {
  return chess.board().flat().filter(Boolean).reduce((sum, {type, color}) =>
    sum + (color === 'w' ? WORTH[type] : -WORTH[type]), 0);
}
function playedGame() {
  const chess = new Chess();
  const fens = [];
  while (!chess.isGameOver() && fens.length < 70) {
    const moves = chess.moves();
    chess.move(moves[random(moves.length)]);
    fens.push(chess.fen());
  }
  const more = balance(chess);
  return {chess, fens, points: more > 1 ? 1 : more < -1 ? 0 : 0.5};
}
const games = Array.from({length: 40}, playedGame);
const samples = games.flatMap(({fens, points}, game) =>
  fens.filter((_, ply) => ply % 4 === 3)
    .map((fen) => ({fen, points, game})));
writeFileSync(file('games.tsv'), samples.map(({fen, points, game}) =>
  `${fen}\t${points}\tgame ${game}\n`).join(''));

const table = run('assay_worth', [file('games.tsv'), '--json',
  file('worth.json'), '--html', file('worth.html')]);
const found = JSON.parse(readFileSync(file('worth.json'), 'utf8'));
const scores = run('assay', ['score', '-'],
  samples.map(({fen}) => `${fen}\n`).join('')).trim().split('\n').map(Number);

const expected = (score, scale) => 1 / (1 + Math.exp(-score / scale));
function lossOf(picked, scale) {
  const losses = picked.map((i) => {
    const chance = expected(Math.max(-1500, Math.min(1500, scores[i])), scale);
    const {points} = samples[i];
    return -points * Math.log(chance) - (1 - points) * Math.log(1 - chance);
  });
  return losses.reduce((sum, loss) => sum + loss, 0) / losses.length;
}
const all = samples.map((_, i) => i);
const near = (a, b, most) => assert.ok(Math.abs(a - b) <= most, `${a} ${b}`);

test('counts and losses are those of the games', () => {
  assert.equal(found.positions, samples.length);
  assert.equal(found.games, games.length);
  near(found.loss, lossOf(all, found.scaleCp), 1e-5);
  // No other scale is better.
  for (const factor of [0.9, 1.1]) {
    assert.ok(lossOf(all, found.scaleCp * factor) > found.loss);
  }
  const mean = samples.reduce((sum, {points}) => sum + points, 0) /
    samples.length;
  near(found.constantLoss,
    -mean * Math.log(mean) - (1 - mean) * Math.log(1 - mean), 1e-5);
});

test('slices are parts of the whole, equal material by counting pieces', () => {
  const groups = new Map();
  for (const {group, positions} of found.slices) {
    groups.set(group, (groups.get(group) ?? 0) + positions);
  }
  for (const group of ['phase', 'centre', 'structure', 'material']) {
    assert.equal(groups.get(group), samples.length, group);
  }
  const count = (fen) => (letters) => ['p', 'n', 'b', 'r', 'q'].map((kind) =>
    [...fen.split(' ')[0]].filter((letter) => letter === letters(kind)).length)
    .join();
  const equal = all.filter((i) => count(samples[i].fen)((kind) => kind) ===
    count(samples[i].fen)((kind) => kind.toUpperCase()));
  const slice = found.slices.find(({group, name}) =>
    group === 'material' && name === 'equal');
  assert.equal(slice.positions, equal.length);
  assert.equal(groups.get('equal material'), equal.length);
  near(slice.loss, lossOf(equal, found.scaleCp), 1e-5);
  near(slice.lossAtOwnScale, lossOf(equal, slice.ownScaleCp), 1e-5);
  assert.ok(slice.lossAtOwnScale <= slice.loss + 1e-6);
});

test('calibration is what was predicted and what happened', () => {
  assert.ok(found.calibration.length > 2);
  for (const {from, to, positions, predicted, actual} of found.calibration) {
    const inside = all.filter((i) => {
      const score = Math.max(-1500, Math.min(1500, scores[i]));
      return from <= score && score <= to;
    });
    assert.equal(positions, inside.length, `${from}`);
    const mean = (of) => inside.reduce((sum, i) => sum + of(i), 0) /
      inside.length;
    near(actual, mean((i) => samples[i].points), 1e-5);
    near(predicted, mean((i) => expected(Math.max(-1500,
      Math.min(1500, scores[i])), found.scaleCp)), 1e-5);
  }
});

test('material foretells who has more at the end; themes hold their terms', () => {
  const material = found.terms.find(({name}) => name === 'material');
  assert.ok(material.lossLeftOutLow > 0);
  for (const worth of [...found.terms, ...found.themes]) {
    assert.ok(worth.fires > 0 && worth.fires <= 1, worth.name);
    assert.ok(worth.lossLeftOutLow <= worth.lossLeftOutHigh, worth.name);
    for (const correlation of Object.values(worth.correlations)) {
      assert.ok(Math.abs(correlation) <= 1.001, worth.name);
    }
  }
  for (const theme of found.themes) {
    const most = Math.max(...found.terms.filter((term) =>
      term.theme === theme.name).map(({fires}) => fires));
    assert.ok(theme.fires >= most, theme.name);
  }
});

test('the table has a line for every term, theme and slice', () => {
  const lines = new Set(table.split('\n').map((line) =>
    line.slice(0, 22).trim()));
  for (const {name} of [...found.terms, ...found.themes]) {
    assert.ok(lines.has(name), name);
  }
  for (const {group, name} of found.slices) {
    assert.ok(table.includes(`\n${group}: ${name} `), name);
  }
});

test('the page is valid, whole by itself and has every term', async () => {
  const html = readFileSync(file('worth.html'), 'utf8');
  const report = await new HtmlValidate({extends: ['html-validate:recommended']})
    .validateString(html);
  assert.ok(report.valid, JSON.stringify(report.results[0]?.messages?.slice(0, 3)));
  // Nothing is fetched: no address, no file, no program.
  assert.doesNotMatch(html, /https?:|<link|<script|<img|@import|url\(/);
  for (const {title} of found.terms) {
    const escaped = title.replaceAll('&', '&amp;').replaceAll("'", '&#39;');
    assert.ok(html.includes(`<summary>${escaped}</summary>`), title);
  }
  for (const slice of found.slices) {
    assert.ok(html.includes(`${slice.group}: ${slice.name
      .replaceAll("'", '&#39;')}</th>`), slice.name);
  }
  assert.equal(html.match(/<svg role="img"/g).length,
    1 + found.slices.filter(({positions}) => positions >= 1000).length);
});

test('games as PGN: quiet positions from the twelfth move on', () => {
  writeFileSync(file('games.pgn'), games.map(({chess, points}) => {
    const result = {0: '0-1', 0.5: '1/2-1/2', 1: '1-0'}[points];
    const moves = chess.history().map((san, ply) =>
      ply % 2 === 0 ? `${ply / 2 + 1}. ${san}` : san);
    return `[Event "own"]\n[Result "${result}"]\n\n` +
      `${moves.join('\n')} ${result}\n\n`;
  }).join(''));
  const pgn = JSON.parse(run('assay_worth', [file('games.pgn'), '--json', '-']));
  const candidates = games.reduce((sum, {fens}) =>
    sum + fens.filter((_, i) => i + 1 >= 24 && (i + 1) % 4 === 0).length, 0);
  assert.ok(pgn.positions > 0 && pgn.positions <= candidates);
  assert.ok(pgn.games <= games.length);
});

test('what cannot be read is told', () => {
  const refused = (words, input) => {
    const ran = spawnSync(join(build, 'bin', 'assay_worth'), words,
      {encoding: 'utf8', input});
    assert.notEqual(ran.status, 0);
    return ran.stderr;
  };
  assert.match(refused(['-'], 'no position\n'), /1 lines .*\nno positions read/s);
  assert.match(refused([file('missing.tsv')], ''), /missing\.tsv: cannot be read/);
  assert.match(refused(['--wrong'], ''), /usage: assay_worth/);
});
