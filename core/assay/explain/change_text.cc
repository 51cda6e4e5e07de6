// Most terms read "White now has A and B, no longer C"; those whose entries are
// no things to have, or are counts that go up and down, have words of their
// own.
#include "assay/explain/change_text.h"

#include <algorithm>
#include <cstdlib>

#include "assay/explain/line_text.h"
#include "assay/explain/topic.h"
#include "assay/explain/words.h"
#include "assay/facts/claim_makers.h"
#include "assay/facts/danger.h"
#include "assay/facts/exchange.h"
#include "assay/facts/kings.h"

namespace assay {
namespace {

constexpr std::size_t kMostDetails = 3;

std::string Phrases(const std::vector<ChangedEntry>& entries) {
  std::vector<std::string> phrases;
  for (const ChangedEntry& changed : entries) {
    if (phrases.size() == kMostDetails) break;
    phrases.push_back(changed.phrase);
  }
  return Join(phrases);
}

// "a hole on f4" as "the hole on f4"; others as they are.
std::string Definite(const std::string& phrase) {
  for (const char* article : {"a ", "an "}) {
    const std::string text = article;
    if (phrase.compare(0, text.size(), text) == 0) {
      return "the " + phrase.substr(text.size());
    }
  }
  return phrase;
}

std::string DefiniteList(const std::vector<ChangedEntry>& entries) {
  std::vector<std::string> phrases;
  for (const ChangedEntry& changed : entries) {
    if (phrases.size() == kMostDetails) break;
    phrases.push_back(Definite(changed.phrase));
  }
  return Join(phrases);
}

// The king of the side is among the claims of nearly all that concerns it.
class Teller {
 public:
  explicit Teller(const ChangeGroup& group)
      : group_(group),
        before_(group.pairing.before.facts),
        after_(group.pairing.after.facts),
        who_(Name(group.side)) {}

  ChangeText Tell() {
    Write();
    return std::move(told_);
  }

 private:
  void Write() {
    switch (group_.term) {
      case TermId::kTempo:
        return Say(group_.added.empty() ? who_ + " no longer has the move."
                                        : who_ + " has the move.",
                   "the move");
      case TermId::kScope:
        return Scope();
      case TermId::kSpace:
        return Space();
      case TermId::kCentreControl:
        return Edge("the better hold on the centre", "the centre");
      case TermId::kKnightPawns:
      case TermId::kRookPawns:
        return PawnNumbers();
      case TermId::kSecondRook:
        return Say(group_.added.empty()
                       ? who_ + " alone has a pair of rooks no longer."
                       : who_ +
                             " alone has a pair of rooks, of which the "
                             "second adds less.",
                   "the second rook");
      case TermId::kMaterial:
        return Material();
      case TermId::kUndeveloped:
        return Undeveloped();
      case TermId::kShelter:
        return Shelter();
      case TermId::kKingAttackers:
        return Attackers();
      case TermId::kUncastled:
        return Uncastled();
      case TermId::kKingAhead:
        return Say(who_ + "'s king " +
                       (group_.Good() ? "is less exposed ahead of its first "
                                        "rank"
                                      : "is exposed ahead of its first rank") +
                       ".",
                   "the king's place");
      case TermId::kKingActivity:
        return Say("In the race of the kings to the centre " + Gainer() +
                       " gets ahead.",
                   "the king's way to the centre");
      case TermId::kKnightSquareTaken:
        return KnightSquare();
      case TermId::kFlankPawnMoved:
        return FlankPawn();
      case TermId::kDiagonalToKing:
      case TermId::kFileToKing:
        return LineToKing();
      case TermId::kHanging:
        return Plight(HangingWords());
      case TermId::kLoosePiece:
        return Plight({"has no guard", "is no longer without a guard",
                       "had no guard", "the loose "});
      case TermId::kPinned:
        return Plight(
            {"is pinned", "is no longer pinned", "was pinned", "the pinned "});
      case TermId::kTrapped:
        return Plight({"is trapped", "is no longer trapped", "was trapped",
                       "the trapped "});
      case TermId::kEarlyQueen:
        return EarlyQueen();
      default:
        break;
    }
    if (TopicOf(group_.term) == Topic::kEnding) return Ending();
    Has("");
  }

  std::string Gainer() const {
    return Name(group_.change_cp > 0 ? Side::kWhite : Side::kBlack);
  }

  void Say(std::string text, std::string noun) {
    told_.text = std::move(text);
    told_.noun = std::move(noun);
  }
  void AddBefore(const Claim& claim) { told_.claims_before.push_back(claim); }
  void AddAfter(const Claim& claim) { told_.claims_after.push_back(claim); }

  // "White now has a hole on f4 and a hole on h4, no longer ...".
  void Has(const std::string& noun) {
    const std::string added = Phrases(group_.added);
    const std::string gone = Phrases(group_.gone);
    std::string text = who_;
    if (added == gone && !added.empty()) {
      // The same thing, of another weight.
      const bool more =
          group_.Good() == (Sign(group_.side) * Total(group_.added) > 0);
      text +=
          "'s " + Bare(added) +
          (group_.added.size() > 1 || IsPlural(added) ? " weigh" : " weighs") +
          (more ? " more" : " less");
    } else {
      text = Clauses();
    }
    Say(text + ".", !noun.empty() ? noun
                                  : DefiniteList(added.empty() ? group_.gone
                                                               : group_.added));
  }

  // What has come and gone, and what is there as before but counts otherwise.
  std::string Clauses() const {
    const std::string come = Phrases(Those(group_.added, false));
    const std::string gone = Phrases(Those(group_.gone, false));
    const std::string risen = Phrases(Those(group_.added, true));
    const std::string faded = Phrases(Those(group_.gone, true));
    std::vector<std::string> clauses;
    if (!come.empty()) {
      clauses.push_back("now has " + come +
                        (gone.empty() ? "" : " instead of " + gone));
    } else if (!gone.empty()) {
      clauses.push_back("no longer has " + gone);
    }
    if (!risen.empty() && (risen != faded || clauses.empty())) {
      clauses.push_back(faded.empty()
                            ? "still has " + risen + ", which counts now"
                            : "still has " + risen + ", of another weight");
    } else if (risen.empty() && !faded.empty()) {
      clauses.push_back("still has " + faded + ", but it counts no more");
    }
    return who_ + " " + Join(clauses);
  }

  static std::vector<ChangedEntry> Those(
      const std::vector<ChangedEntry>& entries, bool hold_in_both) {
    std::vector<ChangedEntry> those;
    for (const ChangedEntry& changed : entries) {
      if (changed.holds_in_both == hold_in_both) those.push_back(changed);
    }
    return those;
  }

  static Centipawns Total(const std::vector<ChangedEntry>& entries) {
    Centipawns sum = 0;
    for (const ChangedEntry& changed : entries) sum += changed.entry->value_cp;
    return sum;
  }

  // Without its article: "isolated pawn on d4".
  static std::string Bare(const std::string& phrase) {
    for (const char* article : {"a ", "an ", "the "}) {
      const std::string text = article;
      if (phrase.compare(0, text.size(), text) == 0) {
        return phrase.substr(text.size());
      }
    }
    return phrase;
  }

  // "doubled pawns on ...": the first noun's ending tells.
  static bool IsPlural(const std::string& phrase) {
    const std::size_t end = std::min(phrase.find(" on "), phrase.size());
    return end > 0 && phrase[end - 1] == 's';
  }

  // --- what pieces can do ---

  struct Reach {
    Square square = kNoSquare;  // after; before where it is gone
    Square origin = kNoSquare;  // before
    int was = 0;
    int is = 0;
  };

  // "White's bishop on c1 has four useful squares, up from none".
  void Scope() {
    const std::vector<Reach> reaches = ReachesThatChanged();
    if (reaches.empty()) return ScopeOfGone();
    std::vector<std::string> parts;
    std::vector<std::string> nouns;
    const auto change = [](const Reach& reach) {
      return std::abs(reach.is - reach.was);
    };
    for (const Reach& reach : reaches) {
      // One square more or less is not felt beside greater changes.
      if (parts.size() == 2 || (!parts.empty() && change(reach) < 2)) break;
      const std::string unit = UnitText(after_.position(), reach.square);
      const std::string squares =
          reach.is == 0 ? "no useful square"
                        : NumberText(reach.is) + " useful " +
                              (reach.is == 1 ? "square" : "squares");
      parts.push_back((parts.empty() ? who_ + "'s " + unit.substr(4) : unit) +
                      " has " + squares +
                      (reach.is > reach.was ? ", up from " : ", down from ") +
                      (reach.was == 0 ? "none" : NumberText(reach.was)));
      nouns.push_back(unit);
      AddBefore(ScopeClaim(before_, group_.side, reach.origin));
      AddAfter(ScopeClaim(after_, group_.side, reach.square));
    }
    Say(Joined(parts) + ".", "the reach of " + Join(nouns));
  }

  // Clauses with commas of their own.
  static std::string Joined(const std::vector<std::string>& clauses) {
    std::string text;
    for (const std::string& clause : clauses) {
      text += (text.empty() ? "" : "; ") + clause;
    }
    return text;
  }

  // Of pieces that are there before and after, those that changed the way that
  // the whole did, most first.
  std::vector<Reach> ReachesThatChanged() const {
    std::vector<Reach> reaches;
    const Bitboard pieces = after_.position().Pieces(group_.side) &
                            ~after_.position().Pieces(PieceKind::kPawn) &
                            ~after_.position().Pieces(PieceKind::kKing);
    for (const Square square : Each(pieces)) {
      const Square origin = group_.pairing.Origin(square);
      if (origin == kNoSquare ||
          before_.position().At(origin) != after_.position().At(square)) {
        continue;
      }
      const Reach reach{square, origin,
                        PopCount(before_.Scope(group_.side, origin)),
                        PopCount(after_.Scope(group_.side, square))};
      const bool better = reach.is > reach.was;
      if (reach.is != reach.was && better == group_.Good()) {
        reaches.push_back(reach);
      }
    }
    std::stable_sort(reaches.begin(), reaches.end(),
                     [](const Reach& a, const Reach& b) {
                       return std::abs(a.is - a.was) > std::abs(b.is - b.was);
                     });
    return reaches;
  }

  // No piece that is there in both changed that way: one has come or gone.
  void ScopeOfGone() {
    const bool gone = !group_.gone.empty();
    const std::vector<ChangedEntry>& list = gone ? group_.gone : group_.added;
    const Facts& facts = gone ? before_ : after_;
    std::vector<std::string> units;
    for (const ChangedEntry& changed : list) {
      if (units.size() == 2) break;
      units.push_back(
          UnitText(facts.position(), First(changed.entry->squares)));
    }
    const std::string all = Join(units);
    Say(Capitalised(all) +
            (gone ? " no longer reaches what it did." : " has its reach now."),
        "the reach of " + all);
    if (gone && units.size() > 1) {
      told_.text = Capitalised(all) + " no longer reach what they did.";
    } else if (units.size() > 1) {
      told_.text = Capitalised(all) + " have their reach now.";
    }
  }

  void Space() {
    const auto count = [&](const Facts& facts, Side side) {
      return std::to_string(PopCount(facts.Space(side)));
    };
    const Side other = Other(group_.side);
    AddBefore(SpaceClaim(before_, group_.side));
    AddAfter(SpaceClaim(after_, group_.side));
    Say(who_ + " has " + count(after_, group_.side) +
            " safe squares behind its pawns and " + Name(other) + " " +
            count(after_, other) + "; it was " + count(before_, group_.side) +
            " and " + count(before_, other) + ".",
        "space");
  }

  void PawnNumbers() {
    const std::string pieces =
        group_.term == TermId::kKnightPawns ? "knights" : "rooks";
    Edge("the better number of pawns for its " + pieces,
         "what the pawns do for the " + pieces);
  }

  // What one side alone can have, the balance being its.
  void Edge(const std::string& what, const std::string& noun) {
    if (group_.added.empty()) {
      return Say(who_ + " no longer has " + what + ".", noun);
    }
    if (group_.gone.empty()) return Say(who_ + " now has " + what + ".", noun);
    Say(who_ + "'s edge in " + noun + (group_.Good() ? " grows." : " shrinks."),
        noun);
  }

  // "a knight more" as "a knight".
  static std::string Surplus(const std::vector<ChangedEntry>& entries) {
    std::vector<std::string> units;
    for (const ChangedEntry& changed : entries) {
      const std::string& phrase = changed.phrase;
      units.push_back(phrase.substr(0, phrase.rfind(" more")));
    }
    return Join(units);
  }

  void Material() {
    const std::string now = Surplus(group_.added);
    const std::string was = Surplus(group_.gone);
    const std::string noun = Definite(now.empty() ? was : now);
    if (now.empty()) return Say(who_ + " is no longer " + was + " up.", noun);
    if (was.empty()) return Say(who_ + " is now " + now + " up.", noun);
    Say(who_ + " is now " + now + " up instead of " + was + ".", noun);
  }

  void Undeveloped() {
    const Bitboard home = UndevelopedPieces(after_, group_.side);
    const Bitboard was = UndevelopedPieces(before_, group_.side);
    AddBefore(CentreClaim(before_));
    if (PopCount(home) == PopCount(was)) {
      AddAfter(CentreClaim(after_));
      return Say("With the centre as it is now, " + who_ +
                     "'s pieces at home weigh " +
                     (group_.Good() ? "less." : "more."),
                 "development");
    }
    Say(home == 0 ? who_ + " has no minor piece left at home."
                  : who_ + " has " +
                        (HasMany(home) ? "minor pieces" : "one minor piece") +
                        " at home, on " + SquaresText(home) + "; before, on " +
                        (was == 0 ? "no square" : SquaresText(was)) + ".",
        "development");
    AddAfter(CentreClaim(after_));
  }

  void EarlyQueen() {
    if (group_.gone.empty() || group_.added.empty()) return Has("");
    Say(who_ + " now has " + Phrases(group_.added) + ".",
        "the queen out early");
  }

  // --- the king ---

  std::string King() const { return who_ + "'s king"; }

  void Shelter() {
    const auto without = [&](const Facts& facts) {
      const Bitboard files = KingFiles(facts, group_.side) &
                             ~FillFiles(ShelterPawns(facts, group_.side));
      return files == 0 ? std::string("no file") : "the " + FilesText(files);
    };
    AddBefore(ShelterClaim(before_, group_.side));
    AddAfter(ShelterClaim(after_, group_.side));
    const std::string now = without(after_);
    const std::string was = without(before_);
    const std::string noun = "the shelter of " + King();
    if (now == was) {
      return Say("The missing shelter of " + King() + " weighs " +
                     (group_.Good() ? "less." : "more."),
                 noun);
    }
    const std::string before = was == "no file"
                                   ? "; before, it lacked none."
                                   : "; before, none on " + was + ".";
    Say(King() +
            (now == "no file" ? " has a sheltering pawn on each of its files"
                              : " has no sheltering pawn on " + now) +
            before,
        noun);
  }

  // By name where one piece has come or gone, else by number.
  void Attackers() {
    const Bitboard now = KingAttackers(after_, group_.side);
    const Bitboard was = KingAttackers(before_, group_.side);
    Bitboard stayed = 0;  // where they stood before
    Bitboard come = 0;
    for (const Square square : Each(now)) {
      const Square origin = group_.pairing.Origin(square);
      if (origin != kNoSquare && Contains(was, origin)) {
        stayed |= Bit(origin);
      } else {
        come |= Bit(square);
      }
    }
    const Bitboard gone = was & ~stayed;
    if (was != 0) AddBefore(KingAttackersClaim(before_, group_.side));
    if (now != 0) AddAfter(KingAttackersClaim(after_, group_.side));
    const std::string noun = "the pressure on " + King();
    if (come == 0 && gone == 0) {
      return Say(
          "The pressure on " + King() + (group_.Good() ? " eases." : " grows."),
          noun);
    }
    if (PopCount(come) == 1 && gone == 0) {
      return Say(Capitalised(UnitText(after_.position(), First(come))) +
                     " now bears on " + King() + ".",
                 noun);
    }
    if (PopCount(gone) == 1 && come == 0) {
      const std::string unit = UnitText(before_.position(), First(gone));
      return Say(Capitalised(unit) + " no longer bears on " + King() + ".",
                 noun);
    }
    const int count = PopCount(now);
    Say(Capitalised(NumberText(count)) + " enemy " +
            (count == 1 ? "piece bears" : "pieces bear") + " on " + King() +
            " instead of " +
            (was == 0 ? std::string("none") : NumberText(PopCount(was))) + ".",
        noun);
  }

  void Uncastled() {
    const Square king = after_.position().King(group_.side);
    AddAfter(MaterialClaim(after_, group_.side, PieceKind::kKing));
    if (IsCastled(after_, group_.side) && !IsCastled(before_, group_.side)) {
      AddAfter(SquaresClaim(ClaimKind::kCastled, group_.side, Bit(king)));
      return Say(King() + " has left the centre for " + ToString(king) + ".",
                 "the king's safety");
    }
    if (group_.added.empty() || group_.gone.empty()) {
      return Say(King() + (group_.added.empty()
                               ? " is no longer in danger in the centre."
                               : " stands in the centre, not castled."),
                 "the king in the centre");
    }
    AddBefore(CentreClaim(before_));
    AddAfter(CentreClaim(after_));
    Say("With the centre as it is now, " + King() + " in the middle is " +
            (group_.Good() ? "safer." : "in more danger."),
        "the king in the centre");
  }

  void KnightSquare() {
    if (group_.added.empty()) {
      const Entry& entry = *group_.gone.front().entry;
      const Claim& claim =
          group_.pairing.before.ledger.claims[entry.first_claim];
      return Say("The pawn on " + ToString(claim.squares[0]) +
                     " no longer takes the best square of " + who_ +
                     "'s knight on " + ToString(claim.others[0]) + ".",
                 "the knight's square " + ToString(claim.squares[0]));
    }
    const Entry& entry = *group_.added.front().entry;
    const Claim& claim = group_.pairing.after.ledger.claims[entry.first_claim];
    Say(Capitalised(group_.added.front().phrase) + ".",
        "the knight's square " + ToString(claim.squares[0]));
  }

  void FlankPawn() {
    const std::string noun =
        DefiniteList(group_.added.empty() ? group_.gone : group_.added);
    if (group_.gone.empty()) {
      return Say(King() + " has " + Phrases(group_.added) + " in front of it.",
                 noun);
    }
    if (group_.added.empty()) {
      return Say(King() + " no longer has " + Phrases(group_.gone) +
                     " in front of it.",
                 noun);
    }
    Say(King() + " now has " + Phrases(group_.added) + " in front of it, not " +
            Phrases(group_.gone) + ".",
        noun);
  }

  void LineToKing() {
    const bool opened = !group_.added.empty();
    const std::string what = Phrases(opened ? group_.added : group_.gone);
    const std::string noun = DefiniteList(opened ? group_.added : group_.gone);
    if (opened && what == Phrases(group_.gone)) {
      return Say(King() + " has " + (group_.Good() ? "less" : "more") +
                     " to fear on " + what + ".",
                 noun);
    }
    if (opened && !group_.gone.empty()) {
      return Say(
          King() + " now faces " + what + ", not " + Phrases(group_.gone) + ".",
          noun);
    }
    const std::vector<ChangedEntry>& list = opened ? group_.added : group_.gone;
    const bool still = std::all_of(
        list.begin(), list.end(),
        [](const ChangedEntry& changed) { return changed.holds_in_both; });
    if (still) {
      Bitboard squares = 0;
      for (const ChangedEntry& changed : list) {
        squares |= LineSquares(changed, opened);
      }
      return Say(
          King() + " has " + (opened ? "more" : "less") + " to fear on " +
              (group_.term == TermId::kFileToKing ? "the " + FilesText(squares)
                                                  : what) +
              ".",
          noun);
    }
    Say(King() + (opened ? " faces " : " no longer faces ") + what + ".", noun);
  }

  // The squares of the line that an entry's first claim is about.
  Bitboard LineSquares(const ChangedEntry& changed, bool after) const {
    const Snapshot& own = after ? group_.pairing.after : group_.pairing.before;
    return own.ledger.claims[changed.entry->first_claim].squares.ToSet();
  }

  // --- what befalls single pieces ---

  std::string Units(const Facts& facts,
                    const std::vector<ChangedEntry>& entries) const {
    Bitboard squares = 0;
    for (const ChangedEntry& changed : entries) {
      squares |= changed.entry->squares & facts.position().Pieces(group_.side);
    }
    std::string text;
    std::vector<std::string> units;
    for (const Square square : Each(squares)) {
      units.push_back(std::string(Name(facts.position().At(square).kind())) +
                      " on " + ToString(square));
    }
    return Join(units);
  }

  struct PlightWords {
    const char* is;    // "is pinned"
    const char* ends;  // "is no longer pinned"
    const char* was;   // "was pinned"
    const char* noun;  // "the pinned "
  };

  // What hangs can still be saved where its owner is to move.
  PlightWords HangingWords() const {
    const bool own_move = after_.position().side_to_move() == group_.side;
    return {own_move ? "is under attack" : "hangs", "no longer hangs", "hung",
            "the hanging "};
  }

  void Plight(const PlightWords& words) {
    std::vector<std::string> parts;
    for (const ChangedEntry& changed : group_.added) {
      parts.push_back(Owned(after_, changed) + " " +
                      (StillSo(changed) ? SameStill(words) : words.is));
    }
    if (parts.empty()) {
      for (const ChangedEntry& changed : group_.gone) {
        parts.push_back(Ended(changed, words));
      }
    }
    if (parts.size() > kMostDetails) parts.resize(kMostDetails);
    Say(Join(parts) + ".",
        words.noun + (group_.added.empty() ? Units(before_, group_.gone)
                                           : Units(after_, group_.added)));
  }

  // "White's knight on c3".
  std::string Owned(const Facts& facts, const ChangedEntry& changed) const {
    return who_ + "'s " + Units(facts, {changed});
  }

  std::string SameStill(const PlightWords& words) const {
    if (group_.term != TermId::kHanging) return words.is;
    const bool own_move = after_.position().side_to_move() == group_.side;
    return own_move ? "can now be looked after" : "can now be taken";
  }

  // What became of a unit that is no longer so: it may have moved or fallen.
  std::string Ended(const ChangedEntry& changed, const PlightWords& words) {
    const Square was =
        First(changed.entry->squares & before_.position().Pieces(group_.side));
    const Piece unit = before_.position().At(was);
    for (const Square square : Each(after_.position().Pieces(group_.side))) {
      if (group_.pairing.Origin(square) != was ||
          after_.position().At(square) != unit) {
        continue;
      }
      AddAfter(MaterialClaim(after_, group_.side, unit.kind()));
      if (group_.term == TermId::kLoosePiece &&
          after_.Attackers(group_.side, square) == 0) {
        return who_ + "'s " + Name(unit.kind()) + " on " + ToString(square) +
               (ExchangeValueOf(after_, square) > 0
                    ? " hangs now rather than merely standing loose"
                    : " still has no guard, but that counts no more");
      }
      return who_ + "'s " + Name(unit.kind()) + " on " + ToString(square) +
             " " + words.ends;
    }
    return Owned(before_, changed) + ", which " + words.was + ", is gone";
  }

  // The same square is among the entries that went: only its weight changed.
  bool StillSo(const ChangedEntry& changed) const {
    return std::any_of(group_.gone.begin(), group_.gone.end(),
                       [&](const ChangedEntry& gone) {
                         return gone.entry->squares == changed.entry->squares;
                       });
  }

  void Ending() {
    const std::string noun =
        DefiniteList(group_.added.empty() ? group_.gone : group_.added);
    if (group_.gone.empty()) {
      return Say("Now it counts: " + Phrases(group_.added) + ".", noun);
    }
    if (group_.added.empty()) {
      return Say("It no longer counts: " + Phrases(group_.gone) + ".", noun);
    }
    Say("It counts for " +
            std::string(group_.change_cp > 0 ? "White" : "Black") +
            " more: " + Phrases(group_.added) + ".",
        noun);
  }

  const ChangeGroup& group_;
  const Facts& before_;
  const Facts& after_;
  const std::string who_;
  ChangeText told_;
};

}  // namespace

ChangeText TellChange(const ChangeGroup& group) { return Teller(group).Tell(); }

}  // namespace assay
