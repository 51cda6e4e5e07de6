// Rooks: files, the seventh rank, one behind the other, behind passed pawns.
#include "assay/facts/claim_makers.h"
#include "assay/facts/endings.h"
#include "assay/terms/sink.h"

namespace assay {
namespace {

template <class Sink>
void AddSide(const Facts& facts, const Weights& weights, Side side,
             Sink& sink) {
  const Bitboard rooks = facts.Own(side, PieceKind::kRook);
  const Bitboard open = facts.OpenFiles();
  const Bitboard half_open = facts.HalfOpenFiles(side);
  for (const Square rook : Each(rooks & (open | half_open))) {
    const bool is_open = Contains(open, rook);
    sink.Add(
        TermId::kRookOnFile, side,
        is_open ? weights.rook_open_file : weights.rook_half_open_file,
        [&](Details& details) {
          details.Squares(Bit(rook));
          details.Add(SquaresClaim(ClaimKind::kRookOnFile, side, Bit(rook)));
          details.Add(is_open ? OpenFileClaim(FileOf(rook))
                              : HalfOpenFileClaim(side, FileOf(rook)));
        });
    const Bitboard pair =
        facts.Attacks(rook) & rooks & FrontSpan(Side::kWhite, Bit(rook));
    if (pair != 0) {
      sink.Add(TermId::kDoubledRooks, side, weights.doubled_rooks,
               [&](Details& details) {
                 details.Squares(Bit(rook) | pair);
                 details.Add(SquaresClaim(ClaimKind::kDoubledRooks, side,
                                          Bit(rook) | pair));
               });
    }
  }
  for (const Square rook : Each(rooks & facts.SeventhRank(side))) {
    sink.Add(
        TermId::kSeventhRank, side, weights.rook_seventh,
        [&](Details& details) {
          details.Squares(Bit(rook));
          details.Add(SquaresClaim(ClaimKind::kSeventhRank, side, Bit(rook)));
        });
  }
  for (const Square pawn : Each(facts.Pawns(side).passed)) {
    const Bitboard behind = FileMask(FileOf(pawn)) & rooks;
    if (behind == 0) continue;
    const Bitboard helper = RooksBehind(facts, side, side, pawn);
    if (helper == 0) continue;
    sink.Add(TermId::kRookBehindPasser, side, weights.rook_behind_passer,
             [&](Details& details) {
               details.Squares(helper | Bit(pawn));
               details.Add(SquaresClaim(ClaimKind::kRookBehind, side, helper,
                                        Bit(pawn)));
             });
  }
}

}  // namespace

template <class Sink>
void AddRooks(const Facts& facts, const Weights& weights, Sink& sink) {
  for (const Side side : kSides) AddSide(facts, weights, side, sink);
}

ASSAY_INSTANTIATE_THEME(AddRooks);

}  // namespace assay
