// Plans of both sides as a race: a box a move, on one axis of own moves. The
// side to move is half a box ahead, as it is on the board. White's boxes are
// whole, Black's dashed; the goal has a thick end; the other side's best answer
// stands below, in that side's manner.

import { el, told } from '../dom.mjs';
import { markable, squaresFor } from '../board/marks.mjs';
import { label, sideName } from '../text/labels.mjs';
import { patch } from './amount.mjs';

const fewestColumns = 3;
const isWhite = ({ side }) => side === 'SIDE_WHITE';
const named = (white, san) => (white ? san : `...${san}`);

function standingText(plan) {
  const standing = plan.standing.replace('STANDING_', '').toLowerCase();
  return standing === 'needs'
    ? label('race.needs', { needs: plan.needs || label('race.needs.something') })
    : label(`race.${standing}`);
}

// The boxes of one side's moves; halves of a box are the grid's columns.
function boxes(steps, white, ahead, kind) {
  return el('ol', { class: `track ${kind} ${white ? 'white' : 'black'}` },
    steps.map((step, i) => {
      const last = i + 1 === steps.length;
      const box = el('li', { class: last ? 'box goal' : 'box' },
        named(white, step.san));
      box.style.gridColumn = `${2 * i + (ahead ? 1 : 2)} / span 2`;
      return box;
    }));
}

function lane(plan, toMove) {
  const white = isWhite(plan);
  const ahead = plan.side === toMove;
  const squares = [...new Set([...plan.targets,
    ...plan.steps.flatMap(({ from, to }) => [from, to])])];
  const standing = plan.standing.replace('STANDING_', '').toLowerCase();
  const answer = plan.counter?.steps ?? [];
  return el('li', { class: `lane ${white ? 'white' : 'black'} ${standing}`,
    'data-kind': plan.kind },
  markable(squaresFor(plan.side, squares), [
    told('span', plan.title, { class: 'plan-title' }),
    el('span', { class: 'standing' }, standingText(plan))]),
  boxes(plan.steps, white, ahead, 'steps'),
  answer.length > 0 && el('div', { class: 'answer' },
    el('span', { class: 'answer-name' }, label('race.stop')),
    boxes(answer, !white, !ahead, 'stops')),
  told('p', plan.text, { class: 'plan-text' }));
}

function lanes(plans, white, toMove) {
  const side = sideName(white);
  return el('div', { class: 'racer' },
    el('h4', {}, patch(white), label('race.of', { side })),
    plans.length > 0
      ? el('ul', {}, plans.map((plan) => lane(plan, toMove)))
      : el('p', { class: 'quiet' }, label('race.none', { side })));
}

export function race(plans, toMove) {
  if (plans.length === 0) {
    return el('p', { class: 'quiet' }, label('explain.plans.none'));
  }
  const columns = Math.max(fewestColumns, ...plans.flatMap((plan) =>
    [plan.steps.length, plan.counter?.steps.length ?? 0]));
  const axis = el('div', { class: 'axis', 'aria-hidden': 'true' },
    el('span', { class: 'axis-name' }, label('race.axis')),
    Array.from({ length: columns }, (_, i) => {
      const number = el('span', { class: 'tempo' }, i + 1);
      number.style.gridColumn = `${2 * i + 1} / span 2`;
      return number;
    }));
  const whiteFirst = toMove === 'SIDE_WHITE';
  const whites = plans.filter(isWhite);
  const blacks = plans.filter((plan) => !isWhite(plan));
  const all = el('div', { class: 'race' }, axis,
    lanes(whiteFirst ? whites : blacks, whiteFirst, toMove),
    lanes(whiteFirst ? blacks : whites, !whiteFirst, toMove),
    el('p', { class: 'quiet hint' }, label('race.hint')));
  all.style.setProperty('--halves', 2 * columns + 1);
  return all;
}

export const planList = (plans) => el('ul', { class: 'remarks' },
  plans.map((plan) => el('li', {}, markable(
    squaresFor(plan.side, plan.targets),
    told('span', plan.text, { class: 'says' })))));
