// Lessons over gRPC: items and findings in order, progress, faults, limits.
//
//   node --test tests/server/lesson_test.mjs    with ASSAYD=.../assayd

import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { after, before, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { Assayd } from './lib/assayd.mjs';
import { code, connect, detailsOf } from './lib/client.mjs';

const lesson = readFileSync(join(dirname(fileURLToPath(import.meta.url)),
  '..', '..', 'examples', 'lesson', 'autumn_course.pgn'), 'utf8');

let server;
let client;
before(async () => {
  server = await Assayd.start(process.env.ASSAYD, []);
  client = connect(server.address, undefined,
    { 'grpc.max_send_message_length': 1 << 24 });
});
after(async () => {
  client.close();
  assert.equal(await server.stop(), 0);
});

// All that a call streams, and its status.
function parts(method, request, { cancelAfter, from = client } = {}) {
  return new Promise((resolve) => {
    const answers = [];
    const stream = from[method](request);
    stream.on('data', (answer) => {
      answers.push(answer);
      if (answers.length === cancelAfter) stream.cancel();
    });
    stream.on('error', () => {});
    stream.on('status', (status) => resolve({ answers, status }));
  });
}

test('a lesson is explained position by position', async () => {
  const { answers, status } = await parts('ExplainLesson',
    { pgn: lesson, options: { staticOnly: true } });
  assert.equal(status.code, code.OK);
  const items = answers.filter((answer) => answer.part === 'item')
    .map((answer) => answer.item);
  assert.ok(items.length >= 12);
  const games = items.map((item) => item.game);
  assert.deepEqual(games, [...games].sort((a, b) => a - b));
  for (const item of items) {
    assert.ok(item.chosenBecause);
    assert.ok(item.explanation.summary);
  }
  assert.ok(items.some((item) => item.alsoReached.length > 0));
  const progress = answers.filter((answer) => answer.part === 'progress')
    .map((answer) => answer.progress);
  assert.equal(progress[0].done, 0);
  assert.equal(progress.at(-1).done, items.length);
  assert.ok(progress.every(({ total }) => total === items.length));
});

test('what is selected, and nothing else', async () => {
  const { answers } = await parts('ExplainLesson', { pgn: lesson,
    options: { staticOnly: true, omitClaims: true },
    selection: { lineEnds: true } });
  const items = answers.filter((answer) => answer.part === 'item');
  assert.ok(items.every(({ item }) => item.chosenBecause === 'the line ends here'));
  assert.ok(items.every(({ item }) => item.explanation.claims.length === 0));
});

test('a faulty game is told in its place', async () => {
  const { answers, status } = await parts('ExplainLesson', { pgn:
    '1. e4 {a} e5 *\n\n1. e4 {b} e5 2. Ke3 *\n\n1. d4 {c} *\n',
    options: { staticOnly: true } });
  assert.equal(status.code, code.OK);
  const told = answers.filter((answer) => answer.part !== 'progress')
    .map((answer) => (answer.part === 'error' ? 'error' : answer.item.game));
  assert.deepEqual(told.filter((part) => part === 'error').length, 1);
  assert.ok(told.indexOf('error') < told.indexOf(2));
});

test('the planted faults of the example are found', async () => {
  const { answers, status } = await parts('ProofreadLesson', { pgn: lesson });
  assert.equal(status.code, code.OK);
  const findings = answers.filter((answer) => answer.part === 'finding')
    .map((answer) => answer.finding);
  assert.deepEqual(findings.map(({ game, kind }) => [game, kind]),
    [[2, 'hanging_end'], [6, 'assessment']]);
  assert.deepEqual(findings.map(({ place, title }) => [place, title]),
    [['game 3, after 8... Qxd4, in a variation',
      'the line stops where something falls'],
    ['game 7, after 34. Kf3', 'the assessment does not fit']]);
  for (const finding of findings) {
    assert.ok(finding.proof.line.length > 0);
    assert.ok(finding.provenance.weightsFingerprint);
  }
  assert.equal(answers.at(-1).part, 'progress');
});

test('lessons are explained and proofread in German', async () => {
  const options = { language: 'de', staticOnly: true };
  const explained = await parts('ExplainLesson', { pgn: lesson, options });
  assert.equal(explained.status.code, code.OK);
  const items = explained.answers.filter(({ part }) => part === 'item')
    .map(({ item }) => item);
  assert.ok(items.length > 0);
  for (const { chosenBecause, explanation } of items) {
    assert.doesNotMatch(chosenBecause + explanation.summary,
      /\b(the|is|has|with|White|Black)\b/);
  }
  const read = await parts('ProofreadLesson',
    { pgn: lesson, options: { language: 'de' } });
  const findings = read.answers.filter(({ part }) => part === 'finding');
  assert.ok(findings.length > 0);
  for (const { finding } of findings) {
    assert.match(finding.found, /Ausgespielt|am Zug|Antwort/);
  }
  for (const method of ['ExplainLesson', 'ProofreadLesson']) {
    const { status } = await parts(method,
      { pgn: lesson, options: { audience: 'AUDIENCE_EXPERT' } });
    assert.equal(status.code, code.INVALID_ARGUMENT);
  }
});

test('no PGN, too much of it, bad options', async () => {
  for (const [request, field] of [
    [{}, 'pgn'], [{ pgn: '{a comment alone}' }, 'pgn'],
    [{ pgn: lesson, options: { language: 'xx' } }, 'options.language'],
    [{ pgn: `{${'x'.repeat(8 << 20)}} 1. e4 *` }, 'pgn'],
  ]) {
    for (const method of ['ExplainLesson', 'ProofreadLesson']) {
      const { status } = await parts(method, request);
      assert.equal(status.code, code.INVALID_ARGUMENT, field);
      const fields = detailsOf(status).badRequest.fieldViolations
        .map((violation) => violation.field);
      assert.ok(fields.includes(field), fields.join());
    }
  }
});

// Threads of the server that have worked for a tenth of a second and more, by
// the ticks of proc(5).
function busyThreads(pid) {
  return readdirSync(`/proc/${pid}/task`).filter((task) => {
    const stat = readFileSync(`/proc/${pid}/task/${task}/stat`, 'utf8');
    const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
    return Number(fields[11]) + Number(fields[12]) >= 10;
  }).length;
}

test('one call works all workers, and says the same as one of them', async (t) => {
  const faulty = `${lesson}\n1. e4 {x} e5 2. Ke3 *\n\n1. c4 {y} *\n`;
  const told = [];
  for (const workers of [1, 2, 5]) {
    const other = await Assayd.start(process.env.ASSAYD,
      [`--workers=${workers}`]);
    const asked = connect(other.address);
    t.after(() => asked.close());
    t.after(() => other.stop());
    const calls = [];
    for (const [method, options] of [
      ['ExplainLesson', { proofNodes: 40000 }],
      ['ExplainLesson', { staticOnly: true, withWording: true }],
      ['ProofreadLesson', { proofNodes: 12000 }]]) {
      const { answers, status } = await parts(method,
        { pgn: faulty, options }, { from: asked });
      assert.equal(status.code, code.OK);
      calls.push(answers);
    }
    assert.ok(calls.every((answers) => answers.length > 3));
    // The thread that reads requests may be one more.
    const busy = busyThreads(other.process.pid);
    assert.ok(busy >= Math.min(workers, 3), `${busy} of ${workers}`);
    told.push(calls);
  }
  assert.deepEqual(told[1], told[0]);
  assert.deepEqual(told[2], told[0]);
});

test('with wordings, for who translates', async () => {
  for (const withWording of [false, true]) {
    const { answers } = await parts('ExplainLesson',
      { pgn: lesson, options: { staticOnly: true, withWording } });
    const [{ item }] = answers.filter(({ part }) => part === 'item');
    const [reason] = item.explanation.reasons;
    assert.equal(item.explanation.summaryWording !== null, withWording);
    assert.equal(reason.phraseWording !== null, withWording);
  }
});

test('a cancelled lesson ends', async () => {
  const { answers, status } = await parts('ExplainLesson',
    { pgn: lesson, options: { proofNodes: 24000 } }, { cancelAfter: 2 });
  assert.equal(status.code, code.CANCELLED);
  assert.ok(answers.length < 12);
});
