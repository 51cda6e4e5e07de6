#!/usr/bin/env node
// Recomputes every claim of explanations from TERMS.md, and plays through every
// plan.
//
//   node tests/audit/audit.mjs [--complete] [--limit N] [FILE]
//
// FILE (or standard input) has one JSON object a line: {"explanation": ...} or
// {"error": ...}. With --complete, the explanations must have been made with
// all claims, and every claim that holds must be there. Prints each
// difference, then counts a kind; exit 1 on any difference, 2 on bad input.

import { Audit } from './lib/auditing.mjs';
import { fail, jsonLines, parseArguments } from './lib/input.mjs';

const { flags, options, path } = parseArguments(
  process.argv.slice(2), ['--limit']);
for (const flag of flags) {
  if (flag !== '--complete') fail(`unknown option ${flag}`);
}
const limit = Number(options.get('--limit') ?? Infinity);
if (!(limit > 0)) fail('--limit needs a number above 0');

const audit = new Audit({ complete: flags.has('--complete') });
const started = performance.now();
for await (const item of jsonLines(path, limit)) {
  if (!item.explanation) {
    audit.errors += 1;
    continue;
  }
  for (const { fen, kind, claim, why } of audit.explanation(item.explanation)) {
    const shown = claim ? ` ${JSON.stringify(claim)}` : '';
    console.log(`${fen}\n  ${kind}${shown}\n  ${why}`);
  }
}

for (const line of audit.summary()) console.log(line);
const seconds = (performance.now() - started) / 1000;
console.log(`${audit.positions} positions, ${audit.plans} plans, ` +
  `${audit.errors} errors, ` +
  `${audit.differences} differences, ${seconds.toFixed(1)} s`);
if (audit.positions === 0) fail('no explanation was read');
process.exitCode = audit.differences ? 1 : 0;
