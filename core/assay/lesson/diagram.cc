// Squares are 40 units wide. The pieces are our own: a base line that all
// share, and a shape as plain as a stencil above it, so that they stay clear
// on cheap copies.
#include "assay/lesson/diagram.h"

#include <cstdio>

#include "assay/lesson/markup.h"

namespace assay {
namespace {

constexpr int kSquareSize = 40;
constexpr int kMargin = 18;  // left and below: the coordinates

// Shapes in a square of 40 units; the second path is drawn in the other
// colour, for eyes and slits.
struct Shape {
  char letter;
  const char* body;
  const char* detail;
};
constexpr Shape kShapes[kPieceKinds] = {
    {'p',
     "M20 8.500a5.800 5.800 0 0 1 3.700 10.200"
     "c2.400 1.800 3.600 5.600 4 10.300h3.300V33.500H9V29h3.300"
     "c.4-4.700 1.600-8.500 4-10.300A5.800 5.800 0 0 1 20 8.500z",
     ""},
    {'n',
     "M14 5.500l3.500 3.800C25 9.300 31 15 31 23.500"
     "c0 2-.3 3.800-.8 5.500h2.300v4.500H9.500V29h2.700"
     "c.4-4.200 2.800-6.700 6-9.500-2.300.3-4 1.800-6 3.800L8 20"
     "l5.200-8z",
     "M16.500 13.600h.01M25 15.500c1.800 3 2.200 6.500 1.700 10"},
    {'b',
     "M20 4.500a2.400 2.400 0 0 1 1.600 4.200"
     "c4.200 2.800 6.900 6.700 6.900 11 0 3.200-1.700 5.800-4.200 7.400"
     "V29h7.200v4.500H8.500V29h7.200v-1.900"
     "c-2.500-1.600-4.200-4.200-4.200-7.400 0-4.300 2.700-8.200 6.900-11"
     "A2.400 2.400 0 0 1 20 4.500z",
     "M20 14v9M15.800 18.300h8.400"},
    {'r',
     "M9.500 7.500h5V11h3V7.500h5V11h3V7.500h5v9l-3 2.500 1 10h2.500"
     "v4.500H9V29h2.500l1-10-3-2.500z",
     "M13.500 18.700h13M12.500 27h15"},
    {'q',
     "M7.500 10.500l6 7 2-10.500 4.500 9.500L24.500 7l2 10.500 6-7"
     "L29.500 29h2v4.500h-23V29h2z",
     "M12 25.500h16"},
    {'k',
     "M18.200 4h3.600v3.500h3.400V11h-3.400v3.300"
     "c6.200-2.500 11.200.2 11.200 5.200 0 3.900-2.300 7-4.300 9.500"
     "h2.800v4.500h-23V29h2.800C9.300 26.500 7 23.400 7 19.500"
     "c0-5 5-7.700 11.200-5.200V11h-3.400V7.500h3.400z",
     "M20 18v8M13 26h14"},
};

std::string Number(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.1f", value);
  return text;
}

int Left(Square square) { return kMargin + FileOf(square) * kSquareSize; }
int Top(Square square) { return (7 - RankOf(square)) * kSquareSize; }

// A stencil on a square.
std::string Put(const std::string& stencil, Square square) {
  return "<use href=\"#" + stencil + "\" x=\"" + std::to_string(Left(square)) +
         "\" y=\"" + std::to_string(Top(square)) + "\"/>";
}

// Both colours of squares, hatched by lines: patterns make printed files a
// hundred times as large.
std::string EmptyBoard() {
  std::string lines;
  for (int i = 0; i < kSquares; ++i) {
    const auto square = static_cast<Square>(i);
    if (IsLight(square)) continue;
    // Slanting lines from the left and the lower edge to the upper and right.
    for (int at = 5; at < 2 * kSquareSize; at += 7) {
      const int over = at > kSquareSize ? at - kSquareSize : 0;
      lines += "M" + std::to_string(Left(square) + over) + " " +
               std::to_string(Top(square) + at - over) + "l" +
               std::to_string(at - 2 * over) + " -" +
               std::to_string(at - 2 * over);
    }
  }
  return "<g id=\"board\"><rect x=\"18\" y=\"1\" width=\"320\" height=\"319\" "
         "fill=\"#fffdf8\"/><path d=\"" +
         lines + "\" stroke=\"#a1977f\" stroke-width=\"1.300\"/>" +
         "<rect x=\"18\" y=\"1\" width=\"320\" height=\"319\" fill=\"none\" "
         "stroke=\"#1d1a17\" stroke-width=\"1.600\"/></g>\n";
}

std::string Coordinates() {
  std::string text;
  for (int i = 0; i < 8; ++i) {
    const Square file = MakeSquare(i, 0);
    const Square rank = MakeSquare(0, i);
    text += "<text x=\"" + std::to_string(Left(file) + kSquareSize / 2) +
            "\" y=\"334\" text-anchor=\"middle\">" +
            static_cast<char>('a' + i) + "</text><text x=\"8\" y=\"" +
            std::to_string(Top(rank) + 25) + "\" text-anchor=\"middle\">" +
            static_cast<char>('1' + i) + "</text>";
  }
  return text;
}

// A line from square to square that stops short of the middle of the last, and
// the number of the step there.
std::string RouteStep(const DrawnRoute& route, std::size_t i) {
  const Move move = route.moves[i];
  const double half = kSquareSize / 2.0;
  const double x1 = Left(move.from()) + half;
  const double y1 = Top(move.from()) + half;
  const double x2 = Left(move.to()) + half;
  const double y2 = Top(move.to()) + half;
  const std::string side = route.side == Side::kWhite ? "white" : "black";
  return "<line class=\"route " + side + "\" x1=\"" + Number(x1) + "\" y1=\"" +
         Number(y1) + "\" x2=\"" + Number(x2) + "\" y2=\"" + Number(y2) +
         "\"/><circle class=\"stop " + side + "\" cx=\"" + Number(x2 + 11) +
         "\" cy=\"" + Number(y2 - 11) + "\" r=\"8\"/><text class=\"stop " +
         side + "\" x=\"" + Number(x2 + 11) + "\" y=\"" + Number(y2 - 7.2) +
         "\" text-anchor=\"middle\">" + std::to_string(i + 1) + "</text>";
}

// "White: king e1, pawn e2".
Message PiecesOf(const Position& position, Side side) {
  std::vector<Message> pieces;
  for (int kind = kPieceKinds - 1; kind >= 0; --kind) {
    for (const Square square : Each(position.Pieces(side, kAllKinds[kind]))) {
      pieces.push_back(Say("board.piece", kAllKinds[kind], square));
    }
  }
  return Say("entry", side, List("list.comma", std::move(pieces)));
}

}  // namespace

std::string DescribeBoard(const Position& position, const Catalogue& words) {
  return words.Text(Sentence(
      List("list.semicolon",
           {PiecesOf(position, Side::kWhite), PiecesOf(position, Side::kBlack),
            Say("handout.to_move", position.side_to_move())})));
}

std::string DiagramDefinitions() {
  std::string text =
      "<svg class=\"stencils\" width=\"0\" height=\"0\" aria-hidden=\"true\" "
      "focusable=\"false\"><defs>\n" +
      EmptyBoard() +
      "<g id=\"dots\"><path d=\"M6 6h.01M20 6h.01M34 6h.01M6 20h.01M34 20h.01"
      "M6 34h.01M20 34h.01M34 34h.01\" stroke=\"#8a3f0d\" stroke-width=\"5\" "
      "stroke-linecap=\"round\"/><rect x=\"1\" y=\"1\" width=\"38\" "
      "height=\"38\" fill=\"none\" stroke=\"#8a3f0d\" "
      "stroke-width=\"2\"/></g>\n"
      "<g id=\"crosses\"><path d=\"M3 3l7 7m0-7l-7 7M30 3l7 7m0-7l-7 7M3 30l7 7"
      "m0-7l-7 7M30 30l7 7m0-7l-7 7\" stroke=\"#14555c\" "
      "stroke-width=\"2.500\"/>"
      "<rect x=\"1\" y=\"1\" width=\"38\" height=\"38\" fill=\"none\" "
      "stroke=\"#14555c\" stroke-width=\"2\"/></g>\n";
  for (const Shape& shape : kShapes) {
    for (const Side side : kSides) {
      const bool white = side == Side::kWhite;
      text += std::string("<g id=\"") + (white ? "w" : "b") + shape.letter +
              "\"><path d=\"" + shape.body + "\" fill=\"" +
              (white ? "#fff" : "#262320") +
              "\" stroke=\"#1a1816\" stroke-width=\"1.700\" "
              "stroke-linejoin=\"round\"/>";
      if (*shape.detail != '\0') {
        text += std::string("<path d=\"") + shape.detail +
                "\" fill=\"none\" stroke=\"" + (white ? "#1a1816" : "#fff") +
                "\" stroke-width=\"1.500\" stroke-linecap=\"round\"/>";
      }
      text += "</g>\n";
    }
  }
  return text + "</defs></svg>\n";
}

std::string Diagram(const Position& position, const DiagramMarks& marks,
                    const Catalogue& words) {
  std::string text =
      "<svg class=\"diagram\" viewBox=\"0 0 340 340\" role=\"img\" "
      "aria-label=\"" +
      Escaped(DescribeBoard(position, words)) + "\">\n";
  text += "<use href=\"#board\"/>" + Coordinates() + "\n";
  for (const Square square : Each(marks.for_white)) {
    text += Put("dots", square);
  }
  for (const Square square : Each(marks.for_black & ~marks.for_white)) {
    text += Put("crosses", square);
  }
  for (const Square square : Each(position.Occupied())) {
    const Piece piece = position.At(square);
    text += Put(std::string(piece.side() == Side::kWhite ? "w" : "b") +
                    kShapes[Index(piece.kind())].letter,
                square);
  }
  text += "\n";
  for (const DrawnRoute& route : marks.routes) {
    for (std::size_t i = 0; i < route.moves.size(); ++i) {
      text += RouteStep(route, i);
    }
  }
  return text + "</svg>\n";
}

}  // namespace assay
