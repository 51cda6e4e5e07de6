// All kinds in one table, and the two questions that the auditor asks of it:
// is this claim true, and which claims must be there?

import {
  kindOf, nameOf, parseFen, squareOf,
} from './board.mjs';
import { ACTIVITY_KINDS } from './activity.mjs';
import { ENDING_KINDS } from './endings.mjs';
import { EXACT_KINDS } from './exact.mjs';
import { FILE_AND_CENTRE_KINDS } from './files_centre.mjs';
import { IDEA_KINDS } from './ideas.mjs';
import { KING_KINDS } from './king.mjs';
import { LINE_KINDS } from './lines.mjs';
import { PAWN_KINDS } from './pawns.mjs';
import { PIECE_KINDS } from './pieces.mjs';
import { LinePlayer } from './play.mjs';
import { SIEGE_KINDS } from './sieges.mjs';
import { STRUCTURE_KINDS } from './structures.mjs';
import { TEXTBOOK_KINDS } from './textbook.mjs';

export const KINDS = {
  ...PAWN_KINDS,
  ...FILE_AND_CENTRE_KINDS,
  ...STRUCTURE_KINDS,
  ...PIECE_KINDS,
  ...SIEGE_KINDS,
  ...KING_KINDS,
  ...ACTIVITY_KINDS,
  ...ENDING_KINDS,
  ...TEXTBOOK_KINDS,
  ...EXACT_KINDS,
  ...LINE_KINDS,
  ...IDEA_KINDS,
};

export const ENUMERABLE = Object.keys(KINDS).filter(
  (name) => KINDS[name].enumerate);

const SIDE_NAMES = { SIDE_WHITE: 1, SIDE_BLACK: -1 };
const PIECE_NAMES = {
  PIECE_KIND_PAWN: 1,
  PIECE_KIND_KNIGHT: 2,
  PIECE_KIND_BISHOP: 3,
  PIECE_KIND_ROOK: 4,
  PIECE_KIND_QUEEN: 5,
  PIECE_KIND_KING: 6,
};
const nameIn = (names, value) =>
  Object.keys(names).find((name) => names[name] === value);

export const kindName = (json) =>
  String(json.kind ?? 'CLAIM_KIND_UNSPECIFIED').replace(/^CLAIM_KIND_/, '');

// A claim as protobuf JSON, in the auditor's numbers; { error } when a name
// is none.
export function fromJson(json) {
  const squares = (json.squares ?? []).map(squareOf);
  const others = (json.others ?? []).map(squareOf);
  if (squares.concat(others).includes(-1)) return { error: 'no such square' };
  const side = SIDE_NAMES[json.side ?? ''] ?? 0;
  const piece = PIECE_NAMES[json.piece ?? ''] ?? 0;
  return {
    kind: kindName(json),
    side,
    squares,
    others,
    count: json.count ?? 0,
    otherCount: json.otherCount ?? 0,
    piece,
    tempi: json.tempi ?? 0,
    line: json.line ?? [],
  };
}

// The reverse, default values left out: what selftest.mjs makes explanations
// of, and what a missing claim is printed as.
export function toJson(kind, claim) {
  const json = { kind: `CLAIM_KIND_${kind}` };
  if (claim.side) json.side = nameIn(SIDE_NAMES, claim.side);
  if (claim.squares?.length) json.squares = claim.squares.map(nameOf);
  if (claim.others?.length) json.others = claim.others.map(nameOf);
  if (claim.count) json.count = claim.count;
  if (claim.otherCount) json.otherCount = claim.otherCount;
  if (claim.piece) json.piece = nameIn(PIECE_NAMES, claim.piece);
  return json;
}

const listKey = (squares, isOrdered) =>
  (isOrdered ? [...squares] : [...squares].sort((a, b) => a - b)).join();

// Equal keys mean the same statement. Squares count as sets unless the row
// orders them; the side of a kind that is of no side is left out.
export function keyOf(kind, claim) {
  const row = KINDS[kind];
  const ordered = row.ordered ?? [];
  return [
    row.sideless ? 0 : claim.side,
    listKey(claim.squares ?? [], ordered.includes('squares')),
    listKey(claim.others ?? [], ordered.includes('others')),
    claim.count ?? 0,
    claim.otherCount ?? 0,
    row.usesPiece ? claim.piece : 0,
  ].join('|');
}

// Everything that one position is asked, each list made once.
export class Auditor {
  constructor(fen) {
    this.position = parseFen(fen);
    this.player = new LinePlayer(fen);
    this.lists = new Map();
  }

  // The complete list of one kind: a map from key to claim.
  list(kind, position = this.position) {
    let kinds = this.lists.get(position);
    if (!kinds) this.lists.set(position, kinds = new Map());
    if (!kinds.has(kind)) {
      kinds.set(kind, new Map(KINDS[kind].enumerate(position).map(
        (claim) => [keyOf(kind, claim), claim])));
    }
    return kinds.get(kind);
  }

  // null when the claim (protobuf JSON) is true, SKIPPED when the auditor
  // cannot tell, else why it is not.
  verify(json) {
    const claim = fromJson(json);
    if (claim.error) return claim.error;
    const row = KINDS[claim.kind];
    if (!row) return `unknown kind ${claim.kind}`;
    const played = this.player.play(claim.line);
    if (played.error) return played.error;
    const position = played.positions[played.positions.length - 1];
    const wrong = checkExtras(row, claim, position.board);
    if (wrong) return wrong;
    if (row.verify) return row.verify(position, claim, played);
    const list = this.list(claim.kind, position);
    if (list.has(keyOf(claim.kind, claim))) return null;
    return `not among the ${list.size} that hold: ${this.near(claim, list)}`;
  }

  // The closest true statements, to make a difference readable.
  near(claim, list) {
    const [square] = claim.squares;
    const alike = [...list.values()].filter((each) =>
      (!each.side || each.side === claim.side) &&
      (square === undefined || !each.squares || each.squares.includes(square)));
    return JSON.stringify(alike.slice(0, 3).map(
      (each) => toJson(claim.kind, each)));
  }

  // The claims of one kind that must be there and are not.
  missing(kind, present) {
    const wanted = [...this.list(kind)].filter(
      ([, claim]) => claim.required !== false);
    if (KINDS[kind].oneOf) {
      const any = [...this.list(kind).keys()].some((key) => present.has(key));
      return any ? [] : wanted.map(([, claim]) => claim);
    }
    return wanted.filter(([key]) => !present.has(key)).map(([, claim]) => claim);
  }
}

// Fields that the row does not use must be empty, except that `piece` may
// name the piece on the first square.
function checkExtras(row, claim, board) {
  if (claim.tempi && !row.usesTempi) return 'the row has no tempi';
  if (claim.piece && !row.usesPiece) {
    const [square] = claim.squares;
    if (square === undefined || kindOf(board[square]) !== claim.piece) {
      return 'piece is not what stands on the first square';
    }
  }
  return null;
}
