// The README's tables of what terms cost and are worth, in Markdown.
//
//   node bench/run.mjs --results fit.tsv.gz --out bench/baselines/DATE.json
//   node bench/tables.mjs [FILE.json] [--write README.md]
//
// Of the newest of baselines/ where no file is given. --write puts the tables
// between the marks of that file (<!-- costs --> ... <!-- end -->, and the same
// with worths) instead of printing them.
import {readFileSync, readdirSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {fileURLToPath} from 'node:url';
import {parseArgs} from 'node:util';

const BASELINES = fileURLToPath(new URL('baselines', import.meta.url));
const SHOWN = 12;

// Words of the first column to the left, numbers to the right.
function table(heads, rows) {
  const line = (cells) => `| ${cells.join(' | ')} |`;
  return [line(heads), line(heads.map((_, i) => (i === 0 ? '---' : '--:'))),
    ...rows.map(line)].join('\n');
}

const share = (part, all) => `${(100 * part / all).toFixed(1)} %`;

export function costTables({costs, machine, commit, date}) {
  const all = costs.themes.reduce((sum, {nsPerPosition}) =>
    sum + nsPerPosition, 0);
  const row = (name, {entries, nsPerPosition}) =>
    [name, entries.toFixed(2), nsPerPosition.toFixed(0),
      share(nsPerPosition, all)];
  const heads = (what) => [what, 'entries a position', 'ns a position', 'share'];
  const named = ({name}) => `\`${name}\``;
  return `${date}, ${machine.processor}, ${machine.cores} cores, commit ` +
    `${commit}: facts ${costs.factsNsPerPosition.toFixed(0)} ns, facts and ` +
    `all terms ${costs.scoreNsPerPosition.toFixed(0)} ns a position.\n\n` +
    `${table(heads('theme'), costs.themes.map((theme) =>
      row(theme.name, theme)))}\n\n` +
    `The ${SHOWN} dearest of ${costs.terms.length} terms:\n\n` +
    `${table(heads('term'), costs.terms.slice(0, SHOWN).map((term) =>
      row(named(term), term)))}`;
}

const milli = (loss) => (1000 * loss).toFixed(2);

export function worthTables({worths}) {
  const row = (name, worth) => [name,
    `${(100 * worth.fires).toFixed(1)} %`, worth.meanCp.toFixed(0),
    milli(worth.lossLeftOut),
    `${milli(worth.lossLeftOutLow)} to ${milli(worth.lossLeftOutHigh)}`,
    worth.bestFactor === null ? '' :
      Math.min(3, Math.max(0, worth.bestFactor)).toFixed(2)];
  const heads = (what) => [what, 'fires', 'cp', 'worth', '95 % interval',
    'best size'];
  const earned = worths.terms.filter((term) => term.lossLeftOutLow > 0).length;
  const harmful = worths.terms.filter((term) => term.lossLeftOutHigh < 0);
  const slices = worths.slices.filter(({group}) =>
    ['phase', 'material', 'equal material'].includes(group));
  const harm = harmful.length === 0 ? 'none does harm for certain' :
    `${harmful.map(({name}) => `\`${name}\``).join(', ')} ` +
    `${harmful.length === 1 ? 'does' : 'do'} harm`;
  return `${worths.source}: ${worths.positions} positions of ${worths.games} ` +
    `games, log loss ${worths.loss.toFixed(5)} (a constant ` +
    `${worths.constantLoss.toFixed(5)}) at a scale of ` +
    `${worths.scaleCp.toFixed(0)} centipawns; catalogue ` +
    `${worths.catalogueVersion}, weights ${worths.weights}.\n\n` +
    `${table(heads('theme'), worths.themes.map((theme) =>
      row(theme.name, theme)))}\n\n` +
    `Of ${worths.terms.length} terms that fire, ${earned} have earned their ` +
    `place beyond chance; ${harm}. The ${SHOWN} of most worth:\n\n` +
    `${table(heads('term'), worths.terms.slice(0, SHOWN).map((term) =>
      row(`\`${term.name}\``, term)))}\n\n` +
    `${table(['positions', 'how many', 'log loss', 'a constant', 'own scale',
      'miss'], slices.map((slice) => [`${slice.group}: ${slice.name}`,
      slice.positions, slice.loss.toFixed(4), slice.constantLoss.toFixed(4),
      slice.ownScaleCp.toFixed(0), `${(100 * slice.meanMiss).toFixed(1)} %`]))}`;
}

// The text with a new content between the marks.
export function between(text, mark, content) {
  const start = `<!-- ${mark} -->\n`;
  const from = text.indexOf(start);
  const to = text.indexOf('\n<!-- end -->', from);
  if (from < 0 || to < 0) throw new Error(`no <!-- ${mark} --> ... <!-- end -->`);
  return text.slice(0, from + start.length) + content + text.slice(to);
}

function main() {
  const {values, positionals} = parseArgs({allowPositionals: true,
    options: {write: {type: 'string'}}});
  const newest = () => join(BASELINES, readdirSync(BASELINES)
    .filter((name) => name.endsWith('.json')).sort().at(-1));
  const run = JSON.parse(readFileSync(positionals[0] ?? newest(), 'utf8'));
  const made = {costs: costTables(run)};
  if (run.worths !== undefined) made.worths = worthTables(run);
  if (values.write === undefined) {
    console.log(Object.values(made).join('\n\n'));
    return;
  }
  let text = readFileSync(values.write, 'utf8');
  for (const [mark, content] of Object.entries(made)) {
    text = between(text, mark, content);
  }
  writeFileSync(values.write, text);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) main();
