// Reads the lesson, chooses its key positions, explains them side by side into
// a journal, and makes the files from that; without files, prints as it goes.
#include <filesystem>
#include <iostream>
#include <iterator>
#include <system_error>
#include <vector>

#include "assay/base/problem.h"
#include "service/cli/commands.h"
#include "service/cli/in_order.h"
#include "service/cli/input.h"
#include "service/cli/journal.h"
#include "service/cli/lesson_outputs.h"
#include "service/cli/lesson_record.h"
#include "service/cli/output_file.h"
#include "service/cli/pdf.h"
#include "service/cli/print.h"
#include "service/cli/progress.h"
#include "service/cli/remote_lesson.h"

namespace assay::service {
namespace {

using Explaining = InOrder<LessonTask, LessonRecord>;

std::string KeyOf(const Arguments& arguments, const Assayer& assayer,
                  const std::string& text) {
  const LessonSelection& selection = arguments.selection;
  std::string options = assayer.weights_fingerprint() + kVersion;
  for (const std::uint64_t number :
       {std::uint64_t{selection.comments}, std::uint64_t{selection.assessments},
        std::uint64_t{selection.line_ends},
        std::uint64_t{selection.turning_points},
        std::uint64_t{selection.every_plies},
        std::uint64_t{arguments.static_only}, arguments.proof_nodes}) {
    options += ' ' + std::to_string(number);
  }
  options += ' ' + arguments.language;
  // A server has its own weights.
  if (!arguments.server.empty()) options += ' ' + arguments.server;
  return Digest(text) + Digest(options);
}

int Failure(const absl::Status& status) {
  std::cerr << "assay: " << status.message() << '\n';
  return absl::IsUnavailable(status) ? kCannotReadOrWrite : kBadUsage;
}

// A handout that is wanted as PDF alone is kept beside it meanwhile.
std::string HandoutPath(const Arguments& arguments) {
  if (!arguments.handout_file.empty()) return arguments.handout_file;
  return arguments.pdf_file.empty() ? "" : arguments.pdf_file + ".html";
}

class LessonRun {
 public:
  LessonRun(const Arguments& arguments, const Assayer& assayer, Client* client,
            std::ostream& out)
      : arguments_(arguments),
        assayer_(assayer),
        client_(client),
        words_(Catalogue::OrEnglish(arguments.language, Audience::kClub)),
        out_(out) {
    work_options_.static_only = arguments.static_only;
    work_options_.proof_nodes = arguments.proof_nodes;
    work_options_.language = arguments.language;
  }

  int Run() {
    for (const std::string& path : Outputs()) {
      const absl::Status sound = OutputFile::Check(path);
      if (!sound.ok()) return Failure(sound);
    }
    const absl::StatusOr<std::string> text = ReadGames(arguments_);
    if (!text.ok()) return Failure(text.status());
    const Lesson lesson(*text, arguments_.selection, assayer_, nullptr, words_);
    const std::string first = FirstOutput();
    if (first.empty()) return Print(lesson);
    const std::string journal = first + ".part";
    const absl::Status done =
        Fill(lesson, journal, KeyOf(arguments_, assayer_, lesson.text()));
    if (!server_fault_.ok()) return Fault();
    if (!done.ok()) return Failure(done);
    const absl::Status written = WriteAll(lesson, journal);
    if (!written.ok()) return Failure(written);
    std::error_code error;
    std::filesystem::remove(journal, error);
    return failed_ ? kItemsFailed : kSuccess;
  }

 private:
  std::vector<std::string> Outputs() const {
    return {arguments_.items_file, arguments_.annotated_file,
            arguments_.handout_file, arguments_.pdf_file};
  }

  std::string FirstOutput() const {
    for (const std::string& path : Outputs()) {
      if (!path.empty()) return path;
    }
    return "";
  }

  // What a server has to do with; what is wrong with the input is told as ever.
  int Fault() const {
    return absl::IsInvalidArgument(server_fault_) ? Failure(server_fault_)
                                                  : ServerFault(server_fault_);
  }

  // Explains what is not explained yet, in order, into `sink`.
  bool Explain(const Lesson& lesson, std::size_t skip,
               const Explaining::Sink& sink) {
    LessonTasks tasks(lesson);
    LessonTask task;
    std::size_t before = 0;
    for (std::size_t i = 0; i < skip && tasks.Next(task); ++i) {
      failed_ = failed_ || task.is_fault();
      before += task.is_to_explain() ? 1 : 0;
    }
    ProgressLine progress(lesson.size(), before);
    const LessonWork work{assayer_, work_options_, StyleOf(arguments_)};
    bool written = true;
    const Explaining::Sink take = [&](LessonRecord& record) {
      failed_ = failed_ || record.failed;
      if (record.explained) progress.Step();
      return written = sink(record);
    };
    if (client_ != nullptr) {
      server_fault_ = ExplainRemotely(arguments_, *client_, work, lesson,
                                      before, tasks, take);
      return written;
    }
    return Explaining(
               [&](LessonTask& next) { return tasks.Next(next); },
               [&](const LessonTask& next) { return MakeRecord(work, next); },
               take)
        .Run(JobsOf(arguments_));
  }

  int Print(const Lesson& lesson) {
    const bool json = arguments_.format == Format::kJson;
    const bool written = Explain(lesson, 0, [&](LessonRecord& record) {
      out_ << (json ? record.json : record.text);
      return out_.good();
    });
    out_.flush();
    if (!written || !out_.good()) {
      return Failure(absl::UnavailableError("output: cannot write"));
    }
    if (!server_fault_.ok()) return Fault();
    return failed_ ? kItemsFailed : kSuccess;
  }

  absl::Status Fill(const Lesson& lesson, const std::string& path,
                    const std::string& key) {
    absl::StatusOr<Journal> journal =
        Journal::Open(path, key, arguments_.resume);
    if (!journal.ok()) return journal.status();
    const bool written =
        Explain(lesson, journal->size(), [&](LessonRecord& record) {
          record.text.clear();  // is printed or not at all
          return journal->Add(ToFields(record));
        });
    if (written && journal->Close()) return absl::OkStatus();
    return absl::UnavailableError("output: cannot write: found " +
                                  Quoted(path) + ", expected a writable file");
  }

  absl::Status WriteAll(const Lesson& lesson, const std::string& journal) {
    absl::Status status;
    const auto write = [&](const std::string& path, const auto& content) {
      if (path.empty() || !status.ok()) return;
      OutputFile file(path);
      content(file.out());
      status = file.Commit();
    };
    write(arguments_.items_file,
          [&](std::ostream& out) { WriteItems(journal, out); });
    write(arguments_.annotated_file,
          [&](std::ostream& out) { WriteAnnotated(lesson, journal, out); });
    const std::string handout = HandoutPath(arguments_);
    const std::string file =
        std::filesystem::path(arguments_.operands[0]).filename().string();
    write(handout, [&](std::ostream& out) {
      WriteHandout(
          lesson, journal,
          {arguments_.title.empty() ? words_.Text(Say("lesson.title", file))
                                    : arguments_.title,
           file, arguments_.paper},
          words_, out);
    });
    if (!status.ok() || arguments_.pdf_file.empty()) return status;
    status = PrintPdf(handout, arguments_.pdf_file);
    if (handout != arguments_.handout_file) {
      std::error_code error;
      std::filesystem::remove(handout, error);
    }
    return status;
  }

  const Arguments& arguments_;
  const Assayer& assayer_;
  Client* const client_;  // null: the assayer explains
  const Catalogue& words_;
  std::ostream& out_;
  ExplainOptions work_options_;
  absl::Status server_fault_;
  bool failed_ = false;
};

}  // namespace

int RunLesson(const Arguments& arguments, const Assayer& assayer,
              Client* client, std::ostream& out) {
  return LessonRun(arguments, assayer, client, out).Run();
}

}  // namespace assay::service
