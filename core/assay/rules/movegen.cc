// One pass finds the checkers, the pinned pieces and the squares that the
// king may not enter; every move then generated is legal, none is tried and
// taken back. What is done with the moves (listed, counted) is a template
// parameter, as is the side, so that counting costs no list.
#include "assay/rules/movegen.h"

namespace assay {
namespace {

class ListSink {
 public:
  explicit ListSink(MoveList& moves) : moves_(moves) {}
  void Targets(Square from, Bitboard to) {
    for (const Square square : Each(to)) moves_.Add(Move(from, square));
  }
  // Pawn moves by how far back (in square numbers) each came from.
  void PawnMoves(Bitboard to, int offset) {
    for (const Square square : Each(to)) {
      moves_.Add(Move(Square(square - offset), square));
    }
  }
  void Promotions(Bitboard to, int offset) {
    for (const Square square : Each(to)) {
      const auto from = Square(square - offset);
      for (const PieceKind kind : {PieceKind::kQueen, PieceKind::kRook,
                                   PieceKind::kBishop, PieceKind::kKnight}) {
        moves_.Add(Move::Promotion(from, square, kind));
      }
    }
  }
  void One(Move move) { moves_.Add(move); }

 private:
  MoveList& moves_;
};

class CountSink {
 public:
  void Targets(Square /*from*/, Bitboard to) { count_ += PopCount(to); }
  void PawnMoves(Bitboard to, int /*offset*/) { count_ += PopCount(to); }
  void Promotions(Bitboard to, int /*offset*/) { count_ += 4 * PopCount(to); }
  void One(Move /*move*/) { ++count_; }
  int count() const { return count_; }

 private:
  int count_ = 0;
};

// Looks for one move, and lists none.
class SeekSink {
 public:
  explicit SeekSink(Move sought) : sought_(sought) {}
  void Targets(Square from, Bitboard to) {
    found_ |= from == sought_.from() && Contains(to, sought_.to()) &&
              sought_ == Move(from, sought_.to());
  }
  void PawnMoves(Bitboard to, int offset) {
    found_ |= Contains(to, sought_.to()) &&
              sought_ == Move(Square(sought_.to() - offset), sought_.to());
  }
  void Promotions(Bitboard to, int offset) {
    found_ |= Contains(to, sought_.to()) && sought_.is_promotion() &&
              sought_.from() == Square(sought_.to() - offset);
  }
  void One(Move move) { found_ |= move == sought_; }
  bool found() const { return found_; }

 private:
  const Move sought_;
  bool found_ = false;
};

template <Side kUs, class Sink>
class Generator {
 public:
  // Moves to other squares than the wanted ones are not made.
  Generator(const Position& position, Bitboard wanted, Sink& sink)
      : position_(position),
        wanted_(wanted),
        sink_(sink),
        own_(position.Pieces(kUs)),
        enemy_(position.Pieces(kThem)),
        occupied_(own_ | enemy_),
        king_(position.King(kUs)) {}

  void Run() {
    FindCheckersAndPins();
    const Bitboard steps = KingAttacks(king_) & ~own_ & wanted_;
    const Bitboard unsafe =
        steps != 0 || MayCastle() ? UnsafeSquares() : kEmptySet;
    sink_.Targets(king_, steps & ~unsafe);
    if (HasMany(checkers_)) return;
    Bitboard allowed = wanted_;
    if (checkers_ != 0) {
      allowed &= checkers_ | Between(king_, First(checkers_));
    } else {
      Castling(unsafe);
    }
    Pieces(allowed & ~own_);
    Pawns(allowed);
    EnPassant();
  }

 private:
  static constexpr Side kThem = Other(kUs);
  static constexpr int kUp = kUs == Side::kWhite ? 8 : -8;

  Bitboard Own(PieceKind kind) const { return own_ & position_.Pieces(kind); }
  Bitboard Enemy(PieceKind kind) const {
    return enemy_ & position_.Pieces(kind);
  }

  // Squares that the enemy attacks once the king has stepped off its own.
  Bitboard UnsafeSquares() const {
    const Bitboard occupied = occupied_ ^ Bit(king_);
    Bitboard unsafe = PawnAttacks(kThem, Enemy(PieceKind::kPawn)) |
                      KingAttacks(position_.King(kThem));
    for (const Square s : Each(Enemy(PieceKind::kKnight))) {
      unsafe |= KnightAttacks(s);
    }
    const Bitboard queens = Enemy(PieceKind::kQueen);
    for (const Square s : Each(Enemy(PieceKind::kBishop) | queens)) {
      unsafe |= BishopAttacks(s, occupied);
    }
    for (const Square s : Each(Enemy(PieceKind::kRook) | queens)) {
      unsafe |= RookAttacks(s, occupied);
    }
    return unsafe;
  }

  // But for what the enemy attacks, which takes longer to find out.
  bool MayCastle(Wing wing) const {
    return position_.castling().Has(kUs, wing) &&
           (Between(king_, CastlingRook(kUs, wing)) & occupied_) == 0 &&
           Contains(wanted_, CastledKing(kUs, wing));
  }
  bool MayCastle() const {
    return MayCastle(Wing::kKingside) || MayCastle(Wing::kQueenside);
  }

  // Enemy sliders that would see the king if no own piece stood between: one
  // that none does gives check, one that a single piece does pins it. A pinned
  // piece may move only on its pin's line, kept apart by the kind of line.
  void FindCheckersAndPins() {
    checkers_ = (PawnAttacks(kUs, king_) & Enemy(PieceKind::kPawn)) |
                (KnightAttacks(king_) & Enemy(PieceKind::kKnight));
    const Bitboard queens = Enemy(PieceKind::kQueen);
    Classify((Enemy(PieceKind::kRook) | queens) & RookAttacks(king_, enemy_),
             pin_straight_);
    Classify(
        (Enemy(PieceKind::kBishop) | queens) & BishopAttacks(king_, enemy_),
        pin_diagonal_);
  }
  void Classify(Bitboard sliders, Bitboard& pins) {
    for (const Square s : Each(sliders)) {
      const Bitboard between = Between(king_, s);
      const Bitboard own = between & own_;
      if (own == 0) {
        checkers_ |= Bit(s);
      } else if (!HasMany(own)) {
        pins |= between | Bit(s);
      }
    }
  }

  void Castling(Bitboard unsafe) {
    for (const Wing wing : kWings) {
      if (!MayCastle(wing)) continue;
      const Square to = CastledKing(kUs, wing);
      if (((Between(king_, to) | Bit(to)) & unsafe) == 0) {
        sink_.One(Move(king_, to, Move::Type::kCastling));
      }
    }
  }

  void Pieces(Bitboard targets) {
    const Bitboard pinned = pin_straight_ | pin_diagonal_;
    for (const Square s : Each(Own(PieceKind::kKnight) & ~pinned)) {
      sink_.Targets(s, KnightAttacks(s) & targets);
    }
    const Bitboard queens = Own(PieceKind::kQueen);
    const Bitboard diagonal =
        (Own(PieceKind::kBishop) | queens) & ~pin_straight_;
    for (const Square s : Each(diagonal & ~pin_diagonal_)) {
      sink_.Targets(s, BishopAttacks(s, occupied_) & targets);
    }
    for (const Square s : Each(diagonal & pin_diagonal_)) {
      sink_.Targets(s, BishopAttacks(s, occupied_) & targets & pin_diagonal_);
    }
    const Bitboard straight = (Own(PieceKind::kRook) | queens) & ~pin_diagonal_;
    for (const Square s : Each(straight & ~pin_straight_)) {
      sink_.Targets(s, RookAttacks(s, occupied_) & targets);
    }
    for (const Square s : Each(straight & pin_straight_)) {
      sink_.Targets(s, RookAttacks(s, occupied_) & targets & pin_straight_);
    }
  }

  void PawnStep(Bitboard to, int offset) {
    constexpr Bitboard kLast = RelativeRankMask(kUs, 7);
    sink_.PawnMoves(to & ~kLast, offset);
    if ((to & kLast) != 0) sink_.Promotions(to & kLast, offset);
  }

  void Pawns(Bitboard allowed) {
    constexpr Bitboard kThird = RelativeRankMask(kUs, 2);
    const Bitboard pawns = Own(PieceKind::kPawn);
    // Pushes: not from a diagonal pin; from a straight one only along it.
    const Bitboard pushers = pawns & ~pin_diagonal_;
    const Bitboard free_ahead =
        Forward(kUs, pushers & ~pin_straight_) & ~occupied_;
    const Bitboard pinned_ahead =
        Forward(kUs, pushers & pin_straight_) & pin_straight_ & ~occupied_;
    const Bitboard one = free_ahead | pinned_ahead;
    const Bitboard two = Forward(kUs, one & kThird) & ~occupied_;
    PawnStep(one & allowed, kUp);
    sink_.PawnMoves(two & allowed, 2 * kUp);
    // Captures: not from a straight pin; from a diagonal one only along it.
    const Bitboard takers = pawns & ~pin_straight_;
    const Bitboard ahead_free = Forward(kUs, takers & ~pin_diagonal_);
    const Bitboard ahead_pinned = Forward(kUs, takers & pin_diagonal_);
    const Bitboard targets = enemy_ & allowed;
    PawnStep(
        (East(ahead_free) | (East(ahead_pinned) & pin_diagonal_)) & targets,
        kUp + 1);
    PawnStep(
        (West(ahead_free) | (West(ahead_pinned) & pin_diagonal_)) & targets,
        kUp - 1);
  }

  // Two pawns leave one rank at once, which no pin mask foresees: each capture
  // is looked at by itself.
  void EnPassant() {
    const Square to = position_.en_passant();
    if (to == kNoSquare || !Contains(wanted_, to)) return;
    const auto captured = static_cast<Square>(to ^ 8);
    for (const Square from :
         Each(PawnAttacks(kThem, to) & Own(PieceKind::kPawn))) {
      const Bitboard after = (occupied_ ^ Bit(from) ^ Bit(captured)) | Bit(to);
      const Bitboard attackers =
          position_.Attackers(kThem, king_, after) & ~Bit(captured);
      if (attackers == 0) sink_.One(Move(from, to, Move::Type::kEnPassant));
    }
  }

  const Position& position_;
  const Bitboard wanted_;
  Sink& sink_;
  const Bitboard own_;
  const Bitboard enemy_;
  const Bitboard occupied_;
  const Square king_;
  Bitboard checkers_ = 0;
  Bitboard pin_straight_ = 0;
  Bitboard pin_diagonal_ = 0;
};

template <class Sink>
void Generate(const Position& position, Bitboard wanted, Sink& sink) {
  if (position.side_to_move() == Side::kWhite) {
    Generator<Side::kWhite, Sink>(position, wanted, sink).Run();
  } else {
    Generator<Side::kBlack, Sink>(position, wanted, sink).Run();
  }
}

}  // namespace

void LegalMoves(const Position& position, MoveList& moves) {
  LegalMovesTo(position, kAllSquares, moves);
}

void LegalMovesTo(const Position& position, Bitboard squares, MoveList& moves) {
  ListSink sink(moves);
  Generate(position, squares, sink);
}

int CountLegalMoves(const Position& position) {
  CountSink sink;
  Generate(position, kAllSquares, sink);
  return sink.count();
}

bool HasLegalMove(const Position& position) {
  return CountLegalMoves(position) > 0;
}

bool IsLegal(const Position& position, Move move) {
  SeekSink sink(move);
  Generate(position, Bit(move.to()), sink);
  return sink.found();
}

std::uint64_t Perft(const Position& position, int depth) {
  if (depth <= 0) return 1;
  if (depth == 1) {
    return static_cast<std::uint64_t>(CountLegalMoves(position));
  }
  MoveList moves;
  LegalMoves(position, moves);
  std::uint64_t lines = 0;
  for (const Move move : moves) {
    lines += Perft(position.After(move), depth - 1);
  }
  return lines;
}

}  // namespace assay
