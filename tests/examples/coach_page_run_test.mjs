// One command starts the page and its service, and Ctrl-C ends both.
//
//   ASSAYD=build/bin/assayd node tests/examples/coach_page_run_test.mjs

import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { connect } from 'node:net';
import { join } from 'node:path';
import { test } from 'node:test';
import { example, watched } from './lib/desk.mjs';

const listens = (port) => new Promise((resolve) => {
  const socket = connect(port, '127.0.0.1');
  socket.on('connect', () => { socket.destroy(); resolve(true); });
  socket.on('error', () => resolve(false));
});

test('examples/coach_page/run', async () => {
  const desk = await watched(spawn(join(example, 'run'), ['--port', '0'],
    { stdio: ['ignore', 'pipe', 'inherit'] }));
  const page = await fetch(desk.url);
  assert.equal(page.status, 200);
  const answer = await fetch(`${desk.url}api/explain`, { method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: '{"fen": "4k3/8/8/8/8/8/4P3/4K3 w - - 0 1"}' });
  const { answer: { explanation } } = await answer.json();
  assert.ok(explanation.summary.length > 0);
  const { address } = await (await fetch(`${desk.url}api/service`)).json();
  const service = Number(address.split(':').at(-1));
  assert.equal(await listens(service), true);
  assert.equal(await desk.stop(), 0);
  assert.equal(await listens(service), false);
  assert.equal(await listens(Number(new URL(desk.url).port)), false);
});
