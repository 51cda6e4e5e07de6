// What goes wrong around the program: no memory, no room on the disk, a file
// that ends too soon, a kill at any moment. It refuses or goes on; it never
// aborts, and never leaves half a result that looks whole.
//
//   node --test tests/cli/faults_test.mjs    with ASSAY=.../assay; KILLS=50 and
//   more: how often the lesson is killed

import assert from 'node:assert/strict';
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, lstatSync, mkdtempSync, readFileSync, readdirSync, rmSync,
  statSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';

const program = process.env.ASSAY;
const examples = join(dirname(fileURLToPath(import.meta.url)), '..', '..',
  'examples', 'lesson');
const course = join(examples, 'autumn_course.pgn');
const folder = mkdtempSync(join(tmpdir(), 'assay-'));
after(() => rmSync(folder, { recursive: true }));
const at = (name) => join(folder, name);

// The same from run to run.
let state = 7;
const random = (below) => {
  state = (state * 1103515245 + 12345) % 2147483648;
  return Math.floor(state / 2147483648 * below);
};

// Under a limit of the shell's, e.g. "ulimit -v 40000".
function under(limit, args) {
  const run = spawnSync('bash', ['-c', `${limit}; exec "$0" "$@"`, program,
    ...args], { encoding: 'utf8', maxBuffer: 1 << 26 });
  return { code: run.status ?? `killed by ${run.signal}`, out: run.stdout,
    error: run.stderr };
}

test('memory of any size: all of it, or a refusal', () => {
  const fens = at('many.fen');
  writeFileSync(fens,
    readFileSync(join(examples, 'winter_class.fen'), 'utf8').repeat(12));
  const args = ['explain', '--static', '--format', 'json', '--jobs', '3', fens];
  const whole = under('true', args);
  assert.equal(whole.code, 0);
  const codes = new Set();
  for (let kilobytes = 26000; kilobytes < 66000; kilobytes += 2777) {
    const { code, out, error } = under(`ulimit -v ${kilobytes}`, args);
    codes.add(code);
    if (code === 127) continue;  // not even its libraries
    assert.ok(code === 0 || code === 3, `${kilobytes} kB: ${code} ${error}`);
    assert.ok(whole.out.startsWith(out), 'a beginning of the whole');
    assert.ok(out === '' || out.endsWith('\n'), 'of whole lines');
    assert.ok(code === 3 ? /out of memory/.test(error) : out === whole.out);
  }
  assert.ok(codes.has(0) && codes.has(3), [...codes].join());
});

test('a process limit: fewer threads, the same bytes', () => {
  // Stacks of a gigabyte each: two of them do not fit.
  const args = ['lesson', course, '--static'];
  assert.equal(under('ulimit -s 1000000 -v 1200000', [...args, '--jobs', '8'])
    .out, under('true', [...args, '--jobs', '1']).out);
});

// A file that may grow to so many blocks of 512 or 1024 bytes, and no further.
const full = (blocks) => `trap "" XFSZ; ulimit -f ${blocks}`;

test('a disk that fills up leaves no output', () => {
  for (const blocks of [0, 1, 4, 20]) {
    const items = at(`full${blocks}.jsonl`);
    const { code, error } = under(full(blocks),
      ['lesson', course, '--static', '--items', items, '--handout',
        `${items}.html`]);
    assert.equal(code, 3, `${blocks}: ${error}`);
    assert.match(error, /cannot write/);
    assert.ok(!existsSync(items) && !existsSync(`${items}.html`));
    // With room again, it goes on from there.
    const again = under('true', ['lesson', course, '--static', '--items',
      items, '--handout', `${items}.html`, '--resume']);
    assert.equal(again.code, 0, again.error);
  }
  const results = readdirSync(folder).filter((name) => name.startsWith('full'));
  const contents = (end) => new Set(results.filter((name) => name.endsWith(end))
    .map((name) => readFileSync(at(name), 'utf8')));
  assert.equal(contents('.jsonl').size, 1);
  assert.equal(contents('.html').size, 1);
  assert.equal(results.length, 8, 'nothing else is left behind');
});

test('an output that is no file stays what it is', () => {
  const pipe = at('pipe');
  spawnSync('mkfifo', [pipe]);
  for (const option of ['--items', '--handout', '--annotated']) {
    for (const path of [pipe, folder, '/proc/of_ours', '/nowhere/at']) {
      const { code, out, error } = under('true',
        ['lesson', course, '--static', option, path]);
      assert.equal(code, 3, `${path}: ${error}`);
      assert.equal(out, '');
      assert.match(error, /^assay: .*cannot write/);
    }
  }
  assert.ok(statSync(pipe).isFIFO());
});

test('an output behind a link is written where the link leads', () => {
  symlinkSync(at('target'), at('link'));
  writeFileSync(at('target'), '');
  assert.equal(under('true',
    ['lesson', course, '--static', '--items', at('link')]).code, 0);
  assert.ok(lstatSync(at('link')).isSymbolicLink());
  assert.match(readFileSync(at('target'), 'utf8'), /chosenBecause/);
});

test('a PGN that ends anywhere', () => {
  const pgn = readFileSync(course);
  const whole = under('true', ['lesson', course, '--static']).out;
  const cut = at('cut.pgn');
  for (let i = 0; i < 40; i += 1) {
    writeFileSync(cut, pgn.subarray(0, random(pgn.length)));
    const { code, out, error } = under('true', ['lesson', cut, '--static']);
    assert.ok(code === 0 || code === 1, `${code} ${error}`);
    // What came before the cut is told as ever, but for what lies beyond it.
    const first = out.split('\n')[0];
    assert.ok(out === '' || first.startsWith('error: ') ||
      whole.includes(first.split(',')[0]), first);
  }
});

function killed(args, ms) {
  return new Promise((resolve) => {
    const child = spawn(program, args, { stdio: 'ignore' });
    const timer = setTimeout(() => child.kill('SIGKILL'), ms);
    child.on('exit', (code, signal) => {
      clearTimeout(timer);
      resolve(signal === 'SIGKILL');
    });
  });
}

test('a lesson killed at random, and gone on with, is the same', async () => {
  const kills = Number(process.env.KILLS ?? 50);
  const outputs = (base) => ['--items', `${base}.jsonl`, '--handout',
    `${base}.html`, '--annotated', `${base}.pgn`];
  const args = ['lesson', course, '--proof-nodes', '3000'];
  const base = at('undisturbed');
  const start = Date.now();
  assert.equal(under('true', [...args, ...outputs(base)]).code, 0);
  const took = Date.now() - start;
  const read = (name) => ['.jsonl', '.html', '.pgn'].map((end) =>
    readFileSync(name + end, 'utf8'));
  let died = 0;
  for (let round = 0; died < kills; round += 1) {
    assert.ok(round < kills * 4, 'kills hit');
    const name = at(`killed${round}`);
    for (let hit = true; hit;) {
      hit = await killed([...args, ...outputs(name), '--resume'],
        1 + random(took));
      died += hit ? 1 : 0;
    }
    assert.deepEqual(read(name), read(base), `round ${round}`);
  }
});
