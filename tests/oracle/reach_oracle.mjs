// Recomputes lever moves, routes and counts with chess.js, an independent rules
// library (BSD-2): how its pieces move and attack is all that is used here.
//
//   node reach_oracle.mjs <path of reach_dump>
//
// Positions are those of the real games that chess.js's package carries, read
// where npm put them, and of random games from a fixed seed, which have the
// pins, checks and odd material that good play avoids. The definitions are the
// words "lever move", "pinned", "outpost" and "route" and the kinds LEVER_MOVE,
// OUTPOST_ROUTE, CONTROL, ATTACK_COUNT and SIEGE_COUNT of claim.proto. chess.js's
// private parts, which package.json holds still, answer where a piece could go
// from any square.
import { spawnSync } from 'node:child_process';

import { Chess } from 'chess.js';

import { positions } from '../audit/lib/sample.mjs';
import { VALUE, withTurn } from './captures.mjs';

const POSITIONS = 5000;
const SEED = 20261126;
const MOST_SHOWN = 10;
const MOST_MOVES = 3;  // as far as reach is told
const MOST_TEMPI = 4;  // of sieges of men
const TEMPI_OF_SQUARES = 3;  // of sieges of empty squares
const WALKERS = ['n', 'b', 'r', 'q'];

const NAMES = [];
for (let rank = 1; rank <= 8; rank += 1) {
  for (const file of 'abcdefgh') NAMES.push(file + rank);
}
// chess.js numbers squares from a8 on, 16 a rank.
const numberOf = (name) =>
  (8 - Number(name[1])) * 16 + name.charCodeAt(0) - 'a'.charCodeAt(0);
const NAME_OF = new Map(NAMES.map((name) => [numberOf(name), name]));

const other = (color) => (color === 'w' ? 'b' : 'w');
const rankFor = (name, color) =>
  (color === 'w' ? Number(name[1]) : 9 - Number(name[1]));
const nextTo = (a, b) => Math.abs(a.charCodeAt(0) - b.charCodeAt(0)) === 1;
const price = (type) => (type === 'k' ? Infinity : VALUE[type]);

class Position {
  constructor(fen) {
    this.fen = fen;
    this.chess = new Chess(fen);
    this.inCheck = this.chess.isCheck();
    this.turn = this.chess.turn();
    this.men = new Map(this.chess.board().flat().filter(Boolean)
      .map(({ square, type, color }) => [square, { type, color }]));
    this.attacks = new Map();
    this.attackersOf = new Map();
    this.pawnAttacked = { w: new Set(), b: new Set() };  // by that colour
    for (const name of NAMES) {
      for (const color of ['w', 'b']) {
        const from = this.chess.attackers(name, color);
        this.attackersOf.set(color + name, from);
        if (from.some((each) => this.men.get(each).type === 'p')) {
          this.pawnAttacked[color].add(name);
        }
      }
    }
    this.pinned = new Set();
    for (const [square, { type }] of this.men) {
      if (type !== 'k' && this.isPinned(square)) this.pinned.add(square);
    }
    this.walks = new Map();
  }

  // Where a piece of either colour could move to from a square, the rest of the
  // board as it is; with the enemies that it could take.
  movesOf(type, color, square) {
    const { chess } = this;
    const at = numberOf(square);
    const { [at]: there } = chess._board;
    const { _turn: turn } = chess;
    chess._board[at] = { type, color };
    chess._turn = color;
    const to = chess._moves({ legal: false, square })
      .filter(({ flags }) => !(flags & (32 | 64)))  // castling
      .map((move) => NAME_OF.get(move.to));
    chess._board[at] = there;
    chess._turn = turn;
    return to;
  }

  // What it would attack from there, own men included: what a piece of either
  // colour could go to or take.
  attacksFrom(type, square) {
    const key = type + square;
    if (!this.attacks.has(key)) {
      this.attacks.set(key, new Set([
        ...this.movesOf(type, 'w', square), ...this.movesOf(type, 'b', square)]));
    }
    return this.attacks.get(key);
  }

  // Taken off the board, it would lay open its king, or a piece worth more than
  // itself and than the slider, to an enemy slider that now attacks it.
  isPinned(square) {
    const { type, color } = this.men.get(square);
    const sliders = this.attackersOf.get(other(color) + square)
      .filter((from) => 'brq'.includes(this.men.get(from).type));
    for (const from of sliders) {
      const slider = this.men.get(from);
      const before = new Set(this.movesOf(slider.type, slider.color, from));
      const at = numberOf(square);
      const { [at]: there } = this.chess._board;
      this.chess._board[at] = undefined;
      const after = this.movesOf(slider.type, slider.color, from);
      this.chess._board[at] = there;
      for (const name of after) {
        const behind = this.men.get(name);
        if (before.has(name) || behind?.color !== color) continue;
        if (price(behind.type) > price(type) &&
            price(behind.type) > price(slider.type)) {
          return true;
        }
      }
    }
    return false;
  }

  // Routes: the fewest moves to each square, at most as many as given.
  reach(square, most) {
    const { type, color } = this.men.get(square);
    const moves = new Map([[square, 0]]);
    if (this.pinned.has(square)) return moves;
    let edge = [square];
    for (let count = 1; count <= most && edge.length > 0; count += 1) {
      const next = [];
      for (const from of edge) {
        const steps = type === 'k' ? this.kingSteps(from, color)
          : this.attacksFrom(type, from);
        for (const to of steps) {
          if (moves.has(to) || this.men.get(to)?.color === color) continue;
          if (this.pawnAttacked[other(color)].has(to)) continue;
          moves.set(to, count);
          next.push(to);
        }
      }
      edge = next;
    }
    return moves;
  }

  // chess.js keeps one king a side, so that a king is asked about as a queen
  // that stops after a step.
  kingSteps(square, color) {
    return this.movesOf('q', color, square).filter((to) =>
      Math.abs(to.charCodeAt(0) - square.charCodeAt(0)) <= 1 &&
      Math.abs(Number(to[1]) - Number(square[1])) <= 1);
  }

  // The fewest moves after which a man attacks each square from elsewhere.
  bears(square) {
    if (this.walks.has(square)) return this.walks.get(square);
    const { type, color } = this.men.get(square);
    const moves = new Map();
    for (const name of NAMES) {
      if (this.attackersOf.get(color + name).includes(square)) {
        moves.set(name, 0);
      }
    }
    if (WALKERS.includes(type) && !this.pinned.has(square)) {
      for (const [stop, count] of this.reach(square, MOST_TEMPI)) {
        for (const target of this.attacksFrom(type, stop)) {
          if (!(moves.get(target) <= count)) moves.set(target, count);
        }
      }
    }
    this.walks.set(square, moves);
    return moves;
  }

  // Costs of those of a side that can come to bear, cheapest first.
  costs(target, color) {
    const costs = [];
    for (const [square, man] of this.men) {
      if (man.color !== color || square === target) continue;
      const cost = this.bears(square).get(target);
      if (cost !== undefined) costs.push(cost);
    }
    return costs.sort((a, b) => a - b);
  }

  most(target, color, tempi) {
    let left = tempi;
    let count = 0;
    for (const cost of this.costs(target, color)) {
      left -= cost;
      if (left < 0) break;
      count += 1;
    }
    return count;
  }

  levers() {
    const found = [];
    if (this.inCheck) return found;
    for (const color of ['w', 'b']) {
      const chess = new Chess(withTurn(this.fen, color), { skipValidation: true });
      for (const move of chess._moves({ piece: 'p' })) {
        if (move.captured || move.promotion) continue;
        const to = NAME_OF.get(move.to);
        chess._makeMove(move);
        // Opposing pawns attack each other or neither does.
        const attacked = chess.attackers(to, other(color))
          .filter((from) => chess.get(from).type === 'p');
        chess._undoMove();
        if (attacked.length === 0) continue;
        found.push([`${color} ${NAME_OF.get(move.from)}-${to}`,
          ...NAMES.filter((name) => attacked.includes(name))].join(' '));
      }
    }
    return found;
  }

  outposts(color) {
    const pawns = [...this.men].filter(([, man]) =>
      man.type === 'p' && man.color !== color).map(([square]) => square);
    return NAMES.filter((name) => !this.men.has(name) &&
      rankFor(name, color) >= 4 && rankFor(name, color) <= 6 &&
      this.pawnAttacked[color].has(name) &&
      !pawns.some((pawn) => nextTo(pawn, name) &&
        rankFor(pawn, color) > rankFor(name, color)));
  }
}

const sorted = (list) => [...list].sort();

// Each gives what differs, as texts.
function differences(position, ours) {
  const found = [];
  const compare = (what, mine, theirs) => {
    const a = new Set(mine);
    const b = new Set(theirs);
    for (const item of sorted(a)) {
      if (!b.has(item)) found.push(`${what}: only chess.js has ${item}`);
    }
    for (const item of sorted(b)) {
      if (!a.has(item)) found.push(`${what}: only ours has ${item}`);
    }
    if (theirs.length !== b.size) found.push(`${what}: the same twice`);
  };

  compare('lever move', position.levers(), ours.levers);

  const pieces = [...position.men].filter(([, man]) => man.type !== 'p');
  compare('reach', pieces.map(([square, { color }]) => {
    const moves = position.reach(square, MOST_MOVES);
    return `${color}${square} ${NAMES.map((to) => moves.get(to) ?? '.').join('')}`;
  }), Object.entries(ours.reach).map(([key, told]) => `${key} ${told}`));

  // One of the shortest routes for each piece and outpost.
  const ends = [];
  for (const [square, { type, color }] of pieces) {
    if (type !== 'n' && type !== 'b') continue;
    const moves = position.reach(square, MOST_MOVES);
    for (const goal of position.outposts(color)) {
      if (moves.get(goal) > 0) ends.push(`${square} ${goal} ${moves.get(goal)}`);
    }
  }
  compare('outpost route', ends, ours.routes.map((route) => {
    const stops = route.split(' ');
    return `${stops[0]} ${stops[stops.length - 1]} ${stops.length - 1}`;
  }));
  for (const route of ours.routes) {
    const stops = route.split(' ');
    const { type, color } = position.men.get(stops[0]);
    const legal = stops.slice(1).every((stop, i) =>
      position.attacksFrom(type, stops[i]).has(stop) &&
      position.men.get(stop)?.color !== color &&
      !position.pawnAttacked[other(color)].has(stop));
    if (!legal) found.push(`outpost route: no way ${route}`);
  }

  const count = (color, name) => position.attackersOf.get(color + name).length;
  compare('control', NAMES.map((name) =>
    `${name} ${count('w', name)}/${count('b', name)}`),
  ours.control.map((counts, i) => `${NAMES[i]} ${counts}`));
  compare('attack count', [...position.men].map(([square, { color }]) => {
    const side = other(color);
    return `${side} ${square} ${count(side, square)}/${count(color, square)}`;
  }), ours.attacks);

  const sieges = [];
  const siege = (side, name, tempi) => sieges.push(
    `${side} ${name} ${tempi} ${position.most(name, side, tempi)}/` +
    `${position.most(name, other(side), tempi)}`);
  for (const side of ['w', 'b']) {
    for (const name of NAMES) {
      const man = position.men.get(name);
      if (man === undefined) siege(side, name, TEMPI_OF_SQUARES);
      if (man === undefined || man.color === side) continue;
      for (let tempi = 0; tempi <= MOST_TEMPI; tempi += 1) siege(side, name, tempi);
    }
  }
  const told = ours.sieges.map((item) => item.split(' '));
  compare('siege count', sieges, told.map((words) => words.slice(0, 4).join(' ')));
  for (const [side, target, tempi, counts, ...others] of told) {
    const costs = others.map((from) => (position.men.get(from)?.color === side
      ? position.bears(from).get(target) ?? Infinity : Infinity));
    const spent = costs.reduce((a, b) => a + b, 0);
    if (spent > Number(tempi) || new Set(others).size !== parseInt(counts, 10)) {
      found.push(`siege count: ${side} ${target}: not ${others} in ${tempi}`);
    }
  }
  return { found, sieges: sieges.length, routes: ends.length };
}

// Wrong answers that the comparison must notice: [what, how it is damaged].
const DAMAGES = [
  ['lever move', (ours) => ours.levers.pop()],
  ['reach', (ours) => {
    const [key] = Object.keys(ours.reach);
    ours.reach[key] = ours.reach[key].replace(/[1.]/, '2');
  }],
  ['outpost route', (ours) => ours.routes.pop()],
  ['control', (ours) => { ours.control[27] = '9/9'; }],
  ['attack count', (ours) => { ours.attacks[0] += '1'; }],
  ['siege count', (ours) => { ours.sieges[0] = ours.sieges[0].replace(/\d\//, '9/'); }],
];

const fens = [...positions(POSITIONS, SEED)];
const run = spawnSync(process.argv[2], {
  input: fens.map((fen) => `${fen}\n`).join(''),
  encoding: 'utf8',
  maxBuffer: 1 << 30,
});
if (run.status !== 0) throw new Error(`reach_dump failed: ${run.stderr}`);
const answers = run.stdout.trimEnd().split('\n').map((line) => JSON.parse(line));
if (answers.length !== fens.length) throw new Error('an answer is missing');

const totals = { levers: 0, routes: 0, sieges: 0, pinned: 0, inCheck: 0 };
let differing = 0;
let undamaged = DAMAGES;
fens.forEach((fen, i) => {
  if (answers[i].error) throw new Error(`refused: ${fen}`);
  const position = new Position(fen);
  const { found, sieges, routes } = differences(position, answers[i]);
  totals.levers += answers[i].levers.length;
  totals.routes += routes;
  totals.sieges += sieges;
  totals.pinned += position.pinned.size;
  totals.inCheck += position.inCheck ? 1 : 0;
  if (found.length > 0) {
    differing += 1;
    if (differing <= MOST_SHOWN) console.error(`${fen}\n  ${found.join('\n  ')}`);
    return;
  }
  undamaged = undamaged.filter(([what, damage]) => {
    const wrong = structuredClone(answers[i]);
    damage(wrong);
    return !differences(position, wrong).found.some(
      (text) => text.startsWith(what));
  });
});

const unnoticed = undamaged.map(([what]) => what);
if (unnoticed.length > 0) console.error(`errors not noticed: ${unnoticed}`);
const rare = Object.keys(totals).filter((key) => totals[key] < 100);
if (rare.length > 0) console.error(`hardly any: ${rare}`);
console.log(`${fens.length} positions, ${JSON.stringify(totals)}; ` +
  `${differing} positions differ`);
process.exitCode = differing || unnoticed.length || rare.length ? 1 : 0;
