// Moves: candidates tried in the position, each with what it gains and gives
// up, and side by side. They are kept for each position while the page is open.

import { button, el, notation } from '../dom.mjs';
import { Question } from '../ask.mjs';
import { clearMarks } from '../board/marks.mjs';
import { addMove } from '../chess/lesson.mjs';
import { whiteToMove } from '../chess/placement.mjs';
import { numbered, play } from '../chess/rules.mjs';
import { moveExplanation } from '../parts/move_card.mjs';
import { Notice } from '../parts/notice.mjs';
import { sideBySide } from '../parts/side_by_side.mjs';
import { announce, state } from '../state.mjs';
import { label, sideName } from '../text/labels.mjs';
import { Panel } from './panel.mjs';

const mostCompared = 8;

export class MovesPanel extends Panel {
  constructor(page) {
    super('moves', page);
    this.hands = page.movingHands;
    this.tried = new Map(); // FEN to {moves: [san], shown}
    this.entry = el('form', { class: 'say', onsubmit: (event) => {
      event.preventDefault();
      this.try(this.input.value.trim());
    } });
    this.list = el('div', { class: 'tried-moves' });
    this.notice = new Notice(() => this.#explain());
    this.card = el('div', { class: 'answer-place' });
    this.compareNotice = new Notice(() => this.#compare());
    this.compared = el('div', { class: 'answer-place' });
    this.element.append(this.entry, this.list, this.notice.element, this.card,
      this.compareNotice.element, this.compared);
    this.question = new Question((status) => this.#showMove(status));
    this.comparison = new Question((status) => this.#showComparison(status));
    this.relabel();
  }

  relabel() {
    const typed = this.input?.value ?? '';
    this.input = notation({ id: 'move-input', maxlength: 16,
      'aria-describedby': 'move-hint' });
    this.input.value = typed;
    this.sayLabel = el('label', { for: 'move-input' });
    this.entry.replaceChildren(this.sayLabel, el('div', { class: 'row' },
      this.input, el('button', { type: 'submit' }, label('moves.say.go'))),
    el('p', { class: 'quiet hint', id: 'move-hint' }, label('moves.say.hint')));
  }

  enter() {
    this.sayLabel.textContent = label('moves.say',
      { side: sideName(whiteToMove(state.fen)) });
    this.comparison.drop();
    this.compareNotice.show({ phase: 'done' });
    this.compared.replaceChildren();
    this.#drawList();
    this.#explain();
  }

  leave() {
    this.question.drop();
    this.comparison.drop();
    this.page.board.show({ tried: [] });
  }

  // A move from the board, typed, or from another panel. What the rules do not
  // know goes to the service as it is: it says best what is wrong with it.
  try(text) {
    const here = this.#here();
    const san = play(state.fen, text)?.san ?? text;
    if (!here.moves.includes(san)) here.moves.push(san);
    here.shown = san;
    this.input.value = '';
    this.enter();
  }

  #here() {
    if (!this.tried.has(state.fen)) {
      this.tried.set(state.fen, { moves: [], shown: null });
    }
    return this.tried.get(state.fen);
  }

  #forget(san) {
    const here = this.#here();
    here.moves = here.moves.filter((move) => move !== san);
    if (here.shown === san) here.shown = here.moves.at(-1) ?? null;
  }

  #drawList() {
    const { moves, shown } = this.#here();
    if (moves.length === 0) {
      this.list.replaceChildren(el('p', { class: 'quiet' },
        label('moves.none')));
      return;
    }
    const comparable = moves.length >= 2 && moves.length <= mostCompared;
    this.list.replaceChildren(el('h3', {}, label('moves.tried')),
      el('ul', { class: 'row' }, moves.map((san) => el('li', {},
        button(numbered(state.fen, san), () => this.try(san),
          { class: 'move', 'aria-pressed': String(san === shown) })))),
      el('div', { class: 'row' },
        button(label('moves.compare'), () => this.#compare(),
          { class: 'compare', disabled: !comparable }),
        !comparable && el('span', { class: 'quiet hint' },
          label('moves.compare.hint'))));
  }

  #explain() {
    const { shown } = this.#here();
    const move = shown && play(state.fen, shown);
    this.page.board.show({ tried: move ? [move.from, move.to] : [] });
    clearMarks();
    this.card.replaceChildren();
    if (shown === null) {
      this.question.drop();
      this.notice.show({ phase: 'done' });
      return;
    }
    this.element.dataset.move = shown;
    this.question.ask('move', { fen: state.fen, move: shown });
  }

  #showMove({ phase, answer, ...rest }) {
    this.notice.show({ phase, ...rest });
    this.element.dataset.phase = phase;
    this.element.dataset.fen = state.fen;
    const { shown } = this.#here();
    if (phase === 'failed' && rest.refusal.code === 'INVALID_ARGUMENT') {
      // A move that is none is told once and not kept.
      this.#forget(shown);
      this.#drawList();
    }
    if (!answer) return;
    const move = answer.explanation;
    clearMarks();
    this.card.replaceChildren(el('article', { class: 'move-card' },
      el('h3', {}, numbered(state.fen, move.san)),
      moveExplanation(move, whiteToMove(state.fen)),
      el('div', { class: 'row' },
        button(label('moves.play'),
          () => state.goTo(addMove(state.node, move.san))),
        button(label('moves.drop'), () => {
          this.#forget(shown);
          this.enter();
        }))));
    if (phase === 'done') announce(move.summary);
  }

  #compare() {
    this.comparison.ask('compare',
      { fen: state.fen, moves: this.#here().moves });
  }

  #showComparison({ phase, answer, ...rest }) {
    this.compareNotice.show({ phase, ...rest });
    this.compared.dataset.phase = phase;
    if (!answer) return;
    const names = this.#here().moves;
    this.compared.replaceChildren(el('section', { class: 'part' },
      el('h3', {}, label('moves.compare.heading')),
      sideBySide(answer, names.map((san) => numbered(state.fen, san)))));
    if (phase === 'done') announce(answer.decides);
  }
}
