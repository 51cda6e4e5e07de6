#include "tests/support/claims.h"

#include <algorithm>

#include "assay/facts/claim_lists.h"
#include "tests/support/from_pieces.h"
#include "tests/support/printers.h"

namespace assay {
namespace testing_support {
namespace {

bool SquaresAreInOrder(ClaimKind kind) {
  return kind == ClaimKind::kLeverMove || kind == ClaimKind::kFlankPawnMoved ||
         kind == ClaimKind::kDiagonalOpen || kind == ClaimKind::kOpposition;
}

bool OthersAreInOrder(ClaimKind kind) { return kind == ClaimKind::kPinned; }

std::string SquaresOf(const SquareList& squares, bool keep_order) {
  const Bitboard set = squares.ToSet();
  if (set != 0 && set == FileMask(FileOf(squares[0]))) {
    return std::string(1, static_cast<char>('a' + FileOf(squares[0]))) +
           "-file ";
  }
  std::string text;
  if (keep_order) {
    for (const Square square : squares) text += ToString(square) + ' ';
  } else {
    for (const Square square : Each(set)) text += ToString(square) + ' ';
  }
  return text;
}

template <class Map>
Claim Mapped(const Claim& claim, Map map) {
  Claim result = claim;
  result.squares = {};
  result.others = {};
  for (const Square square : claim.squares) result.squares.Add(map(square));
  for (const Square square : claim.others) result.others.Add(map(square));
  return result;
}

std::vector<std::string> SortedTexts(const std::vector<Claim>& claims) {
  std::vector<std::string> texts;
  for (const Claim& claim : claims) texts.push_back(TextOf(claim));
  std::sort(texts.begin(), texts.end());
  return texts;
}

std::vector<Claim> Select(const std::vector<Claim>& claims, ClaimKind kind,
                          PieceKind piece) {
  std::vector<Claim> selected;
  for (const Claim& claim : claims) {
    if (claim.kind != kind) continue;
    if (piece != PieceKind::kNone && claim.piece != piece) continue;
    selected.push_back(claim);
  }
  return selected;
}

std::vector<Claim> ClaimsOf(const Position& position, const ClaimRow& row) {
  return Select(AllClaims(Facts(position)), row.kind, row.piece);
}

}  // namespace

std::string TextOf(const Claim& claim) {
  std::string text;
  if (claim.has_side) text += std::string(Name(claim.side)) + ' ';
  if (claim.piece != PieceKind::kNone) {
    text += std::string(Name(claim.piece)) + ' ';
  }
  text += SquaresOf(claim.squares, SquaresAreInOrder(claim.kind));
  if (!claim.others.empty()) {
    text += "/ " + SquaresOf(claim.others, OthersAreInOrder(claim.kind));
  }
  if (claim.other_count != 0) {
    text += "(" + std::to_string(claim.count) + ", " +
            std::to_string(claim.other_count) + ") ";
  } else if (claim.count != 0) {
    text += "(" + std::to_string(claim.count) + ") ";
  }
  if (text.empty()) return "holds";
  text.pop_back();
  return text;
}

Claim SwapColours(const Claim& claim) {
  Claim swapped = Mapped(claim, FlipRank);
  if (claim.has_side) {
    swapped.side = Other(claim.side);
  } else if (claim.kind == ClaimKind::kCentreClosed ||
             claim.kind == ClaimKind::kCentreTension ||
             claim.kind == ClaimKind::kStructure) {
    // White's pawns come first.
    std::swap(swapped.squares, swapped.others);
  }
  return swapped;
}

Claim MirrorFiles(const Claim& claim) { return Mapped(claim, FlipFile); }

bool DependsOnWing(ClaimKind kind) {
  return kind == ClaimKind::kEarlyQueen || kind == ClaimKind::kCastled ||
         kind == ClaimKind::kUncastled || kind == ClaimKind::kStructure;
}

std::vector<std::string> TextsOf(const std::vector<Claim>& claims,
                                 ClaimKind kind, PieceKind piece) {
  return SortedTexts(Select(claims, kind, piece));
}

std::vector<std::string> Parts(const std::string& text) {
  std::vector<std::string> parts;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find("; ", at), text.size());
    parts.push_back(text.substr(at, end - at));
    at = end + 2;
  }
  std::sort(parts.begin(), parts.end());
  return parts;
}

void ExpectClaims(const ClaimRow& row) {
  const Position position = FromPieces(row.position);
  const std::vector<Claim> claims = ClaimsOf(position, row);
  EXPECT_EQ(SortedTexts(claims), Parts(row.claims))
      << ::testing::PrintToString(position);
  std::vector<Claim> swapped;
  std::vector<Claim> mirrored;
  for (const Claim& claim : claims) {
    swapped.push_back(SwapColours(claim));
    mirrored.push_back(MirrorFiles(claim));
  }
  EXPECT_EQ(SortedTexts(ClaimsOf(SwapColours(position), row)),
            SortedTexts(swapped))
      << "with the colours swapped";
  if (DependsOnWing(row.kind)) return;
  EXPECT_EQ(SortedTexts(ClaimsOf(MirrorFiles(position), row)),
            SortedTexts(mirrored))
      << "on the other wing";
}

}  // namespace testing_support
}  // namespace assay
