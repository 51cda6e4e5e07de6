#include "service/server/read_request.h"

#include <algorithm>
#include <cctype>

#include "assay/base/problem_status.h"
#include "assay/explain/catalogue.h"
#include "assay/explain/comparison.h"
#include "assay/notation/fen.h"
#include "assay/notation/san.h"
#include "service/server/limits.h"

namespace assay::service {
namespace {

using Problems = std::vector<Problem>;

// "castling" of the FEN at position.fen is "position.fen:castling"; what is
// wrong with the text as a whole is just "position.fen".
void AddFenProblems(const absl::Status& status, const std::string& path,
                    Problems& problems) {
  for (Problem problem : ProblemsOf(status)) {
    problem.field = problem.field == "fen" ? path : path + ":" + problem.field;
    problems.push_back(std::move(problem));
  }
}

// Ends at the first move that is not one: those after it have no position.
std::optional<Position> Played(const v1::Line& line, const std::string& path,
                               const std::atomic<bool>& cancelled,
                               Problems& problems) {
  absl::StatusOr<Position> position = line.start_fen().empty()
                                          ? Position::Initial()
                                          : PositionFromFen(line.start_fen());
  if (!position.ok()) {
    AddFenProblems(position.status(), path + ".line.start_fen", problems);
    return std::nullopt;
  }
  for (int i = 0; i < line.moves_size(); ++i) {
    if (cancelled) return std::nullopt;
    const absl::StatusOr<Move> move = ParseMove(*position, line.moves(i));
    if (!move.ok()) {
      for (Problem problem : ProblemsOf(move.status())) {
        problem.field = path + ".line.moves[" + std::to_string(i) + "]";
        problems.push_back(std::move(problem));
      }
      return std::nullopt;
    }
    position = position->After(*move);
  }
  return *position;
}

// `path` is the source's in the request.
std::optional<Position> ReadPosition(const v1::PositionSource& source,
                                     const std::string& path,
                                     const std::atomic<bool>& cancelled,
                                     Problems& problems) {
  switch (source.form_case()) {
    case v1::PositionSource::kFen: {
      const absl::StatusOr<Position> position = PositionFromFen(source.fen());
      if (position.ok()) return *position;
      AddFenProblems(position.status(), path + ".fen", problems);
      return std::nullopt;
    }
    case v1::PositionSource::kLine:
      return Played(source.line(), path, cancelled, problems);
    case v1::PositionSource::FORM_NOT_SET:
      break;
  }
  problems.push_back({path, "missing", "no form", "fen or line"});
  return std::nullopt;
}

// Whom a call can be asked to speak to, in every language.
enum class Speaks { kToClub, kToAll };

void CheckLanguage(const std::string& language, Problems& problems) {
  if (Catalogue::Of(language) != nullptr) return;
  problems.push_back({"options.language", "no texts in it", Quoted(language),
                      "\"en\" or \"de\""});
}

void CheckOptions(const v1::ExplainOptions& options, const SearchBudget& budget,
                  Problems& problems, Speaks speaks = Speaks::kToClub) {
  if (!options.static_only() &&
      options.proof_nodes() > budget.most_proof_nodes) {
    problems.push_back({"options.proof_nodes", "over the server's ceiling",
                        std::to_string(options.proof_nodes()),
                        "at most " + std::to_string(budget.most_proof_nodes)});
  }
  if (!v1::Audience_IsValid(options.audience())) {
    problems.push_back({"options.audience", "unknown number",
                        std::to_string(options.audience()),
                        "a number of the enum Audience"});
  }
  const bool club = options.audience() == v1::AUDIENCE_UNSPECIFIED ||
                    options.audience() == v1::AUDIENCE_CLUB;
  if (v1::Audience_IsValid(options.audience()) && !club &&
      speaks == Speaks::kToClub) {
    problems.push_back({"options.audience", "no texts for it",
                        v1::Audience_Name(options.audience()),
                        "AUDIENCE_CLUB"});
  }
  CheckLanguage(options.language(), problems);
}

Audience ToCore(v1::Audience audience) {
  switch (audience) {
    case v1::AUDIENCE_NEWCOMER:
      return Audience::kNewcomer;
    case v1::AUDIENCE_EXPERT:
      return Audience::kExpert;
    default:
      return Audience::kClub;
  }
}

// A move from the position, at `path` of the request.
std::optional<Move> ReadMove(const Position& position, const std::string& text,
                             const std::string& path, Problems& problems) {
  const absl::StatusOr<Move> move = ParseMove(position, text);
  if (move.ok()) return *move;
  for (Problem problem : ProblemsOf(move.status())) {
    problem.field = path;
    problems.push_back(std::move(problem));
  }
  return std::nullopt;
}

std::string At(const char* list, int index) {
  return std::string(list) + "[" + std::to_string(index) + "]";
}

}  // namespace

std::uint64_t NodesOf(const v1::ExplainOptions& options,
                      const SearchBudget& budget) {
  if (options.static_only()) return 0;
  return options.proof_nodes() > 0 ? options.proof_nodes() : budget.proof_nodes;
}

ExplainOptions ToCore(const v1::ExplainOptions& options,
                      const SearchBudget& budget,
                      const std::atomic<bool>* cancelled) {
  ExplainOptions core;
  core.static_only = options.static_only();
  core.proof_nodes = NodesOf(options, budget);
  if (options.max_reasons() > 0) core.max_reasons = options.max_reasons();
  if (options.max_plans_per_side() > 0) {
    core.max_plans_per_side = options.max_plans_per_side();
  }
  core.language = options.language();
  core.audience = ToCore(options.audience());
  core.cancelled = cancelled;
  return core;
}

std::vector<Problem> OptionProblems(const v1::ExplainOptions& options,
                                    const SearchBudget& budget) {
  Problems problems;
  CheckOptions(options, budget, problems);
  return problems;
}

absl::StatusOr<Position> ReadFen(const std::string& fen,
                                 const std::string& path) {
  absl::StatusOr<Position> position = PositionFromFen(fen);
  if (position.ok()) return position;
  Problems problems;
  AddFenProblems(position.status(), path, problems);
  return ProblemsStatus(problems);
}

absl::StatusOr<Position> ReadExplainRequest(
    const v1::ExplainRequest& request, const SearchBudget& budget,
    const std::atomic<bool>& cancelled) {
  Problems problems;
  const std::optional<Position> position =
      ReadPosition(request.position(), "position", cancelled, problems);
  CheckOptions(request.options(), budget, problems, Speaks::kToAll);
  if (request.tag().size() > kMostTagBytes) {
    problems.push_back({"tag", "too long",
                        std::to_string(request.tag().size()) + " bytes",
                        "at most " + std::to_string(kMostTagBytes)});
  }
  if (!problems.empty()) return ProblemsStatus(problems);
  if (!position.has_value()) return absl::CancelledError("cancelled");
  return *position;
}

absl::StatusOr<MoveQuestion> ReadMoveRequest(
    const v1::ExplainMoveRequest& request, const SearchBudget& budget,
    const std::atomic<bool>& cancelled) {
  Problems problems;
  const std::optional<Position> position =
      ReadPosition(request.position(), "position", cancelled, problems);
  CheckOptions(request.options(), budget, problems, Speaks::kToAll);
  std::optional<Move> move;
  if (request.move().empty()) {
    problems.push_back({"move", "missing", "none", "a legal move"});
  } else if (position.has_value()) {
    move = ReadMove(*position, request.move(), "move", problems);
  }
  if (!problems.empty()) return ProblemsStatus(problems);
  if (!move.has_value()) return absl::CancelledError("cancelled");
  return MoveQuestion{*position, *move};
}

absl::StatusOr<CompareQuestion> ReadCompareRequest(
    const v1::CompareRequest& request, const SearchBudget& budget,
    const std::atomic<bool>& cancelled) {
  Problems problems;
  // Without moves the position itself is compared.
  const int count = std::max(request.moves_size(), 1) + request.others_size();
  if (count < static_cast<int>(kLeastCompared) ||
      count > static_cast<int>(kMostCompared)) {
    return ProblemStatus(
        {"moves and others",
         count < static_cast<int>(kLeastCompared) ? "too few" : "too many",
         std::to_string(count) + " to compare", "2 to 8"});
  }
  const std::optional<Position> position =
      ReadPosition(request.position(), "position", cancelled, problems);
  CheckOptions(request.options(), budget, problems, Speaks::kToAll);
  std::vector<Move> moves;
  for (int i = 0; i < request.moves_size() && position.has_value(); ++i) {
    const auto move =
        ReadMove(*position, request.moves(i), At("moves", i), problems);
    if (move.has_value()) moves.push_back(*move);
  }
  std::vector<Position> others;
  for (int i = 0; i < request.others_size(); ++i) {
    const auto other =
        ReadPosition(request.others(i), At("others", i), cancelled, problems);
    if (other.has_value()) others.push_back(*other);
  }
  if (!problems.empty()) return ProblemsStatus(problems);
  if (cancelled || !position.has_value()) {
    return absl::CancelledError("cancelled");
  }
  return CompareQuestion{*position, std::move(moves), std::move(others)};
}

absl::StatusOr<EditQuestion> ReadWhatIfRequest(
    const v1::WhatIfRequest& request, const SearchBudget& budget,
    const std::atomic<bool>& cancelled) {
  Problems problems;
  const std::optional<Position> position =
      ReadPosition(request.position(), "position", cancelled, problems);
  CheckOptions(request.options(), budget, problems, Speaks::kToAll);
  if (!problems.empty()) return ProblemsStatus(problems);
  if (!position.has_value()) return absl::CancelledError("cancelled");
  return EditQuestion{*position,
                      {request.edits().begin(), request.edits().end()}};
}

}  // namespace assay::service
