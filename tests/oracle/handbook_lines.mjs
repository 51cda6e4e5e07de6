// The line of a row whose plan fails: the plan's side begins, SAN, by legal
// moves. "-" where nothing but the clock is against the plan.
import { Chess } from 'chess.js';

const VALUE = { p: 100, n: 325, b: 325, r: 500, q: 975, k: 0 };

function balance(chess, colour) {
  return chess.board().flat().filter(Boolean).reduce((sum, man) =>
    sum + VALUE[man.type] * (man.color === colour ? 1 : -1), 0);
}

// Material the side has lost at the end, or mate; "why" that says "loses"
// must be borne out. A line's last move is the refuter's.
export function problemsOfLine({ fen, side, standing, line, why }) {
  const tactical = /\bloses\b|\bmate\b/.test(why);
  if (line === '-') return tactical ? ['"loses" without a line'] : [];
  const fields = fen.split(' ');
  if (fields[1] !== side) return ['the line is not for the side to move'];
  const chess = new Chess(fen);
  const before = balance(chess, side);
  const moves = line.split(' ');
  for (const san of moves) {
    try {
      if (chess.move(san).san !== san) return [`${san} is not written as SAN`];
    } catch {
      return [`${san} is not legal`];
    }
  }
  const found = [];
  if (moves.length % 2) found.push('the last move is not the opponent\'s');
  const lost = before - balance(chess, side);
  if (tactical && !chess.isCheckmate() && lost < 100) {
    found.push(`"loses", but material changes by ${-lost}`);
  }
  if (tactical && standing === 'slow') found.push('a loss is not slow');
  return found;
}
