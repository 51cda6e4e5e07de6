#!/usr/bin/env node
// Does the auditor refuse what is false? Changes true claims of explanations
// one field at a time, and squares, numbers and pieces in sentences, and expects
// every change to be refused. A change that happens to make another true claim
// (by the complete list of its kind) is passed over.
//
//   node tests/audit/mutate.mjs [--per-kind N] [--limit N] [--seed N] [FILE]
//
// FILE is what audit.mjs reads. Prints the changes tried for each kind; exit 1
// when one was accepted, or when a kind that occurs had none tried.

import { fail, jsonLines, parseArguments } from './lib/input.mjs';
import { mutationsOf } from './lib/mutations.mjs';
import { seeded } from './lib/random.mjs';
import { checkText, textsOf, wrongTextsOf } from './lib/sentences.mjs';
import {
  Auditor, KINDS, fromJson, keyOf, kindName,
} from './lib/registry.mjs';

const { flags, options, path } = parseArguments(
  process.argv.slice(2), ['--per-kind', '--limit', '--seed']);
for (const flag of flags) fail(`unknown option ${flag}`);
const perKind = Number(options.get('--per-kind') ?? 500);
const limit = Number(options.get('--limit') ?? Infinity);
const random = seeded(Number(options.get('--seed') ?? 1));

// Claims changed, changes tried and passed over, by kind.
const tallies = new Map();
const sentences = { tried: 0 };
let accepted = 0;

// Whether a changed claim is true all the same, by the complete list.
function isAnother(auditor, kind, json) {
  if (!KINDS[kind].enumerate) return false;
  const claim = fromJson(json);
  const { positions } = auditor.player.play(claim.line);
  const list = auditor.list(kind, positions[positions.length - 1]);
  return list.has(keyOf(kind, claim));
}

function tryClaim(auditor, fen, kind, json) {
  const tally = tallies.get(kind);
  tally.claims += 1;
  for (const [change, mutant] of mutationsOf(kind, json, random)) {
    if (isAnother(auditor, kind, mutant)) {
      tally.passedOver += 1;
      continue;
    }
    tally.tried += 1;
    if (auditor.verify(mutant) !== null) continue;
    accepted += 1;
    console.log(`${fen}\n  ${kind} ${JSON.stringify(mutant)}\n` +
      `  accepted with a wrong ${change}`);
  }
}

function trySentences(explanation, auditor) {
  for (const said of textsOf(explanation)) {
    if (checkText(said, explanation, auditor).length > 0) continue;
    for (const [what, text] of wrongTextsOf(said, explanation, auditor, random)) {
      sentences.tried += 1;
      if (checkText({ ...said, text }, explanation, auditor).length > 0) continue;
      accepted += 1;
      console.log(`${explanation.fen}\n  ${said.where}: ${text}\n` +
        `  accepted with a wrong ${what}`);
    }
  }
}

for await (const { explanation } of jsonLines(path, limit)) {
  if (!explanation) continue;
  const auditor = new Auditor(explanation.fen);
  trySentences(explanation, auditor);
  for (const json of explanation.claims ?? []) {
    const kind = kindName(json);
    if (!KINDS[kind]) continue;
    if (!tallies.has(kind)) {
      tallies.set(kind, { claims: 0, tried: 0, passedOver: 0 });
    }
    if (tallies.get(kind).claims >= perKind) continue;
    // What is not true to begin with is audit.mjs's to report.
    if (auditor.verify(json) === null) {
      tryClaim(auditor, explanation.fen, kind, json);
    }
  }
}

let idle = 0;
let tried = 0;
for (const [kind, tally] of [...tallies].sort()) {
  tried += tally.tried;
  console.log(`${kind}: ${tally.tried} tried on ${tally.claims} claims, ` +
    `${tally.passedOver} passed over`);
  if (tally.tried > 0) continue;
  idle += 1;
  console.log(`  no change was tried on ${kind}`);
}
console.log(`${tallies.size} kinds, ${tried} changes, ${sentences.tried} in ` +
  `sentences, ${accepted} accepted, ${idle} kinds without a change`);
if (tallies.size === 0) fail('no claim was read');
process.exitCode = accepted || idle ? 1 : 0;
