#include "assay/explain/structure_notes.h"

#include <string_view>

#include "assay/explain/words.h"
#include "assay/facts/claim_makers.h"
#include "assay/facts/levers.h"
#include "assay/facts/structures.h"

namespace assay {
namespace {

// What the handbooks look at in a structure (Soltis 1976, Flores Rios 2015, as
// commonly retold): where each side breaks and which squares it may use, seen
// by the owner, and the files that matter.
struct Lesson {
  PawnStructure structure;
  std::string_view own_breaks;
  std::string_view their_breaks;
  std::string_view own_squares;
  std::string_view their_squares;
  std::string_view files = "cde";
};

constexpr Lesson kLessons[] = {
    {PawnStructure::kHedgehog, "b4 d4", "", "", ""},
    {PawnStructure::kBind, "c5 e5", "b5 d5 f5", "", "d4"},
    {PawnStructure::kDragon, "d4", "h4", "", ""},
    // The hole and the half-open file are told with the pawn.
    {PawnStructure::kBackwardBehindHole, "d4 f4", "f4", "", "", "c"},
    {PawnStructure::kSmallCentre, "d4", "e4 f4", "", ""},
    {PawnStructure::kDoubledCPawnsClosed, "f4", "f5", "", "", "bcde"},
    {PawnStructure::kClosedBenoni, "b4 f4", "b5 f5", "", "d4"},
    {PawnStructure::kKingsIndianChain, "c5 f4", "c6 f5", "", "d4"},
    {PawnStructure::kSpanishChain, "a4 c4 f4", "f5", "", ""},
    {PawnStructure::kFrenchChain, "c4 f5", "c5 f6", "d6", ""},
    {PawnStructure::kFrenchChainWithoutCPawns, "f5", "f6", "d6", ""},
    {PawnStructure::kStoneWall, "c4 f5", "c5 e5 g5", "", "e4"},
    {PawnStructure::kBenoniMajority, "b4 f4", "e4", "", ""},
    {PawnStructure::kMinorityAttack, "b5 e4", "c5 f4", "", ""},
    {PawnStructure::kIsolatedQueensPawn, "d5", "", "", "d5"},
    {PawnStructure::kHangingPawns, "c5 d5", "b5 e5", "", "c5 d5", "bcde"},
    {PawnStructure::kIsolatedCouple, "d5", "", "", "c4", "bcde"},
    {PawnStructure::kCaroSlav, "d5", "c5 e5", "", ""},
    // The open file is told with the pawns.
    {PawnStructure::kOpenDFile, "f4", "f5", "d6", "d3", ""},
    {PawnStructure::kExchangeRuyLopez, "", "f5", "", "", "de"},
    {PawnStructure::kExchangeFrench, "c4", "c5", "", ""},
    {PawnStructure::kDoubledCPawns, "e4 f4", "c5 e5", "", "", "bcde"},
    {PawnStructure::kTwoPawnCentre, "d5 e5", "c5 d5 e5 f5", "", ""},
    {PawnStructure::kThreeAgainstTwo, "", "", "", "", ""},
    {PawnStructure::kOppositeCastling, "", "", "", "", ""},
    {PawnStructure::kSymmetrical, "", "", "", "", "abcdefgh"},
    {PawnStructure::kBackwardPawn, "", "", "", "", ""},
};

const Lesson& LessonOf(PawnStructure structure) {
  for (const Lesson& lesson : kLessons) {
    if (lesson.structure == structure) return lesson;
  }
  return kLessons[0];  // every structure has a lesson
}

// "c5 d5", seen by the side.
Bitboard SquaresIn(std::string_view text, Side side) {
  Bitboard squares = 0;
  for (std::size_t at = 0; at < text.size(); at += 3) {
    squares |= Bit(Relative(side, ParseSquare(text.substr(at, 2))));
  }
  return squares;
}

Bitboard FilesIn(std::string_view letters) {
  Bitboard files = 0;
  for (const char letter : letters) files |= FileMask(letter - 'a');
  return files;
}

// "c3, d4 and e5": from the a-file on, so that the order is the same with the
// colours swapped.
std::string PawnsText(Bitboard pawns) {
  std::vector<std::string> names;
  for (int file = 0; file < 8; ++file) {
    for (const Square square : Each(pawns & FileMask(file))) {
      names.push_back(ToString(square));
    }
  }
  return Join(names);
}

// Tells one structure of its owner's and the other side's view.
class Teller {
 public:
  Teller(const Facts& facts, const NamedStructure& found, ClaimTable& table,
         ClaimRefs& refs)
      : facts_(facts),
        found_(found),
        lesson_(LessonOf(found.structure)),
        owner_(found.owner),
        other_(Other(found.owner)),
        table_(table),
        refs_(refs) {
    Add(StructureClaim(found));
  }

  // What stands where.
  std::string Shape() {
    const std::string owner = Name(owner_);
    const std::string other = Name(other_);
    const std::string own = PawnsText(found_.own);
    const std::string theirs = PawnsText(found_.others);
    const std::string faced = " against " + other + "'s on " + theirs + ".";
    const std::string face = ": " + owner + "'s on " + own + " face " + other +
                             "'s on " + theirs + ".";
    switch (found_.structure) {
      case PawnStructure::kHedgehog:
        return owner + " has a hedgehog: pawns on " + own +
               ", with the c-pawn gone," + faced;
      case PawnStructure::kBind: {
        const Square held = Relative(owner_, kD5);
        Add(ControlClaim(facts_, owner_, held));
        return owner +
               " has a Maroczy bind: with the d-pawn gone, the pawns "
               "on " +
               own + " both guard " + ToString(held) + ".";
      }
      case PawnStructure::kDragon:
        return owner + " has the Dragon structure: pawns on " + own +
               ", with the c-pawn gone," + faced;
      case PawnStructure::kBackwardBehindHole:
        return BackwardBehindHole();
      case PawnStructure::kSmallCentre:
        return owner + " has a small centre: pawns on " + own +
               ", with the c-pawn gone," + faced;
      case PawnStructure::kDoubledCPawnsClosed:
        Add(CentreClaim(facts_));
        return DoubledCPawns() + ", and the centre is closed.";
      case PawnStructure::kDoubledCPawns:
        return DoubledCPawns() + ".";
      case PawnStructure::kClosedBenoni:
        return "The pawns make a closed Benoni" + face;
      case PawnStructure::kKingsIndianChain:
        return "The pawns make a King's Indian chain" + face;
      case PawnStructure::kSpanishChain:
        return "The pawns make a Spanish chain" + face;
      case PawnStructure::kFrenchChain:
        return owner + " has a French chain: pawns on " + own + faced;
      case PawnStructure::kFrenchChainWithoutCPawns:
        return owner + " has a French chain, with the c-pawns gone: pawns on " +
               own + faced;
      case PawnStructure::kStoneWall:
        return owner + " has a stone wall: pawns on " + own + faced;
      case PawnStructure::kBenoniMajority:
        return owner + " has a modern Benoni: pawns on " + own +
               ", with the e-pawn gone," + faced;
      case PawnStructure::kMinorityAttack:
        return Carlsbad();
      case PawnStructure::kIsolatedQueensPawn:
        Add(SquaresClaim(ClaimKind::kIsolated, owner_, found_.own));
        return owner + " has an isolated queen's pawn on " + own + faced;
      case PawnStructure::kHangingPawns:
        Add(SquaresClaim(ClaimKind::kHangingPair, owner_, found_.own));
        return owner + " has hanging pawns on " + own +
               ", with no pawn beside them to guard them.";
      case PawnStructure::kIsolatedCouple:
        return owner + " has an isolated pawn couple on " + own +
               ", with no pawn beside it on the b- or e-file.";
      case PawnStructure::kCaroSlav:
        return owner + " has a pawn on " + own + " and no e-pawn, " + other +
               " pawns on " + theirs + " and no d-pawn.";
      case PawnStructure::kOpenDFile:
        Add(OpenFileClaim(3));
        return "The d-file is open and the e-pawns hold each other" + face;
      case PawnStructure::kExchangeRuyLopez:
        return ExchangeRuyLopez();
      case PawnStructure::kExchangeFrench:
        return "The pawns are those of the exchange French" + face;
      case PawnStructure::kTwoPawnCentre:
        return owner + " has a centre of two pawns, " + own +
               ", against one, " + theirs + ".";
      case PawnStructure::kThreeAgainstTwo:
        return "Pawns are left on one wing only: " + owner + "'s on " + own +
               faced;
      case PawnStructure::kOppositeCastling:
        Add(SquaresClaim(ClaimKind::kCastled, Side::kWhite, found_.own));
        Add(SquaresClaim(ClaimKind::kCastled, Side::kBlack, found_.others));
        return "The kings are castled on opposite wings, White's on " + own +
               " and Black's on " + theirs + ", with the queens on the board.";
      case PawnStructure::kSymmetrical:
        return "The pawns are symmetrical: no file has pawns of one side only.";
      case PawnStructure::kBackwardPawn:
        return BackwardPawns();
      case PawnStructure::kNone:
        break;
    }
    return "";
  }

  // What it gives each side; empty where nothing that is taught is there.
  std::string Use() {
    std::vector<std::string> sides;
    for (const Side side : {owner_, other_}) {
      const std::string gains = Gains(side);
      if (!gains.empty()) {
        sides.push_back(std::string(Name(side)) + " has " + gains);
      }
    }
    std::string text;
    for (const std::string& side : sides) {
      if (!text.empty()) text += "; ";
      text += side;
    }
    if (!text.empty()) text += ".";
    const std::string open = OpenFiles();
    if (open.empty() || text.empty()) return text + open;
    return text + " " + open;
  }

 private:
  void Add(const Claim& claim) { table_.Add(claim, refs_); }

  std::string Gains(Side side) {
    std::vector<std::string> gains;
    const Bitboard files = facts_.HalfOpenFiles(side) & FilesIn(lesson_.files);
    if (files != 0) {
      gains.push_back("the half-open " + FilesText(files));
      for (const Square first : Each(files & kRank1)) {
        Add(HalfOpenFileClaim(side, FileOf(first)));
      }
    }
    const std::string squares = UsableSquares(side);
    if (!squares.empty()) gains.push_back(squares);
    const std::string breaks = Breaks(side);
    if (!breaks.empty()) gains.push_back(breaks);
    return Join(gains);
  }

  // Holes of the opponent that the handbooks point at.
  std::string UsableSquares(Side side) {
    const Side enemy = Other(side);
    const Bitboard squares =
        facts_.Pawns(enemy).holes & ~facts_.Pawns(side).pawns &
        SquaresIn(side == owner_ ? lesson_.own_squares : lesson_.their_squares,
                  owner_);
    if (squares == 0) return "";
    for (const Square square : Each(squares)) {
      Add(SquaresClaim(ClaimKind::kHole, enemy, Bit(square)));
    }
    const std::string pawn = enemy == Side::kWhite ? "white" : "black";
    return (HasMany(squares) ? "the squares " : "the square ") +
           PawnsText(squares) + " that no " + pawn + " pawn can attack";
  }

  std::string Breaks(Side side) {
    const Bitboard taught = SquaresIn(
        side == owner_ ? lesson_.own_breaks : lesson_.their_breaks, owner_);
    std::vector<std::string> breaks;
    for (int file = 0; file < 8; ++file) {
      for (const LeverMove& move : FindLeverMoves(facts_, side)) {
        if (FileOf(move.to) != file || !Contains(taught, move.to)) continue;
        const Claim claim = LeverMoveClaim(side, move);
        Add(claim);
        breaks.push_back(BreakText(claim));
      }
    }
    if (breaks.empty()) return "";
    return (breaks.size() == 1 ? "the break " : "the breaks ") + Join(breaks);
  }

  // "The c-file is open."
  std::string OpenFiles() {
    const Bitboard files = facts_.OpenFiles() & FilesIn(lesson_.files);
    if (files == 0) return "";
    for (const Square first : Each(files & kRank1)) {
      Add(OpenFileClaim(FileOf(first)));
    }
    return "The " + FilesText(files) +
           (HasMany(files & kRank1) ? " are open." : " is open.");
  }

  std::string BackwardBehindHole() {
    const Square hole = Relative(owner_, kD4);
    Add(SquaresClaim(ClaimKind::kHole, owner_, Bit(hole)));
    const Bitboard pawn = Bit(Relative(owner_, kD3));
    Add(SquaresClaim(ClaimKind::kBackward, owner_, pawn));
    Add(HalfOpenFileClaim(other_, 3));
    return std::string(Name(owner_)) + " has a hole on " + ToString(hole) +
           ": the pawn on " + PawnsText(pawn) +
           " behind it is backward on the half-open d-file.";
  }

  std::string DoubledCPawns() {
    Add(DoubledClaim(facts_, owner_, 2));
    return std::string(Name(owner_)) + " has doubled pawns on " +
           PawnsText(found_.own & FileMask(2)) + ", with the b-pawn gone";
  }

  std::string Carlsbad() {
    constexpr Bitboard kQueenside = FileMask(0) | FileMask(1) | FileMask(2);
    const std::string owner = Name(owner_);
    std::string text = owner + " has the Carlsbad structure: pawns on " +
                       PawnsText(found_.own) + ", with the c-pawn gone, " +
                       "against " + Name(other_) + "'s on " +
                       PawnsText(found_.others);
    const Bitboard own = facts_.Pawns(owner_).pawns & kQueenside;
    const Bitboard theirs = facts_.Pawns(other_).pawns & kQueenside;
    if (PopCount(own) < PopCount(theirs)) {
      Add(MajorityClaim(other_, theirs, PopCount(own)));
      text += "; on the queenside " + NumberText(PopCount(own)) + " pawn" +
              (HasMany(own) ? "s" : "") + " can advance against " +
              NumberText(PopCount(theirs));
    }
    return text + ".";
  }

  std::string ExchangeRuyLopez() {
    constexpr Bitboard kKingside =
        ~(FileMask(0) | FileMask(1) | FileMask(2) | FileMask(3));
    Add(DoubledClaim(facts_, other_, 2));
    return "The pawns are those of the exchange Ruy Lopez: on the kingside " +
           std::string(Name(owner_)) + " has " +
           NumberText(PopCount(found_.own & kKingside)) + " against " +
           NumberText(PopCount(found_.others & kKingside)) + ", and " +
           Name(other_) + "'s on " + PawnsText(found_.others & FileMask(2)) +
           " are doubled.";
  }

  std::string BackwardPawns() {
    for (const Square square : Each(found_.own)) {
      Add(SquaresClaim(ClaimKind::kBackward, owner_, Bit(square)));
      Add(HalfOpenFileClaim(other_, FileOf(square)));
    }
    const bool many = HasMany(found_.own);
    return std::string(Name(owner_)) + " has " +
           (many ? "backward pawns on " : "a backward pawn on ") +
           PawnsText(found_.own) + ", on " +
           (many ? "files half-open for " : "a file half-open for ") +
           Name(other_) + ".";
  }

  const Facts& facts_;
  const NamedStructure& found_;
  const Lesson& lesson_;
  const Side owner_;
  const Side other_;
  ClaimTable& table_;
  ClaimRefs& refs_;
};

// "isolated queen's pawn (White)".
std::string NameWithOwner(const StructureList& list) {
  const NamedStructure& first = list[0];
  std::string name = Name(first.structure);
  if (first.shared) return name;
  const bool both = list.size() > 1 && list[1].structure == first.structure;
  return name + " (" + (both ? "both sides" : Name(first.owner)) + ")";
}

}  // namespace

void NameStructure(const Facts& facts, ClaimTable& table,
                   Structure& structure) {
  const StructureList list = FindStructures(facts);
  if (list.empty()) return;
  structure.name = NameWithOwner(list);
  for (const NamedStructure& found : list) {
    // Besides the first, the kings: they decide what the pawns are used for.
    if (found.structure != list[0].structure &&
        found.structure != PawnStructure::kOppositeCastling) {
      continue;
    }
    Teller teller(facts, found, table, structure.claims);
    structure.notes.push_back(teller.Shape());
    const std::string use = teller.Use();
    if (!use.empty()) structure.notes.push_back(use);
  }
}

}  // namespace assay
