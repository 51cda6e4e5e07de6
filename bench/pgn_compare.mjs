// How fast we read PGN beside the npm libraries, on one file, in one run.
//
//   node bench/pgn_compare.mjs PGN_DUMP [FILE.pgn]
//
// Needs `npm ci` in tests/. Without a file: the 100 real games that the
// package chess.js carries. Every reader gets the same text, ten times over,
// and its answer (the number of main-line moves) is checked before its time
// counts. kokopu and chess.js play the moves, as `pgn_dump count` does;
// @mliebelt/pgn-parser does not, as `pgn_dump skim` does not; cm-pgn plays them
// with another library. Our times are those of a whole process, reading the
// file included.
import {execFileSync} from 'node:child_process';
import {mkdtempSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import {createRequire} from 'node:module';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {fileURLToPath, pathToFileURL} from 'node:url';

const MODULES = fileURLToPath(new URL('../tests/node_modules/',
  import.meta.url));
const TIMES = 10;
const OUR_TIMES = 500;  // a process is too short otherwise
const [dump, file = join(MODULES, 'chess.js/benchmarks/benchmark.pgn')] =
  process.argv.slice(2);
const require = createRequire(join(MODULES, '../package.json'));
const load = async (path) => import(pathToFileURL(join(MODULES, path)));

const text = readFileSync(file, 'utf8').replace(/\r\n/g, '\n').trim() + '\n';
const games = text.split(/\n\n(?=\[Event )/);

function megabytesPerSecond(bytes, run) {
  const start = process.hrtime.bigint();
  run();
  return bytes / 1e6 / (Number(process.hrtime.bigint() - start) / 1e9);
}

const readers = {
  'kokopu': async () => {
    const {pgnRead} = require('kokopu');
    return () => {
      let moves = 0;
      for (const game of pgnRead(text).games()) {
        moves += game.nodes().length;
      }
      return moves;
    };
  },
  'chess.js': async () => {
    const {Chess} = require('chess.js');
    return () => {
      let moves = 0;
      for (const game of games) {
        const chess = new Chess();
        chess.loadPgn(game);
        moves += chess.history().length;
      }
      return moves;
    };
  },
  'cm-pgn': async () => {
    const {Pgn} = await load('cm-pgn/src/Pgn.js');
    return () => {
      let moves = 0;
      for (const game of games) moves += new Pgn(game).history.moves.length;
      return moves;
    };
  },
  '@mliebelt/pgn-parser': async () => {
    const {parse} = require('@mliebelt/pgn-parser');
    return () => parse(text, {startRule: 'games'})
      .reduce((sum, game) => sum + game.moves.length, 0);
  },
};

const folder = mkdtempSync(join(tmpdir(), 'pgn-compare-'));
try {
  const big = join(folder, 'big.pgn');
  writeFileSync(big, (text + '\n').repeat(OUR_TIMES));
  const count = execFileSync(dump, ['skim', big], {encoding: 'utf8'});
  const expected = Number(/(\d+) moves/.exec(count)[1]) / OUR_TIMES;
  const rows = [];
  for (const mode of ['skim', 'count']) {
    const speed = megabytesPerSecond(text.length * OUR_TIMES,
      () => execFileSync(dump, [mode, big]));
    rows.push([`ours, ${mode}`, speed.toFixed(1)]);
  }
  for (const [name, make] of Object.entries(readers)) {
    try {
      const read = await make();
      const moves = read();  // also warms up
      if (moves !== expected) throw new Error(`${moves} moves`);
      const speed = megabytesPerSecond(text.length * TIMES, () => {
        for (let i = 0; i < TIMES; ++i) read();
      });
      rows.push([name, speed.toFixed(2)]);
    } catch (error) {
      rows.push([name, `cannot read it: ${error.message.slice(0, 80)}`]);
    }
  }
  console.log(`${games.length} games, ${expected} moves of main lines, ` +
    `${text.length} bytes; megabytes a second:`);
  for (const [name, speed] of rows) console.log(`  ${name}: ${speed}`);
} finally {
  rmSync(folder, {recursive: true});
}
