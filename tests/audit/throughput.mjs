#!/usr/bin/env node
// How fast every enumerable kind is enumerated.
//
//   node tests/audit/throughput.mjs [N]

import { fail } from './lib/input.mjs';
import { Auditor, ENUMERABLE } from './lib/registry.mjs';
import { positions } from './lib/sample.mjs';

const wanted = Number(process.argv[2] ?? 2000);
if (!(wanted > 0)) fail('usage: throughput.mjs [N]');
const fens = [...positions(wanted)];

const times = new Map(ENUMERABLE.map((kind) => [kind, { ms: 0, claims: 0 }]));
for (const fen of fens) {
  const auditor = new Auditor(fen);
  for (const kind of ENUMERABLE) {
    const started = performance.now();
    const { size } = auditor.list(kind);
    const entry = times.get(kind);
    entry.ms += performance.now() - started;
    entry.claims += size;
  }
}

let total = 0;
for (const [kind, { ms, claims }] of times) {
  total += ms;
  console.log(`${kind}: ${claims} claims, ${(ms / fens.length).toFixed(3)} ms`);
}
console.log(`${fens.length} positions, ` +
  `${Math.round((fens.length * 1000) / total)} positions/s`);
