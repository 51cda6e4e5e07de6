// What a text says arrives with it: put into words again, it is the text, in
// each language, for every text that has a wording beside it.
#include "service/convert/wording.h"

#include <string>
#include <vector>

#include "assay/explain/assayer.h"
#include "assay/explain/catalogue.h"
#include "assay/rules/movegen.h"
#include "gtest/gtest.h"
#include "service/convert/convert.h"
#include "service/convert/moves.h"
#include "tests/support/plausible_play.h"

namespace assay::service {
namespace {

using google::protobuf::FieldDescriptor;

// The field of the text that a wording belongs to.
std::string TextField(const std::string& name) {
  if (name == "wording") return "text";
  if (name == "note_wordings") return "notes";
  return name.substr(0, name.rfind("_wording"));
}

class Checker {
 public:
  explicit Checker(const Catalogue& words) : words_(words) {}

  void Check(const google::protobuf::Message& message) {
    const auto& type = *message.GetDescriptor();
    const auto& reflection = *message.GetReflection();
    for (int i = 0; i < type.field_count(); ++i) {
      const FieldDescriptor* field = type.field(i);
      if (field->cpp_type() != FieldDescriptor::CPPTYPE_MESSAGE) continue;
      const int count = field->is_repeated()
                            ? reflection.FieldSize(message, field)
                            : reflection.HasField(message, field);
      const bool wording = field->message_type() == v1::Wording::descriptor();
      if (wording) CheckWording(message, field, count);
      for (int n = 0; n < count && !wording; ++n) {
        Check(field->is_repeated()
                  ? reflection.GetRepeatedMessage(message, field, n)
                  : reflection.GetMessage(message, field));
      }
    }
  }
  int checked() const { return checked_; }

 private:
  void CheckWording(const google::protobuf::Message& message,
                    const FieldDescriptor* field, int count) {
    const auto& reflection = *message.GetReflection();
    // Said beside charts alone: it has no text of its own.
    if (field->name() == "phrase_wording") return;
    const FieldDescriptor* text =
        message.GetDescriptor()->FindFieldByName(TextField(field->name()));
    ASSERT_NE(text, nullptr) << field->full_name();
    if (!field->is_repeated()) {
      const std::string words = reflection.GetString(message, text);
      EXPECT_EQ(count == 0, words.empty()) << field->full_name();
      if (count == 0) return;
      Compare(reflection.GetMessage(message, field), words);
      return;
    }
    ASSERT_EQ(count, reflection.FieldSize(message, text));
    for (int n = 0; n < count; ++n) {
      Compare(reflection.GetRepeatedMessage(message, field, n),
              reflection.GetRepeatedString(message, text, n));
    }
  }

  void Compare(const google::protobuf::Message& wording,
               const std::string& text) {
    v1::Wording sent;  // as a client has it
    ASSERT_TRUE(sent.ParseFromString(wording.SerializeAsString()));
    EXPECT_EQ(words_.Text(FromProto(sent)), text);
    ++checked_;
  }

  const Catalogue& words_;
  int checked_ = 0;
};

// Calls check(position, options, checker) for positions of `games` games, in
// each language.
template <class Check>
void CheckInEachLanguage(std::uint64_t seed, int games, const Check& check) {
  for (const char* language : {"en", "de"}) {
    Checker checker(*Catalogue::Of(language));
    ExplainOptions options;
    options.language = language;
    options.proof_nodes = 500;
    testing_support::PlayPlausibly(seed, games, [&](const Position& position) {
      check(position, options, checker);
    });
    EXPECT_GT(checker.checked(), 1000);
  }
}

TEST(Wording, IsTheTextPutIntoWords) {
  const Assayer assayer;
  CheckInEachLanguage(5, 60,
                      [&](const Position& position,
                          const ExplainOptions& options, Checker& checker) {
                        const Explanation explanation =
                            assayer.Explain(position, options);
                        v1::Explanation message;
                        ToProto(explanation, assayer, &message);
                        AddWordings(explanation, &message);
                        checker.Check(message);
                      });
}

TEST(Wording, IsTheTextOfMovesComparisonsAndWhatIfs) {
  const Assayer assayer;
  CheckInEachLanguage(6, 40,
                      [&](const Position& position,
                          const ExplainOptions& options, Checker& checker) {
                        MoveList legal;
                        LegalMoves(position, legal);
                        if (legal.size() < 2) return;
                        const std::vector<Move> moves{legal[0], legal[1]};
                        const MoveExplanation move =
                            ExplainMove(assayer, position, moves[0], options);
                        v1::MoveExplanation move_message;
                        ToProto(move, assayer, &move_message);
                        AddWordings(move, &move_message);
                        checker.Check(move_message);
                        const Comparison comparison =
                            Compare(assayer, position, moves, {}, options);
                        v1::CompareResponse comparison_message;
                        ToProto(comparison, position, {}, assayer,
                                &comparison_message);
                        AddWordings(comparison, &comparison_message);
                        checker.Check(comparison_message);
                        const absl::StatusOr<WhatIf> what_if =
                            AskWhatIf(assayer, position, {"swap"}, options);
                        ASSERT_TRUE(what_if.ok());
                        v1::WhatIfResponse what_if_message;
                        ToProto(*what_if, assayer, &what_if_message);
                        AddWordings(*what_if, &what_if_message);
                        checker.Check(what_if_message);
                      });
}

TEST(Wording, OfAnotherVersionIsLeftOut) {
  v1::Wording wording;
  wording.set_id("pawns.of_another_world");
  EXPECT_TRUE(FromProto(wording).empty());
  wording.set_id("pawns.isolated");
  wording.add_arguments()->set_squares("z9 e4x");
  EXPECT_EQ(FromProto(wording).id, "pawns.isolated");
}

}  // namespace
}  // namespace assay::service
