// The board as 64 signed numbers (a1 = 0, h8 = 63) and nothing else: FEN in,
// square names out. White pieces are positive, Black's negative, so that a
// side is +1 or -1 and "ahead" is 8 * side. chess.js remains the authority on
// what a FEN means; selftest.mjs compares the two on a seeded sample.

export const WHITE = 1;
export const BLACK = -1;
export const SIDES = [WHITE, BLACK];

export const PAWN = 1;
export const KNIGHT = 2;
export const BISHOP = 3;
export const ROOK = 4;
export const QUEEN = 5;
export const KING = 6;

// TERMS.md: 100, 325, 325, 500, 975. A king has no price: as material it is
// nothing, as a target it is worth more than everything.
export const MATERIAL = [0, 100, 325, 325, 500, 975, 0];
export const WORTH = [0, 100, 325, 325, 500, 975, Infinity];

const LETTERS = ' pnbrqk';
const FILES = 'abcdefgh';

export const fileOf = (square) => square & 7;
export const rowOf = (square) => square >> 3;
export const at = (file, row) => row * 8 + file;

// Ranks are counted from the side's own first rank, 1 to 8.
export const rankFor = (square, side) =>
  side === WHITE ? (square >> 3) + 1 : 8 - (square >> 3);
export const onRank = (file, rank, side) =>
  at(file, side === WHITE ? rank - 1 : 8 - rank);

// 1 for a light square, 0 for a dark one (a1 is dark).
export const shadeOf = (square) => (fileOf(square) + rowOf(square)) & 1;

export const kindOf = (piece) => (piece < 0 ? -piece : piece);
export const sideOf = (piece) => (piece > 0 ? WHITE : piece < 0 ? BLACK : 0);

export const nameOf = (square) => FILES[fileOf(square)] + (rowOf(square) + 1);

export function squareOf(name) {
  if (typeof name !== 'string' || !/^[a-h][1-8]$/.test(name)) return -1;
  return at(FILES.indexOf(name[0]), Number(name[1]) - 1);
}

export function parseFen(fen) {
  const [placement, turn, castling = '-', enPassant = '-'] =
    fen.trim().split(/\s+/);
  const board = new Int8Array(64);
  placement.split('/').forEach((text, index) => {
    let file = 0;
    for (const letter of text) {
      if (letter >= '1' && letter <= '8') {
        file += Number(letter);
        continue;
      }
      const kind = LETTERS.indexOf(letter.toLowerCase());
      if (kind < 1) throw new Error(`unknown letter ${letter} in ${fen}`);
      board[at(file, 7 - index)] = letter === letter.toLowerCase() ? -kind : kind;
      file += 1;
    }
  });
  return {
    fen,
    board,
    turn: turn === 'b' ? BLACK : WHITE,
    castling: castling === '-' ? '' : castling,
    enPassant: squareOf(enPassant),
  };
}

// The same position with the move handed over: what TERMS.md calls a pass.
export const passed = (position) => ({
  ...position,
  turn: -position.turn,
  enPassant: -1,
});

export const withTurn = (position, side) =>
  position.turn === side ? position : passed(position);

export function findKing(board, side) {
  return board.indexOf(KING * side);
}

// Squares of one side's pieces of the given kinds, a1 first.
export function squaresOf(board, side, ...kinds) {
  const found = [];
  for (let square = 0; square < 64; square += 1) {
    const piece = board[square] * side;
    if (piece > 0 && kinds.includes(piece)) found.push(square);
  }
  return found;
}

export const hasCastlingRight = (position, side) =>
  (side === WHITE ? /[A-Z]/ : /[a-z]/).test(position.castling);

export const fileSquares = (file) =>
  [0, 1, 2, 3, 4, 5, 6, 7].map((row) => at(file, row));

export const kingSteps = (a, b) =>
  Math.max(Math.abs(fileOf(a) - fileOf(b)), Math.abs(rowOf(a) - rowOf(b)));
