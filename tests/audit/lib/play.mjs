// Plays a claim's line with chess.js: SAN, "--" a pass, never in check.

import { Chess } from 'chess.js';
import { parseFen, squareOf } from './board.mjs';

// The FEN with the move handed over and en passant forgotten.
export function passFen(fen) {
  const [board, turn, castling, , half, full] = fen.split(' ');
  const next = turn === 'w' ? 'b' : 'w';
  const number = turn === 'w' ? full : Number(full) + 1;
  return [board, next, castling, '-', Number(half) + 1, number].join(' ');
}

// `step` is what was played: null for a pass.
function playOne(fen, san) {
  try {
    const game = new Chess(fen);
    if (san === '--') {
      if (game.inCheck()) return { error: 'a pass in check' };
      return { fen: passFen(game.fen()), step: null };
    }
    const move = game.move(san, { strict: true });
    return {
      fen: game.fen(),
      step: {
        san: move.san,
        from: squareOf(move.from),
        to: squareOf(move.to),
        promotion: ' pnbrqk'.indexOf(move.promotion ?? ' '),
        mate: game.isCheckmate(),
      },
    };
  } catch {
    return { error: `${san} is not a legal move in ${fen}` };
  }
}

// Remembers what it played from one position, since most lines of an
// explanation share their beginnings.
export class LinePlayer {
  constructor(fen) {
    this.nodes = new Map([['', { fen, position: parseFen(fen), step: null }]]);
  }

  // { positions, steps, fen } with one position more than steps and the FEN of
  // the last, or { error }.
  play(line) {
    const positions = [this.nodes.get('').position];
    const steps = [];
    let key = '';
    let { fen } = this.nodes.get('');
    for (const san of line) {
      key += `${san} `;
      let node = this.nodes.get(key);
      if (!node) {
        node = playOne(fen, san);
        if (!node.error) node.position = parseFen(node.fen);
        this.nodes.set(key, node);
      }
      if (node.error) return { error: node.error };
      fen = node.fen;
      positions.push(node.position);
      steps.push(node.step);
    }
    return { positions, steps, fen };
  }
}
