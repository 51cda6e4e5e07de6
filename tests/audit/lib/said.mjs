// What a sentence may say: the squares, numbers and sides that it names must be
// those of the claims that it points to.

import { squareOf } from './board.mjs';

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven',
  'eight', 'nine', 'ten'];

export const squaresIn = (text) =>
  [...text.matchAll(/(?<![A-Za-z0-9])([a-h][1-8])(?![A-Za-z0-9])/g)]
    .map((match) => match[1]);

// Numbers of things, in words or digits; move numbers, amounts such as 0.31 and
// numbers inside longer words are none. "no one", "one of" count nothing.
export function numbersIn(text) {
  const bare = text.replace(/\d+\.\d\d/g, ' ').replace(/\d+\.+ ?\S+/g, ' ')
    .replace(/\b[a-h][1-8]\b/g, ' ');
  const words = [...bare.matchAll(/\b(one|two|three|four|five|six|seven|eight|nine|ten)\b/gi)]
    .map((match) => NUMBERS.indexOf(match[1].toLowerCase()));
  const digits = [...bare.matchAll(/(?<![\w.])\d+(?![\w.]|\.\d)/g)]
    .map((match) => Number(match[0]));
  return words.concat(digits);
}

export const sidesIn = (text) => ['White', 'Black'].filter(
  (side) => new RegExp(`\\b${side}\\b`).test(text));

// Squares that a claim is about, those that its line touches included. `play`
// plays the line: { steps } or { error }.
function squaresOf(claim, play) {
  const found = new Set([...(claim.squares ?? []), ...(claim.others ?? [])]
    .map(squareOf));
  for (const step of play(claim.line ?? []).steps ?? []) {
    if (step) found.add(step.from).add(step.to);
  }
  return found;
}

// How many units of a kind a line takes off one side more than off the other.
function exchangedIn(claim, play) {
  const { positions = [] } = play(claim.line ?? []);
  if (positions.length < 2) return [];
  const [first, last] = [positions[0], positions[positions.length - 1]];
  return [1, 2, 3, 4, 5].map((kind) => {
    const balance = ({ board }) => [...board].reduce(
      (sum, piece) => sum + (Math.abs(piece) === kind ? Math.sign(piece) : 0), 0);
    return Math.abs(balance(first) - balance(last));
  });
}

function numbersOf(claim, play) {
  const own = [claim.count ?? 0, claim.otherCount ?? 0, claim.tempi ?? 0,
    (claim.squares ?? []).length, (claim.others ?? []).length];
  // A surplus of one side's units over the other's.
  const exchanged =
    /_LINE$/.test(claim.kind) ? exchangedIn(claim, play) : [];
  return [...own, ...exchanged, Math.abs(own[0] - own[1])];
}

// What is wrong with a sentence: a list. `groups` are [{claims, play}] with the
// claims that the sentence points to.
export function checkSentence(where, text, groups) {
  const found = [];
  if (!text) return [`${where} is empty`];
  const claims = groups.flatMap((group) => group.claims);
  if (claims.length === 0) return [`${where} has no claim`];
  const known = new Set();
  for (const { claims: own, play } of groups) {
    for (const claim of own) {
      for (const square of squaresOf(claim, play)) known.add(square);
    }
  }
  for (const name of squaresIn(text)) {
    if (!known.has(squareOf(name))) {
      found.push(`${where} names ${name}, its claims do not: ${text}`);
    }
  }
  const numbers = new Set(groups.flatMap(({ claims: own, play }) =>
    own.flatMap((claim) => numbersOf(claim, play))));
  for (const number of numbersIn(text)) {
    if (!numbers.has(number)) {
      found.push(`${where} says ${number}, its claims do not: ${text}`);
    }
  }
  return found;
}
