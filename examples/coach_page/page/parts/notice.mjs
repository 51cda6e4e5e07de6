// How a question stands: that an answer is on its way, or why there is none, as
// a sentence. It shows only after a moment: most answers are there by then.

import { button, el, told } from '../dom.mjs';
import { announce } from '../state.mjs';
import { hasLabel, label } from '../text/labels.mjs';

const momentMs = 120;
const slowMs = 3000;

// "position.fen: castling: unknown character ..." as a reader would have it;
// these texts of the service are English in any language.
function problemText({ field, description }) {
  const part = field.replace(/^(position|options)\./, '').replace('fen', 'FEN')
    .replace(/^(edit|move)s\[(\d+)\]$/, (all, what, index) =>
      `${what} ${Number(index) + 1}`).replace(/^[a-z]/, (letter) =>
      letter.toUpperCase());
  const text = description.replace(/(found|expected) "/g, '$1 “')
    .replace(/(“[^"]*)"/g, '$1”');
  return `${part}: ${text}.`;
}

export function refusalSentences(refusal) {
  const key = `refusal.${refusal.code}`;
  const first = hasLabel(key) ? label(key)
    : label('refusal.other', { message: refusal.message });
  const problems = refusal.problems.map(problemText);
  if (refusal.code === 'INVALID_ARGUMENT' && problems.length === 0) {
    problems.push(refusal.message);
  }
  return [first, problems];
}

export class Notice {
  constructor(again) {
    this.again = again;
    this.element = el('div', { class: 'notice-place' });
  }

  // The status of a Question.
  show({ phase, refusal, asksAgain }) {
    clearTimeout(this.moment);
    clearTimeout(this.slow);
    this.element.dataset.phase = phase;
    if (phase === 'failed') {
      this.#refusal(refusal, asksAgain);
    } else if (phase === 'done') {
      this.element.replaceChildren();
    } else {
      const key = phase === 'counting' ? 'pending.counted' : 'pending.proved';
      this.moment = setTimeout(() => this.#pending(label(key)), momentMs);
      this.slow = setTimeout(() => {
        this.#pending(label('pending.slow'));
        announce(label('pending.slow'));
      }, slowMs);
    }
  }

  #pending(text) {
    this.element.replaceChildren(el('p', { class: 'pending' }, text));
  }

  #refusal(refusal, asksAgain) {
    const [first, problems] = refusalSentences(refusal);
    this.element.replaceChildren(el('div', { class: 'refusal' },
      el('p', {}, first),
      problems.length > 0 && el('ul', { lang: 'en' },
        problems.map((text) => el('li', {}, text))),
      !asksAgain && refusal.code !== 'INVALID_ARGUMENT' && this.again &&
        button(label('again'), this.again)));
    announce([first, ...problems].join(' '));
  }
}
