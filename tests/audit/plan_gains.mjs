#!/usr/bin/env node
// Recomputes what each plan gains in the ledger (IfIgnored.gain_cp in
// explanation.proto) by asking for the static scores of the positions at the
// ends of the lines.
//
//   node tests/audit/plan_gains.mjs BINARY FILE
//
// FILE is what audit.mjs reads. Exit 1 on any difference.

import { spawnSync } from 'node:child_process';

import { fail, jsonLines } from './lib/input.mjs';
import { checkLedgerGains, endOf } from './lib/plans.mjs';
import { Auditor } from './lib/registry.mjs';

const MOST_SHOWN = 10;
const [binary, path] = process.argv.slice(2);
if (!path) fail('usage: plan_gains.mjs BINARY FILE');

function scoresOf(fens) {
  const run = spawnSync(binary, ['score', '-'], {
    input: fens.map((fen) => `${fen}\n`).join(''),
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  const scores = (run.stdout ?? '').trimEnd().split('\n').map(Number);
  if (run.status !== 0 || scores.length !== fens.length) {
    fail(`${binary} score failed: ${run.stderr}`);
  }
  return new Map(fens.map((fen, i) => [fen, scores[i]]));
}

const items = [];
const ends = new Set();
for await (const { explanation } of jsonLines(path)) {
  if (!explanation?.plans?.length) continue;
  const auditor = new Auditor(explanation.fen);
  items.push({ explanation, auditor });
  for (const plan of explanation.plans) {
    const end = endOf(plan, auditor);
    if (end !== null) ends.add(end);
  }
}
if (ends.size === 0) fail('no plan was read');
const scores = scoresOf([...ends]);

let plans = 0;
let differences = 0;
for (const { explanation, auditor } of items) {
  plans += explanation.plans.length;
  for (const why of checkLedgerGains(
    explanation, auditor, (fen) => scores.get(fen))) {
    differences += 1;
    if (differences <= MOST_SHOWN) console.log(`${explanation.fen}\n  ${why}`);
  }
}
console.log(`gains of ${plans} plans, ${differences} differences`);
process.exitCode = differences ? 1 : 0;
