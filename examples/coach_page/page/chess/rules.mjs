// The rules of the game, from the chess.js library: which moves are legal, and
// what stands there after one.

import { Chess } from '../vendor/chess.js';

// Null for what the library does not take for a position.
function gameAt(fen) {
  try {
    return new Chess(fen);
  } catch {
    return null;
  }
}

// Legal moves: [{san, from, to, promotion}].
export function legalMoves(fen) {
  return gameAt(fen)?.moves({ verbose: true }) ?? [];
}

// {san, from, to, fen} of a move in SAN or coordinates; null when not legal.
export function play(fen, text) {
  const game = gameAt(fen);
  if (!game) return null;
  const coordinates = text.match(/^([a-h][1-8])([a-h][1-8])([qrbn])?$/);
  try {
    const { san, from, to } = game.move(coordinates
      ? { from: coordinates[1], to: coordinates[2], promotion: coordinates[3] }
      : text);
    return { san, from, to, fen: game.fen() };
  } catch {
    return null;
  }
}

// "12. Nf3" or "12... Nf6" of a move played in a position.
export function numbered(fen, san) {
  const [, side, , , , number = '1'] = fen.split(' ');
  return `${number}.${side === 'b' ? '..' : ''} ${san}`;
}
