// What must hold of an explanation as a whole, whatever its claims say: sums,
// indices, and that no reason, verdict or summary stands without a claim.

import { BLACK, parseFen } from './board.mjs';
import { centreKind } from './files_centre.mjs';
import { structureName } from './structures.mjs';

const sum = (numbers) => numbers.reduce((a, b) => a + b, 0);

// Visits every list of claim indices, with the path that names it.
function eachIndexList(value, path, visit) {
  if (Array.isArray(value)) {
    value.forEach((each, i) => eachIndexList(each, `${path}[${i}]`, visit));
  } else if (value && typeof value === 'object') {
    for (const [key, inner] of Object.entries(value)) {
      const here = path ? `${path}.${key}` : key;
      // The list of the claims themselves is not a list of indices.
      if (here === 'claims') continue;
      if (key === 'claims' || key === 'summaryClaims') visit(inner, here);
      else eachIndexList(inner, here, visit);
    }
  }
}

function checkIndices(explanation) {
  const found = [];
  const total = (explanation.claims ?? []).length;
  eachIndexList(explanation, '', (list, path) => {
    const ok = Array.isArray(list) && list.every(
      (index) => Number.isInteger(index) && index >= 0 && index < total);
    if (!ok) found.push(`${path} points outside the ${total} claims`);
  });
  return found;
}

function checkSums({ ledger = [], reasons = [], scoreCp = 0 }) {
  const found = [];
  const total = sum(ledger.map((entry) => entry.valueCp ?? 0));
  if (total !== scoreCp) {
    found.push(`the ledger adds up to ${total}, the score is ${scoreCp}`);
  }
  reasons.forEach((reason, i) => {
    const entries = reason.entries ?? [];
    if (!entries.every((index) => index in ledger)) {
      found.push(`reasons[${i}].entries points outside the ledger`);
      return;
    }
    const value = sum(entries.map((index) => ledger[index].valueCp ?? 0));
    if (value !== (reason.valueCp ?? 0)) {
      found.push(`reasons[${i}] is worth ${reason.valueCp ?? 0}, ` +
        `its entries add up to ${value}`);
    }
  });
  return found;
}

function checkSupport({ reasons = [], verdict, summary, summaryClaims = [] }) {
  const found = [];
  const bare = (part) => (part?.claims ?? []).length === 0;
  reasons.forEach((reason, i) => {
    if (bare(reason)) found.push(`reasons[${i}] has no claim`);
  });
  if (!verdict) found.push('there is no verdict');
  else if (bare(verdict)) found.push('the verdict has no claim');
  if (!summary) found.push('there is no summary');
  if (summaryClaims.length === 0) found.push('the summary has no claim');
  return found;
}

// The name, and a claim for it among the structure's own.
function checkStructure(position, structure, claims) {
  const { name, number } = structureName(position);
  if ((structure.name ?? '') !== name) {
    return [`structure is called "${structure.name}", it is "${name}"`];
  }
  const own = (structure.claims ?? []).map((index) => claims[index]);
  const named = own.some((claim) => claim?.kind === 'CLAIM_KIND_STRUCTURE' &&
    claim.count === number);
  return name && !named ? ['structure has no claim for its name'] : [];
}

function checkFacts(explanation) {
  const {
    fen, sideToMove, structure, advice, plans = [], claims = [],
  } = explanation;
  const found = [];
  const { board, turn } = parseFen(fen);
  const side = turn === BLACK ? 'SIDE_BLACK' : 'SIDE_WHITE';
  if (sideToMove !== side) found.push(`side to move is ${side} in the FEN`);
  if (structure?.centre && structure.centre !== centreKind(board)) {
    found.push(`structure says ${structure.centre}, it is ${centreKind(board)}`);
  }
  if (structure) found.push(...checkStructure(parseFen(fen), structure, claims));
  // Plan 0 is also what an unset field reads as, so only a number that points
  // past the plans can be found wrong.
  if (advice?.plan && advice.plan >= plans.length) {
    found.push('advice.plan points outside the plans');
  }
  return found;
}

export function checkExplanation(explanation) {
  return [
    ...checkIndices(explanation),
    ...checkSums(explanation),
    ...checkSupport(explanation),
    ...checkFacts(explanation),
  ];
}
