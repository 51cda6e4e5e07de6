// The same position with the colours changed over: every claim must change
// over with it.

const swapCase = (text) => text.replace(/[a-z]/gi, (letter) =>
  (letter === letter.toLowerCase() ? letter.toUpperCase() : letter.toLowerCase()));

export function mirrorFen(fen) {
  const [placement, turn, castling, enPassant, ...rest] = fen.split(' ');
  const rows = placement.split('/').reverse().map(swapCase).join('/');
  const rights = castling === '-' ? '-'
    : [...swapCase(castling)].sort().join('');
  const target = enPassant === '-' ? '-'
    : enPassant[0] + (9 - Number(enPassant[1]));
  return [rows, turn === 'w' ? 'b' : 'w', rights, target, ...rest].join(' ');
}

const turned = (squares) => (squares ?? []).map((square) => square ^ 56);

// CENTRE_* and a STRUCTURE of both sides name White's pawns first whatever the
// side, so there the two lists change places too. The order in a list goes with the squares.
export function mirrorClaim(kind, claim) {
  const swap = kind.startsWith('CENTRE_') ||
    (kind === 'STRUCTURE' && !claim.side);
  return {
    ...claim,
    side: -claim.side,
    squares: turned(swap ? claim.others : claim.squares),
    others: turned(swap ? claim.squares : claim.others),
  };
}

