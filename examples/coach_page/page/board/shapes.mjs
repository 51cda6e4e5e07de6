// The drawings that squares are put together of, in squares of 40 units: the
// pieces and patterns of the lesson's handout, so that page and paper look
// alike. Squares that count for White are dotted, for Black crossed, and that
// tells them apart without their colours, too.

import { svg } from '../dom.mjs';

// A shape, and what is drawn on it in the other colour.
const pieces = {
  p: ['M20 8.5a5.8 5.8 0 0 1 3.7 10.2c2.4 1.8 3.6 5.6 4 10.3h3.3V33.5H9V29h3.3c.4-4.7 1.6-8.5 4-10.3A5.8 5.8 0 0 1 20 8.5z', ''],
  n: ['M14 5.5l3.5 3.8C25 9.3 31 15 31 23.5c0 2-.3 3.8-.8 5.5h2.3v4.5H9.5V29h2.7c.4-4.2 2.8-6.7 6-9.5-2.3.3-4 1.8-6 3.8L8 20l5.2-8z',
    'M16.5 13.6h.01M25 15.5c1.8 3 2.2 6.5 1.7 10'],
  b: ['M20 4.5a2.4 2.4 0 0 1 1.6 4.2c4.2 2.8 6.9 6.7 6.9 11 0 3.2-1.7 5.8-4.2 7.4V29h7.2v4.5H8.5V29h7.2v-1.9c-2.5-1.6-4.2-4.2-4.2-7.4 0-4.3 2.7-8.2 6.9-11A2.4 2.4 0 0 1 20 4.5z',
    'M20 14v9M15.8 18.3h8.4'],
  r: ['M9.5 7.5h5V11h3V7.5h5V11h3V7.5h5v9l-3 2.5 1 10h2.5v4.5H9V29h2.5l1-10-3-2.5z',
    'M13.5 18.7h13M12.5 27h15'],
  q: ['M7.5 10.5l6 7 2-10.5 4.5 9.5L24.5 7l2 10.5 6-7L29.5 29h2v4.5h-23V29h2z',
    'M12 25.5h16'],
  k: ['M18.2 4h3.6v3.5h3.4V11h-3.4v3.3c6.2-2.5 11.2.2 11.2 5.2 0 3.9-2.3 7-4.3 9.5h2.8v4.5h-23V29h2.8C9.3 26.5 7 23.4 7 19.5c0-5 5-7.7 11.2-5.2V11h-3.4V7.5h3.4z',
    'M20 18v8M13 26h14'],
};

function piece(letter, white) {
  const [body, detail] = pieces[letter];
  const name = white ? 'white' : 'black';
  return svg('g', { id: `${white ? 'w' : 'b'}${letter}` },
    svg('path', { d: body, class: `man ${name}` }),
    detail && svg('path', { d: detail, class: `detail ${name}` }));
}

// Slanting lines from the left and lower edge to the upper and right one.
function hatch() {
  let lines = '';
  for (let at = 5; at < 80; at += 7) {
    const over = Math.max(at - 40, 0);
    lines += `M${over} ${at - over}l${at - 2 * over} ${2 * over - at}`;
  }
  return svg('path', { id: 'hatch', d: lines, class: 'hatch' });
}

const framed = (id, path, frame) => svg('g', { id, class: id },
  svg('path', { d: path, class: 'sign' }),
  frame && svg('rect', { x: 1, y: 1, width: 38, height: 38, class: 'edge' }));

export function stencils() {
  const defs = svg('defs', {}, hatch(),
    framed('dots', 'M6 6h.01M20 6h.01M34 6h.01M6 20h.01M34 20h.01M6 34h.01M20 34h.01M34 34h.01', true),
    framed('crosses', 'M3 3l7 7m0-7l-7 7M30 3l7 7m0-7l-7 7M3 30l7 7m0-7l-7 7M30 30l7 7m0-7l-7 7', true),
    // The same as small signs beside a text.
    framed('few-dots', 'M12 12h.01M28 12h.01M12 28h.01M28 28h.01', true),
    framed('one-cross', 'M9 9l22 22m0-22l-22 22', true),
    // Where a picked-up piece may go, and where a tried move comes from and
    // goes to: ink alone, so that neither is taken for a side's mark.
    framed('reach', 'M20 20h.01', false),
    framed('tried', 'M2 12V2h10M28 2h10v10M38 28v10H28M12 38H2V28', false),
    Object.keys(pieces).flatMap((letter) =>
      [piece(letter, true), piece(letter, false)]));
  return svg('svg', { class: 'stencils', width: 0, height: 0,
    'aria-hidden': 'true', focusable: 'false' }, defs);
}

export const pieceId = (letter) => (letter === letter.toUpperCase()
  ? `w${letter.toLowerCase()}` : `b${letter}`);

// A drawing of stencils laid over each other.
export const drawing = (ids, properties = {}) =>
  svg('svg', { viewBox: '0 0 40 40', 'aria-hidden': 'true', focusable: 'false',
    ...properties }, ids.map((id) => svg('use', { href: `#${id}` })));
