// A reason's two texts, by topic: the phrase for the summary and the sentence
// with squares.
#include <algorithm>
#include <cstdlib>

#include "assay/explain/entry_text.h"
#include "assay/explain/group.h"
#include "assay/explain/words.h"
#include "assay/facts/kings.h"

namespace assay {
namespace {

// How many details a sentence names on each side before it gets dull.
constexpr std::size_t kMostDetails = 3;

Message Phrases(const std::vector<const ExplainedEntry*>& entries) {
  std::vector<Message> phrases;
  for (const ExplainedEntry* entry : entries) {
    if (phrases.size() == kMostDetails) break;
    phrases.push_back(entry->phrase);
  }
  return And(std::move(phrases));
}

// --- material ---

struct Surplus {
  std::vector<Message> counts;  // heaviest kind first
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
      surplus.counts.push_back(Count(count, static_cast<PieceKind>(kind)));
    }
  }
  return surplus;
}

Message MaterialPhrase(const Group& group) {
  const Surplus own = SurplusOf(group, group.favours());
  const Surplus other = SurplusOf(group, Other(group.favours()));
  if (own.counts.empty()) return Say("material.better");
  if (other.counts.empty()) {
    return own.IsOnly(PieceKind::kPawn) ? Say("material.pawn")
                                        : Say("more", And(own.counts));
  }
  return Say("for", And(own.counts), And(other.counts));
}

Message MaterialSentence(const Group& group) {
  const Side side = group.favours();
  const Surplus own = SurplusOf(group, side);
  const Surplus other = SurplusOf(group, Other(side));
  if (!own.counts.empty() && other.counts.empty()) {
    return Say("material.up", side, And(own.counts));
  }
  if (own.IsOnly(PieceKind::kRook) && other.IsOneMinor()) {
    return Say("material.exchange", side, other.counts[0]);
  }
  return Say("has", side, MaterialPhrase(group));
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

Message PawnNumbersSentence(const Group& group) {
  const PawnNumbers numbers = PawnNumbersOf(group);
  const int pawns = PopCount(group.facts.Pawns(numbers.owner).pawns);
  const int pieces = PopCount(group.facts.Own(numbers.owner, numbers.kind));
  const Message how_many = Say(pawns > kUsualPawns ? "pawns.many"
                               : pawns > 0         ? "pawns.few"
                                                   : "pawns.no");
  return Say(
      numbers.kind == PieceKind::kKnight ? "knights.pawns" : "rooks.pawns",
      pawns, numbers.owner, pieces, how_many);
}

// --- bishop pair ---

Message BishopPairSentence(const Group& group) {
  const Side side = group.favours();
  const std::vector<const ExplainedEntry*> pairs = group.Good(side);
  if (pairs.empty()) {  // by weights that make the pair a burden
    return Say("bishop_pair.no_asset", Other(side));
  }
  std::vector<Message> breaks;
  int rams = 0;
  for (const std::uint32_t ref : pairs.front()->claims) {
    const Claim& claim = group.claims[ref];
    if (claim.kind == ClaimKind::kRam) ++rams;
    if (claim.kind == ClaimKind::kLeverMove && breaks.size() < 2) {
      breaks.push_back(Moves(BreakText(claim)));
    }
  }
  switch (group.facts.centre()) {
    case Centre::kOpen:
      return Say("bishop_pair.open", side);
    case Centre::kClosed:
      return Say("bishop_pair.closed", side, And(std::move(breaks)));
    default:
      return rams == 0
                 ? Say("bishop_pair.free", side)
                 : Say("bishop_pair.locked", side, And(std::move(breaks)));
  }
}

// --- pawns ---

// A side's weak pawns, equal kinds said together: "doubled pawns on c6 and c7
// and isolated pawns on a7 and d5".
Message WeakPawns(const Group& group, Side side) {
  std::vector<Message> phrases;
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
    phrases.push_back(Say("pawns.isolated", Squares{isolated}));
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
    phrases.push_back(Say("pawns.left_behind", Squares{left_behind}));
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
  return And(std::move(phrases));
}

// Without pawns none are sounder.
bool HasPawns(const Group& group, Side side) {
  return group.facts.Pawns(side).pawns != 0;
}

Message WeakPawnsSentence(const Group& group) {
  const Side better = group.favours();
  Bitboard linked = 0;
  for (const ExplainedEntry* entry : group.Good(better)) {
    if (entry->entry.term == TermId::kPawnLink) linked |= entry->entry.squares;
  }
  const Message other = WeakPawns(group, Other(better));
  const Message own = WeakPawns(group, better);
  if (other.empty() && linked != 0) {
    return Say("pawns.guarded", better, Squares{linked}, own);
  }
  if (!HasPawns(group, better)) return Say("has", Other(better), other);
  return Say("pawns.sounder", better, Other(better), other, own);
}

// A side's passed pawns, plain ones said together.
Message PassedPawnsOf(const Group& group, Side side) {
  std::vector<Message> phrases;
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
    phrases.insert(phrases.begin(), PassedPawns(false, plain, {}));
  }
  return And(std::move(phrases));
}

Message PassedPawnsSentence(const Group& group) {
  const Side better = group.favours();
  const Message own = PassedPawnsOf(group, better);
  const Message other = PassedPawnsOf(group, Other(better));
  if (own.empty()) return Say("passed_pawns.stopped", Other(better));
  const Message has = Say("has", better, own);
  return other.empty()
             ? has
             : List("list.semicolon", {has, Say("has", Other(better), other)});
}

Message PassedPawnsPhrase(const Group& group) {
  const std::vector<const ExplainedEntry*> own = group.Good(group.favours());
  if (own.size() == 1 && group.Good(Other(group.favours())).empty()) {
    return own.front()->phrase;
  }
  return Say("passed_pawns");
}

// --- pieces ---

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

Message ActivitySentence(const Group& group) {
  const Side better = group.favours();
  const Side worse = Other(better);
  const ExplainedEntry* best = FirstScope(group, group.Good(better), false);
  const std::vector<const ExplainedEntry*> bad = group.Bad(worse);
  // A rook at home has few squares in every opening; a bad minor piece is news.
  const ExplainedEntry* worst = FirstScope(group, bad, true);
  std::vector<Message> details;
  if (best != nullptr) details.push_back(best->phrase);
  if (worst != nullptr) {
    // "only" is said where the two stand side by side and it has some.
    const Claim* scope = group.Find(*worst, ClaimKind::kScope);
    const Square square = scope->squares[0];
    details.push_back(Say("scope.whose",
                          group.facts.position().At(square).kind(), square,
                          UsefulSquares(scope->count), worse,
                          best != nullptr && scope->count > 0));
  }
  for (const ExplainedEntry* entry : bad) {
    if (entry->entry.term == TermId::kKnightSquareTaken) {
      const Claim* taken = group.Find(*entry, ClaimKind::kSquareTaken);
      details.push_back(Say("square_taken.whose", taken->squares[0],
                            taken->others[0], worse));
    }
  }
  return Say("pieces.more_active", better, And(std::move(details)));
}

// A headline about one side, its own details after a colon, and what speaks for
// the same on the other side: "White's rooks are the better placed: a rook on
// the open c-file; Black has ...".
Message Contrast(const Group& group, Side about, std::string_view headline) {
  const bool praises = about == group.favours();
  return Say(
      "contrast", Say(headline, about),
      Phrases(praises ? group.Good(about) : group.Bad(about)),
      Phrases(praises ? group.Bad(Other(about)) : group.Good(Other(about))),
      Other(about));
}

// Rooks on one file said together, and whether they double there.
Message RookPhrases(const Group& group,
                    const std::vector<const ExplainedEntry*>& entries) {
  const auto squares_on = [&entries](Bitboard file, TermId term) {
    Bitboard squares = 0;
    for (const ExplainedEntry* entry : entries) {
      if (entry->entry.term == term) squares |= entry->entry.squares & file;
    }
    return squares;
  };
  std::vector<Message> phrases;
  Bitboard said = 0;  // files
  for (const ExplainedEntry* entry : entries) {
    if (phrases.size() == kMostDetails) break;
    const TermId term = entry->entry.term;
    const Bitboard file = FileMask(FileOf(First(entry->entry.squares)));
    const Bitboard rooks = squares_on(file, TermId::kRookOnFile);
    if ((term != TermId::kRookOnFile && term != TermId::kDoubledRooks) ||
        !HasMany(rooks)) {
      phrases.push_back(entry->phrase);
    } else if ((said & file) == 0) {
      said |= file;
      const bool open = std::any_of(
          entries.begin(), entries.end(), [&](const ExplainedEntry* other) {
            return (other->entry.squares & file) != 0 &&
                   group.Find(*other, ClaimKind::kOpenFile) != nullptr;
          });
      phrases.push_back(Say("rooks.on_file", open, Files{file}, Squares{rooks},
                            squares_on(file, TermId::kDoubledRooks) != 0));
    }
  }
  return And(std::move(phrases));
}

Message RooksSentence(const Group& group) {
  const Side better = group.favours();
  return Say("contrast", Say("rooks.better", better),
             RookPhrases(group, group.Good(better)),
             RookPhrases(group, group.Bad(Other(better))), Other(better));
}

// Each piece in trouble once, by what weighs most.
std::vector<const ExplainedEntry*> OncePerUnit(
    const std::vector<const ExplainedEntry*>& entries) {
  std::vector<const ExplainedEntry*> once;
  Bitboard named = 0;
  for (const ExplainedEntry* entry : entries) {
    if ((entry->entry.squares & named) != 0) continue;
    named |= entry->entry.squares;
    once.push_back(entry);
  }
  return once;
}

Message DangersSentence(const Group& group) {
  const Side worse = Other(group.favours());
  return Say("contrast", Say("dangers.more", worse),
             Phrases(OncePerUnit(group.Bad(worse))),
             Phrases(OncePerUnit(group.Good(Other(worse)))), Other(worse));
}

Message HolesSentence(const Group& group) {
  const Side better = group.favours();
  Bitboard holes = 0;
  for (const ExplainedEntry* entry : group.Bad(Other(better))) {
    if (PopCount(holes) < static_cast<int>(kMostDetails)) {
      holes |= entry->entry.squares;
    }
  }
  // By weights that make holes an asset there are none.
  return holes == 0 ? Say("holes.no_harm", better)
                    : Say("holes.usable", Other(better),
                          Say("holes", Squares{holes}), better);
}

Message CentreSentence(const Group& group) {
  int own = 0;
  int other = 0;
  const std::vector<const ExplainedEntry*> good = group.Good(group.favours());
  const ExplainedEntry* first =
      good.empty() ? group.entries.front() : good.front();
  if (first->entry.term == TermId::kCentreMajority) {
    return Say("has", group.favours(), first->phrase);
  }
  for (const std::uint32_t ref : first->claims) {
    own += group.claims[ref].count;
    other += group.claims[ref].other_count;
  }
  return Say("centre.controls", group.favours(), own, Other(group.favours()),
             other);
}

Message KingActivitySentence(const Group& group) {
  const Side better = group.favours();
  const Position& position = group.facts.position();
  const Square king = position.King(better);
  std::vector<Message> goals;
  Bitboard raided = 0;
  for (const ExplainedEntry* entry : group.Good(better)) {
    if (entry->entry.term == TermId::kKingRaid) {
      raided |= entry->entry.squares;
      continue;
    }
    goals.push_back(Say(entry->entry.term == TermId::kKingActivity
                            ? "goal.centre"
                            : "goal.pawns"));
  }
  raided &= ~Bit(king);
  if (raided != 0) return Say("king.raid", better, king, Squares{raided});
  // By weights of another sign.
  if (goals.empty()) return Say("king.stands_well", better, king);
  return Say("king.nearer_than", better, king, position.King(Other(better)),
             And(std::move(goals)));
}

// --- king, space ---

Bitboard RelativeRanksFromFifth(Side side) {
  return RelativeRankMask(side, 4) | RelativeRankMask(side, 5) |
         RelativeRankMask(side, 6);
}

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

Message KingSentence(const Group& group) {
  const Side worse = Other(group.favours());
  const std::vector<const ExplainedEntry*> bad = group.Bad(worse);
  bool uncastled = false;
  for (const ExplainedEntry* entry : bad) {
    uncastled |= group.Find(*entry, ClaimKind::kUncastled) != nullptr;
  }
  return Say("king.less_safe", worse, uncastled,
             group.facts.position().King(worse),
             Phrases(WithoutRepeats(group, bad)));
}

// Room is for pieces: in an ending pawns are merely further.
bool HasRoomToShare(const Facts& facts) {
  return facts.phase() >= kFullPhase / 3;
}

// What speaks for the side, the weightiest first; the numbers of one reason are
// enough.
Message SpaceSentence(const Group& group) {
  const Side better = group.favours();
  const std::vector<const ExplainedEntry*> good = group.Good(better);
  // By weights that make room a burden.
  if (good.empty()) return Say("space.no_burden", better);
  const ExplainedEntry* first = good.front();
  if (const Claim* space = group.Find(*first, ClaimKind::kSpace)) {
    return Say("space.more", better, space->count, space->other_count,
               Other(better));
  }
  if (const Claim* far = group.Find(*first, ClaimKind::kFarControl)) {
    return Say("space.far", better, far->count, Other(better),
               far->other_count);
  }
  const Squares furthest{first->entry.squares & RelativeRanksFromFifth(better)};
  return Say(HasRoomToShare(group.facts) ? "space.ahead" : "space.further",
             better, furthest);
}

Message ClauseOn(Topic topic, const Group& group) {
  const Side better = group.favours();
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
      return Contrast(group, better, "minor_pieces.better");
    case Topic::kCover:
      return Contrast(group, better, "cover.better");
    case Topic::kRooks:
      return RooksSentence(group);
    case Topic::kDangers:
      return DangersSentence(group);
    case Topic::kKingSafety:
      return KingSentence(group);
    case Topic::kKingActivity:
      return KingActivitySentence(group);
    case Topic::kSpace:
      return SpaceSentence(group);
    case Topic::kCentre:
      return CentreSentence(group);
    case Topic::kDevelopment:
      return Contrast(group, better, "development.better");
    case Topic::kMove:
      return Say("move.whose", better);
    case Topic::kEnding:
      break;
  }
  return EndingClause(group);
}

}  // namespace

Message PhraseOf(Topic topic, const Group& group) {
  switch (topic) {
    case Topic::kMaterial:
      return MaterialPhrase(group);
    case Topic::kPawnNumbers:
    case Topic::kCover:
      return {};  // too fine a point for a summary
    case Topic::kBishopPair:
      return Say(group.Good(group.favours()).empty() ? "bishop_pair.no_fear"
                                                     : "bishop_pair");
    case Topic::kWeakPawns:
      if (!HasPawns(group, group.favours())) return {};
      return Say("topic.weak_pawns");
    case Topic::kHoles:
      return Say("topic.holes");
    case Topic::kPassedPawns:
      return PassedPawnsPhrase(group);
    case Topic::kActivity:
      return Say("topic.activity");
    case Topic::kMinorPieces:
      return Say("topic.minor_pieces");
    case Topic::kRooks:
      return Say("topic.rooks");
    case Topic::kDangers:
      return Say("topic.dangers");
    case Topic::kKingSafety:
      return Say("topic.king_safety");
    case Topic::kKingActivity:
      return Say("topic.king_activity");
    case Topic::kSpace:
      return Say(HasRoomToShare(group.facts) ? "topic.space"
                                             : "topic.space_in_ending");
    case Topic::kCentre:
      return Say("centre.control");
    case Topic::kDevelopment:
      return Say("topic.development");
    case Topic::kMove:
      return {};  // a matter of course
    case Topic::kEnding:
      break;
  }
  return EndingPhrase(group);
}

Message SentenceOf(Topic topic, const Group& group) {
  return Sentence(ClauseOn(topic, group));
}

}  // namespace assay
