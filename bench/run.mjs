// Runs every benchmark program of a build and writes what they found.
//
//   node bench/run.mjs [--build DIR] [--out FILE.json] [--seconds N]
//
// One JSON object: the machine, the commit, and for each benchmark its time
// and its counters (positions a second, calls for memory, bytes, peak MiB).
// Numbers of two machines or two days do not compare: compare.mjs runs two
// builds in turn instead.
import {execFileSync} from 'node:child_process';
import {existsSync, readdirSync, writeFileSync} from 'node:fs';
import {cpus, totalmem} from 'node:os';
import {join} from 'node:path';
import {fileURLToPath} from 'node:url';
import {parseArgs} from 'node:util';

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

function commit() {
  const git = (...words) =>
    execFileSync('git', ['-C', ROOT, ...words], {encoding: 'utf8'}).trim();
  const changed = git('status', '--porcelain', '--untracked-files=no') !== '';
  return git('rev-parse', '--short', 'HEAD') + (changed ? ' and changes' : '');
}

function main() {
  const {values} = parseArgs({options: {
    build: {type: 'string', default: join(ROOT, 'build')},
    out: {type: 'string'},
    seconds: {type: 'string', default: '0.5'},
  }});
  const result = {
    machine: {processor: cpus()[0].model.trim(), cores: cpus().length,
      memoryGiB: Math.round(totalmem() / GIB)},
    commit: commit(),
    date: new Date().toISOString().slice(0, 10),
    programs: {},
  };
  for (const program of programsOf(values.build)) {
    console.error(program);
    result.programs[program] =
      measure(values.build, program, values.seconds);
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
