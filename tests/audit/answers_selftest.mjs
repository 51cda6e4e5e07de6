// Tests of the audit of moves, comparisons and what-ifs: right answers, kept in
// cases/answers.json, pass; each planted error is found.
//
//   node --test tests/audit/answers_selftest.mjs

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { Chess } from 'chess.js';
import { checkCompare, checkMove, checkWhatIf, withoutSquare }
  from './lib/answers.mjs';
import { numbersIn, squaresIn } from './lib/said.mjs';

const kept = JSON.parse(readFileSync(
  new URL('./cases/answers.json', import.meta.url), 'utf8'));
const scoreOf = (fen) => kept.scores[fen];
const materialOf = (fen) => kept.material[fen];
const audits = {
  move: (q, a) => checkMove(q, a, scoreOf),
  proved: (q, a) => checkMove(q, a, scoreOf),
  compare: (q, a) => checkCompare(q, a),
  whatIf: (q, a) => checkWhatIf(q, a, scoreOf, materialOf),
};

for (const [name, audit] of Object.entries(audits)) {
  test(`the right answer of ${name} passes`, () => {
    const { question, answer } = kept[name];
    assert.deepEqual(audit(question, answer), []);
  });
}

const uncounted = (list) => list.find((each) => !each.term);
const text = (list, pattern) => list.find((each) => pattern.test(each.text));

// [of which answer, what is done to it, what must be said]
const damages = [
  ['move', (a) => { a.gains[0].changeCp += 1; }, /changes add up/],
  ['move', (a) => { a.scoreAfterCp += 1; }, /score_after_cp/],
  ['move', (a) => { a.scoreBeforeCp -= 3; }, /score_before_cp/],
  ['move', (a) => { a.fenAfter = a.fenAfter.replace(' w ', ' b '); }, /after the move it is/],
  ['move', (a) => { a.san = 'Bf6'; }, /not Bxd4|is not/],
  ['move', (a) => { a.san = 'Bxa4'; }, /not a legal move/],
  ['move', (a) => { a.claims[0].count = 77; }, /claims\[0\]/],
  ['move', (a) => { a.gains[0].claims = [9999]; }, /points outside/],
  ['move', (a) => { a.gains[0].claims = []; }, /has no claim/],
  ['move', (a) => { a.summaryClaims = []; }, /summary has no claim/],
  ['move', (a) => { a.summary += ' Beware of h1.'; }, /names h1/],
  ['move', (a) => { a.concessions = []; }, /nothing is given up/],
  ['move', (a) => { a.gains.push({ ...a.concessions[0] }); }, /is worth/],
  ['move', (a) => { uncounted(a.concessions).changeCp = -4; }, /is worth -4/],
  ['move', (a) => { a.gains[0].side = undefined; }, /of no side/],
  ['move', (a) => {
    const each = text([...a.gains, ...a.concessions], /^(White|Black)/);
    each.side = each.side === 'SIDE_WHITE' ? 'SIDE_BLACK' : 'SIDE_WHITE';
  }, /is SIDE_\w+'s/],
  ['move', (a) => { a.settled.line[1] = 'Qxe4'; }, /not a legal move/],
  ['move', (a) => { a.settled.scoreCp += 5; }, /settled/],
  ['move', (a) => { a.settled.concessions[0].text += ' It has nine lives.'; },
    /says 9/],
  ['move', (a) => {
    const each = text(a.settled.concessions, / misses a guard of /);
    each.text = each.text.replace(/f6/, 'h7');
  }, /is not so of h7|names h7/],
  ['proved', (a) => {
    const each = uncounted(a.concessions);
    each.text = 'The knight no longer guards f5.';
  }, /is not so of f5/],
  ['proved', (a) => {
    const each = uncounted(a.concessions);
    each.text = 'The knight now guards e1.';
  }, /is not so of e1/],
  ['proved', (a) => { a.proof.line[0] = 'Ne5'; }, /does not begin|not a legal/],
  ['compare', (a) => { a.byTerm[0].valueCp[1] += 1; }, /is worth/],
  ['compare', (a) => { a.byTerm.pop(); }, /by_term lacks/],
  ['compare', (a) => { a.explanations.pop(); }, /explanations of 3/],
  ['compare', (a) => { a.explanations.reverse(); }, /is of/],
  ['compare', (a) => { a.decides = ''; }, /decides is empty/],
  ['compare', (a) => { a.decides += ' Mind h8.'; }, /names h8/],
  ['compare', (a) => { a.claims[0].count = 55; }, /claims\[0\]/],
  ['compare', (a) => { a.claimsOfOthers[0].claims[0].kind = 'CLAIM_KIND_IN_CHECK'; },
    /claims_of_others\[0\]/],
  ['compare', (a) => { a.explanations[0].scoreCp += 2; }, /adds up to/],
  ['whatIf', (a) => { a.changes[0].changeCp += 2; }, /changes add up/],
  ['whatIf', (a) => { a.changes.reverse(); }, /out of order/],
  ['whatIf', (a) => { a.fenAfter = a.fenAfter.replace('p', 'n'); }, /the edits do not lead/],
  ['whatIf', (a) => { a.attributions[0].beyondMaterialCp += 1; }, /adds/],
  ['whatIf', (a) => { a.attributions[0].square = 'e1'; }, /attribution of e1/],
  ['whatIf', (a) => { a.claims[0].count = 44; }, /claims\[0\]/],
  ['whatIf', (a) => { a.claimsBefore[0].count = 44; }, /claims_before\[0\]/],
  ['whatIf', (a) => { a.summary = a.summary.replace(/\d+\.\d\d better/, '9.99 better'); },
    /the summary says/],
  ['whatIf', (a) => { a.summary += ' 3.33 more.'; }, /says 3\.33/],
  ['whatIf', (a) => { a.scoreAfterCp += 1; }, /score_after_cp|add up/],
];

for (const [name, damage, expected] of damages) {
  test(`${name}: ${damage} is found`, () => {
    const { question, answer } = structuredClone(kept[name]);
    damage(answer);
    const found = audits[name](question, answer);
    assert.ok(found.some((why) => expected.test(why)), found.join('\n') || 'nothing');
  });
}

test('another move than was asked for is found', () => {
  const { question, answer } = structuredClone(kept.proved);
  question.move = 'Ne5';
  assert.match(checkMove(question, answer).join('\n'), /is not Ne5/);
});

test('squares and numbers are read out of sentences', () => {
  assert.deepEqual(squaresIn('12. Nf3 guards e5 and d4 (8x8), not f33.'), ['e5', 'd4']);
  assert.deepEqual(numbersIn('12. Nf3 has two squares, 11 in all; 0.31 better'),
    [2, 11]);
});

test('a board without a square is what chess.js makes of it', () => {
  const fen = 'r3k2r/pp1bppbp/2np2p1/8/3NP3/2N1B3/PPP1BPPP/R3K2R w KQkq - 0 9';
  for (const [square, rights] of [['a1', 'Kkq'], ['h8', 'KQq'], ['d4', 'KQkq']]) {
    const game = new Chess(fen);
    game.remove(square);
    const [board, , left] = withoutSquare(fen, square).split(' ');
    assert.equal(board, game.fen().split(' ')[0]);
    assert.equal(left, rights);
  }
});
