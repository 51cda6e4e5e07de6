// A small seeded generator (xorshift, 32 bit), so that every run of the tools
// sees the same numbers.

export function seeded(seed) {
  let state = (seed ^ 0x9e3779b9) >>> 0 || 1;
  const next = () => {
    state ^= state << 13;
    state >>>= 0;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state;
  };
  for (let i = 0; i < 8; i += 1) next();
  return {
    below: (limit) => next() % limit,
    pick: (list) => list[next() % list.length],
  };
}
