// Open: a position as FEN, games as PGN, the club's course, or a position set
// up by hand.

import { button, el, notation } from '../dom.mjs';
import { fromFen, readPgn } from '../chess/lesson.mjs';
import { announce, state } from '../state.mjs';
import { label } from '../text/labels.mjs';
import { Panel } from './panel.mjs';
import { SetUp } from './set_up.mjs';

function faultText(error) {
  if (error.tooLong) return label('open.fault.long');
  const { line = 1, column = 1 } = error;
  return label('open.fault.pgn', { line, column });
}

function openedText({ games, faults }) {
  const opened = games.length === 1 ? label('open.opened.one')
    : label('open.opened', { games: games.length });
  if (faults.length === 0) return opened;
  const [{ san }] = faults;
  return `${opened} ${faults.length === 1 ? label('open.fault.move', { san })
    : label('open.fault.moves', { san, count: faults.length })}`;
}

export class OpenPanel extends Panel {
  constructor(page) {
    super('open', page);
    this.inputs = el('div', {});
    this.remark = el('p', { class: 'opened', role: 'status' });
    this.setUp = new SetUp(page);
    this.element.append(this.remark, this.inputs, this.setUp.element);
    this.relabel();
  }

  get hands() {
    return this.setUp.hands ?? this.page.movingHands;
  }

  relabel() {
    const kept = (old) => old?.value ?? '';
    const fen = notation({ id: 'fen-input', maxlength: 200,
      'aria-describedby': 'fen-hint' });
    const text = el('textarea', { id: 'pgn-input', rows: 4,
      spellcheck: 'false' });
    fen.value = kept(this.fen);
    text.value = kept(this.text);
    [this.fen, this.text] = [fen, text];
    const file = el('input', { id: 'pgn-file', type: 'file',
      accept: '.pgn,application/vnd.chess-pgn,text/plain',
      onchange: async () => {
        if (file.files.length > 0) this.openPgn(await file.files[0].text());
        file.value = '';
      } });
    this.inputs.replaceChildren(
      el('form', { class: 'part', onsubmit: (event) => {
        event.preventDefault();
        this.openFen(fen.value.trim());
      } }, el('h3', {}, el('label', { for: 'fen-input' }, label('open.fen'))),
      el('div', { class: 'row' }, fen,
        el('button', { type: 'submit' }, label('open.fen.go'))),
      el('p', { class: 'quiet hint', id: 'fen-hint' }, label('open.fen.hint'))),
      el('form', { class: 'part', onsubmit: (event) => {
        event.preventDefault();
        this.openPgn(text.value);
      } }, el('h3', {}, label('open.pgn')),
      el('div', { class: 'field' },
        el('label', { for: 'pgn-file' }, label('open.pgn.file')), file),
      el('div', { class: 'field' },
        el('label', { for: 'pgn-input' }, label('open.pgn.text')), text),
      el('div', { class: 'row' },
        el('button', { type: 'submit' }, label('open.pgn.go'))),
      el('p', { class: 'quiet hint' }, label('open.pgn.stays'))),
      el('div', { class: 'part' }, el('h3', {}, label('open.course')),
        button(label('open.course.go'), () => this.openCourse())));
    this.setUp.relabel();
  }

  enter() {
    this.remark.textContent = '';
  }

  leave() {
    this.setUp.leave();
  }

  // The service says what is wrong with a position; nothing is judged here.
  openFen(fen) {
    state.open(fromFen(fen));
    this.page.openPanel('explain');
  }

  openPgn(text) {
    try {
      const lesson = readPgn(text);
      if (lesson.games.length === 0) {
        this.#say(label('open.fault.none'));
        return;
      }
      state.open(lesson);
      this.#say(openedText(lesson));
    } catch (error) {
      this.#say(faultText(error));
    }
  }

  async openCourse() {
    try {
      const response = await fetch('lesson.pgn');
      if (!response.ok) throw new Error(response.statusText);
      this.openPgn(await response.text());
    } catch {
      this.#say(label('open.fault.course'));
    }
  }

  #say(text) {
    this.remark.textContent = text;
    announce(text);
  }
}
