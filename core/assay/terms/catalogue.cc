// The catalogue's texts. One row a term, in the order of TermId.
#include <array>

#include "assay/terms/term.h"

namespace assay {
namespace {

constexpr std::string_view kOwnReasoning = "own reasoning";
constexpr std::string_view kKaufman =
    "L. Kaufman, The Evaluation of Material Imbalances, Chess Life, March 1999";
constexpr std::string_view kMeasured =
    "common practice; size measured on game results";

const std::array<TermInfo, kTerms>& Catalogue() {
  static const auto& catalogue = *new std::array<TermInfo, kTerms>{{
      {TermId::kMaterial,
       "material",
       Theme::kMaterial,
       "Material",
       "Pieces or pawns of one kind that a side has more of than its opponent.",
       "More force does more of everything. A kind is counted only where the "
       "sides differ in it.",
       kKaufman,
       &Weights::pawn,
       {}},
      {TermId::kKnightPawns,
       "knight_pawns",
       Theme::kMaterial,
       "Knights with many pawns",
       "The side whose knights gain more from the number of its own pawns: a "
       "sixteenth of a pawn for each knight and each own pawn above five.",
       "Knights need pawns that give them squares; on an empty board they are "
       "slow.",
       kKaufman,
       &Weights::knight_pawns,
       {}},
      {TermId::kRookPawns,
       "rook_pawns",
       Theme::kMaterial,
       "Rooks with few pawns",
       "The side whose rooks suffer less from the number of its own pawns: an "
       "eighth of a pawn off for each rook and each own pawn above five.",
       "Rooks need open lines, which own pawns close.",
       kKaufman,
       &Weights::rook_pawns,
       {}},
      {TermId::kBishopPair,
       "bishop_pair",
       Theme::kMaterial,
       "Bishop pair",
       "A side has bishops on both square colours.",
       "Together they reach every square. Less for each ram on the c- to "
       "f-files, more as pawns go and where a pawn break can still open the "
       "centre.",
       kKaufman,
       &Weights::bishop_pair,
       {92, 93}},
      {TermId::kDoubledPawns,
       "doubled_pawns",
       Theme::kPawns,
       "Doubled pawns",
       "Two or more own pawns on one file.",
       "They cannot guard each other, and one holds up the other. Worse "
       "without neighbours and on a file open to enemy rooks; less bad where a "
       "pawn break can undouble them.",
       kMeasured,
       &Weights::doubled_pawns,
       {80, 81, 78, 79}},
      {TermId::kIsolatedPawn,
       "isolated_pawn",
       Theme::kPawns,
       "Isolated pawn",
       "A pawn with no own pawn on the files next to it.",
       "Only pieces can guard it, and the square ahead of it is the "
       "opponent's. Worse on a file that enemy rooks can use.",
       kMeasured,
       &Weights::isolated_pawn,
       {80, 81, 78, 79}},
      {TermId::kBackwardPawn,
       "backward_pawn",
       Theme::kPawns,
       "Backward pawn",
       "A pawn left behind its neighbours whose stop square an enemy pawn "
       "attacks.",
       "It cannot safely step up beside them. A weakness above all on a file "
       "half-open for the opponent.",
       kMeasured,
       &Weights::backward_pawn,
       {80, 81, 78, 79}},
      {TermId::kPassedPawn,
       "passed_pawn",
       Theme::kPawns,
       "Passed pawn",
       "A pawn that no enemy pawn can stop or capture on its way.",
       "It ties pieces down and may become a queen. More with every step, "
       "guarded by a pawn, and in the ending; less while a piece blocks it.",
       kMeasured,
       &Weights::passed_rank4,
       {82, 83, 84, 85}},
      {TermId::kScope,
       "scope",
       Theme::kPieces,
       "Scope",
       "A piece has more or fewer squares than is usual for its kind that hold "
       "no own piece and that no enemy pawn guards.",
       "A piece is worth what it can do. Squares guarded by enemy pawns are no "
       "use to it.",
       kMeasured,
       &Weights::knight_scope,
       {104, 105}},
      {TermId::kKnightSquareTaken,
       "knight_square_taken",
       Theme::kPieces,
       "Knight's square taken",
       "An own pawn stands on c3 or f3 (c6 or f6) while the knight of that "
       "wing "
       "is at home.",
       "The knight must develop to a lesser square.",
       kOwnReasoning,
       &Weights::knight_square_taken,
       {86, 87}},
      {TermId::kShelter,
       "shelter",
       Theme::kKing,
       "Holes in the shelter",
       "Files at the king without an own pawn within two ranks ahead of it.",
       "Where no pawn stands, pieces come in. In proportion to the opponent's "
       "queens and rooks.",
       kMeasured,
       &Weights::shelter_gap,
       {70, 71}},
      {TermId::kFlankPawnMoved,
       "flank_pawn_moved",
       Theme::kKing,
       "Flank pawn moved beside the king",
       "A pawn of the wing where the king stands has left its second rank.",
       "A pawn's move cannot be taken back: squares beside the king lose their "
       "guard for good.",
       kMeasured,
       &Weights::flank_pawn_moved,
       {70, 71}},
      {TermId::kDiagonalToKing,
       "diagonal_to_king",
       Theme::kKing,
       "Diagonal open to the king",
       "Two or more empty squares in a row on a diagonal from the king, and an "
       "enemy queen or bishop that moves on their colour.",
       "Checks and pins come along it. More where the piece can enter it on "
       "its next move.",
       kMeasured,
       &Weights::diagonal_to_king,
       {70, 71}},
      {TermId::kFileToKing,
       "file_to_king",
       Theme::kKing,
       "File open to the king",
       "A file at or next to the king that is open to an opponent with a rook "
       "or queen, or half-open for it with such a piece on it.",
       "Heavy pieces attack along it, the more so where one already stands on "
       "it.",
       kMeasured,
       &Weights::file_to_king_open,
       {70, 71}},
      {TermId::kSpace,
       "space",
       Theme::kSpaceAndCentre,
       "Space",
       "The side with more safe squares behind its foremost pawns.",
       "Pieces need room, the more of them the more; it is worth less as minor "
       "pieces leave the board.",
       kMeasured,
       &Weights::space,
       {24, 25, 26, 27, 28, 29}},
      {TermId::kTempo,
       "tempo",
       Theme::kTime,
       "The move",
       "The side that is to move.",
       "To act first is worth a little.",
       kMeasured,
       &Weights::tempo,
       {36, 37}},
      {TermId::kDeadPosition,
       "dead_position",
       Theme::kEndings,
       "Dead position",
       "Neither side can mate by any sequence of moves with what is left.",
       "The game is over, drawn: whatever else was counted is taken back.",
       "FIDE Laws of Chess 5.2.2 (number from memory)",
       nullptr,
       {10}},
  }};
  return catalogue;
}

}  // namespace

std::string_view Name(Theme theme) {
  constexpr std::string_view kNames[] = {
      "material",         "pawns", "pieces",  "king",
      "space and centre", "time",  "endings", "plans"};
  return kNames[static_cast<int>(theme)];
}

const TermInfo& Info(TermId id) { return Catalogue()[Index(id)]; }

}  // namespace assay
