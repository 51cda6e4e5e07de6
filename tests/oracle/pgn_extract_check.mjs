// Debian's pgn-extract reads back what we write, we read what it writes, and
// both see the same moves, variations, NAGs, comments and results. The EPD
// that it writes of each game gives the positions that we find in the game.
//
//   node oracle/pgn_extract_check.mjs PGN_DUMP PGN_EXTRACT
//
// On every game without faults of the PGN files in the npm packages, and on
// 300 random games. Without pgn-extract (apt-get install pgn-extract) or the
// packages (npm ci) the exit code is 77 (skipped).
import {execFileSync, spawnSync} from 'node:child_process';
import {existsSync, mkdtempSync, readdirSync, rmSync,
  writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {fileURLToPath} from 'node:url';

const PACKAGES = ['kokopu', 'cm-pgn', '@mliebelt/pgn-parser', 'chess.js'];
const MODULES = fileURLToPath(new URL('../node_modules/', import.meta.url));
const RANDOM_GAMES = 300;
const [dump, extract] = process.argv.slice(2);
if (!extract || !existsSync(extract) || !existsSync(join(MODULES, 'kokopu'))) {
  console.log('skipped: needs pgn-extract, and npm ci in tests/');
  process.exit(77);
}

const options = {encoding: 'utf8', maxBuffer: 1 << 28};
const ours = (mode, of) => execFileSync(dump, [mode, of], options);
const trees = (path) => ours('tree', path).split('\n').filter(Boolean)
  .map((line) => JSON.parse(line));

function pgnFiles(folder) {
  return readdirSync(folder, {withFileTypes: true}).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return pgnFiles(path);
    return entry.name.endsWith('.pgn') ? [path] : [];
  }).sort();
}

// What of a game pgn-extract keeps apart: white space in comments is its own,
// and comments in a row are one text.
function essence(line) {
  const node = ({nags, comments}) => [nags,
    comments.join(' ').replace(/\s+/g, ' ').trim()];
  return [...node(line), line.moves.map((move) => [move.san, ...node(move),
    move.variations.map(essence)])];
}

// Why a game is not given to it; '' where it is.
function reasonToSkip(game) {
  const lines = [game.main];
  for (let i = 0; i < lines.length; ++i) {
    const line = lines[i];
    // Its grammar wants a move in every variation and before every NAG.
    if (i > 0 && line.moves.length === 0) return 'a variation without moves';
    if (line.nags.length > 0) return 'a NAG before the first move';
    for (const move of line.moves) lines.push(...move.variations);
  }
  return '';
}

const folder = mkdtempSync(join(tmpdir(), 'pgn-extract-'));
const failures = [];
const skipped = {};
let games = 0;
let positions = 0;

function check(name, text) {
  const path = join(folder, 'one.pgn');
  writeFileSync(path, text);
  const [game] = trees(path);
  const reason = reasonToSkip(game);
  if (reason !== '') {
    skipped[reason] = (skipped[reason] ?? 0) + 1;
    return;
  }
  ++games;
  const run = spawnSync(extract, ['-s', '--allownullmoves', '-w', '79', path],
    options);
  const back = join(folder, 'back.pgn');
  writeFileSync(back, run.stdout);
  const read = trees(back);
  const fail = (what) => failures.push(`${name}: ${what}\n${text}`);
  if (read.length !== 1) return fail(`it writes ${read.length} games: ` +
    run.stderr);
  if (read[0].faults.length > 0) return fail(read[0].faults[0].reason);
  if (read[0].result !== game.result) return fail('results differ');
  if (read[0].fen !== game.fen) return fail('start positions differ');
  const [a, b] = [game, read[0]].map(({main}) => JSON.stringify(essence(main)));
  if (a !== b) fail(`trees differ\n   ours   ${a}\n   theirs ${b}`);
  checkEpd(path, fail);
}

// It writes c0 without the quotes that the standard asks for (16.2.3), so that
// only the four fields are read.
function checkEpd(path, fail) {
  const epd = execFileSync(extract,
    ['-s', '--allownullmoves', '-Wepd', path], {...options, stdio: 'pipe'});
  const fields = epd.split('\n').filter(Boolean)
    .map((line) => line.split(' ').slice(0, 4).join(' '));
  const copy = join(folder, 'copy.epd');
  writeFileSync(copy, fields.join('\n'));
  const four = (text) => text.split('\n').filter(Boolean)
    .map((line) => line.split(' ').slice(0, 4).join(' '));
  const read = four(ours('epd', copy));
  const played = four(ours('fens', path));
  positions += read.length;
  // After a pass it keeps the en passant square of the move before.
  if (played.join() !== read.join() && !ours('export', path).includes('--')) {
    fail(`positions differ\n   ours   ${played}\n   theirs ${read}`);
  }
}

try {
  const split = (text) => text.split(/\n\n(?=\[Event )/)
    .filter((game) => game.trim() !== '').map((game) => game + '\n');
  for (const path of PACKAGES.flatMap((name) => pgnFiles(MODULES + name))) {
    split(ours('export', path)).forEach((text, i) =>
      check(`${path.slice(MODULES.length)} ${i}`, text));
  }
  split(ours('random', String(RANDOM_GAMES))).forEach((text, i) =>
    check(`random game ${i}`, text));
} finally {
  rmSync(folder, {recursive: true});
}
for (const failure of failures.slice(0, 20)) console.log(failure);
console.log(`${games} games, ${positions} positions, not given: ` +
  `${JSON.stringify(skipped)}, ` +
  `${failures.length} failures`);
process.exit(failures.length > 0 ? 1 : 0);
