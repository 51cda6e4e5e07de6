// How often proofreading is wrong: false alarms on what is sound, and planted
// faults that it misses.
//
//   node tests/lesson/proofread_measure.mjs build/bin/assay
//
// What is sound and what is a fault is known from outside: main lines of well
// known openings (openings.txt) are sound, and leave nothing to take at their
// ends; who is short of a piece or more in them is lost (common practice, no
// source); where a piece was taken, in them or in the games that chess.js
// carries (npm), and is taken back at once, something hangs in between. All
// positions and lines are checked by chess.js.

import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync }
  from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const gamesFile =
  join(here, '..', 'node_modules', 'chess.js', 'benchmarks', 'benchmark.pgn');
if (!existsSync(gamesFile)) {
  console.log('skipped: run npm ci --prefix tests');
  process.exit(77);
}
const { Chess } = await import('chess.js');
const program = process.argv[2];
const values = { p: 1, n: 3, b: 3, r: 5, q: 9, k: 0 };

// The games of the npm package, of amateurs: only their captures are used.
const games = readFileSync(gamesFile, 'utf8').split(/\n\n(?=\[Event )/)
  .map((text) => {
    const game = new Chess();
    game.loadPgn(text);
    return game.history({ verbose: true });
  }).filter((moves) => moves.length > 30);
assert.ok(games.length >= 80, `${games.length} games`);

const isQuiet = (move) => !/[x+#=]/.test(move.san);

// The moves as PGN text from the position after `from` plies, which is that of
// the initial position where it is 0.
function movetext(moves, { nags = {}, inserted = {} } = {}) {
  let text = '';
  moves.forEach((move, i) => {
    const [, side, , , , number] = move.before.split(' ');
    if (side === 'w' || i === 0) text += `${number}${side === 'w' ? '.' : '...'} `;
    text += move.san + ' ';
    if (nags[i]) text += `$${nags[i]} `;
    if (inserted[i]) text += `(${inserted[i]}) `;
  });
  return text;
}

function game(name, body, fen) {
  const setUp = fen ? `[SetUp "1"]\n[FEN "${fen}"]\n` : '';
  return `[Event "${name}"]\n[Site "?"]\n[Date "????.??.??"]\n[Round "?"]\n` +
    `[White "?"]\n[Black "?"]\n[Result "*"]\n${setUp}\n${body}*\n\n`;
}

// All captures of both sides, as squares.
function captures(fen) {
  const fields = fen.split(' ');
  fields[3] = '-';
  const found = new Set();
  for (const side of ['w', 'b']) {
    fields[1] = side;
    const board = new Chess(fields.join(' '), { skipValidation: true });
    for (const move of board.moves({ verbose: true })) {
      if (move.captured) found.add(move.from + move.to);
    }
  }
  return found;
}

// The position without one piece of a side, and the game's next move in it.
function withoutPiece(moves, ply, side, kind) {
  const board = new Chess(moves[ply].before);
  for (const row of board.board()) {
    for (const unit of row) {
      if (!unit || unit.color !== side || unit.type !== kind) continue;
      if (moves[ply].from === unit.square) continue;
      const short = new Chess(moves[ply].before);
      short.remove(unit.square);
      // Castling rights need their rook.
      const fields = short.fen().split(' ');
      fields[2] = '-';
      fields[3] = '-';
      const fen = fields.join(' ');
      // What stood behind it must not be won or lost by that.
      const known = captures(moves[ply].before);
      if ([...captures(fen)].some((take) => !known.has(take))) continue;
      try {
        const start = new Chess(fen);
        if (start.inCheck()) continue;
        const move = start.move(moves[ply].san);
        if (start.inCheck()) continue;
        return { fen, move };
      } catch {
        continue;
      }
    }
  }
  return null;
}

const lines = readFileSync(join(here, 'openings.txt'), 'utf8').split('\n')
  .filter((line) => line && !line.startsWith('#')).map((line) => {
    const board = new Chess();
    for (const san of line.split(' ')) board.move(san);
    return board.history({ verbose: true });
  });
assert.ok(lines.length >= 60);

const sound = [];
const planted = [];
const kinds = ['q', 'r', 'b', 'n'];
lines.forEach((moves, g) => {
  sound.push(game(`sound end ${g}`, movetext(moves)));
  // Both sides short of each kind of piece, in turn.
  for (const [i, loser] of [['w'], ['b'], ['w']].entries()) {
    const short =
      withoutPiece(moves, moves.length - 1, loser[0], kinds[(g + i) % 4]);
    if (!short) continue;
    const white = loser[0] === 'b';
    sound.push(game(`sound assessment ${g}`,
      movetext([short.move], { nags: { 0: white ? 18 : 19 } }), short.fen));
    if (i !== g % 2) continue;
    const wrong = [10, 11, white ? 19 : 18, white ? 15 : 14, white ? 14 : 15];
    planted.push({ kind: 'assessment', text: game(`planted assessment ${g}`,
      movetext([short.move], { nags: { 0: wrong[g % 5] } }), short.fen) });
  }
  // A queen put where a pawn takes it, called good; and lines in which the
  // pawn does not take it.
  const board = new Chess(moves[moves.length - 1].after);
  const taken = (reply, move) => reply.piece === 'p' && reply.to === move.to;
  const blunder = board.moves({ verbose: true }).find((move) =>
    move.piece === 'q' && isQuiet(move) && new Chess(move.after)
      .moves({ verbose: true }).some((reply) => taken(reply, move)));
  if (!blunder) return;
  const at = moves.length;
  planted.push({ kind: 'good_move', text: game(`planted mark ${g}`,
    movetext([...moves, blunder], { nags: { [at]: 1 } })) });
  const replies = new Chess(blunder.after).moves({ verbose: true })
    .filter((move) => isQuiet(move) && move.piece === 'p').slice(0, 2);
  if (replies.length < 2) return;
  const [first, second] = replies;
  const [, side, , , , number] = first.before.split(' ');
  const dots = side === 'w' ? '.' : '...';
  planted.push({ kind: 'missing_reply', text: game(`planted reply ${g}`,
    movetext([...moves, blunder, first], {
      inserted: { [at + 1]: `${number}${dots} ${second.san}` },
      nags: { [at]: 2, [at + 1]: 11 } })) });
});
// Ended in the middle of an exchange of pieces.
[...lines, ...games].forEach((moves, g) => {
  for (let i = 8; i + 1 < moves.length; i += 1) {
    const [take, back] = [moves[i], moves[i + 1]];
    if (!take.captured || values[take.captured] < 3) continue;
    if (back.to !== take.to || !back.captured) continue;
    planted.push({ kind: 'hanging_end', text: game(`planted end ${g}`,
      movetext(moves.slice(0, i + 1))) });
    return;
  }
});
// One position by two orders of moves with two verdicts.
planted.push({ kind: 'transposition', text:
  game('planted order 1', '1. d4 d5 2. c4 e6 3. Nc3 Nf6 $11 4. Bg5 Be7 $11 ') +
  game('planted order 2', '1. c4 e6 2. Nc3 d5 3. d4 Nf6 $14 4. Bf4 Be7 $11 ') });
planted.push({ kind: 'illegal_move', text:
  game('planted illegal', '1. e4 e5 2. Nf3 Nc6 3. Bb6 a6 ') });
planted.push({ kind: 'ambiguous_move', text:
  game('planted ambiguous', '1. Nf3 d5 2. d3 e6 3. Nd2 Nf6 ') });

const folder = mkdtempSync(join(tmpdir(), 'assay-proofread-'));
function proofread(text) {
  const file = join(folder, 'lesson.pgn');
  writeFileSync(file, text);
  const run = spawnSync(program, ['proofread', file, '--format', 'json'],
    { encoding: 'utf8', maxBuffer: 1 << 28 });
  assert.ok(run.status === 0 || run.status === 1, run.stderr);
  return run.stdout.split('\n').filter(Boolean).map((line) => JSON.parse(line));
}

// Games count in the order of the texts.
const countGames = (text) => text.match(/^\[Event /gm).length;
const soundText = sound.join('');
const soundGames = countGames(soundText);
const alarms = proofread(soundText);
const alarmed = new Set(alarms.map((finding) => finding.game ?? 0));
for (const alarm of alarms) {
  console.log('false alarm:', alarm.game ?? 0, alarm.kind, alarm.authorSays,
    alarm.found);
}

const findings = proofread(planted.map(({ text }) => text).join(''));
let first = 0;
let found = 0;
const byKind = new Map();
for (const { kind, text } of planted) {
  const games = countGames(text);
  const hit = findings.some((finding) => finding.kind === kind &&
    (finding.game ?? 0) >= first && (finding.game ?? 0) < first + games);
  const tally = byKind.get(kind) ?? [0, 0];
  byKind.set(kind, [tally[0] + (hit ? 1 : 0), tally[1] + 1]);
  if (!hit) console.log('missed:', kind, text.match(/"(.*?)"/)[1]);
  found += hit ? 1 : 0;
  first += games;
}
rmSync(folder, { recursive: true });

for (const [kind, [hit, all]] of byKind) console.log(`${kind}: ${hit} of ${all}`);
console.log(`${alarmed.size} false alarms on ${soundGames} sound games; ` +
  `${found} of ${planted.length} planted faults found`);
assert.ok(soundGames >= 200);
assert.ok(planted.length >= 150);
assert.ok(alarmed.size * 40 <= soundGames, 'false alarms');
assert.ok(found >= 0.95 * planted.length, 'missed faults');
