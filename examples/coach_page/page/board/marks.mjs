// Which squares are marked: those of what is pointed at or has the focus, else
// those of what was pressed to be kept. `show({white, black})` draws them.

import { button, el } from '../dom.mjs';
import { label } from '../text/labels.mjs';

const none = { white: [], black: [] };

let show = () => {};
let kept = null; // {control, squares}

export function marksGoTo(draw) {
  show = draw;
}

const showKept = () => show(kept?.squares ?? none);

export function clearMarks() {
  kept?.control.setAttribute('aria-pressed', 'false');
  kept = null;
  showKept();
}

function keep(control, squares) {
  const again = kept?.control === control;
  clearMarks();
  if (again) return;
  control.setAttribute('aria-pressed', 'true');
  kept = { control, squares };
  showKept();
}

export function squaresText({ white, black }) {
  return [white.length > 0 && label('marks.white',
    { squares: white.join(', ') }),
  black.length > 0 && label('marks.black', { squares: black.join(', ') })]
    .filter(Boolean).join(' ');
}

// A text with squares on the board. Without any it is no control.
export function markable(squares, content, properties = {}) {
  if (squares.white.length + squares.black.length === 0) {
    return el('div', { ...properties, class: `remark ${properties.class ?? ''}` },
      content);
  }
  const control = button([content,
    el('span', { class: 'unseen' }, ` ${squaresText(squares)}`)],
  () => keep(control, squares), { ...properties,
    class: `remark marks ${properties.class ?? ''}`, 'aria-pressed': 'false',
    onpointerenter: () => show(squares), onpointerleave: showKept,
    onfocus: () => show(squares), onblur: showKept });
  return control;
}

// The squares of things with a value for White, such as entries of the ledger:
// dotted where they count for White, crossed where for Black.
export function squaresByValue(items, valueOf) {
  const of = (wanted) => [...new Set(items.filter(wanted)
    .flatMap((item) => item.squares))];
  return { white: of((item) => valueOf(item) > 0),
    black: of((item) => valueOf(item) < 0) };
}

export const squaresFor = (side, squares) => (side === 'SIDE_WHITE'
  ? { white: squares, black: [] } : { white: [], black: squares });
