// What each term is worth on the results of games: see bench/worth/measure.cc.
//
//   zcat $ASSAY_DATA/fit.tsv.gz | build/bin/assay_worth
//   build/bin/assay_worth games.pgn --html worth.html --json worth.json
#include "bench/own_term.h"

int main(int argc, char** argv) {
  return assay::bench::MeasureWorth(argc, argv);
}
