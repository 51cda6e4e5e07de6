// Centipawns, and pairs of them for the middlegame and the ending.
#ifndef ASSAY_BASE_SCORE_H_
#define ASSAY_BASE_SCORE_H_

namespace assay {

// Centipawns from White's point of view, unless a name says otherwise.
using Centipawns = int;

// How much middlegame is left: 256 with (nearly) all pieces on the board, 0 in
// a pure ending. A power of two, so that tapering is a shift.
inline constexpr int kFullPhase = 256;

// A value in the middlegame and in the ending, in centipawns.
struct Tapered {
  int midgame = 0;
  int endgame = 0;

  friend constexpr Tapered operator+(Tapered a, Tapered b) {
    return {a.midgame + b.midgame, a.endgame + b.endgame};
  }
  friend constexpr Tapered operator-(Tapered a, Tapered b) {
    return {a.midgame - b.midgame, a.endgame - b.endgame};
  }
  friend constexpr Tapered operator-(Tapered a) {
    return {-a.midgame, -a.endgame};
  }
  friend constexpr Tapered operator*(Tapered a, int times) {
    return {a.midgame * times, a.endgame * times};
  }
  friend constexpr bool operator==(Tapered a, Tapered b) {
    return a.midgame == b.midgame && a.endgame == b.endgame;
  }
};

// a * numerator / denominator, rounded half away from zero. The denominator
// is positive.
constexpr int ScaleRounded(int value, int numerator, int denominator) {
  const int product = value * numerator;
  return product >= 0 ? (2 * product + denominator) / (2 * denominator)
                      : -((-2 * product + denominator) / (2 * denominator));
}
constexpr Tapered Scale(Tapered value, int numerator, int denominator) {
  return {ScaleRounded(value.midgame, numerator, denominator),
          ScaleRounded(value.endgame, numerator, denominator)};
}

// The one value of a pair at a phase (0 to kFullPhase), rounded half away
// from zero: swapping the sides negates it exactly.
constexpr Centipawns AtPhase(Tapered value, int phase) {
  return ScaleRounded(
      1, value.midgame * phase + value.endgame * (kFullPhase - phase),
      kFullPhase);
}

}  // namespace assay

#endif  // ASSAY_BASE_SCORE_H_
