// The files that the page is made of: a list, made once. What is not on it is
// not served, whatever a path looks like.

import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, extname, join, relative } from 'node:path';

const types = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.pgn': 'application/vnd.chess-pgn; charset=utf-8',
};

function filesBelow(folder) {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    return entry.isDirectory() ? filesBelow(path) : [path];
  });
}

// From the path of a URL to {path, type}.
export function servedFiles(page, lesson) {
  const require = createRequire(import.meta.url);
  // The package's front door is its CommonJS; the module lies beside it.
  const chess = join(dirname(require.resolve('chess.js')), '../esm/chess.js');
  const files = new Map([
    ['/vendor/chess.js', chess],
    ['/vendor/pgn-parser.js', require.resolve('@mliebelt/pgn-parser')],
    ['/lesson.pgn', lesson],
  ]);
  for (const path of filesBelow(page)) {
    const name = relative(page, path).replaceAll('\\', '/');
    files.set(name === 'index.html' ? '/' : `/${name}`, path);
  }
  return new Map([...files].map(([url, path]) =>
    [url, { path, type: types[extname(path)] ?? 'application/octet-stream' }]));
}

export const contentOf = (file) => readFileSync(file.path);
