// The column of key squares: how it is written and what must be true of it.
//
//   siege b6                 an enemy man that own pieces can come to attack
//   lever b4-b5              own moves in order, the last a pawn's that makes a
//                            lever; pieces may clear the way: Nf6-d7,f7-f5
//   expansion, majority, minority_attack, passer, reshape: moves in order
//   regroup Nd2>e5           the piece and where it goes, by safe squares
//   trade Be6*Bc5            own piece, enemy piece
//   king_attack f4-f5,Ra1>h3 moves and routes, the last near the enemy king
//   king_walk Kg1>d3         develop O-O,Bf1>e2      file c or c:Ra1>c1
//   restrain a2-a4/b7-b5     own move and the enemy move that it is to stop
//   reshape d4xc5            a pawn takes;  passer Nf6>d6 sets up a blockade
import { attackersOf, attacksFrom, isPawnAttacked, pawnReach }
  from '../audit/lib/attacks.mjs';
import {
  KING, PAWN, QUEEN, ROOK, at, fileOf, findKing, kingSteps, kindOf, nameOf,
  parseFen, rankFor, squareOf, squaresOf,
} from '../audit/lib/board.mjs';
import { flipBoard, isPassed } from './handbook_features.mjs';

const LETTERS = 'PNBRQK';
const LONGEST_ROUTE = 5;

// {type: 'move' | 'route' | 'take' | 'castle', kind, from, to}, or null.
function readStep(text) {
  if (/^O-O(-O)?$/.test(text)) return { type: 'castle', long: text.length > 3 };
  const found = text.match(/^([NBRQK]?)([a-h][1-8])([->x])([a-h][1-8])$/);
  if (!found) return null;
  const type = { '-': 'move', '>': 'route', x: 'take' }[found[3]];
  return { type, kind: LETTERS.indexOf(found[1] || 'P') + 1,
    from: squareOf(found[2]), to: squareOf(found[4]) };
}

export function readKey(key) {
  const steps = key.split(',').map(readStep);
  return steps.includes(null) ? null : steps;
}

// Squares that the piece on `from` can get to in a number of own moves over
// squares that are empty or hold an enemy (which ends the route), none
// attacked by an enemy pawn before the last.
function reach(board, from, side) {
  const moves = new Map([[from, 0]]);
  const queue = [from];
  for (const square of queue) {
    const steps = moves.get(square);
    if (steps === LONGEST_ROUTE || (square !== from && board[square] !== 0)) {
      continue;
    }
    if (square !== from && isPawnAttacked(board, square, -side)) continue;
    const there = board.slice();
    there[from] = 0;
    there[square] = board[from];
    for (const next of attacksFrom(there, square)) {
      if (moves.has(next) || board[next] * side > 0) continue;
      moves.set(next, steps + 1);
      queue.push(next);
    }
  }
  return moves;
}

function pawnStepProblem(board, side, { type, from, to }) {
  const ahead = rankFor(to, side) - rankFor(from, side);
  if (type === 'take') {
    return pawnReach(from, side).includes(to) && board[to] * side < 0
      ? null : 'takes nothing';
  }
  if (type !== 'move' || fileOf(from) !== fileOf(to)) return 'no pawn move';
  if (ahead !== 1 && !(ahead === 2 && rankFor(from, side) === 2)) {
    return 'too far for a pawn';
  }
  for (let square = from + 8 * side; ; square += 8 * side) {
    if (board[square] !== 0) return `${nameOf(square)} is in the way`;
    if (square === to) return null;
  }
}

function pieceStepProblem(board, side, { type, from, to }) {
  if (board[to] * side > 0) return `${nameOf(to)} holds an own man`;
  if (type !== 'route') {
    return attacksFrom(board, from).includes(to) ? null : 'not its move';
  }
  return reach(board, from, side).has(to) ? null : 'no safe route';
}

const castleProblem = ({ castling }, side, long) => {
  const right = long ? 'q' : 'k';
  return castling.includes(side > 0 ? right.toUpperCase() : right)
    ? null : 'no right to castle';
};

// Plays the steps one after the other and tells what does not work.
function play(position, side, steps, say) {
  const board = position.board.slice();
  for (const step of steps) {
    if (step.type === 'castle') {
      const problem = castleProblem(position, side, step.long);
      if (problem) say(problem);
      continue;
    }
    const text = `${LETTERS[step.kind - 1]}${nameOf(step.from)}`;
    if (board[step.from] !== step.kind * side) {
      say(`no ${text} of the side`);
      return board;
    }
    const problem = step.kind === PAWN
      ? pawnStepProblem(board, side, step)
      : pieceStepProblem(board, side, step);
    if (problem) say(`${text}${nameOf(step.to)}: ${problem}`);
    board[step.to] = board[step.from];
    board[step.from] = 0;
  }
  return board;
}

const makesLever = (board, side, square) =>
  pawnReach(square, side).some((to) => board[to] === -PAWN * side);

const supported = (board, side, square) =>
  attackersOf(board, square, side).length > 0;

const isPawnStep = (step) => step.kind === PAWN;

// Own pawns on files first to last, and how many more than the enemy's.
const countOn = (board, side, first, last) =>
  squaresOf(board, side, PAWN).filter((square) =>
    fileOf(square) >= first && fileOf(square) <= last).length;

const lead = (board, side, first, last) =>
  countOn(board, side, first, last) - countOn(board, -side, first, last);

const CUTS = [[0, 2], [3, 4], [5, 7], [0, 3], [4, 7]];

// Where a knight, bishop or rook of the side can attack the target from.
function canCome(board, side, target) {
  const kinds = [2, 3, 4, 5];
  return squaresOf(board, side, ...kinds).filter((from) => {
    const empty = board.slice();
    empty[from] = 0;
    return [...reach(board, from, side).keys()].some((square) => {
      if (board[square] !== 0 && square !== from) return false;
      const there = empty.slice();
      there[square] = board[from];
      return attackersOf(there, target, side).includes(square);
    });
  });
}

const RULES = {
  siege({ board }, side, key, say) {
    const target = squareOf(key);
    if (target < 0) return say(`siege of ${key}`);
    if (board[target] * side >= 0) say(`no enemy man on ${key}`);
    if (canCome(board, side, target).length < 2) say(`too few reach ${key}`);
    return undefined;
  },
  lever(position, side, key, say, steps) {
    const last = steps[steps.length - 1];
    if (!isPawnStep(last)) return say('the last step is no pawn move');
    const after = play(position, side, steps, say);
    if (!makesLever(after, side, last.to)) say('makes no lever');
    return undefined;
  },
  expansion(position, side, key, say, steps) {
    const after = play(position, side, steps, say);
    const last = steps[steps.length - 1];
    if (!isPawnStep(last)) say('the last step is no pawn move');
    if (!supported(after, side, last.to)) say('the pawn is not supported');
  },
  regroup(position, side, key, say, steps) {
    play(position, side, steps, say);
    if (steps.some(isPawnStep)) say('a regroup of a pawn');
  },
  trade({ board }, side, key, say) {
    for (const pair of key.split(',')) {
      const [own, enemy] = pair.split('*').map((text) =>
        [LETTERS.indexOf(text?.[0]) + 1, squareOf(text?.slice(1))]);
      if (!own || !enemy) { say(`trade ${pair}`); continue; }
      if (board[own[1]] !== own[0] * side) say(`no own piece in ${pair}`);
      if (board[enemy[1]] !== -enemy[0] * side) say(`no enemy in ${pair}`);
    }
  },
  minority_attack(position, side, key, say, steps) {
    const { board } = position;
    RULES.lever(position, side, key, say, steps);
    const [first, last] = fileOf(steps[0].to) < 4 ? [0, 2] : [5, 7];
    if (lead(board, side, first, last) >= 0) say('no minority there');
    const files = [0, 1, 2].map((step) => first + step);
    if (!files.some((file) => countOn(board, side, file, file) === 0 &&
        countOn(board, -side, file, file) > 0)) say('no half-open file there');
  },
  majority(position, side, key, say, steps) {
    const { board } = position;
    play(position, side, steps, say);
    if (!steps.some(isPawnStep)) say('no pawn moves');
    const file = fileOf(steps.find(isPawnStep)?.to ?? 0);
    if (!CUTS.some(([first, last]) => file >= first && file <= last &&
        lead(board, side, first, last) > 0)) {
      say('no majority there');
    }
  },
  passer(position, side, key, say, steps) {
    const { board } = position;
    play(position, side, steps, say);
    const last = steps[steps.length - 1];
    if (isPawnStep(last)) {
      const pawn = steps.find(isPawnStep).from;
      if (!passedFor(board, pawn, side)) say(`${nameOf(pawn)} is not passed`);
      return;
    }
    const behind = last.to + 8 * side;
    const blocks = board[behind] === -PAWN * side &&
      passedFor(board, behind, -side);
    const own = squaresOf(board, side, PAWN).some((pawn) =>
      fileOf(pawn) === fileOf(last.to) && passedFor(board, pawn, side));
    if (!blocks && !own) say('neither a blockade nor support of a passed pawn');
  },
  king_attack(position, side, key, say, steps) {
    const after = play(position, side, steps, say);
    const king = findKing(after, -side);
    const last = steps[steps.length - 1];
    const neighbourhood = squaresOf(after, -side, KING).concat(
      [...Array(64).keys()].filter((s) => kingSteps(s, king) === 1));
    const seen = neighbourhood.some((square) =>
      attackersOf(after, square, side).includes(last.to));
    if (!seen && Math.abs(fileOf(last.to) - fileOf(king)) > 2) {
      say('nowhere near the king');
    }
  },
  king_walk({ board }, side, key, say, steps) {
    const [{ kind, from, to }] = steps;
    if (kind !== KING || board[from] !== KING * side) return say('no king');
    const bare = board.slice();
    bare[from] = 0;
    const distance = new Map([[from, 0]]);
    const queue = [from];
    for (const square of queue) {
      for (const next of attacksFrom(withKing(bare, square, side), square)) {
        if (distance.has(next) || board[next] * side > 0) continue;
        if (attackersOf(bare, next, -side).length) continue;
        distance.set(next, distance.get(square) + 1);
        queue.push(next);
      }
    }
    if (!distance.has(to)) say('the king cannot get there');
    return undefined;
  },
  develop(position, side, key, say, steps) {
    const cleared = steps.filter((step) => step.type !== 'castle');
    play(position, side, steps, say);
    if (cleared.some((step) => step.kind === KING)) say('castle is O-O');
  },
  file({ board }, side, key, say) {
    const [name, more] = key.split(':');
    const file = 'abcdefgh'.indexOf(name);
    if (name.length !== 1 || file < 0) return say(`file ${key}`);
    if (countOn(board, side, file, file)) say('an own pawn on the file');
    if (!squaresOf(board, side, ROOK, QUEEN).length) say('no heavy piece');
    if (!more) return undefined;
    const steps = readKey(more);
    if (!steps) return say(`unreadable: ${more}`);
    play({ board, castling: '' }, side, steps, say);
    if (fileOf(steps[steps.length - 1].to) !== file) say('not on the file');
    return undefined;
  },
  restrain(position, side, key, say) {
    const [own, enemy] = key.split('/').map((text) => readKey(text ?? ''));
    if (!own || !enemy) return say(`restrain ${key}`);
    play(position, -side, enemy, (what) => say(`to be stopped: ${what}`));
    const after = play(position, side, own, say);
    const last = enemy[enemy.length - 1].to;
    const path = enemy.some(({ from, to }) => own.some((step) =>
      fileOf(step.to) === fileOf(from) &&
      (step.to - from) * (step.to - to) <= 0));
    const before = attackersOf(position.board, last, side).length;
    if (!path && attackersOf(after, last, side).length <= before) {
      say(`does nothing about ${nameOf(last)}`);
    }
    return undefined;
  },
  reshape(position, side, key, say, steps) {
    const { board } = position;
    const after = play(position, side, steps, say);
    const last = steps.findLast(isPawnStep);
    if (!last) return say('no pawn moves');
    const ram = after[last.to + 8 * side] === -PAWN * side;
    if (!ram && last.type !== 'take' && !makesLever(after, side, last.to) &&
        !makesLever(board, -side, last.from)) say('changes nothing');
    return undefined;
  },
};

const withKing = (board, square, side) => {
  const next = board.slice();
  next[square] = KING * side;
  return next;
};

const passedFor = (board, pawn, side) => (side > 0
  ? isPassed(board, pawn, 1)
  : isPassed(flipBoard(board), pawn ^ 56, 1));

const FREE_FORM = ['siege', 'trade', 'file', 'restrain'];

export function problemsOfKey(fen, colour, kind, key) {
  const found = [];
  const say = (what) => found.push(`${kind} ${key}: ${what}`);
  const free = FREE_FORM.includes(kind);
  const steps = free ? null : readKey(key);
  if (!steps && !free) return [`${kind}: unreadable ${key}`];
  RULES[kind](parseFen(fen), colour === 'w' ? 1 : -1, key, say, steps);
  return found;
}
