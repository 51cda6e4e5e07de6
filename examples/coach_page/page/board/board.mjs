// The board: draws what it is given and gives chosen squares and dragged men to
// the present hands (hands.mjs). It knows no rules. To a screen reader it is a grid of
// named squares; arrow keys go about in it.

import { el } from '../dom.mjs';
import { files, isWhite, ranks, squares } from '../chess/placement.mjs';
import { label } from '../text/labels.mjs';
import { Dragging } from './drag.mjs';
import { drawing, pieceId } from './shapes.mjs';

const isDark = (square) =>
  (files.indexOf(square[0]) + Number(square[1])) % 2 === 1;

export function pieceName(letter) {
  return label(isWhite(letter) ? 'white.piece' : 'black.piece',
    { kind: label(`piece.${letter.toUpperCase()}`) });
}

export class Board {
  // `hands()` are those of the panel that is open.
  constructor(hands) {
    this.hands = hands;
    this.view = { placement: new Map(), marks: { white: [], black: [] },
      tried: [], reach: [], picked: null, turned: false };
    this.cells = new Map(squares.map((square) => [square, el('div',
      { role: 'gridcell', class: 'square', 'data-square': square, tabindex: -1,
        onclick: () => this.#chosen(square) })]));
    this.drawn = new Map();
    this.cursor = 'e1';
    this.grid = el('div', { role: 'grid', class: 'squares',
      onkeydown: (event) => this.#key(event) });
    this.dragging = new Dragging(this.grid, { hands,
      manAt: (square) => this.view.placement.get(square) });
    this.fileNames = el('div', { class: 'file-names', 'aria-hidden': 'true' });
    this.rankNames = el('div', { class: 'rank-names', 'aria-hidden': 'true' });
    this.element = el('div', { class: 'board' },
      this.rankNames, this.grid, this.fileNames);
    this.#layOut();
  }

  // Any part of the view: placement, marks {white, black}, tried, reach,
  // picked, turned.
  show(change) {
    const wasTurned = this.view.turned;
    this.view = { ...this.view, ...change };
    if (this.view.turned !== wasTurned) this.#layOut();
    this.draw();
  }

  // Anew, in another language if that has changed.
  draw() {
    this.grid.setAttribute('aria-label', label('board.name'));
    for (const [square, cell] of this.cells) this.#drawSquare(square, cell);
  }

  #layOut() {
    const rows = this.view.turned ? ranks.toReversed() : ranks;
    const columns = this.view.turned ? files.toReversed() : files;
    this.grid.replaceChildren(...rows.map((rank) => el('div', { role: 'row',
      class: 'rank' }, columns.map((file) => this.cells.get(file + rank)))));
    const names = (list) => list.map((name) => el('span', {}, name));
    this.fileNames.replaceChildren(...names(columns));
    this.rankNames.replaceChildren(...names(rows));
    this.#focusable(this.cursor);
  }

  #drawSquare(square, cell) {
    const { placement, marks, tried, reach, picked } = this.view;
    const letter = placement.get(square);
    const forWhite = marks.white.includes(square);
    const forBlack = marks.black.includes(square);
    const layers = [isDark(square) && 'hatch', forWhite && 'dots',
      forBlack && 'crosses', tried.includes(square) && 'tried',
      letter && pieceId(letter), reach.includes(square) && 'reach']
      .filter(Boolean);
    const name = [square, letter ? pieceName(letter) : label('any.square'),
      forWhite && label('mark.white'), forBlack && label('mark.black'),
      reach.includes(square) && label('mark.reach'),
      picked === square && label('mark.picked')].filter(Boolean).join(', ');
    // Most squares stay as they are from one view to the next.
    const look = [...layers, picked === square, name].join();
    if (this.drawn.get(square) === look) return;
    this.drawn.set(square, look);
    cell.setAttribute('aria-label', name);
    cell.classList.toggle('picked', picked === square);
    cell.replaceChildren(drawing(layers));
  }

  #focusable(square) {
    this.cells.get(this.cursor).tabIndex = -1;
    this.cursor = square;
    this.cells.get(square).tabIndex = 0;
  }

  #chosen(square) {
    this.#focusable(square);
    this.hands().choose(square);
  }

  #key(event) {
    const step = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1],
      ArrowDown: [0, -1] }[event.key];
    if (step) {
      const way = this.view.turned ? -1 : 1;
      const file = files[files.indexOf(this.cursor[0]) + way * step[0]];
      const rank = Number(this.cursor[1]) + way * step[1];
      const next = this.cells.get(`${file}${rank}`);
      if (next) {
        this.#focusable(next.dataset.square);
        next.focus();
      }
    } else if (event.key === 'Enter' || event.key === ' ') {
      this.hands().choose(this.cursor);
    } else if (event.key === 'Escape') {
      this.hands().leave();
    } else {
      return;
    }
    event.preventDefault();
  }
}
