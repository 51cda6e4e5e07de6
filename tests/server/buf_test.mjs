// The contract held to the standard rules by buf, and the server met by buf's
// own client, which knows nothing but what reflection tells it.

import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync }
  from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { after, before, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { Assayd, waitFor } from './lib/assayd.mjs';

const tests = join(dirname(fileURLToPath(import.meta.url)), '..');
const protos = join(tests, '..', 'proto');
const release = join(protos, 'last_release.binpb');
// The program itself: the script around it does not pass signals on.
const program = createRequire(import.meta.url).resolve(
  `@bufbuild/buf-${process.platform}-${process.arch}/bin/buf`);
const folder = mkdtempSync(join(tmpdir(), 'assay-buf-'));

let server;
before(async () => { server = await Assayd.start(process.env.ASSAYD,
  ['--metrics-port=0', '--max-proof-nodes=50000000']); });
after(async () => {
  assert.equal(await server.stop(), 0);
  rmSync(folder, { recursive: true });
});

function start(args) {
  const run = spawn(program, args,
    { env: { ...process.env, BUF_CACHE_DIR: folder } });
  run.text = { out: '', err: '' };
  run.stdout.on('data', (data) => { run.text.out += data; });
  run.stderr.on('data', (data) => { run.text.err += data; });
  run.ended = new Promise((resolve) => run.on('close', (code) =>
    resolve({ code, ...run.text })));
  return run;
}
const buf = (...args) => start(args).ended;

function curlArguments(service, method, data, extra = []) {
  return ['curl', '--protocol', 'grpc', '--http2-prior-knowledge', ...extra,
    '-d', data, `http://${server.address}/${service}/${method}`];
}
const curl = (method, data, extra) =>
  buf(...curlArguments('assay.v1.PositionExplainer', method, data, extra));

test('the contract passes the standard rules', async () => {
  const { code, out, err } = await buf('lint', protos);
  assert.equal(code, 0, out + err);
});

// A copy of the contract with a change made to one of its files.
function changed(name, file, change) {
  const copy = join(folder, name);
  cpSync(protos, copy, { recursive: true });
  const path = join(copy, file);
  const text = readFileSync(path, 'utf8');
  const after = change(text);
  assert.notEqual(after, text);
  writeFileSync(path, after);
  return copy;
}

test('a field without a proper name does not', async () => {
  const copy = changed('lint', 'assay/v1/common.proto',
    (text) => text.replace('uint32 proof_nodes', 'uint32 ProofNodes'));
  const { code, out } = await buf('lint', copy);
  assert.notEqual(code, 0);
  assert.match(out, /ProofNodes/);
});

test('the contract breaks nothing of the last release', async () => {
  const { code, out, err } = await buf('breaking', protos, '--against',
    release);
  assert.equal(code, 0, out + err);
});

test('a field that is gone would be found', async () => {
  const copy = changed('breaking', 'assay/v1/explainer.proto',
    (text) => text.replace(/string tag = 2;/, ''));
  const { code, out } = await buf('breaking', copy, '--against', release);
  assert.notEqual(code, 0);
  assert.match(out, /field "2" .*"tag"/);
});

test('reflection tells the services and their methods', async () => {
  const { code, out, err } = await buf('curl', '--protocol', 'grpc',
    '--http2-prior-knowledge', '--list-methods', `http://${server.address}`);
  assert.equal(code, 0, err);
  const methods = out.trim().split('\n');
  for (const name of ['assay.v1.PositionExplainer/Explain',
    'assay.v1.PositionExplainer/ProofreadLesson',
    'grpc.health.v1.Health/Watch']) {
    assert.ok(methods.includes(name), name);
  }
});

test('buf explains a position', async () => {
  const { code, out, err } = await curl('Explain', JSON.stringify({
    position: { fen: '4k3/8/8/8/8/8/4P3/4K3 w - - 0 1' }, tag: 'b',
    options: { staticOnly: true } }));
  assert.equal(code, 0, err);
  const answer = JSON.parse(out);
  assert.equal(answer.tag, 'b');
  assert.equal(answer.explanation.verdict.favours, 'SIDE_WHITE');
});

test('buf reads typed faults', async () => {
  const { code, err } = await curl('Explain',
    '{"position":{"fen":"4k3/8/8/8/8/8/8/4K3 x - -"}}');
  assert.notEqual(code, 0);
  const error = JSON.parse(err);
  assert.equal(error.code, 'invalid_argument');
  assert.equal(error.details[0].type, 'google.rpc.BadRequest');
  assert.match(Buffer.from(error.details[0].value, 'base64').toString(),
    /position\.fen.*found "x"/s);
});

test('buf streams 2,000 positions with faults', async () => {
  const bad = (i) => i % 71 === 20;
  const requests = Array.from({ length: 2000 }, (_, i) => JSON.stringify({
    position: { fen: `4k3/8/8/8/8/8/4P3/4K3 ${bad(i) ? '?' : 'w'} - - 0 ${
      i + 1}` }, tag: String(i), options: { staticOnly: true } }));
  const file = join(folder, 'requests.json');
  writeFileSync(file, requests.join('\n'));
  const { code, out, err } = await curl('ExplainStream', `@${file}`);
  assert.equal(code, 0, err);
  const answers = JSON.parse(`[${out.trim().replaceAll('\n}\n{', '\n},\n{')}]`);
  assert.equal(answers.length, 2000);
  for (const [i, answer] of answers.entries()) {
    assert.equal(answer.tag, String(i));
    assert.equal(Boolean(answer.error), bad(i));
    assert.equal(Boolean(answer.explanation), !bad(i));
  }
});

const long = JSON.stringify({ position: { fen:
  'r1bq1rk1/pp2bppp/2n1pn2/2pp4/3P1B2/2PBPN2/P1P2PPP/R2Q1RK1 b - - 1 9' },
options: { proofNodes: 50000000 } });

test('buf hits a deadline', async () => {
  const { code, err } = await curl('Explain', long, ['--timeout', '1s']);
  assert.notEqual(code, 0);
  assert.match(err, /deadline/);
  await waitFor(() => server.entries({ code: 'DEADLINE_EXCEEDED' }).length > 0,
    'the server knows');
});

test('buf gives up', async () => {
  const run = start(curlArguments('assay.v1.PositionExplainer', 'Explain',
    long));
  await waitFor(async () => (await server.metrics())
    .includes('assay_calls_in_flight 1'), 'in flight');
  run.kill('SIGINT');
  await run.ended;
  await waitFor(() => server.entries({ code: 'CANCELLED' }).length === 1,
    'the server knows');
});

test('buf watches health', async () => {
  const other = await Assayd.start(process.env.ASSAYD);
  const run = start(['curl', '--protocol', 'grpc', '--http2-prior-knowledge',
    '-d', '{}', `http://${other.address}/grpc.health.v1.Health/Watch`]);
  await waitFor(() => /"SERVING"/.test(run.text.out), 'SERVING');
  assert.equal(await other.stop(), 0);
  await run.ended;
  assert.match(run.text.out, /"NOT_SERVING"/);
});
