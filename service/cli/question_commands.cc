// move, compare and whatif: each asks one thing of one position. The operands
// are read and checked here; the answer is found here or by a server, as a
// message of the contract, and printed from that.
#include <iostream>

#include "assay/base/problem.h"
#include "assay/base/problem_status.h"
#include "assay/explain/line_text.h"
#include "assay/notation/fen.h"
#include "assay/notation/san.h"
#include "service/cli/commands.h"
#include "service/cli/move_text.h"
#include "service/cli/print.h"
#include "service/cli/remote_commands.h"
#include "service/client/client.h"
#include "service/convert/moves.h"
#include "service/convert/wording.h"

namespace assay::service {
namespace {

// What the operands ask.
struct Question {
  explicit Question(const Position& asked) : position(asked) {}

  Position position;
  std::vector<std::string> words;  // after the FEN
};

bool IsNumber(const std::string& word) {
  return !word.empty() &&
         word.find_first_not_of("0123456789") == std::string::npos;
}

// The FEN is the first operand; where its quotes were forgotten, the first four
// to six.
absl::StatusOr<Question> ReadQuestion(
    const std::vector<std::string>& operands) {
  if (operands.empty()) {
    return ProblemStatus({"operand", "missing", "none", "a FEN"});
  }
  std::string fen = operands[0];
  std::size_t next = 1;
  if (fen.find(' ') == std::string::npos && operands.size() >= 4) {
    for (; next < 4; ++next) fen += " " + operands[next];
    for (; next < 6 && next < operands.size() && IsNumber(operands[next]);
         ++next) {
      fen += " " + operands[next];
    }
  }
  const absl::StatusOr<Position> position = PositionFromFen(fen);
  if (!position.ok()) return position.status();
  Question question(*position);
  question.words.assign(operands.begin() + static_cast<std::ptrdiff_t>(next),
                        operands.end());
  return question;
}

absl::StatusOr<std::vector<Move>> ReadMoves(const Question& question) {
  std::vector<Move> moves;
  std::vector<Problem> problems;
  for (const std::string& word : question.words) {
    const absl::StatusOr<Move> move = ParseMove(question.position, word);
    if (move.ok()) {
      moves.push_back(*move);
    } else {
      for (const Problem& problem : ProblemsOf(move.status())) {
        problems.push_back(problem);
      }
    }
  }
  if (!problems.empty()) return ProblemsStatus(problems);
  return moves;
}

ExplainOptions CoreOptions(const Arguments& arguments) {
  ExplainOptions options;
  options.static_only = arguments.static_only;
  options.proof_nodes = arguments.proof_nodes;
  options.language = arguments.language;
  options.audience = arguments.audience;
  return options;
}

// Where answers come from.
class Answerer {
 public:
  Answerer(const Arguments& arguments, const Assayer* assayer, Client* client)
      : arguments_(arguments), assayer_(assayer), client_(client) {}

  absl::StatusOr<v1::ExplainMoveResponse> ExplainMove(const Question& question,
                                                      Move move) const {
    v1::ExplainMoveResponse response;
    if (client_ == nullptr) {
      const MoveExplanation told = assay::ExplainMove(
          *assayer_, question.position, move, CoreOptions(arguments_));
      v1::MoveExplanation* message = response.mutable_explanation();
      ToProto(told, *assayer_, message);
      if (arguments_.wording) AddWordings(told, message);
      return response;
    }
    v1::ExplainMoveRequest request;
    request.mutable_position()->set_fen(ToFen(question.position));
    request.set_move(ToSan(question.position, move));
    *request.mutable_options() = RemoteOptions(arguments_);
    return client_->ExplainMove(request);
  }

  absl::StatusOr<v1::CompareResponse> Compare(
      const Question& question, const std::vector<Move>& moves,
      const std::vector<Position>& others) const {
    if (client_ == nullptr) {
      v1::CompareResponse response;
      const Comparison told = assay::Compare(
          *assayer_, question.position, moves, others, CoreOptions(arguments_));
      ToProto(told, question.position, others, *assayer_, &response);
      if (arguments_.wording) AddWordings(told, &response);
      return response;
    }
    v1::CompareRequest request;
    request.mutable_position()->set_fen(ToFen(question.position));
    for (const Move move : moves) {
      request.add_moves(ToSan(question.position, move));
    }
    for (const Position& other : others) {
      request.add_others()->set_fen(ToFen(other));
    }
    *request.mutable_options() = RemoteOptions(arguments_);
    return client_->Compare(request);
  }

  absl::StatusOr<v1::WhatIfResponse> AskWhatIf(const Question& question) const {
    if (client_ == nullptr) {
      const absl::StatusOr<WhatIf> told =
          assay::AskWhatIf(*assayer_, question.position, question.words,
                           CoreOptions(arguments_));
      if (!told.ok()) return told.status();
      v1::WhatIfResponse response;
      ToProto(*told, *assayer_, &response);
      if (arguments_.wording) AddWordings(*told, &response);
      return response;
    }
    v1::WhatIfRequest request;
    request.mutable_position()->set_fen(ToFen(question.position));
    for (const std::string& edit : question.words) request.add_edits(edit);
    *request.mutable_options() = RemoteOptions(arguments_);
    return client_->WhatIf(request);
  }

 private:
  const Arguments& arguments_;
  const Assayer* const assayer_;
  Client* const client_;
};

// How a command ended: its output, or bad input, or a server's fault.
struct Outcome {
  absl::Status bad_input;
  absl::Status server;
  std::string output;
};

Outcome BadInput(const absl::Status& status) { return {status, {}, ""}; }
Outcome ServerFailed(const absl::Status& status) { return {{}, status, ""}; }

Outcome AnswerMove(const Arguments& arguments, const Question& question,
                   const Answerer& answerer) {
  if (question.words.size() != 1) {
    return BadInput(ProblemStatus(
        {"operand", question.words.empty() ? "missing" : "too many",
         std::to_string(question.words.size()) + " moves",
         "one move after the FEN"}));
  }
  const auto moves = ReadMoves(question);
  if (!moves.ok()) return BadInput(moves.status());
  const auto response = answerer.ExplainMove(question, moves->front());
  if (!response.ok()) return ServerFailed(response.status());
  if (arguments.format == Format::kJson) return {{}, {}, JsonLine(*response)};
  return {
      {},
      {},
      MoveText(question.position, response->explanation(), StyleOf(arguments)) +
          '\n'};
}

Outcome AnswerCompare(const Arguments& arguments, const Question& question,
                      const Answerer& answerer) {
  const auto moves = ReadMoves(question);
  if (!moves.ok()) return BadInput(moves.status());
  std::vector<Position> others;
  std::vector<std::string> names;
  if (moves->empty()) names.push_back(ToFen(question.position));
  for (const Move move : *moves) {
    names.push_back(NumberedMove(question.position, move));
  }
  for (const std::string& fen : arguments.with) {
    const absl::StatusOr<Position> other = PositionFromFen(fen);
    if (!other.ok()) return BadInput(other.status());
    others.push_back(*other);
    names.push_back(ToFen(*other));
  }
  if (names.size() < kLeastCompared || names.size() > kMostCompared) {
    return BadInput(ProblemStatus(
        {"operand", names.size() < kLeastCompared ? "too few" : "too many",
         std::to_string(names.size()) + " to compare",
         "2 to 8 moves after the FEN, or --with FEN"}));
  }
  const auto response = answerer.Compare(question, *moves, others);
  if (!response.ok()) return ServerFailed(response.status());
  if (response->explanations_size() != static_cast<int>(names.size())) {
    return ServerFailed(absl::InternalError("too few answers"));
  }
  if (arguments.format == Format::kJson) return {{}, {}, JsonLine(*response)};
  return {
      {},
      {},
      ComparisonText(question.position, names, *response, StyleOf(arguments)) +
          '\n'};
}

Outcome AnswerWhatIf(const Arguments& arguments, const Question& question,
                     const Answerer& answerer) {
  // Faults are told here, whoever answers.
  const absl::StatusOr<Edited> edited =
      ApplyEdits(question.position, question.words);
  if (!edited.ok()) return BadInput(edited.status());
  const auto response = answerer.AskWhatIf(question);
  if (!response.ok()) return ServerFailed(response.status());
  if (arguments.format == Format::kJson) return {{}, {}, JsonLine(*response)};
  return {{},
          {},
          WhatIfText(question.position, *response, StyleOf(arguments)) + '\n'};
}

}  // namespace

bool IsQuestion(const std::string& command) {
  return command == "move" || command == "compare" || command == "whatif";
}

int RunQuestion(const Arguments& arguments, const Assayer* assayer,
                Client* client, std::ostream& out) {
  const absl::StatusOr<Question> question = ReadQuestion(arguments.operands);
  if (!question.ok()) return Fail(question.status());
  const Answerer answerer(arguments, assayer, client);
  const Outcome outcome = arguments.command == "move"
                              ? AnswerMove(arguments, *question, answerer)
                          : arguments.command == "compare"
                              ? AnswerCompare(arguments, *question, answerer)
                              : AnswerWhatIf(arguments, *question, answerer);
  if (!outcome.bad_input.ok()) return Fail(outcome.bad_input);
  if (!outcome.server.ok()) return ServerFault(outcome.server);
  out << outcome.output;
  return Finish(out, kSuccess);
}

}  // namespace assay::service
