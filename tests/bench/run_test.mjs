// The benchmarks as one command: every program's answers are checked, and what
// is written has what a comparison needs. The times themselves mean nothing
// here.
//
//   BUILD=build node --test tests/bench/run_test.mjs
import assert from 'node:assert/strict';
import {spawnSync} from 'node:child_process';
import {mkdtempSync, readFileSync, rmSync} from 'node:fs';
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

test('one run tells time, memory and size of every room', () => {
  const out = join(folder, 'run.json');
  const ran = node(join(BENCH, 'run.mjs'), '--build', build, '--out', out,
    '--seconds', '0.01');
  assert.equal(ran.status, 0, ran.stderr);
  const {machine, commit, programs} = JSON.parse(readFileSync(out, 'utf8'));
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
});

test('a build compared with itself', () => {
  const ran = node(join(BENCH, 'compare.mjs'), build, build, '--rounds', '2',
    '--seconds', '0.01', '--only', 'rules_benchmark');
  assert.equal(ran.status, 0, ran.stderr);
  const [first, ...rows] = ran.stdout.trimEnd().split('\n');
  assert.equal(first, 'rules_benchmark');
  assert.ok(rows.length >= 5, ran.stdout);
  for (const row of rows) {
    const [middle, ...rounds] = row.match(/\d+\.\d\d/g);
    assert.equal(rounds.length, 2, row);
    assert.ok(rounds.includes(middle), row);
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
