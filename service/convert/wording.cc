#include "service/convert/wording.h"

#include <string>
#include <vector>

#include "assay/explain/catalogue.h"

namespace assay::service {
namespace {

std::string SquareNames(Squares squares) {
  std::string names;
  for (const Square square : Each(squares.set)) {
    names += (names.empty() ? "" : " ") + ToString(square);
  }
  return names;
}

std::string FileLetters(Files files) {
  std::string letters;
  for (const Square first : Each(FillFiles(files.set) & kRank1)) {
    letters += static_cast<char>('a' + FileOf(first));
  }
  return letters;
}

Bitboard SquaresFrom(const std::string& names) {
  Bitboard squares = 0;
  for (std::size_t at = 0; at + 2 <= names.size(); at += 3) {
    const Square square = ParseSquare(names.substr(at, 2));
    if (square != kNoSquare) squares |= Bit(square);
  }
  return squares;
}

Bitboard FilesFrom(const std::string& letters) {
  Bitboard files = 0;
  for (const char letter : letters) {
    if (letter >= 'a' && letter <= 'h') files |= FileMask(letter - 'a');
  }
  return files;
}

struct ArgumentWriter {
  v1::WordingArgument* to;

  void operator()(int number) const { to->set_number(number); }
  void operator()(Side side) const {
    to->set_side(side == Side::kWhite ? v1::SIDE_WHITE : v1::SIDE_BLACK);
  }
  void operator()(PieceKind kind) const {
    to->set_piece(static_cast<v1::PieceKind>(Index(kind) + 1));
  }
  void operator()(Squares squares) const {
    to->set_squares(SquareNames(squares));
  }
  void operator()(Files files) const { to->set_files(FileLetters(files)); }
  void operator()(const std::string& text) const { to->set_verbatim(text); }
  void operator()(const Message& said) const {
    if (!said.empty()) ToProto(said, to->mutable_wording());
  }
};

Argument ArgumentFrom(const v1::WordingArgument& argument) {
  switch (argument.value_case()) {
    case v1::WordingArgument::kNumber:
      return argument.number();
    case v1::WordingArgument::kSide:
      return argument.side() == v1::SIDE_BLACK ? Side::kBlack : Side::kWhite;
    case v1::WordingArgument::kPiece:
      return argument.piece() >= v1::PIECE_KIND_PAWN &&
                     argument.piece() <= v1::PIECE_KIND_KING
                 ? static_cast<PieceKind>(argument.piece() - 1)
                 : PieceKind::kNone;
    case v1::WordingArgument::kSquares:
      return Squares{SquaresFrom(argument.squares())};
    case v1::WordingArgument::kFiles:
      return Files{FilesFrom(argument.files())};
    case v1::WordingArgument::kVerbatim:
      return argument.verbatim();
    case v1::WordingArgument::kWording:
      return FromProto(argument.wording());
    case v1::WordingArgument::VALUE_NOT_SET:
      break;
  }
  return Message();
}

void AddWordings(const ToldPlan& told, v1::Plan* message) {
  ToProto(told.title_said, message->mutable_title_wording());
  ToProto(told.said, message->mutable_wording());
  if (!told.needs_said.empty()) {
    ToProto(told.needs_said, message->mutable_needs_wording());
  }
  int at = 0;
  for (const ToldStep& step : told.steps) {
    v1::PlanStep* to = message->mutable_steps(at++);
    if (step.purpose_said.empty()) continue;
    ToProto(step.purpose_said, to->mutable_purpose_wording());
  }
  if (message->has_counter()) {
    ToProto(told.counter_said, message->mutable_counter()->mutable_wording());
  }
  ToProto(told.ignored_said, message->mutable_if_ignored()->mutable_wording());
}

template <class List, class Messages>
void AddEach(const List& list, Messages* messages) {
  for (std::size_t i = 0; i < list.size(); ++i) {
    ToProto(list[i].said,
            messages->Mutable(static_cast<int>(i))->mutable_wording());
  }
}

template <class Messages>
void AddToPlans(const std::vector<ToldPlan>& plans, Messages* messages) {
  for (std::size_t i = 0; i < plans.size(); ++i) {
    AddWordings(plans[i], messages->Mutable(static_cast<int>(i)));
  }
}

}  // namespace

void ToProto(const Message& said, v1::Wording* wording) {
  wording->set_id(std::string(said.id));
  for (const Argument& argument : said.arguments) {
    std::visit(ArgumentWriter{wording->add_arguments()}, argument.value());
  }
}

Message FromProto(const v1::Wording& wording) {
  const auto& rows = Catalogue::English().rows();
  const auto row = rows.find(wording.id());
  if (row == rows.end()) return {};
  Message said;
  said.id = row->first;
  for (const v1::WordingArgument& argument : wording.arguments()) {
    said.arguments.push_back(ArgumentFrom(argument));
  }
  return said;
}

void AddWordings(const Explanation& explanation, v1::Explanation* message) {
  ToProto(explanation.summary_said, message->mutable_summary_wording());
  ToProto(explanation.verdict.said,
          message->mutable_verdict()->mutable_wording());
  AddEach(explanation.ledger, message->mutable_ledger());
  AddEach(explanation.reasons, message->mutable_reasons());
  int at = 0;
  for (const Reason& reason : explanation.reasons) {
    v1::Reason* to = message->mutable_reasons(at++);
    if (reason.phrase.empty()) continue;
    ToProto(reason.phrase, to->mutable_phrase_wording());
  }
  AddEach(explanation.cautions, message->mutable_cautions());
  AddEach(explanation.temptations, message->mutable_temptations());
  AddEach(explanation.threats, message->mutable_threats());
  AddToPlans(explanation.plans, message->mutable_plans());
  const Structure& structure = explanation.structure;
  v1::Structure* shape = message->mutable_structure();
  if (!structure.name_said.empty()) {
    ToProto(structure.name_said, shape->mutable_name_wording());
  }
  for (const Message& note : structure.notes_said) {
    ToProto(note, shape->add_note_wordings());
  }
  if (explanation.advice.has_value()) {
    ToProto(explanation.advice->said,
            message->mutable_advice()->mutable_wording());
  }
}

void DropWordings(google::protobuf::Message* message) {
  const google::protobuf::Reflection* reflection = message->GetReflection();
  std::vector<const google::protobuf::FieldDescriptor*> fields;
  reflection->ListFields(*message, &fields);
  for (const google::protobuf::FieldDescriptor* field : fields) {
    if (field->message_type() == v1::Wording::descriptor()) {
      reflection->ClearField(message, field);
    } else if (field->message_type() == nullptr) {
      continue;
    } else if (field->is_repeated()) {
      const int size = reflection->FieldSize(*message, field);
      for (int i = 0; i < size; ++i) {
        DropWordings(reflection->MutableRepeatedMessage(message, field, i));
      }
    } else {
      DropWordings(reflection->MutableMessage(message, field));
    }
  }
}

void AddWordings(const MoveExplanation& told, v1::MoveExplanation* message) {
  AddEach(told.balance.gains, message->mutable_gains());
  AddEach(told.balance.concessions, message->mutable_concessions());
  if (told.settled.has_value()) {
    const Balance& settled = told.settled->balance;
    v1::Settled* to = message->mutable_settled();
    AddEach(settled.gains, to->mutable_gains());
    AddEach(settled.concessions, to->mutable_concessions());
  }
  AddToPlans(told.starts, message->mutable_starts());
  AddToPlans(told.stops, message->mutable_stops());
  AddToPlans(told.allows, message->mutable_allows());
  if (told.reply_to_fear.has_value()) {
    ToProto(told.reply_to_fear->said,
            message->mutable_reply_to_fear()->mutable_wording());
  }
  ToProto(told.summary_said, message->mutable_summary_wording());
}

void AddWordings(const Comparison& comparison, v1::CompareResponse* message) {
  for (std::size_t i = 0; i < comparison.explanations.size(); ++i) {
    AddWordings(comparison.explanations[i],
                message->mutable_explanations(static_cast<int>(i)));
  }
  ToProto(comparison.decides_said, message->mutable_decides_wording());
}

void AddWordings(const WhatIf& told, v1::WhatIfResponse* message) {
  AddEach(told.changes, message->mutable_changes());
  ToProto(told.summary_said, message->mutable_summary_wording());
}

}  // namespace assay::service
