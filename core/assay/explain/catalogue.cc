#include "assay/explain/catalogue.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <mutex>

#include "assay/explain/catalogue_texts.h"

namespace assay {
namespace {

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

// Nothing to write.
const Template kNothing;

class Writer {
 public:
  explicit Writer(const Catalogue& catalogue) : catalogue_(catalogue) {}

  void Write(const Message& message, Setting setting) {
    if (IsList(message)) {
      PutList(Row(message.id), message.arguments, setting);
      return;
    }
    if (setting.opening > 0) {
      const Template& other = catalogue_.Read(std::string(message.id) + "." +
                                              std::to_string(setting.opening));
      if (!other.parts.empty()) {
        setting.opening = 0;
        Fill(other, message.arguments, setting);
        return;
      }
    }
    Fill(catalogue_.Read(message.id), message.arguments, setting);
  }

  std::string Take() { return std::move(text_); }

 private:
  void Fill(const Template& row, const std::vector<Argument>& arguments,
            Setting whole) {
    for (const Template::Part& part : row.parts) {
      text_ += part.words;
      if (!part.has_field) continue;
      const Setting setting = part.field.Within(whole);
      const std::size_t begin = text_.size();
      if (!part.alternatives.empty()) {
        Fill(Chosen(part, setting, arguments), arguments, setting);
      } else if (const Argument* argument = At(part.field, arguments)) {
        Put(*argument, part.field, setting);
      }
      if (part.field.known || part.field.bare) {
        Reword(begin, part.field.known);
      }
      if (part.field.capital) Capitalise(begin);
    }
  }

  static const Argument* At(const Field& field,
                            const std::vector<Argument>& arguments) {
    const auto index = static_cast<std::size_t>(field.index);
    return field.index >= 0 && index < arguments.size() ? &arguments[index]
                                                        : nullptr;
  }

  const Template& Chosen(const Template::Part& part, Setting setting,
                         const std::vector<Argument>& arguments) const {
    const Field& field = part.field;
    const std::vector<Template>& all = part.alternatives;
    const auto nth = [&all](int n) -> const Template& {
      return all[std::min(static_cast<std::size_t>(n), all.size() - 1)];
    };
    if (field.by_case) return nth(static_cast<int>(setting.in_case));
    if (field.by_order) return nth(setting.after ? 1 : 0);
    const Argument* argument = At(field, arguments);
    if (argument == nullptr) return kNothing;
    if (field.by_presence) {
      if (IsThere(*argument)) return all[0];
      return all.size() > 1 ? all[1] : kNothing;
    }
    if (field.by_gender) return nth(GenderOf(FirstPiece(*argument)));
    if (field.by_side) {
      const auto* side = std::get_if<Side>(&argument->value());
      return side == nullptr ? kNothing : nth(Index(*side));
    }
    return nth(CountOf(*argument) == 1 ? 0 : 1);
  }

  void Put(const Argument& argument, const Field& field, Setting setting) {
    const Argument::Value& value = argument.value();
    if (const auto* message = std::get_if<Message>(&value)) {
      Write(*message, setting);
    } else if (const auto* moves = std::get_if<std::string>(&value)) {
      text_ += *moves;
    } else if (const auto* side = std::get_if<Side>(&value)) {
      text_ += Row(*side == Side::kWhite ? "side.white" : "side.black");
    } else if (const auto* kind = std::get_if<PieceKind>(&value)) {
      PutPiece(*kind, field, setting);
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

  void PutPiece(PieceKind kind, const Field& field, Setting setting) {
    const auto in_case = static_cast<std::size_t>(setting.in_case);
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
    int nth = 0;
    const std::string_view list = Row("list.and");
    const int count = PopCount(squares.set);
    for (const Square square : Each(squares.set)) {
      Join(list, nth++, count);
      text_ += static_cast<char>('a' + FileOf(square));
      text_ += static_cast<char>('1' + RankOf(square));
    }
  }

  void PutFiles(Files files) {
    int nth = 0;
    const std::string_view list = Row("list.and");
    const Bitboard firsts = FillFiles(files.set) & kRank1;
    const int count = PopCount(firsts);
    for (const Square first : Each(firsts)) {
      Join(list, nth++, count);
      text_ += static_cast<char>('a' + FileOf(first));
      text_ += '-';
    }
    text_ += Pick(Row("files"), '|', count == 1 ? 0 : 1);
  }

  void PutList(std::string_view list, const std::vector<Argument>& items,
               Setting setting) {
    int nth = 0;
    const int count = static_cast<int>(items.size());
    for (const Argument& item : items) {
      Join(list, nth++, count);
      Put(item, Field(), setting);
      setting.opening = 0;
    }
  }

  // What comes before the nth item of a list: "{1}, {2}|{1} and {2}" is what
  // is there so far, and one more.
  void Join(std::string_view list, int nth, int count) {
    if (nth == 0) return;
    const std::string_view joint = Pick(list, '|', nth + 1 == count ? 1 : 0);
    text_ += joint.substr(3, joint.size() - 6);
  }

  std::string_view Row(std::string_view id) const {
    return catalogue_.Find(id);
  }

  int GenderOf(PieceKind kind) const {
    const std::string_view gender = Pick(Row(PieceRow(kind)), '|', 0);
    return gender == "f" ? 1 : gender == "n" ? 2 : 0;
  }

  // Takes away the article that the text from there on begins with; where
  // `known`, puts the definite one in place of another. It is the last.
  void Reword(std::size_t at, bool known) {
    std::string_view articles = Row("article.leading");
    const std::string_view definite = articles.substr(articles.rfind('|') + 1);
    while (!articles.empty()) {
      const std::string article = std::string(Cut(articles, '|')) + " ";
      if (text_.compare(at, article.size(), article) != 0) continue;
      text_.erase(at, article.size());
      if (known) text_.insert(at, std::string(definite) + " ");
      return;
    }
  }

  void Capitalise(std::size_t at) {
    if (at < text_.size() && text_[at] >= 'a' && text_[at] <= 'z') {
      text_[at] = static_cast<char>(text_[at] - 'a' + 'A');
    }
  }

  const Catalogue& catalogue_;
  std::string text_;
};

constexpr std::string_view kGlossary = "glossary.";

// "de" of "de-AT", in lower case.
std::string Primary(std::string_view tag) {
  std::string primary;
  for (const char c : tag.substr(0, tag.find('-'))) {
    primary += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  }
  return primary;
}

}  // namespace

Catalogue::Catalogue(std::string_view text, Audience audience,
                     std::string_view overlay)
    : audience_(audience) {
  Lay(text);
  Lay(overlay);
}

void Catalogue::Lay(std::string_view text) {
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view line = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    const std::size_t tab = line.find('\t');
    if (tab == std::string_view::npos || line.front() == '#') continue;
    const std::string_view id = line.substr(0, tab);
    const std::string_view row = line.substr(tab + 1);
    if (id.substr(0, kGlossary.size()) == kGlossary) {
      glossary_.push_back(ReadTradeWord(row));
    } else {
      rows_[id] = row;
      templates_[id] = Template(row);
    }
  }
}

// A language's catalogues. Each is made when it is first asked for, since few
// programs need more than one, and stays.
class Catalogue::Shelf {
 public:
  Shelf(std::string_view club, std::string_view newcomer,
        std::string_view expert)
      : club_(club), overlays_{newcomer, {}, expert} {}

  const Catalogue& For(Audience audience) {
    const auto nth = static_cast<std::size_t>(audience);
    std::call_once(once_[nth], [&] {
      made_[nth] = new Catalogue(club_, audience, overlays_[nth]);
    });
    return *made_[nth];
  }

 private:
  const std::string_view club_;
  const std::string_view overlays_[3];  // by audience
  std::once_flag once_[3];
  const Catalogue* made_[3] = {};
};

const Catalogue& Catalogue::InEnglish(Audience audience) {
  static Shelf& shelf =
      *new Shelf(kEnglishCatalogue, kEnglishNewcomer, kEnglishExpert);
  return shelf.For(audience);
}

const Catalogue& Catalogue::English() { return InEnglish(Audience::kClub); }

const Catalogue* Catalogue::Of(std::string_view language, Audience audience) {
  const std::string primary = Primary(language);
  if (language.empty() || primary == "en") return &InEnglish(audience);
  if (primary != "de") return nullptr;
  static Shelf& shelf =
      *new Shelf(kGermanCatalogue, kGermanNewcomer, kGermanExpert);
  return &shelf.For(audience);
}

const Catalogue& Catalogue::OrEnglish(std::string_view language,
                                      Audience audience) {
  const Catalogue* words = Of(language, audience);
  return words == nullptr ? InEnglish(audience) : *words;
}

std::string_view Catalogue::Nag(int nag) const {
  return Find("nag." + std::to_string(nag));
}

std::string_view Catalogue::Find(std::string_view id) const {
  const auto row = rows_.find(id);
  return row == rows_.end() ? std::string_view() : row->second;
}

const Template& Catalogue::Read(std::string_view id) const {
  const auto read = templates_.find(id);
  return read == templates_.end() ? kNothing : read->second;
}

std::string Catalogue::Text(const Message& message) const {
  return Text(message, 0);
}

std::string Catalogue::Text(const Message& message, std::size_t opening) const {
  if (message.empty()) return "";
  Setting setting;
  if (audience_ != Audience::kExpert) {
    setting.opening = static_cast<int>(opening % kOpenings);
  }
  Writer writer(*this);
  writer.Write(message, setting);
  return writer.Take();
}

std::string English(const Message& message) {
  return Catalogue::English().Text(message);
}

}  // namespace assay
