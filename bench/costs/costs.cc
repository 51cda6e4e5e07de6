// What each term costs: entries and nanoseconds a position, over the fixed
// positions, by theme and by term.
//
// A term of the catalogue is charged with the time since the entry before it,
// so checks that found nothing count for the next term that found something.
// What the clock itself takes is taken off again, an equal part for each entry,
// so that facts and all terms together are as long as a score without a clock.
// A term of one's own is timed by itself. Times are the processor's, and the
// middle ones of several rounds.
#include <time.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdint>
#include <iostream>
#include <utility>
#include <vector>

#include "assay/terms/ledger.h"
#include "bench/format.h"
#include "bench/own_term.h"
#include "bench/positions.h"

namespace assay::bench {
namespace {

constexpr int kRounds = 15;
constexpr char kUsage[] = "usage: term_costs [--json FILE | -]\n";

double Middle(std::vector<double> values) {
  const auto middle =
      values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

// Nanoseconds that the work takes of this thread's processor.
template <class Work>
double Timed(const Work& work) {
  const auto now = [] {
    constexpr double kNsPerSecond = 1e9;
    timespec time{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &time);
    return kNsPerSecond * static_cast<double>(time.tv_sec) +
           static_cast<double>(time.tv_nsec);
  };
  const double start = now();
  work();
  return now() - start;
}

// The same for each of the items, the middle one of the rounds.
template <class Items, class Work>
double TimedEach(const Items& items, const Work& work) {
  std::vector<double> rounds(kRounds);
  for (double& round : rounds) {
    round = Timed([&] {
      for (const auto& item : items) work(item);
    });
  }
  return Middle(std::move(rounds)) / static_cast<double>(items.size());
}

// A term's or a theme's.
struct Row {
  std::string name;
  std::string theme;   // empty for a term of one's own
  double entries = 0;  // a position
  double ns = 0;       // a position
};

struct Costs {
  std::size_t positions = 0;
  double clock_ns = 0;
  double facts_ns = 0;      // a position, as are the others
  double score_ns = 0;      // facts and all terms, nothing else
  std::vector<Row> themes;  // dearest first, as the terms
  std::vector<Row> terms;
};

void SortDearestFirst(std::vector<Row>& rows) {
  std::stable_sort(rows.begin(), rows.end(),
                   [](const Row& a, const Row& b) { return a.ns > b.ns; });
}

// What nothing else depends on: keeps the compiler from leaving the work out.
volatile Centipawns sink;

Row CostOf(const OwnTerm& term, const std::vector<Facts>& all_facts) {
  OwnEntries entries;
  std::size_t found = 0;
  const double ns = TimedEach(all_facts, [&](const Facts& facts) {
    entries.Restart(facts);
    term.find(facts, entries);
    found += entries.found().size();
  });
  const auto looks = static_cast<double>(all_facts.size()) * kRounds;
  return {term.name, "", static_cast<double>(found) / looks, ns};
}

// Of the catalogue's terms, in its order; what the clock takes is in them.
std::vector<Row> RawCosts(const std::vector<Facts>& all_facts,
                          const Weights& weights) {
  std::array<std::vector<double>, kTerms> rounds;
  TermCosts found;
  for (int i = 0; i < kRounds; ++i) {
    found = {};
    const auto start = std::chrono::steady_clock::now();
    const double processor = Timed([&] {
      for (const Facts& facts : all_facts) AddTermCosts(facts, weights, found);
    });
    const std::chrono::duration<double, std::nano> passed =
        std::chrono::steady_clock::now() - start;
    // What other programs took meanwhile is spread over all.
    const double ours = processor / passed.count();
    for (int term = 0; term < kTerms; ++term) {
      rounds[term].push_back(ours *
                             static_cast<double>(found.nanoseconds[term]));
    }
  }
  const auto positions = static_cast<double>(all_facts.size());
  std::vector<Row> rows;
  for (int term = 0; term < kTerms; ++term) {
    const TermInfo& info = Info(static_cast<TermId>(term));
    rows.push_back({std::string(info.name), std::string(Name(info.theme)),
                    static_cast<double>(found.entries[term]) / positions,
                    Middle(rounds[term]) / positions});
  }
  return rows;
}

void TakeOffClock(Costs& costs) {
  double raw = 0;
  double entries = 0;
  for (const Row& term : costs.terms) {
    raw += term.ns;
    entries += term.entries;
  }
  costs.clock_ns =
      std::max(0.0, (raw + costs.facts_ns - costs.score_ns) / entries);
  for (Row& term : costs.terms) {
    term.ns = std::max(0.0, term.ns - term.entries * costs.clock_ns);
  }
}

void AddThemes(Costs& costs) {
  for (const Row& term : costs.terms) {
    auto theme =
        std::find_if(costs.themes.begin(), costs.themes.end(),
                     [&](const Row& row) { return row.name == term.theme; });
    if (theme == costs.themes.end()) {
      theme = costs.themes.insert(theme, {term.theme, term.theme, 0, 0});
    }
    theme->entries += term.entries;
    theme->ns += term.ns;
  }
}

Costs Measure(const std::vector<OwnTerm>& own) {
  const std::vector<Position> positions = ManyPositions();
  const Weights weights;
  Costs costs;
  costs.positions = positions.size();
  costs.facts_ns = TimedEach(positions, [](const Position& position) {
    sink = Facts(position).phase();
  });
  costs.score_ns = TimedEach(positions, [&](const Position& position) {
    sink = ScoreOf(position, weights);
  });
  const std::vector<Facts> all_facts(positions.begin(), positions.end());
  costs.terms = RawCosts(all_facts, weights);
  TakeOffClock(costs);
  AddThemes(costs);
  for (const OwnTerm& term : own) {
    costs.terms.push_back(CostOf(term, all_facts));
  }
  SortDearestFirst(costs.themes);
  SortDearestFirst(costs.terms);
  return costs;
}

double TermsTogether(const Costs& costs) {
  double sum = 0;
  for (const Row& theme : costs.themes) sum += theme.ns;
  return sum;
}

void AppendTable(const std::string& heading, const std::vector<Row>& rows,
                 double all, std::string& out) {
  out += "\n" + Left(heading, 24) + Right("entries", 8) +
         Right("ns a position", 15) + Right("share", 8) + "\n";
  for (const Row& row : rows) {
    out += Left(row.name, 24) + Right(Fixed(row.entries, 2), 8) +
           Right(Fixed(row.ns, 1), 15) +
           Right(Fixed(100 * row.ns / all, 1) + "%", 8) + "\n";
  }
}

std::string ToTable(const Costs& costs) {
  constexpr double kNsPerSecond = 1e9;
  std::string out = std::to_string(costs.positions) + " positions; facts " +
                    Fixed(costs.facts_ns, 0) + " ns, the whole score " +
                    Fixed(costs.score_ns, 0) +
                    " ns: " + Fixed(kNsPerSecond / costs.score_ns, 0) +
                    " positions a second\n";
  const double all = TermsTogether(costs);
  AppendTable("theme", costs.themes, all, out);
  AppendTable("term", costs.terms, all, out);
  return out;
}

void AppendJson(const std::string& key, const std::vector<Row>& rows,
                std::string& out) {
  out += ",\n\"" + key + "\": [";
  const char* comma = "\n";
  for (const Row& row : rows) {
    out += comma;
    out += "{\"name\": " + Quoted(row.name) +
           ", \"theme\": " + (row.theme.empty() ? "null" : Quoted(row.theme)) +
           ", \"entries\": " + Fixed(row.entries, 4) +
           ", \"nsPerPosition\": " + Fixed(row.ns, 2) + "}";
    comma = ",\n";
  }
  out += "]";
}

std::string ToJson(const Costs& costs) {
  std::string out =
      "{\"catalogueVersion\": " + std::to_string(kCatalogueVersion) +
      ", \"positions\": " + std::to_string(costs.positions) +
      ", \"clockNs\": " + Fixed(costs.clock_ns, 2) +
      ", \"factsNsPerPosition\": " + Fixed(costs.facts_ns, 1) +
      ", \"scoreNsPerPosition\": " + Fixed(costs.score_ns, 1);
  AppendJson("themes", costs.themes, out);
  AppendJson("terms", costs.terms, out);
  return out + "}\n";
}

}  // namespace

int MeasureCosts(int argc, char** argv, const std::vector<OwnTerm>& own) {
  std::string json;
  if (argc == 3 && std::string(argv[1]) == "--json") {
    json = argv[2];
  } else if (argc != 1) {
    std::cerr << kUsage;
    return 2;
  }
  const Costs costs = Measure(own);
  if (json != "-") std::cout << ToTable(costs);
  return WriteFile(json, ToJson(costs)) ? 0 : 3;
}

}  // namespace assay::bench
