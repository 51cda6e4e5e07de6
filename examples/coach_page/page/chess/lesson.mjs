// A lesson: games as trees of places. The PGN is parsed here in the browser
// (by @mliebelt/pgn-parser, a script of the page), so that students' games
// never leave it; each move is checked by the rules.

import { initialFen } from './placement.mjs';
import { play } from './rules.mjs';

// A bigger file is a data base, no lesson, and would stop the page for seconds.
export const mostPgnLetters = 1024 * 1024;

// One place: the position after `san`, or the start of a game.
const place = (parent, fields) => ({ parent, san: '', nags: [], before: '',
  comment: '', children: [], ...fields });

export function addMove(parent, san) {
  const move = play(parent.fen, san);
  if (!move) return null;
  const known = parent.children.find((child) => child.san === move.san);
  if (known) return known;
  const child = place(parent, move);
  parent.children.push(child);
  return child;
}

const squeezed = (text) => (text ?? '').replace(/\s+/g, ' ').trim();

// The board's marks in comments, "[%...]", are for programs.
const readable = (text) => squeezed(text?.replace(/\[%[^\]]*\]/g, ''));

// Grows the tree by a line of the parser's; a move that cannot be played ends
// the line, and is told in `faults`.
function grow(from, moves, faults) {
  let at = from;
  for (const move of moves) {
    const { notation } = move.notation;
    const child = addMove(at, notation);
    if (!child) {
      faults.push({ fen: at.fen, san: notation });
      return;
    }
    child.nags = (move.nag ?? []).map((nag) => Number(nag.slice(1)));
    child.before = readable(move.commentMove);
    child.comment = readable(move.commentAfter);
    for (const line of move.variations ?? []) grow(at, line, faults);
    at = child;
  }
}

function gameOf({ tags = {}, gameComment, moves }, faults) {
  const root = place(null, { fen: tags.FEN ?? initialFen,
    comment: readable(gameComment?.comment) });
  grow(root, moves, faults);
  const of = (name) => squeezed(tags[name]).replace(/^\?$/, '');
  return { root, white: of('White'), black: of('Black'), event: of('Event'),
    annotator: of('Annotator') };
}

// {games, faults}. Throws an Error with {line, column} for a text that is no
// PGN, and one with {tooLong} over the limit.
export function readPgn(text) {
  if (text.length > mostPgnLetters) {
    throw Object.assign(new Error('too long'), { tooLong: true });
  }
  let parsed;
  try {
    parsed = globalThis.PgnParser.parse(text, { startRule: 'games' });
  } catch (error) {
    const { line, column } = error.location?.start ?? {};
    throw Object.assign(new Error(error.message), { line, column });
  }
  const faults = [];
  const games = parsed.filter((game) => game.moves.length > 0 || game.tags?.FEN)
    .map((game) => gameOf(game, faults));
  return { games, faults };
}

// A lesson of one position.
export function fromFen(fen) {
  const root = place(null, { fen });
  return { games: [{ root, white: '', black: '', event: '' }],
    faults: [] };
}

export function gameAround(lesson, node) {
  let root = node;
  while (root.parent) root = root.parent;
  return lesson.games.find((game) => game.root === root);
}

// The first place of the main line that its author says something at; without
// any, the start.
export function firstComment(start) {
  for (let at = start; at; [at] = at.children) if (at.comment) return at;
  return start;
}
