// A term of one's own: where it holds, that the benchmark tools take it, and
// that its project stands alone.
//
//   OWN_TERM=build/bin/own_term node --test tests/examples/term_test.mjs
import assert from 'node:assert/strict';
import {spawnSync} from 'node:child_process';
import {mkdtempSync, rmSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {after, test} from 'node:test';
import {fileURLToPath} from 'node:url';

const EXAMPLE = fileURLToPath(new URL('../../examples/term', import.meta.url));
const program = process.env.OWN_TERM;

function run(words, input = '') {
  const ran = spawnSync(program, words, {encoding: 'utf8', input});
  assert.equal(ran.status, 0, ran.stderr);
  return ran.stdout;
}

// The same position with the colours swapped, or left and right.
function swapped(fen) {
  const [board, side] = fen.split(' ');
  const other = (letter) => letter === letter.toUpperCase() ?
    letter.toLowerCase() : letter.toUpperCase();
  return `${board.split('/').reverse().join('/')
    .replace(/[a-z]/gi, other)} ${side === 'w' ? 'b' : 'w'} - - 0 10`;
}
function leftRight(fen) {
  const [board, side] = fen.split(' ');
  return `${board.split('/').map((row) => [...row].reverse().join(''))
    .join('/')} ${side} - - 0 10`;
}

// Black's g-pawn is on g6, the bishop of the dark squares gone; White has its
// own, and a queen.
const BARE =
  'r2q1rk1/ppp2p1p/2np1np1/4p3/4P3/2NP1N2/PPPBQPPP/R4RK1 w - - 0 10';
const entry = (fen) => run([fen]).match(/^Bare fianchetto of .*$/m)?.[0];

test('where it holds', () => {
  assert.match(entry(BARE), /^Bare fianchetto of Black, g7: \d+ cp for White$/);
  assert.equal(entry(swapped(BARE)), entry(BARE).replace('Black', 'White')
    .replace('g7', 'g2').replace(': ', ': -'));
  assert.equal(entry(leftRight(BARE)), entry(BARE).replace('g7', 'b7'));
  const [without, with_] = run([BARE]).match(/-?\d+ cp/g).slice(1).map(parseFloat);
  assert.equal(with_ - without, parseFloat(entry(BARE).match(/: (\d+)/)[1]));
});

test('where it just does not', () => {
  for (const [why, fen] of [
    ['the bishop is there', BARE.replace('2np1np1', '2nbbnp1')],
    ['the pawn is at home', BARE.replace('ppp2p1p', 'ppp2ppp')
      .replace('2np1np1', '2np1n2')],
    ['the pawn has gone two steps', BARE.replace('2np1np1', '2np1n2')
      .replace('/4p3/', '/4p1p1/')],
    ['the king is elsewhere', BARE.replace('r2q1rk1', 'r2qkr2')],
    ['White has no such bishop', BARE.replace('PPPBQPPP', 'PPPNQPPP')],
    ['White has no queen', BARE.replace('PPPBQPPP', 'PPPBRPPP')],
  ]) {
    assert.equal(entry(fen), undefined, why);
  }
});

test('costed beside the catalogue', () => {
  const costs = JSON.parse(run(['costs', '--json', '-']));
  const own = costs.terms.filter((term) => term.theme === null);
  assert.deepEqual(own.map((term) => term.name), ['bare_fianchetto']);
  assert.ok(own[0].nsPerPosition > 0);
  assert.ok(costs.terms.some((term) => term.name === 'bishop_pair'));
  assert.ok(costs.themes.every((theme) => theme.name !== null));
});

test('valued on results', () => {
  // Whoever has a bare fianchetto loses two games of three; other games are
  // drawn. The term helps to foretell that, and hurts with the results turned.
  const lines = (turned) => {
    const rows = [];
    for (let game = 0; game < 60; game += 1) {
      for (const [fen, good] of [[BARE, 1], [swapped(BARE), 0],
        [BARE.replace('2np1np1', '2np1n2').replace('ppp2p1p', 'ppp2ppp'), 0.5]]) {
        const unlucky = game % 3 === 0 ? 1 - good : good;
        rows.push(`${fen}\t${turned ? 1 - unlucky : unlucky}\tgame ${game}`);
      }
    }
    return `${rows.join('\n')}\n`;
  };
  const worth = (turned) => {
    const found = JSON.parse(run(['worth', '--json', '-'], lines(turned)));
    assert.equal(found.games, 60);
    assert.equal(found.positions, 180);
    const term = found.terms.find(({name}) => name === 'bare_fianchetto');
    assert.ok(Math.abs(term.fires - 2 / 3) < 1e-4);
    assert.ok(term.lossLeftOutLow <= term.lossLeftOut &&
      term.lossLeftOut <= term.lossLeftOutHigh);
    return term.lossLeftOut;
  };
  assert.ok(worth(false) > 0);
  assert.ok(worth(true) <= 0);
});

test('a project of its own', () => {
  const folder = mkdtempSync(join(tmpdir(), 'term-'));
  after(() => rmSync(folder, {recursive: true}));
  const cmake = (...words) => {
    const ran = spawnSync('cmake', words, {encoding: 'utf8'});
    assert.equal(ran.status, 0, `${ran.stderr}${ran.stdout}`.slice(0, 3000));
  };
  cmake('-G', 'Ninja', '-S', EXAMPLE, '-B', folder,
    '-DCMAKE_BUILD_TYPE=Release');
  // What would be built: every target and file that it needs is there.
  cmake('--build', folder, '--target', 'own_term', '--', '-n');
});
