// Positions to audit: games that come with chess.js, seeded random play and
// seeded sparse endings.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { Chess } from 'chess.js';
import { seeded } from './random.mjs';

// The games are read where npm put them; they are not copied.
function gamesText() {
  let folder = dirname(createRequire(import.meta.url).resolve('chess.js'));
  for (;;) {
    try {
      return readFileSync(join(folder, 'benchmarks', 'benchmark.pgn'), 'utf8');
    } catch {
      const parent = dirname(folder);
      if (parent === folder) throw new Error('chess.js has no games here');
      folder = parent;
    }
  }
}

// A game begins with its first tag after a blank line.
const splitGames = (text) =>
  text.replace(/\r/g, '').split(/\n\n(?=\[)/).filter((game) => game.trim());

function* gamePositions() {
  for (const text of splitGames(gamesText())) {
    const game = new Chess();
    game.loadPgn(text);
    for (const move of game.history({ verbose: true })) yield move.after;
  }
}

// Random games: quick to reach odd material and bare kings. Captures are
// taken up more often in some games, so that endings come up.
function* randomPositions(seed) {
  const random = seeded(seed);
  for (;;) {
    const game = new Chess();
    const greed = random.below(4);
    for (let ply = 0; ply < 200 && !game.isGameOver(); ply += 1) {
      const moves = game.moves({ verbose: true });
      const captures = moves.filter((move) => move.captured);
      const hungry = captures.length > 0 && random.below(4) < greed;
      game.move(random.pick(hungry ? captures : moves));
      if (ply >= 4) yield game.fen();
    }
  }
}

const SPARSE = ['P', 'PP', 'BP', 'B', 'N', 'BB', 'RP', 'NP', 'QP', 'Bb', 'Pp',
  'BPP', 'RPp', 'BPp', 'RPr', 'BPb', 'Rbp', 'PPpp'];

// Kings and a few units put down at random: random play alone hardly ever
// comes to the endings that have rows of their own.
function* sparsePositions(seed) {
  const random = seeded(seed + 2);
  for (;;) {
    const game = new Chess();
    game.clear();
    const units = random.pick(SPARSE);
    const swapped = random.below(2) === 1;
    for (const letter of `Kk${units}`) {
      const pawn = letter.toLowerCase() === 'p';
      // Every other pawn goes to an edge file.
      const file = random.pick(
        pawn && random.below(2) ? 'ah' : 'abcdefgh');
      const rank = pawn ? 2 + random.below(6) : 1 + random.below(8);
      const upper = letter === letter.toUpperCase();
      const color = upper === swapped ? 'b' : 'w';
      game.put({ type: letter.toLowerCase(), color }, `${file}${rank}`);
    }
    const placed = game.fen().split(' ')[0];
    const fen = `${placed} ${random.pick('wb')} - - 0 40`;
    if (isPossible(fen)) yield fen;
  }
}

// Whether a position could be met: chess.js takes it, and the side that has
// just moved is not in check.
function isPossible(fen) {
  try {
    const game = new Chess(fen);
    const waiting = game.turn() === 'w' ? 'b' : 'w';
    const [king] = game.findPiece({ type: 'k', color: waiting });
    return !game.isAttacked(king, game.turn());
  } catch {
    return false;
  }
}

// N distinct positions: half from the games (or all of those), then random
// play with one sparse ending in eight.
export function* positions(wanted, seed = 1) {
  const seen = new Set();
  const isNew = (fen) => {
    const key = fen.split(' ').slice(0, 4).join(' ');
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  };
  const games = [...gamePositions()];
  const fromGames = Math.min(Math.ceil(wanted / 2), games.length);
  for (let i = 0; i < fromGames && seen.size < wanted; i += 1) {
    const fen = games[Math.floor((i * games.length) / fromGames)];
    if (isNew(fen)) yield fen;
  }
  const random = seeded(seed + 1);
  const played = randomPositions(seed);
  const sparse = sparsePositions(seed);
  while (seen.size < wanted) {
    const source = random.below(8) === 0 ? sparse : played;
    // Neighbours in one game are much alike, so most are passed over.
    if (source === played) {
      for (let skip = 0; skip < 3; skip += 1) played.next();
    }
    const { value: fen } = source.next();
    if (isNew(fen)) yield fen;
  }
}
