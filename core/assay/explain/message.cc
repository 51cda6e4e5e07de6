#include "assay/explain/message.h"

namespace assay {

Message List(std::string_view id, std::vector<Message> items) {
  if (items.empty()) return {};
  if (items.size() == 1) return std::move(items.front());
  Message list;
  list.id = id;
  list.arguments.reserve(items.size());
  for (Message& item : items) list.arguments.emplace_back(std::move(item));
  return list;
}

Message And(std::vector<Message> items) {
  return List("list.and", std::move(items));
}

Message Sentence(Message clause) { return Say("sentence", std::move(clause)); }

Message ClauseOf(const Message& sentence) {
  if (sentence.id != "sentence") return sentence;
  return std::get<Message>(sentence.arguments.front().value());
}

Message Moves(std::string moves) { return Say("moves", std::move(moves)); }

Message Unit(PieceKind kind, Square square) {
  return Say("unit", kind, square);
}

Message Count(int count, PieceKind kind) { return Say("count", count, kind); }

}  // namespace assay
