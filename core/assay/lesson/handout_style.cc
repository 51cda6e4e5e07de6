// Ink on paper with two colours, rust for White's reasons and petrol for
// Black's: both at least 4.5 to 1 against the paper, and never the only sign.
// Sizes are in rem, so that a reader's own text size counts; on paper the page
// is what the printer has, A4 or Letter, unless one of them is asked for.
#include "assay/lesson/handout_style.h"

namespace assay {
namespace {

constexpr char kStyle[] = R"(
:root { --ink: #1d1a17; --paper: #fffdf8; --rust: #8a3f0d; --petrol: #14555c;
  --line: #8d8473; }
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 52rem; padding: 1.2rem; color: var(--ink);
  background: var(--paper); line-height: 1.45;
  font-family: Charter, "Bitstream Charter", "Noto Serif", "DejaVu Serif",
    Georgia, serif; }
h1, h2, h3, nav, .figure, .step, th, .because, .diagram text {
  font-family: "Gill Sans", "Noto Sans", "DejaVu Sans", Verdana, sans-serif; }
h1 { font-size: 1.9rem; line-height: 1.2; margin: 0 0 .3rem; }
h2 { font-size: 1.3rem; margin: 0 0 .3rem; line-height: 1.25; }
h3 { font-size: 1rem; margin: 1.1rem 0 .3rem; }
p { margin: .3rem 0 .6rem; }
a { color: var(--petrol); }
a:focus-visible, .scroll:focus-visible { outline: 3px solid var(--rust);
  outline-offset: 2px; }
.stencils { position: absolute; }
.skip { position: absolute; left: -99rem; }
.skip:focus { left: 1rem; top: 1rem; background: var(--paper); padding: .4rem; }
header { border-bottom: 3px double var(--ink); margin-bottom: 1rem;
  padding-bottom: .6rem; }
nav ol { padding-left: 1.6rem; }
nav li { margin: .2rem 0; }
nav .game { font-weight: bold; list-style: none; margin: .7rem 0 .2rem -1.6rem; }
article { border-top: 1px solid var(--line); padding-top: 1rem;
  margin-top: 2rem; }
.because, .back { font-size: .85rem; }
.told { margin: .25rem 0; }
blockquote { margin: .4rem 0; padding-left: .8rem; font-style: italic;
  border-left: 3px solid var(--line); }
.board { display: grid; grid-template-columns: 19rem 1fr; gap: 0 1.4rem; }
figure { margin: 0; }
figcaption { font-size: .8rem; margin-top: .2rem; }
.diagram { display: block; width: 100%; max-width: 21rem; height: auto; }
.diagram .light { fill: #fffdf8; } .diagram .dark { fill: url(#hatch); }
.diagram .for-white { fill: url(#dots); stroke: #8a3f0d; stroke-width: 1.5; }
.diagram .for-black { fill: url(#crosses); stroke: #14555c; stroke-width: 1.5; }
.diagram .rim { fill: none; stroke: #1d1a17; stroke-width: 1.6; }
.diagram text { font-size: 12px; fill: #1d1a17; }
.diagram .route { stroke: #1d1a17; stroke-width: 2.6; opacity: .8; }
.diagram .route.black { stroke-dasharray: 5 4; }
.diagram circle.stop { fill: #fff; stroke: #1d1a17; stroke-width: 1.4; }
.diagram circle.stop.black { fill: #1d1a17; }
.diagram text.stop { font-size: 11px; } .diagram text.stop.black { fill: #fff; }
.verdict { font-size: 1.08rem; }
.waterfall { list-style: none; padding: 0; margin: .3rem 0; }
.waterfall li { display: grid; grid-template-columns: 17rem 3.6rem 1fr;
  gap: 0 .7rem; align-items: center; line-height: 1.25; padding: .1rem 0; }
.waterfall .figure { text-align: right; font-size: .9rem; }
.waterfall svg { width: 100%; height: 1.5rem; }
.waterfall li:last-child { font-weight: bold; }
.waterfall .for-white { fill: #8a3f0d; }
.waterfall .for-black { fill: #fff; stroke: #14555c; stroke-width: 2.5; }
.waterfall .zero { stroke: #1d1a17; stroke-width: 1.5; }
.waterfall .total { stroke: #8d8473; stroke-dasharray: 3 3; }
.waterfall .end { fill: #1d1a17; }
.scroll { overflow-x: auto; }
.race { border-collapse: collapse; font-size: .85rem; width: 100%; }
.race th, .race td { text-align: left; padding: .25rem .3rem; font-weight: normal;
  border-bottom: 1px solid #cfc7b6; vertical-align: middle; }
.race thead th { font-weight: bold; }
.race .tempo { min-width: 2.6rem; }
.race .tempo, .race td { text-align: center; }
.race .standing { text-align: left; }
.step { display: block; border: 1.5px solid var(--ink); padding: .1rem .2rem;
  white-space: nowrap; background: #fff; }
.step.goal { border-right-width: 5px; }
.black .step { border-style: dashed; border-right-style: solid; }
.stopped .step, .slow .step, .needs .step { border-width: 1px; color: #4a443b; }
.steps { padding-left: 1.3rem; margin: .2rem 0; }
.quiz { display: grid; grid-template-columns: repeat(auto-fill, minmax(14rem, 1fr));
  gap: 1.2rem; list-style: none; padding: 0; }
.answers { padding-left: 1.8rem; }
footer { border-top: 3px double var(--ink); margin-top: 2rem; font-size: .8rem; }
@media (max-width: 40rem) {
  .board { grid-template-columns: 1fr; }
  .waterfall li { grid-template-columns: 1fr 3.6rem; }
  .waterfall svg { grid-column: 1 / 3; height: 1rem; }
}
@page { margin: 13mm; }
@media print {
  body { max-width: none; padding: 0; font-size: 9.5pt;
    line-height: 1.35; background: none; }
  .skip, .back { display: none; }
  a { color: inherit; text-decoration: none; }
  article, .part { break-before: page; border: 0; margin-top: 0; padding-top: 0; }
  h2, h3 { break-after: avoid; }
  figure, .waterfall, .race tr, .quiz li, .answers li { break-inside: avoid; }
  .quiz { grid-template-columns: repeat(3, 1fr); }
  .board { grid-template-columns: 7.2cm 1fr; }
  h3 { margin-top: .7rem; }
  .waterfall svg { height: 1.2rem; }
  * { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
}
)";

// A rule that is laid over that of the style: its margins stay.
const char* PageOf(Paper paper) {
  switch (paper) {
    case Paper::kA4:
      return "@page { size: A4; }\n";
    case Paper::kLetter:
      return "@page { size: letter; }\n";
    case Paper::kAny:
      break;
  }
  return "";
}

}  // namespace

std::string HandoutStyle(Paper paper) {
  return std::string(kStyle) + PageOf(paper);
}

}  // namespace assay
