// Endings known by name, worked out by hand from proto/assay/v1/claim.proto.

import { caseList } from '../lib/cases.mjs';

const { cases, holds, fails } = caseList();
export { cases };

holds('KEY_SQUARES', '4k3/8/4K3/4P3/8/8/8/8 b', 'w e6 e5');
holds('KEY_SQUARES', '8/4k3/2K5/8/3P4/8/8/8 w', 'w c6 d4');
fails('KEY_SQUARES', '8/4k3/8/4K3/4P3/8/8/8 b', 'w e5 e4',
  { name: 'one rank ahead of a pawn on the fourth' });
fails('KEY_SQUARES', '8/4k3/8/3KP3/8/8/8/8 w', 'w d5 e5',
  { name: 'beside it' });
holds('KEY_SQUARES', '8/KP1k4/8/8/8/8/8/8 w',
  'w a7 b7', { name: 'beside a pawn on the seventh' });
holds('KEY_SQUARES', '8/8/8/8/5p2/8/K4k2/8 w',
  'b f2 f4');
fails('KEY_SQUARES', '1K6/P2k4/8/8/8/8/8/8 w', 'w b8 a7',
  { name: 'a rook pawn' });
fails('KEY_SQUARES', '4k3/8/4K3/4P3/8/8/7N/8 b', 'w e6 e5',
  { name: 'a knight more' });

const lucena = '1K1k4/1P6/8/8/8/8/r7/2R5 w';
holds('LUCENA', lucena, 'w b8 b7 c1 > d8');
holds('LUCENA', '1K1k4/1P6/8/8/8/8/r7/2R5 b', 'w b8 b7 c1 > d8');
holds('LUCENA', '1K2k3/1P6/8/8/8/8/r7/3R4 w', 'w b8 b7 d1 > e8');
holds('LUCENA', '2r5/R7/8/8/8/8/1p6/1k1K4 w',
  'b b1 b2 c8 > d1');
fails('LUCENA', '1K3k2/1P6/8/8/8/8/r7/2R5 w', 'w b8 b7 c1 > f8',
  { name: 'four files away' });
fails('LUCENA', '1K1k4/1P6/8/8/8/8/r7/4R3 w', 'w b8 b7 e1 > d8',
  { name: 'not cut off' });
fails('LUCENA', '1k1K4/3P4/8/8/8/8/7r/2R5 w', 'w d8 d7 c1 > b8',
  { name: 'on the side with fewer files' });
fails('LUCENA', '1K1k4/1P6/8/8/8/8/8/r1R5 w', 'w b8 b7 c1 > d8',
  { name: 'the rook is attacked' });
fails('LUCENA', '1K1k4/1P6/8/8/8/8/1r6/2R5 b', 'w b8 b7 c1 > d8',
  { name: 'the pawn is attacked' });
holds('LUCENA', '1K1k4/1P6/8/8/8/8/1r6/2R5 w', 'w b8 b7 c1 > d8');
fails('LUCENA', 'K1k5/P7/8/8/8/8/7r/1R6 w', 'w a8 a7 b1 > c8',
  { name: 'a rook pawn' });

const philidor = '4k3/7R/r7/3KP3/8/8/8/8 b';
holds('PHILIDOR', philidor, 'b e8 a6 > e5');
holds('PHILIDOR', '4k3/7R/r7/3KP3/8/8/8/8 w', 'b e8 a6 > e5');
holds('PHILIDOR', '3k4/7R/r7/3KP3/8/8/8/8 b', 'b d8 a6 > e5');
fails('PHILIDOR', '3k4/7R/r7/3KP3/8/8/8/8 w', 'b d8 a6 > e5',
  { name: 'beside the file with the other side to move' });
holds('PHILIDOR', '8/4k3/r7/3KP3/8/8/8/7R w', 'b e7 a6 > e5');
fails('PHILIDOR', '8/4k3/4r3/3KP3/8/8/8/7R w', 'b e7 e6 > e5');
fails('PHILIDOR', '4k3/7R/8/r3P3/3K4/8/8/8 b', 'b e8 a5 > e5',
  { name: 'not on the sixth rank' });
fails('PHILIDOR', '4k3/7R/r2K4/4P3/8/8/8/8 b', 'b e8 a6 > e5',
  { name: 'the king has passed' });
fails('PHILIDOR', '4k3/8/r7/3KP3/8/8/8/R7 b', 'b e8 a6 > e5',
  { name: 'the rook is attacked' });
fails('PHILIDOR', '1k6/7R/r7/P2K4/8/8/8/8 b',
  'b b8 a6 > a5', { name: 'a rook pawn' });
holds('PHILIDOR', '4k3/7R/4P3/3K4/8/8/8/1r6 w', 'b e8 b1 > e6');
holds('PHILIDOR', '4k3/7R/3KP3/8/8/8/8/3r4 b', 'b e8 d1 > e6');
fails('PHILIDOR', '4k3/7R/3KP3/8/8/8/8/3r4 w', 'b e8 d1 > e6',
  { name: 'the king beside the pawn and to move' });
fails('PHILIDOR', '4k3/7R/4P3/3K4/1r6/8/8/8 w', 'b e8 b4 > e6',
  { name: 'the rook is too near' });
holds('PHILIDOR', '8/8/8/8/3kp3/R7/7r/4K3 w', 'w e1 a3 > e4');

const vancura = 'R7/6k1/P4r2/8/8/8/5K2/8';
holds('VANCURA', `${vancura} b`, 'b g7 f6 > a6 a8');
holds('VANCURA', 'R7/7k/P3r3/8/8/1K6/8/8 w', 'b h7 e6 > a6 a8');
fails('VANCURA', 'R7/7k/P3r3/8/1K6/8/8/8 w', 'b h7 e6 > a6 a8',
  { name: 'the king is too near' });
fails('VANCURA', 'R7/5k2/P4r2/8/8/8/6K1/8 w', 'b f7 f6 > a6 a8',
  { name: 'a king on f7' });
fails('VANCURA', 'R7/6k1/P2r4/8/8/8/6K1/8 w', 'b g7 d6 > a6 a8',
  { name: 'three files' });
fails('VANCURA', '8/R5k1/P4r2/8/8/8/6K1/8 w', 'b g7 f6 > a6 a7',
  { name: 'not on the promotion square' });
holds('VANCURA', '8/1k6/8/8/2R4p/8/1K6/7r w', 'w b2 c4 > h4 h1');

holds('QUEEN_HELD', '8/8/8/8/7K/8/pk6/3Q4 w', 'b b2 a2 > d1');
holds('QUEEN_HELD', '8/8/8/8/7K/8/2pk4/Q7 w', 'b d2 c2 > a1');
fails('QUEEN_HELD', '8/8/8/8/7K/8/Q1pk4/8 w', 'b d2 c2 > a2',
  { name: 'pinned' });
holds('QUEEN_HELD', '8/8/8/8/7K/8/Q1pk4/8 b', 'b d2 c2 > a2');
fails('QUEEN_HELD', '7K/8/8/8/8/8/1pk5/4Q3 w', 'b c2 b2 > e1',
  { name: 'a knight\'s pawn' });
fails('QUEEN_HELD', '8/8/8/8/4K3/8/pk6/3Q4 w', 'b b2 a2 > d1',
  { name: 'four moves away' });
fails('QUEEN_HELD', '8/8/8/8/7K/8/p7/k2Q4 b', 'b a1 a2 > d1',
  { name: 'in the corner' });
fails('QUEEN_HELD', '8/8/8/8/7K/1k6/p7/3Q4 w', 'b b3 a2 > d1',
  { name: 'behind the pawn' });
fails('QUEEN_HELD', '8/8/8/8/7K/8/pk6/2Q5 b', 'b b2 a2 > c1',
  { name: 'the queen hangs' });
fails('QUEEN_HELD', '3Q4/8/3K4/8/8/8/2pk4/8 w', 'b d2 c2 > d8',
  { name: 'the king between queen and king' });
fails('QUEEN_HELD', '7Q/8/5K2/8/8/8/p7/1k6 b', 'b b1 a2 > h8',
  { name: 'the king between queen and promotion square' });
holds('QUEEN_HELD', 'q7/2PK4/8/7k/8/8/8/8 b', 'w d7 c7 > a8');

holds('BISHOP_HELD', '8/8/4k3/8/4PK2/6B1/8/1b6 w', 'b e6 b1 > e4');
fails('BISHOP_HELD', '8/4k3/8/8/4PK2/6B1/8/1b6 w', 'b e7 b1 > e4',
  { name: 'a square of the enemy bishop\'s colour' });
fails('BISHOP_HELD', '8/8/4k3/8/4PK2/6B1/8/b7 w', 'b e6 a1 > e4',
  { name: 'bishops of one colour' });
fails('BISHOP_HELD', '8/8/4k3/5b2/4PK2/6B1/8/8 w', 'b e6 f5 > e4',
  { name: 'the bishop is attacked' });
fails('BISHOP_HELD', '8/8/4k3/8/8/4PKB1/8/1b6 w', 'b e6 b1 > e3',
  { name: 'a pawn on the third rank' });
fails('BISHOP_HELD', '8/8/5k2/8/4PK2/6B1/8/1b6 w', 'b f6 b1 > e4',
  { name: 'not on its file' });

