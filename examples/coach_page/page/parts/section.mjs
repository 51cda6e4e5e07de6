// A heading and what stands under it; nothing at all where there is nothing.

import { el } from '../dom.mjs';
import { label } from '../text/labels.mjs';

export const section = (key, ...content) => {
  const inside = content.flat().filter(Boolean);
  return inside.length === 0 ? null
    : el('section', { class: 'part' }, el('h3', {}, label(key)), inside);
};
