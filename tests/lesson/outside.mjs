// What a lesson becomes, as others read it: our PGN by two libraries of npm,
// our HTML by a validator, a checker of accessibility and a browser.
//
//   node tests/lesson/outside.mjs build/bin/assay
//
// The browser is Debian's Chromium; where it is missing, what needs it is told
// as left out.

import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync }
  from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

let pgnRead;
let Chess;
let HtmlValidate;
try {
  ({ pgnRead } = createRequire(import.meta.url)('kokopu'));
  ({ Chess } = await import('chess.js'));
  ({ HtmlValidate } = await import('html-validate'));
} catch {
  console.log('skipped: run npm ci --prefix tests');
  process.exit(77);
}

const here = dirname(fileURLToPath(import.meta.url));
const program = process.argv[2];
const lesson = join(here, '..', '..', 'examples', 'lesson', 'autumn_course.pgn');
const folder = mkdtempSync(join(tmpdir(), 'assay-lesson-'));
const file = (name) => join(folder, name);
process.on('exit', () => rmSync(folder, { recursive: true }));

function assay(...args) {
  const run = spawnSync(program, args, { encoding: 'utf8', maxBuffer: 1 << 28 });
  assert.ok(run.status === 0 || run.status === 1, run.stderr);
  return run.stdout;
}
assay('lesson', lesson, '--handout', file('lesson.html'),
  '--annotated', file('lesson.pgn'), '--items', file('lesson.jsonl'),
  '--proof-nodes', '6000');

// --- the PGN -----------------------------------------------------------------

// A tree as kokopu reads it: moves, author's comments and NAGs, variations.
// kokopu takes commands out of comments; so the raw text tells ours.
function tree(variation) {
  return variation.nodes().map((node) => ({
    san: node.notation(),
    nags: node.nags(),
    comment: node.comment() ?? '',
    lines: node.variations().map(tree),
  }));
}
function withoutComments(nodes) {
  return nodes.map(({ san, lines }) => ({ san, lines: lines.map(withoutComments) }));
}
const authorText = readFileSync(lesson, 'utf8');
const annotatedText = readFileSync(file('lesson.pgn'), 'utf8');
const before = pgnRead(authorText);
const after = pgnRead(annotatedText);
assert.equal(after.gameCount(), before.gameCount());
let moves = 0;
const count = (nodes) => nodes.forEach((node) => {
  moves += 1;
  node.lines.forEach(count);
});
for (let i = 0; i < before.gameCount(); i += 1) {
  const [was, is] = [before.game(i), after.game(i)];
  assert.equal(is.playerName('w'), was.playerName('w'));
  const [old, now] = [tree(was.mainVariation()), tree(is.mainVariation())];
  count(old);
  assert.deepEqual(withoutComments(now), withoutComments(old), `game ${i}`);
  // What the author says and assesses is still there, NAGs first.
  const check = (a, b) => a.forEach((node, n) => {
    const other = b[n];
    const squeeze = (text) => text.replace(/\s+/g, ' ').trim();
    assert.ok(squeeze(other.comment).startsWith(squeeze(node.comment)),
      `${node.comment} in ${other.comment}`);
    for (const nag of node.nags) assert.ok(other.nags.includes(nag));
    node.lines.forEach((line, l) => check(line, other.lines[l]));
  });
  check(old, now);
}
assert.ok(moves > 100, `${moves} moves`);
// chess.js reads every game, too.
const split = (text) => text.split(/\n\n(?=\[Event )/);
const [authors, annotated] = [split(authorText), split(annotatedText)];
assert.equal(annotated.length, authors.length);
annotated.forEach((text, i) => {
  const [was, is] = [new Chess(), new Chess()];
  was.loadPgn(authors[i]);
  is.loadPgn(text);
  assert.deepEqual(is.history(), was.history());
  assert.equal(is.fen(), was.fen());
});
// The bytes of the author are all there, in order: taking ours out by their
// mark gives the lesson back.
let stripped = annotatedText;
for (;;) {
  const found = stripped.match(
    /\n(\{?)\[%assay(?: start)?( \$\d+)?\][^}]*(\}\n?)/);
  if (!found) break;
  const [all, alone, nag] = found;
  let head = stripped.slice(0, found.index);
  const tail = stripped.slice(found.index + all.length - (all.endsWith('\n') ? 1 : 0));
  if (nag) {
    const at = head.lastIndexOf(nag);
    head = head.slice(0, at) + head.slice(at + nag.length);
  }
  stripped = head + (alone ? '' : '}') + tail;
}
assert.equal(stripped, authorText);
// Once more over our own output: nothing changes.
assay('lesson', file('lesson.pgn'), '--annotated', file('again.pgn'),
  '--proof-nodes', '6000');
assert.equal(readFileSync(file('again.pgn'), 'utf8'), annotatedText);

// --- the JSON lines ----------------------------------------------------------

const items = readFileSync(file('lesson.jsonl'), 'utf8').trim().split('\n')
  .map((line) => JSON.parse(line));
assert.ok(items.length >= 12);
const structures = new Set();
for (const item of items) {
  const game = before.game(item.game ?? 0);
  const board = new Chess(game.initialPosition().fen({ fullMoveNumber: 1 }));
  for (const san of item.path ?? []) assert.ok(board.move(san));
  const placement = (fen) => fen.split(' ').slice(0, 3).join(' ');
  assert.equal(placement(item.explanation.fen), placement(board.fen()));
  assert.ok(item.chosenBecause);
  structures.add(item.explanation.structure.centre ?? 'none');
}
assert.ok(items.some((item) => item.alsoReached?.length > 0));
assert.ok(structures.size >= 4, [...structures].join());

// --- the HTML ----------------------------------------------------------------

const html = readFileSync(file('lesson.html'), 'utf8');
assert.ok(!/(?:src|href)="(?!#)/.test(html), 'nothing from elsewhere');
assert.ok(!/url\((?!#)/.test(html), 'nothing from elsewhere in its style');
const validator = new HtmlValidate({
  extends: ['html-validate:recommended', 'html-validate:a11y'],
  // Taste, not validity.
  rules: { 'no-inline-style': 'off', 'long-title': 'off' },
});
const report = await validator.validateString(html);
for (const result of report.results) {
  for (const message of result.messages.slice(0, 20)) {
    console.log(`html:${message.line}: ${message.ruleId}: ${message.message}`);
  }
}
assert.ok(report.valid, 'html-validate');

const browser = ['/usr/bin/chromium', '/usr/bin/google-chrome']
  .find((path) => existsSync(path));
if (!browser) {
  console.log('left out: no Chromium for accessibility and print');
  process.exit(0);
}
const { chromium } = await import('playwright-core');
const run = await chromium.launch({ executablePath: browser,
  args: ['--no-sandbox'] });
try {
  for (const [name, size] of [['desk', { width: 1200, height: 900 }],
    ['phone', { width: 360, height: 740 }]]) {
    const page = await run.newPage({ viewport: size });
    const requests = [];
    page.on('request', (request) => requests.push(request.url()));
    await page.goto(pathToFileURL(file('lesson.html')).href);
    await page.addScriptTag({ path: createRequire(import.meta.url)
      .resolve('axe-core/axe.min.js') });
    const found = await page.evaluate(() => globalThis.axe.run(document, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'best-practice'] }));
    for (const violation of found.violations) {
      console.log(`${name}: ${violation.id}: ${violation.help}; ` +
        violation.nodes.slice(0, 3).map((node) => node.html.slice(0, 120))
          .join(' | '));
    }
    assert.equal(found.violations.length, 0, `axe-core, ${name}`);
    // Nothing hangs out of the page to the right.
    const width = await page.evaluate(() => document.documentElement.scrollWidth);
    assert.ok(width <= size.width, `${name}: ${width} wide`);
    assert.equal(requests.filter((url) => !url.startsWith('file:')).length, 0);
    await page.close();
  }
  const page = await run.newPage();
  await page.goto(pathToFileURL(file('lesson.html')).href);
  for (const format of ['A4', 'Letter']) {
    const pdf = await page.pdf({ format });
    const pages = pdf.toString('latin1').match(/\/Type\s*\/Page\b/g).length;
    assert.ok(pages >= items.length, `${format}: ${pages} pages`);
    assert.ok(pages <= 3 * items.length, `${format}: ${pages} pages`);
    assert.ok(pdf.length < 4e6, `${format}: ${pdf.length} bytes`);
  }
} finally {
  await run.close();
}
assay('lesson', lesson, '--pdf', file('lesson.pdf'), '--static');
assert.ok(statSync(file('lesson.pdf')).size > 10000);
console.log(`${moves} moves, ${items.length} key positions: all as it should be`);
