// Runs every benchmark program of a build and writes what they found.
//
//   node bench/run.mjs [--build DIR] [--out FILE.json] [--seconds N]
//                      [--results FILE.tsv | FILE.tsv.gz | FILE.pgn]
//
// One JSON object: the machine, the commit, for each benchmark its time and its
// counters (positions a second, calls for memory, bytes, peak MiB), what each
// theme and term costs, and, with results of games, what it is worth. Files in
// baselines/ are such runs; tables.mjs makes the README's tables of one.
// Times of two machines or two days do not compare: compare.mjs runs two builds
// in turn instead.
import {execFileSync} from 'node:child_process';
import {existsSync, readFileSync, readdirSync, writeFileSync} from 'node:fs';
import {cpus, totalmem} from 'node:os';
import {basename, join} from 'node:path';
import {fileURLToPath} from 'node:url';
import {parseArgs} from 'node:util';
import {gunzipSync} from 'node:zlib';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const GIB = 2 ** 30;

// The library's own fields; what is left of a row are counters.
const NOT_COUNTERS = new Set(['name', 'family_index',
  'per_family_instance_index', 'run_name', 'run_type', 'repetitions',
  'repetition_index', 'threads', 'iterations', 'real_time', 'cpu_time',
  'time_unit']);

export function programsOf(build) {
  const folder = join(build, 'bin');
  const found = existsSync(folder) ?
    readdirSync(folder).filter((name) => name.endsWith('_benchmark')).sort() :
    [];
  if (found.length === 0) {
    throw new Error(`${folder}: no benchmark programs; configure with ` +
      '-DASSAY_BUILD_BENCH=ON and build');
  }
  return found;
}

// The rows of one program: name to {time, unit, counters}, CPU time.
export function measure(build, program, seconds) {
  const output = execFileSync(join(build, 'bin', program),
    ['--benchmark_format=json', `--benchmark_min_time=${seconds}`],
    {encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit']});
  const rows = {};
  for (const row of JSON.parse(output).benchmarks) {
    if (row.error_occurred) throw new Error(`${row.name}: ${row.error_message}`);
    const counters = Object.fromEntries(Object.entries(row)
      .filter(([key]) => !NOT_COUNTERS.has(key)));
    rows[row.name] = {time: row.cpu_time, unit: row.time_unit, counters};
  }
  return rows;
}

// What a program says with --json -.
function report(build, program, words = [], input = '') {
  return JSON.parse(execFileSync(join(build, 'bin', program),
    [...words, '--json', '-'], {input, encoding: 'utf8', maxBuffer: 2 ** 26,
      stdio: ['pipe', 'pipe', 'inherit']}));
}

function worths(build, file) {
  if (file.endsWith('.pgn')) return report(build, 'assay_worth', [file]);
  const bytes = readFileSync(file);
  const found = report(build, 'assay_worth', [],
    file.endsWith('.gz') ? gunzipSync(bytes) : bytes);
  return {...found, source: basename(file)};
}

function commit() {
  const git = (...words) =>
    execFileSync('git', ['-C', ROOT, ...words], {encoding: 'utf8'}).trim();
  const changed = git('status', '--porcelain', '--untracked-files=no') !== '';
  return git('rev-parse', '--short', 'HEAD') + (changed ? ' and changes' : '');
}

export function machine() {
  return {processor: cpus()[0].model.trim(), cores: cpus().length,
    memoryGiB: Math.round(totalmem() / GIB)};
}

function main() {
  const {values} = parseArgs({options: {
    build: {type: 'string', default: join(ROOT, 'build')},
    out: {type: 'string'},
    seconds: {type: 'string', default: '0.5'},
    results: {type: 'string'},
  }});
  const result = {
    machine: machine(),
    commit: commit(),
    date: new Date().toISOString().slice(0, 10),
    programs: {},
  };
  for (const program of programsOf(values.build)) {
    console.error(program);
    result.programs[program] =
      measure(values.build, program, values.seconds);
  }
  result.costs = report(values.build, 'term_costs');
  if (values.results !== undefined) {
    result.worths = worths(values.build, values.results);
  }
  const text = JSON.stringify(result, null, 1) + '\n';
  if (values.out === undefined) {
    process.stdout.write(text);
  } else {
    writeFileSync(values.out, text);
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  try {
    main();
  } catch (error) {
    console.error(error.message);
    process.exitCode = 1;
  }
}
