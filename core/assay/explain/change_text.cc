// Most terms read "White now has A and B, no longer C"; those whose entries are
// no things to have, or are counts that go up and down, have words of their
// own.
#include "assay/explain/change_text.h"

#include <algorithm>
#include <cstdlib>

#include "assay/explain/line_text.h"
#include "assay/explain/topic.h"
#include "assay/facts/claim_makers.h"
#include "assay/facts/danger.h"
#include "assay/facts/exchange.h"
#include "assay/facts/kings.h"

namespace assay {
namespace {

constexpr std::size_t kMostDetails = 3;
constexpr int kMostSquares = 3;  // that a clause names

Message Phrases(const std::vector<ChangedEntry>& entries) {
  std::vector<Message> phrases;
  for (const ChangedEntry& changed : entries) {
    if (phrases.size() == kMostDetails) break;
    phrases.push_back(changed.phrase);
  }
  return And(std::move(phrases));
}

// "a hole on f4" as "the hole on f4"; others as they are.
Message Known(const std::vector<ChangedEntry>& entries) {
  std::vector<Message> phrases;
  for (const ChangedEntry& changed : entries) {
    if (phrases.size() == kMostDetails) break;
    phrases.push_back(Say("known", changed.phrase));
  }
  return And(std::move(phrases));
}

// Whether several things are spoken of: whether it "weighs" or they "weigh".
bool IsPlural(const Message& phrases) {
  if (phrases.id == "list.and") return true;
  for (const char* id : {"pawns.doubled", "rooks.doubled", "pawns.hanging",
                         "islands", "knights.locked", "bishops.unlocked"}) {
    if (phrases.id == id) return true;
  }
  if (phrases.arguments.empty()) return false;
  const Argument::Value& first = phrases.arguments.front().value();
  const auto* squares = std::get_if<Squares>(&first);
  return squares != nullptr && HasMany(squares->set);
}

// The king of the side is among the claims of nearly all that concerns it.
class Teller {
 public:
  explicit Teller(const ChangeGroup& group)
      : group_(group),
        before_(group.pairing.before.facts),
        after_(group.pairing.after.facts),
        side_(group.side) {}

  ChangeText Tell() {
    Write();
    return std::move(told_);
  }

 private:
  void Write() {
    const bool added = !group_.added.empty();
    switch (group_.term) {
      case TermId::kTempo:
        return Put(Say(added ? "change.has_move" : "change.lost_move", side_),
                   Say("move"));
      case TermId::kScope:
        return Scope();
      case TermId::kSpace:
        return Space();
      case TermId::kCentreControl:
        return Edge(Say("edge.centre"), Say("noun.centre"));
      case TermId::kKnightPawns:
        return Edge(Say("edge.knights"), Say("noun.knights"));
      case TermId::kRookPawns:
        return Edge(Say("edge.rooks"), Say("noun.rooks"));
      case TermId::kSecondRook:
        return Put(Say(added ? "change.rooks" : "change.rooks_lost", side_),
                   Say("noun.second_rook"));
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
        return Put(Say("change.king_ahead", side_, group_.Good()),
                   Say("noun.king_ahead"));
      case TermId::kKingActivity:
        return Put(Say("change.king_race", Gainer()), Say("noun.king_race"));
      case TermId::kKingNearPawns:
        return Put(Say("change.king_race_to_pawns", Gainer()),
                   Say("noun.king_race_to_pawns"));
      case TermId::kAdvancedPawns:
        return Edge(Say("pawns.advanced"), Say("noun.advanced_pawns"));
      case TermId::kFarControl:
        return Edge(Say("edge.far_control"), Say("noun.far_control"));
      case TermId::kKingZone:
        return Zone();
      case TermId::kKnightSquareTaken:
        return KnightSquare();
      case TermId::kFlankPawnMoved:
        return FlankPawn();
      case TermId::kDiagonalToKing:
      case TermId::kFileToKing:
        return LineToKing();
      case TermId::kHanging:
      case TermId::kLoosePiece:
      case TermId::kPinned:
      case TermId::kTrapped:
        return Plight(WordsOfPlight());
      case TermId::kEarlyQueen:
        return EarlyQueen();
      default:
        break;
    }
    if (TopicOf(group_.term) == Topic::kEnding) return Ending();
    Has();
  }

  Side Gainer() const {
    return group_.change_cp > 0 ? Side::kWhite : Side::kBlack;
  }

  void Put(Message clause, Message noun) {
    told_.said = Sentence(std::move(clause));
    told_.noun = std::move(noun);
  }
  void AddBefore(const Claim& claim) { told_.claims_before.push_back(claim); }
  void AddAfter(const Claim& claim) { told_.claims_after.push_back(claim); }

  // What there is now, else what there was.
  const std::vector<ChangedEntry>& Told() const {
    return group_.added.empty() ? group_.gone : group_.added;
  }

  // "White now has a hole on f4 and a hole on h4, no longer ...".
  void Has() {
    const Message added = Phrases(group_.added);
    const Message gone = Phrases(group_.gone);
    if (added == gone && !added.empty()) {
      // The same thing, of another weight.
      const bool more =
          group_.Good() == (Sign(side_) * Total(group_.added) > 0);
      return Put(Say(IsAgainstKing()   ? "change.king_weighs"
                     : IsPlural(added) ? "change.weigh"
                                       : "change.weighs",
                     side_, added, more),
                 Known(Told()));
    }
    Put(Say(IsAgainstKing() ? "change.king_clauses" : "change.clauses", side_,
            List("list.clauses", Clauses())),
        Known(Told()));
  }

  // What the side's king has to face, rather than what the side has.
  bool IsAgainstKing() const {
    switch (group_.term) {
      case TermId::kKingWing:
      case TermId::kNearKing:
      case TermId::kCheckSquares:
      case TermId::kKingShut:
        return true;
      default:
        return false;
    }
  }

  // What has come and gone, and what is there as before but counts otherwise.
  std::vector<Message> Clauses() const {
    const Message come = Phrases(Those(group_.added, false));
    const Message gone = Phrases(Those(group_.gone, false));
    const Message risen = Phrases(Those(group_.added, true));
    const Message faded = Phrases(Those(group_.gone, true));
    std::vector<Message> clauses;
    if (!come.empty()) {
      clauses.push_back(Say("change.now_has", come, gone));
    } else if (!gone.empty()) {
      clauses.push_back(Say("change.no_longer_has", gone));
    }
    if (!risen.empty() && (risen != faded || clauses.empty())) {
      clauses.push_back(
          faded.empty() ? Say("change.counts_now", risen)
                        : Say("change.other_weight", risen,
                              std::abs(Total(Those(group_.added, true))) >
                                  std::abs(Total(Those(group_.gone, true)))));
    } else if (risen.empty() && !faded.empty()) {
      clauses.push_back(Say("change.counts_no_more", faded));
    }
    return clauses;
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
    std::vector<Message> parts;
    std::vector<Message> nouns;
    const auto change = [](const Reach& reach) {
      return std::abs(reach.is - reach.was);
    };
    for (const Reach& reach : reaches) {
      // One square more or less is not felt beside greater changes.
      if (parts.size() == 2 || (!parts.empty() && change(reach) < 2)) break;
      const Message unit = UnitOn(after_.position(), reach.square);
      parts.push_back(
          Say(reach.is > reach.was ? "change.reach_up" : "change.reach_down",
              parts.empty() ? Owned(after_, reach.square) : unit, reach.is,
              reach.was));
      nouns.push_back(unit);
      AddBefore(ScopeClaim(before_, side_, reach.origin));
      AddAfter(ScopeClaim(after_, side_, reach.square));
    }
    // Clauses with commas of their own.
    Put(List("list.semicolon", std::move(parts)),
        Say("noun.reach", And(std::move(nouns))));
  }

  // Of pieces that are there before and after, those that changed the way that
  // the whole did, most first.
  std::vector<Reach> ReachesThatChanged() const {
    std::vector<Reach> reaches;
    const Bitboard pieces = after_.position().Pieces(side_) &
                            ~after_.position().Pieces(PieceKind::kPawn) &
                            ~after_.position().Pieces(PieceKind::kKing);
    for (const Square square : Each(pieces)) {
      const Square origin = group_.pairing.Origin(square);
      if (origin == kNoSquare ||
          before_.position().At(origin) != after_.position().At(square)) {
        continue;
      }
      const Reach reach{square, origin, PopCount(before_.Scope(side_, origin)),
                        PopCount(after_.Scope(side_, square))};
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
    std::vector<Message> units;
    for (const ChangedEntry& changed : list) {
      if (units.size() == 2) break;
      units.push_back(UnitOn(facts.position(), First(changed.entry->squares)));
    }
    const Message all = And(std::move(units));
    Put(Say(gone ? "change.reach_gone" : "change.reach_new", all),
        Say("noun.reach", all));
  }

  // "near Black's king f7 and h7 are now attacked twice"; where no square tells
  // it, or the king has gone elsewhere, that the pressure has grown or eased.
  void Zone() {
    const Claim was = KingZoneClaim(before_, side_);
    const Claim is = KingZoneClaim(after_, side_);
    AddBefore(was);
    AddAfter(is);
    const bool stays =
        before_.position().King(side_) == after_.position().King(side_);
    Message said = stays ? ZoneSquares(was, is) : Message();
    if (said.empty()) said = Say("change.zone", side_, group_.Good());
    Put(std::move(said), Say("noun.zone", side_));
  }

  Message ZoneSquares(const Claim& was, const Claim& is) const {
    const bool good = group_.Good();
    const auto is_short = [](Bitboard squares) {
      return squares != 0 && PopCount(squares) <= kMostSquares;
    };
    const auto said = [&](std::string_view id, Bitboard squares) {
      return Say(id, side_, Squares{squares});
    };
    const auto new_in = [good](const SquareList& then, const SquareList& now) {
      return good ? then.ToSet() & ~now.ToSet() : now.ToSet() & ~then.ToSet();
    };
    const Bitboard twice = new_in(was.squares, is.squares);
    if (is_short(twice)) {
      return Say("change.zone_twice", side_, Squares{twice}, good);
    }
    const Bitboard thin = new_in(was.others, is.others);
    if (!good) {
      return is_short(thin) ? said("change.zone_thin", thin) : Message();
    }
    const Bitboard free = thin & ~after_.Attacked(Other(side_));
    if (is_short(free)) return said("change.zone_free", free);
    const Bitboard guarded = thin & after_.AttackedTwice(side_);
    return is_short(guarded) ? said("change.zone_guarded", guarded) : Message();
  }

  void Space() {
    const auto count = [](const Facts& facts, Side side) {
      return PopCount(facts.Space(side));
    };
    const Side other = Other(side_);
    AddBefore(SpaceClaim(before_, side_));
    AddAfter(SpaceClaim(after_, side_));
    Put(Say("change.space", side_, count(after_, side_), other,
            count(after_, other), count(before_, side_), count(before_, other)),
        Say("noun.space"));
  }

  // What one side alone can have, the balance being its.
  void Edge(Message what, Message noun) {
    if (group_.added.empty()) {
      return Put(Say("change.clauses", side_,
                     Say("change.no_longer_has", std::move(what))),
                 std::move(noun));
    }
    if (group_.gone.empty()) {
      return Put(Say("change.clauses", side_,
                     Say("change.now_has", std::move(what), Message())),
                 std::move(noun));
    }
    Message edge = Say("change.edge", side_, noun, group_.Good());
    Put(std::move(edge), std::move(noun));
  }

  // "a knight more" as "a knight".
  static std::vector<Message> Surplus(
      const std::vector<ChangedEntry>& entries) {
    std::vector<Message> units;
    units.reserve(entries.size());
    for (const ChangedEntry& changed : entries) {
      units.push_back(
          std::get<Message>(changed.phrase.arguments.front().value()));
    }
    return units;
  }

  void Material() {
    const std::vector<Message> now = Surplus(group_.added);
    const std::vector<Message> was = Surplus(group_.gone);
    std::vector<Message> nouns;
    for (const Message& unit : now.empty() ? was : now) {
      nouns.push_back(Say("known", unit));
    }
    Message noun = And(std::move(nouns));
    if (now.empty()) {
      return Put(Say("change.no_longer_up", side_, And(was)), std::move(noun));
    }
    Put(Say("change.up", side_, And(now), And(was)), std::move(noun));
  }

  void Undeveloped() {
    const Bitboard home = UndevelopedPieces(after_, side_);
    const int was = PopCount(UndevelopedPieces(before_, side_));
    AddBefore(CentreClaim(before_));
    AddAfter(CentreClaim(after_));
    if (PopCount(home) == was) {
      return Put(Say("change.development_weighs", side_, group_.Good()),
                 Say("noun.development"));
    }
    Put(home == 0
            ? Say("change.developed", side_)
            : Say("change.at_home", side_, PopCount(home), Squares{home}, was),
        Say("noun.development"));
  }

  void EarlyQueen() {
    if (group_.gone.empty() || group_.added.empty()) return Has();
    Put(Say("change.clauses", side_,
            Say("change.now_has", Phrases(group_.added), Message())),
        Say("noun.early_queen"));
  }

  // --- the king ---

  void Shelter() {
    const auto without = [&](const Facts& facts) {
      return KingFiles(facts, side_) & ~FillFiles(ShelterPawns(facts, side_));
    };
    AddBefore(ShelterClaim(before_, side_));
    AddAfter(ShelterClaim(after_, side_));
    const Bitboard now = without(after_);
    const Bitboard was = without(before_);
    Put(now == was ? Say("change.shelter_weighs", side_, group_.Good())
                   : Say("change.shelter", side_, Files{now}, Files{was}),
        Say("noun.shelter", side_));
  }

  // By name where one piece has come or gone, else by number.
  void Attackers() {
    const Bitboard now = KingAttackers(after_, side_);
    const Bitboard was = KingAttackers(before_, side_);
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
    if (was != 0) AddBefore(KingAttackersClaim(before_, side_));
    if (now != 0) AddAfter(KingAttackersClaim(after_, side_));
    Put(AttackersThatChanged(now, was, come, gone),
        Say("noun.pressure", side_));
  }

  Message AttackersThatChanged(Bitboard now, Bitboard was, Bitboard come,
                               Bitboard gone) const {
    if (come == 0 && gone == 0) {
      return Say("change.pressure", side_, group_.Good());
    }
    if (PopCount(come) == 1 && gone == 0) {
      return Say("change.now_bears", side_,
                 UnitOn(after_.position(), First(come)));
    }
    if (PopCount(gone) == 1 && come == 0) {
      return Say("change.no_longer_bears", side_,
                 UnitOn(before_.position(), First(gone)));
    }
    return Say("change.bear", side_, PopCount(now), PopCount(was));
  }

  void Uncastled() {
    const Square king = after_.position().King(side_);
    AddAfter(MaterialClaim(after_, side_, PieceKind::kKing));
    if (IsCastled(after_, side_) && !IsCastled(before_, side_)) {
      AddAfter(SquaresClaim(ClaimKind::kCastled, side_, Bit(king)));
      return Put(Say("change.king_castled", side_, king),
                 Say("noun.king_safety"));
    }
    if (group_.added.empty() || group_.gone.empty()) {
      return Put(Say(group_.added.empty() ? "change.king_out_of_danger"
                                          : "change.king_in_centre",
                     side_),
                 Say("noun.king_in_centre"));
    }
    AddBefore(CentreClaim(before_));
    AddAfter(CentreClaim(after_));
    Put(Say("change.king_in_middle", side_, group_.Good()),
        Say("noun.king_in_centre"));
  }

  void KnightSquare() {
    const bool gone = group_.added.empty();
    const Entry& entry = *Told().front().entry;
    const Claim& claim = Own(!gone).ledger.claims[entry.first_claim];
    Put(gone ? Say("change.square_free", claim.squares[0], side_,
                   claim.others[0])
             : group_.added.front().phrase,
        Say("noun.knights_square", claim.squares[0]));
  }

  void FlankPawn() {
    const Bitboard now = PawnsGone(group_.added);
    const Bitboard was = PawnsGone(group_.gone);
    Put(now == was
            ? Say("change.flank_weighs", side_, Squares{now}, group_.Good())
            : Say("change.flank_pawn", side_, Squares{now}, Squares{was}),
        Known(Told()));
  }

  // Where the pawns of such entries stood.
  Bitboard PawnsGone(const std::vector<ChangedEntry>& entries) const {
    Bitboard squares = 0;
    for (const ChangedEntry& changed : entries) {
      squares |=
          std::get<Squares>(changed.phrase.arguments.front().value()).set;
    }
    return squares;
  }

  void LineToKing() {
    const bool opened = !group_.added.empty();
    const Message what = Phrases(Told());
    Message noun = Known(Told());
    const Message gone = Phrases(group_.gone);
    if (opened && what == gone) {
      return Put(Say("change.to_fear", side_, !group_.Good(), what),
                 std::move(noun));
    }
    if (opened && !gone.empty()) {
      return Put(Say("change.now_faces", side_, what, gone), std::move(noun));
    }
    const std::vector<ChangedEntry>& list = Told();
    const bool still = std::all_of(
        list.begin(), list.end(),
        [](const ChangedEntry& changed) { return changed.holds_in_both; });
    if (!still) {
      return Put(
          Say(opened ? "change.faces" : "change.no_longer_faces", side_, what),
          std::move(noun));
    }
    Bitboard squares = 0;
    for (const ChangedEntry& changed : list) {
      squares |= LineSquares(changed, opened);
    }
    Put(Say("change.to_fear", side_, opened,
            group_.term == TermId::kFileToKing
                ? Say("the_files", Files{squares})
                : what),
        std::move(noun));
  }

  const Snapshot& Own(bool after) const {
    return after ? group_.pairing.after : group_.pairing.before;
  }

  // The squares of the line that an entry's first claim is about.
  Bitboard LineSquares(const ChangedEntry& changed, bool after) const {
    return Own(after).ledger.claims[changed.entry->first_claim].squares.ToSet();
  }

  // --- what befalls single pieces ---

  struct PlightWords {
    std::string_view is;    // "White's knight on c3 is pinned"
    std::string_view ends;  // "... is no longer pinned"
    std::string_view gone;  // "..., which was pinned, is gone"
    std::string_view noun;  // "the pinned knight on c3"
  };

  PlightWords WordsOfPlight() const {
    switch (group_.term) {
      case TermId::kHanging:
        // What hangs can still be saved where its owner is to move.
        return {OwnMove() ? "plight.attacked" : "plight.hangs",
                "plight.hangs_no_more", "plight.hanging_gone", "noun.hanging"};
      case TermId::kLoosePiece:
        return {"plight.loose", "plight.guarded", "plight.loose_gone",
                "noun.loose"};
      case TermId::kPinned:
        return {"plight.pinned", "plight.unpinned", "plight.pinned_gone",
                "noun.pinned"};
      default:
        return {"plight.trapped", "plight.free", "plight.trapped_gone",
                "noun.trapped"};
    }
  }

  bool OwnMove() const { return after_.position().side_to_move() == side_; }

  // "White's knight on c3".
  Message Owned(const Facts& facts, Square square) const {
    return Say("owned", square, side_, facts.position().At(square).kind());
  }

  // The unit that an entry is about.
  Square UnitOf(const Facts& facts, const ChangedEntry& changed) const {
    return First(changed.entry->squares & facts.position().Pieces(side_));
  }

  // What befalls a unit, by the id of a clause.
  struct Fate {
    std::string_view id;
    PieceKind kind = PieceKind::kNone;
    Square square = kNoSquare;
  };

  void Plight(const PlightWords& words) {
    std::vector<Fate> fates;
    for (const ChangedEntry& changed : Told()) {
      if (fates.size() == kMostDetails) break;
      if (group_.added.empty()) {
        fates.push_back(Ended(changed, words));
        continue;
      }
      const Square square = UnitOf(after_, changed);
      fates.push_back({StillSo(changed) ? SameStill(words) : words.is,
                       after_.position().At(square).kind(), square});
    }
    // What befalls several is said once.
    std::vector<Message> clauses;
    std::vector<std::string_view> said;
    for (const Fate& fate : fates) {
      if (std::find(said.begin(), said.end(), fate.id) != said.end()) continue;
      said.push_back(fate.id);
      clauses.push_back(Say(fate.id, Those(fates, fate.id)));
    }
    Put(And(std::move(clauses)), PlightNoun(words));
  }

  // "White's pawns on a3 and d6 and the knight on c3": a kind at a time.
  Message Those(const std::vector<Fate>& fates, std::string_view id) const {
    std::vector<Message> kinds;
    Bitboard seen = 0;
    for (const Fate& fate : fates) {
      if (fate.id != id || Contains(seen, fate.square)) continue;
      Bitboard squares = 0;
      for (const Fate& other : fates) {
        if (other.id == id && other.kind == fate.kind) {
          squares |= Bit(other.square);
        }
      }
      seen |= squares;
      kinds.push_back(kinds.empty()
                          ? Say("owned", Squares{squares}, side_, fate.kind)
                          : Say("units", Squares{squares}, fate.kind));
    }
    return And(std::move(kinds));
  }

  // "the pinned knight on c3 and the rook on d1".
  Message PlightNoun(const PlightWords& words) const {
    const Facts& facts = group_.added.empty() ? before_ : after_;
    std::vector<Message> units;
    for (const ChangedEntry& changed : Told()) {
      const Square square = UnitOf(facts, changed);
      const PieceKind kind = facts.position().At(square).kind();
      units.push_back(Say(units.empty() ? words.noun : "unit", kind, square));
    }
    return And(std::move(units));
  }

  std::string_view SameStill(const PlightWords& words) const {
    if (group_.term != TermId::kHanging) return words.is;
    return OwnMove() ? "plight.saved" : "plight.taken";
  }

  // What became of a unit that is no longer so: it may have moved or fallen.
  Fate Ended(const ChangedEntry& changed, const PlightWords& words) {
    const Square was = UnitOf(before_, changed);
    const Piece unit = before_.position().At(was);
    for (const Square square : Each(after_.position().Pieces(side_))) {
      if (group_.pairing.Origin(square) != was ||
          after_.position().At(square) != unit) {
        continue;
      }
      AddAfter(MaterialClaim(after_, side_, unit.kind()));
      const bool still_loose = group_.term == TermId::kLoosePiece &&
                               after_.Attackers(side_, square) == 0;
      if (!still_loose) return {words.ends, unit.kind(), square};
      return {ExchangeValueOf(after_, square) > 0 ? "plight.hangs_now"
                                                  : "plight.counts_no_more",
              unit.kind(), square};
    }
    return {words.gone, unit.kind(), was};
  }

  // The same square is among the entries that went: only its weight changed.
  bool StillSo(const ChangedEntry& changed) const {
    return std::any_of(group_.gone.begin(), group_.gone.end(),
                       [&](const ChangedEntry& gone) {
                         return gone.entry->squares == changed.entry->squares;
                       });
  }

  void Ending() {
    Message noun = Known(Told());
    if (group_.gone.empty()) {
      return Put(Say("change.counts", Phrases(group_.added)), std::move(noun));
    }
    if (group_.added.empty()) {
      return Put(Say("change.counts_not", Phrases(group_.gone)),
                 std::move(noun));
    }
    Put(Say("change.counts_more", Gainer(), Phrases(group_.added)),
        std::move(noun));
  }

  const ChangeGroup& group_;
  const Facts& before_;
  const Facts& after_;
  const Side side_;
  ChangeText told_;
};

}  // namespace

ChangeText TellChange(const ChangeGroup& group) { return Teller(group).Tell(); }

}  // namespace assay
