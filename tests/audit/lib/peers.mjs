// The same questions put to chess.js: what selftest.mjs holds the auditor's
// own board scanning against.

import { Chess } from 'chess.js';
import { MATERIAL, QUEEN, nameOf, passed } from './board.mjs';
import { inCheck } from './legal.mjs';

const PIECES = ' pnbrqk';

export const chessMoves = (fen) => new Chess(fen).moves({ verbose: true })
  .map(({ from, to, promotion = '' }) => from + to + promotion).sort();

export const namedMoves = (moves) => moves.map(({ from, to, promotion }) =>
  nameOf(from) + nameOf(to) + PIECES[promotion].trim()).sort();

export const chessAttackers = (fen, square, side) => new Chess(fen)
  .attackers(nameOf(square), side > 0 ? 'w' : 'b').sort();

// The exchange value by plain recursion over chess.js's legal captures.
function exchange(game, square) {
  const prize = MATERIAL[PIECES.indexOf(game.get(square).type)];
  let best = 0;
  for (const move of game.moves({ verbose: true })) {
    if (move.to !== square || !move.captured || move.isEnPassant()) continue;
    if (move.promotion && move.promotion !== 'q') continue;
    const promotes = move.promotion ? MATERIAL[QUEEN] - MATERIAL[1] : 0;
    game.move(move);
    best = Math.max(best, prize + promotes - exchange(game, square));
    game.undo();
  }
  return best;
}

// undefined where chess.js cannot be asked: the pass would leave a king to be
// taken.
export function chessExchange(position, square) {
  const owner = Math.sign(position.board[square]);
  const fields = position.fen.split(' ');
  if (position.turn === owner) {
    if (inCheck(passed(position).board, owner)) return undefined;
    fields[1] = owner > 0 ? 'b' : 'w';
    fields[3] = '-';
  }
  return exchange(new Chess(fields.join(' ')), nameOf(square));
}
