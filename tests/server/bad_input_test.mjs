// What the server makes of input that no client should send: the documented
// code each, a line in the log, and it goes on.

import assert from 'node:assert/strict';
import { connect as connectTcp } from 'node:net';
import { after, before, test } from 'node:test';
import { Assayd, waitFor } from './lib/assayd.mjs';
import { call, callRaw, code, connect, detailsOf, good, stream, type }
  from './lib/client.mjs';

let server;
let client;
before(async () => {
  server = await Assayd.start(process.env.ASSAYD,
    ['--handshake-timeout-s=1', '--metrics-port=0']);
  client = connect(server.address, undefined,
    { 'grpc.max_send_message_length': -1 });
});
after(async () => {
  client.close();
  assert.equal(await server.stop(), 0);
  assert.deepEqual(server.unread, []);
});

const encode = (name, value) =>
  Buffer.from(type(`assay.v1.${name}`).encode(value).finish());
const text = (field, bytes) => Buffer.concat(
  [Buffer.from([(field << 3) | 2, bytes.length]), bytes]);

// A call that fails with a code and a fault at a field, logged once; the next
// good call is answered.
async function refused(method, bytes, field, pattern, wanted) {
  const before = server.entries({ method, level: 'warn' }).length;
  const { error, response } = await callRaw(client, method, bytes);
  assert.equal(response, undefined);
  assert.equal(error.code, wanted ?? code.INVALID_ARGUMENT, error.details);
  const violations = detailsOf(error).badRequest.fieldViolations;
  assert.ok(violations.length >= 1 && violations.length <= 10);
  assert.equal(violations[0].field, field);
  assert.match(violations[0].description, pattern);
  const entries = await waitFor(() => {
    const found = server.entries({ method, level: 'warn' });
    return found.length > before && found;
  }, 'a line in the log');
  assert.equal(entries.length, before + 1);
  assert.ok((await call(client, 'Explain', good)).response);
}

const invalid = Buffer.from([0x61, 0xc3, 0x28]);
const rows = [
  ['an empty request', 'Explain', Buffer.alloc(0), 'position', /no form/],
  ['neither form', 'Explain', encode('ExplainRequest', { position: {} }),
    'position', /no form/],
  ['both forms, the last of which counts', 'Explain',
    text(1, Buffer.concat([text(1, Buffer.from('bad')), text(2,
      text(2, Buffer.from('e9')))])), 'position.line.moves[0]', /not a move/],
  ['a FEN of 1 MB', 'Explain',
    encode('ExplainRequest', { position: { fen: '8/'.repeat(500000) } }),
    'position.fen', /long/],
  ['a request over 1 MiB', 'Explain',
    encode('ExplainRequest', { position: { fen: 'x'.repeat(1 << 20) } }),
    'request', /too large.*at most 1048576/],
  ['a tag that is not UTF-8', 'Explain',
    Buffer.concat([encode('ExplainRequest', good), text(3, invalid)]),
    'tag', /not UTF-8.*a\\xc3\(/],
  ['a FEN that is not UTF-8', 'Explain', text(1, text(1, invalid)),
    'position.fen', /not UTF-8/],
  ['a million moves', 'Explain', encode('ExplainRequest',
    { position: { line: { moves: Array(1000000).fill('Nf3') } } }),
    'request', /too large/],
  ['a hundred thousand moves, the third of which is illegal', 'Explain',
    encode('ExplainRequest',
      { position: { line: { moves: Array(100000).fill('Nf3') } } }),
    'position.line.moves[1]', /illegal/],
  ['an unknown audience', 'Explain',
    encode('ExplainRequest', { ...good, options: { audience: 77 } }),
    'options.audience', /unknown number: found 77/],
  ['a budget over the limit', 'Explain',
    encode('ExplainRequest', { ...good, options: { proofNodes: 4294967295 } }),
    'options.proof_nodes', /ceiling: found 4294967295/],
  ['a tag that is too long', 'Explain',
    encode('ExplainRequest', { ...good, tag: 'é'.repeat(65) }), 'tag',
    /130 bytes/],
  ['bytes that are no message', 'Explain', Buffer.from([0xff, 0xff, 0xff]),
    'request', /not a message/],
  ['a batch that is too long', 'ExplainBatch',
    encode('ExplainBatchRequest', { requests: Array(65).fill(good) }),
    'requests', /too many: found 65/],
  ['a tag in a batch that is not UTF-8', 'ExplainBatch',
    Buffer.concat([encode('ExplainBatchRequest', { requests: [good] }),
      text(1, text(3, invalid))]), 'requests[1].tag', /not UTF-8/],
  ['too many positions to score', 'Score',
    encode('ScoreRequest', { fens: Array(4097).fill('x') }), 'fens',
    /too many: found 4097/],
];
for (const [name, ...row] of rows) test(name, () => refused(...row));

test('a FEN with more than ten faults', async () => {
  const { error } = await call(client, 'Explain',
    { position: { fen: '9/9/9/9/9/9/9/9 x y z ? !' } });
  assert.equal(error.code, code.INVALID_ARGUMENT);
  assert.equal(detailsOf(error).badRequest.fieldViolations.length, 10);
});

// The transport itself refuses, with a code of its own: see the contract.
test('a request over what the transport takes', async () => {
  const { error } = await callRaw(client, 'Explain', Buffer.alloc(10 << 20));
  assert.equal(error.code, code.RESOURCE_EXHAUSTED);
  assert.match(error.details, /larger than max/);
  assert.ok((await call(client, 'Explain', good)).response);
});

test('faults in a stream are the item\'s own', async () => {
  const requests = [good, {}, { ...good, tag: 'y'.repeat(200) }, good];
  const { answers, status } = await stream(client, requests);
  assert.equal(status.code, code.OK);
  assert.deepEqual(answers.map((answer) => answer.outcome),
    ['explanation', 'error', 'error', 'explanation']);
  assert.equal(answers[1].error.problems[0].field, 'position');
  assert.equal(answers[2].tag, '');
});

test('unreadable messages in a stream are, too', async () => {
  const both = client.makeBidiStreamRequest(
    '/assay.v1.PositionExplainer/ExplainStream', (value) => value,
    (bytes) => type('assay.v1.ExplainStreamResponse').decode(bytes));
  const answers = [];
  both.on('data', (answer) => answers.push(answer));
  const status = new Promise((resolve) => both.on('status', resolve));
  both.write(Buffer.from([0xff]));
  both.write(Buffer.concat([encode('ExplainRequest', good), text(3, invalid)]));
  both.write(encode('ExplainRequest', good));
  both.end();
  assert.equal((await status).code, code.OK);
  assert.equal(answers[0].error.problems[0].field, 'request');
  assert.equal(answers[1].error.problems[0].field, 'tag');
  assert.ok(answers[2].explanation);
});

test('an unknown method', async () => {
  const { error } = await callRaw(client, 'Nonsense', Buffer.alloc(0));
  assert.equal(error.code, code.UNIMPLEMENTED);
});

// What the server says to a connection until it ends it.
function talk(bytes) {
  return new Promise((resolve) => {
    let answer = Buffer.alloc(0);
    const socket = connectTcp(server.port, '127.0.0.1', () => {
      if (bytes.length > 0) socket.write(bytes);
    });
    socket.on('data', (data) => { answer = Buffer.concat([answer, data]); });
    socket.on('error', () => {});
    socket.on('close', () => resolve(answer));
  });
}

test('garbage on the port ends that connection alone', async () => {
  for (const bytes of [Buffer.from('GET / HTTP/1.1\r\n\r\n'),
    Buffer.alloc(4096, 0xa5),
    Buffer.concat([Buffer.from('PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n'),
      Buffer.alloc(4096, 0x5a)])]) {
    await talk(bytes);
    assert.ok((await call(client, 'Explain', good)).response);
  }
});

test('half-open connections are closed, and do no harm', async () => {
  const silent = Array.from({ length: 50 }, () => talk(Buffer.alloc(0)));
  const half = talk(Buffer.from('PRI * HTTP/2.0\r\n'));
  assert.ok((await call(client, 'Explain', good)).response);
  await Promise.all([...silent, half]);
  assert.ok((await call(client, 'Explain', good)).response);
});

test('a client that is gone in the middle of a call', async () => {
  for (let i = 0; i < 20; i += 1) {
    const other = connect(server.address, undefined,
      { 'grpc.use_local_subchannel_pool': 1 });
    const both = other.ExplainStream();
    both.on('error', () => {});
    for (let n = 0; n < 20; n += 1) both.write(good);
    await new Promise((resolve) => setTimeout(resolve, i));
    both.call?.cancelWithStatus?.(code.CANCELLED, 'gone');
    other.close();
  }
  await waitFor(async () =>
    (await server.metrics()).includes('assay_calls_in_flight 0'), 'none left');
  assert.ok((await call(client, 'Explain', good)).response);
});
