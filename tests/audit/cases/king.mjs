// King rows, worked out by hand from TERMS.md.

import { caseList, file } from '../lib/cases.mjs';

const { cases, holds, fails } = caseList();
export { cases };

const fianchetto = '6k1/8/8/8/8/6P1/5P1P/6K1 w';
holds('SHELTER', fianchetto, 'w f2 g3 h2 # 0');
holds('SHELTER', fianchetto, 'b # 3');
holds('SHELTER', '6k1/8/8/8/6P1/8/5P1P/6K1 w', 'w f2 h2 # 1',
  { name: 'g4 is three ranks ahead' });
holds('SHELTER', '6k1/8/8/8/8/8/6PP/7K w', 'w g2 h2 # 0',
  { name: 'two files for a king on h' });
fails('SHELTER', fianchetto, 'w f2 h2 # 1');

holds('FLANK_PAWN_MOVED', fianchetto, 'w g3 g2');
fails('FLANK_PAWN_MOVED', fianchetto, 'w g2 g3', { name: 'now, then start' });
fails('FLANK_PAWN_MOVED', fianchetto, 'w f2 f2');
fails('FLANK_PAWN_MOVED', '6k1/8/8/8/8/6P1/5PKP/8 w', 'w g3 g2',
  { name: 'the king is on rank 2' });
fails('FLANK_PAWN_MOVED', '6k1/8/8/8/8/6P1/5PPP/6K1 w', 'w g3 g2',
  { name: 'an own pawn is on g2' });
fails('FLANK_PAWN_MOVED', '4k3/8/8/8/8/P7/8/4K3 w', 'w a3 a2');
holds('FLANK_PAWN_MOVED', '4k3/8/8/8/8/P7/8/3K4 w', 'w a3 a2');

const diagonal = '1b2k3/8/8/8/8/8/7P/6K1 w';
holds('DIAGONAL_OPEN', diagonal, 'w g1 f2 e3 d4 c5 b6 a7 > b8');
fails('DIAGONAL_OPEN', diagonal, 'w g1 e3 f2 d4 c5 b6 a7 > b8',
  { name: 'in order' });
fails('DIAGONAL_OPEN', '1b2k3/8/8/8/8/4P3/7P/6K1 w', 'w g1 f2 > b8',
  { name: 'one empty square' });
fails('DIAGONAL_OPEN', '2b1k3/8/8/8/8/8/7P/6K1 w',
  'w g1 f2 e3 d4 c5 b6 a7 > c8', { name: 'the other colour' });
holds('DIAGONAL_OPEN', '2bqk3/8/8/8/8/8/7P/6K1 w',
  'w g1 f2 e3 d4 c5 b6 a7 > d8', { name: 'a queen moves on both' });

const toKing = '4k2r/8/8/8/8/8/5P1P/6K1 w';
holds('FILE_TO_KING', toKing, `w ${file('g')} > h8`);
holds('FILE_TO_KING', toKing, `w ${file('f')} > h8`,
  { name: 'half-open for Black' });
fails('FILE_TO_KING', toKing, `w ${file('e')} > h8`, { name: 'not next to it' });
fails('FILE_TO_KING', '4k2r/5p2/8/8/8/8/5P1P/6K1 w', `w ${file('f')} > h8`);
fails('FILE_TO_KING', '4k2n/8/8/8/8/8/5P1P/6K1 w', `w ${file('g')} > h8`);

const attacked = '4k3/8/8/8/8/5n2/8/q5K1 w';
holds('KING_ATTACKERS', attacked, 'w g1 > a1 f3 # 2');
fails('KING_ATTACKERS', attacked, 'w g1 > f3 # 1');
holds('KING_ATTACKERS', attacked, 'b e8', { name: 'nobody' });
holds('KING_ATTACKERS', '4k3/8/8/8/8/7p/8/6K1 w', 'w g1',
  { name: 'pawns are not counted' });

holds('IN_CHECK', '4k3/8/8/8/8/8/4r3/4K3 w', 'w e1 > e2');
fails('IN_CHECK', '4k3/8/8/8/8/8/4b3/4K3 w', 'w e1 > e2');
holds('IN_CHECK', '4k3/8/8/8/8/8/8/R3K3 w', 'b e8 > a8',
  { line: 'Ra8+', name: 'after a line' });
fails('IN_CHECK', '4k3/8/8/8/8/8/8/R3K3 w', 'b e8 > a8');

holds('CASTLED', '4k3/8/8/8/8/8/8/5RK1 w', 'w g1');
fails('CASTLED', '4k3/8/8/8/8/8/8/6KR w', 'w g1', { name: 'the rook is on h1' });
holds('CASTLED', '8/7k/8/8/8/8/8/4K3 w', 'b h7');
fails('CASTLED', '4k3/8/8/8/8/8/8/5K2 w', 'w f1');
holds('CASTLED', '4k3/8/8/8/8/8/8/2KR4 w', 'w c1');
fails('CASTLED', '4k3/8/8/8/8/8/8/R1K5 w', 'w c1');

holds('UNCASTLED', '4k3/8/8/8/8/8/8/4K2R w K', 'w e1');
fails('UNCASTLED', '4k3/8/8/8/8/8/8/4K2R w', 'w e1');
holds('UNCASTLED', '3qk3/8/8/8/8/8/8/3QK3 w', 'w e1',
  { name: 'both queens are there' });
fails('UNCASTLED', '3qk3/8/8/8/8/8/4K3/3Q4 w', 'w e2');
