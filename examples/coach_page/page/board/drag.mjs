// Dragging, beside clicks and keys: a man follows the mouse, pen or finger from
// its square to another. What can be lifted, and what becomes of it where it is
// let go, is for the hands to say. A finger on anything else scrolls the page.

import { el } from '../dom.mjs';
import { drawing, pieceId } from './shapes.mjs';

// How far, in pixels, a pointer may stray in what is still a click.
const stray = { mouse: 4, pen: 6, touch: 9 };

export class Dragging {
  // `hands()` are the present ones, `manAt(square)` is the letter there.
  constructor(grid, { hands, manAt }) {
    Object.assign(this, { grid, hands, manAt });
    this.from = null; // {square, x, y, id} while a pointer is down on a man
    this.carried = null; // the drawing that follows it, once it is a drag
    this.over = null; // the square that it is over
    this.ended = false; // a drag has ended; its click is none
    grid.addEventListener('pointerdown', (event) => this.#down(event));
    grid.addEventListener('pointermove', (event) => this.#move(event));
    grid.addEventListener('pointerup', (event) => this.#up(event));
    grid.addEventListener('pointercancel', () => this.#letGo(null));
    // Else the page scrolls, and the drag is cancelled.
    grid.addEventListener('touchmove', (event) => {
      if (this.from && event.cancelable) event.preventDefault();
    }, { passive: false });
    grid.addEventListener('click', (event) => {
      if (this.ended) event.stopPropagation();
    }, { capture: true });
    grid.ownerDocument.addEventListener('keydown', (event) => {
      if (event.key !== 'Escape' || !this.carried) return;
      event.preventDefault();
      this.#letGo(null);
    }, { capture: true });
  }

  #squareAt({ clientX, clientY }) {
    const cell = this.grid.ownerDocument.elementFromPoint(clientX, clientY)
      ?.closest('.square');
    return this.grid.contains(cell) ? cell : null;
  }

  #down(event) {
    if (this.carried) this.#letGo(null);
    this.from = null;
    const square = event.target.closest('.square')?.dataset.square;
    if (!event.isPrimary || event.button !== 0 || !square ||
      !this.hands().lifts(square)) return;
    this.from = { square, id: event.pointerId, x: event.clientX,
      y: event.clientY };
  }

  #move(event) {
    if (event.pointerId !== this.from?.id) return;
    const { square, x, y } = this.from;
    const far = Math.hypot(event.clientX - x, event.clientY - y);
    if (!this.carried) {
      if (far <= (stray[event.pointerType] ?? stray.touch)) return;
      this.#lift(square, event);
    }
    this.carried.style.left = `${event.clientX}px`;
    this.carried.style.top = `${event.clientY}px`;
    const cell = this.#squareAt(event);
    if (cell === this.over) return;
    this.over?.classList.remove('over');
    cell?.classList.add('over');
    this.over = cell;
  }

  #lift(square, { pointerId, pointerType }) {
    const cell = this.grid.querySelector(`[data-square=${square}]`);
    this.carried = el('div', { class: `carried ${pointerType}`,
      'aria-hidden': 'true' }, drawing([pieceId(this.manAt(square))]));
    this.carried.style.width = `${cell.offsetWidth}px`;
    this.grid.ownerDocument.body.append(this.carried);
    this.grid.setPointerCapture(pointerId);
    this.grid.classList.add('dragging');
    cell.classList.add('lifted');
    this.hands().lift(square);
  }

  #up(event) {
    if (event.pointerId !== this.from?.id) return;
    this.#letGo(this.#squareAt(event)?.dataset.square ?? null);
  }

  // Where the man is let go: a square, or null beside the board. What was no
  // drag yet is left to the click.
  #letGo(square) {
    const from = this.from?.square;
    this.from = null;
    if (!this.carried) return;
    this.carried.remove();
    this.carried = null;
    this.over?.classList.remove('over');
    this.over = null;
    this.grid.classList.remove('dragging');
    this.grid.querySelector('.lifted').classList.remove('lifted');
    // The click of this very pointer comes before any timer.
    this.ended = true;
    setTimeout(() => { this.ended = false; });
    this.hands().drop(square === from ? null : square);
  }
}
