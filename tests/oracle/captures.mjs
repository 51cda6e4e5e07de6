// The game of captures on one square, played out by brute force through
// chess.js, whose legal moves are the only rules used here. chess.js's private
// moves are used for speed; package.json pins them.
import { Chess } from 'chess.js';

export const VALUE = { p: 100, n: 325, b: 325, r: 500, q: 975, k: 0 };

// What the side to move gains on the square at best, stopping when it likes.
function best(chess, square) {
  let gain = 0;
  for (const move of chess._moves()) {
    if (!move.captured || move.to !== square) continue;
    if (move.flags & 8) continue;  // en passant is left out
    if (move.promotion && move.promotion !== 'q') continue;
    chess._makeMove(move);
    const reply = best(chess, square);
    chess._undoMove();
    const promoted = move.promotion ? VALUE.q - VALUE.p : 0;
    gain = Math.max(gain, VALUE[move.captured] + promoted - reply);
  }
  return gain;
}

// The FEN with the move handed to `turn` ("w" or "b").
export function withTurn(fen, turn) {
  const fields = fen.split(' ');
  if (fields[1] !== turn) fields[3] = '-';
  fields[1] = turn;
  return fields.join(' ');
}

// chess.js numbers squares from a8 on, 16 a rank.
const number = (name) =>
  (8 - Number(name[1])) * 16 + 'abcdefgh'.indexOf(name[0]);

// What `taker` gains by captures on the square when it begins.
export function captureGain(fen, square, taker) {
  const chess = new Chess(withTurn(fen, taker), { skipValidation: true });
  return best(chess, number(square));
}
