// Compares the library's rules, SAN and FEN with chess.js, an independent
// rules library (BSD-2), on the positions of the real games that its package
// carries and of random games from a fixed seed.
//
//   node rules_oracle.mjs <path of rules_dump>
//
// Both write the en passant square only where the capture is legal. Needs
// `npm ci --prefix tests` once. chess.js's public moves({verbose: true}) builds
// all moves again for each move; its private parts, which the exact version in
// package.json holds still, are some ten times as fast and the same code.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

import { Chess } from 'chess.js';

const SEED = 20261125;
const POSITIONS = 60000;  // distinct ones, those of the real games included
const LONGEST_GAME = 240;  // plies
const BATCH = 1000;
const MOST_MISMATCHES_SHOWN = 5;

// The initial position, and some from which castling, promotion and en passant
// come about more often than from it.
const STARTS = [
  'rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1',
  'r3k2r/p1ppqpb1/bn2pnp1/3PN3/1p2P3/2N2Q1p/PPPBBPPP/R3K2R w KQkq - 0 1',
  'rnbqkbnr/8/8/PPPPPPPP/pppppppp/8/8/RNBQKBNR w KQkq - 0 1',
  'n1n1k3/PPP3pp/8/8/8/8/pp3PPP/3K1N1N b - - 0 1',
  '4k3/pppppppp/8/8/8/8/PPPPPPPP/4K3 w - - 0 1',
  '4k3/2b2n2/8/8/8/8/2N2B2/4K3 w - - 0 1',
];

// Mulberry32, from memory: any generator with a fixed seed will do here.
function randomNumbers(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let z = state;
    z = Math.imul(z ^ (z >>> 15), z | 1);
    z ^= z + Math.imul(z ^ (z >>> 7), z | 61);
    return (z ^ (z >>> 14)) >>> 0;
  };
}

// What rules_dump has to say of the position, from chess.js; and its moves.
function expectedOf(chess) {
  const moves = chess._moves();
  const lines = moves.map((move) => {
    const san = chess._moveToSan(move, moves);
    chess._makeMove(move);
    const fen = chess.fen();
    chess._undoMove();
    return [san, fen];
  });
  lines.sort((a, b) => (a[0] < b[0] ? -1 : a[0] > b[0] ? 1 : 0));
  const check = chess.isCheck();
  const json = JSON.stringify({
    moves: lines,
    check,
    mate: check && moves.length === 0,
    stalemate: !check && moves.length === 0,
    insufficient: chess.isInsufficientMaterial(),
  });
  return { moves, json };
}

class Comparison {
  constructor(dump) {
    this.dump = dump;
    this.seen = new Set();
    this.batch = [];
    this.moves = 0;
    this.mismatches = 0;
    this.kinds = { check: 0, mate: 0, stalemate: 0, insufficient: 0,
                   castling: 0, promotion: 0, enPassant: 0 };
  }

  get positions() { return this.seen.size; }

  // Takes the position on the board unless it was seen; gives its moves.
  add(chess) {
    const fen = chess.fen();
    const identity = fen.split(' ').slice(0, 4).join(' ');
    if (this.seen.has(identity)) return chess._moves();
    this.seen.add(identity);
    const { moves, json } = expectedOf(chess);
    this.count(fen, moves, json);
    this.batch.push({ fen, json });
    if (this.batch.length === BATCH) this.flush();
    return moves;
  }

  count(fen, moves, json) {
    this.moves += moves.length;
    for (const kind of ['check', 'mate', 'stalemate', 'insufficient']) {
      if (json.includes(`"${kind}":true`)) ++this.kinds[kind];
    }
    if (json.includes('"O-O')) ++this.kinds.castling;
    if (json.includes('=Q')) ++this.kinds.promotion;
    if (fen.split(' ')[3] !== '-') ++this.kinds.enPassant;
  }

  flush() {
    const run = spawnSync(this.dump, {
      input: this.batch.map(({ fen }) => fen + '\n').join(''),
      encoding: 'utf8',
      maxBuffer: 1 << 28,
    });
    if (run.status !== 0) throw new Error(`rules_dump failed: ${run.stderr}`);
    const answers = run.stdout.trimEnd().split('\n');
    if (answers.length !== this.batch.length) {
      throw new Error(`${answers.length} answers to ${this.batch.length} FENs`);
    }
    this.batch.forEach(({ fen, json }, i) => {
      if (answers[i] !== json) this.report(fen, json, answers[i]);
    });
    this.batch = [];
  }

  report(fen, json, answer) {
    if (++this.mismatches > MOST_MISMATCHES_SHOWN) return;
    const theirs = JSON.parse(json);
    const ours = JSON.parse(answer);
    console.error(`differs on ${fen}`);
    if (ours.error) console.error(`  refused: ${ours.error}`);
    const lineOf = (line) => line.join(' -> ');
    const our = new Set((ours.moves ?? []).map(lineOf));
    const their = new Set(theirs.moves.map(lineOf));
    for (const line of our) {
      if (!their.has(line)) console.error(`  only ours: ${line}`);
    }
    for (const line of their) {
      if (!our.has(line)) console.error(`  only chess.js: ${line}`);
    }
    for (const flag of ['check', 'mate', 'stalemate', 'insufficient']) {
      if (ours[flag] !== theirs[flag]) {
        console.error(`  ${flag}: ${ours[flag]}, chess.js ${theirs[flag]}`);
      }
    }
  }
}

// The games that chess.js's own benchmark reads, read where npm put them.
function addRealGames(comparison) {
  const main = createRequire(import.meta.url).resolve('chess.js');
  const pgn = readFileSync(
    main.replace(/dist.*$/, 'benchmarks/benchmark.pgn'), 'utf8');
  const games = pgn.split(/\n(?=\[Event )/).filter((text) => text.trim());
  for (const text of games) {
    const game = new Chess();
    game.loadPgn(text);
    const chess = new Chess();
    comparison.add(chess);
    for (const { from, to, promotion } of game._history.map((h) => h.move)) {
      const move = chess._moves().find((m) => m.from === from && m.to === to &&
                                              m.promotion === promotion);
      chess._makeMove(move);
      comparison.add(chess);
    }
  }
  return games.length;
}

function addRandomGames(comparison) {
  const random = randomNumbers(SEED);
  let games = 0;
  while (comparison.positions < POSITIONS) {
    const chess = new Chess(STARTS[games++ % STARTS.length]);
    for (let ply = 0; ply < LONGEST_GAME; ++ply) {
      const moves = comparison.add(chess);
      if (moves.length === 0 || comparison.positions >= POSITIONS) break;
      if (chess.isInsufficientMaterial()) break;
      chess._makeMove(moves[random() % moves.length]);
    }
  }
  return games;
}

const comparison = new Comparison(process.argv[2]);
const realGames = addRealGames(comparison);
const ofRealGames = comparison.positions;
const randomGames = addRandomGames(comparison);
if (comparison.batch.length > 0) comparison.flush();
console.log(
  `${comparison.positions} distinct positions (${ofRealGames} of ` +
  `${realGames} real games, the rest of ${randomGames} random ones), ` +
  `${comparison.moves} ` +
  `moves; ${JSON.stringify(comparison.kinds)}; ` +
  `${comparison.mismatches} positions differ`);
const rare = Object.entries(comparison.kinds).filter(([, n]) => n === 0);
if (rare.length > 0) console.error(`never seen: ${rare.map(([k]) => k)}`);
process.exitCode = comparison.mismatches > 0 || rare.length > 0 ? 1 : 0;
