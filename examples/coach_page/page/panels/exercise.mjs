// Exercise: the student names a plan; only then is told what was found. What
// would give it away is not even on the page before.

import { button, el, notation } from '../dom.mjs';
import { Question } from '../ask.mjs';
import { clearMarks } from '../board/marks.mjs';
import { PlayingHands } from '../board/hands.mjs';
import { whiteToMove } from '../chess/placement.mjs';
import { play } from '../chess/rules.mjs';
import { moveExplanation } from '../parts/move_card.mjs';
import { Notice } from '../parts/notice.mjs';
import { race } from '../parts/race.mjs';
import { section } from '../parts/section.mjs';
import { announce, state } from '../state.mjs';
import { hasLabel, label, sideName } from '../text/labels.mjs';
import { Panel } from './panel.mjs';

const kinds = ['lever', 'siege', 'minority_attack', 'majority', 'passer',
  'expansion', 'reshape', 'regroup', 'trade', 'file', 'develop', 'king_attack',
  'king_walk', 'restrain'];

const sideOf = (white) => (white ? 'SIDE_WHITE' : 'SIDE_BLACK');

// How the student's plan stands to the plans that were found, as a sentence.
function comparison({ kind, san, white }, plans) {
  const side = sideName(white);
  const own = plans.filter((plan) => plan.side === sideOf(white));
  if (own.length === 0) return label('exercise.found.none', { side });
  const sameKind = (plan) => !kind || plan.kind === kind;
  const sameMove = (plan) => !san || plan.steps[0]?.san === san;
  const place = own.findIndex((plan) => sameKind(plan) && sameMove(plan)) + 1;
  if (place === 1) return label('exercise.found.first', { side });
  if (place > 1) return label('exercise.found.place', { side, place });
  if (kind && own.some(sameKind)) return label('exercise.found.kind', { side });
  if (san && own.some(sameMove)) return label('exercise.found.move', { side });
  return label('exercise.found.not', { side });
}

// The other side's moves are named on the board with the turn handed over.
const withTurn = (fen, white) => (whiteToMove(fen) === white ? fen
  : fen.replace(/ [wb] (\S+) \S+/, ` ${white ? 'w' : 'b'} $1 -`));

export class ExercisePanel extends Panel {
  constructor(page) {
    super('exercise', page);
    this.form = el('form', { class: 'exercise', onsubmit: (event) => {
      event.preventDefault();
      this.#answer();
    } });
    this.notice = new Notice(() => this.#answer());
    this.result = el('div', { class: 'answer-place' });
    this.moveNotice = new Notice(() => this.#askMove());
    this.moveResult = el('div', { class: 'answer-place' });
    // The form comes with the first position.
    this.element.append(this.notice.element, this.result,
      this.moveNotice.element, this.moveResult);
    this.question = new Question((status) => this.#show(status));
    this.moveQuestion = new Question((status) => this.#showMove(status));
    this.hands = new PlayingHands({
      position: () => withTurn(state.fen, this.#white()),
      show: (view) => page.board.show(view),
      played: (san) => {
        this.move.value = san;
        this.#showTried();
      } });
  }

  enter() {
    // New wishes tell the same answer anew; a new position hides it.
    if (this.fen === state.fen && this.named) {
      const { kind, san } = this.named;
      this.#form();
      this.kind.value = kind;
      this.move.value = san;
      this.#answer();
      return;
    }
    this.fen = state.fen;
    this.named = null;
    this.#form();
    this.#empty();
  }

  leave() {
    this.question.drop();
    this.moveQuestion.drop();
    this.hands.leave();
    this.page.board.show({ tried: [] });
  }

  #empty() {
    this.question.drop();
    this.moveQuestion.drop();
    this.notice.show({ phase: 'done' });
    this.moveNotice.show({ phase: 'done' });
    this.result.replaceChildren();
    this.moveResult.replaceChildren();
    this.page.board.show({ tried: [] });
    clearMarks();
    this.element.dataset.phase = 'asking';
  }

  #form() {
    const white = whiteToMove(state.fen);
    this.side = el('select', { id: 'exercise-side' },
      [white, !white].map((of) => el('option', { value: sideOf(of) },
        sideName(of))));
    if (this.named) this.side.value = sideOf(this.named.white);
    this.kind = el('select', { id: 'exercise-kind' },
      el('option', { value: '' }, label('exercise.kind.open')),
      kinds.map((kind) => el('option', { value: kind },
        label(`plan.${kind}`))));
    this.move = notation({ id: 'exercise-move', maxlength: 16,
      'aria-describedby': 'exercise-move-hint',
      onchange: () => this.#showTried() });
    this.remark = el('p', { class: 'quiet', role: 'status' },
      label('exercise.hidden'));
    const field = (control, key) => el('div', { class: 'field' },
      el('label', { for: control.id }, label(key)), control);
    this.form.replaceChildren(el('h3', {}, label('exercise.ask')),
      this.remark, field(this.side, 'exercise.side'),
      field(this.kind, 'exercise.kind'), field(this.move, 'exercise.move'),
      el('p', { class: 'quiet hint', id: 'exercise-move-hint' },
        label('exercise.move.hint')),
      el('div', { class: 'row' },
        el('button', { type: 'submit' }, label('exercise.go'))));
    this.element.prepend(this.form);
  }

  #white() {
    return this.side.value === 'SIDE_WHITE';
  }

  #playedMove() {
    return play(withTurn(state.fen, this.#white()), this.move.value.trim());
  }

  #showTried() {
    const move = this.#playedMove();
    this.page.board.show({ tried: move ? [move.from, move.to] : [] });
  }

  #answer() {
    const text = this.move.value.trim();
    const white = this.#white();
    const san = this.#playedMove()?.san ?? '';
    if (text && !san) {
      this.remark.textContent = label('exercise.move.bad',
        { move: text, side: sideName(white) });
      return;
    }
    if (!san && !this.kind.value) {
      this.remark.textContent = label('exercise.empty');
      return;
    }
    this.remark.textContent = '';
    this.named = { kind: this.kind.value, san, white };
    this.#showTried();
    this.question.ask('explain', { fen: state.fen });
    this.#askMove();
  }

  // What the named move does can be told for the side to move alone.
  #askMove() {
    const { san, white } = this.named;
    this.moveResult.replaceChildren();
    if (san && white === whiteToMove(state.fen)) {
      this.moveQuestion.ask('move', { fen: state.fen, move: san });
    } else {
      this.moveQuestion.drop();
    }
  }

  #namedText() {
    const { kind, san, white } = this.named;
    const named = san && !white ? `...${san}` : san;
    const plan = kind && hasLabel(`plan.${kind}`) ? label(`plan.${kind}`) : '';
    return plan && named ? label('exercise.both', { kind: plan, move: named })
      : plan || named;
  }

  #show({ phase, answer, ...rest }) {
    this.notice.show({ phase, ...rest });
    this.element.dataset.phase = phase;
    if (!answer) return;
    const { plans, sideToMove } = answer.explanation;
    const verdict = comparison(this.named, plans);
    clearMarks();
    this.result.replaceChildren(
      el('p', { class: 'yours' }, label('exercise.yours',
        { plan: this.#namedText() })),
      el('p', { class: 'verdict-text' }, verdict),
      section('explain.plans', race(plans, sideToMove)),
      el('p', { class: 'quiet' }, label('exercise.solved')),
      el('div', { class: 'row' }, button(label('exercise.again'), () => {
        this.named = null;
        this.enter();
        this.kind.focus();
      })));
    if (phase === 'done') announce(verdict);
  }

  #showMove({ phase, answer, ...rest }) {
    this.moveNotice.show({ phase, ...rest });
    if (!answer) return;
    this.moveResult.replaceChildren(section('exercise.your.move',
      moveExplanation(answer.explanation, whiteToMove(state.fen))));
  }
}
