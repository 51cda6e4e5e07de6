// Pawn structures with a name, worked out by hand from claim.proto: each
// number where it holds, and with one thing changed where it does not.

import { caseList } from '../lib/cases.mjs';

const { cases, holds, fails } = caseList();
export { cases };

const K = 'STRUCTURE';

holds(K, '6k1/5ppp/pp1pp3/8/2P1P3/5P2/PP4PP/6K1 w',
  'b a6 b6 d6 e6 > c4 e4 # 1');
fails(K, '6k1/1p3ppp/p2pp3/8/2P1P3/5P2/PP4PP/6K1 w',
  'b a6 b7 d6 e6 > c4 e4 # 1');
fails(K, '6k1/2p2ppp/pp1pp3/8/2P1P3/5P2/PP4PP/6K1 w',
  'b a6 b6 d6 e6 > c4 e4 # 1', { name: 'with a c-pawn' });

holds(K, '6k1/pp2pp1p/3p2p1/8/2P1P3/8/PP3PPP/6K1 w', 'w c4 e4 > d6 e7 # 2');
holds(K, '6k1/pp3ppp/8/2p1p3/8/3P2P1/PP2PP1P/6K1 w', 'b c5 e5 > d3 e2 # 2');
fails(K, '6k1/pp2pp1p/3p2p1/8/2P1P3/3P4/PP3PPP/6K1 w',
  'w c4 e4 > d6 e7 # 2', { name: 'with a d-pawn' });

holds(K, '6k1/pp2pp1p/3p2p1/8/4P3/8/PPP2PPP/6K1 w',
  'b d6 e7 g6 > c2 e4 # 3');
fails(K, '6k1/pp3p1p/3pp1p1/8/4P3/8/PPP2PPP/6K1 w',
  'b d6 e6 g6 > c2 e4 # 3');

holds(K, '6k1/1p3ppp/p2p4/4p3/4P3/8/PPP2PPP/6K1 w', 'b d6 e5 > e4 # 4');
fails(K, '6k1/1pp2ppp/3p4/4p3/4P3/8/PPP2PPP/6K1 w', 'b d6 e5 > e4 # 4',
  { name: 'the c-pawn can guard d5' });

holds(K, '6k1/1p3ppp/p2pp3/8/4P3/8/PPP2PPP/6K1 w', 'b d6 e6 > c2 e4 # 5');
fails(K, '6k1/1p3ppp/p2pp3/8/2P1P3/8/PP3PPP/6K1 w', 'b d6 e6 > c4 e4 # 5');

const lockedDoubled = '6k1/pp3ppp/3p4/2pPp3/2P1P3/2P5/P4PPP/6K1 w';
holds(K, lockedDoubled, 'w c3 c4 d5 # 6');
fails(K, lockedDoubled, 'w c3 c4 d5 # 22', { name: 'closed' });
const looseDoubled = '6k1/p4ppp/1p1pp3/2p5/2PP4/2P1P3/P4PPP/6K1 w';
holds(K, looseDoubled, 'w c3 c4 d4 # 22');
fails(K, looseDoubled, 'w c3 c4 d4 # 6', { name: 'not closed' });
fails(K, '6k1/p4ppp/1p1pp3/2p5/2PP4/2P1P3/1P3PPP/6K1 w', 'w c3 c4 d4 # 22',
  { name: 'with a b-pawn' });

holds(K, '6k1/pp3ppp/3p4/2pPp3/2P1P3/8/PP3PPP/6K1 w',
  'w c4 d5 e4 > c5 d6 e5 # 7');
fails(K, '6k1/pp3ppp/3p4/2pPp3/2P1P3/8/PP3PPP/6K1 w',
  'w c4 d5 e4 > c5 d6 e5 # 8');
holds(K, '6k1/ppp2p1p/3p2p1/3Pp3/2P1P3/8/PP3PPP/6K1 w',
  'w c4 d5 e4 > c7 d6 e5 # 8');
fails(K, '6k1/ppp2p1p/3p2p1/3Pp3/2P1P3/8/PP3PPP/6K1 w',
  'w c4 d5 e4 > c7 d6 e5 # 7');
holds(K, '6k1/5pp1/p2p3p/1ppPp3/4P3/2P4P/PP3PP1/6K1 w',
  'w c3 d5 e4 > b5 c5 d6 e5 # 9');
fails(K, '6k1/1p3pp1/p2p3p/2pPp3/4P3/2P4P/PP3PP1/6K1 w',
  'w c3 d5 e4 > c5 d6 e5 # 9', { name: 'the b-pawn at home' });

holds(K, '6k1/pp3ppp/4p3/2ppP3/3P4/2P5/PP3PPP/6K1 w', 'w c3 d4 e5 > d5 e6 # 10');
fails(K, '6k1/pp3ppp/4p3/2ppP3/3P4/2P5/PP3PPP/6K1 w', 'w d4 e5 > d5 e6 # 11');
holds(K, '6k1/pp3ppp/4p3/3pP3/3P4/8/PP3PPP/6K1 w', 'w d4 e5 > d5 e6 # 11');
fails(K, '6k1/pp3ppp/4p3/3p4/3PP3/8/PP3PPP/6K1 w', 'w d4 e4 > d5 e6 # 11');

holds(K, '6k1/pp4pp/2p1p3/3p1p2/2PP4/4P1P1/PP3P1P/6K1 w',
  'b c6 d5 e6 f5 > d4 # 12');
fails(K, '6k1/pp4pp/2p1pp2/3p4/2PP4/4P1P1/PP3P1P/6K1 w',
  'b c6 d5 e6 f6 > d4 # 12');

holds(K, '6k1/pp3p1p/3p2p1/2pP4/4P3/8/PP3PPP/6K1 w', 'b c5 d6 > d5 e4 # 13');
fails(K, '6k1/pp2pp1p/3p2p1/2pP4/4P3/8/PP3PPP/6K1 w', 'b c5 d6 > d5 e4 # 13',
  { name: 'with an e-pawn' });

holds(K, '6k1/pp3ppp/2p5/3p4/3P4/4P3/PP3PPP/6K1 w',
  'w b2 d4 e3 > b7 c6 d5 # 14');
fails(K, '6k1/ppp2ppp/8/3p4/3P4/4P3/PP3PPP/6K1 w',
  'w b2 d4 e3 > b7 c7 d5 # 14', { name: 'before c7-c6' });

holds(K, '6k1/pp3ppp/4p3/8/3P4/8/PP3PPP/6K1 w', 'w d4 > e6 # 15');
holds(K, '6k1/ppp2ppp/4p3/8/3P4/8/PP3PPP/6K1 w', 'w d4 > c7 e6 # 15');
fails(K, '6k1/pp3ppp/8/8/3P4/8/PP3PPP/6K1 w', 'w d4 # 15', { name: 'passed' });
fails(K, '6k1/pp3ppp/4p3/8/3P4/3P4/PP3PPP/6K1 w', 'w d4 > e6 # 15',
  { name: 'two d-pawns' });

holds(K, '6k1/pp3ppp/4p3/8/2PP4/8/P4PPP/6K1 w', 'w c4 d4 > b7 e6 # 16');
holds(K, '6k1/pp3ppp/4p3/2P5/3P4/8/P4PPP/6K1 w', 'w c5 d4 > b7 e6 # 16');
fails(K, '6k1/pp3ppp/4p3/8/2PP4/8/1P3PPP/6K1 w', 'w c4 d4 > b7 e6 # 16',
  { name: 'with a b-pawn' });
holds(K, '6k1/pp3ppp/4p3/8/3P4/2P5/P4PPP/6K1 w', 'w c3 d4 > b7 e6 # 17');
fails(K, '6k1/pp3ppp/4p3/8/3P4/2P5/P4PPP/6K1 w', 'w c3 d4 > b7 e6 # 16');

holds(K, '6k1/pp3ppp/2p1p3/8/2PP4/8/PP3PPP/6K1 w', 'w d4 > c6 e6 # 18');
fails(K, '6k1/ppp2ppp/4p3/8/2PP4/8/PP3PPP/6K1 w', 'w d4 > c7 e6 # 18');

holds(K, '6k1/pp3ppp/2p5/4p3/4P3/8/PPP2PPP/6K1 w', 'w c2 e4 > c6 e5 # 19');
holds(K, '6k1/pp3ppp/2p5/4p3/4P3/2P5/PP3PPP/6K1 w', '- c3 e4 > c6 e5 # 19');
fails(K, '6k1/pp3ppp/2p5/4p3/4P3/2P5/PP3PPP/6K1 w', 'w c3 e4 > c6 e5 # 19',
  { name: 'of both' });

const exchangeRuy = '6k1/ppp2ppp/2p5/8/4P3/8/PPP2PPP/6K1 w';
holds(K, exchangeRuy, 'w c2 e4 f2 g2 h2 > c6 c7 f7 g7 h7 # 20');
fails(K, exchangeRuy, 'w c2 e4 > c6 c7 # 20');
fails(K, '6k1/ppp2ppp/2p5/8/4P3/8/PPP2PP1/6K1 w',
  'w c2 e4 f2 g2 > c6 c7 f7 g7 h7 # 20', { name: 'three against three' });

const exchangeFrench = '6k1/ppp2ppp/8/3p4/3P4/8/PPP2PPP/6K1 w';
holds(K, exchangeFrench, '- c2 d4 > c7 d5 # 21');
fails(K, exchangeFrench, 'w c2 d4 > c7 d5 # 21', { name: 'of both' });
holds(K, exchangeFrench,
  '- a2 b2 c2 d4 f2 g2 h2 > a7 b7 c7 d5 f7 g7 h7 # 26');
fails(K, '6k1/pp3ppp/2p5/3p4/3P4/8/PPP2PPP/6K1 w',
  '- a2 b2 c2 d4 f2 g2 h2 > a7 b7 c6 d5 f7 g7 h7 # 26',
  { name: 'c2 faces c6' });

holds(K, '6k1/pp2pp1p/6p1/2p5/3PP3/2P5/P4PPP/6K1 w', 'w d4 e4 > e7 # 23');
fails(K, '6k1/pp2pp1p/3p2p1/2p5/3PP3/2P5/P4PPP/6K1 w', 'w d4 e4 > d6 e7 # 23');

holds(K, 'r5k1/6pp/8/8/8/8/5PPP/R5K1 w', 'w f2 g2 h2 > g7 h7 # 24');
fails(K, 'r5k1/6pp/8/8/8/8/P5PP/R5K1 w', 'w a2 g2 h2 > g7 h7 # 24');

holds(K, '3q1rk1/5ppp/8/8/3P4/8/PPPQ4/1K1R4 w', '- b1 > g8 # 25');
fails(K, '5rk1/5ppp/8/8/3P4/8/PPPQ4/1K1R4 w', '- b1 > g8 # 25',
  { name: 'one queen' });
fails(K, '3q1rk1/5ppp/8/8/3P4/8/5PPP/3Q1RK1 w', '- g1 > g8 # 25');

holds(K, '6k1/1p3ppp/p2p4/4p3/4P3/8/PPP2PPP/6K1 w', 'b d6 > e4 # 27');
fails(K, '6k1/1p3ppp/p2p4/4p3/4P3/3P4/PP3PPP/6K1 w', 'b d6 > e4 # 27',
  { name: 'the file is closed' });
fails(K, '6k1/1p3ppp/p2p4/4p3/4P3/8/PPP2PPP/6K1 w', 'b d6 > e4 # 28',
  { name: 'no such number' });
