// Candidates side by side: what decides between them, each one's verdict and
// first plan, and the terms in which they differ, most first, in words.

import { el, told } from '../dom.mjs';
import { label } from '../text/labels.mjs';
import { amount } from './amount.mjs';
import { figures } from './explanation.mjs';

function column(name, explanation) {
  const plan = explanation.plans[0];
  return el('li', { class: 'candidate-column' }, el('h4', {}, name),
    told('p', explanation.verdict.text), figures(explanation),
    plan && told('p', plan.text, { class: 'plan-text' }));
}

const spread = ({ valueCp }) => Math.max(...valueCp) - Math.min(...valueCp);

export function sideBySide(answer, names) {
  const differing = answer.byTerm.filter((row) => spread(row) > 0)
    .toSorted((a, b) => spread(b) - spread(a));
  return [
    told('p', answer.decides, { class: 'summary' }),
    el('ul', { class: 'columns' }, answer.explanations.map((explanation, i) =>
      column(names[i], explanation))),
    el('h4', {}, label('moves.compare.terms')),
    differing.length === 0
      ? el('p', { class: 'quiet' }, label('moves.compare.same'))
      : el('ul', { class: 'differences' }, differing.map(({ title, valueCp }) =>
        el('li', {}, told('span', title, { class: 'term' }),
          el('ul', {}, valueCp.map((value, i) => el('li', {},
            el('span', { class: 'of' }, names[i]), amount(value))))))),
  ];
}
