#!/usr/bin/env node
// Asks the program about moves, comparisons and edits of many positions and
// recomputes what it answers: claims, sums, scores, attributions, and that the
// texts say no more than their claims.
//
//   node tests/audit/answers.mjs BINARY [N] [SEED]     N positions, 100 by default
//
// Prints each difference; exit 1 on any, 2 where the program fails.

import { spawnSync } from 'node:child_process';
import { Chess } from 'chess.js';
import { checkCompare, checkMove, checkWhatIf, withoutSquare }
  from './lib/answers.mjs';
import { fail } from './lib/input.mjs';
import { seeded } from './lib/random.mjs';
import { positions } from './lib/sample.mjs';

const [binary, wanted = '100', seed = '11'] = process.argv.slice(2);
if (!binary) fail('usage: answers.mjs BINARY [N] [SEED]');

function run(args, input = '') {
  const { status, stdout, stderr } = spawnSync(binary, args,
    { input, encoding: 'utf8', maxBuffer: 1 << 28 });
  return { status, stdout, stderr };
}

function ask(args) {
  const { status, stdout, stderr } = run(args);
  if (status !== 0) fail(`${args.join(' ')}: exit ${status}: ${stderr}`);
  return JSON.parse(stdout);
}

// Scores and material of many FENs in two runs.
function lookUp(fens) {
  const list = [...new Set(fens)];
  const scores = run(['score', '-'], list.join('\n')).stdout.trim().split('\n');
  const ledgers = run(['explain', '--static', '--format', 'json', '-'],
    list.join('\n')).stdout.trim().split('\n').map((line) => JSON.parse(line));
  const found = new Map(list.map((fen, i) => [fen, {
    score: Number(scores[i]),
    material: (ledgers[i].explanation?.ledger ?? [])
      .filter((entry) => entry.term === 'material')
      .reduce((total, entry) => total + (entry.valueCp ?? 0), 0),
  }]));
  return {
    scoreOf: (fen) => found.get(fen)?.score,
    materialOf: (fen) => found.get(fen)?.material,
  };
}

const random = seeded(Number(seed));
const FILES = 'abcdefgh';
const anySquare = () => FILES[random.below(8)] + (random.below(8) + 1);

// Edits that can be made, though the result need not be legal.
function someEdits(fen) {
  const game = new Chess(fen);
  const units = game.board().flat().filter((each) => each && each.type !== 'k');
  const edits = [];
  if (units.length > 0) {
    const { square } = random.pick(units);
    const to = anySquare();
    if (!game.get(to)) edits.push(`${square}-${to}`);
    else edits.push(`off-${square}`);
  }
  if (random.below(4) === 0 && !game.inCheck()) edits.push('pass');
  if (random.below(8) === 0) edits.push('swap');
  return edits;
}

let differences = 0;
const counts = { moves: 0, comparisons: 0, whatIfs: 0, refused: 0, proved: 0 };
function report(question, found) {
  for (const why of found) {
    differences += 1;
    console.log(`${JSON.stringify(question)}\n  ${why}`);
  }
}

let asked = 0;
for (const fen of positions(Number(wanted) * 4, Number(seed))) {
  if (asked >= Number(wanted)) break;
  const game = new Chess(fen);
  const moves = game.moves();
  if (moves.length < 2) continue;
  asked += 1;
  const full = game.fen();
  const move = random.pick(moves);
  const proved = asked % 5 === 0;
  counts.proved += proved ? 1 : 0;
  const budget = proved ? ['--proof-nodes', '3000'] : ['--static'];
  const told = ask(['move', full, move, '--format', 'json', ...budget])
    .explanation;
  const look = lookUp([full, told.fenAfter,
    ...(told.settled ? [told.settled.fen] : [])]);
  report({ fen: full, move }, checkMove({ fen: full, move }, told, look.scoreOf));
  counts.moves += 1;
  if (asked % 3 === 0) {
    const chosen = [move, ...moves.filter((each) => each !== move)]
      .slice(0, 2 + random.below(3));
    const others = asked % 2 === 0 ? [told.fenAfter] : [];
    const answer = ask(['compare', full, ...chosen, '--format', 'json',
      ...budget, ...others.flatMap((other) => ['--with', other])]);
    const question = { fen: full, moves: chosen, others };
    report(question, checkCompare(question, answer));
    counts.comparisons += 1;
  }
  const edits = someEdits(full);
  const { status, stdout, stderr } =
    run(['whatif', full, ...edits, '--format', 'json']);
  if (status === 2 && /edits\[\d+\]: leaves no legal position/.test(stderr)) {
    counts.refused += 1;
    continue;
  }
  if (status !== 0) fail(`whatif ${full} ${edits}: exit ${status}: ${stderr}`);
  const answer = JSON.parse(stdout);
  const gone = (answer.attributions ?? []).map(
    (each) => withoutSquare(full, each.square));
  const scores = lookUp([full, answer.fenAfter, ...gone]);
  report({ fen: full, edits }, checkWhatIf({ fen: full, edits }, answer,
    scores.scoreOf, scores.materialOf));
  counts.whatIfs += 1;
}

console.log(`${counts.moves} moves (${counts.proved} proved), ` +
  `${counts.comparisons} comparisons, ${counts.whatIfs} what-ifs ` +
  `(${counts.refused} refused): ${differences} differences`);
process.exitCode = differences > 0 || counts.moves === 0 ? 1 : 0;
