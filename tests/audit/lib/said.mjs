// What a sentence may say: the squares, numbers and sides that it names must be
// those of the claims that it points to.

import { WORTH, at, fileOf, rowOf, squareOf } from './board.mjs';

export const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven',
  'eight', 'nine', 'ten'];

export const SQUARE = /(?<![A-Za-z0-9])([a-h][1-8])(?![A-Za-z0-9])/g;
export const NUMBER =
  /\b(one|two|three|four|five|six|seven|eight|nine|ten)\b/gi;

export const squaresIn = (text) =>
  [...text.matchAll(SQUARE)].map((match) => match[1]);

// Numbers of things, in words or digits; move numbers, amounts such as 0.31 and
// numbers inside longer words are none. "no one", "one of" count nothing, and
// "the two bishops" is a name of the pair.
export function numbersIn(text) {
  const bare = text.replace(/the two bishops/g, ' ')
    .replace(/\d+\.\d\d/g, ' ').replace(/\d+\.+ ?\S+/g, ' ')
    .replace(/\b[a-h][1-8]\b/g, ' ');
  const words = [...bare.matchAll(NUMBER)]
    .map((match) => NUMBERS.indexOf(match[1].toLowerCase()));
  const digits = [...bare.matchAll(/(?<![\w.])\d+(?![\w.]|\.\d)/g)]
    .map((match) => Number(match[0]));
  return words.concat(digits);
}

export const sidesIn = (text) => ['White', 'Black'].filter(
  (side) => new RegExp(`\\b${side}\\b`).test(text));

// Squares that a claim is about: its own, and those that the moves of its line
// leave, reach or take on. `play` plays the line: { steps } or { error }.
function squaresOf(claim, play) {
  const found = new Set([...(claim.squares ?? []), ...(claim.others ?? [])]
    .map(squareOf));
  for (const step of play(claim.line ?? []).steps ?? []) {
    if (!step) continue;
    found.add(step.from).add(step.to).add(at(fileOf(step.to), rowOf(step.from)));
    if (/^O-O/.test(step.san)) {  // the rook goes, too
      const [corner, beside] = /^O-O-O/.test(step.san) ? [0, 3] : [7, 5];
      found.add(at(corner, rowOf(step.from))).add(at(beside, rowOf(step.from)));
    }
  }
  return found;
}

// How many units of a kind a line takes off one side more than off the other,
// what that is in pawns, and how many moves each side makes in it.
function numbersOfLine(claim, play) {
  const { positions = [], steps = [] } = play(claim.line ?? []);
  if (positions.length < 2) return [];
  const [first, last] = [positions[0], positions[positions.length - 1]];
  const changed = [1, 2, 3, 4, 5].map((kind) => {
    const balance = ({ board }) => [...board].reduce(
      (sum, piece) => sum + (Math.abs(piece) === kind ? Math.sign(piece) : 0), 0);
    return balance(last) - balance(first);
  });
  const worth = changed.reduce((sum, n, i) => sum + n * WORTH[i + 1], 0);
  const moves = [0, 1].map((turn) =>
    steps.filter((step, i) => step && i % 2 === turn).length);
  return [...changed.map(Math.abs), Math.round(Math.abs(worth) / 100), ...moves];
}

function numbersOf(claim, play) {
  const own = [claim.count ?? 0, claim.otherCount ?? 0, claim.tempi ?? 0,
    (claim.squares ?? []).length, (claim.others ?? []).length];
  const line = /_LINE$/.test(claim.kind) ? numbersOfLine(claim, play) : [];
  // "Pieces trained on it" leaves out the king, which the claim counts.
  if (/_KING_ATTACKERS$/.test(claim.kind)) own.push(claim.count - 1);
  // "Two pawns' worth": a claim has it in centipawns.
  if (/_HANGING$/.test(claim.kind)) own.push(Math.round(claim.count / 100));
  // The last: a surplus of one side's units over the other's.
  return [...own, ...line, Math.abs(own[0] - own[1])];
}

// The squares and numbers that a sentence may name. `groups` are
// [{ claims, play }] with the claims that the sentence points to.
export const squaresAllowed = (groups) => new Set(groups.flatMap(
  ({ claims, play }) => claims.flatMap((claim) => [...squaresOf(claim, play)])));
export const numbersAllowed = (groups) => new Set(groups.flatMap(
  ({ claims, play }) => claims.flatMap((claim) => numbersOf(claim, play))));

// What is wrong with a sentence: a list.
export function checkSentence(where, text, groups) {
  if (!text) return [`${where} is empty`];
  if (groups.every(({ claims }) => claims.length === 0)) {
    return [`${where} has no claim`];
  }
  // Lines are played only for a text that has something to look for.
  const missing = (named, allowed, isIn) => {
    if (named.length === 0) return [];
    const known = allowed(groups);
    return named.filter((each) => !isIn(known, each));
  };
  return [
    ...missing(squaresIn(text), squaresAllowed,
      (known, name) => known.has(squareOf(name))).map(
      (name) => `${where} names ${name}, its claims do not: ${text}`),
    ...missing(numbersIn(text), numbersAllowed,
      (known, number) => known.has(number)).map(
      (number) => `${where} says ${number}, its claims do not: ${text}`),
  ];
}
