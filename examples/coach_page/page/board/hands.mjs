// What happens to a chosen square. The panel that is open lends the board its
// hands: those that play legal moves, or those that put pieces where they like.
// A square is chosen by click or key; or a man is dragged: lifts(square) says
// whether it may be, lift(square) takes it, drop(square) puts it down, null
// beside the board.

import { button, el } from '../dom.mjs';
import { legalMoves } from '../chess/rules.mjs';
import { label } from '../text/labels.mjs';
import { drawing, pieceId } from './shapes.mjs';

// Picks up a piece that can move, then plays it where it may go.
//   position() is the FEN; show(view) draws; played(san) takes the move.
export class PlayingHands {
  constructor({ position, show, played }) {
    Object.assign(this, { position, show, played });
    this.picked = null;
  }

  choose(square) {
    if (!this.drop(square) && this.lifts(square)) this.lift(square);
  }

  #from(square) {
    return legalMoves(this.position()).filter(({ from }) => from === square);
  }

  lifts(square) {
    return this.#from(square).length > 0;
  }

  lift(square) {
    this.picked = square;
    this.show({ picked: square,
      reach: this.#from(square).map(({ to }) => to) });
  }

  // Whether that is a move.
  drop(square) {
    const goals = this.#from(this.picked).filter(({ to }) => to === square);
    this.leave();
    if (goals.length > 1) {
      askPromotion(goals, (move) => this.played(move.san));
    } else if (goals.length === 1) {
      this.played(goals[0].san);
    }
    return goals.length > 0;
  }

  leave() {
    this.picked = null;
    this.show({ picked: null, reach: [] });
  }
}

// Edits the board by what the palette says: moves a piece, takes one off, puts
// one down. `edit(text)` takes the edit as the service writes it.
export class EditingHands {
  constructor({ palette, stands, show, edit }) {
    Object.assign(this, { palette, stands, show, edit });
    this.picked = null;
  }

  choose(square) {
    const tool = this.palette.tool();
    const from = this.picked;
    if (tool === 'hand' && from) {
      this.drop(square);
    } else if (tool === 'hand') {
      if (this.lifts(square)) this.lift(square);
    } else {
      this.leave();
      if (tool !== 'off') this.edit(`on-${tool}${square}`);
      else if (this.stands(square)) this.edit(`off-${square}`);
    }
  }

  lifts(square) {
    return this.stands(square);
  }

  // A drag is the hand's, whatever the palette says.
  lift(square) {
    this.picked = square;
    this.show({ picked: square });
  }

  drop(square) {
    const from = this.picked;
    this.leave();
    if (from && square && from !== square) this.edit(`${from}-${square}`);
  }

  leave() {
    this.picked = null;
    this.show({ picked: null, reach: [] });
  }
}

function askPromotion(moves, choose) {
  const dialog = el('dialog', { class: 'promotion',
    onclose: () => dialog.remove() });
  const letterOf = ({ color, promotion }) =>
    (color === 'w' ? promotion.toUpperCase() : promotion);
  dialog.append(el('p', { id: 'promotion-heading' }, label('promote')),
    el('div', { class: 'row' }, moves.map((move) => button(
      drawing([pieceId(letterOf(move))]),
      () => { dialog.close(); choose(move); },
      { class: 'man-button',
        'aria-label': label(`piece.${move.promotion.toUpperCase()}`) }))),
    button(label('promote.leave'), () => dialog.close()));
  dialog.setAttribute('aria-labelledby', 'promotion-heading');
  document.body.append(dialog);
  dialog.showModal();
}
