// Walks each line once a square and occupation to fill the look-up tables.
// The magic multipliers (magics.h) were found by a random search of our own.
#include "assay/rules/attacks.h"

#include <mutex>

#include "assay/rules/magics.h"

namespace assay {
namespace attacks_internal {
namespace {

struct Step {
  int file;
  int rank;
};
constexpr Step kRookSteps[] = {{1, 0}, {-1, 0}, {0, 1}, {0, -1}};
constexpr Step kBishopSteps[] = {{1, 1}, {1, -1}, {-1, 1}, {-1, -1}};
constexpr Step kKnightSteps[] = {{1, 2},   {2, 1},   {2, -1}, {1, -2},
                                 {-1, -2}, {-2, -1}, {-2, 1}, {-1, 2}};

// Entries that all squares need together: the sum of 2^(squares in the mask).
constexpr int kRookEntries = 102400;
constexpr int kBishopEntries = 5248;
Bitboard rook_attacks[kRookEntries];
Bitboard bishop_attacks[kBishopEntries];

Square StepFrom(Square square, Step step) {
  const int file = FileOf(square) + step.file;
  const int rank = RankOf(square) + step.rank;
  if (file < 0 || file > 7 || rank < 0 || rank > 7) return kNoSquare;
  return MakeSquare(file, rank);
}

template <int kSteps>
Bitboard Walk(Square from, Bitboard occupied, const Step (&steps)[kSteps]) {
  Bitboard attacked = 0;
  for (const Step step : steps) {
    for (Square at = StepFrom(from, step); at != kNoSquare;
         at = StepFrom(at, step)) {
      attacked |= Bit(at);
      if (Contains(occupied, at)) break;
    }
  }
  return attacked;
}

template <int kSteps>
Bitboard StepsFrom(Square from, const Step (&steps)[kSteps]) {
  Bitboard reached = 0;
  for (const Step step : steps) {
    const Square to = StepFrom(from, step);
    if (to != kNoSquare) reached |= Bit(to);
  }
  return reached;
}

// The squares of the lines, less the last of each: what stands on an edge
// square does not change what is attacked.
Bitboard RelevantSquares(Square from, Bitboard on_empty_board) {
  Bitboard edges = 0;
  if (FileOf(from) != 0) edges |= kFileA;
  if (FileOf(from) != 7) edges |= kFileH;
  if (RankOf(from) != 0) edges |= RankMask(0);
  if (RankOf(from) != 7) edges |= RankMask(7);
  return on_empty_board & ~edges;
}

void BuildSlider(const Step (&steps)[4], const Bitboard (&magics)[kSquares],
                 bool use_pext, SliderLookup* lookups, Bitboard* entries) {
  for (int s = 0; s < kSquares; ++s) {
    const auto from = static_cast<Square>(s);
    SliderLookup& lookup = lookups[s];
    lookup.mask = RelevantSquares(from, Walk(from, 0, steps));
    lookup.magic = magics[s];
    lookup.shift = static_cast<unsigned>(64 - PopCount(lookup.mask));
    lookup.attacks = entries;
    Bitboard occupied = 0;
    do {  // over all subsets of the mask
      const std::uint64_t index =
          use_pext ? ExtractBits(occupied, lookup.mask)
                   : (occupied * lookup.magic) >> lookup.shift;
      entries[index] = Walk(from, occupied, steps);
      occupied = (occupied - lookup.mask) & lookup.mask;
    } while (occupied != 0);
    entries += std::uint64_t{1} << (64U - lookup.shift);
  }
}

void BuildLines() {
  for (int a = 0; a < kSquares; ++a) {
    for (int b = 0; b < kSquares; ++b) {
      const auto from = static_cast<Square>(a);
      const auto to = static_cast<Square>(b);
      tables.between[a][b] = 0;
      tables.line[a][b] = 0;
      if (a == b) continue;
      const Bitboard ends = Bit(from) | Bit(to);
      if (Contains(RookAttacks(from, 0), to)) {
        tables.between[a][b] =
            RookAttacks(from, Bit(to)) & RookAttacks(to, Bit(from));
        tables.line[a][b] = (RookAttacks(from, 0) & RookAttacks(to, 0)) | ends;
      } else if (Contains(BishopAttacks(from, 0), to)) {
        tables.between[a][b] =
            BishopAttacks(from, Bit(to)) & BishopAttacks(to, Bit(from));
        tables.line[a][b] =
            (BishopAttacks(from, 0) & BishopAttacks(to, 0)) | ends;
      }
    }
  }
}

}  // namespace

// Initialised with constants: an initialiser run before main() might come after
// a static of another file has built the tables, and would wipe them.
Tables tables{};

void Build(bool use_pext) {
  tables.use_pext = use_pext;
  BuildSlider(kRookSteps, kRookMagics, use_pext, tables.rook, rook_attacks);
  BuildSlider(kBishopSteps, kBishopMagics, use_pext, tables.bishop,
              bishop_attacks);
  for (int s = 0; s < kSquares; ++s) {
    const auto from = static_cast<Square>(s);
    tables.knight[s] = StepsFrom(from, kKnightSteps);
    tables.king[s] =
        StepsFrom(from, kRookSteps) | StepsFrom(from, kBishopSteps);
    for (const Side side : kSides) {
      tables.pawn[Index(side)][s] = PawnAttacks(side, Bit(from));
    }
  }
  BuildLines();
}

}  // namespace attacks_internal

void EnsureAttackTables() {
  static std::once_flag built;
  std::call_once(built, [] { attacks_internal::Build(kCpuHasFastPext); });
}

Bitboard PieceAttacks(PieceKind kind, Square from, Bitboard occupied) {
  switch (kind) {
    case PieceKind::kKnight:
      return KnightAttacks(from);
    case PieceKind::kBishop:
      return BishopAttacks(from, occupied);
    case PieceKind::kRook:
      return RookAttacks(from, occupied);
    case PieceKind::kQueen:
      return QueenAttacks(from, occupied);
    case PieceKind::kKing:
      return KingAttacks(from);
    case PieceKind::kPawn:
    case PieceKind::kNone:
      break;
  }
  return 0;
}

}  // namespace assay
