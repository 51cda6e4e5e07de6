// The two encodings that PGN files come in.
//
// The standard asks for ISO 8859/1 (Latin-1; section 4.1), the world mostly
// writes UTF-8. Text that is whole UTF-8 is taken for UTF-8, any other for
// Latin-1, in which every byte is a character: a multi-byte character cut in
// two is therefore never an error. Bytes are kept as they are; ToUtf8() is for
// who wants to show them.
#ifndef ASSAY_NOTATION_PGN_TEXT_H_
#define ASSAY_NOTATION_PGN_TEXT_H_

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace assay {

enum class PgnEncoding : std::uint8_t { kUtf8, kLatin1 };

// Whether the bytes are UTF-8 (RFC 3629: shortest forms, no surrogates, up to
// U+10FFFF). Pure ASCII is.
bool IsUtf8(std::string_view bytes);

// The text in UTF-8: itself, or each byte of Latin-1 as a character.
std::string ToUtf8(std::string_view bytes, PgnEncoding encoding);

// How many characters the bytes are.
std::size_t CountCharacters(std::string_view bytes, PgnEncoding encoding);

// What the standard calls white space: space, tab (9 and 11), line feed, form
// feed, carriage return.
constexpr bool IsPgnSpace(char c) { return c == ' ' || (c >= 9 && c <= 13); }

}  // namespace assay

#endif  // ASSAY_NOTATION_PGN_TEXT_H_
