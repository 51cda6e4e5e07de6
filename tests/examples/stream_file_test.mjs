// examples/client's stream_file_example: every line answered, in order, though
// the server dies on the way, and the client, too.
//
//   node tests/examples/stream_file_test.mjs STREAM_FILE_EXAMPLE ASSAYD

import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync,
  writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';

const [program, assayd] = process.argv.slice(2);
let Assayd;
let waitFor;
let positions;
try {
  ({ Assayd, waitFor } = await import('../server/lib/assayd.mjs'));
  ({ positions } = await import('../server/lib/positions.mjs'));
} catch {
  console.log('skipped: run npm ci --prefix tests');
  process.exit(77);
}

const folder = mkdtempSync(join(tmpdir(), 'assay-stream-'));
const file = (name) => join(folder, name);
const fens = positions(400, 7);
fens[11] = '8/8 w'; // no position: one line tells so, the others go on
let expected;
before(() => writeFileSync(file('in'), `${fens.join('\n')}\n`));
after(() => rmSync(folder, { recursive: true }));

function start(address, out) {
  const child = spawn(program, [address, file('in'), file(out)],
    { stdio: ['ignore', 'ignore', 'pipe'] });
  let log = '';
  child.stderr.on('data', (part) => { log += part; });
  return { child, log: () => log,
    ended: once(child, 'exit').then(([code, signal]) => code ?? signal) };
}
const lines = (name) => readFileSync(file(name), 'utf8').split('\n').slice(0, -1);
const grown = (name, bytes) => waitFor(() =>
  existsSync(file(name)) && statSync(file(name)).size > bytes, name, 20000);

test('a file with one bad line', async () => {
  const server = await Assayd.start(assayd);
  const run = start(server.address, 'whole');
  assert.equal(await run.ended, 0, run.log());
  expected = lines('whole');
  assert.equal(expected.length, fens.length);
  for (const [i, line] of expected.entries()) {
    assert.match(line, i === 11 ? /^11\terror: / : /^\d+\t-?\d+\t\w/, `line ${i}`);
    assert.equal(line.split('\t')[0], String(i));
  }
  await server.stop();
});

test('a server that is killed and comes back', async () => {
  const server = await Assayd.start(assayd);
  const run = start(server.address, 'server');
  await grown('server', 2000);
  await server.stop('SIGKILL');
  const answered = lines('server').length;
  assert.ok(answered < fens.length, 'killed too late to matter');
  const again = await Assayd.start(assayd, [`--listen=${server.address}`]);
  assert.equal(await run.ended, 0, run.log());
  assert.match(run.log(), /going on after: UNAVAILABLE/);
  assert.deepEqual(lines('server'), expected);
  await again.stop();
});

test('a client that is killed, in the middle of a line, and run again',
  async () => {
    const server = await Assayd.start(assayd);
    const run = start(server.address, 'client');
    await grown('client', 2000);
    run.child.kill('SIGKILL');
    await run.ended;
    const cut = readFileSync(file('client'), 'utf8').slice(0, -5);
    assert.ok(cut.split('\n').length < fens.length, 'killed too late to matter');
    writeFileSync(file('client'), cut);
    const again = start(server.address, 'client');
    assert.equal(await again.ended, 0, again.log());
    assert.deepEqual(lines('client'), expected);
    await server.stop();
  });

test('no server at all: it gives up and says so', async () => {
  const run = start('127.0.0.1:1', 'none');
  assert.equal(await run.ended, 1);
  assert.match(run.log(), /UNAVAILABLE/);
});
