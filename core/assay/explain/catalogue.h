// The words of a language: a template a message, from catalogue/*.txt.
//
// A row is an id, a tab and its template. In a template, "{1}" is the first
// argument: a number in words, a side, a piece, squares, files, moves, or a
// message that its own row words. After it may follow
//
//   nom acc dat gen    the case of what is put there; else that of the whole
//   def indef plural   a piece with its article, or several
//   digits             a number in digits
//   cap                its first letter is a capital
//   known bare         the article that it begins with becomes the definite
//                      one, or goes: those of "article.leading", if any
//   after              a clause that begins with its verb where the language
//                      asks for that after another word
//
// and "|" begins alternatives: "{1|one|several}" by number (of a list, or of
// what a message speaks of first), "{1 if|there|not}"
// by whether it is there (no zero, no empty message), "{1 gender|m|f|n}" by the
// gender of the first piece in it, "{1 side|White|Black}", "{case|nom|acc|dat|
// gen}" and "{order|usual|after}". Where alternatives are missing the last one
// stands for them; after "if", nothing does. Rows of "list." fold their
// arguments, "all but the last|the last"; those of "piece." and "article." are
// the table of nouns: gender, and the cases of singular and plural.
//
// A row whose id ends in ".1", ".2" or ".3" says the same as the one without,
// and begins otherwise, where it comes first in a text that is to open so.
//
// What newcomers and experts are told otherwise is laid over a language's rows
// from a file of its own ("en_expert.txt"); newcomers' has a glossary, too.
#ifndef ASSAY_EXPLAIN_CATALOGUE_H_
#define ASSAY_EXPLAIN_CATALOGUE_H_

#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "assay/explain/audience.h"
#include "assay/explain/glossary.h"
#include "assay/explain/message.h"
#include "assay/explain/template.h"

namespace assay {

// The ways to open a text, the usual one included.
inline constexpr std::size_t kOpenings = 4;

// Never changes once made: any number of threads may share one.
class Catalogue {
 public:
  // The catalogue of a language by its BCP 47 tag ("de", "de-AT"; in any case,
  // empty for English); null where there is none. Made at the first call.
  static const Catalogue* Of(std::string_view language,
                             Audience audience = Audience::kClub);
  static const Catalogue& English();
  // The same; English where there is none.
  static const Catalogue& OrEnglish(std::string_view language,
                                    Audience audience);

  // The message in words; empty for an empty one.
  std::string Text(const Message& message) const;
  // The same, opening in the way of that number, counted around. Experts have
  // but the usual one.
  std::string Text(const Message& message, std::size_t opening) const;

  // The template of an id, as written and as read; empty where there is none.
  std::string_view Find(std::string_view id) const;
  const Template& Read(std::string_view id) const;
  const std::unordered_map<std::string_view, std::string_view>& rows() const {
    return rows_;
  }

  // What an assessment of the PGN standard of 1994 means, by its number ("equal
  // chances, quiet position"); empty for others.
  std::string_view Nag(int nag) const;

  Audience audience() const { return audience_; }
  // What newcomers have explained; empty for others.
  const std::vector<TradeWord>& glossary() const { return glossary_; }

 private:
  class Shelf;
  static const Catalogue& InEnglish(Audience audience);

  // Rows of `overlay` stand for those of `text`.
  Catalogue(std::string_view text, Audience audience, std::string_view overlay);

  void Lay(std::string_view text);

  Audience audience_;
  std::unordered_map<std::string_view, std::string_view> rows_;
  std::unordered_map<std::string_view, Template> templates_;
  std::vector<TradeWord> glossary_;
};

// In English.
std::string English(const Message& message);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_CATALOGUE_H_
