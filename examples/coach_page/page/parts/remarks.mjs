// Lists of sentences with values and squares: reasons, entries of the ledger,
// changes of it.

import { el, told } from '../dom.mjs';
import { markable, squaresByValue } from '../board/marks.mjs';
import { label } from '../text/labels.mjs';
import { amount } from './amount.mjs';

const list = (items, properties) => el('ul', { class: 'remarks', ...properties },
  items.map((item) => el('li', {}, item)));

// How much a value leans to a side, as a bar from the middle.
function lean(value, largest) {
  const bar = el('span', { class: `lean ${value > 0 ? 'white' : 'black'}`,
    'aria-hidden': 'true' });
  bar.style.setProperty('--share', Math.abs(value) / largest);
  return bar;
}

function remark(squares, value, text, largest) {
  return markable(squares, [value === null
    ? el('span', { class: 'amount none' }, label('moves.uncounted'))
    : amount(value), told('span', text, { class: 'says' }),
  largest && value ? lean(value, largest) : null]);
}

export function reasonList({ reasons, ledger }) {
  const largest = Math.max(...reasons.map(({ valueCp }) => Math.abs(valueCp)), 1);
  return list(reasons.map((reason) => remark(squaresByValue(
    reason.entries.map((entry) => ledger[entry]), ({ valueCp }) => valueCp),
  reason.valueCp, reason.text, largest)));
}

export function entryList(ledger) {
  const heaviest = ledger.toSorted((a, b) =>
    Math.abs(b.valueCp) - Math.abs(a.valueCp));
  return list(heaviest.map((entry) => remark(
    squaresByValue([entry], ({ valueCp }) => valueCp), entry.valueCp,
    entry.text)));
}

// `white`: for whom squares count that no term does.
export function changeList(changes, white) {
  const value = (change) => (change.term === '' ? (white ? 1 : -1)
    : change.changeCp);
  return list(changes.map((change) => remark(squaresByValue([change], value),
    change.term === '' ? null : change.changeCp, change.text)));
}

export const textList = (items, squaresOf) => list(items.map((item) =>
  markable(squaresOf(item), told('span', item.text, { class: 'says' }))));
