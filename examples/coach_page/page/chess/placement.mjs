// What stands where: a Map from squares such as "e4" to letters as in FEN,
// upper case for White. Knows no rules, so that any board can be put together.

export const files = [...'abcdefgh'];
export const ranks = [...'87654321'];
export const squares = ranks.flatMap((rank) => files.map((file) => file + rank));
export const initialFen =
  'rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1';

export const isWhite = (letter) => letter === letter.toUpperCase();

export function placementOf(fen) {
  const placement = new Map();
  fen.split(' ')[0].split('/').slice(0, 8).forEach((row, rank) => {
    let file = 0;
    for (const sign of row) {
      if (/[1-8]/.test(sign)) {
        file += Number(sign);
      } else {
        if (file < 8) placement.set(files[file] + ranks[rank], sign);
        file += 1;
      }
    }
  });
  return placement;
}

export function placementText(placement) {
  return ranks.map((rank) => files
    .map((file) => placement.get(file + rank) ?? '1').join('')
    .replace(/1+/g, (empty) => empty.length)).join('/');
}

export const whiteToMove = (fen) => fen.split(' ')[1] !== 'b';

const swapCase = (letter) =>
  (isWhite(letter) ? letter.toLowerCase() : letter.toUpperCase());

// The placement after one edit as the service writes it, for showing at once;
// what cannot be read changes nothing and is left for the service to refuse.
export function edited(placement, edit) {
  const after = new Map(placement);
  const move = edit.match(/^([a-h][1-8])-([a-h][1-8])$/);
  const off = edit.match(/^off-([a-h][1-8])$/);
  const on = edit.match(/^on-([KQRBNPkqrbnp])([a-h][1-8])$/);
  if (move && after.has(move[1])) {
    after.set(move[2], after.get(move[1]));
    if (move[1] !== move[2]) after.delete(move[1]);
  } else if (off) {
    after.delete(off[1]);
  } else if (on) {
    after.set(on[2], on[1]);
  } else if (edit === 'swap') {
    return new Map([...placement].map(([square, letter]) =>
      [square[0] + (9 - Number(square[1])), swapCase(letter)]));
  }
  return after;
}

// Pieces of one side from the king down: [[letter, square], ...].
export function piecesOf(placement, white) {
  return [...'KQRBNP'].flatMap((kind) => squares
    .filter((square) => placement.get(square) ===
      (white ? kind : kind.toLowerCase()))
    .map((square) => [kind, square]));
}
