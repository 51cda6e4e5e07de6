// The pawns that make each named structure.
//
// Cores of the skeletons in Soltis 1976 and Flores Rios 2015 as CHECKS section
// 7.3 lists them, less what does not define them (pawns of the wings). "w:"
// White's, "b:" Black's; d4 is a pawn there, d4/d3 one of them, !c no pawn of
// the side on that file. A structure also holds with colours exchanged.
import { PAWN, fileOf, parseFen, squareOf } from '../audit/lib/board.mjs';
import {
  flipBoard, hasBishopPair, hasDoubled, hasPasser, kingsOnDifferentWings,
  kingUncastled, lockedCentre, majorityOnA, openCentre, openFile, queenless,
  weakPawn,
} from './handbook_features.mjs';

const onFile = (board, side, file) =>
  board.some((man, square) => man === PAWN * side && fileOf(square) === file);

// One word of a list of pawns.
function wordHolds(board, side, word) {
  if (word.startsWith('!')) {
    return !onFile(board, side, 'abcdefgh'.indexOf(word[1]));
  }
  return word.split('/')
    .some((name) => board[squareOf(name)] === PAWN * side);
}

function pawns(text) {
  const [white, black] = text.replace('w: ', '').split(' b: ')
    .map((words) => words.split(' '));
  return ({ board }) => white.every((word) => wordHolds(board, 1, word)) &&
    black.every((word) => wordHolds(board, -1, word));
}

export const STRUCTURES = {
  Carlsbad: pawns('w: b2/b3/b4/b5 d4 e3 !c b: b7/b6/b5 c6 d5 !e'),
  IsolatedQueensPawn: pawns('w: d4 !c !e b: !d e6 !c'),
  HangingPawns: pawns('w: c4 d4 !b !e b: !c !d'),
  IsolatedCouple: pawns('w: c3 d4 !b !e b: !c !d'),
  Stonewall: pawns('w: d4 b: c6/c7 d5 e6 f5'),
  FrenchChain: pawns('w: d4 e5 c3/c2 b: d5 e6'),
  FrenchChainNoC: pawns('w: d4 e5 !c b: d5 e6 !c'),
  KingsIndianChain: pawns('w: c4 d5 e4 b: d6 e5 c7/c6'),
  KingsIndianOpenFile: pawns('w: d5 e4 !c b: d6 e5 !c'),
  ModernBenoni: pawns('w: d5 e4 !c b: c5 d6 !e'),
  ClosedBenoni: pawns('w: c4 d5 e4 b: c5 d6 e5'),
  MaroczyBind: pawns('w: c4 e4 !d b: d6 !c e7/e6'),
  Hedgehog: pawns('w: c4 e4 !d b: a6 b6 d6 e6 !c'),
  CaroSlav: pawns('w: d4 !e b: c6 e6 !d'),
  Scheveningen: pawns('w: e4 !d b: d6 e6 !c'),
  Boleslavsky: pawns('w: e4 !d b: d6 e5 !c'),
  Dragon: pawns('w: e4 !d c2 b: d6 e7 g6 !c'),
  Rauzer: pawns('w: e4 !d c2/c3 b: c6 e5 !d'),
  ExchangeRuy: pawns('w: e4 !d c2/c3 b: c6/c5 c7 !d !e'),
  ExchangeFrench: pawns('w: d4 !e c2/c3 b: d5 !e c7/c6'),
  MobileCentre: pawns('w: d4 e4 b: !d e7/e6'),
  RuyChain: pawns('w: e4 d5 c3/c4/c2 b: e5 d6 c5/c7'),
  ClosedEnglish: pawns('w: c4 d3 b: d6 e5'),
  QueensideMajority: majorityOnA,
  OppositeCastling: kingsOnDifferentWings,
  PassedPawn: hasPasser,
  BishopPair: hasBishopPair,
  OpenFile: openFile,
  OpenCentre: openCentre,
  Queenless: queenless,
  ExchangeSlav: pawns('w: d4 e3 !c b: d5 e6 !c'),
  LockedCentre: lockedCentre,
  DoubledFrontPawn: hasDoubled,
  BackwardPawn: weakPawn,
  Uncastled: kingUncastled,
};

// Whichever side owns it.
export function holds(name, fen) {
  const { board, castling } = parseFen(fen);
  const views = [{ board, castling },
    { board: flipBoard(board), castling }];
  return views.some((view) => STRUCTURES[name](view));
}
