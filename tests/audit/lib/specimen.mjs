// A made-up explanation around the claims that the auditor lists itself: what
// the tools are tried on in selftest.mjs. It shows the tools' plumbing, not
// that the claims are right; the hand-made cases do that.

import { parseFen } from './board.mjs';
import { centreKind } from './files_centre.mjs';
import { structureName } from './structures.mjs';
import { Auditor, ENUMERABLE, toJson } from './registry.mjs';

export function explain(fen) {
  const auditor = new Auditor(fen);
  const claims = ENUMERABLE.flatMap((kind) => [...auditor.list(kind).values()]
    .filter((claim) => claim.required !== false)
    .map((claim) => toJson(kind, claim)));
  const { board, turn } = parseFen(fen);
  return {
    fen,
    sideToMove: turn > 0 ? 'SIDE_WHITE' : 'SIDE_BLACK',
    scoreCp: 25,
    verdict: { nag: 10, claims: [0] },
    ledger: [
      { term: 'one', valueCp: 30, claims: [0] },
      { term: 'two', valueCp: -5, claims: [1] },
    ],
    reasons: [{ text: 'A first thing.', valueCp: 30, entries: [0], claims: [0] }],
    structure: {
      name: structureName(parseFen(fen)).name,
      centre: centreKind(board),
      claims: [...claims.keys()].filter(
        (index) => claims[index].kind === 'CLAIM_KIND_STRUCTURE'),
    },
    claims,
    summary: 'Both things.',
    summaryClaims: [0, 1],
  };
}
