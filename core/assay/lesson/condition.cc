#include "assay/lesson/condition.h"

#include <algorithm>
#include <cctype>
#include <cstdlib>
#include <optional>
#include <utility>

#include "assay/base/problem.h"
#include "assay/base/problem_status.h"
#include "assay/explain/verdict.h"
#include "assay/facts/claim_kind.h"
#include "assay/facts/structures.h"

namespace assay {
namespace {

using Test = std::function<bool(const Explanation&)>;

// Lower case, "-" and " " as "_".
std::string Plain(std::string_view text) {
  std::string plain;
  for (const char c : text) {
    plain +=
        c == '-' || c == ' '
            ? '_'
            : static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  }
  return plain;
}

enum class Whose { kAny, kWhite, kBlack, kMover, kWaiter };

std::optional<Whose> ReadWhose(const std::string& text) {
  if (text == "white") return Whose::kWhite;
  if (text == "black") return Whose::kBlack;
  if (text == "mover") return Whose::kMover;
  if (text == "waiter") return Whose::kWaiter;
  return std::nullopt;
}

bool Fits(Whose whose, Side side, const Position& position) {
  switch (whose) {
    case Whose::kAny:
      return true;
    case Whose::kWhite:
      return side == Side::kWhite;
    case Whose::kBlack:
      return side == Side::kBlack;
    case Whose::kMover:
      return side == position.side_to_move();
    case Whose::kWaiter:
      break;
  }
  return side != position.side_to_move();
}

// A condition's parts: word, comparison, value, side, standing.
struct Parts {
  std::string word;
  std::string comparison;
  std::string value;
  Whose whose = Whose::kAny;
  std::string standing;
};

absl::Status Fault(std::string_view text, const char* reason,
                   std::string expected) {
  return ProblemStatus(
      {"condition", reason, Quoted(text), std::move(expected)});
}

absl::StatusOr<Parts> Split(std::string_view text) {
  Parts parts;
  const std::size_t at = text.find_first_of("=<>");
  if (at == std::string_view::npos || at == 0) {
    return Fault(text, "not a condition",
                 "a word, a comparison and a value, such as centre=closed");
  }
  parts.word = Plain(text.substr(0, at));
  std::size_t end = at + 1;
  if (text[at] != '=' && end < text.size() && text[end] == '=') ++end;
  parts.comparison = std::string(text.substr(at, end - at));
  std::string value = Plain(text.substr(end));
  const std::size_t colon = value.find(':');
  if (colon != std::string::npos) {
    parts.standing = value.substr(colon + 1);
    value.resize(colon);
  }
  const std::size_t side = value.find('@');
  if (side != std::string::npos) {
    const std::optional<Whose> whose = ReadWhose(value.substr(side + 1));
    if (!whose.has_value()) {
      return Fault(text, "unknown side", "white, black, mover or waiter");
    }
    parts.whose = *whose;
    value.resize(side);
  }
  parts.value = value;
  const bool compares = parts.word == "verdict" || parts.word == "score";
  if (!compares && parts.comparison != "=") {
    return Fault(text, "nothing to compare", parts.word + "=...");
  }
  if (value.empty()) return Fault(text, "no value", "a value after it");
  if (!parts.standing.empty() && parts.word != "plan") {
    return Fault(text, "only plans have a standing", "no \":\"");
  }
  return parts;
}

bool Compares(const std::string& comparison, int a, int b) {
  if (comparison == "=") return a == b;
  if (comparison == "<") return a < b;
  if (comparison == ">") return a > b;
  if (comparison == "<=") return a <= b;
  return a >= b;
}

absl::StatusOr<Test> CentreTest(std::string_view text, const Parts& parts) {
  for (const Centre centre :
       {Centre::kUnresolved, Centre::kOpen, Centre::kClosed, Centre::kFixed,
        Centre::kTension, Centre::kMobile}) {
    if (Plain(Name(centre)) != parts.value) continue;
    return Test([centre](const Explanation& explanation) {
      return explanation.structure.centre == centre;
    });
  }
  return Fault(text, "unknown centre",
               "open, closed, fixed, tension, mobile or unresolved");
}

absl::StatusOr<Test> ClaimTest(std::string_view text, const Parts& parts) {
  for (int i = 1; i < kClaimKinds; ++i) {
    const auto kind = static_cast<ClaimKind>(i);
    if (Plain(Name(kind)) != parts.value) continue;
    return Test([kind, whose = parts.whose](const Explanation& explanation) {
      return std::any_of(
          explanation.claims.begin(), explanation.claims.end(),
          [&](const Claim& claim) {
            return claim.kind == kind && claim.line.empty() &&
                   (whose == Whose::kAny ||
                    (claim.has_side &&
                     Fits(whose, claim.side, explanation.position)));
          });
    });
  }
  return Fault(text, "unknown claim",
               "a kind of claim.proto, such as doubled or open_file");
}

absl::StatusOr<Test> TermTest(std::string_view text, const Parts& parts) {
  for (int i = 0; i < kTerms; ++i) {
    const auto term = static_cast<TermId>(i);
    if (Plain(Info(term).name) != parts.value) continue;
    return Test([term, whose = parts.whose](const Explanation& explanation) {
      return std::any_of(explanation.ledger.begin(), explanation.ledger.end(),
                         [&](const ExplainedEntry& entry) {
                           return entry.entry.term == term &&
                                  Fits(whose, entry.entry.side,
                                       explanation.position);
                         });
    });
  }
  return Fault(text, "unknown term", "a term of assay terms");
}

std::optional<Standing> ReadStanding(const std::string& text) {
  for (int i = 0; i < kStandings; ++i) {
    const auto standing = static_cast<Standing>(i);
    if (text == Name(standing)) return standing;
  }
  return std::nullopt;
}

absl::StatusOr<Test> PlanTest(std::string_view text, const Parts& parts) {
  const std::optional<Standing> standing = ReadStanding(parts.standing);
  if (!parts.standing.empty() && !standing.has_value()) {
    return Fault(text, "unknown standing", "in_time, slow, stopped or needs");
  }
  for (int i = 0; i < kPlanKinds; ++i) {
    const auto kind = static_cast<PlanKind>(i);
    if (Plain(Name(kind)) != parts.value) continue;
    return Test([kind, whose = parts.whose,
                 standing](const Explanation& explanation) {
      return std::any_of(
          explanation.plans.begin(), explanation.plans.end(),
          [&](const ToldPlan& plan) {
            return plan.plan.kind == kind &&
                   Fits(whose, plan.plan.side, explanation.position) &&
                   (!standing.has_value() || plan.plan.standing == *standing);
          });
    });
  }
  return Fault(text, "unknown plan", "a kind of plan, such as siege or lever");
}

absl::StatusOr<Test> VerdictTest(std::string_view text, const Parts& parts) {
  constexpr const char* kSteps[] = {"equal", "slight", "moderate", "decisive",
                                    "crushing"};
  int step = -1;
  for (int i = 0; i < 5; ++i) {
    if (parts.value == kSteps[i]) step = i;
  }
  if (step < 0) {
    return Fault(text, "unknown verdict",
                 "equal, slight, moderate, decisive or crushing");
  }
  if (step > 0 && parts.whose == Whose::kAny) {
    return Fault(text, "no side", "a side after it, such as @white");
  }
  return Test([step, comparison = parts.comparison,
               whose = parts.whose](const Explanation& explanation) {
    const Verdict& verdict = explanation.verdict;
    int found = 0;  // White's view
    if (verdict.favours.has_value()) {
      found = Sign(*verdict.favours) * ((verdict.nag - 14) / 2 + 1);
    }
    const bool for_black =
        whose != Whose::kAny && Fits(whose, Side::kBlack, explanation.position);
    return Compares(comparison, for_black ? -found : found, step);
  });
}

absl::StatusOr<Test> ScoreTest(std::string_view text, const Parts& parts) {
  // Minus signs were made plain.
  std::string digits = parts.value;
  const bool minus = digits[0] == '_';
  if (minus) digits.erase(0, 1);
  const bool whole = !digits.empty() && digits.size() < 6 &&
                     std::all_of(digits.begin(), digits.end(),
                                 [](char c) { return c >= '0' && c <= '9'; });
  if (!whole) return Fault(text, "not a whole number", "centipawns");
  const int score = std::atoi(digits.c_str()) * (minus ? -1 : 1);
  return Test(
      [score, comparison = parts.comparison](const Explanation& explanation) {
        return Compares(comparison, explanation.score_cp, score);
      });
}

absl::StatusOr<Test> MoveTest(std::string_view text, const Parts& parts) {
  if (parts.value != "white" && parts.value != "black") {
    return Fault(text, "unknown side", "white or black");
  }
  const Side side = parts.value == "white" ? Side::kWhite : Side::kBlack;
  return Test([side](const Explanation& explanation) {
    return explanation.position.side_to_move() == side;
  });
}

absl::StatusOr<Test> MakeTest(std::string_view text, const Parts& parts) {
  if (parts.word == "centre") return CentreTest(text, parts);
  if (parts.word == "structure") {
    return Test([word = parts.value](const Explanation& explanation) {
      const Facts facts(explanation.position);
      const StructureList found = FindStructures(facts);
      return std::any_of(
          found.begin(), found.end(), [&](const NamedStructure& named) {
            return Plain(Name(named.structure)).find(word) != std::string::npos;
          });
    });
  }
  if (parts.word == "claim") return ClaimTest(text, parts);
  if (parts.word == "term") return TermTest(text, parts);
  if (parts.word == "plan") return PlanTest(text, parts);
  if (parts.word == "verdict") return VerdictTest(text, parts);
  if (parts.word == "score") return ScoreTest(text, parts);
  if (parts.word == "move") return MoveTest(text, parts);
  return Fault(text, "unknown word",
               "centre, structure, claim, term, plan, verdict, score or move");
}

}  // namespace

absl::StatusOr<Condition> Condition::Parse(std::string_view text) {
  constexpr std::string_view kNot = "not:";
  Condition condition;
  std::string_view rest = text;
  if (rest.substr(0, kNot.size()) == kNot) {
    condition.negated_ = true;
    rest.remove_prefix(kNot.size());
  }
  const absl::StatusOr<Parts> parts = Split(rest);
  if (!parts.ok()) return parts.status();
  absl::StatusOr<Test> test = MakeTest(rest, *parts);
  if (!test.ok()) return test.status();
  condition.test_ = *std::move(test);
  condition.needs_all_claims_ = parts->word == "claim";
  return condition;
}

}  // namespace assay
