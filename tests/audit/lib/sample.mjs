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
      const moves = game.moves();
      const captures = moves.filter((san) => san.includes('x'));
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

// Endings near those that have a name, White with the pawn or against it:
// [letter, files, ranks] for what must stand near its place, and the letters
// put down anywhere. A file is a number of files from the pawn's.
const NEAR_TEXTBOOK = [
  { pawn: 'P', ranks: [2, 3, 4, 5, 6, 7], near: [['K', [-1, 0, 1], [4, 5, 6, 7, 8]]],
    anywhere: 'k' },
  { pawn: 'P', ranks: [7],
    near: [['K', [0], [8]], ['k', [-3, -2, 2, 3], [5, 6, 7, 8]],
      ['R', [-2, -1, 1, 2], [1, 2, 4]]],
    anywhere: 'r' },
  { pawn: 'P', ranks: [4, 5],
    near: [['k', [-1, 0, 0, 1], [7, 8]], ['r', [-4, -2, 1, 3], [6]],
      ['K', [-2, -1, 0, 1], [3, 4, 5, 6]]],
    anywhere: 'R' },
  { pawn: 'P', ranks: [6],
    near: [['k', [0], [7, 8]], ['r', [-4, -1, 2, 4], [1, 2, 3, 4]],
      ['K', [-1, 1, 3], [5, 6]]],
    anywhere: 'R' },
  { pawn: 'P', ranks: [4, 5, 6], files: [0, 7],
    near: [['R', [0], [8]], ['r', [-6, -5, -4, 4, 5, 6], [4, 5, 6]],
      ['k', [-7, -6, -5, 5, 6, 7], [7]], ['K', [-5, -1, 1, 4], [1, 2, 3]]],
    anywhere: '' },
  { pawn: 'P', ranks: [7],
    near: [['K', [-1, 0, 1], [7, 8]]], anywhere: 'kq' },
  { pawn: 'P', ranks: [3, 4, 5, 6],
    near: [['k', [0, 0, 1], [5, 6, 7, 8]]], anywhere: 'KBb' },
];

// null where two would share a square, or one falls off the board.
function nearTextbook(random) {
  const recipe = random.pick(NEAR_TEXTBOOK);
  const file = random.pick(recipe.files ?? [0, 1, 2, 3, 4, 5, 6, 7]);
  const placed = new Map();
  const put = (letter, to, rank) =>
    placed.set(to >= 0 && to < 8 ? `${'abcdefgh'[to]}${rank}` : letter, letter);
  put(recipe.pawn, file, random.pick(recipe.ranks));
  for (const [letter, files, ranks] of recipe.near) {
    put(letter, file + random.pick(files), random.pick(ranks));
  }
  for (const letter of recipe.anywhere) {
    put(letter, random.below(8), 1 + random.below(8));
  }
  const wanted = 1 + recipe.near.length + recipe.anywhere.length;
  const inside = [...placed.keys()].every((square) => square.length === 2);
  return inside && placed.size === wanted ? placed : null;
}

function* textbookPositions(seed) {
  const random = seeded(seed + 3);
  for (;;) {
    const placed = nearTextbook(random);
    if (placed === null) continue;
    const game = new Chess();
    game.clear();
    const swapped = random.below(2) === 1;
    for (const [square, letter] of placed) {
      const upper = letter === letter.toUpperCase();
      const rank = swapped ? 9 - Number(square[1]) : square[1];
      game.put({ type: letter.toLowerCase(), color: upper === swapped ? 'b' : 'w' },
        `${square[0]}${rank}`);
    }
    const fen = `${game.fen().split(' ')[0]} ${random.pick('wb')} - - 0 40`;
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
// play with one sparse ending in eight, and one in eight of those with a name.
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
  const named = textbookPositions(seed);
  while (seen.size < wanted) {
    const source = [sparse, named][random.below(8)] ?? played;
    // Neighbours in one game are much alike, so most are passed over.
    if (source === played) {
      for (let skip = 0; skip < 3; skip += 1) played.next();
    }
    const { value: fen } = source.next();
    if (isNew(fen)) yield fen;
  }
}
