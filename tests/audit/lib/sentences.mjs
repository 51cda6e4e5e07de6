// An explanation's sentences read back: the squares, numbers, pieces and sides
// that a text names must be those of the claims that it points to.

import {
  BISHOP, BLACK, KING, KNIGHT, PAWN, QUEEN, ROOK, WHITE, nameOf, squareOf,
} from './board.mjs';
import {
  NUMBER, NUMBERS, SQUARE, checkSentence, numbersAllowed, sidesIn,
  squaresAllowed,
} from './said.mjs';

const KINDS = {
  pawn: PAWN, knight: KNIGHT, bishop: BISHOP, rook: ROOK, queen: QUEEN,
  king: KING,
};

const ALL_SQUARES = [...Array(64).keys()].map(nameOf);

// "the knight on f6", "White's rook on a1".
const PLACED = /(?:\b(White|Black)'s )?\b(pawn|knight|bishop|rook|queen|king) on ([a-h][1-8])\b/g;

const ofValue = (cp) => (cp === 0 ? null : cp > 0 ? 'SIDE_WHITE' : 'SIDE_BLACK');

function textsOfPlan({ title, needs, claims, counter, ifIgnored, steps = [] }) {
  return [
    ['title', { text: title, claims }], ['needs', { text: needs, claims }],
    ['counter.text', counter], ['ifIgnored.text', ifIgnored],
    ...steps.map((step, i) => [
      `steps[${i}].purpose`, { text: step.purpose, claims: step.claims }]),
  ];
}

// Each text with the indices of its claims and the sides that it is for.
export function textsOf(explanation) {
  const { verdict, summary, summaryClaims, advice } = explanation;
  const lists = ['ledger', 'reasons', 'plans', 'cautions', 'threats',
    'temptations'];
  const found = [
    ['summary', { text: summary, claims: summaryClaims }],
    ['verdict.text', verdict], ['advice.text', advice],
    ...lists.flatMap((list) => (explanation[list] ?? []).map(
      (part, i) => [`${list}[${i}].text`, part])),
    ...(explanation.plans ?? []).flatMap((plan, i) => textsOfPlan(plan).map(
      ([what, part]) => [`plans[${i}].${what}`, { side: plan.side, ...part }])),
  ];
  return found.filter(([, part]) => part?.text).map(
    ([where, { text, claims = [], side, favours, valueCp = 0 }]) => (
      { where, text, claims, sides: [side, favours, ofValue(valueCp)] }));
}

// The explained position and those that the claims' lines go through.
const boardsOf = (claims, play) => [{}, ...claims].flatMap(
  ({ line = [] }) => (play(line).positions ?? []).map(({ board }) => board));

function checkPieces(where, text, claims, play) {
  const placed = [...text.matchAll(PLACED)];
  const boards = placed.length > 0 ? boardsOf(claims, play) : [];
  return placed.flatMap(([phrase, side, kind, square]) => {
    const stands = (board) => {
      const piece = board[squareOf(square)];
      return Math.abs(piece) === KINDS[kind] &&
        (!side || Math.sign(piece) === (side === 'White' ? WHITE : BLACK));
    };
    return boards.some(stands) ? []
      : [`${where} says "${phrase}", where none stands: ${text}`];
  });
}

// Claims that compare the sides, also where one of them has nothing.
const COMPARES = /_(SPACE|FAR_CONTROL|CONTROL|ATTACK_COUNT|PAWN_ADVANCE|MATERIAL)$/;

// A side that is named is one that the text is for, or a claim's, or one of two
// that a claim tells of: an unsided one, a comparison, what comes of a line.
function checkSides({ where, text, sides: own }, claims) {
  const sides = new Set([...own, ...claims.flatMap(
    ({ kind, side, line = [], others = [] }) =>
      (!side || line.length > 0 || others.length > 0 || COMPARES.test(kind)
        ? ['SIDE_WHITE', 'SIDE_BLACK'] : [side]))]);
  return sidesIn(text).filter(
    (side) => !sides.has(`SIDE_${side.toUpperCase()}`)).map(
    (side) => `${where} speaks of ${side}, its claims do not: ${text}`);
}

const playWith = (auditor) => (line) => auditor.player.play(line);
const claimsOf = (said, explanation) =>
  said.claims.flatMap((i) => explanation.claims?.[i] ?? []);

export function checkText(said, explanation, auditor) {
  const { where, text } = said;
  const claims = claimsOf(said, explanation);
  const play = playWith(auditor);
  return [
    ...checkSentence(where, text, [{ claims, play }]),
    ...checkPieces(where, text, claims, play),
    ...checkSides(said, claims),
  ];
}

export const checkSentences = (explanation, auditor) =>
  textsOf(explanation).flatMap((said) => checkText(said, explanation, auditor));

// The text with one thing in it wrong: [what, text] for each square, number and
// piece in it, in whose place stands one that no claim of it knows.
export function wrongTextsOf(said, explanation, auditor, random) {
  const { text } = said;
  const claims = claimsOf(said, explanation);
  const play = playWith(auditor);
  const squares = squaresAllowed([{ claims, play }]);
  const numbers = numbersAllowed([{ claims, play }]);
  const boards = boardsOf(claims, play);
  const wrongSquares = ALL_SQUARES.filter((name) => !squares.has(squareOf(name)));
  const wrongNumbers = NUMBERS.filter((word, n) => n > 0 && !numbers.has(n));
  const wrongKinds = (square) => Object.keys(KINDS).filter((kind) =>
    boards.every((board) => Math.abs(board[squareOf(square)]) !== KINDS[kind]));
  const changed = (what, pattern, wrongOnes) =>
    [...text.matchAll(pattern)].flatMap((match) => {
      const [old, list] = wrongOnes(match);
      if (list.length === 0) return [];
      const at = match.index + match[0].indexOf(old);
      return [[what, text.slice(0, at) + random.pick(list) +
        text.slice(at + old.length)]];
    });
  return [
    ...changed('square', SQUARE, ([name]) => [name, wrongSquares]),
    ...changed('number', NUMBER, ([word]) => [word, wrongNumbers]),
    ...changed('piece', PLACED,
      ([, , kind, square]) => [kind, wrongKinds(square)]),
  ];
}
