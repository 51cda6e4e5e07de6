// Claims in tests: as short texts, and seen from the other side or wing.
#ifndef ASSAY_TESTS_SUPPORT_CLAIMS_H_
#define ASSAY_TESTS_SUPPORT_CLAIMS_H_

#include <string>
#include <vector>

#include "assay/facts/claim.h"
#include "assay/rules/position.h"
#include "tests/support/rows.h"

namespace assay {
namespace testing_support {

// "White pawn c3 c4 / d5 (2, 1)": side, piece, squares, others and counts, each
// where the claim has it. A count of 0 at the end is left out, all eight
// squares of a file are "c-file", and a claim that says no more than its kind
// is "holds". Squares come lowest first unless their order has a meaning.
std::string TextOf(const Claim& claim);

// What the same statement is of SwapColours(position) and
// MirrorFiles(position).
Claim SwapColours(const Claim& claim);
Claim MirrorFiles(const Claim& claim);

// Kinds whose definition names start squares, files or a wing: not the same on
// the other wing. MirrorFiles() takes castling rights away, too.
bool DependsOnWing(ClaimKind kind);

// The texts of claims of a kind, sorted; of one kind of piece where given.
std::vector<std::string> TextsOf(const std::vector<Claim>& claims,
                                 ClaimKind kind,
                                 PieceKind piece = PieceKind::kNone);

// "a; b; c" as its parts, sorted; none for "".
std::vector<std::string> Parts(const std::string& text);

// One row: all claims of a kind that hold in a position, "; " between them.
struct ClaimRow : Row {
  ClaimKind kind;
  const char* position;  // for FromPieces()
  const char* claims;
  PieceKind piece = PieceKind::kNone;  // only claims of this kind of piece
};

// Expects exactly the row's claims in its position, and the same seen from the
// other side and, unless the kind depends on it, on the other wing.
void ExpectClaims(const ClaimRow& row);

}  // namespace testing_support
}  // namespace assay

#endif  // ASSAY_TESTS_SUPPORT_CLAIMS_H_
