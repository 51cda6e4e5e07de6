// The coach's page and a service that is elsewhere, comes back, or is slow; and
// what the page's own server lets through.
//
//   ASSAYD=build/bin/assayd node tests/examples/coach_page_service_test.mjs

import assert from 'node:assert/strict';
import { request as httpRequest } from 'node:http';
import { connect as connectTcp, createServer } from 'node:net';
import { after, before, test } from 'node:test';
import { setTimeout as pause } from 'node:timers/promises';
import { askFen, launch, openPanel, servePage, settled, settledOn, showFen,
  visit } from './lib/desk.mjs';
import { Assayd } from '../server/lib/assayd.mjs';

const pawnUp = '4k3/8/8/8/8/8/4P3/4K3 w - - 0 1';
const rookUp = '4k3/8/8/8/8/8/8/R3K3 w - - 0 1';

let browser;
before(async () => { browser = await launch(); });
after(() => browser.close());

// Passes bytes on to `port`, each part as late as `delayMs` says.
async function slowWay(port) {
  const way = { delayMs: 0 };
  const server = createServer((from) => {
    const to = connectTcp(port, '127.0.0.1');
    for (const [source, sink] of [[from, to], [to, from]]) {
      source.on('data', (part) =>
        setTimeout(() => sink.writable && sink.write(part), way.delayMs));
      source.on('close', () => sink.destroy());
      source.on('error', () => sink.destroy());
    }
  });
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
  way.port = server.address().port;
  way.close = () => server.close();
  return way;
}

test('a service on any port; told as absent, found again without a click',
  async () => {
    let server = await Assayd.start(process.env.ASSAYD);
    const { port, address } = server;
    const desk = await servePage(['--service', address]);
    assert.ok(desk.lines.concat(await pause(100)).some((line) =>
      line?.includes(address)));
    const page = await visit(browser, desk.url);
    assert.equal(await server.stop(), 0);
    await askFen(page, pawnUp);
    await page.waitForSelector('#panel-explain .refusal');
    assert.match(await page.textContent('#panel-explain .refusal'),
      /does not answer\. It may be starting again/);
    server = await Assayd.start(process.env.ASSAYD,
      [`--listen=127.0.0.1:${port}`]);
    await settledOn(page, pawnUp);
    assert.equal(await page.locator('.refusal').count(), 0);
    // And once more with an answer on the page: another port does as well.
    await showFen(page, rookUp);
    await server.stop();
    await desk.stop();
    assert.deepEqual(page.faults, []);
  });

test('a slow service: that an answer is coming is shown, then the answer',
  async () => {
    const server = await Assayd.start(process.env.ASSAYD);
    const way = await slowWay(server.port);
    const desk = await servePage(['--service', `127.0.0.1:${way.port}`,
      '--deadline-ms', '6000']);
    const page = await visit(browser, desk.url);
    way.delayMs = 600;
    await askFen(page, pawnUp);
    await page.waitForSelector('.pending:has-text("Counting")');
    // The counted answer comes first and is told as what it is.
    await page.waitForSelector('#panel-explain[data-phase="looking"]');
    await page.waitForSelector('.pending:has-text("Looking deeper")');
    const counted = await page.textContent('#panel-explain .figures');
    assert.match(counted, /counted/);
    assert.doesNotMatch(counted, /looked deeper/);
    await settledOn(page, pawnUp);
    assert.match(await page.textContent('#panel-explain .figures'),
      /looked deeper/);
    assert.equal(await page.locator('.pending').count(), 0);
    // Slower than anyone waits for: a sentence, a button, and it works again.
    way.delayMs = 4000;
    await askFen(page, rookUp);
    await page.waitForSelector('.pending:has-text("longer than usual")');
    await page.waitForSelector('.refusal:has-text("took too long")');
    way.delayMs = 0;
    await pause(4000); // what is under way comes late
    await page.click('text=Try again');
    await settledOn(page, rookUp);
    await desk.stop();
    way.close();
    await server.stop();
    assert.deepEqual(page.faults, []);
  });

test('a late answer never stands where a newer one belongs', async () => {
  const server = await Assayd.start(process.env.ASSAYD);
  const desk = await servePage(['--service', server.address]);
  const page = await visit(browser, desk.url);
  // The browser gets the answers about the first position late, even those
  // that the page has dropped.
  let late = 0;
  await page.route('**/api/*', async (route) => {
    const { fen } = route.request().postDataJSON();
    if (fen !== pawnUp) return route.continue();
    const response = await route.fetch();
    await pause(1200);
    late += 1;
    return route.fulfill({ response }).catch(() => {});
  });
  await askFen(page, pawnUp);
  await pause(300);
  await showFen(page, rookUp);
  const before = await page.textContent('#panel-explain');
  await pause(1500);
  assert.ok(late > 0);
  assert.equal(await page.textContent('#panel-explain'), before);
  assert.match(before, /rook/);
  // The same among candidates: the last one chosen is the one told of.
  await page.unroute('**/api/*');
  await page.route('**/api/move', async (route) => {
    if (route.request().postDataJSON().move === 'Ra8+') await pause(1000);
    return route.continue().catch(() => {});
  });
  await openPanel(page, 'moves');
  for (const san of ['Ra8+', 'Ke2']) {
    await page.fill('#move-input', san);
    await page.press('#move-input', 'Enter');
  }
  await settled(page, 'moves');
  await pause(1300);
  assert.equal(await page.textContent('.move-card h3'), '1. Ke2');
  await desk.stop();
  await server.stop();
});

test("the page's own server lets through what the page sends, no more",
  async () => {
    const server = await Assayd.start(process.env.ASSAYD);
    const desk = await servePage(['--service', server.address]);
    const { port } = new URL(desk.url);
    const ask = ({ path = '/api/explain', method = 'POST', body = '',
      headers = {} }) => new Promise((resolve, reject) => {
      const sent = httpRequest({ host: '127.0.0.1', port, path, method,
        headers: { 'Content-Type': 'application/json', ...headers } },
      async (response) => {
        let text = '';
        for await (const part of response) text += part;
        resolve({ status: response.statusCode, headers: response.headers, text });
      });
      sent.on('error', reject);
      sent.end(body);
    });
    const good = JSON.stringify({ fen: pawnUp, counted: true });
    assert.equal((await ask({ body: good })).status, 200);
    const statuses = {
      'no JSON': [{ body: '{' }, 400],
      'no object': [{ body: 'null' }, 400],
      'no FEN': [{ body: '{}' }, 400],
      'a FEN that is no text': [{ body: '{"fen": [1]}' }, 400],
      'an audience of its own': [
        { body: '{"fen": "x", "audience": "constructor"}' }, 400],
      'a position that is none': [{ body: '{"fen": "x"}' }, 422],
      'a question of its own': [{ path: '/api/constructor', body: good }, 404],
      'too much': [{ body: JSON.stringify({ fen: 'x'.repeat(70000) }) }, 400],
      'a form of another page': [
        { body: good, headers: { 'Content-Type': 'text/plain' } }, 415],
      "another page's name": [
        { body: good, headers: { Host: `evil.example:${port}` } }, 403],
      'a file that is not the page': [
        { path: '/../server/main.mjs', method: 'GET' }, 404],
      'the same, hidden': [
        { path: '/%2e%2e/package.json', method: 'GET' }, 404],
    };
    for (const [what, [request, status]] of Object.entries(statuses)) {
      assert.equal((await ask(request)).status, status, what);
    }
    const { headers } = await ask({ path: '/', method: 'GET' });
    const policy = headers['content-security-policy'];
    assert.match(policy, /default-src 'none'/);
    assert.doesNotMatch(policy, /unsafe|https?:|\*/);
    assert.equal(headers['x-content-type-options'], 'nosniff');
    // Only this machine is listened to.
    const { networkInterfaces } = await import('node:os');
    const outside = Object.values(networkInterfaces()).flat()
      .find(({ internal, family }) => !internal && family === 'IPv4');
    if (outside) {
      await assert.rejects(fetch(`http://${outside.address}:${port}/`));
    }
    await desk.stop();
    await server.stop();
  });
