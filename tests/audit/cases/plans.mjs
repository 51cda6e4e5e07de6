// Plans as an explanation tells them, right in every field, and what happens to
// them: [name, what is done to the explanation, what must be said about it].

import { materialOf } from '../lib/words.mjs';
import { nameOf } from '../lib/board.mjs';
import { LinePlayer } from '../lib/play.mjs';
import { withPasses } from '../lib/plans.mjs';
import { explain } from '../lib/specimen.mjs';

const FEN =
  'r1bq1rk1/p4ppp/1pn1pn2/2pp4/3P1B2/2PBPN2/P1P2PPP/R2Q1RK1 w - - 0 10';

const SIDES = { SIDE_WHITE: 1, SIDE_BLACK: -1 };

// Index of the claim that says what a line wins.
function lineClaim(explanation, side, line) {
  const { positions } = new LinePlayer(FEN).play(line);
  const [before] = positions;
  const after = positions[positions.length - 1];
  const count = materialOf(after.board, SIDES[side]) -
    materialOf(before.board, SIDES[side]);
  const claim = { kind: 'CLAIM_KIND_LINE', side, line };
  if (count) claim.count = count;
  return explanation.claims.push(claim) - 1;
}

function told(line) {
  return new LinePlayer(FEN).play(line).steps.filter((step) => step !== null)
    .map(({ san, from, to }) => ({ san, from: nameOf(from), to: nameOf(to) }));
}

// `routes`: by step. `answer`: the counter's line from the position.
function addPlan(explanation, side, sans, {
  routes = [], answer = null, answered = 1, ...fields
}) {
  const line = withPasses(1, SIDES[side], sans);
  const index = lineClaim(explanation, side, line);
  const plan = {
    side,
    kind: 'regroup',
    title: `the piece to ${line[line.length - 1].slice(-2)}`,
    text: `It goes ${sans.join(' and ')}.`,
    steps: told(line).map((step, i) => ({
      ...step,
      ...(routes[i] ? { route: routes[i] } : {}),
      purpose: `goes to ${step.to}`,
      claims: [index],
    })),
    tempi: sans.length,
    gainCp: 60,
    promiseCp: 10,
    standing: 'STANDING_IN_TIME',
    targets: ['e5'],
    ifIgnored: { line, gainCp: 50, text: `${line.join(' ')}.`, claims: [index] },
    claims: [index],
    ...fields,
  };
  if (answer) {
    const claim = lineClaim(explanation, side, answer);
    const moves = told(answer).slice(-answered);
    plan.counter = {
      steps: moves,
      tempi: moves.length,
      text: `It is answered by ${moves[0].san}.`,
      claims: [claim],
    };
  }
  explanation.plans.push(plan);
}

export function planned() {
  const explanation = { ...explain(FEN), plans: [] };
  const queen = ['d1', 'f3', 'g3'];
  addPlan(explanation, 'SIDE_WHITE', ['Ne5', 'Qf3', 'Qg3'], {
    kind: 'king_attack', routes: [null, queen, queen], answer: ['Ne5', 'Nxe5'],
  });
  const knight = ['c6', 'a5', 'c4'];
  addPlan(explanation, 'SIDE_BLACK', ['Na5', 'Nc4'], {
    routes: [knight, knight], answer: ['Ne5'], standing: 'STANDING_STOPPED',
  });
  addPlan(explanation, 'SIDE_BLACK', ['e5'], {
    kind: 'lever', standing: 'STANDING_NEEDS', needs: '...Re8 first',
  });
  explanation.plans[2].claims.push(
    lineClaim(explanation, 'SIDE_BLACK', ['--', 'Re8']));
  // After a waiting move and the first step, where the opponent is to move.
  addPlan(explanation, 'SIDE_BLACK', ['Bb7', 'Rc8'], {
    kind: 'develop', answer: ['--', 'Bb7', 'dxc5'],
  });
  explanation.advice = { san: 'Ne5', plan: 0, claims: [0], text: 'It goes.' };
  return explanation;
}

const step = (e, plan, i) => e.plans[plan].steps[i];

export const damages = [
  ['an illegal step', (e) => { step(e, 0, 1).san = 'Qf5'; }, /Qf5 is not a legal/],
  ['steps out of order', (e) => { e.plans[0].steps.reverse(); }, /not a legal move/],
  ['a check that is none', (e) => { step(e, 0, 0).san = 'Ne5+'; }, /in SAN Ne5/],
  ['needless disambiguation', (e) => { step(e, 0, 0).san = 'Nfe5'; },
    /not a legal move|in SAN Ne5/],
  ['a wrong from', (e) => { step(e, 1, 0).from = 'b8'; }, /goes from c6 to a5/],
  ['a wrong to', (e) => { step(e, 1, 1).to = 'c5'; }, /goes from a5 to c4/],
  ['no route', (e) => { delete step(e, 0, 2).route; }, /route is , its piece/],
  ['half a route', (e) => { step(e, 1, 0).route = ['c6', 'a5']; }, /its piece goes c6 a5 c4/],
  ['another route', (e) => { step(e, 1, 1).route = ['c6', 'e5', 'c4']; }, /its piece goes c6 a5 c4/],
  ['a route of a lone move', (e) => { step(e, 2, 0).route = ['e6', 'e5']; }, /its piece goes alone/],
  ['wrong tempi', (e) => { e.plans[1].tempi = 3; }, /tempi is 3/],
  ['a line without its pass', (e) => { e.plans[1].ifIgnored.line.shift(); },
    /not the steps with waiting/],
  ['a longer line', (e) => { e.plans[0].ifIgnored.line.push('--'); }, /not the steps with/],
  ['a wrong gain', (e) => { e.plans[0].gainCp = 61; }, /add up to 60/],
  ['a wrong promise', (e) => { e.plans[0].promiseCp = 9; }, /add up to 59/],
  ['an illegal counter', (e) => {
    e.plans[0].counter.steps[0].san = 'Nxd5';
  }, /no line among its claims/],
  ['a counter after something else', (e) => {
    const { counter } = e.plans[0];
    e.claims[counter.claims[0]].line = ['Qd2', 'Nxd4'];
    Object.assign(counter.steps[0], { san: 'Nxd4', from: 'c6', to: 'd4' });
    counter.text = 'd4.';
  }, /counter is played after Qd2/],
  ['a counter of the plan\'s own side', (e) => {
    const { counter } = e.plans[1];
    e.claims[counter.claims[0]].line = ['--', 'Ne7'];
    Object.assign(counter.steps[0], { san: 'Ne7', from: 'c6', to: 'e7' });
    counter.text = 'e7.';
  }, /counter is played after/],
  ['a counter from elsewhere', (e) => { e.plans[3].counter.steps[0].from = 'b4'; },
    /counter\.steps\[0\] goes from d4/],
  ['a counter in more moves', (e) => { e.plans[0].counter.tempi = 2; }, /counter\.tempi is 2/],
  ['a counter without moves', (e) => { e.plans[0].counter.steps = []; }, /counter has no steps/],
  ['a target off the board', (e) => { e.plans[0].targets = ['e9']; }, /targets are e9/],
  ['a target twice', (e) => { e.plans[0].targets = ['e5', 'e5']; }, /targets are e5,e5/],
  ['no side', (e) => { delete e.plans[0].side; }, /has no side/],
  ['no steps', (e) => { e.plans[0].steps = []; }, /has no steps/],
  ['an unknown kind', (e) => { e.plans[0].kind = 'attack'; }, /kind attack/],
  ['no standing', (e) => { delete e.plans[0].standing; }, /has no standing/],
  ['needs nothing', (e) => { delete e.plans[2].needs; }, /NEEDS and needs ""/],
  ['in time and needs', (e) => { e.plans[2].standing = 'STANDING_IN_TIME'; },
    /IN_TIME and needs/],
  ['stopped by nothing', (e) => { delete e.plans[1].counter; }, /stopped by nothing/],
  ['in time, and hangs a piece', (e) => {
    e.plans = [];
    addPlan(e, 'SIDE_WHITE', ['Bxh7+'], { title: 'an attack', kind: 'king_attack' });
    delete e.advice;
  }, /begins by losing 225/],
  ['a claim that is not there', (e) => { e.plans[1].claims = [9999]; }, /plans\[1\] points|points outside/],
  ['a text without claims', (e) => { e.plans[1].claims = []; }, /plans\[1\]\.text has no claim/],
  ['a purpose without claims', (e) => { step(e, 0, 0).claims = []; }, /purpose has no claim/],
  ['a square that no claim has', (e) => { e.plans[0].text += ' It eyes h8.'; },
    /text names h8/],
  ['such a square in a title', (e) => { e.plans[0].title = 'siege of b7'; }, /title names b7/],
  ['such a square in a counter', (e) => { e.plans[0].counter.text = 'a6.'; },
    /counter\.text names a6/],
  ['such a square in what is needed', (e) => { e.plans[2].needs = '...h6 first'; },
    /needs names h6/],
  ['such a square in a purpose', (e) => { step(e, 0, 0).purpose = 'to d7'; },
    /purpose names d7/],
  ['advice of another plan\'s move', (e) => { e.advice.plan = 3; }, /advice serves/],
  ['advice that is no first step', (e) => { e.advice.san = 'c4'; }, /advice serves/],
  ['advice that cannot be played', (e) => { e.advice = { san: 'Nxe5' }; },
    /advice: Nxe5 is not/],
];
