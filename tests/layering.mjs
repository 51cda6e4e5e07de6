// Checks that data flows one way: a room of core/ includes only headers of
// rooms that come before it in core/CMakeLists.txt, and core/ knows neither
// protobuf nor gRPC, nor prints.
//
//   node tests/layering.mjs

import { readFileSync, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const core = join(dirname(fileURLToPath(import.meta.url)), '..', 'core');
const rooms = [...readFileSync(join(core, 'CMakeLists.txt'), 'utf8')
  .matchAll(/^assay_room\((\w+)/gm)].map((match) => match[1]);

const problems = [];
let files = 0;
for (const [at, room] of rooms.entries()) {
  const allowed = new Set(rooms.slice(0, at + 1));
  const names = readdirSync(join(core, 'assay', room));
  for (const name of names.filter((each) => /\.(h|cc)$/.test(each))) {
    files += 1;
    const path = join(core, 'assay', room, name);
    for (const line of readFileSync(path, 'utf8').split('\n')) {
      const include = line.match(/^#include ["<]([^">]+)[">]/)?.[1];
      if (!include) continue;
      const other = include.match(/^assay\/(\w+)\//)?.[1];
      if (other && !allowed.has(other)) {
        problems.push(`${path}: ${room} may not include ${include}`);
      }
      if (/^(google\/|grpc|iostream)/.test(include)) {
        problems.push(`${path}: core/ may not include ${include}`);
      }
    }
  }
}

for (const problem of problems) console.log(problem);
console.log(`${files} files in ${rooms.length} rooms, ` +
  `${problems.length} problems`);
process.exitCode = problems.length || files === 0 ? 1 : 0;
