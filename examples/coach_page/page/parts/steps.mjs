// The lesson beside the board: which game, its moves with their variations and
// comments, and buttons to step through them. The author's words are in the
// author's language, whatever that is.

import { button, el } from '../dom.mjs';
import { gameAround } from '../chess/lesson.mjs';
import { numbered } from '../chess/rules.mjs';
import { whiteToMove } from '../chess/placement.mjs';
import { state } from '../state.mjs';
import { label } from '../text/labels.mjs';

// The meanings of the move marks that PGN has signs for.
const signs = { 1: '!', 2: '?', 3: '!!', 4: '??', 5: '!?', 6: '?!', 10: '=',
  11: '=', 12: '=', 13: '∞', 14: '⩲', 15: '⩱', 16: '±', 17: '∓', 18: '+−',
  19: '−+' };

const last = (node) => {
  let at = node;
  while (at.children.length > 0) [at] = at.children;
  return at;
};
const root = (node) => (node.parent ? root(node.parent) : node);

function gameName(game, index) {
  const players = game.white || game.black
    ? label('lesson.players', { white: game.white, black: game.black })
    : label('lesson.one');
  return `${index + 1}. ${players}`;
}

export class Steps {
  constructor() {
    this.element = el('div', { class: 'steps-place' });
    this.controls = el('div', { class: 'row stepping' });
    this.buttons = new Map();
    state.on('lesson', () => this.draw());
    state.on('place', () => this.#place());
    document.addEventListener('keydown', (event) => this.#key(event));
  }

  draw() {
    const { games } = state.lesson;
    const choice = el('select', { id: 'game', onchange: () =>
      state.goTo(games[choice.value].root) }, games.map((game, i) =>
      el('option', { value: i }, gameName(game, i))));
    this.choice = choice;
    this.about = el('p', { class: 'quiet about' });
    const step = (key, goal) => button(label(`step.${key}`),
      () => state.goTo(goal(state.node)), { 'data-step': key });
    this.toFirst = step('first', root);
    this.toBack = step('back', (node) => node.parent);
    this.toNext = step('next', (node) => node.children[0]);
    this.toLast = step('last', last);
    this.lines = el('div', { class: 'lines' });
    this.moves = el('div', { class: 'moves' });
    this.element.replaceChildren(games.length > 1
      ? el('div', { class: 'field' },
        el('label', { for: 'game' }, label('lesson.games')), choice) : '',
    this.about, this.lines, this.moves);
    this.controls.replaceChildren(this.toFirst, this.toBack, this.toNext,
      this.toLast);
    this.game = null;
    if (state.node) this.#place();
  }

  #place() {
    const game = gameAround(state.lesson, state.node);
    const size = this.#count(game.root);
    // Moves that were added make the list another one.
    if (game !== this.game || size !== this.size) this.#drawMoves(game, size);
    const { node } = state;
    for (const [of, control] of this.buttons) {
      if (of === node) control.setAttribute('aria-current', 'step');
      else control.removeAttribute('aria-current');
    }
    this.#follow(this.buttons.get(node));
    this.toFirst.disabled = !node.parent;
    this.toBack.disabled = !node.parent;
    this.toNext.disabled = node.children.length === 0;
    this.toLast.disabled = node.children.length === 0;
    this.lines.replaceChildren(...(node.children.length > 1
      ? [el('span', { class: 'quiet' }, label('step.lines')),
        ...node.children.map((child) => button(numbered(node.fen, child.san),
          () => state.goTo(child)))] : []));
  }

  #count(node) {
    return node.children.reduce((sum, child) => sum + this.#count(child), 1);
  }

  // Scrolls the list alone, never the page under a reader's eyes.
  #follow(control) {
    const box = this.moves.getBoundingClientRect();
    const at = control.getBoundingClientRect();
    if (at.top < box.top) this.moves.scrollTop -= box.top - at.top + 8;
    else if (at.bottom > box.bottom) {
      this.moves.scrollTop += at.bottom - box.bottom + 8;
    }
  }

  #drawMoves(game, size) {
    this.game = game;
    this.size = size;
    this.buttons.clear();
    this.choice.value = state.lesson.games.indexOf(game);
    this.about.textContent = [game.event,
      game.annotator && label('lesson.by', { annotator: game.annotator })]
      .filter(Boolean).join(' · ');
    this.moves.replaceChildren(
      this.#button(game.root, label('step.start')),
      ...this.#comment(game.root.comment), ...this.#line(game.root));
  }

  #button(node, text) {
    const control = button(text, () => state.goTo(node), { class: 'move' });
    this.buttons.set(node, control);
    return control;
  }

  #comment(text) {
    return text ? [el('p', { class: 'comment' }, text)] : [];
  }

  // The moves after a place: the first child, then its siblings as variations,
  // then on. A loop along the line: games can be long.
  #line(from) {
    const parts = [];
    let anew = true;
    for (let at = from; at.children.length > 0; [at] = at.children) {
      const [main, ...others] = at.children;
      parts.push(...this.#move(at, main, anew));
      anew = Boolean(main.comment) || others.length > 0;
      for (const other of others) {
        parts.push(el('div', { class: 'variation', role: 'group',
          'aria-label': label('step.variation') },
        this.#move(at, other, true), this.#line(other)));
      }
    }
    return parts;
  }

  #move(before, node, withNumber) {
    const marks = node.nags.map((nag) => signs[nag] ?? '').join(' ');
    const san = withNumber || whiteToMove(before.fen)
      ? numbered(before.fen, node.san) : node.san;
    return [...this.#comment(node.before),
      this.#button(node, marks ? `${san} ${marks}` : san),
      ...this.#comment(node.comment)];
  }

  // Left and right step through the lesson wherever they mean nothing else.
  #key(event) {
    if (event.target.closest('input, select, textarea, dialog, [role=grid], ' +
      '[role=tablist]') || event.altKey || event.ctrlKey || event.metaKey) return;
    const goal = { ArrowLeft: () => state.node.parent,
      ArrowRight: () => state.node.children[0] }[event.key]?.();
    if (!goal) return;
    event.preventDefault();
    state.goTo(goal);
  }
}
