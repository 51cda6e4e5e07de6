// Replays what explanations claim of lines with chess.js, an independent rules
// library (BSD-2), on the positions of tests/explain/motif_positions.tsv.
//
//   node motif_oracle.mjs <path of assay> <path of motif_positions.tsv>
//
// Each row is checked first: a legal position, a legal first move, something
// of the loser's on the squares that it names. Then every claim with a line is
// played out and judged on the boards of chess.js (line_claims.mjs). Last, the
// leading caution of each row must name a kind of the row and carry its claim.
// What the rows mean is said in their file.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';

let Chess;
try {
  ({ Chess } = await import('chess.js'));
} catch {
  console.error('chess.js is not installed: npm ci --prefix tests');
  process.exit(77);
}
const { enemyOf, isJudged, judge, nameOf, sideOf } =
  await import('./line_claims.mjs');

const MOST_SHOWN = 10;
const LEAST_ROWS = 60;  // with a winner, and without
const LEAST_NEAR_MISSES = 24;
const LEAST_OF_A_KIND = 5;
const LEAST_UNITS = 12;  // most rows should look like games

// The claim that a caution of each kind rests on.
const EVIDENCE = {
  fork: ['FORK'],
  pin: ['PIN_WINS'],
  skewer: ['SKEWER'],
  discovered_attack: ['DISCOVERED'],
  overloaded: ['OVERLOADED', 'SOLE_GUARD'],
  pinned_defender: ['PINNED'],
  undefended: ['LOOSE', 'HANGING', 'ATTACK_COUNT'],
  trapped: ['TRAPPED'],
  exchange: ['HANGING', 'ATTACK_COUNT'],
  guard_removed: ['ATTACK_COUNT'],
  promotion: ['LINE'],
  back_rank: ['BACK_RANK'],
  mate: ['MATE_IN'],
};

const problems = [];
const counts = new Map();
const report = ({ name, fen }, text) =>
  problems.push(`${name} (${fen}): ${text}`);

function readRows(path) {
  return readFileSync(path, 'utf8').split('\n')
    .filter((line) => line && !line.startsWith('#'))
    .map((line) => {
      const [name, fen, kind, winner, square, move, gain] = line.split('\t');
      return {
        name, fen, kinds: kind.split(','), winner, squares: square.split(','),
        move, gain,
      };
    });
}

const decides = ({ winner }) => winner !== '-';

// The row itself.
function checkRow(row) {
  const chess = new Chess(row.fen);
  if (chess.isGameOver() || chess.isCheck()) report(row, 'over or check');
  if (!decides(row)) return;
  const loser = enemyOf(sideOf(row.winner));
  if (chess.turn() === loser) report(row, 'the winner is not to move');
  if (!chess.moves().includes(row.move)) report(row, `${row.move} is illegal`);
  if (chess.board().flat().filter(Boolean).length < LEAST_UNITS) {
    report(row, 'too few units');
  }
  for (const square of row.squares) {
    const piece = chess.get(square);
    const stands = piece?.color === loser &&
      (piece.type === 'k') === (row.gain === 'mate');
    const promotes = row.kinds.includes('promotion') &&
      '18'.includes(square[1]);
    if (!stands && !promotes) report(row, `nothing to win on ${square}`);
  }
}

function checkRows(rows) {
  rows.forEach(checkRow);
  const kinds = rows.flatMap((row) => row.kinds);
  const least = (what, found, wanted) => {
    if (found < wanted) problems.push(`${what}: ${found}, not ${wanted}`);
  };
  least('rows with a winner', rows.filter(decides).length, LEAST_ROWS);
  least('rows without', rows.filter((row) => !decides(row)).length, LEAST_ROWS);
  const count = (kind) => kinds.filter((each) => each === kind).length;
  for (const kind of Object.keys(EVIDENCE)) {
    if (kind !== 'guard_removed') least(kind, count(kind), LEAST_OF_A_KIND);
  }
  least('near_miss', count('near_miss'), LEAST_NEAR_MISSES);
  for (const field of ['name', 'fen']) {
    if (new Set(rows.map((row) => row[field])).size < rows.length) {
      problems.push(`a ${field} comes twice`);
    }
  }
  const vague = rows.filter((row) => row.kinds.length > 1).length;
  if (5 * vague > rows.filter(decides).length) {
    problems.push(`${vague} rows leave the kind open`);
  }
}

// What the explanation says first.
function checkLead(row, { cautions = [], claims = [], summary = '' }) {
  const [lead] = cautions;
  if (!decides(row)) {
    const named = cautions.find(({ kind }) => kind in EVIDENCE);
    if (named) report(row, `names a ${named.kind}: ${named.text}`);
    return;
  }
  if (!lead || !summary.startsWith(lead.text)) {
    report(row, 'no caution leads');
    return;
  }
  if (!row.kinds.includes(lead.kind)) {
    report(row, `${lead.kind} leads: ${lead.text}`);
  }
  const own = lead.claims.map((index) => nameOf(claims[index]));
  const proof = row.gain === 'mate' ? 'MATE_IN' : 'LINE';
  const evidence = EVIDENCE[lead.kind] ?? [];
  if (!own.includes(proof) || !evidence.some((kind) => own.includes(kind))) {
    report(row, `${lead.kind} rests on ${own.join(', ')}`);
  }
}

const [assay, path] = process.argv.slice(2);
const rows = readRows(path);
checkRows(rows);
const run = spawnSync(assay, ['explain', '--format', 'json', '-'], {
  encoding: 'utf8',
  input: rows.map(({ fen }) => `${fen}\n`).join(''),
  maxBuffer: 1 << 28,
});
if (run.status !== 0) throw new Error(`assay failed: ${run.stderr}`);
const answers = run.stdout.trimEnd().split('\n').map(
  (line) => JSON.parse(line).explanation);
if (answers.length !== rows.length) problems.push('not one answer a row');
rows.forEach((row, i) => {
  checkLead(row, answers[i]);
  for (const claim of answers[i].claims) {
    if (isJudged(claim)) {
      counts.set(nameOf(claim), (counts.get(nameOf(claim)) ?? 0) + 1);
    }
    const wrong = judge(row.fen, claim);
    if (wrong) report(row, `${JSON.stringify(claim)}: ${wrong}`);
  }
});

// A check that nothing came to would pass for ever.
for (const kind of new Set(Object.values(EVIDENCE).flat())) {
  if (!['LOOSE', 'OVERLOADED'].includes(kind) && !counts.has(kind)) {
    problems.push(`no ${kind} claim was seen`);
  }
}
const sum = [...counts.values()].reduce((a, b) => a + b, 0);
console.log(`${rows.length} positions, ${sum} claims replayed: ${
  [...counts].map(([kind, count]) => `${count} ${kind}`).join(', ')}`);
problems.slice(0, MOST_SHOWN).forEach((problem) => console.error(problem));
if (problems.length > MOST_SHOWN) {
  console.error(`and ${problems.length - MOST_SHOWN} more`);
}
process.exitCode = problems.length ? 1 : 0;
