// A reason's two texts, by topic: the phrase for the summary and the sentence
// with squares.
#include <cstdlib>

#include "assay/explain/entry_text.h"
#include "assay/explain/group.h"
#include "assay/explain/words.h"
#include "assay/facts/kings.h"

namespace assay {
namespace {

// How many details a sentence names on each side before it gets dull.
constexpr std::size_t kMostDetails = 3;

std::vector<std::string> Phrases(
    const std::vector<const ExplainedEntry*>& entries) {
  std::vector<std::string> phrases;
  for (const ExplainedEntry* entry : entries) {
    if (phrases.size() == kMostDetails) break;
    phrases.push_back(entry->phrase);
  }
  return phrases;
}

// --- material ---

struct Surplus {
  std::vector<std::string> texts;  // heaviest kind first
  int pieces[kPieceKinds] = {};

  bool IsOnly(PieceKind kind) const {
    for (const PieceKind other : kAllKinds) {
      if (pieces[Index(other)] != (other == kind ? 1 : 0)) return false;
    }
    return true;
  }
  bool IsOneMinor() const {
    return IsOnly(PieceKind::kKnight) || IsOnly(PieceKind::kBishop);
  }
};

Surplus SurplusOf(const Group& group, Side side) {
  Surplus surplus;
  for (const ExplainedEntry* entry : group.entries) {
    if (entry->entry.term != TermId::kMaterial || entry->entry.side != side) {
      continue;
    }
    const Claim* claim = group.Find(*entry, ClaimKind::kMaterial);
    surplus.pieces[Index(claim->piece)] = claim->count - claim->other_count;
  }
  for (int kind = kPieceKinds - 1; kind >= 0; --kind) {
    const int count = surplus.pieces[kind];
    if (count > 0) {
      surplus.texts.push_back(CountText(count, static_cast<PieceKind>(kind)));
    }
  }
  return surplus;
}

std::string MaterialPhrase(const Group& group) {
  const Surplus own = SurplusOf(group, group.favours());
  const Surplus other = SurplusOf(group, Other(group.favours()));
  if (own.texts.empty()) return "the better of the material";
  if (other.texts.empty()) {
    return own.IsOnly(PieceKind::kPawn) ? "an extra pawn"
                                        : Join(own.texts) + " more";
  }
  return Join(own.texts) + " for " + Join(other.texts);
}

std::string MaterialSentence(const Group& group) {
  const std::string name = Name(group.favours());
  const Surplus own = SurplusOf(group, group.favours());
  const Surplus other = SurplusOf(group, Other(group.favours()));
  if (!own.texts.empty() && other.texts.empty()) {
    return name + " is " + Join(own.texts) + " up.";
  }
  if (own.IsOnly(PieceKind::kRook) && other.IsOneMinor()) {
    return name + " is the exchange up: a rook for " + other.texts[0] + ".";
  }
  return name + " has " + MaterialPhrase(group) + ".";
}

// --- what the number of pawns does for knights and rooks ---

// Kaufman's corrections count own pawns from here.
constexpr int kUsualPawns = 5;

// Whose knights or rooks the pawns speak of, and whether for good or ill.
struct PawnNumbers {
  PieceKind kind;
  Side owner;
  bool gains;
};

PawnNumbers PawnNumbersOf(const Group& group) {
  const ExplainedEntry* heaviest = group.Good(group.favours()).front();
  const PieceKind kind = heaviest->entry.term == TermId::kKnightPawns
                             ? PieceKind::kKnight
                             : PieceKind::kRook;
  const Side better = group.favours();
  const auto pieces = [&](Side side) {
    return PopCount(group.facts.Own(side, kind));
  };
  // The side with more of the pieces feels the pawns the more.
  const bool gains = pieces(better) >= pieces(Other(better));
  return {kind, gains ? better : Other(better), gains};
}

std::string PawnNumbersSentence(const Group& group) {
  const PawnNumbers numbers = PawnNumbersOf(group);
  const int pawns = PopCount(group.facts.Pawns(numbers.owner).pawns);
  const bool several = HasMany(group.facts.Own(numbers.owner, numbers.kind));
  std::string text = "With " + NumberText(pawns) + " own pawn" +
                     (pawns == 1 ? ", " : "s, ") + Name(numbers.owner) + "'s " +
                     Name(numbers.kind) + (several ? "s " : " ");
  text += several ? "have " : "has ";
  const std::string how_many = pawns > kUsualPawns ? "many"
                               : pawns > 0         ? "few"
                                                   : "no";
  if (numbers.kind == PieceKind::kKnight) {
    return text + how_many + " pawns to lean on.";
  }
  return text + how_many + " pawns in " + (several ? "their way." : "its way.");
}

// --- bishop pair ---

std::string BishopPairSentence(const Group& group) {
  const std::vector<const ExplainedEntry*> pairs = group.Good(group.favours());
  if (pairs.empty()) {  // by weights that make the pair a burden
    return std::string(Name(Other(group.favours()))) +
           "'s bishop pair is no asset here.";
  }
  std::string text =
      std::string(Name(group.favours())) + " has the bishop pair";
  std::vector<std::string> breaks;
  int rams = 0;
  for (const std::uint32_t ref : pairs.front()->claims) {
    const Claim& claim = group.claims[ref];
    if (claim.kind == ClaimKind::kRam) ++rams;
    if (claim.kind == ClaimKind::kLeverMove && breaks.size() < 2) {
      breaks.push_back(BreakText(claim));
    }
  }
  switch (group.facts.centre()) {
    case Centre::kOpen:
      return text + " in an open centre.";
    case Centre::kClosed:
      text += ", which a closed centre keeps quiet";
      break;
    default:
      if (rams == 0) return text + ", and nothing is locked in the centre.";
      text += ", though pawns are locked in the centre";
      break;
  }
  if (!breaks.empty()) {
    text += "; " + Join(breaks) + " could open it";
  }
  return text + ".";
}

// --- pawns ---

// A side's weak pawns, equal kinds said together: "doubled pawns on c6 and c7
// and isolated pawns on a7 and d5".
std::vector<std::string> WeakPawns(const Group& group, Side side) {
  std::vector<std::string> phrases;
  Bitboard said = 0;
  Bitboard isolated = 0;
  const std::vector<const ExplainedEntry*> weak = group.Bad(side);
  for (const ExplainedEntry* entry : weak) {
    if (entry->entry.term == TermId::kDoubledPawns) {
      phrases.push_back(entry->phrase);
      said |= entry->entry.squares;
    }
  }
  for (const ExplainedEntry* entry : weak) {
    if (entry->entry.term == TermId::kIsolatedPawn) {
      isolated |= entry->entry.squares & ~said;
    }
  }
  if (isolated != 0) {
    phrases.push_back(
        (HasMany(isolated) ? "isolated pawns on " : "an isolated pawn on ") +
        SquaresText(isolated));
  }
  Bitboard left_behind = 0;
  for (const ExplainedEntry* entry : weak) {
    if (entry->entry.term != TermId::kBackwardPawn) continue;
    said |= entry->entry.squares;
    if (group.Find(*entry, ClaimKind::kHalfOpenFile) != nullptr) {
      phrases.push_back(entry->phrase);
    } else {
      left_behind |= entry->entry.squares;
    }
  }
  if (left_behind != 0) {
    phrases.push_back((HasMany(left_behind) ? "pawns left behind on "
                                            : "a pawn left behind on ") +
                      SquaresText(left_behind));
  }
  for (const ExplainedEntry* entry : weak) {
    // A pawn already named needs no second fault.
    const TermId term = entry->entry.term;
    if ((term == TermId::kHangingPawns || term == TermId::kChainBase) &&
        (entry->entry.squares & said) == 0) {
      phrases.push_back(entry->phrase);
    }
  }
  // Islands are worth a word only where nothing else is said.
  for (const ExplainedEntry* entry : weak) {
    if (entry->entry.term == TermId::kPawnIslands && phrases.empty()) {
      phrases.push_back(entry->phrase);
    }
  }
  return phrases;
}

std::string WeakPawnsSentence(const Group& group) {
  const Side better = group.favours();
  const std::vector<std::string> own = WeakPawns(group, better);
  const std::vector<std::string> other = WeakPawns(group, Other(better));
  std::string text = std::string(Name(better)) + " has the sounder pawns";
  if (!other.empty()) {
    text += std::string(": ") + Name(Other(better)) + " has " + Join(other);
  }
  if (!own.empty()) {
    text += std::string(", ") + Name(better) + " " + Join(own);
  }
  return text + ".";
}

// A side's passed pawns, plain ones said together.
std::vector<std::string> PassedPawns(const Group& group, Side side) {
  std::vector<std::string> phrases;
  Bitboard plain = 0;
  for (const ExplainedEntry* entry : group.Good(side)) {
    const bool more_to_say =
        entry->entry.term != TermId::kPassedPawn ||
        group.Find(*entry, ClaimKind::kProtectedPassed) != nullptr ||
        group.Find(*entry, ClaimKind::kBlockade) != nullptr;
    if (more_to_say && phrases.size() >= kMostDetails) continue;
    if (more_to_say) {
      phrases.push_back(entry->phrase);
    } else {
      plain |= entry->entry.squares;
    }
  }
  if (plain != 0) {
    phrases.insert(phrases.begin(),
                   (HasMany(plain) ? "passed pawns on " : "a passed pawn on ") +
                       SquaresText(plain));
  }
  return phrases;
}

std::string PassedPawnsSentence(const Group& group) {
  const Side better = group.favours();
  const std::vector<std::string> own = PassedPawns(group, better);
  const std::vector<std::string> other = PassedPawns(group, Other(better));
  if (own.empty()) {
    return std::string(Name(Other(better))) + "'s passed pawns are stopped.";
  }
  std::string text = std::string(Name(better)) + " has " + Join(own);
  if (!other.empty()) {
    text += std::string("; ") + Name(Other(better)) + " has " + Join(other);
  }
  return text + ".";
}

std::string PassedPawnsPhrase(const Group& group) {
  const std::vector<const ExplainedEntry*> own = group.Good(group.favours());
  if (own.size() == 1 && group.Good(Other(group.favours())).empty()) {
    return own.front()->phrase;
  }
  return "the more dangerous passed pawns";
}

// --- pieces ---

std::string PieceWithScope(const Group& group, const ExplainedEntry& entry) {
  const Claim* scope = group.Find(entry, ClaimKind::kScope);
  if (scope == nullptr) return entry.phrase;
  const Square square = scope->squares[0];
  return std::string(Name(group.facts.position().At(square).kind())) + " on " +
         ToString(square);
}

const ExplainedEntry* FirstScope(
    const Group& group, const std::vector<const ExplainedEntry*>& entries,
    bool minor_pieces_only) {
  for (const ExplainedEntry* entry : entries) {
    const Claim* scope = group.Find(*entry, ClaimKind::kScope);
    if (scope == nullptr) continue;
    const PieceKind kind = group.facts.position().At(scope->squares[0]).kind();
    const bool minor = kind == PieceKind::kKnight || kind == PieceKind::kBishop;
    if (minor || !minor_pieces_only) return entry;
  }
  return nullptr;
}

std::string UsefulSquares(const Group& group, const ExplainedEntry& entry) {
  const int count = group.Find(entry, ClaimKind::kScope)->count;
  return NumberText(count) +
         (count == 1 ? " useful square" : " useful squares");
}

std::string ActivitySentence(const Group& group) {
  const Side better = group.favours();
  const Side worse = Other(better);
  const ExplainedEntry* best = FirstScope(group, group.Good(better), false);
  const std::vector<const ExplainedEntry*> bad = group.Bad(worse);
  // A rook at home has few squares in every opening; a bad minor piece is news.
  const ExplainedEntry* worst = FirstScope(group, bad, true);
  std::vector<std::string> details;
  if (best != nullptr) {
    details.push_back("the " + PieceWithScope(group, *best) + " has " +
                      UsefulSquares(group, *best));
  }
  if (worst != nullptr) {
    // "only" is said where the two stand side by side and it has some.
    const bool has_some = group.Find(*worst, ClaimKind::kScope)->count > 0;
    details.push_back(std::string(Name(worse)) + "'s " +
                      PieceWithScope(group, *worst) + " has " +
                      (best != nullptr && has_some ? "only " : "") +
                      UsefulSquares(group, *worst));
  }
  for (const ExplainedEntry* entry : bad) {
    if (entry->entry.term == TermId::kKnightSquareTaken) {
      const Claim* taken = group.Find(*entry, ClaimKind::kSquareTaken);
      details.push_back(std::string(Name(worse)) + "'s pawn on " +
                        ToString(taken->squares[0]) +
                        " stands where the knight on " +
                        ToString(taken->others[0]) + " wants to go");
    }
  }
  std::string text = std::string(Name(better)) + "'s pieces are more active";
  if (!details.empty()) text += ": " + Join(details);
  return text + ".";
}

// A headline about one side, its own details after a colon, and what speaks for
// the same on the other side: "White's rooks are the better placed: a rook on
// the open c-file; Black has ...".
std::string Contrast(const Group& group, Side about,
                     const std::string& headline) {
  const Side better = group.favours();
  const bool praises = about == better;
  const std::vector<std::string> own =
      Phrases(praises ? group.Good(about) : group.Bad(about));
  const std::vector<std::string> other =
      Phrases(praises ? group.Bad(Other(about)) : group.Good(Other(about)));
  std::string text = headline;
  if (!own.empty()) text += ": " + Join(own);
  if (!other.empty()) {
    text += std::string(own.empty() ? ": " : "; ") + Name(Other(about)) +
            " has " + Join(other);
  }
  return text + ".";
}

std::string HolesSentence(const Group& group) {
  const Side worse = Other(group.favours());
  Bitboard holes = 0;
  for (const ExplainedEntry* entry : group.Bad(worse)) {
    if (PopCount(holes) < static_cast<int>(kMostDetails)) {
      holes |= entry->entry.squares;
    }
  }
  if (holes == 0) {  // by weights that make holes an asset
    return std::string(Name(group.favours())) + "'s holes do no harm here.";
  }
  return std::string(Name(worse)) + " has " +
         (HasMany(holes) ? "holes on " : "a hole on ") + SquaresText(holes) +
         " that " + Name(group.favours()) + "'s pieces can use.";
}

std::string CentreSentence(const Group& group) {
  int own = 0;
  int other = 0;
  for (const std::uint32_t ref : group.entries.front()->claims) {
    own += group.claims[ref].count;
    other += group.claims[ref].other_count;
  }
  return std::string(Name(group.favours())) +
         " has more control of the centre: it attacks d4, e4, d5 and e5 " +
         std::to_string(own) + " times in all, " +
         Name(Other(group.favours())) + " " + std::to_string(other) + ".";
}

std::string KingActivitySentence(const Group& group) {
  const Side better = group.favours();
  const auto where = [&](Side side) {
    return ToString(group.facts.position().King(side));
  };
  return std::string(Name(better)) + "'s king on " + where(better) +
         " is nearer to the centre than the king on " + where(Other(better)) +
         ".";
}

// --- king, space ---

// A moved flank pawn goes without saying where its file already lacks shelter,
// and so does a king that has not castled, since the sentence opens with it.
std::vector<const ExplainedEntry*> WithoutRepeats(
    const Group& group, const std::vector<const ExplainedEntry*>& entries) {
  Bitboard gaps = 0;
  for (const ExplainedEntry* entry : entries) {
    const Claim* shelter = group.Find(*entry, ClaimKind::kShelter);
    if (shelter == nullptr) continue;
    gaps = KingFiles(group.facts, entry->entry.side) &
           ~FillFiles(shelter->squares.ToSet());
  }
  std::vector<const ExplainedEntry*> kept;
  for (const ExplainedEntry* entry : entries) {
    if (entry->entry.term == TermId::kUncastled) continue;  // said up front
    const Claim* moved = group.Find(*entry, ClaimKind::kFlankPawnMoved);
    if (moved == nullptr || !Contains(gaps, moved->squares[0])) {
      kept.push_back(entry);
    }
  }
  return kept;
}

std::string KingSentence(const Group& group) {
  const Side worse = Other(group.favours());
  const std::vector<const ExplainedEntry*> bad = group.Bad(worse);
  bool uncastled = false;
  for (const ExplainedEntry* entry : bad) {
    uncastled |= group.Find(*entry, ClaimKind::kUncastled) != nullptr;
  }
  std::string text = std::string(Name(worse)) + "'s king ";
  text += uncastled ? "is still in the centre on " : "is the less safe on ";
  text += ToString(group.facts.position().King(worse));
  const std::vector<std::string> details = Phrases(WithoutRepeats(group, bad));
  if (!details.empty()) text += ": " + Join(details);
  return text + ".";
}

std::string SpaceSentence(const Group& group) {
  const Side better = group.favours();
  const Claim* space = group.Find(*group.entries.front(), ClaimKind::kSpace);
  return std::string(Name(better)) +
         " has more space: " + std::to_string(space->count) +
         " safe squares behind its pawns, " +
         std::to_string(space->other_count) + " for " + Name(Other(better)) +
         ".";
}

}  // namespace

std::string PhraseOf(Topic topic, const Group& group) {
  switch (topic) {
    case Topic::kMaterial:
      return MaterialPhrase(group);
    case Topic::kPawnNumbers:
      return "";  // too fine a point for a summary
    case Topic::kBishopPair:
      return group.Good(group.favours()).empty()
                 ? "nothing to fear from the bishop pair"
                 : "the bishop pair";
    case Topic::kWeakPawns:
      return "the sounder pawns";
    case Topic::kHoles:
      return "squares to settle on";
    case Topic::kPassedPawns:
      return PassedPawnsPhrase(group);
    case Topic::kActivity:
      return "more active pieces";
    case Topic::kMinorPieces:
      return "the better minor pieces";
    case Topic::kRooks:
      return "the better rooks";
    case Topic::kDangers:
      return "less to look after";
    case Topic::kKingSafety:
      return "the safer king";
    case Topic::kKingActivity:
      return "the more active king";
    case Topic::kSpace:
      return "more space";
    case Topic::kCentre:
      return "more control of the centre";
    case Topic::kDevelopment:
      return "the better development";
    case Topic::kMove:
      return "";  // a matter of course
    case Topic::kEnding:
      break;
  }
  return EndingPhrase(group);
}

std::string SentenceOf(Topic topic, const Group& group) {
  const std::string better = Name(group.favours());
  switch (topic) {
    case Topic::kMaterial:
      return MaterialSentence(group);
    case Topic::kPawnNumbers:
      return PawnNumbersSentence(group);
    case Topic::kBishopPair:
      return BishopPairSentence(group);
    case Topic::kWeakPawns:
      return WeakPawnsSentence(group);
    case Topic::kHoles:
      return HolesSentence(group);
    case Topic::kPassedPawns:
      return PassedPawnsSentence(group);
    case Topic::kActivity:
      return ActivitySentence(group);
    case Topic::kMinorPieces:
      return Contrast(group, group.favours(),
                      better + "'s minor pieces are the better");
    case Topic::kRooks:
      return Contrast(group, group.favours(),
                      better + "'s rooks are the better placed");
    case Topic::kDangers:
      return Contrast(group, Other(group.favours()),
                      std::string(Name(Other(group.favours()))) +
                          " has more to look after");
    case Topic::kKingSafety:
      return KingSentence(group);
    case Topic::kKingActivity:
      return KingActivitySentence(group);
    case Topic::kSpace:
      return SpaceSentence(group);
    case Topic::kCentre:
      return CentreSentence(group);
    case Topic::kDevelopment:
      return Contrast(group, group.favours(), better + " is better developed");
    case Topic::kMove:
      return "It is " + better + "'s move.";
    case Topic::kEnding:
      break;
  }
  return EndingSentence(group);
}

}  // namespace assay
