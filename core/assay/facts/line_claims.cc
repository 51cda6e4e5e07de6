// Claims about lines of moves.
#include "assay/facts/claim_makers.h"

namespace assay {

int MaterialBalance(const Position& position, Side side) {
  int balance = 0;
  for (const PieceKind kind : kAllKinds) {
    balance +=
        ExchangeValue(kind) * (PopCount(position.Pieces(side, kind)) -
                               PopCount(position.Pieces(Other(side), kind)));
  }
  return balance;
}

Claim MateInClaim(Side side, const std::vector<Move>& line) {
  Claim claim = SquaresClaim(ClaimKind::kMateIn, side, 0);
  claim.line = line;
  claim.count = static_cast<int>((line.size() + 1) / 2);
  return claim;
}

Claim LineClaim(const Position& position, Side side,
                const std::vector<Move>& line) {
  Claim claim = SquaresClaim(ClaimKind::kLine, side, 0);
  claim.line = line;
  const Position after = AfterLine(position, line);
  claim.count = MaterialBalance(after, side) - MaterialBalance(position, side);
  return claim;
}

}  // namespace assay
