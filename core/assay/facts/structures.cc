#include "assay/facts/structures.h"

#include <iterator>
#include <string_view>

#include "assay/facts/claim_lists.h"
#include "assay/facts/claim_makers.h"
#include "assay/facts/kings.h"

namespace assay {
namespace {

// Common names of the trade.
constexpr const char* kNames[kPawnStructures] = {
    "",
    "hedgehog",
    "Maroczy bind",
    "Dragon structure",
    "hole in front of a backward d-pawn",
    "small centre",
    "doubled c-pawns in a closed centre",
    "closed Benoni",
    "King's Indian chain",
    "Spanish chain",
    "French chain",
    "French chain without c-pawns",
    "stone wall",
    "modern Benoni",
    "Carlsbad structure",
    "isolated queen's pawn",
    "hanging pawns",
    "isolated pawn couple",
    "Caro-Kann structure",
    "open d-file with blocked e-pawns",
    "exchange Ruy Lopez",
    "exchange French",
    "doubled c-pawns",
    "two-pawn centre",
    "three pawns against two on one wing",
    "opposite castling",
    "symmetrical pawns",
    "backward pawn on a half-open file",
};

// What a rule asks of one side's pawns, as it is written in the table:
//   d4      a pawn there
//   c2/c3   a pawn on one of these squares, or on more
//   =d4     a pawn there, and no other on its file
//   !c      no pawn on the file
//   !c5     no pawn there
struct PawnRule {
  static constexpr int kChoices = 4;
  Bitboard all = 0;
  Bitboard choices[kChoices] = {};
  int size = 0;
  Bitboard none = 0;

  bool Holds(Bitboard pawns) const {
    if ((pawns & all) != all || (pawns & none) != 0) return false;
    for (int i = 0; i < size; ++i) {
      if ((pawns & choices[i]) == 0) return false;
    }
    return true;
  }
  // The pawns that the rule is about.
  Bitboard Named() const {
    Bitboard named = all;
    for (int i = 0; i < size; ++i) named |= choices[i];
    return named;
  }
};

constexpr Square SquareAt(std::string_view word, std::size_t at) {
  return MakeSquare(word[at] - 'a', word[at + 1] - '1');
}

constexpr void AddWord(std::string_view word, PawnRule& rule) {
  if (word[0] == '!') {
    rule.none |=
        word.size() == 2 ? FileMask(word[1] - 'a') : Bit(SquareAt(word, 1));
  } else if (word[0] == '=') {
    const Square square = SquareAt(word, 1);
    rule.all |= Bit(square);
    rule.none |= FileMask(FileOf(square)) & ~Bit(square);
  } else if (word.size() == 2) {
    rule.all |= Bit(SquareAt(word, 0));
  } else {
    for (std::size_t at = 0; at < word.size(); at += 3) {
      rule.choices[rule.size] |= Bit(SquareAt(word, at));
    }
    ++rule.size;
  }
}

constexpr PawnRule Pawns(std::string_view text) {
  PawnRule rule;
  while (!text.empty()) {
    const std::size_t space = text.find(' ');
    AddWord(text.substr(0, space), rule);
    if (space == std::string_view::npos) break;
    text.remove_prefix(space + 1);
  }
  return rule;
}

// Both sides as the owner sees them, its own pawns going up the board.
struct Pattern {
  PawnStructure structure;
  PawnRule own;
  PawnRule others;
  bool shared = false;  // the same from both sides
};

// Skeletons as the handbooks of pawn structure draw them (Kmoch 1959, Soltis
// 1976, Flores Rios 2015), less the pawns that do not define them. In the order
// of the enumeration.
constexpr Pattern kPatterns[] = {
    {PawnStructure::kHedgehog, Pawns("a3 b3 d3 e3 !c"),
     Pawns("c5 e5/e6/e7 !d")},
    {PawnStructure::kBind, Pawns("=c4 e4 !d"), Pawns("d6/d7 e6/e7 !c")},
    {PawnStructure::kDragon, Pawns("d3 e2 g3 !c"), Pawns("e5 c6/c7 !d")},
    {PawnStructure::kBackwardBehindHole, Pawns("d3 =e4 !c"), Pawns("e5 !d")},
    {PawnStructure::kSmallCentre, Pawns("d3 e3 !c"), Pawns("e5 c6/c7 !d")},
    {PawnStructure::kClosedBenoni, Pawns("c4 d5 e4"), Pawns("c5 d6 e5")},
    {PawnStructure::kKingsIndianChain, Pawns("c4/c5 d5 e4"),
     Pawns("c6/c7 d6 e5")},
    {PawnStructure::kSpanishChain, Pawns("c2/c3 !c4 d5 e4"),
     Pawns("b4/b5 c4/c5/c7 d6 e5")},
    {PawnStructure::kFrenchChain, Pawns("c2/c3 d4 e5"), Pawns("d5 e6")},
    {PawnStructure::kFrenchChainWithoutCPawns, Pawns("d4 e5 !c"),
     Pawns("d5 e6 !c")},
    {PawnStructure::kStoneWall, Pawns("c2/c3 d4 e3 f4"), Pawns("d5")},
    {PawnStructure::kBenoniMajority, Pawns("c4 d3 !e"),
     Pawns("d4 e5/e6/e7 !c")},
    {PawnStructure::kMinorityAttack, Pawns("b2/b3/b4/b5 =d4 e3 !c"),
     Pawns("b5/b6/b7 =c6 =d5 !e")},
    {PawnStructure::kIsolatedQueensPawn, Pawns("=d4 !c !e"),
     Pawns("c6/c7/e6/e7 !d !c5 !e5")},
    // Neither is passed, as in HANGING_PAIR.
    {PawnStructure::kHangingPawns, Pawns("=c4 =d4 !b !e"),
     Pawns("b5/b6/b7 e5/e6/e7 !c !d")},
    {PawnStructure::kHangingPawns, Pawns("=c4 =d5 !b !e"),
     Pawns("b5/b6/b7 e6/e7 !c !d")},
    {PawnStructure::kHangingPawns, Pawns("=c5 =d4 !b !e"),
     Pawns("b6/b7 e5/e6/e7 !c !d")},
    {PawnStructure::kIsolatedCouple, Pawns("=c3 =d4 !b !e"),
     Pawns("b4/b5/b6/b7 e5/e6/e7 !c !d")},
    {PawnStructure::kCaroSlav, Pawns("d4 !e"), Pawns("c6 e6 !d")},
    {PawnStructure::kOpenDFile, Pawns("=c2 e4 !d"), Pawns("=c6 e5 !d")},
    {PawnStructure::kOpenDFile, Pawns("=c3 e4 !d"), Pawns("=c6 e5 !d"), true},
    {PawnStructure::kExchangeFrench, Pawns("c2/c3 d4 !e"), Pawns("c6/c7 d5 !e"),
     true},
    {PawnStructure::kTwoPawnCentre, Pawns("d4 e4"), Pawns("e6/e7 !e5 !d")},
    {PawnStructure::kTwoPawnCentre, Pawns("d4 e4"), Pawns("d6/d7 !d5 !e")},
};

constexpr Bitboard kFilesEToH =
    FileMask(4) | FileMask(5) | FileMask(6) | FileMask(7);

// Both sides' pawns seen from one.
struct View {
  Bitboard own;
  Bitboard others;
};

class Finder {
 public:
  explicit Finder(const Facts& facts) : facts_(facts) {
    const Bitboard white = facts.Pawns(Side::kWhite).pawns;
    const Bitboard black = facts.Pawns(Side::kBlack).pawns;
    views_[Index(Side::kWhite)] = {white, black};
    views_[Index(Side::kBlack)] = {FlipRanks(black), FlipRanks(white)};
    order_[0] = facts.position().side_to_move();
    order_[1] = Other(order_[0]);
  }

  StructureList Find() {
    const Pattern* pattern = std::begin(kPatterns);
    for (int number = 1; number < kPawnStructures; ++number) {
      const auto structure = static_cast<PawnStructure>(number);
      const Pattern* const first = pattern;
      while (pattern != std::end(kPatterns) &&
             pattern->structure == structure) {
        ++pattern;
      }
      if (first == pattern) AddByItsFunction(structure);
      for (const Side side : order_) AddFirst(first, pattern, side);
    }
    return list_;
  }

 private:
  // The first of a structure's patterns that holds for the side.
  void AddFirst(const Pattern* pattern, const Pattern* end, Side side) {
    const View& view = views_[Index(side)];
    for (; pattern != end; ++pattern) {
      if (pattern->shared && side == Side::kBlack) continue;
      if (pattern->own.Holds(view.own) && pattern->others.Holds(view.others)) {
        const Bitboard own = view.own & pattern->own.Named();
        const Bitboard others = view.others & pattern->others.Named();
        const bool flip = side == Side::kBlack;
        list_.Add({pattern->structure, pattern->shared, side,
                   flip ? FlipRanks(own) : own,
                   flip ? FlipRanks(others) : others});
        return;
      }
    }
  }

  void AddByItsFunction(PawnStructure structure) {
    switch (structure) {
      case PawnStructure::kSymmetrical:
        return AddSymmetrical();
      case PawnStructure::kOppositeCastling:
        return AddOppositeCastling();
      default:
        break;
    }
    for (const Side side : order_) {
      switch (structure) {
        case PawnStructure::kDoubledCPawnsClosed:
        case PawnStructure::kDoubledCPawns:
          AddDoubledCPawns(structure, side);
          break;
        case PawnStructure::kExchangeRuyLopez:
          AddExchangeRuyLopez(side);
          break;
        case PawnStructure::kThreeAgainstTwo:
          AddThreeAgainstTwo(side);
          break;
        case PawnStructure::kBackwardPawn:
          AddBackwardPawns(side);
          break;
        default:
          break;
      }
    }
  }

  Bitboard PawnsOf(Side side) const { return facts_.Pawns(side).pawns; }

  // Two pawns on the c-file and none on the b-file, as after a capture towards
  // the centre, beside a d-pawn.
  void AddDoubledCPawns(PawnStructure structure, Side side) {
    const bool closed = facts_.centre() == Centre::kClosed;
    if (closed != (structure == PawnStructure::kDoubledCPawnsClosed)) return;
    const Bitboard own = PawnsOf(side);
    const Bitboard d_pawns = own & FileMask(3);
    if (facts_.centre() == Centre::kOpen || (own & FileMask(1)) != 0 ||
        PopCount(own & FileMask(2)) != 2 || d_pawns == 0) {
      return;
    }
    list_.Add({structure, false, side, (own & FileMask(2)) | d_pawns, 0});
  }

  // The other side has taken on its c-file and has no pawn left on d and e; the
  // owner has one pawn more on files e to h for it.
  void AddExchangeRuyLopez(Side side) {
    static constexpr PawnRule kOwn = Pawns("c2/c3/c4 e4/e5 !d");
    static constexpr PawnRule kOthers = Pawns("c5/c6/c7 !d !e");
    const View& view = views_[Index(side)];
    if (!kOwn.Holds(view.own) || !kOthers.Holds(view.others)) return;
    const Bitboard own = PawnsOf(side);
    const Bitboard others = PawnsOf(Other(side));
    if (PopCount(others & FileMask(2)) != 2 ||
        PopCount(own & kFilesEToH) != PopCount(others & kFilesEToH) + 1) {
      return;
    }
    constexpr Bitboard kFiles = FileMask(2) | kFilesEToH;
    list_.Add({PawnStructure::kExchangeRuyLopez, false, side, own & kFiles,
               others & kFiles});
  }

  // No other pawns are left, and these stand on one half of the board.
  void AddThreeAgainstTwo(Side side) {
    const Bitboard own = PawnsOf(side);
    const Bitboard others = PawnsOf(Other(side));
    const Bitboard right = (own | others) & kFilesEToH;
    if (PopCount(own) == 3 && PopCount(others) == 2 &&
        (right == 0 || right == (own | others))) {
      list_.Add({PawnStructure::kThreeAgainstTwo, false, side, own, others});
    }
  }

  // Backward, and attackable along the file.
  void AddBackwardPawns(Side side) {
    const Bitboard pawns =
        facts_.Pawns(side).backward & facts_.HalfOpenFiles(Other(side));
    if (pawns == 0) return;
    const Bitboard guards = PawnAttacks(side, Forward(side, pawns));
    list_.Add({PawnStructure::kBackwardPawn, false, side, pawns,
               PawnsOf(Other(side)) & guards});
  }

  // With the queens on: without them nobody storms a king.
  void AddOppositeCastling() {
    if (!IsCastled(facts_, Side::kWhite) || !IsCastled(facts_, Side::kBlack) ||
        facts_.Own(Side::kWhite, PieceKind::kQueen) == 0 ||
        facts_.Own(Side::kBlack, PieceKind::kQueen) == 0) {
      return;
    }
    const Bitboard white = facts_.Own(Side::kWhite, PieceKind::kKing);
    const Bitboard black = facts_.Own(Side::kBlack, PieceKind::kKing);
    constexpr Bitboard kFilesAToD = ~kFilesEToH;
    if (((white & kFilesAToD) == 0) == ((black & kFilesAToD) == 0)) return;
    list_.Add(
        {PawnStructure::kOppositeCastling, true, Side::kWhite, white, black});
  }

  // Five to seven files with one pawn of each side, the others with none, and
  // those of files c to f as far up the board as their counterparts.
  void AddSymmetrical() {
    const View& view = views_[Index(Side::kWhite)];
    const PawnFacts& white = facts_.Pawns(Side::kWhite);
    const PawnFacts& black = facts_.Pawns(Side::kBlack);
    if (white.files != black.files || white.files == kAllSquares ||
        PopCount(white.pawns) < 5 || (white.doubled | black.doubled) != 0 ||
        (view.own & Facts::kCentreFiles) !=
            (FlipRanks(view.others) & Facts::kCentreFiles)) {
      return;
    }
    list_.Add({PawnStructure::kSymmetrical, true, Side::kWhite, white.pawns,
               black.pawns});
  }

  const Facts& facts_;
  View views_[2];
  Side order_[2];
  StructureList list_;
};

}  // namespace

const char* Name(PawnStructure structure) {
  return kNames[static_cast<int>(structure)];
}

Claim StructureClaim(const NamedStructure& found) {
  Claim claim =
      SquaresClaim(ClaimKind::kStructure, found.owner, found.own, found.others);
  claim.has_side = !found.shared;
  claim.count = static_cast<int>(found.structure);
  return claim;
}

void AddStructureClaims(const Facts& facts, std::vector<Claim>& claims) {
  for (const NamedStructure& found : FindStructures(facts)) {
    claims.push_back(StructureClaim(found));
  }
}

StructureList FindStructures(const Facts& facts) {
  return Finder(facts).Find();
}

}  // namespace assay
