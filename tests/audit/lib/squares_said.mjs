// Squares that a text names and that none of its claims is about. A claim is
// about its squares, and about those that the moves of its line leave, reach or
// take on.

import { fromJson } from './registry.mjs';
import { at, fileOf, nameOf, rowOf } from './board.mjs';

// A square, or a move's: "e4", "Nxe5", "exd6", "b8=Q".
const SQUARE = /[a-h][1-8](?![0-9])/g;

function squaresOfClaim(json, auditor) {
  const claim = fromJson(json);
  if (claim.error) return [];
  const squares = [...claim.squares, ...claim.others];
  const { error, steps } = auditor.player.play(claim.line);
  for (const step of error ? [] : steps) {
    if (step === null) continue;
    squares.push(step.from, step.to, at(fileOf(step.to), rowOf(step.from)));
  }
  return squares.map(nameOf);
}

export function unsupported(text, indices, explanation, auditor) {
  const known = new Set(indices.flatMap((index) => {
    const json = explanation.claims?.[index];
    return json ? squaresOfClaim(json, auditor) : [];
  }));
  return [...new Set(text.match(SQUARE) ?? [])].filter(
    (name) => !known.has(name));
}
