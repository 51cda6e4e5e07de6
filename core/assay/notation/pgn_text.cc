#include "assay/notation/pgn_text.h"

#include <cstring>

namespace assay {
namespace {

// Bytes of the UTF-8 character at the front; 0 where there is none.
std::size_t CharacterBytes(std::string_view bytes) {
  const auto at = [bytes](std::size_t i) {
    return static_cast<unsigned char>(bytes[i]);
  };
  const unsigned first = at(0);
  if (first < 0x80U) return 1;
  std::size_t size = 0;
  unsigned lowest = 0x80U;   // the second byte's range, narrower after
  unsigned highest = 0xBFU;  // E0, ED, F0 and F4 (RFC 3629, section 4)
  if (first >= 0xC2U && first <= 0xDFU) {
    size = 2;
  } else if (first >= 0xE0U && first <= 0xEFU) {
    size = 3;
    if (first == 0xE0U) lowest = 0xA0U;
    if (first == 0xEDU) highest = 0x9FU;
  } else if (first >= 0xF0U && first <= 0xF4U) {
    size = 4;
    if (first == 0xF0U) lowest = 0x90U;
    if (first == 0xF4U) highest = 0x8FU;
  }
  if (size == 0 || bytes.size() < size) return 0;
  if (at(1) < lowest || at(1) > highest) return 0;
  for (std::size_t i = 2; i < size; ++i) {
    if ((at(i) & 0xC0U) != 0x80U) return 0;
  }
  return size;
}

}  // namespace

bool IsUtf8(std::string_view bytes) {
  while (!bytes.empty()) {
    std::uint64_t eight = 0;  // mostly ASCII: eight bytes at a time
    if (bytes.size() >= sizeof eight) {
      std::memcpy(&eight, bytes.data(), sizeof eight);
      if ((eight & 0x8080808080808080U) == 0) {
        bytes.remove_prefix(sizeof eight);
        continue;
      }
    }
    const std::size_t size = CharacterBytes(bytes);
    if (size == 0) return false;
    bytes.remove_prefix(size);
  }
  return true;
}

std::string ToUtf8(std::string_view bytes, PgnEncoding encoding) {
  if (encoding == PgnEncoding::kUtf8) return std::string(bytes);
  std::string text;
  for (const char c : bytes) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 0x80U) {
      text += c;
    } else {
      text += static_cast<char>(0xC0U | (byte >> 6U));
      text += static_cast<char>(0x80U | (byte & 0x3FU));
    }
  }
  return text;
}

std::size_t CountCharacters(std::string_view bytes, PgnEncoding encoding) {
  if (encoding == PgnEncoding::kLatin1) return bytes.size();
  std::size_t count = 0;
  for (const char c : bytes) {
    if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80U) ++count;
  }
  return count;
}

}  // namespace assay
