// "Ideas in a line": each has a line up to and including the move that shows
// it, made by the claim's side. `verify` sees the position after that move
// and, through `played`, the one before it.

import {
  BISHOP, KING, PAWN, QUEEN, ROOK, WORTH, kindOf, sideOf,
} from './board.mjs';
import { attackersOf, attacksFrom } from './attacks.mjs';
import { exchangeValue, isHanging } from './exchange.mjs';
import { READINGS } from './readings.mjs';
import { between, cheapestAttacker, pinsOn } from './words.mjs';

const isEnemy = (board, square, side) => sideOf(board[square]) === -side;
const isSlider = (piece) => [BISHOP, ROOK, QUEEN].includes(kindOf(piece));

const isPrey = (board, square) =>
  kindOf(board[square]) === KING || isHanging(board, square);

// What all ideas have in common; returns why the claim is false, or null.
function checkIdea({ side, squares, others, count, otherCount }, played) {
  const { positions, steps } = played;
  if (!side) return 'no side';
  if (steps.length === 0) return 'no line';
  if (!steps[steps.length - 1]) return 'the line ends in a pass';
  if (positions[steps.length - 1].turn !== side) {
    return 'the last move is not by the claim\'s side';
  }
  if (squares.length !== 1) return 'one square is needed';
  if (new Set(others).size !== others.length) return 'others repeat';
  return count || otherCount ? 'the row has no counts' : null;
}

const idea = (ordered, check) => ({
  ordered,
  idea: true,
  verify: ({ board }, claim, played) =>
    checkIdea(claim, played) ?? check(board, claim, played),
});

const lastStep = ({ steps }) => steps[steps.length - 1];

const FORK = idea([], (board, { side, squares, others }, played) => {
  const [square] = squares;
  if (lastStep(played).to !== square) return 'that piece did not move last';
  if (others.length < 2) return 'fewer than two are attacked';
  const attacked = attacksFrom(board, square);
  for (const target of others) {
    if (!isEnemy(board, target, side)) return 'a target is not enemy';
    if (kindOf(board[target]) === PAWN && !READINGS.forkCountsPawns) {
      return 'a target is a pawn';
    }
    if (!attacked.includes(target)) return 'a target is not attacked';
    if (!isPrey(board, target)) return 'a target is not hanging';
  }
  return null;
});

const SKEWER = idea(['others'], (board, { side, squares, others }, played) => {
  const [slider] = squares;
  if (lastStep(played).to !== slider) return 'that piece did not move last';
  if (!isSlider(board[slider])) return 'that piece is no slider';
  if (others.length !== 2) return 'two pieces are needed';
  const [first, second] = others;
  if (!others.every((square) => isEnemy(board, square, side))) {
    return 'a target is not enemy';
  }
  if (!attacksFrom(board, slider).includes(first)) {
    return 'the first is not attacked';
  }
  const gap = between(slider, second);
  const inLine = gap !== null && gap.includes(first) &&
    gap.every((square) => square === first || board[square] === 0);
  if (!inLine) return 'the second is not behind the first';
  const worth = (square) => WORTH[kindOf(board[square])];
  if (worth(first) < worth(second)) return 'the first is worth less';
  const left = board.slice();
  left[first] = 0;
  return exchangeValue(left, second) > 0 ? null : 'the second would not hang';
});

const DISCOVERED = idea([], (board, { side, squares, others }, played) => {
  const [square] = squares;
  const { positions, steps } = played;
  const before = positions[steps.length - 1].board;
  if (lastStep(played).to === square) return 'that piece moved itself';
  if (sideOf(board[square]) !== side || board[square] !== before[square]) {
    return 'no piece of that side stood there before';
  }
  if (others.length === 0) return 'nothing is attacked';
  for (const target of others) {
    if (!isEnemy(board, target, side)) return 'a target is not enemy';
    if (!attacksFrom(board, square).includes(target)) {
      return 'a target is not attacked';
    }
    if (attacksFrom(before, square).includes(target)) {
      return 'a target was attacked before';
    }
    if (!isPrey(board, target)) return 'a target is not hanging';
  }
  return null;
});

const PIN_WINS = idea(['others'], (board, { side, squares, others }) => {
  const [pinned] = squares;
  const holds = pinsOn(board).some((pin) => pin.side === -side &&
    pin.pinned === pinned && pin.slider === others[0] && pin.behind === others[1]);
  if (others.length !== 2 || !holds) return 'there is no such pin';
  const attackers = attackersOf(board, pinned, side).length;
  const defenders = attackersOf(board, pinned, -side).length;
  if (attackers > defenders) return null;
  if (cheapestAttacker(board, pinned, side) < WORTH[kindOf(board[pinned])]) {
    return null;
  }
  return 'no more attack than defend it, and nothing cheaper does';
});

function checkSoleGuard(board, { side, squares, others }) {
  const [guard] = squares;
  if (!isEnemy(board, guard, side)) return 'that piece is not enemy';
  if (others.length < 2) return 'fewer than two things are defended';
  for (const thing of others) {
    if (!isEnemy(board, thing, side)) return 'one of the things is not enemy';
    const guards = attackersOf(board, thing, -side);
    if (guards.length !== 1 || guards[0] !== guard) {
      return 'it is not the only defender';
    }
    if (attackersOf(board, thing, side).length === 0) {
      return 'one of the things is not attacked';
    }
  }
  return null;
}

const OVERLOADED = idea([], checkSoleGuard);

// Beyond TERMS.md, the project's own kind: OVERLOADED as the position stands,
// whoever moved last.
const SOLE_GUARD = {
  ordered: [],
  verify({ board }, claim) {
    const { side, squares, others, count, otherCount } = claim;
    if (!side) return 'no side';
    if (squares.length !== 1) return 'one square is needed';
    if (new Set(others).size !== others.length) return 'others repeat';
    if (count || otherCount) return 'the row has no counts';
    return checkSoleGuard(board, claim);
  },
};

export const IDEA_KINDS = {
  FORK, SKEWER, DISCOVERED, PIN_WINS, OVERLOADED, SOLE_GUARD,
};
