// The board is edited as a ParsedPosition, which may be anything, and checked
// at the end. A fault of the end is laid at the door of the first edit from
// which on it never went away.
#include "assay/explain/edits.h"

#include <algorithm>
#include <optional>
#include <string_view>

#include "assay/base/problem.h"
#include "assay/base/problem_status.h"
#include "assay/rules/position_check.h"

namespace assay {
namespace {

constexpr char kExpected[] =
    "\"f3-f2\", \"off-c4\", \"on-Nd5\", \"pass\" or \"swap\"";

std::string FieldOf(std::size_t index) {
  return "edits[" + std::to_string(index) + "]";
}

std::string PieceText(Piece piece) {
  return "a " +
         std::string(piece.side() == Side::kWhite ? "white " : "black ") +
         Name(piece.kind());
}

std::optional<Edit> ReadEdit(std::string_view text) {
  Edit edit;
  const auto square = [&](std::size_t at) {
    return ParseSquare(text.substr(at, 2));
  };
  if (text == "pass") return edit;
  if (text == "swap") {
    edit.kind = Edit::Kind::kSwap;
    return edit;
  }
  if (text.size() == 5 && text[2] == '-') {
    edit.kind = Edit::Kind::kMove;
    edit.from = square(0);
    edit.to = square(3);
    const bool sound =
        edit.from != kNoSquare && edit.to != kNoSquare && edit.from != edit.to;
    if (!sound) return std::nullopt;
    return edit;
  }
  if (text.size() == 6 && text.substr(0, 4) == "off-") {
    edit.kind = Edit::Kind::kOff;
    edit.to = square(4);
    if (edit.to == kNoSquare) return std::nullopt;
    return edit;
  }
  if (text.size() == 6 && text.substr(0, 3) == "on-") {
    edit.kind = Edit::Kind::kOn;
    edit.piece = PieceFromFenLetter(text[3]);
    edit.to = square(4);
    if (edit.piece.empty() || edit.to == kNoSquare) return std::nullopt;
    return edit;
  }
  return std::nullopt;
}

// Rights whose king or rook is gone, and a capture that is no longer on.
void DropStale(ParsedPosition& parsed) {
  const CastlingRights rights = parsed.castling;
  parsed.castling = CastlingRights();
  for (const Side side : kSides) {
    const bool king =
        parsed.board[Relative(side, kE1)] == Piece(side, PieceKind::kKing);
    for (const Wing wing : kWings) {
      const bool rook = parsed.board[CastlingRook(side, wing)] ==
                        Piece(side, PieceKind::kRook);
      if (king && rook && rights.Has(side, wing)) {
        parsed.castling.Add(side, wing);
      }
    }
  }
  parsed.en_passant = kNoSquare;
}

ParsedPosition Swapped(const ParsedPosition& parsed) {
  ParsedPosition swapped = parsed;
  for (int s = 0; s < kSquares; ++s) {
    const auto square = static_cast<Square>(s);
    const Piece piece = parsed.board[square];
    swapped.board[FlipRank(square)] =
        piece.empty() ? piece : Piece(Other(piece.side()), piece.kind());
  }
  swapped.side_to_move = Other(parsed.side_to_move);
  swapped.castling = CastlingRights();
  for (const Side side : kSides) {
    for (const Wing wing : kWings) {
      if (parsed.castling.Has(side, wing)) {
        swapped.castling.Add(Other(side), wing);
      }
    }
  }
  return swapped;
}

class Editor {
 public:
  explicit Editor(const Position& position) : parsed_(position.ToParsed()) {
    for (int s = 0; s < kSquares; ++s) origin_[s] = static_cast<Square>(s);
  }

  // What is wrong, if anything.
  std::optional<Problem> Apply(Edit& edit, std::size_t index,
                               const std::string& text) {
    const auto fault = [&](const char* reason, std::string found,
                           std::string expected) {
      return Problem{FieldOf(index), reason + (" (" + text + ")"),
                     std::move(found), std::move(expected)};
    };
    auto& board = parsed_.board;
    if (edit.kind == Edit::Kind::kPass) {
      parsed_.side_to_move = Other(parsed_.side_to_move);
    } else if (edit.kind == Edit::Kind::kSwap) {
      parsed_ = Swapped(parsed_);
      swapped_ = !swapped_;
      std::array<Square, kSquares> turned;
      for (int s = 0; s < kSquares; ++s) {
        turned[FlipRank(static_cast<Square>(s))] = origin_[s];
      }
      origin_ = turned;
    } else {
      const Square leaves =
          edit.kind == Edit::Kind::kMove ? edit.from : edit.to;
      if (edit.kind != Edit::Kind::kOn) {
        edit.piece = board[leaves];
        if (edit.piece.empty()) {
          return fault("nothing stands there", ToString(leaves) + " is empty",
                       "a square with a piece or pawn");
        }
        board[leaves] = Piece();
      }
      if (edit.kind == Edit::Kind::kOff) return std::nullopt;
      if (!board[edit.to].empty()) {
        return fault(
            "the square is taken",
            PieceText(board[edit.to]) + " on " + ToString(edit.to),
            "an empty square, or \"off-" + ToString(edit.to) + "\" first");
      }
      board[edit.to] = edit.piece;
      origin_[edit.to] =
          edit.kind == Edit::Kind::kMove ? origin_[edit.from] : kNoSquare;
    }
    return std::nullopt;
  }

  std::vector<Problem> Problems() const {
    return Position::FindProblems(Sound());
  }
  ParsedPosition Sound() const {
    ParsedPosition sound = parsed_;
    DropStale(sound);
    return sound;
  }
  bool swapped() const { return swapped_; }

  std::vector<std::pair<Square, Square>> Moved(const Position& before) const {
    std::vector<std::pair<Square, Square>> moved;
    for (int s = 0; s < kSquares; ++s) {
      const auto square = static_cast<Square>(s);
      const Square from = origin_[s];
      if (from == kNoSquare || from == square || swapped_) continue;
      if (!parsed_.board[square].empty() &&
          parsed_.board[square] == before.At(from)) {
        moved.emplace_back(from, square);
      }
    }
    return moved;
  }

 private:
  ParsedPosition parsed_;
  std::array<Square, kSquares> origin_{};
  bool swapped_ = false;
};

bool IsSameFault(const Problem& a, const Problem& b) {
  return a.field == b.field && a.reason == b.reason;
}

}  // namespace

absl::StatusOr<Edited> ApplyEdits(const Position& position,
                                  const std::vector<std::string>& texts) {
  if (texts.size() > kMostEdits) {
    return ProblemStatus({"edits", "too many", std::to_string(texts.size()),
                          "at most " + std::to_string(kMostEdits)});
  }
  std::vector<Problem> problems;
  std::vector<Edit> edits;
  for (std::size_t i = 0; i < texts.size(); ++i) {
    const std::optional<Edit> edit =
        texts[i].size() <= kMostEditBytes ? ReadEdit(texts[i]) : std::nullopt;
    if (edit.has_value()) {
      edits.push_back(*edit);
    } else {
      problems.push_back(
          {FieldOf(i), "not an edit", Quoted(texts[i]), kExpected});
    }
  }
  if (!problems.empty()) return ProblemsStatus(problems);
  Editor editor(position);
  std::vector<std::vector<Problem>> faults;  // after each edit
  for (std::size_t i = 0; i < edits.size(); ++i) {
    const std::optional<Problem> fault = editor.Apply(edits[i], i, texts[i]);
    if (fault.has_value()) return ProblemStatus(*fault);
    faults.push_back(editor.Problems());
  }
  if (!faults.empty()) {
    for (const Problem& last : faults.back()) {
      std::size_t culprit = edits.size();
      while (culprit > 0 &&
             std::any_of(faults[culprit - 1].begin(), faults[culprit - 1].end(),
                         [&](const Problem& fault) {
                           return IsSameFault(fault, last);
                         })) {
        --culprit;
      }
      problems.push_back({FieldOf(culprit),
                          "leaves no legal position: " + last.reason,
                          last.found, last.expected});
    }
  }
  if (!problems.empty()) return ProblemsStatus(problems);
  if (edits.empty()) return Edited{position, {}, {}, false};
  absl::StatusOr<Position> edited = CheckedPosition(editor.Sound());
  if (!edited.ok()) return edited.status();
  return Edited{*edited, std::move(edits), editor.Moved(position),
                editor.swapped()};
}

absl::StatusOr<Position> Without(const Position& position, Square square) {
  ParsedPosition parsed = position.ToParsed();
  parsed.board[square] = Piece();
  DropStale(parsed);
  return CheckedPosition(parsed);
}

}  // namespace assay
