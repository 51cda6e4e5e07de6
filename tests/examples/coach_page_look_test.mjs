// How the coach's page looks to a validator, to a checker of accessibility, and
// on screens of four sizes by day and by lamp light.
//
//   ASSAYD=build/bin/assayd node tests/examples/coach_page_look_test.mjs [FOLDER]
//
// With a folder, each look is kept there as a picture.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { HtmlValidate } from 'html-validate';
import { openDesk, openPanel, settled, showFen, sizes, visit }
  from './lib/desk.mjs';

const middlegame =
  'r1bq1rk1/p4ppp/1pn1pn2/2pp4/3P1B2/2PBPN2/P1P2PPP/R2Q1RK1 w - - 0 10';
const pictures = process.argv[2];
const axe = readFileSync(createRequire(import.meta.url)
  .resolve('axe-core/axe.min.js'), 'utf8');
const validator = new HtmlValidate({
  extends: ['html-validate:recommended', 'html-validate:a11y'],
  rules: {
    // Styles that scripts set are how a box gets its place on the axis.
    'no-inline-style': 'off',
    // The browser's own way to write elements out again.
    'void-style': 'off', 'no-trailing-whitespace': 'off',
    'attribute-boolean-style': 'off', 'attribute-empty-style': 'off',
    // A grid of squares has no native element.
    'prefer-native-element': 'off',
  },
});

let desk;
before(async () => { desk = await openDesk(); });
after(() => desk.close());

// Each look of the page in turn; `see(name)` is called for each.
async function everyLook(page, see) {
  await see('opened');
  await showFen(page, middlegame);
  await page.locator('#panel-explain .part:has(.lean) button.marks').nth(1)
    .click();
  await page.locator('#panel-explain summary').click();
  await see('why');
  await openPanel(page, 'moves');
  for (const san of ['c4', 'Ne5']) {
    await page.fill('#move-input', san);
    await page.press('#move-input', 'Enter');
    await settled(page, 'moves');
  }
  await page.click('.compare');
  await page.waitForSelector('#panel-moves [data-phase="done"] .candidate-column');
  await see('moves');
  await openPanel(page, 'whatif');
  await page.fill('#edit-input', 'f3-e5 off-a7');
  await page.press('#edit-input', 'Enter');
  await settled(page, 'whatif');
  await page.locator('#panel-whatif summary').click();
  await see('whatif');
  await page.fill('#edit-input', 'off-a5');
  await page.press('#edit-input', 'Enter');
  await page.waitForSelector('#panel-whatif .refusal');
  await see('refused');
  await openPanel(page, 'exercise');
  await see('exercise');
  await page.selectOption('#exercise-kind', 'lever');
  await page.fill('#exercise-move', 'Ne5');
  await page.click('#panel-exercise button[type=submit]');
  await settled(page, 'exercise');
  await page.waitForSelector('#panel-exercise .answer-place .figures');
  await see('exercise-told');
  await openPanel(page, 'open');
  await page.locator('#panel-open section button').click();
  await see('open');
  await page.selectOption('#language', 'de');
  await see('open-german');
  await openPanel(page, 'explain');
  await settled(page, 'explain');
  await see('why-german');
}

async function accessible(page, name) {
  // Put in by the debugger: the page's own policy lets no such script in.
  if (!await page.evaluate(() => 'axe' in globalThis)) await page.evaluate(axe);
  const { violations, passes } = await page.evaluate(() => globalThis.axe.run(document,
    { runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice'] }));
  assert.ok(passes.length > 20, `${passes.length} rules`);
  assert.deepEqual(violations.map(({ id, nodes }) =>
    `${name}: ${id}: ${nodes.slice(0, 3).map(({ html, failureSummary }) =>
      `${html.slice(0, 160)} ${failureSummary}`).join(' | ')}`), []);
}

// Texts that the page cuts off, and what hangs out of it to the right.
async function fits(page, name, { width }) {
  const over = await page.evaluate(() => document.documentElement.scrollWidth);
  assert.ok(over <= width, `${name}: ${over} wide`);
  const cut = await page.$$eval('button, .says, .box, label, h3, h4', (all) => all
    .filter((element) => element.clientWidth > 2 &&
      element.scrollWidth > element.clientWidth + 2)
    .map((element) => element.textContent.slice(0, 40)));
  assert.deepEqual(cut, [], name);
}

for (const [size, viewport] of Object.entries(sizes)) {
  for (const scheme of ['light', 'dark']) {
    test(`accessible and in its place: ${size}, ${scheme}`, async () => {
      const page = await visit(desk.browser, desk.url,
        { size: viewport, scheme });
      await everyLook(page, async (name) => {
        await page.mouse.move(0, 0);
        // What fades has to have faded: colours are looked at.
        await page.waitForTimeout(300);
        if (pictures) {
          await page.screenshot({ fullPage: true,
            path: join(pictures, `${name}-${size}-${scheme}.png`) });
        }
        // The two arrangements of the page; the others differ in widths.
        if (size === 'phone' || size === 'laptop') {
          await accessible(page, `${name}, ${size}, ${scheme}`);
        }
        await fits(page, `${name}, ${size}`, viewport);
      });
      assert.deepEqual(page.faults, []);
      await page.context().close();
    });
  }
}

test('the HTML is valid, as written and as it becomes', async () => {
  const { readFile } = await import('node:fs/promises');
  const written = new URL('../../examples/coach_page/page/index.html',
    import.meta.url);
  const valid = async (html, name) => {
    const { results } = await validator.validateString(html);
    assert.deepEqual(results.flatMap(({ messages }) => messages)
      .map(({ line, ruleId, message }) =>
        `${name}:${line}: ${ruleId}: ${message}`), []);
  };
  await valid(await readFile(written, 'utf8'), 'index.html');
  const page = await visit(desk.browser, desk.url);
  await everyLook(page, async (name) => valid(await page.content(), name));
});

test('by day and by lamp light as the reader likes, whatever the device',
  async () => {
    const page = await visit(desk.browser, desk.url, { scheme: 'dark' });
    const paper = () => page.evaluate(() =>
      getComputedStyle(document.body).backgroundColor);
    const evening = await paper();
    await page.selectOption('#light', 'day');
    const day = await paper();
    assert.notEqual(day, evening);
    await page.reload();
    assert.equal(await paper(), day);
    await page.selectOption('#light', 'evening');
    assert.equal(await paper(), evening);
  });
