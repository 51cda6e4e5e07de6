// A move explained: what it gains and what it gives up.

import { el, told } from '../dom.mjs';
import { squaresFor } from '../board/marks.mjs';
import { label } from '../text/labels.mjs';
import { amountText, proofText } from './amount.mjs';
import { planList } from './race.mjs';
import { changeList, textList } from './remarks.mjs';
import { section } from './section.mjs';

export function moveExplanation(move, white) {
  const fear = move.replyToFear;
  const settled = move.settled;
  return [
    told('p', move.summary, { class: 'summary' }),
    el('p', { class: 'figures' }, label('moves.before.after', {
      before: amountText(move.scoreBeforeCp),
      after: amountText(move.scoreAfterCp) }),
    settled && [' · ', label('moves.settled', { line: settled.line.join(' '),
      amount: amountText(settled.scoreCp) })],
    move.proof && [' · ', label('verdict.proved',
      { amount: proofText(move.proof) })]),
    section('moves.gains', move.gains.length > 0 &&
      changeList(move.gains, white)),
    section('moves.gives', changeList(move.concessions, !white)),
    section('moves.fear', fear &&
      textList([fear], () => squaresFor(fear.side, []))),
    section('moves.starts', move.starts.length > 0 && planList(move.starts)),
    section('moves.stops', move.stops.length > 0 && planList(move.stops)),
    section('moves.allows', move.allows.length > 0 && planList(move.allows)),
  ].filter(Boolean);
}
