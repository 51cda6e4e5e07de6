// Piece rows, worked out by hand from TERMS.md.

import { caseList } from '../lib/cases.mjs';

const { cases, holds, fails } = caseList();
export { cases };

holds('BISHOP_PAIR', '4k3/8/8/8/8/8/8/2B1KB2 w', 'w c1 f1');
fails('BISHOP_PAIR', '4k3/8/8/8/8/4B3/8/2B1K3 w', 'w c1 e3',
  { name: 'both on dark squares' });

holds('OPPOSITE_BISHOPS', '2b1k3/8/8/8/8/8/8/2B1K3 w', 'w c1 > c8');
holds('OPPOSITE_BISHOPS', '2b1k3/8/8/8/8/8/8/2B1K3 w', 'b c8 > c1');
fails('OPPOSITE_BISHOPS', '4kb2/8/8/8/8/8/8/2B1K3 w', 'w c1 > f8');
fails('OPPOSITE_BISHOPS', '2b1k3/8/8/8/8/8/8/2B1KB2 w', 'w c1 > c8',
  { name: 'two bishops' });

holds('BAD_BISHOP', '4k3/8/8/3p1p2/3P1P2/8/8/2B1K3 w', 'w c1 > d4 f4 # 2');
fails('BAD_BISHOP', '4k3/8/8/3pBp2/3P1P2/8/8/4K3 w', 'w e5 > d4 f4 # 2',
  { name: 'in front of all of them' });
fails('BAD_BISHOP', '4k3/8/8/3p4/3P1P2/8/8/2B1K3 w', 'w c1 > d4 # 1',
  { name: 'one only' });
holds('BAD_BISHOP', '4k3/8/8/3p1p2/3P1P2/6B1/8/4K3 w', 'w g3 > d4 f4 # 2',
  { name: 'outside the chain counts too' });

holds('KNIGHT_RIM', '4k3/8/8/8/8/N7/8/1N2K3 w', 'w a3');
fails('KNIGHT_RIM', '4k3/8/8/8/8/N7/8/1N2K3 w', 'w b1');

const outpost = '4k3/8/8/3N4/4P3/8/8/4K3 w';
holds('OUTPOST', outpost, 'w d5');
holds('OUTPOST', outpost, 'w d5', { piece: 'KNIGHT' });
fails('OUTPOST', outpost, 'w d5', { piece: 'BISHOP', name: 'wrong piece' });
fails('OUTPOST', outpost, 'w d5', { tempi: 1, name: 'tempi not in the row' });
fails('OUTPOST', '4k3/2p5/8/3N4/4P3/8/8/4K3 w', 'w d5');
holds('OUTPOST', '4k3/8/8/2pN4/4P3/8/8/4K3 w', 'w d5',
  { name: 'c5 can no longer attack it' });
fails('OUTPOST', '4k3/8/8/3N4/8/8/8/4K3 w', 'w d5', { name: 'not guarded' });
fails('OUTPOST', '4k3/8/8/3R4/4P3/8/8/4K3 w', 'w d5', { name: 'a rook' });

holds('OUTPOST_ROUTE', '4k3/8/8/8/4P3/2N5/8/4K3 w', 'w c3 d5');
const route = '4k3/8/8/8/4P3/8/8/4K1N1 w';
holds('OUTPOST_ROUTE', route, 'w g1 e2 c3 d5');
fails('OUTPOST_ROUTE', route, 'w g1 c3 d5', { name: 'no such jump' });
fails('OUTPOST_ROUTE', route, 'w g1 e2 c3', { name: 'c3 is no outpost' });
fails('OUTPOST_ROUTE', '4k3/8/8/8/3pP3/8/8/4K1N1 w', 'w g1 e2 c3 d5',
  { name: 'd4 attacks c3' });
fails('OUTPOST_ROUTE', '4k3/8/8/3n4/4P3/2N5/8/4K3 w', 'w c3 d5',
  { name: 'd5 is taken' });
fails('OUTPOST_ROUTE', '4k3/8/8/b7/4P3/2N5/8/4K3 w', 'w c3 d5',
  { name: 'the knight is pinned' });

const contested = '2b1kbn1/8/8/3N4/4P3/8/8/4K3 w';
holds('CONTESTABLE', contested, 'w d5 > c8 g8');
fails('CONTESTABLE', contested, 'w d5 > c8 f8 g8');
fails('CONTESTABLE', contested, 'w c4 > c8 g8', { name: 'no outpost' });

holds('LOOSE', '4k3/8/8/8/8/2N5/8/4K3 w', 'w c3');
fails('LOOSE', '4k3/8/8/8/8/2N5/1P6/4K3 w', 'w c3');
fails('LOOSE', '4k3/8/8/8/8/2P5/8/7K w', 'w c3', { name: 'a pawn' });

holds('HANGING', '3rk3/8/8/8/3N4/8/8/4K3 w', 'w d4 # 325');
holds('HANGING', '3rk3/8/8/8/3N4/8/8/4K3 b', 'w d4 # 325');
fails('HANGING', '3rk3/8/8/8/3N4/4P3/8/4K3 w', 'w d4 # 325');
holds('HANGING', '3rr1k1/8/8/8/3N4/4P3/8/4K3 w', 'w d4 # 325',
  { name: 'the guard is pinned' });
fails('HANGING', '4k3/8/8/8/3N3q/8/8/4K3 w', 'w d4 # 325',
  { name: 'its side is in check' });
holds('HANGING', '4k3/8/8/8/8/8/2p5/1N3K2 w', 'w b1 # 1200',
  { name: 'taken with promotion' });
holds('HANGING', '4k3/8/8/8/8/8/2p5/RN3K2 w', 'w b1 # 225',
  { name: 'the new queen is retaken' });
fails('HANGING', '3rk3/3r4/8/3n4/8/8/3R4/3RK3 b', 'b d5 # 325',
  { name: 'defended twice, by rooks' });
holds('HANGING', '4k3/8/8/3p4/2K5/8/8/8 w', 'b d5 # 100',
  { name: 'the king may take' });
fails('HANGING', '8/8/4k3/3p4/2K5/8/8/8 w', 'b d5 # 100',
  { name: 'the king may not take' });
// Queen and rook behind each other: RxN, bxa5 is worse for White; he stops.
fails('HANGING', 'k7/8/1p6/n7/8/8/Q7/R3K3 w', 'b a5 # 325');

holds('SCOPE', '4k3/8/8/8/8/8/8/N3K3 w', 'w a1 # 2');
holds('SCOPE', '4k3/8/8/8/p7/8/8/N3K3 w', 'w a1 # 1');
holds('SCOPE', '4k3/8/8/8/8/8/2P5/N3K3 w', 'w a1 # 1');
fails('SCOPE', '4k3/8/8/8/8/8/8/N3K3 w', 'w a1 # 3');

holds('SQUARE_TAKEN', '4k3/8/8/8/8/2P5/8/1N2K3 w', 'w c3 > b1');
holds('SQUARE_TAKEN', '4k1n1/8/5p2/8/8/8/8/4K3 w', 'b f6 > g8');
fails('SQUARE_TAKEN', '4k3/8/8/8/8/2P5/8/4K1N1 w', 'w c3 > g1');
fails('SQUARE_TAKEN', '4k3/8/8/8/2P5/8/8/1N2K3 w', 'w c4 > b1');

holds('PINNED', '4k3/4r3/8/8/8/4N3/8/4K3 w', 'w e3 > e7 e1');
fails('PINNED', '4k3/4r3/8/8/8/4N3/8/4K3 w', 'w e3 > e1 e7',
  { name: 'slider first' });
fails('PINNED', '4k3/4b3/8/8/8/4N3/8/4K3 w', 'w e3 > e7 e1',
  { name: 'a bishop does not move on files' });
fails('PINNED', '4k3/4r3/8/8/4P3/4N3/8/4K3 w', 'w e3 > e7 e1',
  { name: 'not alone between' });
holds('PINNED', '4k3/8/8/7b/8/5N2/8/3QK3 w', 'w f3 > h5 d1');
fails('PINNED', '3rk3/8/8/8/3N4/8/8/3RK3 w', 'w d4 > d8 d1',
  { name: 'not worth more than the slider' });
holds('PINNED', '4k3/8/8/7b/8/5P2/8/3RK3 w', 'w f3 > h5 d1',
  { name: 'a pawn before a rook' });

const start = 'rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq';
holds('UNDEVELOPED', start, 'w b1 c1 f1 g1 # 4');
fails('UNDEVELOPED', start, 'w b1 c1 f1 # 3');
fails('UNDEVELOPED', '4k3/8/8/8/8/8/8/1B2K3 w', 'w b1 # 1');

holds('TRAPPED', '8/Bkp5/1p6/8/8/8/8/4K3 w', 'w a7');
holds('TRAPPED', '8/Bkp5/1p6/8/8/8/8/4K3 b', 'w a7', { name: 'after a pass' });
fails('TRAPPED', '8/Bk6/8/8/8/8/8/4K3 w', 'w a7', { name: 'c5 is free' });
fails('TRAPPED', '8/Bkp5/1n6/8/8/8/8/4K3 w', 'w a7',
  { name: 'it can take its own value' });
fails('TRAPPED', '8/Bkp5/1p6/8/8/8/8/r3K3 w', 'w a7', { name: 'in check' });

const early = 'r1bqkbnr/pppppppp/2n5/8/8/5Q2/PPPP1PPP/RNB1KBNR';
holds('EARLY_QUEEN', `${early} b KQkq`, 'w f3 # 1');
holds('EARLY_QUEEN', `${early} w KQkq`, 'w f3 # 1', { name: 'after a pass' });
fails('EARLY_QUEEN', `${early} b KQkq`, 'w f3 # 2');
fails('EARLY_QUEEN', start, 'w d1', { name: 'at home' });
holds('EARLY_QUEEN',
  'r1bqkbnr/pppppppp/2n5/8/3P4/2P2Q2/PP3PPP/RNB1KBNR b KQkq', 'w f3',
  { name: 'on d4 and e5 the knight would hang' });

holds('ATTACK_COUNT', '4k3/8/8/3n4/8/2N5/8/3RK3 w', 'w d5 # 2 0');
fails('ATTACK_COUNT', '4k3/8/8/3n4/8/2N5/8/3RK3 w', 'w d5 # 2 1');
fails('ATTACK_COUNT', '4k3/8/8/3n4/8/2N5/8/3RK3 w', 'b d5 # 0 2',
  { name: 'the target is its own' });

const siege = '4k3/8/2p5/3p4/8/8/8/R5NK w';
holds('SIEGE_COUNT', siege, 'w d5 # 0 1');
holds('SIEGE_COUNT', siege, 'w d5 > a1 # 1 1', { tempi: 1 });
holds('SIEGE_COUNT', siege, 'w d5 > a1 # 1 1', { tempi: 2 });
holds('SIEGE_COUNT', siege, 'w d5 > a1 g1 # 2 1', { tempi: 3 });
fails('SIEGE_COUNT', siege, 'w d5 > a1 g1 # 2 1', { tempi: 2 });
fails('SIEGE_COUNT', siege, 'w d5 > a1 h1 # 2 1', { tempi: 3 });
