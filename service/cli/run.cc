// Reads the arguments and the weights, picks the command, and knows how runs
// end.
#include <unistd.h>

#include <cstdlib>
#include <iostream>
#include <thread>

#include "assay/base/problem.h"
#include "assay/base/problem_status.h"
#include "assay/terms/weights_text.h"
#include "service/cli/commands.h"
#include "service/cli/input.h"
#include "service/cli/remote_commands.h"
#include "service/convert/version_text.h"

namespace assay::service {
namespace {

absl::StatusOr<Weights> LoadWeights(const std::string& path) {
  if (path.empty()) return Weights();
  absl::StatusOr<std::string> text = ReadFile(path, kMostWeightsBytes);
  if (!text.ok()) return text.status();
  return ParseWeights(*text);
}

}  // namespace

int JobsOf(const Arguments& arguments) {
  if (arguments.jobs > 0) return arguments.jobs;
  const unsigned cores = std::thread::hardware_concurrency();
  return cores == 0 ? 1 : static_cast<int>(cores);
}

int Fail(const absl::Status& status) {
  std::cerr << "assay: " << status.message() << '\n';
  return absl::IsUnavailable(status) ? kCannotReadOrWrite : kBadUsage;
}

int Finish(std::ostream& out, int code) {
  out.flush();
  if (out.good()) return code;
  std::cerr << "assay: output: cannot write\n";
  return kCannotReadOrWrite;
}

bool UseColour() {
  const char* no_colour = std::getenv("NO_COLOR");
  const bool refused = no_colour != nullptr && *no_colour != '\0';
  return !refused && isatty(STDOUT_FILENO) != 0;
}

int ServerFault(const absl::Status& status) {
  std::cerr << "assay: server: " << absl::StatusCodeToString(status.code())
            << ": " << status.message() << '\n';
  return kCannotReadOrWrite;
}

int RunOnInput(const Arguments& arguments, std::ostream& out,
               const ShareWork& work) {
  absl::StatusOr<Input> input = OpenInput(arguments);
  if (!input.ok()) return Fail(input.status());
  if (!input->is_batch) {
    if (arguments.pgn) {
      return Fail(
          ProblemStatus({"operand", "not a file of games", Quoted(input->text),
                         "an existing file or \"-\""}));
    }
    Item item;
    item.line = input->text;
    const absl::Status sound = ReadItem(item).status();
    if (!sound.ok()) return Fail(sound);
    ItemOutput output;
    const absl::Status worked = work(&item, 1, &output);
    if (!worked.ok()) return ServerFault(worked);
    out << output.text;
    return Finish(out, output.failed ? kBadUsage : kSuccess);
  }
  std::istream& in = input->file != nullptr ? *input->file : std::cin;
  const std::unique_ptr<ItemSource> items =
      arguments.pgn ? GameItems(in, arguments.plies) : LineItems(in);
  const BatchResult result = RunBatch(*items, out, JobsOf(arguments), work);
  if (!result.work.ok()) return ServerFault(result.work);
  return Finish(out, result.failed > 0 ? kItemsFailed : kSuccess);
}

int Run(const std::vector<std::string>& words, std::ostream& out) {
  const absl::StatusOr<Arguments> arguments = ParseArguments(words);
  if (!arguments.ok()) return Fail(arguments.status());
  if (arguments->help || arguments->command == "help") {
    out << UsageText();
    return Finish(out, kSuccess);
  }
  if (arguments->command == "version") {
    out << "assay " << VersionText() << '\n';
    return Finish(out, kSuccess);
  }
  if (!arguments->server.empty()) return RunRemotely(*arguments, out);
  const absl::StatusOr<Weights> weights = LoadWeights(arguments->weights_file);
  if (!weights.ok()) return Fail(weights.status());
  const Assayer assayer(*weights);
  if (arguments->command == "terms") {
    return Finish(out, RunTerms(*arguments, assayer, out));
  }
  if (IsQuestion(arguments->command)) {
    return RunQuestion(*arguments, &assayer, nullptr, out);
  }
  if (arguments->command == "lesson") {
    return RunLesson(*arguments, assayer, nullptr, out);
  }
  if (arguments->command == "proofread") {
    return RunProofread(*arguments, &assayer, nullptr, out);
  }
  if (arguments->command == "find") return RunFind(*arguments, assayer, out);
  if (arguments->command == "student") {
    return RunStudent(*arguments, assayer, out);
  }
  if (arguments->command == "score") return RunScore(*arguments, assayer, out);
  return RunExplain(*arguments, assayer, out);
}

}  // namespace assay::service
