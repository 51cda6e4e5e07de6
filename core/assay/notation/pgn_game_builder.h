// A game tree out of the tokens of one game: the part of PgnReader that knows
// the board.
#ifndef ASSAY_NOTATION_PGN_GAME_BUILDER_H_
#define ASSAY_NOTATION_PGN_GAME_BUILDER_H_

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "assay/notation/pgn_lexer.h"
#include "assay/notation/pgn_reader.h"
#include "assay/notation/pgn_tree.h"

namespace assay {

// Belongs to one game and one thread: Add() every token, then Finish().
class PgnGameBuilder {
 public:
  // Fills the item, which outlives this object. Games count from 1.
  PgnGameBuilder(PgnItem& item, std::uint64_t game);

  void Add(const PgnToken& token, const PgnLexer& lexer);
  void Finish();

 private:
  // An open line: the main line, or a variation within the one before it.
  struct Line {
    NodeIndex last = 0;  // its latest node
    Position before;     // the position before that node's move
    Position after;
    PgnToken opened;  // the "(" that began it
  };

  void AddTag(const PgnToken& token, const PgnLexer& lexer);
  void AddMovetext(const PgnToken& token);
  void AddComment(const PgnToken& token, std::vector<PgnComment>& comments,
                  std::uint32_t after_variations);
  void AddSymbol(const PgnToken& token);
  void AddMove(const PgnToken& token, Move move);
  void AddNag(const PgnToken& token, std::uint8_t nag);
  void ReadNag(const PgnToken& token);
  void ReadMark(const PgnToken& token);
  void ReadNumber(const PgnToken& token);
  void ReadResult(const PgnToken& token);
  void ReadJunk(const PgnToken& token);
  void OpenVariation(const PgnToken& token);
  void CloseVariation(const PgnToken& token);

  // Reads the start position off the tags.
  void BeginMovetext(const PgnToken& token);
  void FinishResult();
  void FinishEncoding();

  GameNode& last_node() { return tree_.nodes[lines_.back().last]; }
  PgnExtent& last_extent() { return item_.extents[lines_.back().last]; }

  void Fault(const PgnToken& token, Problem problem);
  // A fault after which the rest of the movetext makes no sense.
  void FaultAndStop(const PgnToken& token, Problem problem);
  void Remark(const PgnToken& token, Problem problem);

  PgnItem& item_;
  GameTree& tree_;
  std::uint64_t game_;
  std::vector<Line> lines_;
  std::vector<PgnToken> tag_places_;
  PgnToken last_token_;
  std::size_t comment_count_ = 0;
  std::size_t comment_bytes_ = 0;
  bool begun_ = false;       // the movetext has
  bool stopped_ = false;     // by a fault
  bool terminated_ = false;  // by a result
  bool number_told_ = false;
};

}  // namespace assay

#endif  // ASSAY_NOTATION_PGN_GAME_BUILDER_H_
