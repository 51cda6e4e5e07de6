// Templates are read as they are filled in: they are short, and so is this.
#include "assay/explain/catalogue.h"

#include <algorithm>
#include <array>
#include <cctype>

#include "assay/explain/catalogue_texts.h"

namespace assay {
namespace {

enum class Case { kNominative, kAccusative, kDative, kGenitive };

// What a part of a text takes over from the whole.
struct Setting {
  Case in_case = Case::kNominative;
  bool after = false;  // another word comes first
};

// The part before the separator, which is cut off with it; separators inside
// braces do not count.
std::string_view Cut(std::string_view& text, char separator) {
  int depth = 0;
  std::size_t at = 0;
  for (; at < text.size(); ++at) {
    if (text[at] == '{') ++depth;
    if (text[at] == '}') --depth;
    if (depth == 0 && text[at] == separator) break;
  }
  const std::string_view part = text.substr(0, at);
  text.remove_prefix(std::min(at + 1, text.size()));
  return part;
}

// The alternative of that number, else the last one.
std::string_view Pick(std::string_view alternatives, char separator,
                      std::size_t wanted) {
  std::string_view picked;
  for (std::size_t i = 0; i <= wanted && !alternatives.empty(); ++i) {
    picked = Cut(alternatives, separator);
  }
  return picked;
}

// The words of one field before its first "|".
struct Field {
  Field(std::string_view text, Setting whole) : setting(whole) {
    const std::string_view first = Cut(text, ' ');
    if (first.size() == 1 && first[0] >= '1' && first[0] <= '9') {
      index = first[0] - '1';
    } else {
      by_case = first == "case";
      by_order = first == "order";
    }
    while (!text.empty()) Note(Cut(text, ' '));
  }

  void Note(std::string_view word) {
    if (word == "nom") setting.in_case = Case::kNominative;
    if (word == "acc") setting.in_case = Case::kAccusative;
    if (word == "dat") setting.in_case = Case::kDative;
    if (word == "gen") setting.in_case = Case::kGenitive;
    if (word == "after") setting.after = true;
    if (word == "def") article = "article.def";
    if (word == "indef") article = "article.indef";
    if (word == "plural") plural = true;
    if (word == "digits") digits = true;
    if (word == "cap") capital = true;
    if (word == "if") by_presence = true;
    if (word == "gender") by_gender = true;
    if (word == "side") by_side = true;
  }

  int index = -1;
  Setting setting;
  const char* article = nullptr;
  bool plural = false;
  bool digits = false;
  bool capital = false;
  bool by_case = false;
  bool by_order = false;
  bool by_presence = false;
  bool by_gender = false;
  bool by_side = false;
};

const char* PieceRow(PieceKind kind) {
  constexpr std::array<const char*, kPieceKinds + 1> kRows = {"piece.pawn",
                                                              "piece.knight",
                                                              "piece.bishop",
                                                              "piece.rook",
                                                              "piece.queen",
                                                              "piece.king",
                                                              ""};
  return kRows[static_cast<std::size_t>(Index(kind))];
}

bool IsList(const Message& message) {
  return message.id.substr(0, 5) == "list.";
}

// A message counts as what it speaks of first.
int CountOf(const Argument& argument) {
  if (const auto* number = std::get_if<int>(&argument.value())) return *number;
  if (const auto* squares = std::get_if<Squares>(&argument.value())) {
    return PopCount(squares->set);
  }
  if (const auto* files = std::get_if<Files>(&argument.value())) {
    return PopCount(FillFiles(files->set) & kRank1);
  }
  if (const auto* message = std::get_if<Message>(&argument.value())) {
    if (IsList(*message)) return static_cast<int>(message->arguments.size());
    return message->arguments.empty() ? 1 : CountOf(message->arguments[0]);
  }
  return 1;
}

bool IsThere(const Argument& argument) {
  if (const auto* message = std::get_if<Message>(&argument.value())) {
    return !message->empty();
  }
  if (const auto* text = std::get_if<std::string>(&argument.value())) {
    return !text->empty();
  }
  return CountOf(argument) != 0;
}

// The first piece that is spoken of; none where there is none.
PieceKind FirstPiece(const Argument& argument) {
  if (const auto* kind = std::get_if<PieceKind>(&argument.value())) {
    return *kind;
  }
  if (const auto* message = std::get_if<Message>(&argument.value())) {
    for (const Argument& inner : message->arguments) {
      const PieceKind kind = FirstPiece(inner);
      if (kind != PieceKind::kNone) return kind;
    }
  }
  return PieceKind::kNone;
}

class Writer {
 public:
  explicit Writer(const Catalogue& catalogue) : catalogue_(catalogue) {}

  void Write(const Message& message, Setting setting) {
    const std::string_view row = catalogue_.Find(message.id);
    if (IsList(message)) {
      Fold(row, message.arguments, setting);
    } else {
      Fill(row, message.arguments, setting);
    }
  }

  std::string Take() { return std::move(text_); }

 private:
  void Fill(std::string_view row, const std::vector<Argument>& arguments,
            Setting setting) {
    while (!row.empty()) {
      const std::size_t open = std::min(row.find('{'), row.size());
      text_ += row.substr(0, open);
      row.remove_prefix(open);
      if (row.empty()) return;
      std::string_view field = Cut(row, '}').substr(1);
      const std::string_view words = Cut(field, '|');
      const Field read(words, setting);
      const std::size_t begin = text_.size();
      if (!field.empty()) {
        Fill(Chosen(read, field, arguments), arguments, setting);
      } else if (const Argument* argument = At(read, arguments)) {
        Put(*argument, read);
      }
      if (read.capital) Capitalise(begin);
    }
  }

  static const Argument* At(const Field& field,
                            const std::vector<Argument>& arguments) {
    const auto index = static_cast<std::size_t>(field.index);
    return field.index >= 0 && index < arguments.size() ? &arguments[index]
                                                        : nullptr;
  }

  std::string_view Chosen(const Field& field, std::string_view alternatives,
                          const std::vector<Argument>& arguments) const {
    const auto nth = [&](int n) {
      return Pick(alternatives, '|', static_cast<std::size_t>(n));
    };
    if (field.by_case) return nth(static_cast<int>(field.setting.in_case));
    if (field.by_order) return nth(field.setting.after ? 1 : 0);
    const Argument* argument = At(field, arguments);
    if (argument == nullptr) return "";
    if (field.by_presence) {
      if (IsThere(*argument)) return nth(0);
      Cut(alternatives, '|');
      return Pick(alternatives, '|', 0);
    }
    if (field.by_gender) return nth(GenderOf(FirstPiece(*argument)));
    if (field.by_side) {
      const auto* side = std::get_if<Side>(&argument->value());
      return side == nullptr ? "" : nth(Index(*side));
    }
    return nth(CountOf(*argument) == 1 ? 0 : 1);
  }

  void Put(const Argument& argument, const Field& field) {
    const Argument::Value& value = argument.value();
    if (const auto* message = std::get_if<Message>(&value)) {
      Write(*message, field.setting);
    } else if (const auto* moves = std::get_if<std::string>(&value)) {
      text_ += *moves;
    } else if (const auto* side = std::get_if<Side>(&value)) {
      text_ += Row(*side == Side::kWhite ? "side.white" : "side.black");
    } else if (const auto* kind = std::get_if<PieceKind>(&value)) {
      PutPiece(*kind, field);
    } else if (const auto* number = std::get_if<int>(&value)) {
      PutNumber(*number, field.digits);
    } else if (const auto* squares = std::get_if<Squares>(&value)) {
      PutSquares(*squares);
    } else if (const auto* files = std::get_if<Files>(&value)) {
      PutFiles(*files);
    }
  }

  void PutNumber(int number, bool digits) {
    const std::string text = std::to_string(number);
    const std::string_view word =
        digits ? std::string_view() : Row("number." + text);
    text_ += word.empty() ? text : word;
  }

  void PutPiece(PieceKind kind, const Field& field) {
    const auto in_case = static_cast<std::size_t>(field.setting.in_case);
    const std::string_view row = Row(PieceRow(kind));
    if (field.article != nullptr) {
      const std::string article(field.article);
      const std::string_view gender = Pick(row, '|', 0);
      text_ += Pick(Row(article + "." + std::string(gender)), '/', in_case);
      text_ += ' ';
    }
    text_ += Pick(Pick(row, '|', field.plural ? 2 : 1), '/', in_case);
  }

  void PutSquares(Squares squares) {
    std::vector<Argument> names;
    for (const Square square : Each(squares.set)) {
      names.emplace_back(ToString(square));
    }
    Fold(Row("list.and"), names, {});
  }

  void PutFiles(Files files) {
    std::vector<Argument> names;
    for (const Square first : Each(FillFiles(files.set) & kRank1)) {
      names.emplace_back(std::string{static_cast<char>('a' + FileOf(first))} +
                         "-");
    }
    Fold(Row("list.and"), names, {});
    text_ += Pick(Row("files"), '|', names.size() == 1 ? 0 : 1);
  }

  // "{1}, {2}|{1} and {2}": what is there so far, and one more.
  void Fold(std::string_view row, const std::vector<Argument>& items,
            Setting setting) {
    for (std::size_t i = 0; i < items.size(); ++i) {
      if (i > 0) {
        const bool last = i + 1 == items.size();
        // What is there stays where it is; only the joint is written.
        const std::string_view joint = Pick(row, '|', last ? 1 : 0);
        text_ += joint.substr(3, joint.size() - 6);
      }
      Put(items[i], Field("1", setting));
    }
  }

  std::string_view Row(std::string_view id) const {
    return catalogue_.Find(id);
  }

  int GenderOf(PieceKind kind) const {
    const std::string_view gender = Pick(Row(PieceRow(kind)), '|', 0);
    return gender == "f" ? 1 : gender == "n" ? 2 : 0;
  }

  void Capitalise(std::size_t at) {
    if (at < text_.size() && text_[at] >= 'a' && text_[at] <= 'z') {
      text_[at] = static_cast<char>(text_[at] - 'a' + 'A');
    }
  }

  const Catalogue& catalogue_;
  std::string text_;
};

// "de" of "de-AT", in lower case.
std::string Primary(std::string_view tag) {
  std::string primary;
  for (const char c : tag.substr(0, tag.find('-'))) {
    primary += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  }
  return primary;
}

}  // namespace

Catalogue::Catalogue(std::string_view text) {
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view line = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    const std::size_t tab = line.find('\t');
    if (tab != std::string_view::npos && line.front() != '#') {
      rows_.emplace(line.substr(0, tab), line.substr(tab + 1));
    }
  }
}

const Catalogue& Catalogue::English() {
  static const Catalogue& english = *new Catalogue(kEnglishCatalogue);
  return english;
}

const Catalogue* Catalogue::Of(std::string_view language) {
  const std::string primary = Primary(language);
  if (language.empty() || primary == "en") return &English();
  if (primary != "de") return nullptr;
  static const Catalogue& german = *new Catalogue(kGermanCatalogue);
  return &german;
}

std::string_view Catalogue::Find(std::string_view id) const {
  const auto row = rows_.find(id);
  return row == rows_.end() ? std::string_view() : row->second;
}

std::string Catalogue::Text(const Message& message) const {
  if (message.empty()) return "";
  Writer writer(*this);
  writer.Write(message, {});
  return writer.Take();
}

std::string English(const Message& message) {
  return Catalogue::English().Text(message);
}

}  // namespace assay
