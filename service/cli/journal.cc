// The file: a line with the key, then each result as its length, its digest
// and its bytes; a result's bytes are its texts, each after its length.
#include "service/cli/journal.h"

#include <filesystem>
#include <system_error>

#include "assay/base/problem.h"

namespace assay::service {
namespace {

constexpr std::string_view kFirstWords = "assay journal 1 ";
// A result is some 100 KiB; what says more is no journal of ours.
constexpr std::uint64_t kMostResultBytes = std::uint64_t{64} << 20U;

std::string LengthText(std::uint64_t length) {
  std::string text(8, '\0');
  for (char& c : text) {
    c = static_cast<char>(length & 0xFFU);
    length >>= 8U;
  }
  return text;
}

std::uint64_t ReadLength(std::string_view text) {
  std::uint64_t length = 0;
  for (std::size_t i = 8; i > 0; --i) {
    length = (length << 8U) | static_cast<unsigned char>(text[i - 1]);
  }
  return length;
}

// False where the bytes are no such list.
bool ReadFields(std::string_view bytes, Fields& fields) {
  fields.clear();
  while (!bytes.empty()) {
    if (bytes.size() < 8) return false;
    const std::uint64_t length = ReadLength(bytes);
    bytes.remove_prefix(8);
    if (length > bytes.size()) return false;
    fields.emplace_back(bytes.substr(0, length));
    bytes.remove_prefix(length);
  }
  return true;
}

}  // namespace

std::string Digest(std::string_view bytes) {
  // FNV-1a, 64 bits.
  std::uint64_t hash = 14695981039346656037ULL;
  for (const char c : bytes) {
    hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211ULL;
  }
  constexpr char kHex[] = "0123456789abcdef";
  std::string text(16, '0');
  for (std::size_t i = text.size(); i > 0; --i, hash >>= 4U) {
    text[i - 1] = kHex[hash & 15U];
  }
  return text;
}

absl::StatusOr<Journal> Journal::Open(const std::string& path,
                                      const std::string& key, bool resume) {
  Journal journal;
  std::uint64_t keep = 0;
  if (resume) {
    JournalReader reader(path);
    Fields fields;
    if (reader.Fits(key)) {
      while (reader.Next(fields)) ++journal.size_;
      keep = reader.whole_bytes();
    }
  }
  std::error_code error;
  if (keep > 0) std::filesystem::resize_file(path, keep, error);
  journal.out_.open(path, keep > 0 && !error ? std::ios::binary | std::ios::app
                                             : std::ios::binary);
  if (error) journal.size_ = 0;
  if (keep == 0 || error) journal.out_ << kFirstWords << key << '\n';
  journal.out_.flush();
  if (!journal.out_.good()) {
    return absl::UnavailableError("output: cannot write: found " +
                                  Quoted(path) + ", expected a writable file");
  }
  return journal;
}

bool Journal::Add(const Fields& fields) {
  std::string bytes;
  for (const std::string& field : fields) {
    bytes += LengthText(field.size()) + field;
  }
  out_ << LengthText(bytes.size()) << Digest(bytes) << bytes;
  out_.flush();
  ++size_;
  return out_.good();
}

bool Journal::Close() {
  out_.close();
  return out_.good();
}

JournalReader::JournalReader(const std::string& path)
    : in_(path, std::ios::binary) {
  std::string line;
  if (!std::getline(in_, line) || in_.eof()) return;
  if (line.substr(0, kFirstWords.size()) != kFirstWords) return;
  key_ = line.substr(kFirstWords.size());
  whole_bytes_ = line.size() + 1;
}

bool JournalReader::Next(Fields& fields) {
  std::string head(24, '\0');
  if (!in_.read(head.data(), 24)) return false;
  const std::uint64_t length = ReadLength(head);
  if (length > kMostResultBytes) return false;
  std::string bytes(length, '\0');
  if (!in_.read(bytes.data(), static_cast<std::streamsize>(length))) {
    return false;
  }
  if (Digest(bytes) != head.substr(8) || !ReadFields(bytes, fields)) {
    return false;
  }
  whole_bytes_ += 24 + length;
  return true;
}

}  // namespace assay::service
