// Ending rows, lines and ideas, worked out by hand from TERMS.md.

import { caseList } from '../lib/cases.mjs';

const { cases, holds, fails } = caseList();
export { cases };

holds('INSUFFICIENT', '4k3/8/8/8/8/8/8/4KN2 w', '-');
fails('INSUFFICIENT', '4k3/8/8/8/8/8/8/3NKN2 w', '-');
holds('INSUFFICIENT', '4kb2/8/8/8/8/8/8/2B1K3 w', '-');
fails('INSUFFICIENT', '2b1k3/8/8/8/8/8/8/2B1K3 w', '-');
fails('INSUFFICIENT', '4k3/8/8/8/8/8/8/3BKN2 w', '-');

holds('WRONG_BISHOP', '4k3/8/8/8/8/8/P7/2B1K3 w', 'w a2 c1');
fails('WRONG_BISHOP', '4k3/8/8/8/8/8/P7/4KB2 w', 'w a2 f1');
fails('WRONG_BISHOP', '4k3/p7/8/8/8/8/P7/2B1K3 w', 'w a2 c1');
fails('WRONG_BISHOP', '4k3/8/8/8/8/8/1P6/2B1K3 w', 'w b2 c1');
holds('WRONG_BISHOP', '4kb2/7p/7p/8/8/8/8/4K3 w', 'b f8 h6 h7');
fails('WRONG_BISHOP', '2b1k3/7p/7p/8/8/8/8/4K3 w', 'b c8 h6 h7');

holds('SQUARE_RULE', '8/8/8/P3k3/8/8/8/7K w', 'w a5');
fails('SQUARE_RULE', '8/8/8/P3k3/8/8/8/7K b', 'w a5', { name: 'Black to move' });
fails('SQUARE_RULE', '8/8/8/P2k4/8/8/8/7K w', 'w a5');
fails('SQUARE_RULE', '8/K7/8/P4k2/8/8/8/8 w', 'w a5',
  { name: 'the own king is in the way' });
holds('SQUARE_RULE', '6k1/8/8/8/8/8/P7/7K w', 'w a2', { name: 'a double step' });
fails('SQUARE_RULE', '5k2/8/8/8/8/8/P7/7K w', 'w a2');
fails('SQUARE_RULE', '8/8/8/P3k3/8/8/8/6NK w', 'w a5', { name: 'a knight more' });

const facing = '8/8/4k3/8/4K3/8/8/8 w';
holds('OPPOSITION', facing, 'b e4 e6');
fails('OPPOSITION', facing, 'w e4 e6');
fails('OPPOSITION', '8/4k3/8/8/4K3/8/8/8 w', 'b e4 e7', { name: 'two between' });
holds('OPPOSITION', '8/8/8/4k3/8/2K5/8/8 b', 'w c3 e5', { name: 'diagonal' });
holds('OPPOSITION', '4k3/8/8/8/4K3/8/8/8 w', 'b e4 e8', { name: 'distant' });
fails('OPPOSITION', '8/8/3k4/8/4K3/8/8/8 w', 'b d6 e4');

holds('TO_MOVE', facing, 'w');
fails('TO_MOVE', facing, 'b');
holds('TO_MOVE', facing, 'b', { line: '--' });

holds('NO_LEGAL_MOVE', '7k/5Q2/6K1/8/8/8/8/8 b', 'b h8', { name: 'stalemate' });
holds('NO_LEGAL_MOVE', '7k/6Q1/6K1/8/8/8/8/8 b', 'b h8', { name: 'mate' });
fails('NO_LEGAL_MOVE', '7k/4Q3/8/6K1/8/8/8/8 b', 'b h8', { name: 'g8 is free' });
fails('NO_LEGAL_MOVE', '7k/5Q2/6K1/8/8/8/8/8 b', 'w g6');

const kings = '4k3/8/8/8/8/8/8/4K3 w';
holds('KING_DISTANCE', kings, 'w e1 a5 # 4');
fails('KING_DISTANCE', kings, 'w e1 a5 # 5');
fails('KING_DISTANCE', kings, 'w e8 a5 # 4', { name: 'not its king' });

holds('ROOK_BEHIND', '4k3/8/P7/8/8/8/8/R3K3 w', 'w a1 > a6');
holds('ROOK_BEHIND', 'R3k3/8/8/8/p7/8/8/4K3 b', 'w a8 > a4');
fails('ROOK_BEHIND', '4k3/8/8/8/p7/8/8/R3K3 w', 'w a1 > a4',
  { name: 'in front of it' });
fails('ROOK_BEHIND', '4k3/8/P7/8/N7/8/8/R3K3 w', 'w a1 > a6');
fails('ROOK_BEHIND', '4k3/1p6/P7/8/8/8/8/R3K3 w', 'w a1 > a6',
  { name: 'not passed' });

holds('EXACT', '8/4k3/8/4K3/4P3/8/8/8 b', '- # -1');
holds('EXACT', '8/4k3/8/4K3/4P3/8/8/8 w', '-');
fails('EXACT', '8/4k3/8/4K3/4P3/8/8/8 w', '- # 1');
holds('EXACT', '8/8/8/8/8/p1k5/8/K7 b', 'b', { name: 'a rook pawn' });

const capture = '4k3/8/8/3p4/4P3/8/8/4K3 w';
holds('LINE', capture, 'w # 100', { line: 'exd5' });
holds('LINE', capture, 'b # -100', { line: 'exd5' });
holds('LINE', capture, 'w # -100', { line: '-- dxe4' });
fails('LINE', capture, 'w # 100', { line: 'exf5', name: 'no such move' });
fails('LINE', capture, 'w', { line: 'exd5' });
fails('LINE', '4k3/8/8/8/8/8/4r3/4K3 w', 'w', { line: '--', name: 'in check' });
holds('LINE', '4k3/P7/8/8/8/8/8/4K3 w', 'w # 875', { line: 'a8=Q+' });

const rookTakes = '4k3/8/4p3/3p4/8/8/8/3RK3 w';
holds('BEST_REPLY', rookTakes, 'w # -400', { line: 'Rxd5 exd5' });
fails('BEST_REPLY', rookTakes, 'w # 100', { line: 'Rxd5 Ke7' });
fails('BEST_REPLY', rookTakes, 'w # -300', { line: 'Rxd5 exd5' });

const backRank = '6k1/5ppp/8/8/8/8/8/R3K3 w';
holds('MATE_IN', backRank, 'w # 1', { line: 'Ra8#' });
fails('MATE_IN', backRank, 'w # 2', { line: 'Ra8#' });
fails('MATE_IN', backRank, 'b # 1', { line: 'Ra8#' });
fails('MATE_IN', '6k1/5pp1/8/8/8/8/8/R3K3 w', 'w # 1', { line: 'Ra8+' });
holds('BACK_RANK', backRank, 'w # 1', { line: 'Ra8#' });
holds('BACK_RANK', '6k1/5pp1/8/8/8/3B4/8/R3K3 w', 'w # 1',
  { line: 'Ra8#', name: 'h7 is attacked' });
fails('BACK_RANK', '6k1/5ppb/8/8/8/8/8/R3K3 w', 'w # 1',
  { line: 'Ra8#', name: 'h7 is no pawn\'s' });

holds('FORK', 'r3k3/8/8/3N4/8/8/8/4K3 w', 'w c7 > a8 e8', { line: 'Nc7+' });
fails('FORK', 'r3k3/8/8/3N4/8/8/8/4K3 w', 'w c7 > e8', { line: 'Nc7+' });
fails('FORK', 'b3k3/r7/8/3N4/8/8/8/4K3 w', 'w c7 > a8 e8',
  { line: 'Nc7+', name: 'a8 is defended' });
fails('FORK', 'r3k3/2N5/8/8/8/8/8/4K3 b', 'w c7 > a8 e8',
  { line: 'Kd7', name: 'the other side moved' });

holds('SKEWER', '4q3/8/8/4k3/8/8/8/R5K1 w', 'w e1 > e5 e8', { line: 'Re1+' });
fails('SKEWER', '4q3/8/8/4k3/8/8/8/R5K1 w', 'w e1 > e8 e5', { line: 'Re1+' });
fails('SKEWER', 'r3r3/8/8/4k3/8/8/8/3R2K1 w', 'w e1 > e5 e8',
  { line: 'Re1+', name: 'e8 is defended' });
fails('SKEWER', '4k3/8/8/4q3/8/8/8/R5K1 w', 'w e1 > e5 e8',
  { line: 'Re1', name: 'the lesser piece is in front' });

const battery = '4k3/8/8/8/4B3/8/8/4R1K1 w';
holds('DISCOVERED', battery, 'w e1 > e8', { line: 'Bc6+' });
fails('DISCOVERED', battery, 'w c6 > e8', { line: 'Bc6+' });
fails('DISCOVERED', battery, 'w e1', { line: 'Bc6+' });

holds('PIN_WINS', '4k3/8/8/4n3/8/8/3P4/4R1K1 w', 'w e5 > e1 e8',
  { line: 'd4' });
fails('PIN_WINS', '4k3/8/3p4/4n3/8/8/8/3R2K1 w', 'w e5 > e1 e8',
  { line: 'Re1', name: 'defended as often' });
fails('PIN_WINS', '3k4/8/8/4n3/8/8/3P4/4R1K1 w', 'w e5 > e1 e8',
  { line: 'd4', name: 'nothing behind' });

const overloaded = '3q3k/8/8/n5n1/8/8/7K/R4R2 w';
holds('OVERLOADED', overloaded, 'w d8 > a5 g5', { line: 'Rg1' });
fails('OVERLOADED', overloaded, 'w d8 > a5 g5',
  { line: 'Rf2', name: 'g5 is not attacked' });
fails('OVERLOADED', '3q3k/6r1/8/n5n1/8/8/7K/R4R2 w', 'w d8 > a5 g5',
  { line: 'Rf6', name: 'g5 has another guard' });

const guard = '3q3k/8/8/n5n1/8/8/7K/R5R1 b';
holds('SOLE_GUARD', guard, 'w d8 > a5 g5', { name: 'whoever moved last' });
holds('SOLE_GUARD', overloaded, 'w d8 > a5 g5', { line: 'Rg1' });
fails('SOLE_GUARD', guard, 'w d8 > a5', { name: 'one thing is no load' });
fails('SOLE_GUARD', '3q3k/8/8/n5n1/8/8/7K/R7 b', 'w d8 > a5 g5',
  { name: 'g5 is not attacked' });
fails('SOLE_GUARD', '3q3k/6r1/8/n5n1/8/8/7K/R5R1 b', 'w d8 > a5 g5',
  { name: 'g5 has another guard' });
fails('SOLE_GUARD', guard, 'b d8 > a5 g5');
