// Positions out of random games by a rules library of others.

import { Chess } from 'chess.js';

// Small and good enough: numerical recipes' linear congruential generator.
function generator(seed) {
  let state = seed >>> 0;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

export function positions(count, seed = 1) {
  const random = generator(seed);
  const fens = [];
  while (fens.length < count) {
    const game = new Chess();
    for (let ply = 0; ply < 80 && fens.length < count; ply += 1) {
      const moves = game.moves();
      if (moves.length === 0) break;
      game.move(moves[random(moves.length)]);
      fens.push(game.fen());
    }
  }
  return fens;
}
