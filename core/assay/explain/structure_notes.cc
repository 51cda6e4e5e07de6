#include "assay/explain/structure_notes.h"

#include <array>
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
Message PawnsByFile(Bitboard pawns) {
  std::vector<Message> names;
  for (int file = 0; file < 8; ++file) {
    for (const Square square : Each(pawns & FileMask(file))) {
      names.push_back(Say("square", square));
    }
  }
  return And(std::move(names));
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
  Message Shape() {
    switch (found_.structure) {
      case PawnStructure::kHedgehog:
        return Faced("shape.hedgehog");
      case PawnStructure::kBind: {
        const Square held = Relative(owner_, kD5);
        Add(ControlClaim(facts_, owner_, held));
        return Say("shape.bind", owner_, PawnsByFile(found_.own), held);
      }
      case PawnStructure::kDragon:
        return Faced("shape.dragon");
      case PawnStructure::kBackwardBehindHole:
        return BackwardBehindHole();
      case PawnStructure::kSmallCentre:
        return Faced("shape.small_centre");
      case PawnStructure::kDoubledCPawnsClosed:
        Add(CentreClaim(facts_));
        return DoubledCPawns(true);
      case PawnStructure::kDoubledCPawns:
        return DoubledCPawns(false);
      case PawnStructure::kClosedBenoni:
        return Faced("shape.closed_benoni");
      case PawnStructure::kKingsIndianChain:
        return Faced("shape.kings_indian_chain");
      case PawnStructure::kSpanishChain:
        return Faced("shape.spanish_chain");
      case PawnStructure::kFrenchChain:
        return Faced("shape.french_chain");
      case PawnStructure::kFrenchChainWithoutCPawns:
        return Faced("shape.french_chain_without_c");
      case PawnStructure::kStoneWall:
        return Faced("shape.stone_wall");
      case PawnStructure::kBenoniMajority:
        return Faced("shape.modern_benoni");
      case PawnStructure::kMinorityAttack:
        return Carlsbad();
      case PawnStructure::kIsolatedQueensPawn:
        Add(SquaresClaim(ClaimKind::kIsolated, owner_, found_.own));
        return Faced("shape.isolated_queens_pawn");
      case PawnStructure::kHangingPawns:
        Add(SquaresClaim(ClaimKind::kHangingPair, owner_, found_.own));
        return Faced("shape.hanging_pawns");
      case PawnStructure::kIsolatedCouple:
        return Faced("shape.isolated_couple");
      case PawnStructure::kCaroSlav:
        return Faced("shape.caro_slav");
      case PawnStructure::kOpenDFile:
        Add(OpenFileClaim(3));
        return Faced("shape.open_d_file");
      case PawnStructure::kExchangeRuyLopez:
        return ExchangeRuyLopez();
      case PawnStructure::kExchangeFrench:
        return Faced("shape.exchange_french");
      case PawnStructure::kTwoPawnCentre:
        return Faced("shape.two_pawn_centre");
      case PawnStructure::kThreeAgainstTwo:
        return Faced("shape.three_against_two");
      case PawnStructure::kOppositeCastling:
        Add(SquaresClaim(ClaimKind::kCastled, Side::kWhite, found_.own));
        Add(SquaresClaim(ClaimKind::kCastled, Side::kBlack, found_.others));
        return Faced("shape.opposite_castling");
      case PawnStructure::kSymmetrical:
        return Say("shape.symmetrical");
      case PawnStructure::kBackwardPawn:
        return BackwardPawns();
      case PawnStructure::kNone:
        break;
    }
    return {};
  }

  // What it gives each side; none where nothing that is taught is there.
  Message Use() {
    std::vector<Message> sides;
    for (const Side side : {owner_, other_}) {
      Message gains = Gains(side);
      if (!gains.empty()) sides.push_back(Say("has", side, std::move(gains)));
    }
    std::vector<Message> sentences;
    if (!sides.empty()) {
      sentences.push_back(Sentence(List("list.semicolon", std::move(sides))));
    }
    const Bitboard open = OpenFiles();
    if (open != 0) {
      sentences.push_back(Sentence(Say("shape.open_files", Files{open})));
    }
    return List("list.sentences", std::move(sentences));
  }

 private:
  void Add(const Claim& claim) { table_.Add(claim, refs_); }

  // The owner's pawns and those against them.
  Message Faced(std::string_view id) const {
    return Say(id, owner_, PawnsByFile(found_.own), other_,
               PawnsByFile(found_.others));
  }

  Message Gains(Side side) {
    std::vector<Message> gains;
    const Bitboard files = facts_.HalfOpenFiles(side) & FilesIn(lesson_.files);
    if (files != 0) {
      gains.push_back(Say("gain.half_open", Files{files}));
      for (const Square first : Each(files & kRank1)) {
        Add(HalfOpenFileClaim(side, FileOf(first)));
      }
    }
    for (Message gain : {UsableSquares(side), Breaks(side)}) {
      if (!gain.empty()) gains.push_back(std::move(gain));
    }
    return And(std::move(gains));
  }

  // Holes of the opponent that the handbooks point at.
  Message UsableSquares(Side side) {
    const Side enemy = Other(side);
    const Bitboard squares =
        facts_.Pawns(enemy).holes & ~facts_.Pawns(side).pawns &
        SquaresIn(side == owner_ ? lesson_.own_squares : lesson_.their_squares,
                  owner_);
    if (squares == 0) return {};
    for (const Square square : Each(squares)) {
      Add(SquaresClaim(ClaimKind::kHole, enemy, Bit(square)));
    }
    return Say("gain.squares", PawnsByFile(squares), enemy);
  }

  Message Breaks(Side side) {
    const Bitboard taught = SquaresIn(
        side == owner_ ? lesson_.own_breaks : lesson_.their_breaks, owner_);
    std::vector<Message> breaks;
    for (int file = 0; file < 8; ++file) {
      for (const LeverMove& move : FindLeverMoves(facts_, side)) {
        if (FileOf(move.to) != file || !Contains(taught, move.to)) continue;
        const Claim claim = LeverMoveClaim(side, move);
        Add(claim);
        breaks.push_back(Moves(BreakText(claim)));
      }
    }
    if (breaks.empty()) return {};
    return Say("gain.breaks", And(std::move(breaks)));
  }

  // Open files that the handbooks point at.
  Bitboard OpenFiles() {
    const Bitboard files = facts_.OpenFiles() & FilesIn(lesson_.files);
    for (const Square first : Each(files & kRank1)) {
      Add(OpenFileClaim(FileOf(first)));
    }
    return files;
  }

  Message BackwardBehindHole() {
    const Square hole = Relative(owner_, kD4);
    Add(SquaresClaim(ClaimKind::kHole, owner_, Bit(hole)));
    const Square pawn = Relative(owner_, kD3);
    Add(SquaresClaim(ClaimKind::kBackward, owner_, Bit(pawn)));
    Add(HalfOpenFileClaim(other_, 3));
    return Say("shape.backward_behind_hole", owner_, hole, pawn);
  }

  Message DoubledCPawns(bool closed) {
    Add(DoubledClaim(facts_, owner_, 2));
    return Say("shape.doubled_c_pawns", owner_,
               PawnsByFile(found_.own & FileMask(2)), closed);
  }

  Message Carlsbad() {
    constexpr Bitboard kQueenside = FileMask(0) | FileMask(1) | FileMask(2);
    const Bitboard own = facts_.Pawns(owner_).pawns & kQueenside;
    const Bitboard theirs = facts_.Pawns(other_).pawns & kQueenside;
    Message fewer;
    if (PopCount(own) < PopCount(theirs)) {
      Add(MajorityClaim(other_, theirs, PopCount(own)));
      fewer = Say("shape.fewer", PopCount(own), PopCount(theirs));
    }
    return Say("shape.carlsbad", owner_, PawnsByFile(found_.own), other_,
               PawnsByFile(found_.others), std::move(fewer));
  }

  Message ExchangeRuyLopez() {
    constexpr Bitboard kKingside =
        ~(FileMask(0) | FileMask(1) | FileMask(2) | FileMask(3));
    Add(DoubledClaim(facts_, other_, 2));
    return Say("shape.exchange_ruy_lopez", owner_,
               PopCount(found_.own & kKingside),
               PopCount(found_.others & kKingside), other_,
               PawnsByFile(found_.others & FileMask(2)));
  }

  Message BackwardPawns() {
    for (const Square square : Each(found_.own)) {
      Add(SquaresClaim(ClaimKind::kBackward, owner_, Bit(square)));
      Add(HalfOpenFileClaim(other_, FileOf(square)));
    }
    return Say("shape.backward_pawns", owner_, PawnsByFile(found_.own), other_);
  }

  const Facts& facts_;
  const NamedStructure& found_;
  const Lesson& lesson_;
  const Side owner_;
  const Side other_;
  ClaimTable& table_;
  ClaimRefs& refs_;
};

constexpr std::array<const char*, kPawnStructures> kNames = {
    "",
    "structure.hedgehog",
    "structure.bind",
    "structure.dragon",
    "structure.backward_behind_hole",
    "structure.small_centre",
    "structure.doubled_c_pawns_closed",
    "structure.closed_benoni",
    "structure.kings_indian_chain",
    "structure.spanish_chain",
    "structure.french_chain",
    "structure.french_chain_without_c",
    "structure.stone_wall",
    "structure.benoni_majority",
    "structure.minority_attack",
    "structure.isolated_queens_pawn",
    "structure.hanging_pawns",
    "structure.isolated_couple",
    "structure.caro_slav",
    "structure.open_d_file",
    "structure.exchange_ruy_lopez",
    "structure.exchange_french",
    "structure.doubled_c_pawns",
    "structure.two_pawn_centre",
    "structure.three_against_two",
    "structure.opposite_castling",
    "structure.symmetrical",
    "structure.backward_pawn"};

// "isolated queen's pawn (White)".
Message NameWithOwner(const StructureList& list) {
  const NamedStructure& first = list[0];
  Message name = Say(kNames[static_cast<std::size_t>(first.structure)]);
  if (first.shared) return name;
  const bool both = list.size() > 1 && list[1].structure == first.structure;
  return both ? Say("structure.both", name)
              : Say("structure.owned", name, first.owner);
}

}  // namespace

Message CentreName(Centre centre) {
  constexpr std::string_view kCentres[] = {
      "centre_name.unresolved", "centre_name.open",    "centre_name.closed",
      "centre_name.fixed",      "centre_name.tension", "centre_name.mobile"};
  return Say(kCentres[static_cast<std::size_t>(centre)]);
}

Message StructureOrCentre(const Facts& facts) {
  const StructureList list = FindStructures(facts);
  if (list.empty()) return CentreName(facts.centre());
  return Say(kNames[static_cast<std::size_t>(list[0].structure)]);
}

void NameStructure(const Facts& facts, ClaimTable& table,
                   Structure& structure) {
  const StructureList list = FindStructures(facts);
  if (list.empty()) return;
  structure.name_said = NameWithOwner(list);
  for (const NamedStructure& found : list) {
    // Besides the first, the kings: they decide what the pawns are used for.
    if (found.structure != list[0].structure &&
        found.structure != PawnStructure::kOppositeCastling) {
      continue;
    }
    Teller teller(facts, found, table, structure.claims);
    structure.notes_said.push_back(Sentence(teller.Shape()));
    Message use = teller.Use();
    if (!use.empty()) structure.notes_said.push_back(std::move(use));
  }
}

}  // namespace assay
