// What an editing hand holds: itself, an eraser, or one of the twelve men.

import { el } from '../dom.mjs';
import { label } from '../text/labels.mjs';
import { pieceName } from './board.mjs';
import { drawing, pieceId } from './shapes.mjs';

let made = 0;

export class Palette {
  constructor(first = 'hand') {
    made += 1;
    this.name = `palette-${made}`;
    this.element = el('fieldset', { class: 'palette' });
    this.first = first;
    this.relabel();
  }

  tool() {
    return this.element.querySelector('input:checked').value;
  }

  relabel() {
    const chosen = this.element.querySelector('input:checked')?.value ??
      this.first;
    const choice = (value, name, content) => el('label',
      { class: 'tool', title: name },
      el('input', { type: 'radio', name: this.name, value,
        checked: value === chosen, 'aria-label': name }), content);
    const words = (value, key) => choice(value, label(key),
      el('span', {}, label(key)));
    const man = (letter) => choice(letter, pieceName(letter),
      drawing([pieceId(letter)]));
    this.element.replaceChildren(el('legend', {}, label('palette')),
      el('div', { class: 'tools' }, words('hand', 'palette.hand'),
        words('off', 'palette.off')),
      el('div', { class: 'tools men' }, [...'KQRBNP'].map(man)),
      el('div', { class: 'tools men' }, [...'kqrbnp'].map(man)));
  }
}
