// The bytes of a PGN file as a window that moves on.
//
// PgnInput belongs to one thread. It asks its source for more only when the
// window has too few bytes, keeps what has not been consumed, and knows line
// and column of the window's first byte. Line ends are "\n", "\r\n" and "\r".
// A source that is in memory already is not copied.
#ifndef ASSAY_NOTATION_PGN_INPUT_H_
#define ASSAY_NOTATION_PGN_INPUT_H_

#include <cstddef>
#include <cstdint>
#include <functional>
#include <string_view>
#include <vector>

namespace assay {

// Writes at most so many bytes of the file and gives their number; 0 at the
// end. A read that fails is the caller's to notice: it looks like the end.
using PgnSource = std::function<std::size_t(char*, std::size_t)>;

// Where something stands in a file. All count from 1, columns in bytes.
struct PgnPlace {
  std::uint64_t game = 0;
  std::uint64_t line = 0;
  std::uint64_t column = 0;
};

class PgnInput {
 public:
  // How much the source is asked for at a time.
  static constexpr std::size_t kChunkBytes = std::size_t{1} << 16U;

  explicit PgnInput(PgnSource source);
  // The text outlives this object.
  explicit PgnInput(std::string_view text);
  // Moved, the window stays where it is.
  PgnInput(PgnInput&&) = default;
  PgnInput& operator=(PgnInput&&) = default;

  // The bytes at hand. Valid until the next call that is not const.
  std::string_view window() const { return {data_ + begin_, end_ - begin_}; }
  // Gets the window to have so many bytes where the file has them; says
  // whether it has.
  bool Want(std::size_t size) { return end_ - begin_ >= size || Fill(size); }
  // Moves on by bytes of the window.
  void Consume(std::size_t size);
  // The same where none of the bytes is a line end.
  void ConsumeInLine(std::size_t size) {
    begin_ += size;
    after_return_ = false;
  }

  std::uint64_t line() const { return line_; }
  std::uint64_t column() const { return offset() - line_offset_ + 1; }
  // Bytes of the file before the window.
  std::uint64_t offset() const { return dropped_ + begin_; }

 private:
  bool Fill(std::size_t size);

  PgnSource source_;  // empty where the text is in memory
  std::vector<char> buffer_;
  const char* data_ = nullptr;
  std::size_t begin_ = 0;
  std::size_t end_ = 0;
  std::uint64_t dropped_ = 0;  // bytes of the file before data_
  std::uint64_t line_ = 1;
  std::uint64_t line_offset_ = 0;  // of the line's first byte
  bool after_return_ = false;      // the last byte consumed was "\r"
};

}  // namespace assay

#endif  // ASSAY_NOTATION_PGN_INPUT_H_
