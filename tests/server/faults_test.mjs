// Clients that mean harm, or are broken: headers without end, requests that
// drip. The server bounds what they cost, serves the others, and lives on.
//
//   node --test tests/server/faults_test.mjs    with ASSAYD=.../assayd
//
// gRPC 1.51 keeps a header block until it ends or its connection does, at 1.7 to
// 10 bytes a byte: four clients with 200 MiB of short headers each were seen to
// cost 6 GB, whatever --memory-mb said. --max-unread-mb ends that.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { connect as connectHttp2 } from 'node:http2';
import { connect as connectTcp } from 'node:net';
import { after, before, test } from 'node:test';
import { Assayd, waitFor } from './lib/assayd.mjs';
import { call, connect, good } from './lib/client.mjs';

const unreadMegabytes = 16;

let server;
let client;
before(async () => {
  server = await Assayd.start(process.env.ASSAYD,
    ['--max-connection-age-s=3', '--max-connection-age-grace-s=1',
      '--metrics-port=0', `--max-unread-mb=${unreadMegabytes}`]);
  client = connect(server.address);
  await served();
});
after(async () => {
  client.close();
  assert.equal(await server.stop(), 0);
});

// Who is sent away by the connection's age comes again.
async function served() {
  const { response, error } = await call(client, 'Explain', good);
  assert.ok(response, error?.message);
}

// Resident memory in MiB; or the most that there ever was.
function resident(field = 'VmRSS') {
  const status = readFileSync(`/proc/${server.process.pid}/status`, 'utf8');
  return Number(status.match(new RegExp(`${field}:\\s+(\\d+)`))[1]) / 1024;
}

function frame(type, flags, stream, payload) {
  const head = Buffer.alloc(9);
  head.writeUIntBE(payload.length, 0, 3);
  head[3] = type;
  head[4] = flags;
  head.writeUInt32BE(stream, 5);
  return Buffer.concat([head, payload]);
}

// A header field, not to be kept in the table: name and value as they are.
const field = (name, value) => Buffer.concat([Buffer.from([0x00, name.length]),
  Buffer.from(name), Buffer.from([value.length]), Buffer.from(value)]);

// Sends a header block that never ends, of values of a length; resolves with the
// megabytes that were sent until the server closed the connection, or `limit`.
function endlessHeaders(limit, length) {
  const opening = Buffer.concat([Buffer.from('PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n'),
    frame(4, 0, 0, Buffer.alloc(0)),
    frame(1, 0, 1, field(':method', 'POST'))]);
  const fields = [];
  for (let i = 0; i < 120; i += 1) fields.push(field('x-a', 'v'.repeat(length)));
  const more = frame(9, 0, 1, Buffer.concat(fields));
  const block = Buffer.concat(Array(64).fill(more));
  return new Promise((resolve) => {
    let sent = 0;
    const socket = connectTcp(server.port, '127.0.0.1');
    const send = () => {
      while (sent < limit << 20) {
        sent += block.length;
        if (!socket.write(block)) return;
      }
      socket.destroy();
    };
    socket.on('drain', send);
    socket.on('error', () => {});
    socket.on('close', () => resolve(sent / (1 << 20)));
    socket.write(opening);
    send();
  });
}

test('a gigabyte of headers is not taken, and holds up nobody', async () => {
  const start = resident();
  for (const [clients, length] of [[1, 120], [4, 120], [4, 1]]) {
    let open = clients;
    const sent = Promise.all(Array.from({ length: clients }, () =>
      endlessHeaders(1024, length).finally(() => { open -= 1; })));
    while (open > 0) await served();
    for (const megabytes of await sent) {
      assert.ok(megabytes < 512, `took ${megabytes} MiB`);
    }
    await served();
  }
  // Ten bytes a byte, and what came between two looks.
  const most = start + 10 * 3 * unreadMegabytes;
  assert.ok(resident('VmHWM') < most, `${start} MiB, then ${resident('VmHWM')}`);
  assert.ok(server.entries({ msg: 'connection closed' }).length >= 9);
});

// Far more than may be unread, over one connection of each kind.
test('who sends much that is read is not cut off', async () => {
  const fens = Array(4096).fill('4k3/8/8/8/8/8/4P3/4K3 w - - 0 1');
  for (const listen of ['127.0.0.1:0', '[::1]:0']) {
    const other = await Assayd.start(process.env.ASSAYD,
      [`--listen=${listen}`, '--max-unread-mb=16']);
    const asked = connect(other.address);
    for (let sent = 0; sent < 24 << 20; sent += 4096 * 33) {
      const { response, error } = await call(asked, 'Score', { fens });
      assert.ok(response, error?.message);
    }
    asked.close();
    assert.equal(await other.stop(), 0);
    assert.deepEqual(other.entries({ msg: 'connection closed' }), []);
  }
});

test('a hundred clients that drip are sent away in time', async () => {
  const start = resident();
  let open = 0;
  const dripping = Array.from({ length: 100 }, () => {
    const session = connectHttp2(`http://${server.address}`);
    open += 1;
    session.on('error', () => {});
    const request = session.request({ ':method': 'POST',
      ':path': '/assay.v1.PositionExplainer/Explain', te: 'trailers',
      'content-type': 'application/grpc' });
    request.on('error', () => {});
    request.on('close', () => { open -= 1; });
    request.resume();  // what is never read never closes
    request.on('response', (headers) =>
      assert.notEqual(headers['grpc-status'], '0'));
    // A message of 1,000 bytes, one byte at a time.
    request.write(Buffer.from([0, 0, 0, 3, 0xe8]));
    const drip = setInterval(() => {
      if (!request.destroyed) request.write(Buffer.from([0x0a]));
    }, 100).unref();
    session.unref();
    return { session, drip };
  });
  for (let i = 0; i < 20; i += 1) await served();
  await waitFor(() => open === 0, 'their calls are ended', 15000);
  for (const { session, drip } of dripping) {
    clearInterval(drip);
    session.destroy();
  }
  await served();
  assert.ok(resident() < start + 64, `${start} MiB, then ${resident()}`);
});
