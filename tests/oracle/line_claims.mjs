// Claims of lines and ideas judged on the boards of chess.js, by its legal
// moves and attackers() alone; definitions: proto/assay/v1/claim.proto.
import { Chess } from 'chess.js';

import { VALUE, captureGain, withTurn } from './captures.mjs';

export const sideOf = (name) => (/white/i.test(name) ? 'w' : 'b');
export const enemyOf = (side) => (side === 'w' ? 'b' : 'w');
const kingOf = (chess, side) => chess.findPiece({ type: 'k', color: side })[0];
const worth = ({ type }) => (type === 'k' ? Infinity : VALUE[type]);
const isSlider = (piece) => 'bqr'.includes(piece?.type ?? ' ');

function material(chess, side) {
  return chess.board().flat().filter(Boolean).reduce(
    (sum, { type, color }) => sum + (color === side ? 1 : -1) * VALUE[type], 0);
}

// A board of its own, with some squares emptied.
function without(chess, ...squares) {
  const copy = new Chess(chess.fen(), { skipValidation: true });
  squares.forEach((square) => copy.remove(square));
  return copy;
}

// The king, or something that captures would win once the squares in `gone`
// are empty.
function isPrey(chess, square, ...gone) {
  const piece = chess.get(square);
  if (piece.type === 'k') return true;
  const fen = without(chess, ...gone).fen();
  return captureGain(fen, square, enemyOf(piece.color)) > 0;
}

// The FEN after a pass, which is never made in check.
function passed(chess) {
  if (chess.isCheck()) throw new Error('a pass in check');
  return withTurn(chess.fen(), enemyOf(chess.turn()));
}

// { boards, moves }, one board more than moves; null for a pass.
function replay(fen, line) {
  const boards = [new Chess(fen)];
  const moves = [];
  for (const san of line) {
    const next = new Chess(boards[boards.length - 1].fen());
    if (san === '--') {
      boards.push(new Chess(passed(next)));
      moves.push(null);
    } else {
      moves.push(next.move(san, { strict: true }));
      boards.push(next);
    }
  }
  return { boards, moves };
}

// Every check gets the claim with side "w" or "b", the last board, the one
// before it and the last move, and returns what is wrong, or nothing.
function checkLine({ side, count }, { boards, last }) {
  const change = material(last, side) - material(boards[0], side);
  return change === count ? '' : `the material changes by ${change}`;
}

function checkMate({ side, count }, { moves, last }) {
  if (!last.isCheckmate()) return 'no mate';
  if (last.turn() === side) return 'the other side mates';
  const own = moves.filter((move) => move?.color === side).length;
  return own === count ? '' : `${own} moves`;
}

function checkBackRank(claim, played) {
  const wrong = checkMate(claim, played);
  if (wrong) return wrong;
  const { last } = played;
  const loser = enemyOf(claim.side);
  const king = kingOf(last, loser);
  const [first, ahead] = loser === 'w' ? ['1', '2'] : ['8', '7'];
  if (king[1] !== first) return 'the king has left its first rank';
  for (const step of [-1, 0, 1]) {
    const file = String.fromCharCode(king.charCodeAt(0) + step);
    if (file < 'a' || file > 'h') continue;
    const square = file + ahead;
    const piece = last.get(square);
    const ownPawn = piece?.type === 'p' && piece.color === loser;
    if (!ownPawn && !last.isAttacked(square, claim.side)) {
      return `${square} is open to the king`;
    }
  }
  return '';
}

function checkFork({ side, squares: [square], others }, { last, move }) {
  if (move.to !== square) return 'another piece moved';
  if (others.length < 2) return 'fewer than two are attacked';
  for (const target of others) {
    if (last.get(target)?.color !== enemyOf(side)) return 'not all are enemy';
    if (!last.attackers(target, side).includes(square)) {
      return `${target} is not attacked`;
    }
    if (!isPrey(last, target)) return `${target} does not hang`;
  }
  return '';
}

function checkSkewer({ side, squares: [slider], others }, { last, move }) {
  const [front, behind] = others;
  if (move.to !== slider || !isSlider(last.get(slider))) return 'no slider';
  if (others.some((square) => last.get(square)?.color !== enemyOf(side))) {
    return 'not both are enemy';
  }
  if (!last.attackers(front, side).includes(slider)) return 'no attack';
  const opened = without(last, front);
  if (last.attackers(behind, side).includes(slider) ||
      !opened.attackers(behind, side).includes(slider)) {
    return 'the second is not behind the first';
  }
  if (worth(last.get(front)) < worth(last.get(behind))) {
    return 'the first is worth less';
  }
  return isPrey(last, behind, front) ? '' : 'the second would not hang';
}

function checkDiscovered({ side, squares: [square], others },
                         { last, before, move }) {
  const piece = last.get(square);
  const stood = before.get(square);
  if (move.to === square || piece?.color !== side ||
      stood?.type !== piece.type || stood.color !== side) {
    return 'the piece moved itself';
  }
  if (others.length === 0) return 'nothing is attacked';
  for (const target of others) {
    if (last.get(target)?.color !== enemyOf(side)) return 'not all are enemy';
    if (!last.attackers(target, side).includes(square) ||
        before.attackers(target, side).includes(square)) {
      return `${target} is not newly attacked`;
    }
    if (!isPrey(last, target)) return `${target} does not hang`;
  }
  return '';
}

// Of the owner of the pinned piece.
function checkPin(owner, { squares: [pinned], others }, last) {
  const [slider, behind] = others;
  const enemy = enemyOf(owner);
  if (last.get(pinned)?.color !== owner || last.get(behind)?.color !== owner ||
      last.get(slider)?.color !== enemy || !isSlider(last.get(slider))) {
    return 'not the pieces of a pin';
  }
  if (!last.attackers(pinned, enemy).includes(slider)) return 'no attack';
  const opened = without(last, pinned);
  if (last.attackers(behind, enemy).includes(slider) ||
      !opened.attackers(behind, enemy).includes(slider)) {
    return 'it does not stand between';
  }
  const price = worth(last.get(behind));
  const isCheap = price <= worth(last.get(pinned)) ||
    price <= worth(last.get(slider));
  return isCheap ? 'what is behind is worth too little' : '';
}

function checkPinWins(claim, { last }) {
  const { side, squares: [pinned] } = claim;
  const wrong = checkPin(enemyOf(side), claim, last);
  if (wrong) return wrong;
  const attackers = last.attackers(pinned, side);
  const defenders = last.attackers(pinned, enemyOf(side));
  if (attackers.length > defenders.length) return '';
  const price = worth(last.get(pinned));
  return attackers.some((square) => worth(last.get(square)) < price)
    ? '' : 'it is well defended';
}

function checkSoleGuard({ side, squares: [guard], others }, { last }) {
  if (others.length < 2) return 'fewer than two things';
  for (const thing of others) {
    if (last.get(thing)?.color !== enemyOf(side)) return 'not all are enemy';
    if (last.attackers(thing, enemyOf(side)).join() !== guard) {
      return `${thing} has other defenders`;
    }
    if (!last.isAttacked(thing, side)) return `${thing} is not attacked`;
  }
  return '';
}

function checkHanging({ side, squares: [square], count }, { last }) {
  if (last.turn() === side && last.isCheck()) return 'its side is in check';
  const value = captureGain(last.fen(), square, enemyOf(side));
  return value === count ? '' : `captures win ${value}`;
}

function checkLoose({ side, squares: [square] }, { last }) {
  const piece = last.get(square);
  if (piece?.color !== side || 'pk'.includes(piece.type)) return 'no piece';
  return last.attackers(square, side).length === 0 ? '' : 'it is defended';
}

function checkAttackCount({ side, squares: [square], count, otherCount },
                          { last }) {
  const attackers = last.attackers(square, side).length;
  const defenders = last.attackers(square, enemyOf(side)).length;
  return attackers === count && defenders === otherCount
    ? '' : `${attackers} attackers, ${defenders} defenders`;
}

function checkTrapped({ side, squares: [square] }, { last }) {
  const piece = last.get(square);
  if (piece?.color !== side || 'pk'.includes(piece.type)) return 'no piece';
  const enemy = enemyOf(side);
  const isChased = last.attackers(square, enemy).some(
    (from) => worth(last.get(from)) < worth(piece));
  if (!isChased && !isPrey(last, square)) return 'it is in no danger';
  const own = last.turn() === side ? last : new Chess(passed(last));
  if (own.isCheck()) return 'its side is in check';
  for (const move of own.moves({ square, verbose: true })) {
    if (move.captured && VALUE[move.captured] >= VALUE[piece.type]) {
      return `${move.san} takes as much`;
    }
    if (captureGain(move.after, move.to, enemy) === 0) {
      return `${move.san} saves it`;
    }
  }
  return '';
}

const CHECKS = {
  LINE: checkLine,
  MATE_IN: checkMate,
  BACK_RANK: checkBackRank,
  FORK: checkFork,
  SKEWER: checkSkewer,
  DISCOVERED: checkDiscovered,
  PIN_WINS: checkPinWins,
  PINNED: (claim, { last }) => checkPin(claim.side, claim, last),
  OVERLOADED: checkSoleGuard,
  SOLE_GUARD: checkSoleGuard,
  HANGING: checkHanging,
  LOOSE: checkLoose,
  ATTACK_COUNT: checkAttackCount,
  TRAPPED: checkTrapped,
};
// Those that speak of the move that the line ends with.
const SHOWN_BY_A_MOVE = [
  'FORK', 'SKEWER', 'DISCOVERED', 'PIN_WINS', 'OVERLOADED', 'MATE_IN',
  'BACK_RANK',
];

export const nameOf = ({ kind }) => kind.replace('CLAIM_KIND_', '');

export const isJudged = (json) => nameOf(json) in CHECKS;

// What is wrong with one claim, a protobuf JSON object; "" where nothing is.
// Of a kind that is not judged here, only the line is looked at.
export function judge(fen, json) {
  const kind = nameOf(json);
  const { line = [], squares = [], others = [] } = json;
  const claim = {
    side: sideOf(json.side ?? ''),
    squares,
    others,
    count: json.count ?? 0,
    otherCount: json.otherCount ?? 0,
  };
  let played;
  try {
    played = replay(fen, line);
  } catch (error) {
    return `cannot be played: ${error.message}`;
  }
  if (!isJudged(json)) return '';
  const { boards, moves } = played;
  const last = boards[boards.length - 1];
  const move = moves[moves.length - 1];
  if (SHOWN_BY_A_MOVE.includes(kind) && move?.color !== claim.side) {
    return 'the line does not end with a move of the side';
  }
  const before = boards[boards.length - 2];
  return CHECKS[kind](claim, { boards, moves, last, before, move });
}
