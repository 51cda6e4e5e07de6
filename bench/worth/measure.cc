// What each term is worth, measured on the results of games.
//
//   zcat $ASSAY_DATA/fit.tsv.gz | build/bin/assay_worth
//   build/bin/assay_worth games.pgn --html worth.html --json worth.json
//
// Reads FEN<TAB>points lines from standard input or a file, or the games of a
// .pgn file (bench/worth/samples.h says which of their positions). Prints a
// table. --weights FILE: other weights than the defaults, as `assay terms
// --format weights` writes them.
//
// Flat memory: positions are counted as they come.
#include <fstream>
#include <iostream>
#include <string>

#include "bench/format.h"
#include "bench/own_term.h"
#include "bench/weights_file.h"
#include "bench/worth/report.h"

namespace assay::bench {
namespace {

constexpr char kUsage[] =
    "usage: assay_worth [FILE.tsv | FILE.pgn | -] [--json FILE] [--html FILE] "
    "[--weights FILE]\n";

struct Options {
  std::string input = "-";
  std::string json;
  std::string html;
  std::string weights;
};

bool ReadOptions(int argc, char** argv, Options& options) {
  for (int i = 1; i < argc; ++i) {
    const std::string argument = argv[i];
    std::string* value = argument == "--json"      ? &options.json
                         : argument == "--html"    ? &options.html
                         : argument == "--weights" ? &options.weights
                                                   : nullptr;
    if (value != nullptr) {
      if (++i == argc) return false;
      *value = argv[i];
    } else if (argument.size() > 1 && argument[0] == '-') {
      return false;
    } else {
      options.input = argument;
    }
  }
  return true;
}

bool EndsWith(const std::string& text, const std::string& end) {
  return text.size() >= end.size() &&
         text.compare(text.size() - end.size(), end.size(), end) == 0;
}

}  // namespace

int MeasureWorth(int argc, char** argv, const std::vector<OwnTerm>& own) {
  constexpr int kBadUsage = 2;
  constexpr int kNotReadOrWritten = 3;
  Options options;
  if (!ReadOptions(argc, argv, options)) {
    std::cerr << kUsage;
    return kBadUsage;
  }
  Weights weights;
  if (!options.weights.empty() && !ReadWeights(options.weights, weights)) {
    return kBadUsage;
  }
  Tally tally(weights, own);
  const SampleVisitor add = [&](const Sample& sample) { tally.Add(sample); };
  ReadCount count;
  if (options.input == "-") {
    count = ReadLines(std::cin, add);
  } else {
    std::ifstream file(options.input);
    if (!file) {
      std::cerr << options.input << ": cannot be read\n";
      return kNotReadOrWritten;
    }
    count = EndsWith(options.input, ".pgn") ? ReadGames(options.input, add)
                                            : ReadLines(file, add);
  }
  if (count.faulty > 0) {
    std::cerr << count.faulty << " lines or games could not be used\n";
  }
  if (count.samples == 0) {
    std::cerr << "no positions read\n";
    return kBadUsage;
  }
  tally.Finish();
  const std::string source =
      options.input == "-" ? "standard input" : options.input;
  // A report on standard output takes the table's place.
  if (options.json != "-" && options.html != "-") {
    std::cout << ToTable(tally, source);
  }
  const bool written = WriteFile(options.json, ToJson(tally, source)) &&
                       WriteFile(options.html, ToHtml(tally, source));
  return written ? 0 : kNotReadOrWritten;
}

}  // namespace assay::bench
