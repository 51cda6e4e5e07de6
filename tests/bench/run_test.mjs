// The benchmarks as one command: every program's answers are checked, and what
// is written has what a comparison needs. The times themselves mean nothing
// here.
//
//   BUILD=build node --test tests/bench/run_test.mjs
import assert from 'node:assert/strict';
import {spawnSync} from 'node:child_process';
import {mkdtempSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {after, test} from 'node:test';
import {fileURLToPath} from 'node:url';

const BENCH = fileURLToPath(new URL('../../bench/', import.meta.url));
const build = process.env.BUILD;
const folder = mkdtempSync(join(tmpdir(), 'bench-'));
after(() => rmSync(folder, {recursive: true}));

const node = (...words) =>
  spawnSync(process.execPath, words, {encoding: 'utf8', cwd: folder});

// White, a knight or a rook up, wins; Black's are the same with colours swapped.
const RESULTS = [
  'r1bqkb1r/pppp1ppp/8/4p3/4P3/5N2/PPPP1PPP/RNBQKB1R w KQkq - 0 4\t1\tA',
  '4k3/pp3ppp/8/8/8/8/PP3PPP/R3K3 w - - 0 20\t1\tB',
  'rnbqkb1r/pppp1ppp/5n2/4p3/4P3/8/PPPP1PPP/R1BQKB1R b KQkq - 0 4\t0\tC',
  'r3k3/pp3ppp/8/8/8/8/PP3PPP/4K3 b - - 0 20\t0\tD',
  '4k3/pp3ppp/8/8/8/8/PP3PPP/4K3 w - - 0 20\t0.5\tE',
];

test('one run tells time, memory and size of every room', () => {
  const out = join(folder, 'run.json');
  const results = join(folder, 'results.tsv');
  writeFileSync(results, RESULTS.join('\n'));
  const ran = node(join(BENCH, 'run.mjs'), '--build', build, '--out', out,
    '--seconds', '0.01', '--results', results);
  assert.equal(ran.status, 0, ran.stderr);
  const {machine, commit, programs, costs, worths} =
    JSON.parse(readFileSync(out, 'utf8'));
  assert.ok(machine.cores >= 1 && machine.processor.length > 0);
  assert.match(commit, /^[0-9a-f]{7,}/);
  for (const room of ['rules', 'terms', 'explain', 'proof', 'convert']) {
    const rows = programs[`${room}_benchmark`];
    assert.ok(rows, `no ${room}_benchmark`);
    for (const [name, row] of Object.entries(rows)) {
      assert.ok(row.time >= 0 && row.unit, `${room}: ${name}`);
    }
    const memory = rows['PeakMemory/iterations:1'].counters.peak_MiB;
    // A process that has run C++ has a mebibyte; ours need no gibibyte.
    assert.ok(memory > 1 && memory < 1024, `${room}: ${memory} MiB`);
  }
  assert.ok(
    programs.explain_benchmark.ExplainStatic.counters.allocations > 1);
  assert.ok(programs.convert_benchmark.ProtoToJson.counters.bytes >
    programs.convert_benchmark.ProtoToBytes.counters.bytes);
  // Each theme costs what its terms do, and all of them what a score does.
  for (const {name, nsPerPosition} of costs.themes) {
    const terms = costs.terms.filter(({theme}) => theme === name);
    const sum = terms.reduce((ns, term) => ns + term.nsPerPosition, 0);
    assert.ok(Math.abs(sum - nsPerPosition) < 0.01 * terms.length, name);
  }
  const all = costs.themes.reduce((ns, theme) => ns + theme.nsPerPosition,
    costs.factsNsPerPosition);
  assert.ok(all > 0.8 * costs.scoreNsPerPosition &&
    all < 1.3 * costs.scoreNsPerPosition, `${all} ns`);
  assert.equal(worths.positions, RESULTS.length);

  const readme = join(folder, 'README.md');
  writeFileSync(readme, 'a\n<!-- costs -->\nold\n<!-- end -->\nb\n' +
    '<!-- worths -->\n\n<!-- end -->\nc\n');
  const written = node(join(BENCH, 'tables.mjs'), out, '--write', readme);
  assert.equal(written.status, 0, written.stderr);
  const text = readFileSync(readme, 'utf8');
  assert.match(text, /^a\n<!-- costs -->\n[^]*<!-- end -->\nb\n<!-- worths -->\n[^]*<!-- end -->\nc\n$/);
  assert.doesNotMatch(text, /old|undefined|NaN/);
  const rows = text.split('\n').filter((line) => line.startsWith('| '));
  for (const theme of [...costs.themes, ...worths.themes]) {
    assert.ok(rows.some((row) => row.startsWith(`| ${theme.name} | `)));
  }
  assert.ok(rows.some((row) => row.startsWith(`| \`${costs.terms[0].name}\``)));
});

test('a build compared with itself', () => {
  const ran = node(join(BENCH, 'compare.mjs'), build, build, '--rounds', '2',
    '--seconds', '0.01', '--only', 'rules_benchmark', '--out', 'ratios.json');
  assert.equal(ran.status, 0, ran.stderr);
  const [first, ...rows] = ran.stdout.trimEnd().split('\n');
  assert.equal(first, 'rules_benchmark');
  assert.ok(rows.length >= 5, ran.stdout);
  for (const row of rows) {
    const [middle, ...rounds] = row.match(/\d+\.\d\d/g);
    assert.equal(rounds.length, 2, row);
    assert.ok(rounds.includes(middle), row);
  }
  const {machine, programs} =
    JSON.parse(readFileSync(join(folder, 'ratios.json'), 'utf8'));
  assert.ok(machine.cores >= 1);
  assert.equal(Object.keys(programs.rules_benchmark).length, rows.length);
  for (const {ratio, rounds} of Object.values(programs.rules_benchmark)) {
    assert.ok(rounds.includes(ratio));
  }
});

test('what is missing is told', () => {
  const none = node(join(BENCH, 'run.mjs'), '--build', folder);
  assert.notEqual(none.status, 0);
  assert.match(none.stderr, /bin/);
  const usage = node(join(BENCH, 'compare.mjs'), build);
  assert.equal(usage.status, 2);
  assert.match(usage.stderr, /usage: .*OLD_BUILD NEW_BUILD/);
});
