// File, centre and space rows, worked out by hand from TERMS.md.

import { caseList, file } from '../lib/cases.mjs';

const { cases, holds, fails } = caseList();
export { cases };

const aPawns = '4k3/p7/8/8/8/8/P7/4K3 w';
holds('OPEN_FILE', aPawns, `- ${file('b')}`);
fails('OPEN_FILE', aPawns, `- ${file('a')}`);
fails('OPEN_FILE', aPawns, '- b1 b2 b3');

const blackPawn = '4k3/p7/8/8/8/8/8/4K3 w';
holds('HALF_OPEN_FILE', blackPawn, `w ${file('a')}`);
fails('HALF_OPEN_FILE', blackPawn, `b ${file('a')}`);
fails('HALF_OPEN_FILE', blackPawn, `w ${file('b')}`);

const heavy = '4k3/p7/8/8/8/8/7P/RQ2K2R w';
holds('ROOK_ON_FILE', heavy, 'w a1', { name: 'half-open' });
holds('ROOK_ON_FILE', heavy, 'w b1', { name: 'a queen, open' });
fails('ROOK_ON_FILE', heavy, 'w h1');

holds('SEVENTH_RANK', '6k1/R7/8/8/8/8/8/4K3 w', 'w a7');
fails('SEVENTH_RANK', '8/R5k1/8/8/8/8/8/4K3 w', 'w a7');
holds('SEVENTH_RANK', '8/R4p2/6k1/8/8/8/8/4K3 w', 'w a7');
holds('SEVENTH_RANK', '4k3/8/8/8/8/8/q7/4K3 w', 'b a2');

holds('DOUBLED_ROOKS', '4k3/8/8/8/3R4/8/8/3RK3 w', 'w d1 d4');
fails('DOUBLED_ROOKS', '4k3/8/8/8/3R4/3N4/8/3RK3 w', 'w d1 d4');
fails('DOUBLED_ROOKS', '4k3/3P4/8/8/3R4/8/8/3RK3 w', 'w d1 d4',
  { name: 'an own pawn on the file' });

const closed = '4k3/8/4p3/3pP3/3P4/8/8/4K3 w';
holds('CENTRE_CLOSED', closed, '- d4 e5 > d5 e6');
fails('CENTRE_CLOSED', closed, '- d4 > d5');
fails('CENTRE_FIXED', closed, '-');

const tension = '4k3/8/4p3/2ppP3/3P4/8/8/4K3 w';
fails('CENTRE_CLOSED', tension, '- d4 e5 > d5 e6');
holds('CENTRE_TENSION', tension, '- d4 > c5');
fails('CENTRE_TENSION', closed, '- d4 > d5');
fails('CENTRE_TENSION', '4k3/4p3/8/1p1p4/P3P3/8/8/4K3 w', '- a4 e4 > b5 d5',
  { name: 'a and b are not central' });
holds('CENTRE_TENSION', '4k3/4p3/8/1p1p4/P3P3/8/8/4K3 w', '- e4 > d5');

holds('CENTRE_OPEN', '4k3/8/8/8/8/8/3P4/4K3 w', '-');
fails('CENTRE_OPEN', '4k3/3p4/8/8/8/8/3P4/4K3 w', '-');
holds('CENTRE_UNRESOLVED', '4k3/3p4/8/8/8/8/3P4/4K3 w', '-');

const fixed = '4k3/8/8/3p4/3P4/8/8/4K3 w';
holds('CENTRE_FIXED', fixed, '-');
holds('CENTRE_FIXED', fixed, '- d4 > d5');
fails('CENTRE_CLOSED', fixed, '- d4 > d5', { name: 'one ram' });
fails('CENTRE_UNRESOLVED', fixed, '-');
fails('CENTRE_FIXED', '4k3/8/8/2p5/2P5/8/3PP3/4K3 w', '-',
  { name: 'the ram is on c' });

holds('CENTRE_MOBILE', '4k3/3p4/8/8/3PP3/8/8/4K3 w', '-');
fails('CENTRE_MOBILE', '4k3/3pp3/8/8/3PP3/8/8/4K3 w', '-');
fails('CENTRE_MOBILE', '4k3/3p4/8/3P4/3P4/8/8/4K3 w', '-',
  { name: 'two pawns on d only' });

holds('SPACE', '4k3/8/8/8/4P3/8/8/4K3 w', 'w # 2 0');
holds('SPACE', '4k3/8/8/8/3pP3/8/8/4K3 w', 'w # 1 2',
  { name: 'e3 and d5 are attacked' });
holds('SPACE', '4k3/8/8/8/4P3/4P3/8/4K3 w', 'w # 1 0',
  { name: 'e3 holds an own pawn' });
fails('SPACE', '4k3/8/8/8/4P3/8/8/4K3 w', 'w # 3 0');

const control = '4k3/8/8/3p4/8/2N5/8/3RK3 w';
holds('CONTROL', control, 'w d5 # 2 0');
holds('CONTROL', control, 'b d5 # 0 2');
fails('CONTROL', control, 'w d5 # 1 0');
fails('CONTROL', control, '- d5 # 2 0', { name: 'no side' });
