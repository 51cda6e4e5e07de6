// Compares the exchange values that HANGING claims carry with the game played
// out by brute force through chess.js, whose legal moves are the only rules
// used here.
//
//   node exchange_oracle.mjs EXPLANATIONS.jsonl [SQUARES]
//
// The file has explanations made with --all-claims. Every square with a piece
// or pawn that the other side attacks is played out, SQUARES of them (50000 by
// default).
import { readFileSync } from 'node:fs';

import { Chess } from 'chess.js';

import { captureGain } from './captures.mjs';

const MOST_SHOWN = 5;
const wanted = Number(process.argv[3] ?? 50000);

let squares = 0;
let hanging = 0;
let different = 0;
for (const line of readFileSync(process.argv[2], 'utf8').split('\n')) {
  if (!line || squares >= wanted) break;
  const { fen, claims } = JSON.parse(line).explanation;
  const found = new Map(claims
    .filter(({ kind, line: after }) => kind === 'CLAIM_KIND_HANGING' && !after)
    .map(({ squares: [square], count }) => [square, count]));
  const here = new Chess(fen);
  const inCheck = here.isCheck();
  for (const { square, type, color } of here.board().flat().filter(Boolean)) {
    const enemy = color === 'w' ? 'b' : 'w';
    if (type === 'k' || !here.isAttacked(square, enemy)) continue;
    if (inCheck && here.turn() === color) continue;  // no claim in check
    squares += 1;
    const value = captureGain(fen, square, enemy);
    hanging += value > 0 ? 1 : 0;
    const ours = found.get(square) ?? 0;
    if (ours === value) continue;
    different += 1;
    if (different <= MOST_SHOWN) {
      console.error(`${fen} ${square}: ours ${ours}, played out ${value}`);
    }
  }
}

console.log(`${squares} squares, ${hanging} hanging, ${different} different`);
process.exitCode = different || squares < wanted ? 1 : 0;
