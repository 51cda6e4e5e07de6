#include "service/cli/input.h"

#include <filesystem>
#include <fstream>
#include <iostream>
#include <system_error>

#include "assay/base/problem.h"
#include "assay/base/problem_status.h"

namespace assay::service {
namespace {

bool NamesFile(const std::string& operand) {
  std::error_code error;
  return std::filesystem::exists(operand, error);
}

absl::StatusOr<std::unique_ptr<std::istream>> Open(const std::string& path) {
  std::error_code error;
  auto file = std::make_unique<std::ifstream>(path, std::ios::binary);
  if (std::filesystem::is_directory(path, error) || !*file) {
    return absl::UnavailableError("file: cannot read: found " + Quoted(path) +
                                  ", expected a readable file");
  }
  return std::unique_ptr<std::istream>(std::move(file));
}

bool IsBlank(const std::string& line) {
  return line.find_first_not_of(" \t\r") == std::string::npos;
}

}  // namespace

absl::StatusOr<Input> OpenInput(const Arguments& arguments) {
  Input input;
  const std::vector<std::string>& operands = arguments.operands;
  if (operands.empty()) {
    return ProblemStatus(
        {"operand", "missing", "none", "a FEN, a file or \"-\""});
  }
  if (operands.size() == 1 && operands[0] == "-") {
    input.is_batch = true;
    return input;
  }
  if (operands.size() == 1 && NamesFile(operands[0])) {
    absl::StatusOr<std::unique_ptr<std::istream>> file = Open(operands[0]);
    if (!file.ok()) return file.status();
    input.is_batch = true;
    input.file = *std::move(file);
    return input;
  }
  for (const std::string& operand : operands) {
    if (!input.text.empty()) input.text += ' ';
    input.text += operand;
  }
  return input;
}

bool ReadLine(std::istream& in, std::string& line) {
  std::streambuf* buffer = in.rdbuf();
  constexpr int kEnd = std::char_traits<char>::eof();
  while (true) {
    line.clear();
    int c = buffer->sbumpc();
    if (c == kEnd) return false;
    for (; c != kEnd && c != '\n'; c = buffer->sbumpc()) {
      if (line.size() <= kMostLineBytes) line += static_cast<char>(c);
    }
    if (!line.empty() && line.back() == '\r') line.pop_back();
    if (!IsBlank(line)) return true;
  }
}

absl::StatusOr<std::string> ReadFile(const std::string& path,
                                     std::size_t most_bytes) {
  absl::StatusOr<std::unique_ptr<std::istream>> file = Open(path);
  if (!file.ok()) return file.status();
  std::string text(most_bytes + 1, '\0');
  (*file)->read(text.data(), static_cast<std::streamsize>(text.size()));
  text.resize(static_cast<std::size_t>((*file)->gcount()));
  if (text.size() > most_bytes) {
    return absl::UnavailableError("file: too large: found " + Quoted(path) +
                                  ", expected at most " +
                                  std::to_string(most_bytes) + " bytes");
  }
  return text;
}

absl::StatusOr<std::string> ReadGames(const Arguments& arguments) {
  absl::StatusOr<Input> input = OpenInput(arguments);
  if (!input.ok()) return input.status();
  if (!input->is_batch) {
    return absl::UnavailableError("file: cannot read: found " +
                                  Quoted(input->text) +
                                  ", expected a file of games or \"-\"");
  }
  std::istream& in = input->file != nullptr ? *input->file : std::cin;
  std::string text;
  std::string chunk(std::size_t{1} << 16U, '\0');
  while (in.read(chunk.data(), static_cast<std::streamsize>(chunk.size())) ||
         in.gcount() > 0) {
    text.append(chunk, 0, static_cast<std::size_t>(in.gcount()));
    if (text.size() > kMostGamesBytes) {
      return absl::UnavailableError(
          "file: too large: found more, expected at most " +
          std::to_string(kMostGamesBytes) + " bytes");
    }
  }
  return text;
}

}  // namespace assay::service
