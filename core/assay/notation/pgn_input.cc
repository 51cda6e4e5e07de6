#include "assay/notation/pgn_input.h"

#include <algorithm>
#include <cstring>
#include <utility>

namespace assay {

PgnInput::PgnInput(PgnSource source) : source_(std::move(source)) {}

PgnInput::PgnInput(std::string_view text)
    : data_(text.data()), end_(text.size()) {}

bool PgnInput::Fill(std::size_t size) {
  while (source_ && end_ - begin_ < size) {
    const std::size_t kept = end_ - begin_;
    if (begin_ > 0) {
      std::memmove(buffer_.data(), buffer_.data() + begin_, kept);
      dropped_ += begin_;
      begin_ = 0;
      end_ = kept;
    }
    const std::size_t needed = std::max(size, kept + kChunkBytes);
    if (buffer_.size() < needed) buffer_.resize(std::max(needed, 2 * kept));
    data_ = buffer_.data();
    const std::size_t got =
        source_(buffer_.data() + end_, buffer_.size() - end_);
    if (got == 0) {
      source_ = nullptr;
    } else {
      end_ += std::min(got, buffer_.size() - end_);
    }
  }
  return end_ - begin_ >= size;
}

void PgnInput::Consume(std::size_t size) {
  const std::size_t stop = begin_ + size;
  while (begin_ < stop) {
    const char c = data_[begin_++];
    if (c == '\n') {
      if (!after_return_) ++line_;
      line_offset_ = offset();
    } else if (c == '\r') {
      ++line_;
      line_offset_ = offset();
    }
    after_return_ = c == '\r';
  }
}

}  // namespace assay
