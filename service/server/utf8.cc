// Reads the bytes without a schema and compares with the descriptor: only done
// after protobuf has refused them.
#include "service/server/utf8.h"

#include <map>
#include <string>

#include "google/protobuf/unknown_field_set.h"

namespace assay::service {
namespace {

using google::protobuf::Descriptor;
using google::protobuf::FieldDescriptor;
using google::protobuf::UnknownField;
using google::protobuf::UnknownFieldSet;

// Bytes of the character that starts with this byte; 0 where none does.
std::size_t CharacterBytes(unsigned char first) {
  if (first < 0x80) return 1;
  if (first >= 0xC2 && first < 0xE0) return 2;
  if (first >= 0xE0 && first < 0xF0) return 3;
  if (first >= 0xF0 && first < 0xF5) return 4;
  return 0;
}

// The second byte's range shuts out overlong forms, surrogates and what is
// beyond U+10FFFF.
bool SecondFits(unsigned char first, unsigned char second) {
  const unsigned low = first == 0xE0 ? 0xA0 : first == 0xF0 ? 0x90 : 0x80;
  const unsigned high = first == 0xED ? 0x9F : first == 0xF4 ? 0x8F : 0xBF;
  return second >= low && second <= high;
}

void Walk(const UnknownFieldSet& fields, const Descriptor& type,
          const std::string& path, std::vector<Problem>& problems) {
  std::map<int, int> seen;
  for (int i = 0; i < fields.field_count(); ++i) {
    const UnknownField& field = fields.field(i);
    const FieldDescriptor* known = type.FindFieldByNumber(field.number());
    if (known == nullptr ||
        field.type() != UnknownField::TYPE_LENGTH_DELIMITED) {
      continue;
    }
    std::string name = path + known->name();
    if (known->is_repeated()) {
      name += "[" + std::to_string(seen[field.number()]++) + "]";
    }
    const std::string& bytes = field.length_delimited();
    UnknownFieldSet inner;
    if (known->type() == FieldDescriptor::TYPE_STRING && !IsUtf8(bytes)) {
      problems.push_back({name, "not UTF-8", Quoted(bytes), "UTF-8"});
    } else if (known->type() == FieldDescriptor::TYPE_MESSAGE &&
               inner.ParseFromString(bytes)) {
      Walk(inner, *known->message_type(), name + ".", problems);
    }
  }
}

}  // namespace

bool IsUtf8(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const auto first = static_cast<unsigned char>(text[at]);
    const std::size_t bytes = CharacterBytes(first);
    if (bytes == 0 || at + bytes > text.size()) return false;
    for (std::size_t i = 1; i < bytes; ++i) {
      const auto byte = static_cast<unsigned char>(text[at + i]);
      const bool fits =
          i == 1 ? SecondFits(first, byte) : (byte & 0xC0U) == 0x80U;
      if (!fits) return false;
    }
    at += bytes;
  }
  return true;
}

std::vector<Problem> Utf8Problems(const std::string& bytes,
                                  const Descriptor& type) {
  std::vector<Problem> problems;
  UnknownFieldSet fields;
  if (fields.ParseFromString(bytes)) Walk(fields, type, "", problems);
  return problems;
}

}  // namespace assay::service
