#include "service/cli/arguments.h"

#include <algorithm>

#include "assay/base/problem.h"
#include "assay/base/problem_status.h"
#include "assay/explain/catalogue.h"

namespace assay::service {
namespace {

constexpr int kMostJobs = 256;
constexpr int kMostPlies = 20000;
constexpr std::uint64_t kMostNodes = 4000000000;

struct Option {
  std::string_view name;
  bool takes_value;
  std::string_view commands;  // that take it
};
constexpr std::string_view kAskedOfServers =
    "explain score move compare whatif terms lesson proofread";
constexpr Option kOptions[] = {
    {"--format", true,
     "explain score move compare whatif terms lesson proofread find student"},
    {"--static", false, "explain score move compare lesson"},
    {"--proof-nodes", true, "explain move compare lesson proofread find"},
    {"--all-claims", false, "explain"},
    {"--ledger", false, "explain move compare whatif"},
    {"--language", true,
     "explain move compare whatif lesson proofread find student"},
    {"--audience", true, "explain move compare whatif"},
    {"--wording", false, "explain move compare whatif"},
    {"--with", true, "compare"},
    {"--pgn", false, "explain score"},
    {"--ply", true, "explain score"},
    {"--every", true, "explain score lesson"},
    {"--last", false, "explain score"},
    {"--select", true, "lesson"},
    {"--title", true, "lesson"},
    {"--items", true, "lesson"},
    {"--annotated", true, "lesson"},
    {"--handout", true, "lesson student"},
    {"--name", true, "student"},
    {"--pdf", true, "lesson"},
    {"--paper", true, "lesson student"},
    {"--resume", false, "lesson"},
    {"--every-hit", false, "find"},
    {"--jobs", true, "explain score lesson proofread find student"},
    {"--weights", true,
     "explain score move compare whatif terms lesson proofread find student"},
    {"--server", true, kAskedOfServers},
    {"--server-ca", true, kAskedOfServers},
    {"--server-cert", true, kAskedOfServers},
    {"--server-key", true, kAskedOfServers},
    {"--server-token", true, kAskedOfServers},
    {"--help", false,
     "explain score move compare whatif terms lesson proofread find student "
     "help version"},
};
constexpr std::string_view kCommands[] = {
    "explain", "score",     "move", "compare", "whatif", "terms",
    "lesson",  "proofread", "find", "student", "help",   "version"};
constexpr char kWhichCommands[] =
    "explain, score, move, compare, whatif, lesson, proofread, find, student "
    "or terms; see assay --help";

absl::Status Problem3(std::string field, std::string reason,
                      std::string_view found, std::string expected) {
  return ProblemStatus({std::move(field), std::move(reason), Quoted(found),
                        std::move(expected)});
}

const Option* FindOption(std::string_view name) {
  for (const Option& option : kOptions) {
    if (option.name == name) return &option;
  }
  return nullptr;
}

absl::Status ReadFormat(const std::string& value, Arguments& arguments) {
  if (arguments.command == "find" && value != "pgn" && value != "epd") {
    return Problem3("--format", "unknown format", value, "pgn or epd");
  }
  if (value == "text" || (value == "pgn" && arguments.command == "find")) {
    arguments.format = Format::kText;
  } else if (value == "json") {
    arguments.format = Format::kJson;
  } else if (value == "epd" &&
             (arguments.command == "score" || arguments.command == "find")) {
    arguments.format = Format::kEpd;
  } else if (value == "weights" && arguments.command == "terms") {
    arguments.format = Format::kWeights;
  } else {
    return Problem3("--format", "unknown format", value,
                    arguments.command == "terms"   ? "text, json or weights"
                    : arguments.command == "score" ? "text, json or epd"
                                                   : "text or json");
  }
  return absl::OkStatus();
}

absl::Status ReadAudience(const std::string& value, Arguments& arguments) {
  if (value == "newcomer") {
    arguments.audience = Audience::kNewcomer;
  } else if (value == "expert") {
    arguments.audience = Audience::kExpert;
  } else if (value != "club") {
    return Problem3("--audience", "unknown audience", value,
                    "newcomer, club or expert");
  }
  return absl::OkStatus();
}

absl::Status ReadPaper(const std::string& value, Arguments& arguments) {
  if (value == "a4") {
    arguments.paper = Paper::kA4;
  } else if (value == "letter") {
    arguments.paper = Paper::kLetter;
  } else {
    return Problem3("--paper", "unknown paper", value, "a4 or letter");
  }
  return absl::OkStatus();
}

// A whole number of an option, within a range.
absl::Status ReadNumber(std::string_view option, const std::string& value,
                        int least, int most, int& number) {
  const bool digits = !value.empty() && value.size() <= 5 &&
                      std::all_of(value.begin(), value.end(),
                                  [](char c) { return c >= '0' && c <= '9'; });
  const int read = digits ? std::stoi(value) : -1;
  if (read < least || read > most) {
    return Problem3(std::string(option), "not a number in range", value,
                    std::to_string(least) + " to " + std::to_string(most));
  }
  number = read;
  return absl::OkStatus();
}

absl::Status ReadNodes(const std::string& value, Arguments& arguments) {
  const bool digits = !value.empty() && value.size() <= 10 &&
                      std::all_of(value.begin(), value.end(),
                                  [](char c) { return c >= '0' && c <= '9'; });
  const std::uint64_t nodes = digits ? std::stoull(value) : 0;
  if (!digits || nodes > kMostNodes) {
    return Problem3("--proof-nodes", "not a number in range", value,
                    "0 to 4000000000");
  }
  arguments.proof_nodes = nodes;
  return absl::OkStatus();
}

// A list of what makes a lesson's position a key position.
absl::Status ReadSelection(const std::string& value,
                           LessonSelection& selection) {
  std::size_t at = 0;
  while (at <= value.size()) {
    const std::size_t end = std::min(value.find(',', at), value.size());
    const std::string word = value.substr(at, end - at);
    if (word == "comments") {
      selection.comments = true;
    } else if (word == "assessments") {
      selection.assessments = true;
    } else if (word == "line-ends") {
      selection.line_ends = true;
    } else if (word == "turning-points") {
      selection.turning_points = true;
    } else {
      return Problem3("--select", "unknown", word,
                      "comments, assessments, line-ends or turning-points, "
                      "with commas between them");
    }
    at = end + 1;
  }
  return absl::OkStatus();
}

absl::Status ReadOption(const Option& option, const std::string& value,
                        Arguments& arguments) {
  if (option.commands.find(arguments.command) == std::string_view::npos) {
    return Problem3("option", "not an option of " + arguments.command,
                    option.name, "see assay --help");
  }
  if (option.name == "--format") return ReadFormat(value, arguments);
  if (option.name == "--proof-nodes") return ReadNodes(value, arguments);
  if (option.name == "--language") {
    arguments.language = value;
    if (Catalogue::Of(value) != nullptr) return absl::OkStatus();
    return Problem3("--language", "no texts in it", value, "en or de");
  }
  if (option.name == "--audience") return ReadAudience(value, arguments);
  if (option.name == "--paper") return ReadPaper(value, arguments);
  if (option.name == "--jobs") {
    return ReadNumber(option.name, value, 1, kMostJobs, arguments.jobs);
  }
  if (option.name == "--ply") {
    arguments.plies.ply = 0;
    return ReadNumber(option.name, value, 0, kMostPlies, *arguments.plies.ply);
  }
  if (option.name == "--select") {
    return ReadSelection(value, arguments.selection);
  }
  if (option.name == "--every" && arguments.command == "lesson") {
    int every = 0;
    absl::Status read = ReadNumber(option.name, value, 1, kMostPlies, every);
    arguments.selection.every_plies = static_cast<std::uint32_t>(every);
    return read;
  }
  if (option.name == "--every") {
    return ReadNumber(option.name, value, 1, kMostPlies, arguments.plies.every);
  }
  if (option.name == "--last") arguments.plies.last = true;
  if (option.name == "--with") arguments.with.push_back(value);
  if (option.name == "--pgn") arguments.pgn = true;
  if (option.name == "--weights") arguments.weights_file = value;
  if (option.name == "--name") arguments.name = value;
  if (option.name == "--title") arguments.title = value;
  if (option.name == "--items") arguments.items_file = value;
  if (option.name == "--annotated") arguments.annotated_file = value;
  if (option.name == "--handout") arguments.handout_file = value;
  if (option.name == "--pdf") arguments.pdf_file = value;
  if (option.name == "--every-hit") arguments.every_hit = true;
  if (option.name == "--resume") arguments.resume = true;
  if (option.name == "--server") arguments.server = value;
  if (option.name == "--server-ca") arguments.server_ca = value;
  if (option.name == "--server-cert") arguments.server_cert = value;
  if (option.name == "--server-key") arguments.server_key = value;
  if (option.name == "--server-token") arguments.server_token = value;
  if (option.name == "--static") arguments.static_only = true;
  if (option.name == "--all-claims") arguments.all_claims = true;
  if (option.name == "--ledger") arguments.ledger = true;
  if (option.name == "--wording") arguments.wording = true;
  if (option.name == "--help") arguments.help = true;
  return absl::OkStatus();
}

// What only works here, or only with a server.
absl::Status CheckServer(const Arguments& arguments) {
  const bool remote = !arguments.server.empty();
  if (remote && !arguments.weights_file.empty()) {
    return Problem3("--weights", "the server has its own",
                    arguments.weights_file, "--server without --weights");
  }
  if (remote && arguments.all_claims) {
    return Problem3("--all-claims", "servers give the claims in use alone",
                    "--server", "--all-claims without --server");
  }
  if (remote && arguments.format == Format::kWeights) {
    return Problem3("--format", "servers do not tell it", "weights",
                    "text or json with --server");
  }
  const bool secured =
      !arguments.server_ca.empty() || !arguments.server_cert.empty() ||
      !arguments.server_key.empty() || !arguments.server_token.empty();
  if (secured && !remote) {
    return Problem3("--server-ca, --server-cert, --server-key, --server-token",
                    "without --server", "no --server", "--server ADDRESS");
  }
  return absl::OkStatus();
}

bool IsCommand(std::string_view word) {
  return std::find(std::begin(kCommands), std::end(kCommands), word) !=
         std::end(kCommands);
}

}  // namespace

absl::StatusOr<Arguments> ParseArguments(
    const std::vector<std::string>& words) {
  Arguments arguments;
  if (words.empty()) {
    return Problem3("command", "missing", "", kWhichCommands);
  }
  arguments.command = words[0] == "--help" || words[0] == "-h" ? "help"
                      : words[0] == "--version"                ? "version"
                                                               : words[0];
  if (!IsCommand(arguments.command)) {
    return Problem3("command", "unknown", words[0], kWhichCommands);
  }
  bool options_over = false;
  for (std::size_t i = 1; i < words.size(); ++i) {
    const std::string& word = words[i];
    if (options_over || word.size() < 2 || word.substr(0, 2) != "--") {
      arguments.operands.push_back(word);
      continue;
    }
    if (word == "--") {
      options_over = true;
      continue;
    }
    const std::size_t equals = word.find('=');
    const Option* option = FindOption(word.substr(0, equals));
    if (option == nullptr) {
      return Problem3("option", "unknown", word, "see assay --help");
    }
    std::string value;
    if (option->takes_value) {
      if (equals != std::string::npos) {
        value = word.substr(equals + 1);
      } else if (i + 1 < words.size()) {
        value = words[++i];
      } else {
        return Problem3(std::string(option->name), "missing value", "",
                        "a value after it");
      }
    } else if (equals != std::string::npos) {
      return Problem3(std::string(option->name), "takes no value", word,
                      std::string(option->name));
    }
    const absl::Status read = ReadOption(*option, value, arguments);
    if (!read.ok()) return read;
  }
  const PlySelection& plies = arguments.plies;
  const bool selects = plies.ply.has_value() || plies.every != 1 || plies.last;
  if (selects && !arguments.pgn) {
    return Problem3("--ply, --every, --last", "without --pgn", "no --pgn",
                    "--pgn with a file of games");
  }
  if (arguments.command == "student" && !arguments.help &&
      arguments.name.empty()) {
    return Problem3("--name", "missing", "none", "--name PLAYER");
  }
  const bool to_files =
      !arguments.items_file.empty() || !arguments.annotated_file.empty() ||
      !arguments.handout_file.empty() || !arguments.pdf_file.empty();
  if (arguments.resume && !to_files) {
    return Problem3("--resume", "without a file", "no file to write",
                    "--items, --annotated, --handout or --pdf beside it");
  }
  if (arguments.paper != Paper::kAny && arguments.handout_file.empty() &&
      arguments.pdf_file.empty()) {
    return Problem3("--paper", "without a sheet", "no sheet to print",
                    "--handout or --pdf beside it");
  }
  const absl::Status fits = CheckServer(arguments);
  if (!fits.ok()) return fits;
  return arguments;
}

std::string UsageText() {
  return R"(assay: says who stands better in a chess position, and why.

  assay explain FEN | - | FILE   verdict, reasons and cautions of one position,
                                 or of each line of a file or standard input:
                                 FEN, or EPD records
  assay score   FEN | - | FILE   the score alone: one whole number a line,
                                 centipawns from White's point of view
  assay move    FEN MOVE         what a move gains and what it gives up
  assay compare FEN MOVE MOVE... two to eight moves side by side, and what
                                 decides; or positions: compare FEN --with FEN
  assay whatif  FEN EDIT...      what changes if the board is edited: f3-f2
                                 moves a piece for free, off-c4 takes one off,
                                 on-Nd5 puts one on (FEN letters), pass gives
                                 the move away, swap exchanges the colours
  assay lesson  FILE.pgn | -     the key positions of a lesson: where its author
                                 commented or gave an assessment, and the ends
                                 of its lines
  assay proofread FILE.pgn | -   what in a lesson does not hold up: illegal
                                 moves, assessments off the proved verdict,
                                 lines that stop where something falls, good
                                 moves that lose, strongest replies left out,
                                 clashes
  assay find FILE.pgn CONDITION...
                                 the positions of which all conditions hold,
                                 each as a game in PGN, or EPD: centre=closed,
                                 claim=doubled@white, term=bad_bishop@mover,
                                 plan=siege@black:in_time, structure=WORD,
                                 verdict>=slight@white, score<-50, move=black;
                                 "not:" before one turns it round
  assay student FILE.pgn --name NAME
                                 what one player concedes again and again, and
                                 which plans of the opponent are let happen
  assay terms                    the catalogue: every term of the evaluation
  assay version                  the version

An operand that names an existing file is a FILE; "-" is standard input. In a
batch, an item that fails has a line of its own ("error: ..." in text,
{"error": ...} in JSON, "error" from score), and the rest goes on.

  --format text|json    how to print. score also takes "epd": the records with
                        "ce" set; terms "weights": the form --weights reads
  --pgn                 the file holds games in PGN: every position of each
                        game's main line, unless one of these follows
      --ply N           the position after N plies; 0 is the start
      --every N         a position each N plies
      --last            the last position
  --ledger              every entry of the score, or every change of one, with
                        its value; whatif: what each piece contributes
  --with FEN            compare: another position; may be repeated
  --select LIST         lesson: which positions; of comments, assessments,
                        line-ends, turning-points, with commas between them
      --every N         and each N plies of a game
  --handout FILE.html   lesson, student: a sheet with diagrams; a lesson's
      --title TEXT      has plans and exercises, and a title
  --pdf FILE.pdf        the same printed, where Chromium is installed
      --paper a4|letter     on this paper, and the sheet says so to any printer;
                            without it, a printer's own
  --annotated FILE.pgn  lesson: the author's text with our comments and NAGs
  --items FILE.jsonl    lesson: a JSON object a key position
  --resume              lesson: goes on where a run with the same files and
                        options was ended
  --every-hit           find: not the first alone of those that follow each
                        other in a game
  --all-claims          explain, JSON: every claim that holds, used or not
  --language TAG        the texts' language, en or de; moves and conditions of
                        find keep their English letters and words
  --audience WHO        explain, move, compare, whatif: newcomer (what each
                        trade word means, no values), club, the default, or
                        expert (few words, values, the line searched)
  --wording             the same four, JSON: beside each text what it says apart
                        from any language, for programs that translate
  --proof-nodes N       search N nodes behind what is said; 0, the default, is
                        48000, some 30 ms a position
  --static              no search: the verdict is that of counting alone
  --jobs N              threads for a batch, 1 to 256; default: all cores. The
                        output is the same for any number
  --weights FILE        weights instead of the defaults
  --server ADDRESS      ask a server, assayd, at host:port or unix:PATH; the
                        output is the same. Not of find and student
      --server-ca FILE      it has a certificate of this authority (PEM)
      --server-cert FILE, --server-key FILE    our own, if it asks for one
      --server-token FILE   the bearer token is its first line

Colour is used on a terminal only, and never where NO_COLOR is set.
Exit status: 0 success; 1 a batch went on past a bad item, or proofread found
something; 2 bad usage or a bad input; 3 cannot read or write, or out of memory.
)";
}

}  // namespace assay::service
