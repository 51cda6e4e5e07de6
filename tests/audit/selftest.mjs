// Tests of the auditor itself.
//
//   node tests/audit/selftest.mjs      (or node --test tests/audit/selftest.mjs)
//
// Three kinds: hand-made cases under cases/ with the answer that TERMS.md
// gives; the auditor's own board scanning against chess.js on a seeded sample;
// and the command-line tools run on explanations made here, right and wrong.

import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';

import { cases as endings } from './cases/endings.mjs';
import { cases as filesAndCentre } from './cases/files_centre.mjs';
import { cases as king } from './cases/king.mjs';
import { cases as pawns } from './cases/pawns.mjs';
import { cases as pieces } from './cases/pieces.mjs';
import { damages as planDamages, planned } from './cases/plans.mjs';
import { cases as structures } from './cases/structures.mjs';
import { cases as activity } from './cases/activity.mjs';
import { cases as textbook } from './cases/textbook.mjs';
import { Audit } from './lib/auditing.mjs';
import { nameOf, parseFen, sideOf, kindOf } from './lib/board.mjs';
import { attackersOf } from './lib/attacks.mjs';
import { exchangeValue } from './lib/exchange.mjs';
import { legalMoves } from './lib/legal.mjs';
import { mirrorClaim, mirrorFen } from './lib/mirror.mjs';
import {
  chessAttackers, chessExchange, chessMoves, namedMoves,
} from './lib/peers.mjs';
import {
  Auditor, ENUMERABLE, KINDS, keyOf,
} from './lib/registry.mjs';
import { positions } from './lib/sample.mjs';
import { checkLedgerGains } from './lib/plans.mjs';
import { explain } from './lib/specimen.mjs';
import { structureName } from './lib/structures.mjs';

const cases = [
  ...pawns, ...filesAndCentre, ...structures, ...pieces, ...king, ...activity,
  ...endings, ...textbook,
];

for (const { name, fen, claim, expected } of cases) {
  test(name, () => {
    const why = new Auditor(fen).verify(claim);
    assert.equal(why === null, expected, String(why));
  });
}

test('every kind has a case that holds and one that does not', () => {
  for (const kind of Object.keys(KINDS)) {
    const own = cases.filter((each) => each.kind === kind);
    assert.ok(own.some((each) => each.expected), `${kind} holds nowhere`);
    assert.ok(own.some((each) => !each.expected), `${kind} never fails`);
  }
});

const sample = [...positions(600, 7)];

test('the same legal moves as chess.js', () => {
  for (const fen of sample) {
    assert.deepEqual(namedMoves(legalMoves(parseFen(fen))), chessMoves(fen), fen);
  }
});

test('the same attackers as chess.js', () => {
  for (const fen of sample.slice(0, 200)) {
    const { board } = parseFen(fen);
    for (let square = 0; square < 64; square += 1) {
      for (const side of [1, -1]) {
        const own = attackersOf(board, square, side).map(nameOf).sort();
        assert.deepEqual(own, chessAttackers(fen, square, side), fen);
      }
    }
  }
});

test('the same exchange values as plain recursion in chess.js', () => {
  let asked = 0;
  let hanging = 0;
  for (const fen of sample) {
    const position = parseFen(fen);
    for (const [square, piece] of position.board.entries()) {
      if (piece === 0 || kindOf(piece) === 6) continue;
      const attackers = attackersOf(position.board, square, -sideOf(piece));
      // Long exchanges take chess.js too long.
      if (attackers.length === 0 || attackers.length > 4) continue;
      const wanted = chessExchange(position, square);
      if (wanted === undefined) continue;
      asked += 1;
      if (wanted > 0) hanging += 1;
      assert.equal(exchangeValue(position.board, square), wanted,
        `${nameOf(square)} in ${fen}`);
    }
  }
  assert.ok(asked > 500 && hanging > 100, `${asked} asked, ${hanging} hanging`);
});

test('claims change over with the colours', () => {
  for (const fen of sample) {
    const here = new Auditor(fen);
    const there = new Auditor(mirrorFen(fen));
    for (const kind of ENUMERABLE) {
      const turned = [...here.list(kind).values()].map(
        (claim) => keyOf(kind, mirrorClaim(kind, claim)));
      assert.deepEqual(
        turned.sort(), [...there.list(kind).keys()].sort(), `${kind} in ${fen}`);
    }
  }
});

const run = (tool, items, ...options) => spawnSync(
  process.execPath,
  [fileURLToPath(new URL(tool, import.meta.url)), ...options],
  {
    input: items.map((item) => JSON.stringify(item)).join('\n'),
    encoding: 'utf8',
  });

const specimens = () => [
  ...sample.slice(0, 60).map((fen) => ({ explanation: explain(fen) })),
  { error: 'not a position' },
];

test('audit.mjs finds nothing in right explanations', () => {
  const { status, stdout } = run('audit.mjs', specimens(), '--complete');
  assert.equal(status, 0, stdout);
  assert.match(stdout, /60 positions, \d+ plans, 1 errors, 0 differences/);
});

// [what is done to an explanation, what must be said about it]
const damages = [
  [(e) => e.claims.pop(), /missing/],
  [(e) => { e.claims[0].count = 77; }, /not among the/],
  [(e) => { e.claims[0].kind = 'CLAIM_KIND_NONSENSE'; }, /unknown kind/],
  [(e) => { e.scoreCp += 1; }, /adds up to/],
  [(e) => { e.ledger[0].claims = [9999]; }, /points outside/],
  [(e) => { e.reasons[0].claims = []; }, /reasons\[0\] has no claim/],
  [(e) => { e.reasons[0].entries = [9]; }, /outside the ledger/],
  [(e) => { e.reasons[0].valueCp += 1; }, /its entries add up/],
  [(e) => { e.verdict.claims = []; }, /verdict has no claim/],
  [(e) => { e.summaryClaims = []; }, /summary has no claim/],
  [(e) => { e.sideToMove = 'SIDE_BLACK'; }, /side to move/],
  [(e) => { e.structure.centre = 'CENTRE_CLOSED'; }, /structure says/],
  [(e) => { e.structure.name = 'hedgehog (White)'; }, /structure is called/],
  [(e) => { e.structure.name = ''; }, /structure is called/],
  [(e) => { e.structure.claims = []; }, /structure has no claim/],
  [(e) => {
    e.claims.find((c) => c.kind === 'CLAIM_KIND_STRUCTURE').count += 1;
  }, /not among the/],
  [(e) => { e.plans = [{ steps: [{ claims: [9999] }] }]; }, /plans\[0\]\.steps/],
];

for (const [damage, expected] of damages) {
  test(`audit.mjs reports ${expected}`, () => {
    const explanation = explain(sample.find((fen) => fen.includes(' w ') &&
      structureName(parseFen(fen)).name));
    damage(explanation);
    const { status, stdout } = run('audit.mjs', [{ explanation }], '--complete');
    assert.equal(status, 1);
    assert.match(stdout, expected);
  });
}

test('audit.mjs finds nothing in right plans', () => {
  const { status, stdout } = run('audit.mjs', [{ explanation: planned() }]);
  assert.equal(status, 0, stdout);
  assert.match(stdout, /1 positions, 4 plans, 0 errors, 0 differences/);
});

for (const [name, damage, expected] of planDamages) {
  test(`a plan with an error is told: ${name}`, () => {
    const explanation = planned();
    damage(explanation);
    const found = new Audit().explanation(explanation).map(({ why }) => why);
    assert.ok(found.some((why) => expected.test(why)), found.join('; '));
  });
}

// Scores made up for the ends of two lines, the same side to move as at first.
const ends = new Map([
  ['r1bq1rk1/p4ppp/1pn1pn2/2ppN3/3P1B2/2PBP1Q1/P1P2PPP/R4RK1 w', 75],
  ['r1bq1rk1/p4ppp/1p2pn2/2pp4/2nP1B2/2PBPN2/P1P2PPP/R2Q1RK1 w', -25],
]);
const scoreOf = (fen) => ends.get(fen.split(' ').slice(0, 2).join(' '));

test('gains are the change of the score, in the view of the plan\'s side', () => {
  const explanation = planned();
  explanation.plans = explanation.plans.slice(0, 2);
  assert.equal(explanation.scoreCp, 25);
  const gains = () => checkLedgerGains(
    explanation, new Auditor(explanation.fen), scoreOf);
  assert.deepEqual(gains(), []);
  explanation.plans[1].ifIgnored.gainCp = -50;
  assert.match(gains().join(), /^plans\[1\].*changes by 50$/);
  explanation.plans[0].ifIgnored.gainCp = 100;
  assert.equal(gains().length, 2);
});

test('mutate.mjs has every change refused', () => {
  const withLines = cases
    .filter((each) => each.expected && !KINDS[each.kind].enumerate)
    .map(({ fen, claim }) => ({ explanation: { fen, claims: [claim] } }));
  const { status, stdout } = run('mutate.mjs', [...specimens(), ...withLines]);
  assert.equal(status, 0, stdout);
  assert.match(stdout, / 0 accepted, 0 kinds without a change/);
});
