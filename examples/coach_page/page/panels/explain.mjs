// Why: the explanation of the position on the board.

import { el } from '../dom.mjs';
import { Question } from '../ask.mjs';
import { explanation } from '../parts/explanation.mjs';
import { Notice } from '../parts/notice.mjs';
import { clearMarks } from '../board/marks.mjs';
import { announce, state } from '../state.mjs';
import { Panel } from './panel.mjs';

export class ExplainPanel extends Panel {
  constructor(page) {
    super('explain', page);
    this.notice = new Notice(() => this.enter());
    this.answer = el('div', { class: 'answer-place' });
    this.element.append(this.notice.element, this.answer);
    this.question = new Question((status) => this.#show(status));
    this.hands = page.movingHands;
  }

  enter() {
    this.question.ask('explain', { fen: state.fen });
  }

  leave() {
    this.question.drop();
  }

  #show({ phase, answer, ...rest }) {
    this.notice.show({ phase, ...rest });
    // An answer to another position is dimmed at once and never outlives this
    // one's refusal.
    this.answer.classList.toggle('old', phase === 'counting');
    if (answer) {
      const told = answer.explanation;
      // Keeping the place of a reader who scrolled or opened the entries.
      const opened = this.answer.querySelector('details')?.open ?? false;
      clearMarks();
      this.answer.replaceChildren(...explanation(told).filter(Boolean));
      this.answer.querySelector('details').open = opened;
      if (phase === 'done') announce(told.verdict.text);
    } else if (phase === 'failed') {
      this.answer.replaceChildren();
    }
    this.element.dataset.phase = phase;
    this.element.dataset.fen = state.fen;
  }
}
