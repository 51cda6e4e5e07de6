// A value: how many pawns, for whom. The side has its pattern of the board and
// its name, so that no sign has to be turned about in the head.

import { el, svg } from '../dom.mjs';
import { label, pawns, sideName } from '../text/labels.mjs';

export const patch = (white) => svg('svg', { class: 'patch',
  viewBox: '0 0 40 40', 'aria-hidden': 'true', focusable: 'false' },
svg('use', { href: white ? '#few-dots' : '#one-cross' }));

export function amountText(centipawns) {
  return centipawns === 0 ? label('amount.even')
    : label('amount.for',
      { pawns: pawns(centipawns), side: sideName(centipawns > 0) });
}

export function amount(centipawns) {
  if (centipawns === 0) {
    return el('span', { class: 'amount' }, label('amount.even'));
  }
  return el('span', { class: 'amount' }, patch(centipawns > 0),
    el('span', { 'aria-hidden': 'true' }, pawns(centipawns)),
    el('span', { class: 'unseen' }, `${amountText(centipawns)}: `));
}

// "+0.43 pawns for White", or mate, of a Proof.
export function proofText(proof) {
  return proof.mateIn !== 0
    ? label('verdict.mate', { moves: Math.abs(proof.mateIn),
      side: sideName(proof.mateIn > 0) })
    : amountText(proof.scoreCp);
}
