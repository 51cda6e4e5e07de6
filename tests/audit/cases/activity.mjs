// The project's own kinds on activity, worked out by hand from their
// definitions in proto/assay/v1/claim.proto.

import { caseList } from '../lib/cases.mjs';

const { cases, holds, fails } = caseList();
export { cases };

const rook = '4k3/8/8/8/8/8/8/R3K3 w';
holds('CHECK_SQUARE', rook, 'w a8 > a1');
fails('CHECK_SQUARE', rook, 'w a7 > a1', { name: 'no check there' });
fails('CHECK_SQUARE', '4k3/2n5/8/8/8/8/8/R3K3 w', 'w a8 > a1',
  { name: 'the knight guards it' });
fails('CHECK_SQUARE', '1n2k3/8/8/8/8/8/8/R3K3 w', 'w a8 > a1',
  { name: 'the knight is in between' });
fails('CHECK_SQUARE', 'r3k3/8/8/8/8/8/8/R3K3 w', 'w a8 > b1');
holds('CHECK_SQUARE', '4k3/8/8/3N4/1Q6/8/8/4K3 w', 'w e7 > b4',
  { name: 'only the king guards it, two attack it' });
fails('CHECK_SQUARE', '4k3/8/8/8/7Q/8/8/4K3 w', 'w e7 > h4',
  { name: 'the king takes' });
fails('CHECK_SQUARE', 'r3k3/8/8/8/8/8/R7/K7 w', 'w e2 > a2',
  { name: 'the rook is pinned' });

holds('PAWN_ADVANCE', '4k3/p7/8/4P3/7P/8/P7/4K3 w', 'w e5 h4 # 3 0');
holds('PAWN_ADVANCE', '4k3/p7/8/4P3/7P/8/P7/4K3 w', 'b # 0 3');
fails('PAWN_ADVANCE', '4k3/p7/8/4P3/7P/8/P7/4K3 w', 'w e5 h4 # 4 0');

holds('FAR_CONTROL', '4k3/8/8/8/8/8/8/R3K3 w', 'w # 4');
fails('FAR_CONTROL', '4k3/8/8/8/8/8/8/R3K3 w', 'w # 5');
holds('FAR_CONTROL', '4k3/8/8/8/8/8/8/4K3 w', 'b');

holds('KING_PAWNS', '4k3/p7/8/8/8/8/7P/4K3 w', 'w e1 > e8 # 9 10');
fails('KING_PAWNS', '4k3/p7/8/8/8/8/7P/4K3 w', 'w e1 > e8 # 9 9');
fails('KING_PAWNS', '4k3/8/8/8/8/8/8/4K3 w', 'w e1 > e8',
  { name: 'without pawns' });

// f6 to h8 and what lies between: g6, g7 and g8 are attacked, each guarded once.
holds('KING_ZONE', '7k/8/8/8/8/8/8/K5R1 w', 'b > g6 g7 g8 # 0 3');
fails('KING_ZONE', '7k/8/8/8/8/8/8/K5R1 w', 'b > g6 g7 g8 # 0 2');
fails('KING_ZONE', '7k/8/8/8/8/8/8/K5R1 w', 'b > g6 g7 # 0 2');
holds('KING_ZONE', '7k/8/8/8/8/8/6R1/K5R1 w', 'b > g6 g7 g8 # 0 3',
  { name: 'no x-ray: the first rook alone attacks' });
holds('KING_ZONE', '7k/8/8/8/8/8/8/K5RQ b', 'b > g6 h6 g7 h7 g8 h8 # 0 6');

holds('SCREENED', '4k3/8/8/3p4/3N4/8/8/4K3 w', 'w d4 > d5');
holds('SCREENED', '4k3/4b3/4p3/8/8/8/8/4K3 w', 'b e7 > e6');
fails('SCREENED', '4k3/8/8/3n4/3N4/8/8/4K3 w', 'w d4 > d5');
fails('SCREENED', '4k3/8/3p4/8/3N4/8/8/4K3 w', 'w d4 > d6');

holds('KING_SHUT', '7k/8/6Q1/8/8/8/8/K7 w', 'b h8');
fails('KING_SHUT', '7k/8/7Q/8/8/8/8/K7 w', 'b h8', { name: 'g8 is free' });
holds('KING_SHUT', '6rk/6pp/8/8/8/8/8/K7 w', 'b h8');
