// Pawn rows, worked out by hand from TERMS.md.

import { caseList } from '../lib/cases.mjs';

const { cases, holds, fails } = caseList();
export { cases };

const doubled = '4k3/8/8/8/8/2P5/2P5/4K3 w';
holds('DOUBLED', doubled, 'w c2 c3 # 2');
holds('DOUBLED', doubled, 'w c3 c2 # 2', { name: 'a set has no order' });
fails('DOUBLED', doubled, 'w c2 c3 # 3');
fails('DOUBLED', doubled, 'b c2 c3 # 2');
fails('DOUBLED', '4k3/8/8/8/2P5/2P5/2P5/4K3 w', 'w c2 c3 # 2',
  { name: 'all pawns of the file' });
fails('DOUBLED', '4k3/8/8/8/8/8/2P5/4K3 w', 'w c2 # 1');

const scattered = '4k3/8/8/8/8/8/P1P1PP2/4K3 w';
holds('ISOLATED', scattered, 'w a2');
holds('ISOLATED', scattered, 'w c2');
fails('ISOLATED', scattered, 'w e2');
fails('ISOLATED', scattered, 'w a2 c2', { name: 'one pawn a claim' });

holds('BACKWARD', '4k3/8/8/4p3/2P1P3/3P4/8/4K3 w', 'w d3');
holds('BACKWARD', '4k3/8/3p4/2p1p3/4P3/8/8/4K3 w', 'b d6',
  { name: 'e4 attacks d5' });
fails('BACKWARD', '4k3/8/8/4p3/4P3/2PP4/8/4K3 w', 'w d3',
  { name: 'c3 is beside it' });
fails('BACKWARD', '4k3/8/4p3/8/2P1P3/3P4/8/4K3 w', 'w d3',
  { name: 'nothing attacks d4' });
fails('BACKWARD', '4k3/8/8/4p3/8/3P4/8/4K3 w', 'w d3', { name: 'isolated' });

holds('HANGING_PAIR', '4k3/1p3ppp/4p3/8/2PP4/8/P4PPP/4K3 w', 'w c4 d4');
fails('HANGING_PAIR', '4k3/1p3ppp/4p3/8/2PP4/4P3/P4PPP/4K3 w', 'w c4 d4',
  { name: 'a neighbour on e' });
fails('HANGING_PAIR', '4k3/1pp2ppp/4p3/8/2PP4/8/P4PPP/4K3 w', 'w c4 d4',
  { name: 'an enemy pawn on c' });
fails('HANGING_PAIR', '4k3/5ppp/4p3/8/2PP4/8/P4PPP/4K3 w', 'w c4 d4',
  { name: 'c4 is passed' });
fails('HANGING_PAIR', '4k3/1p3ppp/4p3/8/3P4/2P5/P4PPP/4K3 w', 'w c3 d4',
  { name: 'c3 is on rank 3' });

fails('PASSED', '4k3/8/8/3p4/8/2P5/8/4K3 w', 'w c3');
holds('PASSED', '4k3/8/8/8/2P5/3p4/8/4K3 w', 'w c4');
holds('PASSED', '4k3/8/8/8/2P5/3p4/8/4K3 w', 'b d3');
holds('PASSED', '4k3/8/8/2Pp4/8/8/8/4K3 w', 'w c5',
  { name: 'd5 is beside, not ahead' });
fails('PASSED', doubled, 'w c2', { name: 'an own pawn ahead' });
holds('PASSED', doubled, 'w c3');

const linked = '4k3/8/8/8/2P5/1P6/8/4K3 w';
holds('PROTECTED_PASSED', linked, 'w c4');
fails('PROTECTED_PASSED', linked, 'w b3');
fails('PROTECTED_PASSED', '4k3/8/3p4/8/2P5/1P6/8/4K3 w', 'w c4');

holds('CONNECTED_PASSED', linked, 'w b3 c4');
fails('CONNECTED_PASSED', '4k3/8/8/8/2P5/8/1P6/4K3 w', 'w b2 c4',
  { name: 'two ranks apart' });
fails('CONNECTED_PASSED', '4k3/8/8/8/2P5/P7/8/4K3 w', 'w a3 c4');

holds('OUTSIDE_PASSED', '4k3/6pp/8/8/P7/8/6P1/4K3 w', 'w a4');
holds('OUTSIDE_PASSED', '4k3/3p4/8/8/P7/8/6P1/4K3 w', 'w a4',
  { name: 'exactly three files' });
fails('OUTSIDE_PASSED', '4k3/2p5/8/8/P7/8/6P1/4K3 w', 'w a4');
fails('OUTSIDE_PASSED', '4k3/6pp/8/8/P7/8/8/4K3 w', 'w a4',
  { name: 'no other own pawn' });
fails('OUTSIDE_PASSED', '4k3/8/8/8/P7/8/6P1/4K3 w', 'w a4',
  { name: 'no enemy pawn' });

holds('CANDIDATE', '4k3/8/5p2/8/4P3/3P4/8/4K3 w', 'w e4');
holds('CANDIDATE', '4k3/8/5p2/8/3PP3/8/8/4K3 w', 'w e4',
  { name: 'a helper at its rank' });
fails('CANDIDATE', '4k3/8/3p1p2/8/4P3/3P4/8/4K3 w', 'w e4');
fails('CANDIDATE', '4k3/8/5p2/3P4/4P3/8/8/4K3 w', 'w e4',
  { name: 'd5 is ahead of it' });
fails('CANDIDATE', '4k3/8/8/8/4P3/3P4/8/4K3 w', 'w e4', { name: 'passed' });
fails('CANDIDATE', '4k3/4p3/5p2/8/4P3/3P4/8/4K3 w', 'w e4',
  { name: 'the file is not free' });

const lever = '4k3/8/8/3p1p2/4P3/8/8/4K3 w';
holds('LEVER', lever, 'w e4 > d5 f5');
holds('LEVER', lever, 'b d5 > e4');
fails('LEVER', lever, 'w e4 > d5');
fails('LEVER', '4k3/8/3p1p2/8/4P3/8/8/4K3 w', 'w e4 > d6 f6');

const leverMove = '4k3/8/8/3p4/8/8/4P3/4K3';
holds('LEVER_MOVE', `${leverMove} w`, 'w e2 e4 > d5');
holds('LEVER_MOVE', `${leverMove} b`, 'w e2 e4 > d5', { name: 'after a pass' });
holds('LEVER_MOVE', `${leverMove} b`, 'w e2 e4 > d5', {
  line: 'Kd7', name: 'after a line',
});
fails('LEVER_MOVE', `${leverMove} w`, 'w e4 e2 > d5', { name: 'from, to' });
fails('LEVER_MOVE', `${leverMove} w`, 'w e2 e3 > d5');
fails('LEVER_MOVE', 'R3k3/8/8/3p4/8/8/4P3/4K3 b', 'w e2 e4 > d5',
  { name: 'no pass in check' });
fails('LEVER_MOVE', '4k3/8/8/3p4/8/8/r3P1K1/8 w', 'w e2 e4 > d5',
  { name: 'pinned on the rank' });
fails('LEVER_MOVE', '4k3/8/8/3p4/8/4n3/4P3/4K3 w', 'w e2 e4 > d5',
  { name: 'the way is blocked' });

const ram = '4k3/8/8/4p3/4P3/8/8/4K3 w';
holds('RAM', ram, 'w e4 > e5');
holds('RAM', ram, 'b e5 > e4');
fails('RAM', '4k3/8/4p3/8/4P3/8/8/4K3 w', 'w e4 > e6');

const chain = '4k3/8/8/8/3P4/2P5/1P6/4K3 w';
holds('CHAIN_BASE', chain, 'w b2 > c3');
fails('CHAIN_BASE', chain, 'w c3 > d4', { name: 'guarded itself' });
holds('CHAIN_BASE', '4k3/8/8/8/8/3P1P2/4P3/4K3 w', 'w e2 > d3 f3');
fails('CHAIN_BASE', '4k3/8/8/8/8/3P1P2/4P3/4K3 w', 'w e2 > d3');

const islands = '4k3/p7/8/8/8/8/P1PP2P1/4K3 w';
holds('ISLANDS', islands, 'w # 3 1');
holds('ISLANDS', islands, 'b # 1 3');
fails('ISLANDS', islands, 'w # 2 1');
holds('ISLANDS', '4k3/8/8/8/8/8/8/4K3 w', 'w', { name: 'none at all' });

const majority = '4k3/p4ppp/8/8/8/8/PP4PP/4K3 w';
holds('MAJORITY', majority, 'w a2 b2 # 2 1');
holds('MAJORITY', majority, 'b f7 g7 h7 # 3 2');
fails('MAJORITY', majority, 'w g2 h2 # 2 3');
fails('MAJORITY', '4k3/pp6/8/8/8/8/PP6/4K3 w', 'w a2 b2 # 2 2');

const lonePawn = '4k3/8/8/8/4P3/8/8/4K3 w';
holds('HOLE', lonePawn, 'w d4', { name: 'e4 is not behind it' });
holds('HOLE', lonePawn, 'w c3');
fails('HOLE', lonePawn, 'w d5');
fails('HOLE', lonePawn, 'w a4', { name: 'file a' });
fails('HOLE', lonePawn, 'w c6', { name: 'rank 6' });
holds('HOLE', lonePawn, 'b d6', { name: 'rank 3 for Black' });

holds('BLOCKADE', '4k3/8/8/3p4/3N4/8/8/4K3 w', 'w d4 > d5');
holds('BLOCKADE', '8/8/8/3p4/3K4/8/8/4k3 w', 'w d4 > d5', { name: 'a king' });
fails('BLOCKADE', '4k3/8/8/3p4/3P4/8/8/4K3 w', 'w d4 > d5', { name: 'a pawn' });
fails('BLOCKADE', '4k3/8/2p5/3p4/3N4/8/2P5/4K3 w', 'w d4 > d5',
  { name: 'd5 is no target' });
fails('BLOCKADE', '4k3/8/8/3p4/3n4/8/8/4K3 w', 'w d4 > d5');

const bishop = '4k3/8/8/8/8/8/1B6/4K3 w';
holds('MATERIAL', bishop, 'w b2 # 1', { piece: 'BISHOP' });
holds('MATERIAL', bishop, 'b > b2 # 0 1', { piece: 'BISHOP' });
holds('MATERIAL', bishop, 'w e1 > e8 # 1 1', { piece: 'KING' });
fails('MATERIAL', bishop, 'w b2 # 2', { piece: 'BISHOP' });
fails('MATERIAL', bishop, 'w b2 # 1', { piece: 'KNIGHT' });
