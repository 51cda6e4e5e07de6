// Audits explanations one after the other and keeps the counts. A difference
// is { fen, kind, claim, why }; the kinds "EXPLANATION", "PLAN" and "SENTENCE"
// mark one that is not of a single claim.

import { SKIPPED } from './exact.mjs';
import { checkExplanation } from './explanation.mjs';
import { checkPlans } from './plans.mjs';
import {
  Auditor, ENUMERABLE, KINDS, fromJson, keyOf, kindName, toJson,
} from './registry.mjs';
import { checkSentences } from './sentences.mjs';

export class Audit {
  constructor({ complete = false } = {}) {
    this.complete = complete;
    this.positions = 0;
    this.plans = 0;
    this.errors = 0;
    this.kinds = new Map(
      Object.keys(KINDS).map((name) => [name, {
        held: 0, wrong: 0, missing: 0, skipped: 0,
      }]));
    this.differences = 0;
  }

  // The differences of one explanation.
  explanation(explanation) {
    this.positions += 1;
    const { fen } = explanation;
    const auditor = new Auditor(fen);
    this.plans += explanation.plans?.length ?? 0;
    const found = [
      ...checkExplanation(explanation).map(
        (why) => ({ fen, kind: 'EXPLANATION', why })),
      ...checkPlans(explanation, auditor).map(
        (why) => ({ fen, kind: 'PLAN', why })),
      ...checkSentences(explanation, auditor).map(
        (why) => ({ fen, kind: 'SENTENCE', why })),
    ];
    for (const json of explanation.claims ?? []) {
      const why = this.claim(auditor, json);
      if (why) found.push({ fen, kind: kindName(json), claim: json, why });
    }
    if (this.complete) found.push(...this.absent(auditor, explanation));
    this.differences += found.length;
    return found;
  }

  claim(auditor, json) {
    const kind = kindName(json);
    const counts = this.kinds.get(kind);
    const why = auditor.verify(json);
    if (why === SKIPPED) {
      counts.skipped += 1;
      return null;
    }
    if (counts) counts[why ? 'wrong' : 'held'] += 1;
    return why;
  }

  absent(auditor, { fen, claims = [] }) {
    const present = new Map(ENUMERABLE.map((kind) => [kind, new Set()]));
    for (const json of claims) {
      const claim = fromJson(json);
      // A claim after a line says nothing of the position itself.
      if (claim.error || claim.line.length) continue;
      present.get(claim.kind)?.add(keyOf(claim.kind, claim));
    }
    return ENUMERABLE.flatMap((kind) => auditor
      .missing(kind, present.get(kind))
      .map((claim) => {
        this.kinds.get(kind).missing += 1;
        return { fen, kind, claim: toJson(kind, claim), why: 'missing' };
      }));
  }

  summary() {
    const lines = [];
    for (const [kind, { held, wrong, missing, skipped }] of this.kinds) {
      if (held + wrong + missing + skipped === 0) continue;
      const parts = [`${held} held`];
      if (wrong) parts.push(`${wrong} wrong`);
      if (missing) parts.push(`${missing} missing`);
      if (skipped) parts.push(`${skipped} not audited`);
      lines.push(`${kind}: ${parts.join(', ')}`);
    }
    return lines;
  }
}
