// The commands. Each prints its answer on `out`, errors on standard error, and
// returns the exit code.
#ifndef ASSAY_SERVICE_CLI_COMMANDS_H_
#define ASSAY_SERVICE_CLI_COMMANDS_H_

#include <ostream>
#include <string>

#include "absl/status/status.h"
#include "assay/explain/assayer.h"
#include "service/cli/arguments.h"
#include "service/cli/batch.h"

namespace assay::service {

int RunExplain(const Arguments& arguments, const Assayer& assayer,
               std::ostream& out);
int RunScore(const Arguments& arguments, const Assayer& assayer,
             std::ostream& out);
int RunTerms(const Arguments& arguments, const Assayer& assayer,
             std::ostream& out);
class Client;

// Outputs go to files, or printed. With a client, its server explains what the
// assayer chooses.
int RunLesson(const Arguments& arguments, const Assayer& assayer,
              Client* client, std::ostream& out);

// Prints findings; the exit code is kItemsFailed where there are any. One of
// `assayer` and `client` finds them; the other is null.
int RunProofread(const Arguments& arguments, const Assayer* assayer,
                 Client* client, std::ostream& out);

// Prints positions as games or EPD as they are found.
int RunFind(const Arguments& arguments, const Assayer& assayer,
            std::ostream& out);

// Prints what one player does again and again, or writes it as a sheet.
int RunStudent(const Arguments& arguments, const Assayer& assayer,
               std::ostream& out);

// The commands that ask one thing of one position: move, compare, whatif. One
// of `assayer` and `client` answers; the other is null.
bool IsQuestion(const std::string& command);
int RunQuestion(const Arguments& arguments, const Assayer* assayer,
                Client* client, std::ostream& out);

// The whole program, without its name among the words.
int Run(const std::vector<std::string>& words, std::ostream& out);

// Opens the input and runs `work` on it. A single bad position is bad usage; in
// a batch it is the item's own failure.
int RunOnInput(const Arguments& arguments, std::ostream& out,
               const ShareWork& work);

// Says what is wrong with the input, or what cannot be read; the exit code.
int Fail(const absl::Status& status);

// The exit code, or another where the output could not be written.
int Finish(std::ostream& out, int code);
// The threads to work with.
int JobsOf(const Arguments& arguments);

// Says why a server did not answer; the exit code.
int ServerFault(const absl::Status& status);

// Whether to use colour on standard output.
bool UseColour();

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CLI_COMMANDS_H_
