// Runs the server for a test, and knows what it wrote to its log.

import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { once } from 'node:events';

export class Assayd {
  // Resolves when it serves; on a free port of 127.0.0.1 unless `args` say
  // where to listen.
  static async start(program, args = []) {
    const server = new Assayd();
    const listens = args.some((arg) => arg.startsWith('--listen'));
    const all = listens ? args : ['--listen=127.0.0.1:0', ...args];
    server.process = spawn(program, all, { stdio: ['ignore', 'pipe', 'pipe'] });
    server.exited = once(server.process, 'exit').then(([code]) => code);
    server.log = [];
    server.unread = [];
    const lines = createInterface({ input: server.process.stderr });
    const serving = new Promise((resolve, reject) => {
      lines.on('line', (line) => {
        try {
          const entry = JSON.parse(line);
          server.log.push(entry);
          if (entry.msg === 'serving') resolve();
        } catch {
          server.unread.push(line);
        }
      });
      server.exited.then((code) =>
        reject(new Error(`exit ${code}: ${server.unread.join('\n')}`)));
    });
    process.on('exit', () => server.process.kill('SIGKILL'));
    await serving;
    server.exited.catch(() => {});
    return server;
  }

  get address() {
    return this.log.find((entry) => entry.msg === 'listening').address;
  }

  get port() {
    return Number(this.address.split(':').at(-1));
  }

  get metricsPort() {
    return this.log.find((entry) => entry.msg === 'metrics').port;
  }

  async metrics() {
    const page = await fetch(`http://127.0.0.1:${this.metricsPort}/metrics`);
    return page.text();
  }

  // Lines of the log with these fields.
  entries(fields) {
    return this.log.filter((entry) => Object.entries(fields)
      .every(([name, value]) => entry[name] === value));
  }

  // The exit code.
  stop(signal = 'SIGTERM') {
    this.process.kill(signal);
    return this.exited;
  }
}

export async function waitFor(condition, what, ms = 10000) {
  const end = Date.now() + ms;
  while (Date.now() < end) {
    const value = await condition();
    if (value) return value;
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
  throw new Error(`timed out: ${what}`);
}
