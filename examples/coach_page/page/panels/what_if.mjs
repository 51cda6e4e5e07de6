// What if: edits of the board, and what in the ledger they change.

import { button, el, notation, told } from '../dom.mjs';
import { Question } from '../ask.mjs';
import { clearMarks, markable, squaresByValue } from '../board/marks.mjs';
import { EditingHands } from '../board/hands.mjs';
import { Palette } from '../board/palette.mjs';
import { pieceName } from '../board/board.mjs';
import { fromFen } from '../chess/lesson.mjs';
import { edited, placementOf } from '../chess/placement.mjs';
import { amount, amountText } from '../parts/amount.mjs';
import { Notice } from '../parts/notice.mjs';
import { changeList } from '../parts/remarks.mjs';
import { section } from '../parts/section.mjs';
import { announce, state } from '../state.mjs';
import { label } from '../text/labels.mjs';
import { Panel } from './panel.mjs';

const mostPieces = 12;

function editText(edit) {
  const [, from, to] = edit.match(/^([a-h]\d)-([a-h]\d)$/) ?? [];
  if (from) return label('edit.move', { from, to });
  const [, off] = edit.match(/^off-(.+)$/) ?? [];
  if (off) return label('edit.off', { square: off });
  const [, letter, on] = edit.match(/^on-([KQRBNPkqrbnp])(.+)$/) ?? [];
  if (on) return label('edit.on', { piece: pieceName(letter), square: on });
  return edit === 'pass' || edit === 'swap' ? label(`edit.${edit}`) : edit;
}

export class WhatIfPanel extends Panel {
  constructor(page) {
    super('whatif', page);
    this.edits = [];
    this.palette = new Palette();
    this.tools = el('div', { class: 'edit-tools' });
    this.done = el('div', { class: 'edits' });
    this.notice = new Notice(() => this.#ask());
    this.answer = el('div', { class: 'answer-place' });
    this.element.append(this.tools, this.done, this.notice.element,
      this.answer);
    this.question = new Question((status) => this.#show(status));
    this.hands = new EditingHands({ palette: this.palette,
      stands: (square) => this.#placement().has(square),
      show: (view) => page.board.show(view),
      edit: (edit) => this.#add(edit) });
    this.relabel();
  }

  relabel() {
    this.palette.relabel();
    const typed = notation({ id: 'edit-input', maxlength: 400,
      'aria-describedby': 'edit-hint' });
    this.tools.replaceChildren(
      el('p', { class: 'quiet hint' }, label('whatif.hint')),
      this.palette.element,
      el('div', { class: 'row' },
        button(label('whatif.pass'), () => this.#add('pass')),
        button(label('whatif.swap'), () => this.#add('swap'))),
      el('form', { class: 'say', onsubmit: (event) => {
        event.preventDefault();
        this.#add(...typed.value.split(/[\s,]+/).filter(Boolean));
        typed.value = '';
      } }, el('label', { for: 'edit-input' }, label('whatif.type')),
      el('div', { class: 'row' }, typed,
        el('button', { type: 'submit' }, label('whatif.type.go'))),
      el('p', { class: 'quiet hint', id: 'edit-hint' },
        label('whatif.type.hint'))));
  }

  enter() {
    if (this.base !== state.fen) this.edits = [];
    this.base = state.fen;
    this.#ask();
  }

  leave() {
    this.question.drop();
    this.hands.leave();
    this.page.showPosition();
  }

  #placement() {
    return this.edits.reduce(edited, placementOf(state.fen));
  }

  #add(...edits) {
    if (edits.length === 0) return;
    this.edits = [...this.edits, ...edits];
    this.#ask();
  }

  #ask() {
    clearMarks();
    this.page.board.show({ placement: this.#placement() });
    const any = this.edits.length > 0;
    this.done.replaceChildren(el('h3', {}, label('whatif.edits')),
      any ? el('ol', {}, this.edits.map((edit) => el('li', {}, editText(edit))))
        : el('p', { class: 'quiet' }, label('whatif.none')),
      any && el('div', { class: 'row' },
        button(label('whatif.undo'), () => this.#take(-1)),
        button(label('whatif.reset'), () => this.#take(0))));
    this.question.ask('whatif', { fen: state.fen, edits: this.edits },
      { counts: false });
  }

  #take(end) {
    this.edits = this.edits.slice(0, end);
    this.#ask();
  }

  #show({ phase, answer, ...rest }) {
    this.notice.show({ phase, ...rest });
    this.answer.classList.toggle('old', phase === 'counting');
    this.element.dataset.phase = phase;
    this.element.dataset.edits = this.edits.join(' ');
    if (phase === 'failed') this.answer.replaceChildren();
    if (!answer) return;
    clearMarks();
    this.answer.replaceChildren(...[
      this.edits.length > 0 && this.#changes(answer),
      this.#pieces(answer)].flat().filter(Boolean));
    if (this.edits.length > 0) announce(answer.summary);
  }

  #changes(answer) {
    return [told('p', answer.summary, { class: 'summary' }),
      el('p', { class: 'figures' }, label('moves.before.after', {
        before: amountText(answer.scoreBeforeCp),
        after: amountText(answer.scoreAfterCp) })),
      section('whatif.changes', answer.changes.length > 0
        ? changeList(answer.changes, true)
        : el('p', { class: 'quiet' }, label('whatif.same'))),
      el('div', { class: 'row' }, button(label('whatif.go'), () => {
        state.open(fromFen(answer.fenAfter));
        this.page.openPanel('explain');
      }))];
  }

  // The pieces that matter most where they stand, before any edit.
  #pieces(answer) {
    const placement = placementOf(state.fen);
    const pieces = answer.attributions
      .toSorted((a, b) =>
        Math.abs(b.beyondMaterialCp) - Math.abs(a.beyondMaterialCp))
      .slice(0, mostPieces);
    return el('details', { class: 'part' },
      el('summary', {}, label('whatif.pieces')),
      el('p', { class: 'quiet hint' }, label('whatif.pieces.hint')),
      el('ul', { class: 'remarks' }, pieces.map((piece) =>
        el('li', {}, markable(
          squaresByValue([{ squares: [piece.square] }],
            () => piece.beyondMaterialCp),
          [amount(piece.beyondMaterialCp), el('span', { class: 'says' },
            `${pieceName(placement.get(piece.square))}, ${piece.square}`)])))));
  }
}
