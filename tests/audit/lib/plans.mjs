// What must hold of each plan told, from the comments of Plan, PlanStep,
// Counter and IfIgnored in explanation.proto: that its moves can be played as
// said, and that its fields say the same as each other. Whether the plan is
// any good is not asked here, but for one thing: what is in time must not begin
// by hanging the piece that it moves.

import { MATERIAL, kindOf, nameOf, squareOf } from './board.mjs';
import { inCheck } from './legal.mjs';
import { exchangeValue } from './exchange.mjs';
import { passFen } from './play.mjs';

const SIDES_BY_NAME = { SIDE_WHITE: 1, SIDE_BLACK: -1 };

export const KINDS_OF_PLAN = [
  'siege', 'lever', 'expansion', 'regroup', 'trade', 'minority_attack',
  'majority', 'passer', 'king_attack', 'king_walk', 'develop', 'file',
  'restrain', 'reshape',
];

const STANDINGS = [
  'STANDING_IN_TIME', 'STANDING_SLOW', 'STANDING_STOPPED', 'STANDING_NEEDS',
];

// A first step that loses as much is no step of a plan that is in time.
const LOSES_MATERIAL = 100;

const same = (a, b) => a.length === b.length && a.every((x, i) => x === b[i]);

// The side's moves with the other side's waiting moves, from the position on.
export function withPasses(turn, side, sans) {
  const line = [];
  let toMove = turn;
  for (const san of sans) {
    if (toMove !== side) line.push('--');
    line.push(san);
    toMove = -side;
  }
  return line;
}

// What a step says of its move against what was played.
function checkStep(step, played, path) {
  const found = [];
  if (played.san !== step.san) {
    found.push(`${path} is ${step.san}, in SAN ${played.san}`);
  }
  if (step.from !== nameOf(played.from) || step.to !== nameOf(played.to)) {
    found.push(`${path} goes from ${nameOf(played.from)} to ${nameOf(played.to)}`);
  }
  return found;
}

// Consecutive moves of one piece are a route, which each of them carries whole;
// a move that stands alone has none.
function routesOf(played) {
  const routes = played.map(() => []);
  for (let first = 0; first < played.length;) {
    let last = first;
    while (last + 1 < played.length &&
           played[last + 1].from === played[last].to) last += 1;
    if (last > first) {
      const route = [played[first].from];
      for (let i = first; i <= last; i += 1) route.push(played[i].to);
      for (let i = first; i <= last; i += 1) routes[i] = route.map(nameOf);
    }
    first = last + 1;
  }
  return routes;
}

function checkSteps(plan, side, auditor, path) {
  const { turn } = auditor.position;
  const sans = plan.steps.map(({ san }) => san);
  const line = withPasses(turn, side, sans);
  const { error, positions, steps } = auditor.player.play(line);
  if (error) return [`${path}.steps: ${error}`];
  const found = [];
  const played = steps.filter((step) => step !== null);
  const routes = routesOf(played);
  plan.steps.forEach((step, i) => {
    const here = `${path}.steps[${i}]`;
    found.push(...checkStep(step, played[i], here));
    if (!same(step.route ?? [], routes[i])) {
      found.push(`${here}.route is ${step.route ?? []}, its piece goes ` +
        `${routes[i].join(' ') || 'alone'}`);
    }
    if (step.purpose && !(step.claims ?? []).length) {
      found.push(`${here} has no claim`);
    }
  });
  if (plan.standing === 'STANDING_IN_TIME') {
    found.push(...checkFirst(positions, steps, side, path));
  }
  return found;
}

// What captures on the square gain beyond what the move took and what hung of
// the piece before.
function checkFirst(positions, steps, side, path) {
  const ply = steps.findIndex((step) => step !== null);
  const { from, to } = steps[ply];
  const before = positions[ply].board;
  const hung = inCheck(before, side) ? 0 : exchangeValue(before, from);
  const loss = exchangeValue(positions[ply + 1].board, to) -
    MATERIAL[kindOf(before[to])];
  return loss - hung < LOSES_MATERIAL ? []
    : [`${path} is in time and begins by losing ${loss}`];
}

// The plan's steps against waiting moves; where search proved what comes of it,
// against developing ones, with what the side then takes.
function checkIgnored(plan, side, auditor, path) {
  const here = `${path}.ifIgnored.line`;
  const { line = [] } = plan.ifIgnored;
  const sans = plan.steps.map(({ san }) => san);
  const { error, positions, steps } = auditor.player.play(line);
  if (same(line, withPasses(auditor.position.turn, side, sans))) {
    return error ? [`${here}: ${error}`] : [];
  }
  const wrong = [`${here} is not the steps with waiting moves` +
    (error ? `: ${error}` : '')];
  if (error) return wrong;
  const by = (mover) => steps.filter((step, ply) =>
    step !== null && positions[ply].turn === mover);
  const own = by(side);
  // Whether a move checks depends on what the other side has played.
  const bare = (san) => san?.replace(/[+#]$/, '');
  const carriedOut = sans.every((san, i) => bare(own[i]?.san) === bare(san));
  return carriedOut && by(-side).length > 0 ? [] : wrong;
}

// The line that the counter is the end of: the claim that says where it is
// played. The plan may go on between a counter's moves.
function counterLine(counter, claims) {
  const sans = (counter.steps ?? []).map(({ san }) => san);
  const lines = (counter.claims ?? []).map((index) => claims[index])
    .filter((claim) => claim?.kind === 'CLAIM_KIND_LINE')
    .map(({ line = [] }) => line);
  return lines.find((line) => sans.every((san, i) =>
    line[line.length - 1 - 2 * (sans.length - 1 - i)] === san));
}

function checkCounter(plan, side, auditor, claims, path) {
  const here = `${path}.counter`;
  const { counter } = plan;
  const { steps = [] } = counter;
  if (steps.length === 0) return [`${here} has no steps`];
  const found = [];
  if (counter.tempi !== steps.length) {
    found.push(`${here}.tempi is ${counter.tempi}, its steps are ${steps.length}`);
  }
  const line = counterLine(counter, claims);
  if (!line) return [...found, `${here}: no line among its claims ends in it`];
  const { error, positions, steps: played } = auditor.player.play(line);
  if (error) return [...found, `${here}: ${error}`];
  const of = (mover) => played.filter(
    (step, ply) => step !== null && positions[ply].turn === mover);
  const answers = of(-side);
  // The plan's moves, from its first on and in their order; nothing else.
  const own = of(side);
  const goesOn = own.every((step, i) => step.san === plan.steps[i]?.san);
  if (answers.length !== steps.length || !goesOn) {
    const before = line.slice(0, line.length - steps.length * 2 + 1)
      .filter((san) => san !== '--');
    found.push(`${here} is played after ${before.join(' ') || 'nothing'}`);
    return found;
  }
  steps.forEach((step, i) => {
    found.push(...checkStep(step, answers[i], `${here}.steps[${i}]`));
  });
  return found;
}

function checkStanding(plan, side, auditor, path) {
  if (!STANDINGS.includes(plan.standing)) return [`${path} has no standing`];
  const needs = plan.needs ?? '';
  if ((plan.standing === 'STANDING_NEEDS') !== (needs !== '')) {
    return [`${path} is ${plan.standing} and needs "${needs}"`];
  }
  if (plan.standing === 'STANDING_STOPPED' && !plan.counter) {
    return [`${path} is stopped by nothing`];
  }
  return [];
}

function checkTexts(plan, path) {
  const found = [];
  const check = (text, claims, where) => {
    if (!text) found.push(`${where} is empty`);
    if (!(claims ?? []).length) found.push(`${where} has no claim`);
  };
  check(plan.title, plan.claims, `${path}.title`);
  check(plan.text, plan.claims, `${path}.text`);
  if (plan.needs) check(plan.needs, plan.claims, `${path}.needs`);
  check(plan.ifIgnored.text, plan.ifIgnored.claims, `${path}.ifIgnored.text`);
  if (plan.counter) {
    check(plan.counter.text, plan.counter.claims, `${path}.counter.text`);
  }
  plan.steps.forEach((step, i) => {
    if (!step.purpose) return;
    check(step.purpose, step.claims, `${path}.steps[${i}].purpose`);
  });
  return found;
}

function checkTargets({ targets = [] }, path) {
  const wrong = targets.some((name) => squareOf(name) < 0);
  const twice = new Set(targets).size !== targets.length;
  return wrong || twice ? [`${path}.targets are ${targets}`] : [];
}

function checkPlan(plan, explanation, auditor, path) {
  const side = SIDES_BY_NAME[plan.side];
  if (!side) return [`${path} has no side`];
  if (!plan.steps?.length) return [`${path} has no steps`];
  if (!plan.ifIgnored) return [`${path} has no ifIgnored`];
  const found = [];
  if (!KINDS_OF_PLAN.includes(plan.kind)) found.push(`${path}: kind ${plan.kind}`);
  if (plan.tempi !== plan.steps.length) {
    found.push(`${path}.tempi is ${plan.tempi}, its steps are ${plan.steps.length}`);
  }
  found.push(
    ...checkSteps(plan, side, auditor, path),
    ...checkIgnored(plan, side, auditor, path),
    ...checkStanding(plan, side, auditor, path),
    ...checkTargets(plan, path),
    ...checkTexts(plan, path),
    ...checkGain(plan, path));
  if (plan.counter) {
    found.push(...checkCounter(
      plan, side, auditor, explanation.claims ?? [], path));
  }
  return found;
}

// gain_cp is what the ledger shows of it and what it cannot show.
function checkGain({ gainCp = 0, promiseCp = 0, ifIgnored }, path) {
  const parts = (ifIgnored.gainCp ?? 0) + promiseCp;
  return gainCp === parts ? []
    : [`${path}.gainCp is ${gainCp}, its parts add up to ${parts}`];
}

// The advised move is legal, and the first step of the plan that it serves.
function checkAdvice({ advice, sideToMove, plans = [] }, auditor) {
  if (!advice) return [];
  const { error, steps } = auditor.player.play([advice.san]);
  if (error) return [`advice: ${error}`];
  const found = steps[0].san === advice.san ? []
    : [`advice is ${advice.san}, in SAN ${steps[0].san}`];
  if (advice.plan === undefined || !(advice.plan in plans)) return found;
  const { side, steps: [first] = [] } = plans[advice.plan];
  return side === sideToMove && first?.san === advice.san ? found
    : [...found, `advice serves plans[${advice.plan}] with another move`];
}

export function checkPlans(explanation, auditor) {
  return [
    ...(explanation.plans ?? []).flatMap((plan, i) =>
      checkPlan(plan, explanation, auditor, `plans[${i}]`)),
    ...checkAdvice(explanation, auditor),
  ];
}

// FEN of the position whose score if_ignored.gain_cp is made of: the end of the
// line, the same side to move as in the explained one. null where the waiting
// move for that would be made in check.
export function endOf(plan, auditor) {
  const { line = [] } = plan.ifIgnored ?? {};
  const { error, positions, fen } = auditor.player.play(line);
  if (error) return null;
  const last = positions[positions.length - 1];
  if (last.turn === auditor.position.turn) return fen;
  return inCheck(last.board, last.turn) ? null : passFen(fen);
}

// Differences of if_ignored.gain_cp from the change of the static score.
// `scoreOf` gives White's centipawns of a FEN.
export function checkLedgerGains(explanation, auditor, scoreOf) {
  return (explanation.plans ?? []).flatMap((plan, i) => {
    const side = SIDES_BY_NAME[plan.side];
    const end = endOf(plan, auditor);
    const change = end === null ? 0
      : side * (scoreOf(end) - (explanation.scoreCp ?? 0));
    const told = plan.ifIgnored?.gainCp ?? 0;
    return told === change ? []
      : [`plans[${i}].ifIgnored.gainCp is ${told}, the score changes by ${change}`];
  });
}
