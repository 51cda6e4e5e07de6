#!/usr/bin/env node
// Prints N distinct positions, the same ones every time.
//
//   node tests/audit/positions.mjs N [SEED] > fens.txt

import { fail } from './lib/input.mjs';
import { positions } from './lib/sample.mjs';

const [wanted, seed = 1] = process.argv.slice(2).map(Number);
if (!(wanted > 0) || !Number.isInteger(seed)) fail('usage: positions.mjs N [SEED]');
for (const fen of positions(wanted, seed)) console.log(fen);
