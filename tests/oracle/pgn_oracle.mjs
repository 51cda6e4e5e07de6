// Compares our PGN reader with kokopu on every PGN file that the packages
// kokopu, cm-pgn, @mliebelt/pgn-parser and chess.js carry: games and faulty
// games, tags, moves of all lines, comments, NAGs, results, start positions.
// chess.js then reads what we write in export format, and kokopu 500 random
// games.
//
//   node oracle/pgn_oracle.mjs PGN_DUMP
//
// The packages are read where `npm ci` puts them; without them the exit code
// is 77 (skipped). What kokopu reads in another way than we do is listed in
// EXCEPTIONS, game by game, with the reason; an exception that no longer
// applies is an error, too.
import {execFileSync} from 'node:child_process';
import {mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync}
  from 'node:fs';
import {tmpdir} from 'node:os';
import {join, relative} from 'node:path';
import {fileURLToPath} from 'node:url';

const PACKAGES = ['kokopu', 'cm-pgn', '@mliebelt/pgn-parser', 'chess.js'];
const RANDOM_GAMES = 500;
const MODULES = fileURLToPath(new URL('../node_modules/', import.meta.url));
const [dump] = process.argv.slice(2);

let kokopu;
let Chess;
try {
  kokopu = await import('kokopu');
  ({Chess} = await import('chess.js'));
} catch (error) {
  console.log(`skipped: ${error.message}; run npm ci in tests/`);
  process.exit(77);
}

// File (in node_modules) -> which game of ours, from 0 -> why we differ.
// 'extra N': they see no such game. 'chess.js N': about chess.js.
const EXCEPTIONS = JSON.parse(readFileSync(
  new URL('pgn_exceptions.json', import.meta.url), 'utf8'));

function pgnFiles(folder) {
  return readdirSync(folder, {withFileTypes: true}).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return pgnFiles(path);
    return entry.name.endsWith('.pgn') ? [path] : [];
  }).sort();
}

const oneSpace = (text) => text.replace(/\s+/g, ' ').trim();
const sorted = (numbers) => [...new Set(numbers)].sort((a, b) => a - b);

// Commands such as [%clk 1:00] are not part of the comment for kokopu, but
// "tags" of the node, the last of a name counting.
function splitCommands(comments) {
  const commands = {};
  const text = comments.join(' ').replace(/\[%(\w+)\s([^\]]*)\]/g,
    (_, name, value) => {
      if (oneSpace(value) !== '') commands[name] = oneSpace(value);
      return ' ';
    });
  return {text: oneSpace(text), commands};
}

// One form for both sides.
function oursOf(line) {
  const node = ({nags, comments}) => ({
    nags: sorted(nags), ...splitCommands(comments)});
  return {
    ...node(line),
    moves: line.moves.map((move) => ({
      san: move.san, ...node(move), variations: move.variations.map(oursOf)})),
  };
}

function theirsOf(pojo) {
  const variation = Array.isArray(pojo) ? {nodes: pojo} : pojo ?? {nodes: []};
  const node = ({nags = [], comment = '', tags = {}}) => ({
    nags: sorted(nags), text: oneSpace(comment),
    commands: Object.fromEntries(Object.entries(tags)
      .map(([name, value]) => [name, oneSpace(value)]))});
  return {
    ...node(variation),
    moves: variation.nodes.map((move) => {
      const full = typeof move === 'string' ? {notation: move} : move;
      return {san: full.notation, ...node(full),
        variations: (full.variations ?? []).map(theirsOf)};
    }),
  };
}

// Keys in one order, so that equal trees are equal texts.
function canonical(value) {
  if (Array.isArray(value)) return value.map(canonical);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.keys(value).sort()
    .map((key) => [key, canonical(value[key])]));
}

const START = 'rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1';
const TAGS = {event: 'Event', site: 'Site', annotator: 'Annotator'};

// What is different between our game and theirs; '' for nothing.
function difference(ours, theirs) {
  if (theirs === undefined) return 'they see no such game';
  if (typeof theirs === 'string') {
    return ours.faults.length > 0 ? '' : `only they fault it: ${theirs}`;
  }
  if (ours.faults.length > 0) {
    return `only we fault it: ${ours.faults[0].reason}`;
  }
  const a = JSON.stringify(canonical(oursOf(ours.main)));
  const b = JSON.stringify(canonical(theirsOf(theirs.mainVariation)));
  if (a !== b) return `trees differ\n   ours   ${a}\n   theirs ${b}`;
  if (ours.result !== (theirs.result ?? '*')) return 'results differ';
  const tags = new Map(ours.tags);
  for (const [key, name] of Object.entries(TAGS)) {
    const told = oneSpace(tags.get(name) ?? '').replace(/^\?$/, '');
    if (told !== oneSpace(theirs[key] ?? '')) return `tag ${name} differs`;
  }
  // An en passant square that no pawn can take on is ours to leave out, and
  // kokopu keeps no halfmove clock.
  const start = (fen) => fen.split(' ').filter((_, i) => i !== 3 && i !== 4)
    .join(' ');
  if (start(ours.fen) !== start(theirs.initialPosition ?? START)) {
    return `start positions differ: ${ours.fen}, ${theirs.initialPosition}`;
  }
  return '';
}

function theirGames(text) {
  const database = kokopu.pgnRead(text);
  return Array.from({length: database.gameCount()}, (_, i) => {
    try {
      return database.game(i).pojo();
    } catch (error) {
      return error.message;
    }
  });
}

let games = 0;
let moves = 0;
const failures = [];
const used = new Set();

function fail(name, game, what) {
  if (EXCEPTIONS[name]?.[game] !== undefined) {
    used.add(`${name} ${game}`);
  } else {
    failures.push(`${name}, game ${game}: ${what}`);
  }
}

function compareFile(path) {
  const name = relative(MODULES, path);
  const ours = execFileSync(dump, ['tree', path], {encoding: 'utf8',
    maxBuffer: 1 << 28}).split('\n').filter(Boolean).map((s) => JSON.parse(s));
  const theirs = theirGames(readFileSync(path, 'utf8'));
  ours.forEach((_, i) => {
    if (EXCEPTIONS[name]?.[`extra ${i}`] !== undefined) {
      used.add(`${name} extra ${i}`);
      theirs.splice(i, 0, null);
    }
  });
  if (ours.length !== theirs.length) {
    fail(name, 'games', `we see ${ours.length}, they ${theirs.length}`);
    return ours;
  }
  ours.forEach((game, i) => {
    ++games;
    moves += game.main.moves.length;
    if (theirs[i] === null) return;
    const what = difference(game, theirs[i]);
    if (what !== '') fail(name, String(i), what);
  });
  return ours;
}

// chess.js knows no variations as trees: it is asked for the main line of what
// we write, where no pass is in it.
function chessJsReads(ours, path) {
  const written = execFileSync(dump, ['export', path], {encoding: 'utf8',
    maxBuffer: 1 << 28});
  const texts = written.split(/\n\n(?=\[Event )/);
  ours.filter((game) => game.faults.length === 0).forEach((game, i) => {
    const sans = game.main.moves.map((move) => move.san);
    if (JSON.stringify(game).includes('"--"')) return;
    const chess = new Chess();
    let what = '';
    try {
      chess.loadPgn(texts[i]);
      if (chess.history().join(' ') !== sans.join(' ')) what = 'moves differ';
    } catch (error) {
      what = error.message;
    }
    if (what !== '') {
      fail(relative(MODULES, path), `chess.js ${i}`, `${what}\n${texts[i]}`);
    }
  });
}

const folder = mkdtempSync(join(tmpdir(), 'pgn-oracle-'));
let files = 0;
try {
  for (const path of PACKAGES.flatMap((name) => pgnFiles(MODULES + name))) {
    ++files;
    const ours = compareFile(path);
    chessJsReads(ours, path);
    // What we write is read as the same by both, too.
    for (const layout of ['export', 'author']) {
      const copy = join(folder, 'copy.pgn');
      writeFileSync(copy, execFileSync(dump, [layout, path],
        {maxBuffer: 1 << 28}));
      const again = execFileSync(dump, ['tree', copy], {encoding: 'utf8',
        maxBuffer: 1 << 28}).split('\n').filter(Boolean)
        .map((s) => JSON.parse(s));
      const theirs = theirGames(readFileSync(copy, 'utf8'));
      const whole = ours.filter((game) => game.faults.length === 0);
      whole.forEach((game, i) => {
        const what = again.length !== whole.length
          ? `we write ${whole.length} games and read ${again.length}`
          : difference(again[i], theirs[i]);
        if (what !== '') fail(relative(MODULES, path), `${layout} ${i}`, what);
      });
    }
  }
  // Random games with variations, comments and NAGs.
  const path = join(folder, 'random.pgn');
  writeFileSync(path, execFileSync(dump, ['random', String(RANDOM_GAMES)],
    {maxBuffer: 1 << 28}));
  compareFile(path);
} finally {
  rmSync(folder, {recursive: true});
}
for (const [name, rows] of Object.entries(EXCEPTIONS)) {
  for (const game of Object.keys(rows)) {
    if (!used.has(`${name} ${game}`)) {
      failures.push(`${name}, game ${game}: an exception that agrees`);
    }
  }
}
for (const failure of failures) console.log(failure);
console.log(`${files} files, ${games} games, ${moves} moves of main lines, ` +
  `${used.size} exceptions, ${failures.length} failures`);
process.exit(failures.length > 0 ? 1 : 0);
