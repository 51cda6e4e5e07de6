// One token is looked at ahead; comments that may belong to either of two
// games are held until it is known to which.
#include "assay/notation/pgn_scanner.h"

#include <utility>

#include "assay/notation/pgn_limits.h"

namespace assay {

using Kind = PgnToken::Kind;
using Context = PgnLexer::Context;

PgnScanner::PgnScanner(PgnInput input) : lexer_(std::move(input)) {}

PgnToken PgnScanner::Take(Context context) {
  if (!ahead_.has_value()) return lexer_.Next(context);
  const PgnToken token = *ahead_;
  ahead_.reset();
  return token;
}

bool PgnScanner::Hold(const PgnToken& token) {
  if (token.kind != Kind::kComment || held_.size() >= kMostPgnComments ||
      held_bytes_ + token.text.size() > kMostPgnGameCommentBytes) {
    return false;
  }
  held_.push_back({token, std::string(token.text)});
  held_bytes_ += token.text.size();
  return true;
}

bool PgnScanner::NextHeld(PgnToken& token) {
  if (held_given_ == held_.size()) {
    held_.clear();
    held_given_ = 0;
    held_bytes_ = 0;
    return false;
  }
  const HeldComment& held = held_[held_given_++];
  token = held.token;
  token.text = held.text;
  return true;
}

bool PgnScanner::End(const PgnToken& next) {
  ahead_ = next;
  state_ = State::kEnded;
  return false;
}

bool PgnScanner::StartGame() {
  PgnToken token;
  while (Next(token)) {
  }
  do {
    token = Take(Context::kTags);
  } while (Hold(token));
  ahead_ = token;
  if (token.kind == Kind::kEnd) return false;
  state_ = State::kHeading;
  first_tag_.clear();
  broken_ = false;
  depth_ = 0;
  ++game_;
  return true;
}

bool PgnScanner::Next(PgnToken& token) {
  switch (state_) {
    case State::kEnded:
      return false;
    case State::kHeading:
      if (NextHeld(token)) return true;
      state_ = State::kTags;
      return NextInTags(token);
    case State::kTags:
      return NextInTags(token);
    case State::kMoves:
      token = Take(Context::kMovetext);
      return NextInMoves(token);
    case State::kAfter:
      return NextAfter(token);
  }
  return false;
}

bool PgnScanner::NextInTags(PgnToken& token) {
  token = Take(Context::kTags);
  switch (token.kind) {
    case Kind::kTag:
      if ((token.after_blank || broken_) && token.text == first_tag_) {
        return End(token);
      }
      if (first_tag_.empty()) first_tag_ = token.text;
      return true;
    case Kind::kBadComment:
      broken_ = true;
      return true;
    case Kind::kBadTag:
    case Kind::kComment:
      return true;
    default:
      state_ = State::kMoves;
      return NextInMoves(token);
  }
}

bool PgnScanner::NextInMoves(PgnToken& token) {
  switch (token.kind) {
    case Kind::kEnd:
    case Kind::kTag:
    case Kind::kBadTag:
      return End(token);
    case Kind::kOpen:
      ++depth_;
      return true;
    case Kind::kClose:
      if (depth_ > 0) --depth_;
      return true;
    case Kind::kResult: {
      result_ = token.text;
      ahead_ = lexer_.Next(Context::kTags);
      token.text = result_;
      if (ahead_->kind == Kind::kClose && depth_ > 0) {
        token.kind = Kind::kJunk;
      } else {
        state_ = State::kAfter;
      }
      return true;
    }
    default:
      return true;
  }
}

bool PgnScanner::NextAfter(PgnToken& token) {
  if (held_given_ > 0) {  // the file has ended: all of them are this game's
    if (NextHeld(token)) return true;
    state_ = State::kEnded;
    return false;
  }
  token = Take(Context::kTags);
  if (token.kind == Kind::kClose) return true;
  if (token.kind == Kind::kComment && !token.line_start) return true;
  while (Hold(token)) token = lexer_.Next(Context::kTags);
  if (token.kind != Kind::kEnd || held_.empty()) return End(token);
  ahead_ = token;
  return NextHeld(token);
}

}  // namespace assay
