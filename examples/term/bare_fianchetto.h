// A term of one's own, outside the library.
#ifndef ASSAY_EXAMPLES_TERM_BARE_FIANCHETTO_H_
#define ASSAY_EXAMPLES_TERM_BARE_FIANCHETTO_H_

#include "bench/own_term.h"

assay::bench::OwnTerm BareFianchetto();

#endif  // ASSAY_EXAMPLES_TERM_BARE_FIANCHETTO_H_
