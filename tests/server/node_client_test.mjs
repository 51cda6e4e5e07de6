// What a client in Node meets: answers, typed errors, health, streams with
// faults, deadlines, cancelled calls.
//
//   node --test tests/server/node_client_test.mjs    with ASSAYD=.../assayd

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { Chess } from 'chess.js';
import { Assayd, waitFor } from './lib/assayd.mjs';
import { call, callRaw, code, connect, connectHealth, detailsOf, stream, type }
  from './lib/client.mjs';
import { positions } from './lib/positions.mjs';

const initial = 'rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1';
const middlegame =
  'r1bq1rk1/pp2bppp/2n1pn2/2pp4/3P1B2/2PBPN2/P1P2PPP/R2Q1RK1 b - - 1 9';

let server;
let client;
before(async () => {
  server = await Assayd.start(process.env.ASSAYD, ['--metrics-port=0',
    '--max-proof-nodes=50000000', '--log-level=debug']);
  client = connect(server.address);
});
after(async () => {
  client.close();
  assert.equal(await server.stop(), 0);
  assert.deepEqual(server.unread, []); // every line of the log is JSON
});

test('a position is explained', async () => {
  const { response, error } = await call(client, 'Explain',
    { position: { fen: middlegame }, tag: 'first' });
  assert.equal(error, undefined);
  assert.equal(response.tag, 'first');
  const { explanation } = response;
  assert.equal(explanation.fen, middlegame);
  assert.equal(explanation.sideToMove,
    'SIDE_BLACK');
  const sum = explanation.ledger
    .reduce((total, entry) => total + entry.valueCp, 0);
  assert.equal(sum, explanation.scoreCp);
  assert.ok(explanation.summary.length > 0);
  assert.ok(explanation.claims.length > 0);
  assert.ok(explanation.proof.nodes > 0);
  const game = new Chess(explanation.fen);
  for (const san of explanation.proof.line) assert.ok(game.move(san));
});

test('the same request has the same bytes', async () => {
  const bytes = type('assay.v1.ExplainRequest').encode(
    { position: { fen: middlegame }, options: { proofNodes: 3000 } }).finish();
  const first = await callRaw(client, 'Explain', Buffer.from(bytes));
  const second = await callRaw(client, 'Explain', Buffer.from(bytes));
  assert.ok(first.response.length > 1000);
  assert.deepEqual(first.response, second.response);
});

test('static_only has no proof, omit_claims no claims', async () => {
  const options = { staticOnly: true, omitClaims: true, maxReasons: 2 };
  const { response } = await call(client, 'Explain',
    { position: { fen: middlegame }, options });
  const { explanation } = response;
  assert.equal(explanation.proof, null);
  assert.ok(explanation.reasons.length <= 2);
  const lists = JSON.stringify(explanation)
    .match(/"(summaryClaims|claims)":\[[^\]]/g);
  assert.equal(lists, null);
  const full = await call(client, 'Explain',
    { position: { fen: middlegame }, options: { staticOnly: true } });
  assert.ok(full.response.explanation.claims.length > 0);
  assert.ok(full.response.explanation.verdict.claims.length > 0);
});

test('a line of moves is played', async () => {
  const moves = ['e4', 'e7e5', 'Nf3', 'Nc6', 'Bb5'];
  const { response } = await call(client, 'Explain',
    { position: { line: { moves } }, options: { staticOnly: true } });
  const game = new Chess();
  for (const move of moves) game.move(move);
  assert.equal(response.explanation.fen.split(' ')[0],
    game.fen().split(' ')[0]);
});

test('faults come typed, all at once', async () => {
  const { error } = await call(client, 'Explain', {
    position: { fen: '4k3/8/8/8/8/8/8/4K2R x KX -' },
    options: { language: 'tlh' }, tag: 'x'.repeat(129) });
  assert.equal(error.code, code.INVALID_ARGUMENT);
  const violations = detailsOf(error).badRequest.fieldViolations;
  const fields = violations.map((violation) => violation.field);
  assert.deepEqual(fields, ['position.fen', 'position.fen',
    'options.language', 'tag']);
  assert.match(violations[0].description, /^side: .*found "x".*expected/);
  assert.match(violations[1].description, /^castling: .*expected/);
  assert.match(violations[3].description, /129 bytes.*at most 128/);
  assert.match(error.metadata.get('x-request-id')[0], /^[0-9a-f]{16}$/);
});

test('an illegal move is named by its index', async () => {
  const { error } = await call(client, 'Explain',
    { position: { line: { moves: ['e4', 'e5', 'Ke3'] } } });
  assert.equal(error.code, code.INVALID_ARGUMENT);
  const [violation] = detailsOf(error).badRequest.fieldViolations;
  assert.equal(violation.field, 'position.line.moves[2]');
  assert.match(violation.description, /illegal move/);
});

test('a ceiling is told', async () => {
  const { error } = await call(client, 'Explain',
    { position: { fen: initial }, options: { proofNodes: 50000001 } });
  const [violation] = detailsOf(error).badRequest.fieldViolations;
  assert.equal(violation.field, 'options.proof_nodes');
  assert.match(violation.description, /at most 50000000/);
});

test('batches keep order and faults in place', async () => {
  const fens = positions(64, 5);
  const requests = fens.map((fen, i) => ({ tag: `t${i}`,
    position: { fen: i % 7 === 3 ? `${fen} extra` : fen },
    options: { staticOnly: true } }));
  const { response } = await call(client, 'ExplainBatch', { requests });
  assert.equal(response.responses.length, 64);
  for (const [i, answer] of response.responses.entries()) {
    assert.equal(answer.index, i);
    assert.equal(answer.tag, `t${i}`);
    assert.equal(answer.outcome, i % 7 === 3 ? 'error' : 'explanation');
    if (answer.explanation) {
      assert.equal(answer.explanation.fen.split(' ')[0],
        fens[i].split(' ')[0]);
    }
  }
  const empty = await call(client, 'ExplainBatch', { requests: [] });
  assert.deepEqual(empty.response.responses, []);
});

test('scores are those of the explanations', async () => {
  const fens = positions(700, 6);
  fens[500] = 'nonsense';
  const { response } = await call(client, 'Score', { fens });
  assert.equal(response.outcomes.length, 700);
  assert.equal(response.outcomes[500].error.code, code.INVALID_ARGUMENT);
  assert.equal(response.outcomes[500].error.problems[0].field, 'fens[500]');
  assert.match(response.provenance.weightsFingerprint, /^[0-9a-f]{16}$/);
  const sample = [0, 127, 128, 499, 501, 699];
  const requests = sample.map((i) => ({ position: { fen: fens[i] },
    options: { staticOnly: true } }));
  const explained = await call(client, 'ExplainBatch', { requests });
  for (const [n, i] of sample.entries()) {
    assert.equal(response.outcomes[i].scoreCp,
      explained.response.responses[n].explanation.scoreCp);
  }
});

test('the catalogue has every term of a ledger', async () => {
  const { response } = await call(client, 'ListTerms', {});
  const ids = new Set(response.terms.map((term) => term.id));
  assert.ok(ids.size > 20);
  assert.equal(ids.size, response.terms.length);
  const explained = await call(client, 'Explain',
    { position: { fen: middlegame }, options: { staticOnly: true } });
  for (const entry of explained.response.explanation.ledger) {
    assert.ok(ids.has(entry.term), entry.term);
  }
  assert.equal(response.weightsFingerprint,
    explained.response.explanation.provenance.weightsFingerprint);
});

test('a move is explained', async () => {
  const { response } = await call(client, 'ExplainMove',
    { position: { fen: middlegame }, move: 'g7g5',
      options: { proofNodes: 4000 } });
  const told = response.explanation;
  assert.equal(told.san, 'g5');
  const sum = [...told.gains, ...told.concessions]
    .reduce((total, change) => total + change.changeCp, 0);
  assert.equal(sum, told.scoreAfterCp - told.scoreBeforeCp);
  assert.ok(told.concessions.length > 0 && told.claims.length > 0);
  assert.equal(told.proof.line[0], 'g5');
  assert.equal(new Chess(told.fenAfter).turn(), 'w');
  const bare = await call(client, 'ExplainMove',
    { position: { fen: middlegame }, move: 'g5',
      options: { staticOnly: true, omitClaims: true } });
  assert.equal(bare.response.explanation.proof, null);
  assert.equal(bare.response.explanation.claims.length, 0);
  assert.ok(!JSON.stringify(bare.response).match(/"\w*[cC]laims":\[\d/));
});

test('moves are compared', async () => {
  const { response } = await call(client, 'Compare',
    { position: { fen: middlegame }, moves: ['b6', 'g5'],
      others: [{ fen: initial }], options: { staticOnly: true } });
  assert.equal(response.explanations.length, 3);
  assert.equal(response.claimsOfOthers.length, 1);
  assert.ok(response.decides.length > 0);
  const { terms } = (await call(client, 'ListTerms', {})).response;
  for (const row of response.byTerm) {
    assert.equal(row.valueCp.length, 3);
    assert.equal(row.title, terms.find(({ id }) => id === row.term).title);
  }
});

test('edits of the board are answered', async () => {
  const { response } = await call(client, 'WhatIf',
    { position: { fen: initial }, edits: ['off-d1'] });
  const sum = response.changes.reduce((t, change) => t + change.changeCp, 0);
  assert.equal(sum, response.scoreAfterCp - response.scoreBeforeCp);
  assert.ok(response.scoreAfterCp < -500);
  assert.equal(response.attributions.length, 30);
});

test('moves, comparisons and edits are told in German, with wordings',
  async () => {
    const options = { language: 'de', audience: 'AUDIENCE_EXPERT',
      withWording: true, staticOnly: true };
    const move = (await call(client, 'ExplainMove',
      { position: { fen: initial }, move: 'a4', options })).response.explanation;
    assert.match(move.summary, /Aufgegeben: der a-Bauer/);
    assert.equal(move.summaryWording.id, 'list.sentences');
    assert.equal(move.gains[0].wording.id, 'sentence');
    const compared = (await call(client, 'Compare',
      { position: { fen: initial }, moves: ['e4', 'a4'], options })).response;
    assert.match(compared.decides, /besser als|liegt wenig/);
    assert.equal(compared.decidesWording.id, 'sentence');
    const { title } = compared.byTerm.find(({ term }) => term === 'tempo');
    assert.equal(title, 'Zugrecht');
    const edited = (await call(client, 'WhatIf',
      { position: { fen: initial }, edits: ['off-d1'], options })).response;
    assert.match(edited.summary, /^Ohne die Dame auf d1 /);
    assert.equal(edited.summaryWording.arguments[0].wording.id,
      'what_if.better');
  });

// [call, request, [field, what is said of it], ...]
const wrong = [
  ['ExplainMove', { position: { fen: initial } }, ['move', /missing/]],
  ['ExplainMove', {}, ['position', /missing/], ['move', /missing/]],
  ['ExplainMove', { position: { fen: initial }, move: 'e5' },
    ['move', /illegal move.*found "e5"/]],
  ['ExplainMove', { position: { fen: '8/8 w' }, move: 'e4',
    options: { language: 'de', audience: 'AUDIENCE_EXPERT' } },
  ['position.fen', /./]],
  ['ExplainMove', { position: { fen: initial }, move: 'e4',
    options: { language: 'tlh' } }, ['options.language', /no texts/]],
  ['Compare', { position: { fen: initial }, moves: ['e4'] },
    ['moves and others', /too few.*1 to compare.*2 to 8/]],
  ['Compare', { position: { fen: initial },
    moves: ['a3', 'a4', 'b3', 'b4', 'c3', 'c4', 'd3', 'd4', 'e3'] },
  ['moves and others', /too many.*9 to compare/]],
  ['Compare', { position: { fen: initial }, moves: ['e4', 'e5', 'Ke2'] },
    ['moves[1]', /illegal/], ['moves[2]', /illegal/]],
  ['Compare', { position: { fen: initial },
    others: [{ fen: initial }, { line: { moves: ['e4', 'e4'] } }] },
  ['others[1].line.moves[1]', /illegal/]],
  ['WhatIf', { position: { fen: initial }, edits: ['pass', 'Nf3'] },
    ['edits[1]', /not an edit.*found "Nf3".*expected/]],
  ['WhatIf', { position: { fen: initial }, edits: ['off-e4'] },
    ['edits[0]', /nothing stands there.*e4 is empty/]],
  ['WhatIf', { position: { fen: initial }, edits: ['off-e1'] },
    ['edits[0]', /leaves no legal position/]],
  ['WhatIf', { position: { fen: initial }, edits: Array(65).fill('pass') },
    ['edits', /too many.*65.*at most 64/]],
];
for (const [method, request, ...faults] of wrong) {
  test(`${method} names ${faults.map(([field]) => field)}`, async () => {
    const { error } = await call(client, method, request);
    assert.equal(error.code, code.INVALID_ARGUMENT, error.message);
    const violations = detailsOf(error).badRequest.fieldViolations;
    for (const [field, said] of faults) {
      const found = violations.find((each) => each.field === field);
      assert.ok(found, `${field} in ${JSON.stringify(violations)}`);
      assert.match(found.description, said);
    }
  });
}

test('2,000 positions stream in order, faults in their place', async () => {
  const fens = positions(2000, 7);
  const bad = (i) => i % 97 === 50;
  const requests = fens.map((fen, i) => ({ tag: String(i),
    position: { fen: bad(i) ? fen.replace(' ', ' ?') : fen },
    options: { staticOnly: true } }));
  const { answers, status } = await stream(client, requests);
  assert.equal(status.code, code.OK);
  assert.equal(answers.length, fens.length);
  for (const [i, answer] of answers.entries()) {
    assert.equal(answer.index, i);
    assert.equal(answer.tag, String(i));
    if (bad(i)) {
      assert.equal(answer.error.code, code.INVALID_ARGUMENT);
      assert.equal(answer.error.problems[0].field, 'side');
    } else {
      assert.equal(answer.explanation.fen.split(' ')[0],
        fens[i].split(' ')[0]);
    }
  }
});

test('health can be checked and watched', async () => {
  const health = connectHealth(server.address);
  for (const service of ['', 'assay.v1.PositionExplainer']) {
    const { response } = await call(health, 'Check', { service });
    assert.equal(response.status, 'SERVING');
  }
  const { error } = await call(health, 'Check', { service: 'no.such' });
  assert.equal(error.code, code.NOT_FOUND);
  const watch = health.Watch({ service: 'assay.v1.PositionExplainer' });
  watch.on('error', () => {});
  const first = await new Promise((resolve) => watch.on('data', resolve));
  assert.equal(first.status, 'SERVING');
  watch.cancel();
  health.close();
});

// Long work, of which a client soon has enough.
const long = { position: { fen: middlegame },
  options: { proofNodes: 50000000 } };

test('a deadline ends the search', async () => {
  const { error } = await call(client, 'Explain', long, { ms: 100 });
  assert.equal(error.code, code.DEADLINE_EXCEEDED);
  const entry = await waitFor(() => server.entries({
    method: 'Explain', code: 'DEADLINE_EXCEEDED' })[0], 'log of the deadline');
  assert.equal(entry.level, 'warn');
});

test('a deadline ends a comparison and a move', async () => {
  const options = { proofNodes: 50000000 };
  const compared = await call(client, 'Compare', { options,
    position: { fen: middlegame }, moves: ['b6', 'a6', 'h6'] }, { ms: 100 });
  assert.equal(compared.error.code, code.DEADLINE_EXCEEDED);
  const moved = await call(client, 'ExplainMove', { options,
    position: { fen: middlegame }, move: 'b6' }, { ms: 100 });
  assert.equal(moved.error.code, code.DEADLINE_EXCEEDED);
  await waitFor(() => server.metrics()
    .then((text) => text.includes('assay_calls_in_flight 0')), 'none left');
});

test('a cancelled call ends the search', async () => {
  const error = await new Promise((resolve) => {
    const running = client.Explain(long, resolve);
    setTimeout(() => running.cancel(), 100);
  });
  assert.equal(error.code, code.CANCELLED);
  await waitFor(() => server.entries({ method: 'Explain', code: 'CANCELLED' })
    .length === 1, 'log of the cancelled call');
  const page = await waitFor(async () => {
    const text = await server.metrics();
    return text.includes('assay_calls_in_flight 0') && text;
  }, 'no call in flight');
  assert.match(page,
    /assay_calls_total\{code="CANCELLED",method="Explain"\} 1/);
});

test('a cancelled stream leaves nothing behind', async () => {
  const both = client.ExplainStream();
  const ended = new Promise((resolve) => both.on('error', resolve));
  for (let i = 0; i < 50; i += 1) both.write(long);
  both.on('data', () => {});
  await waitFor(() => server.metrics()
    .then((text) => text.includes('assay_calls_in_flight 1')), 'in flight');
  both.cancel();
  assert.equal((await ended).code, code.CANCELLED);
  await waitFor(() => server.metrics()
    .then((text) => text.includes('assay_calls_in_flight 0')), 'none left');
});

test('a request id is kept, and the log is in JSON', async () => {
  const { grpc } = await import('./lib/client.mjs');
  const metadata = new grpc.Metadata();
  metadata.set('x-request-id', 'my-own.id_7');
  await call(client, 'Explain', { position: { fen: initial } }, { metadata });
  const [entry] = await waitFor(() => {
    const found = server.entries({ id: 'my-own.id_7' });
    return found.length > 0 && found;
  }, 'log of the request');
  assert.equal(entry.method, 'Explain');
  assert.equal(entry.code, 'OK');
  assert.ok(entry.duration_us > 0);
  assert.match(entry.ts, /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/);
});

test('metrics add up', async () => {
  const page = await server.metrics();
  const value = (line) => Number(page.match(
    new RegExp(`^${line.replace(/[{}]/g, '\\$&')} (.*)$`, 'm'))[1]);
  const count = value('assay_call_seconds_count{method="Explain"}');
  const codes = [...page.matchAll(
    /^assay_calls_total\{code="\w+",method="Explain"\} (\d+)$/gm)];
  assert.equal(codes.reduce((sum, match) => sum + Number(match[1]), 0), count);
  assert.ok(value('assay_nodes_searched_total') > 3000);
  assert.ok(value('assay_items_total{outcome="error"}') >= 20);
});
