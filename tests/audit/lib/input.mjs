// Reads JSON lines from a file or standard input, one at a time, so that a
// file of any length can be audited.

import { createReadStream } from 'node:fs';
import { createInterface } from 'node:readline';

export async function* jsonLines(path, limit = Infinity) {
  const input = path && path !== '-' ? createReadStream(path) : process.stdin;
  const reader = createInterface({ input, crlfDelay: Infinity });
  let count = 0;
  for await (const line of reader) {
    if (!line.trim()) continue;
    if (count >= limit) break;
    count += 1;
    yield JSON.parse(line);
  }
}

// { flags: Set, options: Map, path } of a command line. `valued` names the
// options that take a value.
export function parseArguments(words, valued) {
  const flags = new Set();
  const options = new Map();
  let path;
  for (let i = 0; i < words.length; i += 1) {
    if (valued.includes(words[i])) options.set(words[i], words[i += 1]);
    else if (words[i].startsWith('--')) flags.add(words[i]);
    else path = words[i];
  }
  return { flags, options, path };
}

export function fail(message) {
  process.stderr.write(`${message}\n`);
  process.exit(2);
}
