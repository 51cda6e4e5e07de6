// The items of a batch: lines of FEN or EPD, or the positions of games.
#ifndef ASSAY_SERVICE_CLI_ITEMS_H_
#define ASSAY_SERVICE_CLI_ITEMS_H_

#include <deque>
#include <istream>
#include <memory>
#include <optional>
#include <string>

#include "absl/status/statusor.h"
#include "assay/notation/epd.h"
#include "assay/notation/pgn_reader.h"
#include "service/cli/arguments.h"

namespace assay::service {

// What is known of an item before a worker has looked at it: a line of text,
// or a position that a game came to, or what is wrong with a game.
struct Item {
  std::string line;
  std::optional<Position> position;
  absl::Status fault;  // of a game
  std::string label;   // "game 3, after 12... Nf6"; empty where there is none
};

// A position to work on, and what to call it.
struct NamedRecord {
  EpdRecord record;
  std::string label;  // an EPD record's id, or the item's label
};

// Reads an item's line; INVALID_ARGUMENT for a faulty line or game.
absl::StatusOr<NamedRecord> ReadItem(const Item& item);

// Items one after another, from one thread.
class ItemSource {
 public:
  virtual ~ItemSource() = default;
  // False at the end of the input.
  virtual bool Next(Item& item) = 0;
};

// Every line of `in` that is not blank.
std::unique_ptr<ItemSource> LineItems(std::istream& in);

// Positions of each game of a PGN text: of the main line after ply
// `selection.ply`, or after each `selection.every` plies (the start included),
// or the last one. A game with faults gives the positions before the fault,
// then the fault.
std::unique_ptr<ItemSource> GameItems(std::istream& in,
                                      const PlySelection& selection);

}  // namespace assay::service

#endif  // ASSAY_SERVICE_CLI_ITEMS_H_
