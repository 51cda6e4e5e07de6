// The page put together: board, lesson and panels, and who tells whom.

import { Board } from './board/board.mjs';
import { PlayingHands } from './board/hands.mjs';
import { clearMarks, marksGoTo, squaresText } from './board/marks.mjs';
import { stencils } from './board/shapes.mjs';
import { firstComment, fromFen } from './chess/lesson.mjs';
import { initialFen, piecesOf, placementOf, whiteToMove }
  from './chess/placement.mjs';
import { button, el } from './dom.mjs';
import { ExercisePanel } from './panels/exercise.mjs';
import { ExplainPanel } from './panels/explain.mjs';
import { MovesPanel } from './panels/moves.mjs';
import { OpenPanel } from './panels/open.mjs';
import { WhatIfPanel } from './panels/what_if.mjs';
import { Steps } from './parts/steps.mjs';
import { Tabs } from './parts/tabs.mjs';
import { readWishes, showRefusedWishes } from './parts/wishes.mjs';
import { state } from './state.mjs';
import { label, setLanguage, sideName } from './text/labels.mjs';

// What panels may ask of the page.
const page = {
  board: new Board(() => panel.hands),
  // Plays moves as candidates, which the panel of moves tells of.
  movingHands: new PlayingHands({ position: () => state.fen,
    show: (view) => page.board.show(view),
    played: (san) => {
      page.openPanel('moves');
      panels.moves.try(san);
    } }),
  openPanel(name) {
    if (panel !== panels[name]) choose(panels[name]);
  },
  showPosition() {
    page.board.show({ placement: placementOf(state.fen), tried: [] });
    tellPosition();
  },
};

document.body.prepend(stencils());
readWishes();
setLanguage(state.language);

const panels = Object.fromEntries([OpenPanel, ExplainPanel, MovesPanel,
  WhatIfPanel, ExercisePanel].map((Kind) => new Kind(page))
  .map((made) => [made.name, made]));
let panel = panels.explain;
const tabs = new Tabs(Object.values(panels), choose);
const steps = new Steps();

const turn = button('', () => page.board.show(
  { turned: state.turned = !state.turned }), { class: 'turn' });
const toMove = el('p', { class: 'to-move' });
const key = el('p', { class: 'quiet key' });
const men = el('p', { class: 'unseen', id: 'men' });
page.board.grid.setAttribute('aria-describedby', 'men');
document.getElementById('board').append(page.board.element,
  el('div', { class: 'below-board' }, toMove, turn), steps.controls, key, men);
document.getElementById('lesson').append(steps.element);
document.getElementById('tabs').append(tabs.list);
document.getElementById('panels').append(...Object.values(panels)
  .map(({ element }) => element));

marksGoTo((marks) => {
  page.board.show({ marks });
  key.textContent = squaresText(marks) || label('board.key');
});

function tellPosition() {
  const placement = placementOf(state.fen);
  const side = (white) => `${sideName(white)}: ${piecesOf(placement, white)
    .map(([kind, square]) => `${label(`piece.${kind}`)} ${square}`).join(', ')}.`;
  toMove.textContent = label('to.move',
    { side: sideName(whiteToMove(state.fen)) });
  men.textContent = `${side(true)} ${side(false)} ${toMove.textContent}`;
}

function choose(chosen) {
  panel.leave();
  panel.hands.leave();
  clearMarks();
  panel = chosen;
  tabs.select(panel);
  panel.enter();
}

function relabel() {
  setLanguage(state.language);
  turn.textContent = label('board.turn');
  tabs.relabel();
  for (const each of Object.values(panels)) each.relabel();
  if (state.lesson) steps.draw();
  page.board.draw();
}

state.on('place', () => {
  panel.hands.leave();
  clearMarks();
  page.showPosition();
  panel.enter();
});
state.on('wishes', () => {
  relabel();
  clearMarks();
  page.showPosition();
  showRefusedWishes();
  panel.enter();
});
state.on('refused', showRefusedWishes);

relabel();
tabs.select(panel);
// The page opens with the club's course, where its author first says
// something; without it, with a new game.
await panels.open.openCourse();
if (state.lesson) state.goTo(firstComment(state.node));
else state.open(fromFen(initialFen));
