// Makes false claims out of true ones, one change at a time.

import { KINDS } from './registry.mjs';

const PIECES = ['PAWN', 'KNIGHT', 'BISHOP', 'ROOK', 'QUEEN', 'KING'].map(
  (name) => `PIECE_KIND_${name}`);
const FILES = 'abcdefgh';

const otherSide = (side) =>
  (side === 'SIDE_WHITE' ? 'SIDE_BLACK' : 'SIDE_WHITE');

function anySquare(random, not) {
  for (;;) {
    const name = FILES[random.below(8)] + (random.below(8) + 1);
    if (!not.includes(name)) return name;
  }
}

// One of a list of squares replaced by a square that is not in it.
function replaced(random, list) {
  const copy = [...list];
  copy[random.below(list.length)] = anySquare(random, list);
  return copy;
}

const counts = (claim) => [1, -1].flatMap((by) => [
  ['count', { ...claim, count: (claim.count ?? 0) + by }],
  ['other count', { ...claim, otherCount: (claim.otherCount ?? 0) + by }],
]);

function squareChanges(claim, field, random) {
  const list = claim[field] ?? [];
  const changed = (name, value) => [[name, { ...claim, [field]: value }]];
  if (list.length === 0) {
    return changed(`added to ${field}`, [anySquare(random, [])]);
  }
  return [
    ...changed(`wrong in ${field}`, replaced(random, list)),
    ...changed(`left out of ${field}`, list.slice(1)),
    ...changed(`added to ${field}`, [...list, anySquare(random, list)]),
    ...changed(`turned ${field}`, [...list].reverse()),
  ];
}

function pieceChanges(claim, random) {
  const wrong = PIECES.filter((piece) => piece !== claim.piece);
  return [['piece', { ...claim, piece: random.pick(wrong) }]];
}

// [name of the change, claim] for every change to try. For a kind that is
// verified one by one, only changes that are false for certain: a wrong count,
// and a wrong side where the side must have made the last move or gains.
export function mutationsOf(kind, claim, random) {
  const row = KINDS[kind];
  const sideChange = [['side', { ...claim, side: otherSide(claim.side) }]];
  if (!row.enumerate) {
    const sided = row.idea || (row.ownLine && claim.count);
    return [...counts(claim), ...(sided ? sideChange : [])];
  }
  return [
    ...counts(claim),
    ...(row.sideless ? [] : sideChange),
    ...squareChanges(claim, 'squares', random),
    ...squareChanges(claim, 'others', random),
    ...(row.usesPiece ? pieceChanges(claim, random) : []),
  ];
}
