// Pawn breaks.
//
// The trade recommends one where it attacks the base of a chain or the enemy
// centre, rids the side of a doubled or weak pawn, opens a file for its rooks
// or a diagonal for its bishop, or has a pawn of the wing exchanged for one of
// the centre; the more so in a cramped position, and on the wing where the own
// chain points when the centre is locked. Not where the pawn is simply lost,
// where it bares the own king, or where all that remains is an own weak pawn
// or a hole: what is left after the captures tells that. A break that needs it
// is prepared by a step of the pawn, by a piece out of its way, or by a guard.
#include "assay/facts/levers.h"

#include <algorithm>
#include <cstdlib>
#include <limits>

#include "assay/facts/danger.h"
#include "assay/facts/exchange.h"
#include "assay/facts/pieces.h"
#include "assay/plans/best_drafts.h"
#include "assay/plans/pawn_play.h"
#include "assay/rules/movegen.h"

namespace assay {
namespace {

// In centipawns, by own reasoning on the scale of the weights, where a weak
// pawn costs 10 to 25 and a rook on an open file gains 15 to 25: what the
// captures leave is counted by the ledger, these are for what grows from it.
constexpr Centipawns kBaseHit = 18;    // a chain without its base falls
constexpr Centipawns kCentreHit = 14;  // the pawn that holds the centre
constexpr Centipawns kUndoubles = 12;
constexpr Centipawns kFileForRook = 12;  // less than a file held already
// Each square of space that the opponent has more, where the break attacks what
// takes it; the exchange of a pawn is what frees a cramped side.
constexpr Centipawns kSquareLess = 3;
constexpr Centipawns kMostCramped = 15;
constexpr Centipawns kFreesBishop = 10;
// A pawn of the wing for one of the centre leaves the side with the centre.
constexpr Centipawns kWingForCentre = 8;
// With its one pawn in the centre the opponent loses its hold there.
constexpr Centipawns kLastOfCentre = 10;
// A weak pawn that goes can no longer be blockaded: the ledger sees the
// weakness gone, not that it would have grown.
constexpr Centipawns kWeakPawnGoes = 8;
constexpr Centipawns kChainPoints = 22;  // with a locked centre: the plan
constexpr Centipawns kBaresKing = 25;    // about two shelter pawns
// The f- or c-pawn from before a king that stands farther out: its neighbours
// stay, and the file that it opens is the rook's; twice that while the centre
// can open.
constexpr Centipawns kLoosensKing = 8;
// A rook that stands behind the pawn already, the enemy queen ahead of it.
constexpr Centipawns kLineOnQueen = 12;
// A developed piece that makes way, while the centre can still open: a tempo.
constexpr Centipawns kPieceLosesTime = 12;
constexpr Centipawns kLeast = 18;  // less is not worth naming
// What the ledger says of the captures, kept within what structure can be
// worth: beyond that it is tactics, which search has to answer.
constexpr Centipawns kMostLost = 40;
constexpr Centipawns kMostWon = 30;
constexpr int kCrampedBy = 2;     // squares of space behind
constexpr int kMuchLessRoom = 5;  // of them, that a reader is told of
constexpr int kFreedBy = 2;       // squares that a bishop sees more
constexpr int kMostChoices = 1;   // of going on with an even exchange
constexpr std::size_t kMostWeighed = 4;
constexpr std::size_t kMostGuards = 4;
// With this many minor pieces at home, development comes before preparing.
constexpr int kUndeveloped = 2;
// A break needs motives of its own to be worth a preparing move, more so one
// of a piece: a weak pawn's worth.
constexpr Centipawns kWorthAPawnMove = 10;
constexpr Centipawns kWorthAPieceMove = 18;
constexpr Centipawns kWorthTwoMoves = 22;

struct Break {
  std::vector<Move> moves;  // the last one is the lever move
  LeverMove lever;
  Centipawns motives = 0;
};

int StepOf(Side side) { return side == Side::kWhite ? 8 : -8; }

Square Ahead(Side side, Square square, int steps) {
  return static_cast<Square>(square + StepOf(side) * steps);
}

bool HasRookFor(const Outlook& outlook, Bitboard file) {
  const Bitboard rooks = outlook.facts.Own(outlook.side, PieceKind::kRook);
  return (rooks & (file | Neighbours(file))) != 0;
}

// Whether a bishop sees farther once the pawn has left its square.
bool FreesBishop(const Outlook& outlook, const LeverMove& lever) {
  const Facts& facts = outlook.facts;
  const Bitboard gone = outlook.position.Occupied() & ~Bit(lever.from);
  for (const Square bishop :
       Each(facts.Own(outlook.side, PieceKind::kBishop))) {
    if (!Contains(facts.Attacks(bishop), lever.from)) continue;
    const Bitboard more =
        PieceAttacks(PieceKind::kBishop, bishop, gone) & ~facts.Attacks(bishop);
    if (PopCount(more) >= kFreedBy) return true;
  }
  return false;
}

// Whether the lever hits a pawn that holds the centre: on its fourth or fifth
// rank, and in a locked centre one of the locked pawns or its guard.
Bitboard CentreHit(const Outlook& outlook, const LeverMove& lever) {
  const Bitboard advanced = RelativeRankMask(outlook.enemy(), 3) |
                            RelativeRankMask(outlook.enemy(), 4);
  const Bitboard hit = lever.targets & Facts::kCentreFiles & advanced;
  if (outlook.facts.centre() != Centre::kClosed) return hit;
  const Bitboard rammed = outlook.facts.CentreRams(outlook.enemy());
  return hit & (rammed | PawnAttacks(outlook.side, rammed));
}

// What the exchange of the pawn for one of the enemy centre is worth.
Centipawns CentreMotives(const Outlook& outlook, const LeverMove& lever) {
  constexpr Bitboard kMiddle = FileMask(3) | FileMask(4);
  const Bitboard hit = CentreHit(outlook, lever);
  if (hit == 0) return 0;
  Centipawns sum = kCentreHit;
  const Facts& facts = outlook.facts;
  const int less = PopCount(facts.Space(outlook.enemy())) -
                   PopCount(facts.Space(outlook.side));
  if (less >= kCrampedBy) sum += std::min(less * kSquareLess, kMostCramped);
  if ((hit & kMiddle) == 0 || facts.centre() == Centre::kClosed) return sum;
  if (!Contains(kMiddle, lever.from) && !UncoversKing(outlook, lever.from)) {
    sum += kWingForCentre;
  }
  const Bitboard beyond =
      FillForward(outlook.enemy(), RelativeRankMask(outlook.enemy(), 3));
  const Bitboard centre = facts.Pawns(outlook.enemy()).pawns & kMiddle & beyond;
  if ((centre & ~hit) == 0) sum += kLastOfCentre;
  return sum;
}

// Whether the centre stays as it is for a while.
bool CentreHolds(const Outlook& outlook) {
  const Centre centre = outlook.facts.centre();
  return centre == Centre::kClosed || centre == Centre::kFixed;
}

// What the king loses by it that the ledger does not see yet.
Centipawns PriceForKing(const Outlook& outlook, Square pawn) {
  if (!UncoversKing(outlook, pawn)) return 0;
  const int king = FileOf(outlook.position.King(outlook.side));
  const bool farther_out =
      (FileOf(pawn) == 5 && king > 5) || (FileOf(pawn) == 2 && king < 2);
  if (!farther_out) return kBaresKing;
  return CentreHolds(outlook) ? kLoosensKing : 2 * kLoosensKing;
}

// Whether a rook stands behind the pawn and the enemy queen ahead of it.
bool OpensFileOnQueen(const Outlook& outlook, Square pawn) {
  const Facts& facts = outlook.facts;
  const Bitboard queens = facts.Own(outlook.enemy(), PieceKind::kQueen);
  if ((FrontSpan(outlook.side, Bit(pawn)) & queens) == 0) return false;
  return (RearSpan(outlook.side, Bit(pawn)) &
          facts.Own(outlook.side, PieceKind::kRook)) != 0;
}

// What speaks for the break whatever is then captured.
Centipawns MotivesOf(const Outlook& outlook, const LeverMove& lever) {
  const Facts& facts = outlook.facts;
  const PawnFacts& own = facts.Pawns(outlook.side);
  const PawnFacts& theirs = facts.Pawns(outlook.enemy());
  Centipawns sum = 0;
  if ((lever.targets & theirs.chain_bases) != 0) sum += kBaseHit;
  sum += CentreMotives(outlook, lever);
  if (Contains(own.doubled, lever.from)) sum += kUndoubles;
  const Bitboard file = FileMask(FileOf(lever.from));
  if ((own.pawns & file) == Bit(lever.from) && HasRookFor(outlook, file)) {
    sum += kFileForRook;
    if (OpensFileOnQueen(outlook, lever.from)) sum += kLineOnQueen;
  }
  if (Contains(own.isolated | own.backward, lever.from)) sum += kWeakPawnGoes;
  if (FreesBishop(outlook, lever)) sum += kFreesBishop;
  const bool points = ChainPointsTo(outlook, lever.to);
  if (points) sum += kChainPoints;
  if (!points) sum -= PriceForKing(outlook, lever.from);
  return sum;
}

// The side's score where the opponent leaves its recapturing pawn on the square
// and it takes on in turn; the least score where it has nothing to take.
Centipawns ScoreIfLeft(const Outlook& outlook, const Position& position,
                       Square square) {
  constexpr Centipawns kNothing = std::numeric_limits<Centipawns>::min();
  const Bitboard own = position.Pieces(outlook.side, PieceKind::kPawn);
  const Bitboard pawns = PawnAttacks(outlook.side, square) &
                         position.Pieces(outlook.enemy(), PieceKind::kPawn);
  if (!Contains(own, square) || pawns == 0 || position.InCheck()) {
    return kNothing;
  }
  const Square target = First(pawns);
  const Move capture = FindMove(position, outlook.side, square, target);
  if (capture.is_null()) return kNothing;
  const Position after = position.AfterPass().After(capture);
  const Move back = CheapestCapture(after, target);
  return ScoreAt(outlook, back.is_null() ? after : after.After(back));
}

// The side's score once the captures on the square are over: the side to move
// goes on where that wins something, with what is worth least; where it is an
// even exchange it has the choice, `choices` times.
Centipawns ScoreSettled(const Outlook& outlook, const Position& position,
                        Square square, int choices) {
  const int wins = ExchangeValueOf(position, square);
  const Move capture =
      wins > 0 || choices > 0 ? CheapestCapture(position, square) : Move();
  if (wins > 0 && !capture.is_null()) {
    return ScoreSettled(outlook, position.After(capture), square, choices);
  }
  const bool own_turn = position.side_to_move() == outlook.side;
  Centipawns now = ScoreAt(outlook, position);
  if (!own_turn) now = std::max(now, ScoreIfLeft(outlook, position, square));
  if (capture.is_null()) return now;
  const Centipawns then =
      ScoreSettled(outlook, position.After(capture), square, choices - 1);
  return own_turn ? std::max(now, then) : std::min(now, then);
}

// The side's score once the lever is dissolved as the opponent likes best:
// it captures and is captured, or it waits, and then the side may capture.
Centipawns ScoreAfterCaptures(const Outlook& outlook, const Position& end,
                              const LeverMove& lever) {
  const Centipawns now = ScoreAt(outlook, end);
  Centipawns worst = std::numeric_limits<Centipawns>::max();
  for (const Square target : Each(lever.targets)) {
    const Move theirs = FindMove(end, outlook.enemy(), target, lever.to);
    if (theirs.is_null()) continue;
    worst = std::min(worst, ScoreSettled(outlook, end.After(theirs), lever.to,
                                         kMostChoices));
  }
  // What the side could do if they wait makes nothing of it worse.
  if (worst <= now) return worst;
  Centipawns best = now;
  for (const Square target : Each(lever.targets)) {
    const Move ours = FindMove(end, outlook.side, lever.to, target);
    if (ours.is_null()) continue;
    best = std::max(best, ScoreSettled(outlook, end.AfterPass().After(ours),
                                       target, kMostChoices));
  }
  return std::min(best, worst);
}

// The best square for a piece that makes way: it guards the pawn or sees much.
Move OutOfTheWay(const Outlook& outlook, Square blocker, Square goal) {
  const Position& position = outlook.position;
  const Position own =
      position.side_to_move() == outlook.side ? position : position.AfterPass();
  MoveList moves;
  LegalMoves(own, moves);
  const Bitboard chased = ChasedByPawns(outlook.facts, outlook.enemy());
  Move best;
  int most = -kSquares;
  for (const Move move : moves) {
    if (move.from() != blocker || FileOf(move.to()) == FileOf(goal)) continue;
    if (!position.At(move.to()).empty()) continue;
    const Bitboard seen = PieceAttacks(position.At(blocker).kind(), move.to(),
                                       position.Occupied() ^ Bit(blocker));
    // A knight goes home for it only where the centre leaves it the time.
    if (RelativeRank(outlook.side, move.to()) == 0 &&
        position.At(blocker).kind() == PieceKind::kKnight &&
        outlook.facts.centre() != Centre::kClosed) {
      continue;
    }
    const int sees = PopCount(seen & ~position.Pieces(outlook.side)) +
                     (Contains(seen, goal) ? 4 : 0) -
                     (Contains(chased, move.to()) ? 4 : 0);
    // Of equals the same one for either side.
    const bool later = !best.is_null() && Relative(outlook.side, move.to()) >
                                              Relative(outlook.side, best.to());
    if (sees < most || (sees == most && later)) continue;
    if (!StandsSafely(own.After(move), move.to())) continue;
    most = sees;
    best = move;
  }
  return best;
}

// The steps of the pawn to the goal; empty where it takes more than two.
std::vector<Square> StepsTo(Side side, Square pawn, Square goal) {
  const int distance = std::abs(RankOf(goal) - RankOf(pawn));
  const bool at_home = RelativeRank(side, pawn) == 1;
  if (distance == 1 || (distance == 2 && at_home)) return {goal};
  if (distance == 2) return {Ahead(side, pawn, 1), goal};
  if (distance == 3 && at_home) return {Ahead(side, pawn, 2), goal};
  return {};
}

// Plays the steps after the moves that the break has already; false where one
// is not legal.
bool AddSteps(const Outlook& outlook, const std::vector<Square>& steps,
              Square pawn, Break& found) {
  for (const Square step : steps) {
    const std::optional<Position> at =
        PlayAlone(outlook.position, outlook.side, found.moves);
    if (!at.has_value()) return false;
    const Move move = FindMove(*at, outlook.side, pawn, step);
    if (move.is_null()) return false;
    found.moves.push_back(move);
    pawn = step;
  }
  return true;
}

void AddPrepared(const Outlook& outlook, std::vector<Break>& breaks) {
  const Position& position = outlook.position;
  const Bitboard enemy_pawns = outlook.facts.Pawns(outlook.enemy()).pawns;
  const Bitboard useful = PawnAttacks(outlook.enemy(), enemy_pawns);
  const PawnFacts& own = outlook.facts.Pawns(outlook.side);
  const Bitboard movers = own.pawns & ~own.levers & ~own.rammed & ~own.passed;
  for (const Square pawn : Each(movers)) {
    for (const Square goal :
         Each(FrontSpan(outlook.side, Bit(pawn)) & useful)) {
      const std::vector<Square> steps = StepsTo(outlook.side, pawn, goal);
      if (steps.empty()) continue;
      const Bitboard in_way =
          (Between(pawn, goal) | Bit(goal)) & position.Occupied();
      if (in_way == 0 && steps.size() == 1) continue;  // no preparation
      if (HasMany(in_way) || (in_way & ~position.Pieces(outlook.side)) != 0 ||
          (in_way & (own.pawns | Bit(position.King(outlook.side)))) != 0) {
        continue;
      }
      Break found;
      found.lever = {pawn, goal, PawnAttacks(outlook.side, goal) & enemy_pawns};
      found.motives = MotivesOf(outlook, found.lever);
      if (found.motives < (in_way == 0 ? kWorthAPawnMove : kWorthAPieceMove)) {
        continue;
      }
      if (in_way != 0) {
        const Move away = OutOfTheWay(outlook, First(in_way), goal);
        if (away.is_null()) continue;
        found.moves.push_back(away);
        if (!CentreHolds(outlook)) found.motives -= kPieceLosesTime;
      }
      if (AddSteps(outlook, steps, pawn, found)) {
        found.lever.from = found.moves.back().from();
        breaks.push_back(std::move(found));
      }
    }
  }
}

std::vector<Break> FindBreaks(const Outlook& outlook) {
  std::vector<Break> breaks;
  for (const LeverMove& lever : FindLeverMoves(outlook.facts, outlook.side)) {
    const Move move =
        FindMove(outlook.position, outlook.side, lever.from, lever.to);
    if (move.is_null()) continue;
    breaks.push_back({{move}, lever, MotivesOf(outlook, lever)});
  }
  const Bitboard home = UndevelopedPieces(outlook.facts, outlook.side);
  if (PopCount(home) < kUndeveloped) AddPrepared(outlook, breaks);
  std::stable_sort(
      breaks.begin(), breaks.end(),
      [](const Break& a, const Break& b) { return a.motives > b.motives; });
  if (breaks.size() > kMostWeighed) breaks.resize(kMostWeighed);
  return breaks;
}

// Whether the move brings a guard to the square where the pawn will stand.
bool Guards(const Outlook& outlook, const Position& at, Move move,
            const LeverMove& lever) {
  const PieceKind kind = at.At(move.from()).kind();
  if (kind == PieceKind::kKing || kind == PieceKind::kQueen) return false;
  if (kind == PieceKind::kPawn) {
    return Contains(PawnAttacks(outlook.side, move.to()), lever.to);
  }
  const Bitboard occupied =
      (at.Occupied() ^ Bit(move.from()) ^ Bit(lever.from)) | Bit(lever.to) |
      Bit(move.to());
  return Contains(PieceAttacks(kind, move.to(), occupied), lever.to);
}

// Quiet moves that bring a guard, the likeliest first: a pawn, a rook behind
// the lever pawn, a minor piece, a rook from the side.
std::vector<Move> GuardMoves(const Outlook& outlook, const Position& at,
                             const LeverMove& lever) {
  const Position own = at.side_to_move() == outlook.side ? at : at.AfterPass();
  const auto key_of = [&](Move move) {
    const PieceKind kind = at.At(move.from()).kind();
    const bool behind = FileOf(move.to()) == FileOf(lever.to);
    const int rank = kind == PieceKind::kPawn   ? 0
                     : kind != PieceKind::kRook ? 2
                     : behind                   ? 1
                                                : 3;
    return (rank << 12) | (Relative(outlook.side, move.from()) << 6) |
           Relative(outlook.side, move.to());
  };
  MoveList moves;
  LegalMoves(own, moves);
  std::vector<Move> found;
  for (const Move move : moves) {
    if (move.from() == lever.from || !at.At(move.to()).empty()) continue;
    if (Guards(outlook, at, move, lever)) found.push_back(move);
  }
  std::sort(found.begin(), found.end(),
            [&](Move a, Move b) { return key_of(a) < key_of(b); });
  if (found.size() > kMostGuards) found.resize(kMostGuards);
  return found;
}

// The moves with the guard between them.
std::vector<Move> With(const std::vector<Move>& before, Move guard,
                       const std::vector<Move>& after) {
  std::vector<Move> moves = before;
  moves.push_back(guard);
  moves.insert(moves.end(), after.begin(), after.end());
  return moves;
}

// One guard first after which the pawn is not lost; where the break is worth
// it, a pawn and another guard. False where that does not do.
bool AddGuard(const Outlook& outlook, Break& found) {
  const std::vector<Move> guards =
      GuardMoves(outlook, outlook.position, found.lever);
  for (const Move guard : guards) {
    std::vector<Move> moves = With({}, guard, found.moves);
    if (!AreSound(outlook, moves)) continue;
    found.moves = std::move(moves);
    return true;
  }
  if (found.motives < kWorthTwoMoves || found.moves.size() > 1) return false;
  for (const Move pawn : guards) {
    if (outlook.position.At(pawn.from()).kind() != PieceKind::kPawn) break;
    const std::optional<Position> at =
        PlayAlone(outlook.position, outlook.side, {pawn});
    if (!at.has_value() || at->InCheck()) continue;
    for (const Move guard : GuardMoves(outlook, *at, found.lever)) {
      std::vector<Move> moves = With({pawn}, guard, found.moves);
      if (!AreSound(outlook, moves)) continue;
      found.moves = std::move(moves);
      return true;
    }
  }
  return false;
}

// The file that the pawn leaves is open, or half-open, once it has taken its
// target: where the side has rooks to use it.
void AddOpenedFile(const Outlook& outlook, const Break& found,
                   std::vector<Claim>& claims) {
  const int file = FileOf(found.lever.from);
  if (outlook.facts.Own(outlook.side, PieceKind::kRook) == 0) return;
  std::vector<Move> moves = found.moves;
  moves.emplace_back(found.lever.to, First(found.lever.targets));
  const std::optional<Position> end =
      PlayAlone(outlook.position, outlook.side, moves);
  if (!end.has_value()) return;
  const Facts facts(*end);
  const bool open = Contains(facts.OpenFiles(), found.lever.to);
  if (!open && !Contains(facts.HalfOpenFiles(outlook.side), found.lever.to)) {
    return;
  }
  Claim claim =
      open ? OpenFileClaim(file) : HalfOpenFileClaim(outlook.side, file);
  claim.line = WithPasses(outlook.position, outlook.side, moves);
  claims.push_back(std::move(claim));
}

// What the break is good for, the most telling first: weak pawns that go, a
// bishop that gets out, a chain that loses its base, room, a file.
void AddPurposes(const Outlook& outlook, const Break& found,
                 std::vector<Claim>& claims) {
  const Facts& facts = outlook.facts;
  const Side side = outlook.side;
  const PawnFacts& own = facts.Pawns(side);
  const PawnFacts& theirs = facts.Pawns(outlook.enemy());
  const Square pawn = found.lever.from;
  if (Contains(own.doubled, pawn)) {
    claims.push_back(DoubledClaim(facts, side, FileOf(pawn)));
  }
  for (const auto& [weak, kind] :
       {std::pair{own.isolated, ClaimKind::kIsolated},
        std::pair{own.backward, ClaimKind::kBackward}}) {
    if (Contains(weak, pawn)) {
      claims.push_back(SquaresClaim(kind, side, Bit(pawn)));
    }
  }
  for (const Square bishop : Each(facts.Own(side, PieceKind::kBishop))) {
    const Bitboard pawns = BadBishopPawns(facts, side, bishop);
    if (Contains(pawns, pawn)) {
      claims.push_back(BadBishopClaim(side, bishop, pawns));
    }
  }
  for (const Square base : Each(found.lever.targets & theirs.chain_bases)) {
    claims.push_back(ChainBaseClaim(facts, outlook.enemy(), base));
  }
  if (facts.centre() == Centre::kClosed) claims.push_back(CentreClaim(facts));
  const Claim space = SpaceClaim(facts, side);
  if (space.other_count - space.count >= kMuchLessRoom) claims.push_back(space);
  AddOpenedFile(outlook, found, claims);
}

Draft DraftOf(const Outlook& outlook, const Break& found) {
  Draft draft;
  draft.kind = PlanKind::kLever;
  draft.moves = found.moves;
  draft.targets = SquareList(found.lever.targets);
  Claim claim = LeverMoveClaim(outlook.side, found.lever);
  std::vector<Move> before = found.moves;
  before.pop_back();
  claim.line = WithPasses(outlook.position, outlook.side, before);
  draft.claims.push_back(std::move(claim));
  AddPurposes(outlook, found, draft.claims);
  return draft;
}

}  // namespace

void DraftLevers(const Outlook& outlook, std::vector<Draft>& drafts) {
  if (outlook.facts.InCheck()) return;
  const Centipawns before = ScoreAt(outlook, outlook.position);
  Shortlist best(kMostWeighed);  // what a structure teaches is credited later
  for (Break& found : FindBreaks(outlook)) {
    if (found.motives <= 0) break;
    std::optional<Position> end =
        PlayAlone(outlook.position, outlook.side, found.moves);
    if (!end.has_value()) continue;
    if (!StandsSafely(*end, found.lever.to)) {
      if (found.moves.size() > 2 || found.motives < kWorthAPieceMove ||
          !AddGuard(outlook, found)) {
        continue;
      }
      end = PlayAlone(outlook.position, outlook.side, found.moves);
      if (!end.has_value()) continue;
    }
    if (end->InCheck()) continue;
    const Centipawns change =
        ScoreAfterCaptures(outlook, *end, found.lever) - before;
    const Centipawns value =
        found.motives + std::clamp(change, -kMostLost, kMostWon);
    if (value >= kLeast) best.Offer(outlook, DraftOf(outlook, found), value);
  }
  best.MoveTo(drafts);
}

}  // namespace assay
