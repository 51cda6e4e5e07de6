// A template of a catalogue, read once (catalogue.h says how they are written).
#ifndef ASSAY_EXPLAIN_TEMPLATE_H_
#define ASSAY_EXPLAIN_TEMPLATE_H_

#include <cstddef>
#include <string_view>
#include <vector>

namespace assay {

// The part before the separator, which is cut off with it; separators inside
// braces do not count.
std::string_view Cut(std::string_view& text, char separator);

// The alternative of that number, else the last one; nothing where there is
// none.
std::string_view Pick(std::string_view alternatives, char separator,
                      std::size_t wanted);

enum class Case { kNominative, kAccusative, kDative, kGenitive };

// What a part of a text takes over from the whole.
struct Setting {
  Case in_case = Case::kNominative;
  bool after = false;  // another word comes first
  int opening = 0;     // of the ways to open a text: catalogue.h
};

// The words of one field before its first "|".
class Field {
 public:
  Field() = default;
  explicit Field(std::string_view words);

  // What is put there takes over from the whole, but for what is said here.
  Setting Within(Setting whole) const {
    return {has_case ? in_case : whole.in_case, whole.after || after,
            whole.opening};
  }

  int index = -1;  // of the argument; -1 for none
  const char* article = nullptr;
  Case in_case = Case::kNominative;
  bool has_case = false;
  bool after = false;
  bool plural = false;
  bool digits = false;
  bool capital = false;
  bool known = false;
  bool bare = false;
  bool by_case = false;
  bool by_order = false;
  bool by_presence = false;
  bool by_gender = false;
  bool by_side = false;

 private:
  void Note(std::string_view word);
  void SetCase(Case wanted);
};

// Words and fields in turn. What it is made of is text of the catalogue, which
// has to live as long.
struct Template {
  struct Part;

  Template() = default;
  explicit Template(std::string_view text);

  std::vector<Part> parts;
};

struct Template::Part {
  std::string_view words;
  bool has_field = false;  // else the words are the end
  Field field;             // after the words
  // What is chosen from; none where the argument itself is put there.
  std::vector<Template> alternatives;
};

}  // namespace assay

#endif  // ASSAY_EXPLAIN_TEMPLATE_H_
