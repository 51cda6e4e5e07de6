// Audits what is said of a move, of a comparison and of edits of the board:
// lists of what is wrong. Positions, lines and edits are played here with
// chess.js and this folder's own boards; a score is looked up with `scoreOf`,
// a function from FEN to White's centipawns, where it is given.

import {
  BLACK, KING, WHITE, fileOf, kindOf, onRank, parseFen, rankFor,
  sideOf, squareOf,
} from './board.mjs';
import { attackersOf } from './attacks.mjs';
import { checkExplanation } from './explanation.mjs';
import { SKIPPED } from './exact.mjs';
import { Auditor } from './registry.mjs';
import { exchangeValue } from './exchange.mjs';
import { inCheck } from './legal.mjs';
import { LinePlayer } from './play.mjs';
import { checkSentence, squaresIn } from './said.mjs';
import { isHole, isIsolated, isPinned } from './words.mjs';

const SIDE_OF = { SIDE_WHITE: WHITE, SIDE_BLACK: BLACK };
const sum = (list) => list.reduce((a, b) => a + b, 0);
const placement = (fen) => fen.split(' ').slice(0, 2).join(' ');

function wrongClaims(auditor, claims, where) {
  const found = [];
  claims.forEach((claim, i) => {
    const why = auditor.verify(claim);
    if (why && why !== SKIPPED) {
      found.push(`${where}[${i}] ${JSON.stringify(claim)}: ${why}`);
    }
  });
  return found;
}

// The claims of a list of indices, or null where one points outside.
function pick(claims, indices = []) {
  if (!indices.every((i) => Number.isInteger(i) && i >= 0 && i < claims.length)) {
    return null;
  }
  return indices.map((i) => claims[i]);
}

// One sentence with the lists that it points into.
function checkText(where, text, lists) {
  const groups = [];
  for (const { claims, indices, play } of lists) {
    const chosen = pick(claims, indices);
    if (chosen === null) return [`${where} points outside the claims`];
    groups.push({ claims: chosen, play });
  }
  return checkSentence(where, text, groups);
}

// --- what a move does ---

// Sentences whose truth can be seen on the boards before and after: [pattern,
// check]. A check gets the squares that the sentence names and returns what is
// wrong, or nothing.
function spanOf(pawn, side) {
  const squares = [];
  for (const file of [fileOf(pawn) - 1, fileOf(pawn) + 1]) {
    if (file < 0 || file > 7) continue;
    for (let rank = rankFor(pawn, side) + 1; rank <= 8; rank += 1) {
      squares.push(onRank(file, rank, side));
    }
  }
  return squares;
}

const PATTERNS = [
  [/^The \w+ no longer guards /, ({ before, after, from, to, side }, square) =>
    attackersOf(before.board, square, side).includes(from) &&
    !attackersOf(after.board, square, side).includes(to)],
  [/^The \w+ now guards /, ({ before, after, from, to, side }, square) =>
    !attackersOf(before.board, square, side).includes(from) &&
    attackersOf(after.board, square, side).includes(to)],
  [/^The pawn can never again guard /, ({ from, to, side }, square) =>
    spanOf(from, side).includes(square) && !spanOf(to, side).includes(square)],
  [/left without a guard\.$/, ({ before, after, side }, square) =>
    sideOf(after.board[square]) === side &&
    attackersOf(before.board, square, side).length > 0 &&
    attackersOf(after.board, square, side).length === 0],
  [/ is no longer without a guard/, ({ after }, square) =>
    attackersOf(after.board, square, sideOf(after.board[square])).length > 0],
  [/ is no longer pinned/, ({ after }, square) =>
    !isPinned(after.board, square)],
  [/ no longer hangs\b/, ({ after }, square) =>
    exchangeValue(after.board, square) === 0 || inCheck(after.board,
      sideOf(after.board[square]))],
  [/ no longer has a hole on /, ({ after }, square, text) =>
    !isHole(after.board, square, /^White/.test(text) ? WHITE : BLACK)],
  [/ no longer has an isolated pawn on /, ({ after }, square, text) => {
    const side = /^White/.test(text) ? WHITE : BLACK;
    return after.board[square] !== side || !isIsolated(after.board, square, side);
  }],
  [/ misses a guard of /, ({ before, after, from, side }, square) =>
    attackersOf(before.board, square, side).includes(from) &&
    attackersOf(after.board, square, side).length <
      attackersOf(before.board, square, side).length],
];

function checkSeen(where, text, scene) {
  const pattern = PATTERNS.find(([regexp]) => regexp.test(text));
  if (!pattern) return [];
  const squares = squaresIn(text);
  if (squares.length === 0) return [`${where} names no square: ${text}`];
  return squares.filter((name) => !pattern[1](scene, squareOf(name), text))
    .map((name) => `${where} is not so of ${name}: ${text}`);
}

function checkBalance(where, { gains = [], concessions = [] }, change, context) {
  const found = [];
  const { claims, play, side, scene } = context;
  const total = sum([...gains, ...concessions].map((each) => each.changeCp ?? 0));
  if (total !== change) {
    found.push(`${where}: changes add up to ${total}, the score's to ${change}`);
  }
  if (concessions.length === 0) found.push(`${where}: nothing is given up`);
  for (const [list, sign, name] of [
    [gains, 1, 'gains'], [concessions, -1, 'concessions']]) {
    list.forEach((each, i) => {
      const here = `${where}${name}[${i}]`;
      const value = (each.changeCp ?? 0) * side * sign;
      if (each.term ? value <= 0 : value !== 0) {
        found.push(`${here} is worth ${each.changeCp ?? 0}`);
      }
      if (!SIDE_OF[each.side]) found.push(`${here} is of no side`);
      const named = /^(White|Black)(?:'s)? (?!gets)/.exec(each.text ?? '');
      if (named && `SIDE_${named[1].toUpperCase()}` !== each.side) {
        found.push(`${here} is ${each.side}'s: ${each.text}`);
      }
      found.push(...checkText(here, each.text,
        [{ claims, indices: each.claims, play }]));
      found.push(...checkSeen(here, each.text ?? '', scene));
    });
  }
  return found;
}

function checkPlan(where, plan, fen, side, context) {
  const found = [];
  const { claims, play } = context;
  if (SIDE_OF[plan.side] !== side) found.push(`${where} is ${plan.side}'s`);
  found.push(...checkText(where, plan.text,
    [{ claims, indices: plan.claims, play }]));
  const ignored = new LinePlayer(fen).play(plan.ifIgnored?.line ?? []);
  if (ignored.error) found.push(`${where}: ${ignored.error}`);
  return found;
}

// `question` is { fen, move }; `answer` the MoveExplanation.
export function checkMove({ fen, move }, answer, scoreOf) {
  const { claims = [], scoreBeforeCp = 0, scoreAfterCp = 0 } = answer;
  const auditor = new Auditor(fen);
  const player = new LinePlayer(fen);
  const play = (line) => player.play(line);
  const made = play([answer.san]);
  if (made.error) return [made.error];
  const [before, after] = made.positions;
  const [{ from, to }] = made.steps;
  const found = [];
  if (move && move !== answer.san) found.push(`${answer.san} is not ${move}`);
  if (placement(after.fen) !== placement(answer.fenAfter ?? '')) {
    found.push(`after the move it is ${after.fen}, not ${answer.fenAfter}`);
  }
  found.push(...wrongClaims(auditor, claims, 'claims'));
  const side = before.turn;
  const context = { claims, play, side,
    scene: { before, after, from, to, side } };
  found.push(...checkBalance('', answer, scoreAfterCp - scoreBeforeCp, context));
  const { settled } = answer;
  if (settled) {
    const line = play(settled.line ?? []);
    if (line.error) return [...found, line.error];
    const end = line.positions[line.positions.length - 1];
    if (settled.line[0] !== answer.san) found.push('settled: another move');
    if (placement(end.fen) !== placement(settled.fen)) {
      found.push(`settled: it is ${end.fen}, not ${settled.fen}`);
    }
    found.push(...checkBalance('settled.', settled,
      (settled.scoreCp ?? 0) - scoreBeforeCp,
      { ...context, scene: { before, after: end, from, to, side } }));
    if (scoreOf && scoreOf(settled.fen) !== (settled.scoreCp ?? 0)) {
      found.push('settled.score_cp is not the score of its position');
    }
  }
  (answer.starts ?? []).forEach((plan, i) => found.push(
    ...checkPlan(`starts[${i}]`, plan, after.fen, side, context)));
  (answer.stops ?? []).forEach((plan, i) => found.push(
    ...checkPlan(`stops[${i}]`, plan, fen, -side, context)));
  (answer.allows ?? []).forEach((plan, i) => found.push(
    ...checkPlan(`allows[${i}]`, plan, after.fen, -side, context)));
  const reply = answer.replyToFear;
  if (reply) {
    if (SIDE_OF[reply.side] !== -side) found.push('the reply is the mover\'s');
    const line = new LinePlayer(after.fen).play(reply.line ?? []);
    if (line.error) found.push(`reply: ${line.error}`);
    found.push(...checkText('reply_to_fear', reply.text,
      [{ claims, indices: reply.claims, play }]));
  }
  if (answer.proof) {
    const line = play(answer.proof.line ?? []);
    if (line.error) found.push(`proof: ${line.error}`);
    if (answer.proof.line?.[0] !== answer.san) {
      found.push('the proof does not begin with the move');
    }
  }
  found.push(...checkText('summary', answer.summary,
    [{ claims, indices: answer.summaryClaims, play }]));
  if (scoreOf) {
    if (scoreOf(fen) !== scoreBeforeCp) {
      found.push(`score_before_cp is ${scoreBeforeCp}, not ${scoreOf(fen)}`);
    }
    if (scoreOf(answer.fenAfter) !== scoreAfterCp) {
      found.push(`score_after_cp is ${scoreAfterCp}, ` +
        `not ${scoreOf(answer.fenAfter)}`);
    }
  }
  return found;
}

// --- comparisons ---

// `question` is { fen, moves, others }.
export function checkCompare({ fen, moves = [], others = [] }, answer) {
  const found = [];
  const player = new LinePlayer(fen);
  const starts = moves.length > 0 ? moves.map((san) => {
    const played = player.play([san]);
    return played.error ? played.error : played.positions[1].fen;
  }) : [fen];
  const fens = [...starts, ...others];
  const { explanations = [], byTerm = [], decides, claims = [],
    claimsOfOthers = [] } = answer;
  if (explanations.length !== fens.length) {
    return [`${explanations.length} explanations of ${fens.length}`];
  }
  explanations.forEach((explanation, i) => {
    const here = `explanations[${i}]`;
    if (placement(explanation.fen) !== placement(fens[i])) {
      found.push(`${here} is of ${explanation.fen}, not ${fens[i]}`);
    }
    found.push(...checkExplanation(explanation).map((why) => `${here}: ${why}`));
    found.push(...wrongClaims(new Auditor(explanation.fen),
      explanation.claims ?? [], `${here}.claims`));
  });
  const terms = new Set(explanations.flatMap(
    (each) => (each.ledger ?? []).map((entry) => entry.term)));
  for (const term of terms) {
    if (!byTerm.some((row) => row.term === term)) {
      found.push(`by_term lacks ${term}`);
    }
  }
  for (const row of byTerm) {
    const values = explanations.map((each) => sum((each.ledger ?? [])
      .filter((entry) => entry.term === row.term)
      .map((entry) => entry.valueCp ?? 0)));
    if (String(values) !== String(row.valueCp ?? [])) {
      found.push(`${row.term} is worth ${values}, not ${row.valueCp}`);
    }
  }
  found.push(...wrongClaims(new Auditor(fen), claims, 'claims'));
  const groups = [{ claims, play: (line) => player.play(line) }];
  others.forEach((other, i) => {
    const own = claimsOfOthers[i]?.claims ?? [];
    const there = new LinePlayer(other);
    found.push(...wrongClaims(new Auditor(other), own,
      `claims_of_others[${i}]`));
    groups.push({ claims: own, play: (line) => there.play(line) });
  });
  found.push(...checkSentence('decides', decides, groups));
  return found;
}

// --- edits ---

// The board after edits, by the words of the contract alone.
function edited(fen, edits) {
  const { board, turn } = parseFen(fen);
  let now = [...board];
  let mover = turn;
  for (const edit of edits) {
    const move = /^([a-h][1-8])-([a-h][1-8])$/.exec(edit);
    const off = /^off-([a-h][1-8])$/.exec(edit);
    const on = /^on-([pnbrqkPNBRQK])([a-h][1-8])$/.exec(edit);
    if (move) {
      now[squareOf(move[2])] = now[squareOf(move[1])];
      now[squareOf(move[1])] = 0;
    } else if (off) {
      now[squareOf(off[1])] = 0;
    } else if (on) {
      const kind = ' pnbrqk'.indexOf(on[1].toLowerCase());
      now[squareOf(on[2])] = on[1] === on[1].toLowerCase() ? -kind : kind;
    } else if (edit === 'pass') {
      mover = -mover;
    } else if (edit === 'swap') {
      now = now.map((_, square) => -now[square ^ 56]);
      mover = -mover;
    }
  }
  return { board: now, turn: mover };
}

const showBoard = (board) => [...board].map((piece) => {
  const letter = ' pnbrqk'[kindOf(piece)];
  return piece > 0 ? letter.toUpperCase() : letter;
}).join('');

// A FEN without what stands on a square, rights that need it dropped.
export function withoutSquare(fen, name) {
  const [rows, turn, rights, , half, full] = fen.split(' ');
  const { board } = parseFen(fen);
  const square = squareOf(name);
  const letter = rows.split('/')[7 - (square >> 3)];
  let row = '';
  for (const each of letter) row += each >= '1' && each <= '8' ? '.'.repeat(Number(each)) : each;
  row = row.slice(0, fileOf(square)) + '.' + row.slice(fileOf(square) + 1);
  row = row.replace(/\.+/g, (dots) => String(dots.length));
  const parts = rows.split('/');
  parts[7 - (square >> 3)] = row;
  const corner = { a1: 'Q', h1: 'K', a8: 'q', h8: 'k' }[name];
  const rook = corner && Math.abs(board[square]) === 4;
  const left = rook ? rights.replace(corner, '') || '-' : rights;
  return [parts.join('/'), turn, left, '-', half, full].join(' ');
}

// `question` is { fen, edits }; `materialOf` gives what the entries of the term
// "material" come to in a FEN.
export function checkWhatIf({ fen, edits = [] }, answer, scoreOf, materialOf) {
  const found = [];
  const { fenAfter, changes = [], claims = [], claimsBefore = [],
    attributions = [], scoreBeforeCp = 0, scoreAfterCp = 0 } = answer;
  const wanted = edited(fen, edits);
  const got = parseFen(fenAfter);
  if (showBoard(wanted.board) !== showBoard(got.board) ||
      wanted.turn !== got.turn) {
    found.push(`the edits do not lead to ${fenAfter}`);
  }
  found.push(...wrongClaims(new Auditor(fenAfter), claims, 'claims'));
  found.push(...wrongClaims(new Auditor(fen), claimsBefore, 'claims_before'));
  const total = sum(changes.map((each) => each.changeCp ?? 0));
  if (total !== scoreAfterCp - scoreBeforeCp) {
    found.push(`changes add up to ${total}, the score's to ` +
      `${scoreAfterCp - scoreBeforeCp}`);
  }
  const after = new LinePlayer(fenAfter);
  const before = new LinePlayer(fen);
  const lists = (part, own, ownBefore) => [
    { claims, indices: part[own], play: (line) => after.play(line) },
    { claims: claimsBefore, indices: part[ownBefore],
      play: (line) => before.play(line) }];
  let last = Infinity;
  changes.forEach((each, i) => {
    const size = Math.abs(each.changeCp ?? 0);
    if (!each.term || size === 0) found.push(`changes[${i}] is nothing`);
    if (size > last) found.push(`changes[${i}] is out of order`);
    last = size;
    const named = /^(White|Black)(?:'s)? (?!gets)/.exec(each.text ?? '');
    if (named && `SIDE_${named[1].toUpperCase()}` !== each.side) {
      found.push(`changes[${i}] is ${each.side}'s: ${each.text}`);
    }
    found.push(...checkText(`changes[${i}]`, each.text,
      lists(each, 'claims', 'claimsBefore')));
  });
  found.push(...checkText('summary', answer.summary,
    lists(answer, 'summaryClaims', 'summaryClaimsBefore')));
  found.push(...checkAmounts(answer));
  const { board } = parseFen(fen);
  const seen = new Set();
  for (const { square, beyondMaterialCp = 0 } of attributions) {
    const piece = board[squareOf(square)];
    if (!piece || kindOf(piece) === KING || seen.has(square)) {
      found.push(`attribution of ${square}`);
      continue;
    }
    seen.add(square);
    if (!scoreOf) continue;
    const without = withoutSquare(fen, square);
    const own = materialOf(fen) - materialOf(without);
    const value = scoreOf(fen) - scoreOf(without) - own;
    if (value !== beyondMaterialCp) {
      found.push(`${square} adds ${value}, not ${beyondMaterialCp}`);
    }
  }
  if (scoreOf) {
    if (scoreOf(fen) !== scoreBeforeCp) found.push('score_before_cp');
    if (scoreOf(fenAfter) !== scoreAfterCp) found.push('score_after_cp');
  }
  return found;
}

// "0.31 better: 0.19 the ..., less 0.02 ...": amounts are those of changes, and
// the side that is called better is.
function checkAmounts({ summary = '', changes = [], scoreBeforeCp = 0,
  scoreAfterCp = 0 }) {
  const found = [];
  const difference = scoreAfterCp - scoreBeforeCp;
  const better = /(White|Black) would be (\d+\.\d\d) better/.exec(summary);
  const signed = better && Math.round(Number(better[2]) * 100) *
    (better[1] === 'White' ? 1 : -1);
  if (better && signed !== difference) {
    found.push(`the summary says ${better[0]}, it is ${difference}`);
  }
  const rest = better ? summary.slice(better.index + better[0].length) : summary;
  const sizes = new Set(changes.map((each) => Math.abs(each.changeCp ?? 0)));
  for (const [text] of rest.matchAll(/\d+\.\d\d/g)) {
    if (!sizes.has(Math.round(Number(text) * 100))) {
      found.push(`the summary says ${text}, no change is worth it`);
    }
  }
  return found;
}

