// Serves the coach's page.
//
//   node server/main.mjs --service HOST:PORT    a service that runs already
//   node server/main.mjs --assayd PROGRAM       or one started for the page

import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { servedFiles } from './files.mjs';
import { startAssayd } from './own_assayd.mjs';
import { Service } from './service.mjs';
import { createPage } from './web.mjs';

const usage = `usage: node server/main.mjs [options]
  --service HOST:PORT  the explaining service; default 127.0.0.1:50051
  --assayd PROGRAM     start this assayd on a free port, and ask that
  --host HOST          where the page listens; default 127.0.0.1
  --port PORT          its port; 0 takes a free one; default 8640
  --deadline-ms MS     how long an answer may take; default 20000`;

function readOptions() {
  try {
    const { values } = parseArgs({ options: {
      service: { type: 'string', default: '127.0.0.1:50051' },
      assayd: { type: 'string' },
      host: { type: 'string', default: '127.0.0.1' },
      port: { type: 'string', default: '8640' },
      'deadline-ms': { type: 'string', default: '20000' },
      help: { type: 'boolean' },
    } });
    return values;
  } catch (error) {
    console.error(`${error.message}\n${usage}`);
    process.exit(2);
  }
}

const options = readOptions();
if (options.help) {
  console.log(usage);
  process.exit(0);
}
const here = dirname(fileURLToPath(import.meta.url));
const repository = join(here, '../../..');
const own = options.assayd ? await startAssayd(options.assayd) : null;
const service = new Service(own?.address ?? options.service,
  join(repository, 'proto'), { deadlineMs: Number(options['deadline-ms']) });
const page = createPage({
  service,
  files: servedFiles(join(here, '../page'),
    join(repository, 'examples/lesson/autumn_course.pgn')),
  hosts: ['127.0.0.1', 'localhost', '[::1]', options.host],
});

let stopping = false;
async function stop(code) {
  if (stopping) return;
  stopping = true;
  page.close();
  page.closeAllConnections();
  service.close();
  await own?.stop();
  process.exit(code);
}
process.on('SIGINT', () => stop(0));
process.on('SIGTERM', () => stop(0));
page.on('error', (error) => {
  console.error(`the page cannot listen: ${error.message}`);
  stop(3);
});
page.listen(Number(options.port), options.host, () => {
  console.log(`The page: http://${options.host}:${page.address().port}/`);
  console.log(`It asks the service at ${service.address}. Ctrl-C ends both.`);
});
