// The shorthand of the hand-made cases under cases/.
//
//   holds('LEVER', '4k3/8/8/3p4/4P3/8/8/4K3 w', 'w e4 > d5');
//   fails('DOUBLED', FEN, 'w c2 c3 # 3', { name: 'wrong count' });
//
// says: side (w, b or -), squares, > others, # count other_count; every part
// but the side may be left out. FENs may stop after the turn or the castling
// rights. More fields (line, piece, tempi, name) come in `more`.

const SIDES = { w: 'SIDE_WHITE', b: 'SIDE_BLACK' };

function fullFen(short) {
  const [placement, turn, castling = '-', enPassant = '-'] = short.split(' ');
  return `${placement} ${turn} ${castling} ${enPassant} 0 1`;
}

function claimOf(kind, says, { line, piece, tempi } = {}) {
  const [front, numbers = ''] = says.split('#');
  const [own, others = ''] = front.split('>');
  const [side, ...squares] = own.trim().split(/\s+/);
  const [count, otherCount] = numbers.trim().split(/\s+/).map(Number);
  const json = { kind: `CLAIM_KIND_${kind}` };
  if (SIDES[side]) json.side = SIDES[side];
  if (squares.length) json.squares = squares;
  if (others.trim()) json.others = others.trim().split(/\s+/);
  if (count) json.count = count;
  if (otherCount) json.otherCount = otherCount;
  if (line) json.line = line.split(' ');
  if (piece) json.piece = `PIECE_KIND_${piece}`;
  if (tempi) json.tempi = tempi;
  return json;
}

export function caseList() {
  const cases = [];
  const add = (expected) => (kind, fen, says, more = {}) => cases.push({
    kind,
    fen: fullFen(fen),
    claim: claimOf(kind, says, more),
    expected,
    name: `${kind} ${expected ? 'holds' : 'fails'}: ${says} in ${fen}` +
      (more.name ? ` (${more.name})` : ''),
  });
  return { cases, holds: add(true), fails: add(false) };
}

// 'g' -> 'g1 g2 ... g8'.
export const file = (letter) =>
  [1, 2, 3, 4, 5, 6, 7, 8].map((rank) => letter + rank).join(' ');
