// How the server leaves: SIGTERM when idle, at full load, with streams and
// health watches open.

import assert from 'node:assert/strict';
import { test } from 'node:test';
import { Assayd, waitFor } from './lib/assayd.mjs';
import { call, code, connect, connectHealth } from './lib/client.mjs';
import { positions } from './lib/positions.mjs';

const program = process.env.ASSAYD;
const request = (fen, options = { staticOnly: true }) =>
  ({ position: { fen }, options });

test('an idle server leaves at once, with metrics and clients', async () => {
  const server = await Assayd.start(program, ['--metrics-port=0']);
  const client = connect(server.address);
  await call(client, 'ListTerms', {});
  await server.metrics();
  assert.equal(await server.stop(), 0);
  assert.equal(server.entries({ msg: 'ended' })[0].calls_cut_off, 'false');
  client.close();
});

test('health watches are told first, and do not hold it up', async () => {
  const server = await Assayd.start(program, ['--drain-notice-ms=300']);
  const client = connect(server.address);
  const health = connectHealth(server.address);
  const seen = [];
  const watch = health.Watch({ service: '' });
  watch.on('error', () => {});
  watch.on('data', (answer) => seen.push(answer.status));
  await waitFor(() => seen.includes('SERVING'), 'first status');
  const stopped = server.stop();
  await waitFor(() => seen.includes('NOT_SERVING'), 'NOT_SERVING');
  // Calls are still taken while clients look for another server.
  const late = await call(client, 'Explain', request(positions(1)[0]));
  assert.ok(late.response);
  assert.equal(await stopped, 0);
  watch.cancel();
  client.close();
  health.close();
});

test('SIGTERM at full load loses nothing that was accepted', async () => {
  const server = await Assayd.start(program, ['--drain-notice-ms=0']);
  const fens = positions(64, 3);
  const outcomes = {};
  let stopping = false;
  const worker = async (n) => {
    const client = connect(server.address, undefined,
      { 'grpc.use_local_subchannel_pool': 1, 'grpc.enable_retries': 0 });
    while (true) {
      const { error, response } = n % 2 === 0
        ? await call(client, 'Explain', request(fens[n], { proofNodes: 2000 }))
        : await call(client, 'ExplainBatch',
          { requests: fens.map((fen) => request(fen)) });
      const name = error ? code[error.code] ?? error.code : 'OK';
      outcomes[name] = (outcomes[name] ?? 0) + 1;
      if (response?.responses) assert.equal(response.responses.length, 64);
      if (error) break;
    }
    client.close();
    assert.ok(stopping, 'no call fails before');
  };
  const workers = Array.from({ length: 12 }, (_, n) => worker(n));
  await waitFor(() => outcomes.OK > 40, 'load', 60000);
  stopping = true;
  assert.equal(await server.stop(), 0);
  await Promise.all(workers);
  assert.equal(server.entries({ msg: 'ended' })[0].calls_cut_off, 'false');
  // Accepted calls were answered: what failed was refused, to be tried again.
  assert.deepEqual(Object.keys(outcomes).sort(), ['OK', 'UNAVAILABLE']);
  assert.equal(server.entries({ code: 'CANCELLED' }).length, 0);
  assert.equal(outcomes.UNAVAILABLE, workers.length);
});

test('an open stream gets its answers and a clean end', async () => {
  const server = await Assayd.start(program, ['--drain-notice-ms=0']);
  const client = connect(server.address);
  const both = client.ExplainStream();
  const answers = [];
  both.on('data', (answer) => answers.push(answer));
  both.on('error', () => {});
  const status = new Promise((resolve) => both.on('status', resolve));
  for (const [i, fen] of positions(40, 4).entries()) {
    both.write({ ...request(fen), tag: String(i) });
  }
  await waitFor(() => answers.length === 40, 'answers');
  assert.equal(await server.stop(), 0);
  const end = await status;
  assert.equal(end.code, code.UNAVAILABLE);
  assert.match(end.details, /shutting down: the first 40 requests/);
  assert.deepEqual(answers.map((answer) => answer.index),
    answers.map((answer, i) => i));
  client.close();
});

test('a call that outlasts the drain is cut off',
  async () => {
    const server = await Assayd.start(program, ['--drain-notice-ms=0',
      '--drain-ms=300', '--max-proof-nodes=2000000000']);
    const client = connect(server.address);
    const running = call(client, 'Explain',
      request(positions(30, 9)[29], { proofNodes: 2000000000 }));
    await new Promise((resolve) => setTimeout(resolve, 200));
    assert.equal(await server.stop(), 0);
    assert.ok((await running).error);
    assert.equal(server.entries({ msg: 'ended' })[0].calls_cut_off, 'true');
    client.close();
  });
