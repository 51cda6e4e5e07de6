// A position set up by hand: any men on any squares, whose move it is, who may
// still castle. Whether it is a position of a game, the service says.

import { button, el } from '../dom.mjs';
import { EditingHands } from '../board/hands.mjs';
import { Palette } from '../board/palette.mjs';
import { clearMarks } from '../board/marks.mjs';
import { fromFen } from '../chess/lesson.mjs';
import { edited, initialFen, placementOf, placementText, whiteToMove }
  from '../chess/placement.mjs';
import { state } from '../state.mjs';
import { label, sideName } from '../text/labels.mjs';

// Where king and rook stand while a right to castle can still be there.
const homes = { K: ['e1', 'h1', 'K', 'R'], Q: ['e1', 'a1', 'K', 'R'],
  k: ['e8', 'h8', 'k', 'r'], q: ['e8', 'a8', 'k', 'r'] };

export class SetUp {
  constructor(page) {
    this.page = page;
    this.element = el('section', { class: 'part', 'aria-labelledby': 'set-up' });
    this.palette = new Palette('P');
    this.placement = null; // while setting up
  }

  relabel() {
    this.palette.relabel();
    this.#draw();
  }

  #draw() {
    const heading = el('h3', { id: 'set-up' }, label('setup'));
    if (!this.placement) {
      this.element.replaceChildren(heading,
        button(label('setup.begin'), () => this.#begin()));
      return;
    }
    const put = (placement) => () => {
      this.placement = placement;
      this.page.board.show({ placement });
    };
    this.turn = el('select', { id: 'set-up-turn' }, [true, false].map((white) =>
      el('option', { value: white ? 'w' : 'b' }, sideName(white))));
    this.turn.value = whiteToMove(state.fen) ? 'w' : 'b';
    const rights = state.fen.split(' ')[2] ?? '-';
    this.castling = Object.keys(homes).map((letter) => el('input',
      { type: 'checkbox', value: letter, checked: rights.includes(letter) }));
    this.element.replaceChildren(heading,
      el('p', { class: 'quiet hint' }, label('setup.hint')),
      this.palette.element,
      el('div', { class: 'row' },
        button(label('setup.clear'), put(new Map())),
        button(label('setup.initial'), put(placementOf(initialFen)))),
      el('div', { class: 'field' },
        el('label', { for: 'set-up-turn' }, label('setup.turn')), this.turn),
      el('fieldset', { class: 'checks' },
        el('legend', {}, label('setup.castling')),
        this.castling.map((box) => el('label', {}, box,
          el('span', {}, label(`setup.${box.value}`))))),
      el('div', { class: 'row' },
        button(label('setup.use'), () => this.#use(), { class: 'main' }),
        button(label('setup.leave'), () => this.leave())));
  }

  #begin() {
    clearMarks();
    this.placement = placementOf(state.fen);
    this.hands = new EditingHands({ palette: this.palette,
      stands: (square) => this.placement.has(square),
      show: (view) => this.page.board.show(view),
      edit: (edit) => {
        this.placement = edited(this.placement, edit);
        this.page.board.show({ placement: this.placement });
      } });
    this.#draw();
    this.palette.element.querySelector('input:checked').focus();
  }

  #fen() {
    const rights = this.castling.filter((box) => {
      const [king, rook, kingLetter, rookLetter] = homes[box.value];
      return box.checked && this.placement.get(king) === kingLetter &&
        this.placement.get(rook) === rookLetter;
    }).map((box) => box.value).join('') || '-';
    return `${placementText(this.placement)} ${this.turn.value} ${rights} - 0 1`;
  }

  #use() {
    const fen = this.#fen();
    this.leave();
    state.open(fromFen(fen));
    this.page.openPanel('explain');
  }

  leave() {
    if (!this.placement) return;
    this.hands.leave();
    this.placement = null;
    this.hands = null;
    this.#draw();
    this.page.showPosition();
  }
}
