// The coach's page in use: everything that it promises, done by a script, and
// held against what the service answers to a client that is not the page.
//
//   ASSAYD=build/bin/assayd node tests/examples/coach_page_use_test.mjs

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, before, test } from 'node:test';
import { course, launch, marks, openPanel, placement, servePage, settled,
  settledOn, showFen, sizes, texts, visit } from './lib/desk.mjs';
import { Assayd } from '../server/lib/assayd.mjs';
import { call, connect } from '../server/lib/client.mjs';
import { Chess } from 'chess.js';

const middlegame =
  'r1bq1rk1/p4ppp/1pn1pn2/2pp4/3P1B2/2PBPN2/P1P2PPP/R2Q1RK1 w - - 0 10';
const blackToMove =
  'r1bq1rk1/pp1nbppp/2n1p3/2ppP3/3P1P2/2P1BN2/PP1NB1PP/R2Q1RK1 b - - 0 10';

let server;
let client;
let desk;
let browser;
let page;
before(async () => {
  server = await Assayd.start(process.env.ASSAYD);
  client = connect(server.address);
  desk = await servePage(['--service', server.address]);
  browser = await launch();
  page = await visit(browser, desk.url);
});
after(async () => {
  // What did not start is not there to be stopped; the rest must not go on.
  await browser?.close();
  client?.close();
  const ended = [await desk?.stop(), await server?.stop()];
  assert.deepEqual(ended, [0, 0]);
});

async function answer(method, request) {
  const { response, error } = await call(client, method, request);
  assert.equal(error, undefined);
  return response;
}
const explained = async (fen) =>
  (await answer('Explain', { position: { fen } })).explanation;

const says = (selector) => texts(page, `${selector} .says`);

// The first squares of the text "Marked for White: d3, f4." and its like do
// not matter here; what is drawn does.
const squaresOf = (entries, wanted) => [...new Set(entries.filter(wanted)
  .flatMap(({ squares }) => squares))].sort();

test('it opens with the course, where its author first says something',
  async () => {
    const games = await texts(page, '#game option');
    assert.equal(games.length, 7);
    assert.match(games[0], /Amsel, Greta – Brandt, Onno/);
    assert.equal(await page.textContent('.moves [aria-current]'), 'Nf8');
    assert.match(await page.textContent('.moves'), /Who attacks where\?/);
    assert.deepEqual(page.faults, []);
  });

test('a pasted position is explained in the words of the service', async () => {
  await showFen(page, middlegame);
  const expected = await explained(middlegame);
  assert.equal(await placement(page), middlegame.split(' ')[0]);
  const read = await page.textContent('#panel-explain');
  for (const sentence of expected.summary.split(/(?<=\D\.) /)) {
    assert.ok(read.includes(sentence), sentence);
  }
  const reasons = await says('#panel-explain .part:has(.lean)');
  assert.deepEqual(reasons, expected.reasons.map(({ text }) => text));
  assert.ok(reasons.length >= 3);
  assert.ok(read.includes(expected.advice.text));
  for (const { text } of [...expected.threats, ...expected.temptations]) {
    assert.ok(read.includes(text), text);
  }
  const entries = await says('#panel-explain details');
  assert.equal(entries.length, expected.ledger.length);
  // Temptations, in a position that has some.
  const trap =
    'rnb1kbnr/pp3ppp/1q2p3/2ppP3/3P4/2P2N2/PP3PPP/RNBQKB1R w KQkq - 1 6';
  const other = await explained(trap);
  assert.ok(other.temptations.length > 0);
  await showFen(page, trap);
  const otherRead = await page.textContent('#panel-explain');
  for (const { text } of other.temptations) assert.ok(otherRead.includes(text));
  // A threat: the queen and the bishop look at f7.
  const mating =
    'r1bqkbnr/pppp1ppp/2n5/4p2Q/2B1P3/8/PPPP1PPP/RNB1K1NR b KQkq - 3 3';
  const { threats } = await explained(mating);
  assert.ok(threats.length > 0);
  await showFen(page, mating);
  const threatened = await page.textContent('#panel-explain');
  for (const { text } of threats) assert.ok(threatened.includes(text), text);
});

test('a position that is none is refused in sentences, fault by fault',
  async () => {
    await openPanel(page, 'open');
    await page.fill('#fen-input', '8/8 w KX');
    await page.press('#fen-input', 'Enter');
    await page.waitForSelector('#panel-explain .refusal');
    const refusal = await page.textContent('#panel-explain .refusal');
    assert.match(refusal, /^The service cannot take this:/);
    assert.match(refusal, /wrong number of ranks/);
    assert.match(refusal, /castling: unknown character/);
    assert.equal(await page.textContent('#panel-explain .answer-place'), '');
    assert.match(await page.textContent('#announce'), /castling/);
  });

test('a reason marks its squares by pattern and colour, by pointer and focus',
  async () => {
    await showFen(page, middlegame);
    const { reasons, ledger } = await explained(middlegame);
    const buttons = page.locator('#panel-explain .part:has(.lean) button.marks');
    assert.equal(await buttons.count(), reasons.length);
    for (const [i, reason] of reasons.entries()) {
      const entries = reason.entries.map((entry) => ledger[entry]);
      const expected = {
        dots: squaresOf(entries, ({ valueCp }) => valueCp > 0),
        crosses: squaresOf(entries, ({ valueCp }) => valueCp < 0) };
      await buttons.nth(i).hover();
      assert.deepEqual(await marks(page), expected, reason.text);
      await page.mouse.move(1, 1);
      assert.deepEqual(await marks(page), { dots: [], crosses: [] });
      await buttons.nth(i).focus();
      assert.deepEqual(await marks(page), expected);
      // Pressed, they stay, and a screen reader hears which they are.
      await page.keyboard.press('Enter');
      await page.locator('#tab-explain').focus();
      assert.deepEqual(await marks(page), expected);
      const name = await buttons.nth(i).textContent();
      for (const square of expected.dots) assert.ok(name.includes(square));
      await buttons.nth(i).press('Enter');
      await page.locator('#tab-explain').focus();
      assert.deepEqual(await marks(page), { dots: [], crosses: [] });
    }
    const [white, black] = await page.evaluate(() => ['few-dots', 'one-cross']
      .map((id) => getComputedStyle(document.querySelector(`#${id} .sign`)).stroke));
    assert.notEqual(white, black);
  });

// Columns are halves of a move: the side to move begins in the first, the
// other side in the second.
test('plans stand on one axis of own moves, the side to move half a move ahead',
  async () => {
    for (const fen of [middlegame, blackToMove]) {
      await showFen(page, fen);
      const { plans, sideToMove } = await explained(fen);
      assert.ok(new Set(plans.map(({ side }) => side)).size === 2);
      const lanes = await page.$$eval('#panel-explain .lane', (all) =>
        all.map((lane) => ({ kind: lane.dataset.kind,
          title: lane.querySelector('.plan-title').textContent,
          steps: [...lane.querySelectorAll('.steps .box')]
            .map((box) => [box.textContent, box.style.gridColumnStart]),
          answers: [...lane.querySelectorAll('.stops .box')]
            .map((box) => box.textContent) })));
      const named = (side, san) => (side === 'SIDE_WHITE' ? san : `...${san}`);
      const expected = plans.map((plan) => ({ kind: plan.kind,
        title: plan.title,
        steps: plan.steps.map(({ san }, i) => [named(plan.side, san),
          String(2 * i + (plan.side === sideToMove ? 1 : 2))]),
        answers: (plan.counter?.steps ?? []).map(({ san }) => named(
          plan.side === 'SIDE_WHITE' ? 'SIDE_BLACK' : 'SIDE_WHITE', san)) }));
      const byTitle = (a, b) => a.title.localeCompare(b.title);
      assert.deepEqual(lanes.sort(byTitle), expected.sort(byTitle));
    }
  });

test('a position can be set up by hand', async () => {
  await openPanel(page, 'open');
  await page.click('text=Set up on the board');
  await page.click('text=Empty the board');
  for (const [name, square] of [['white king', 'e1'], ['black king', 'e8'],
    ['white pawn', 'e2'], ['white pawn', 'h2']]) {
    await page.locator('#panel-open .palette').getByRole('radio', { name })
      .check({ force: true });
    await page.click(`[data-square=${square}]`);
  }
  await page.locator('#panel-open').getByRole('radio', { name: 'take off' })
    .check({ force: true });
  await page.click('[data-square=h2]');
  await page.selectOption('#set-up-turn', 'b');
  await page.click('text=Take this position');
  await settledOn(page, '4k3/8/8/8/8/8/4P3/4K3 b - - 0 1');
  assert.equal(await placement(page), '4k3/8/8/8/8/8/4P3/4K3');
});

test('games are opened from a file, with variations, and stepped through',
  async () => {
    await openPanel(page, 'open');
    await page.setInputFiles('#pgn-file', course);
    await page.waitForSelector('text=Opened: 7 games.');
    const main = 'd4 d5 c4 e6 Nc3 Nf6 cxd5 exd5 Bg5 Be7 e3 O-O Bd3 Nbd7 Nf3 Re8 ' +
      'Qc2 c6 O-O Nf8';
    const game = new Chess();
    for (const san of main.split(' ')) {
      game.move(san);
      await page.click('[data-step=next]');
      assert.equal(await placement(page), game.fen().split(' ')[0]);
    }
    // Two ways on: the variation is taken, and left again by the keyboard.
    await page.locator('.lines button', { hasText: '11. Rae1' }).click();
    game.move('Rae1');
    assert.equal(await placement(page), game.fen().split(' ')[0]);
    assert.match(await page.textContent('.variation'), /prepares e4/);
    assert.ok(await page.isDisabled('[data-step=next]'));
    await page.locator('.moves [aria-current]').focus();
    await page.keyboard.press('ArrowLeft');
    game.undo();
    assert.equal(await placement(page), game.fen().split(' ')[0]);
    await page.click('[data-step=last]');
    const full = new Chess();
    full.loadPgn(readFileSync(course, 'utf8').split(/\n\n(?=\[Event )/)[0]);
    assert.equal(await placement(page), full.fen().split(' ')[0]);
    await page.selectOption('#game', '6');
    assert.equal(await placement(page), '4r1k1/5pp1/7p/1R6/1P6/6P1/5P1P/6K1');
    await openPanel(page, 'explain');
    await settledOn(page, '4r1k1/5pp1/7p/1R6/1P6/6P1/5P1P/6K1 w - - 0 33');
  });

test('a pasted PGN with faults is told as such, and is never HTML', async () => {
  await openPanel(page, 'open');
  const paste = async (text) => {
    await page.fill('#pgn-input', text);
    await page.click('text=Open the games');
    return page.textContent('.opened');
  };
  assert.match(await paste('1. e4 e5 2. Qh9 *'),
    /cannot be read as PGN: line 1, column 1\d\./);
  assert.match(await paste('1. e4 e5 2. Qh6 Nc6 *'), /Qh6 cannot be played/);
  assert.equal(await page.locator('.moves .move').count(), 3);
  assert.match(await paste(''), /no game|cannot be read/);
  const evil = '<img src=x onerror="document.title=1">';
  await paste(`[White "${evil.replaceAll('"', "'")}"]\n\n1. e4 {${evil}} e5 *`);
  assert.ok((await page.textContent('.moves')).includes(evil));
  assert.equal(await page.locator('.moves img').count(), 0);
  assert.equal(await page.title(), "Coach's page");
});

test('a candidate move by click, by keyboard and typed: gains and concessions',
  async () => {
    await showFen(page, middlegame);
    await page.click('[data-square=c3]');
    assert.ok(await page.locator('[data-square=c4] use[href="#reach"]').count());
    await page.click('[data-square=c4]');
    await settled(page, 'moves');
    // From d4, where the keyboard starts after the click, to f3 and to e5.
    await page.focus('[data-square=c4]');
    for (const key of ['ArrowRight', 'ArrowRight', 'ArrowRight', 'ArrowDown',
      'Enter', 'ArrowUp', 'ArrowUp', 'ArrowLeft', 'Enter']) {
      await page.keyboard.press(key);
    }
    await page.fill('#move-input', 'f1e1');
    await page.press('#move-input', 'Enter');
    const tried = page.locator('.tried-moves .move');
    assert.deepEqual(await tried.allTextContents(),
      ['10. c4', '10. Ne5', '10. Re1']);
    for (const [i, san] of ['c4', 'Ne5', 'Re1'].entries()) {
      await tried.nth(i).click();
      await page.waitForFunction((wanted) => {
        const { dataset } = document.getElementById('panel-moves');
        return dataset.phase === 'done' && dataset.move === wanted;
      }, san);
      const { explanation } = await answer('ExplainMove',
        { position: { fen: middlegame }, move: san });
      const card = await page.textContent('.move-card');
      for (const { text } of [...explanation.gains,
        ...explanation.concessions, ...explanation.starts,
        ...explanation.stops, ...explanation.allows]) {
        assert.ok(card.includes(text), `${san}: ${text}`);
      }
      assert.ok(card.includes(explanation.summary));
    }
    await page.fill('#move-input', 'Nh5');
    await page.press('#move-input', 'Enter');
    await page.waitForSelector('#panel-moves .refusal');
    assert.match(await page.textContent('#panel-moves .refusal'),
      /illegal move: found “Nh5”/);
    assert.equal(await tried.count(), 3);
  });

// Where the middle of a square is.
async function middleOf(where, square) {
  const box = await where.locator(`[data-square=${square}]`).boundingBox();
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}
async function mouseTo(square) {
  const { x, y } = await middleOf(page, square);
  await page.mouse.move(x, y, { steps: 4 });
}
const reach = (where) => where.$$eval('.square', (cells) => cells
  .filter((cell) => cell.querySelector('use[href="#reach"]'))
  .map((cell) => cell.dataset.square).sort());
const tries = (where) => texts(where, '.tried-moves .move');

test('a man is dragged with the mouse, and let go beside what it can do',
  async () => {
    const fen = middlegame.replace('0 10', '1 11'); // nothing tried there yet
    await showFen(page, fen);
    await openPanel(page, 'moves');
    const game = new Chess(fen);
    await mouseTo('f3');
    await page.mouse.down();
    assert.deepEqual(await reach(page), []);
    await mouseTo('e5');
    assert.equal(await page.locator('.carried use[href="#wn"]').count(), 1);
    assert.equal(await page.getAttribute('.over', 'data-square'), 'e5');
    assert.deepEqual(await reach(page),
      game.moves({ square: 'f3', verbose: true }).map(({ to }) => to).sort());
    await page.mouse.up();
    assert.deepEqual(await tries(page), ['11. Ne5']);
    // No move, beside the board, and by Escape: nothing is left of it.
    const nothing = async () => {
      assert.deepEqual(await tries(page), ['11. Ne5']);
      assert.deepEqual(await reach(page), []);
      assert.equal(await page.locator('.carried, .over, .lifted, .picked')
        .count(), 0);
    };
    for (const goal of ['f6', 'a2', 'f3']) {
      await mouseTo('f3');
      await page.mouse.down();
      await mouseTo('g5');
      await mouseTo(goal);
      await page.mouse.up();
      await nothing();
    }
    await mouseTo('f3');
    await page.mouse.down();
    await page.mouse.move(2, 2, { steps: 4 });
    await page.mouse.up();
    await nothing();
    await mouseTo('f3');
    await page.mouse.down();
    await mouseTo('e5');
    await page.keyboard.press('Escape');
    await nothing();
    await page.mouse.up();
    await nothing();
    // Black's men are not White's to move; a click picks up as before.
    await mouseTo('f6');
    await page.mouse.down();
    await mouseTo('e4');
    assert.equal(await page.locator('.carried').count(), 0);
    await page.mouse.up();
    await nothing();
    await page.click('[data-square=d3]');
    assert.ok((await reach(page)).includes('h7'));
    await page.click('[data-square=h7]');
    assert.deepEqual(await tries(page), ['11. Ne5', '11. Bxh7+']);
  });

test('where the board is changed, a drag moves any man anywhere', async () => {
  await showFen(page, blackToMove);
  await openPanel(page, 'whatif');
  await mouseTo('c8');
  await page.mouse.down();
  await mouseTo('h3');
  await page.mouse.up();
  await page.waitForFunction(() => {
    const { dataset } = document.getElementById('panel-whatif');
    return dataset.phase === 'done' && dataset.edits === 'c8-h3';
  });
  const { fenAfter } = await answer('WhatIf',
    { position: { fen: blackToMove }, edits: ['c8-h3'] });
  assert.equal(await placement(page), fenAfter.split(' ')[0]);
});

test('a man is dragged with a finger; elsewhere a finger scrolls', async () => {
  const phone = await visit(browser, desk.url,
    { size: sizes.phone, touch: true });
  await showFen(phone, middlegame);
  await openPanel(phone, 'moves');
  const session = await phone.context().newCDPSession(phone);
  const touch = (type, ...points) => session.send('Input.dispatchTouchEvent',
    { type, touchPoints: points });
  const drag = async (from, to) => {
    const start = typeof from === 'string' ? await middleOf(phone, from) : from;
    const end = typeof to === 'string' ? await middleOf(phone, to) : to;
    await touch('touchStart', start);
    for (let i = 1; i <= 6; i += 1) {
      await touch('touchMove', { x: start.x + (end.x - start.x) * i / 6,
        y: start.y + (end.y - start.y) * i / 6 });
    }
    const carried = await phone.locator('.carried.touch').count();
    await touch('touchEnd');
    return carried;
  };
  await phone.evaluate(() => scrollTo(0, 0));
  assert.equal(await drag('a2', 'a4'), 1);
  assert.deepEqual(await tries(phone), ['10. a4']);
  assert.equal(await phone.evaluate(() => scrollY), 0);
  // A tap takes and puts, as a click does.
  await phone.tap('[data-square=f3]');
  assert.ok((await reach(phone)).includes('e5'));
  await phone.tap('[data-square=e5]');
  assert.deepEqual(await tries(phone), ['10. a4', '10. Ne5']);
  await settled(phone, 'moves');
  const { x, y } = await middleOf(phone, 'e4');
  assert.equal(await drag({ x, y }, { x, y: y - 100 }), 0);
  await phone.waitForFunction(() => scrollY > 20);
  assert.deepEqual(await tries(phone), ['10. a4', '10. Ne5']);
  assert.deepEqual(phone.faults, []);
  await phone.context().close();
});

test('candidates side by side, then one is played on', async () => {
  await showFen(page, middlegame);
  await openPanel(page, 'moves');
  await page.click('.compare');
  await page.waitForSelector('.candidate-column');
  await page.waitForFunction(() =>
    document.querySelector('#panel-moves [data-phase="done"] .candidate-column'));
  const expected = await answer('Compare', { position: { fen: middlegame },
    moves: ['c4', 'Ne5', 'Re1'] });
  const shown = await page.textContent('#panel-moves');
  assert.ok(shown.includes(expected.decides));
  assert.equal(await page.locator('.candidate-column').count(), 3);
  for (const { verdict } of expected.explanations) {
    assert.ok(shown.includes(verdict.text));
  }
  // Terms by the catalogue's name for readers, in the page's language, those in
  // which the moves differ most first.
  const differing = ({ byTerm }) => byTerm.map(({ title, valueCp }) =>
    [title, Math.max(...valueCp) - Math.min(...valueCp)])
    .filter(([, most]) => most > 0)
    .sort(([, a], [, b]) => b - a).map(([title]) => title);
  assert.ok(differing(expected).length > 1);
  assert.deepEqual(await texts(page, '.differences .term'), differing(expected));
  await page.selectOption('#language', 'de');
  await page.click('.compare');
  await page.waitForSelector(
    '#panel-moves [data-phase="done"] .differences .term[lang=de]');
  assert.deepEqual(await texts(page, '.differences .term'),
    differing(await answer('Compare', { position: { fen: middlegame },
      moves: ['c4', 'Ne5', 'Re1'], options: { language: 'de' } })));
  await page.selectOption('#language', 'en');
  await settled(page, 'moves');
  await page.locator('.tried-moves .move').nth(1).click();
  await page.click('text=Go on from here');
  const game = new Chess(middlegame);
  game.move('Ne5');
  assert.equal(await placement(page), game.fen().split(' ')[0]);
  assert.equal(await page.textContent('.moves [aria-current]'), '10. Ne5');
  await page.click('[data-step=back]');
  assert.equal(await placement(page), middlegame.split(' ')[0]);
});

test('a pawn becomes what is asked for', async () => {
  await showFen(page, '8/4P1k1/8/8/8/8/6K1/8 w - - 0 1');
  await page.click('[data-square=e7]');
  await page.click('[data-square=e8]');
  await page.locator('dialog').getByRole('button', { name: 'knight' }).click();
  await settled(page, 'moves');
  assert.deepEqual(await texts(page, '.tried-moves .move'), ['1. e8=N+']);
});

test('the board is changed, and what that changes is told', async () => {
  await showFen(page, middlegame);
  await openPanel(page, 'whatif');
  const told = async (edits) => {
    await page.waitForFunction((wanted) => {
      const { dataset } = document.getElementById('panel-whatif');
      return dataset.phase === 'done' && dataset.edits === wanted;
    }, edits.join(' '));
    const expected = await answer('WhatIf',
      { position: { fen: middlegame }, edits });
    assert.equal(await placement(page), expected.fenAfter.split(' ')[0]);
    const shown = await page.textContent('#panel-whatif');
    assert.ok(shown.includes(expected.summary));
    for (const { text } of expected.changes) assert.ok(shown.includes(text), text);
  };
  await page.click('[data-square=f3]');
  await page.click('[data-square=e5]');
  await told(['f3-e5']);
  await page.fill('#edit-input', 'off-a7 pass');
  await page.press('#edit-input', 'Enter');
  await told(['f3-e5', 'off-a7', 'pass']);
  await page.click('text=Undo the last');
  await told(['f3-e5', 'off-a7']);
  await page.click('text=Exchange the colours');
  await told(['f3-e5', 'off-a7', 'swap']);
  await page.click('text=Undo all');
  await page.locator('#panel-whatif').getByRole('radio', { name: 'take off' })
    .check({ force: true });
  await page.click('[data-square=g1]');
  await page.waitForSelector('#panel-whatif .refusal');
  assert.match(await page.textContent('#panel-whatif .refusal'), /no king/);
  await openPanel(page, 'explain');
  assert.equal(await placement(page), middlegame.split(' ')[0]);
});

test('plans stay hidden until the student has named one', async () => {
  await showFen(page, middlegame);
  await openPanel(page, 'exercise');
  const { plans } = await explained(middlegame);
  const white = plans.filter(({ side }) => side === 'SIDE_WHITE');
  const panel = () => page.textContent('#panel-exercise .answer-place');
  // Nothing of the plans is in sight, nor where a screen reader would find it.
  const visible = await page.evaluate(() => document.body.innerText);
  for (const plan of plans) {
    assert.ok(!visible.includes(plan.text), plan.text);
    assert.ok(!visible.includes(plan.title), plan.title);
  }
  assert.equal(await panel(), '');
  await page.click('text=Show what was found');
  assert.match(await page.textContent('#panel-exercise'), /Choose a sort of plan/);
  assert.equal(await panel(), '');
  await page.selectOption('#exercise-kind', white[0].kind);
  await page.click('text=Show what was found');
  await settled(page, 'exercise');
  assert.match(await panel(), /That is the first plan found for White\./);
  for (const plan of plans) assert.ok((await panel()).includes(plan.text));
  await page.click('text=Name another');
  assert.equal(await panel(), '');
  // A first move from the board that no plan has; what it does is told, too.
  await page.click('[data-square=h2]');
  await page.click('[data-square=h3]');
  assert.equal(await page.inputValue('#exercise-move'), 'h3');
  await page.click('text=Show what was found');
  await settled(page, 'exercise');
  assert.match(await panel(), /not among the plans found for White/);
  await page.waitForSelector('text=What your move does');
  // The side that is not to move has plans, too.
  await page.click('text=Name another');
  await page.selectOption('#exercise-side', 'SIDE_BLACK');
  const black = plans.find(({ side }) => side === 'SIDE_BLACK');
  await page.fill('#exercise-move', black.steps[0].san);
  await page.click('text=Show what was found');
  await settled(page, 'exercise');
  assert.match(await panel(), /That is the first plan found for Black\./);
  // Another position hides them anew.
  await showFen(page, blackToMove);
  await openPanel(page, 'exercise');
  assert.equal(await panel(), '');
});

test('audience and language go to the service with each question', async () => {
  const sent = [];
  const listen = (request) => {
    if (request.url().includes('/api/')) sent.push(request.postDataJSON());
  };
  page.on('request', listen);
  await showFen(page, middlegame);
  for (const audience of ['newcomer', 'expert', 'club']) {
    sent.length = 0;
    await page.selectOption('#audience', audience);
    await settledOn(page, middlegame);
    assert.ok(sent.length >= 2);
    assert.ok(sent.every((body) => body.audience === audience));
  }
  page.off('request', listen);
});

test('everything is there in German; refused wishes are told in a sentence',
  async () => {
    // A service that has no German texts, whatever ours has.
    await page.route('**/api/*', async (route) => {
      const { language } = route.request().postDataJSON();
      if (language !== 'de') return route.continue();
      return route.fulfill({ status: 422, json: { refusal: {
        code: 'INVALID_ARGUMENT', message: 'no texts', problems: [
          { field: 'options.language', description: 'no texts in it' }] } } });
    });
    const english = await page.evaluate(() => document.body.innerText);
    await page.selectOption('#language', 'de');
    await settledOn(page, middlegame);
    assert.match(await page.textContent('.wish-notice'), /keine deutschen Texte/);
    assert.equal(await page.getAttribute('html', 'lang'), 'de');
    assert.equal(await page.getAttribute('.verdict-text', 'lang'), 'en');
    assert.equal(await page.title(), 'Trainerseite');
    const german = await page.evaluate(() => document.body.innerText);
    for (const word of ['Written for', 'Turn the board', 'Plans as a race',
      'Own moves', 'in time']) {
      assert.ok(english.includes(word), word);
      assert.ok(!german.includes(word), word);
    }
    assert.match(german, /0,43/);
    await page.unroute('**/api/*');
    await page.selectOption('#language', 'en');
    await settledOn(page, middlegame);
    assert.equal(await page.locator('.wish-notice').count(), 0);
    // Ours, asked for German: either its texts, or ours with the sentence.
    await page.selectOption('#language', 'de');
    await settledOn(page, middlegame);
    const told = await page.getAttribute('.verdict-text', 'lang');
    assert.equal(await page.locator('.wish-notice').count(), told === 'de' ? 0 : 1);
    await page.selectOption('#language', 'en');
  });

test('both languages have the same labels with the same gaps', async () => {
  const { en } = await import('../../examples/coach_page/page/text/en.mjs');
  const { de } = await import('../../examples/coach_page/page/text/de.mjs');
  assert.deepEqual(Object.keys(de).sort(), Object.keys(en).sort());
  const gaps = (text) => (text.match(/\{\w+\}/g) ?? []).sort();
  for (const key of Object.keys(en)) {
    assert.deepEqual(gaps(de[key]), gaps(en[key]), key);
  }
});

test('the board is read out, and turns', async () => {
  await showFen(page, middlegame);
  assert.equal(await page.getAttribute('[data-square=d3]', 'aria-label'),
    'd3, white bishop');
  assert.match(await page.textContent('#men'),
    /^White: king g1, queen d1, .* White to move\.$/);
  const first = () => page.$eval('.square', (cell) => cell.dataset.square);
  assert.equal(await first(), 'a8');
  await page.click('text=Turn the board');
  assert.equal(await first(), 'h1');
  await page.focus('[data-square=e4]');
  await page.click('[data-square=e4]');
  await page.keyboard.press('ArrowUp');
  assert.equal(await page.evaluate(() =>
    document.activeElement.dataset.square), 'e3');
  await page.click('text=Turn the board');
  assert.deepEqual(page.faults, []);
});
