// What is said, apart from any language: the id of a template and what goes
// into it. A catalogue (catalogue.h) puts it into words.
//
//   Say("has", Side::kWhite, Say("pawns.passed", kE5, false, Message()))
//
// is "White has a passed pawn on e5" in English. Code that decides what is said
// makes messages and looks at no words; equal messages say the same.
#ifndef ASSAY_EXPLAIN_MESSAGE_H_
#define ASSAY_EXPLAIN_MESSAGE_H_

#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "assay/base/bitboard.h"
#include "assay/base/piece.h"
#include "assay/base/side.h"

namespace assay {

class Argument;

struct Message {
  std::string_view id;  // lives as long as the program; empty: nothing is said
  std::vector<Argument> arguments;

  bool empty() const { return id.empty(); }
  friend bool operator==(const Message& a, const Message& b);
  friend bool operator!=(const Message& a, const Message& b) {
    return !(a == b);
  }
};

// Squares, named from the lowest-numbered on.
struct Squares {
  Bitboard set = 0;
  friend bool operator==(Squares a, Squares b) { return a.set == b.set; }
};

// Files: any square of each.
struct Files {
  Bitboard set = 0;
  friend bool operator==(Files a, Files b) { return a.set == b.set; }
};

// What goes into a template. Moves and lines are text, the same in any
// language.
class Argument {
 public:
  using Value =
      std::variant<int, Side, PieceKind, Squares, Files, std::string, Message>;

  // Implicit, so that a message reads as a list of what it is about.
  Argument(bool holds) : value_(holds ? 1 : 0) {}
  Argument(int number) : value_(number) {}
  Argument(Side side) : value_(side) {}
  Argument(PieceKind kind) : value_(kind) {}
  Argument(Square square) : value_(Squares{Bit(square)}) {}
  Argument(Squares squares) : value_(squares) {}
  Argument(Files files) : value_(files) {}
  Argument(std::string moves) : value_(std::move(moves)) {}
  Argument(Message message) : value_(std::move(message)) {}
  Argument(Bitboard) = delete;  // squares or files?

  const Value& value() const { return value_; }
  friend bool operator==(const Argument& a, const Argument& b) {
    return a.value_ == b.value_;
  }

 private:
  Value value_;
};

inline bool operator==(const Message& a, const Message& b) {
  return a.id == b.id && a.arguments == b.arguments;
}

template <typename... Arguments>
Message Say(std::string_view id, Arguments&&... arguments) {
  Message message;
  message.id = id;
  message.arguments.reserve(sizeof...(arguments));
  (message.arguments.emplace_back(std::forward<Arguments>(arguments)), ...);
  return message;
}

// The items as one; nothing for none, and one alone as it is. The ids of lists
// begin with "list.".
Message List(std::string_view id, std::vector<Message> items);

// "a, b and c".
Message And(std::vector<Message> items);

// A clause as a sentence, and the clause of a sentence.
Message Sentence(Message clause);
Message ClauseOf(const Message& sentence);

// Moves alone, as a part of a list.
Message Moves(std::string moves);

// "the knight on d5".
Message Unit(PieceKind kind, Square square);

// "a pawn", "two knights".
Message Count(int count, PieceKind kind);

}  // namespace assay

#endif  // ASSAY_EXPLAIN_MESSAGE_H_
