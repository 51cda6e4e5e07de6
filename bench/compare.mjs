// Compares two builds: their benchmark programs run in turn, so that what else
// the machine does meets both alike.
//
//   node bench/compare.mjs OLD_BUILD NEW_BUILD [--rounds N] [--seconds N]
//                          [--only PROGRAM] [--out FILE.json]
//
// For each benchmark of both: the ratio new/old of every round, the middle one
// first. Below 1 the new one is faster. A ratio whose rounds lie on both sides
// of 1 shows nothing. Against a baseline: build the commit that it names, in a
// worktree, and compare with that build.
import {writeFileSync} from 'node:fs';
import {parseArgs} from 'node:util';

import {machine, measure, programsOf} from './run.mjs';

const {values, positionals} = parseArgs({allowPositionals: true, options: {
  rounds: {type: 'string', default: '5'},
  seconds: {type: 'string', default: '0.3'},
  only: {type: 'string'},
  out: {type: 'string'},
}});
const rounds = Number(values.rounds);
if (positionals.length !== 2 || !(rounds >= 1)) {
  console.error('usage: node bench/compare.mjs OLD_BUILD NEW_BUILD ' +
    '[--rounds N] [--seconds N] [--only PROGRAM] [--out FILE.json]');
  process.exit(2);
}
const [older, newer] = positionals;
const inBoth = programsOf(older)
  .filter((name) => programsOf(newer).includes(name))
  .filter((name) => values.only === undefined || name === values.only);
if (inBoth.length === 0) {
  console.error('no benchmark program that both builds have');
  process.exit(1);
}

const middle = (numbers) =>
  [...numbers].sort((a, b) => a - b)[Math.floor(numbers.length / 2)];

const result = {machine: machine(), older, newer, programs: {}};
for (const program of inBoth) {
  const ratios = new Map();
  for (let round = 0; round < rounds; ++round) {
    // Who goes first changes, too.
    const order = round % 2 === 0 ? [older, newer] : [newer, older];
    const found = new Map(order.map(
      (build) => [build, measure(build, program, values.seconds)]));
    for (const [name, row] of Object.entries(found.get(newer))) {
      const before = found.get(older)[name];
      if (before === undefined || name.startsWith('PeakMemory')) continue;
      if (!ratios.has(name)) ratios.set(name, []);
      ratios.get(name).push(row.time / before.time);
    }
  }
  console.log(program);
  result.programs[program] = {};
  for (const [name, all] of ratios) {
    const clear = all.every((r) => r < 1) || all.every((r) => r > 1);
    result.programs[program][name] = {ratio: middle(all), rounds: all, clear};
    console.log(`  ${name.padEnd(32)} ${middle(all).toFixed(2)}` +
      `  ${all.map((r) => r.toFixed(2)).join(' ')}${clear ? '' : '  (unclear)'}`);
  }
}
if (values.out !== undefined) {
  writeFileSync(values.out, `${JSON.stringify(result, null, 1)}\n`);
}
