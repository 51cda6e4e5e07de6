// A whole explanation: verdict, reasons, plans, what tempts and what threatens.

import { el, told } from '../dom.mjs';
import { squaresFor } from '../board/marks.mjs';
import { label } from '../text/labels.mjs';
import { amountText, proofText } from './amount.mjs';
import { entryList, reasonList, textList } from './remarks.mjs';
import { race } from './race.mjs';
import { section } from './section.mjs';

const noSquares = { white: [], black: [] };

// The summary mostly begins with the verdict, which is then not said twice:
// [what is said large, what is said after it].
function verdictAndRest({ summary, verdict }) {
  const opening = verdict.text.replace(/\.$/, '');
  if (!summary.startsWith(opening)) return [verdict.text, summary];
  // Not at the dot of a move's number.
  const [first] = summary.match(/^.*?\D\.(?= )/s) ?? [summary];
  return [first, summary.slice(first.length).trim()];
}

export function figures({ scoreCp, proof }) {
  return el('p', { class: 'figures' },
    label('verdict.counted', { amount: amountText(scoreCp) }),
    proof && [' · ', label('verdict.proved', { amount: proofText(proof) })]);
}

export function verdict(explanation) {
  const [first, rest] = verdictAndRest(explanation);
  return el('div', { class: 'verdict' },
    told('p', first, { class: 'verdict-text' }),
    rest && told('p', rest, { class: 'summary' }));
}

// Squares of a line's moves are not given; a threat shows what it says.
const threatSquares = ({ side, text }) =>
  squaresFor(side, [...new Set(text.split(':')[0].match(/\b[a-h][1-8]\b/g))]);

export function explanation(answer) {
  const { ledger, structure } = answer;
  return [
    verdict(answer),
    answer.advice && told('p', answer.advice.text, { class: 'advice' }),
    figures(answer),
    section('explain.cautions', answer.cautions.length > 0 &&
      textList(answer.cautions, () => noSquares)),
    section('explain.reasons', answer.reasons.length > 0
      ? [reasonList(answer), el('p', { class: 'quiet hint' },
        `${label('explain.reasons.hint')} ${label('unit')}`)]
      : el('p', { class: 'quiet' }, label('explain.reasons.none'))),
    section('explain.plans', race(answer.plans, answer.sideToMove)),
    section('explain.temptations', answer.temptations.length > 0 &&
      textList(answer.temptations, () => noSquares)),
    section('explain.threats', answer.threats.length > 0 &&
      textList(answer.threats, threatSquares)),
    section('explain.structure', structure?.notes.length > 0 &&
      el('ul', { class: 'remarks' }, structure.notes.map((note) =>
        el('li', {}, told('div', note, { class: 'remark' }))))),
    el('details', { class: 'part' }, el('summary', {}, label('explain.all',
      { count: ledger.length })), entryList(ledger)),
  ];
}
