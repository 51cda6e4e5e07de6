// Rows about reaching a square: routes, and the attackers and defenders that
// can be brought up. The target and k are the claim's choice, so each claim
// is recomputed and not looked up in a list.

import {
  BISHOP, KING, KNIGHT, QUEEN, ROOK, kindOf, sideOf, squaresOf,
} from './board.mjs';
import {
  attackersOf, attacksFrom, isPawnAttacked, reachFrom,
} from './attacks.mjs';
import { READINGS } from './readings.mjs';
import { isMinor, isOutpost, isPinned } from './words.mjs';

// Whether a piece of `side` may stop on a square on its way.
function mayStop(board, square, side) {
  if (isPawnAttacked(board, square, -side)) return false;
  const there = sideOf(board[square]);
  return there === 0 || (there !== side && READINGS.routesMayCapture);
}

const OUTPOST_ROUTE = {
  ordered: ['squares'],
  verify({ board }, { side, squares, others, count, otherCount }) {
    if (others.length || count || otherCount) return 'the row has squares only';
    if (squares.length < 2 || squares.length > 4) return 'not one to three moves';
    const [start, ...stops] = squares;
    const piece = board[start];
    if (!isMinor(piece) || sideOf(piece) !== side) {
      return 'no knight or bishop of that side at the start';
    }
    if (isPinned(board, start)) return 'the piece is pinned';
    const goal = stops[stops.length - 1];
    if (board[goal] !== 0) return 'the goal is not empty';
    if (!isOutpost(board, goal, side)) return 'the goal is no outpost';
    let from = start;
    for (const stop of stops) {
      if (!reachFrom(board, from, kindOf(piece), side).includes(stop)) {
        return 'a step is not a move of that piece';
      }
      if (!mayStop(board, stop, side)) return 'it cannot stop on the way';
      from = stop;
    }
    return null;
  },
};

const ATTACK_COUNT = {
  verify({ board }, { side, squares, others, count, otherCount }) {
    if (!side) return 'no side';
    if (squares.length !== 1 || others.length) return 'one target is needed';
    if (sideOf(board[squares[0]]) !== -side) return 'the target is not enemy';
    const attackers = attackersOf(board, squares[0], side).length;
    const defenders = attackersOf(board, squares[0], -side).length;
    if (attackers === count && defenders === otherCount) return null;
    return `attackers are ${attackers}, defenders ${defenders}`;
  },
};

// The fewest moves after which the piece on `start` attacks `target`;
// Infinity when it takes more than `limit`.
function movesToAttack(board, start, target, side, limit) {
  if (attacksFrom(board, start).includes(target)) return 0;
  const kind = kindOf(board[start]);
  const movers = [KNIGHT, BISHOP, ROOK, QUEEN];
  if (READINGS.siegeMovesKings) movers.push(KING);
  if (!movers.includes(kind) || isPinned(board, start)) return Infinity;
  const seen = new Set([start]);
  let edge = [start];
  for (let moves = 1; moves <= limit; moves += 1) {
    const next = [];
    for (const from of edge) {
      for (const stop of reachFrom(board, from, kind, side)) {
        if (seen.has(stop) || stop === target) continue;
        if (!mayStop(board, stop, side)) continue;
        seen.add(stop);
        next.push(stop);
      }
    }
    const arrived = next.some(
      (stop) => reachFrom(board, stop, kind, side).includes(target));
    if (arrived) return moves;
    edge = next;
  }
  return Infinity;
}

// Costs by square of every unit of a side that can get there within k.
function siegeCosts(board, target, side, k) {
  const costs = new Map();
  for (const square of squaresOf(board, side, 1, 2, 3, 4, 5, 6)) {
    if (square === target) continue;
    const cost = movesToAttack(board, square, target, side, k);
    if (cost <= k) costs.set(square, cost);
  }
  return costs;
}

// Cheapest first: the most units whose costs add up to at most k.
function mostWithin(costs, k) {
  let left = k;
  let count = 0;
  for (const cost of [...costs.values()].sort((a, b) => a - b)) {
    if (cost > left) break;
    left -= cost;
    count += 1;
  }
  return count;
}

const SIEGE_COUNT = {
  usesTempi: true,
  verify({ board }, { side, squares, others, count, otherCount, tempi }) {
    if (!side) return 'no side';
    if (squares.length !== 1) return 'one target is needed';
    const [target] = squares;
    if (sideOf(board[target]) === side) return 'the target is the own side\'s';
    const costs = siegeCosts(board, target, side, tempi);
    const attackers = mostWithin(costs, tempi);
    const defenders = mostWithin(siegeCosts(board, target, -side, tempi), tempi);
    if (attackers !== count || defenders !== otherCount) {
      return `attackers are ${attackers}, defenders ${defenders}`;
    }
    if (new Set(others).size !== count) return 'others are not those counted';
    const spent = others.map((square) => costs.get(square) ?? Infinity);
    // Ties leave a choice, so any set that is affordable will do.
    if (spent.reduce((sum, cost) => sum + cost, 0) > tempi) {
      return 'those pieces cannot all get there in time';
    }
    return null;
  },
};

export const SIEGE_KINDS = { OUTPOST_ROUTE, ATTACK_COUNT, SIEGE_COUNT };
