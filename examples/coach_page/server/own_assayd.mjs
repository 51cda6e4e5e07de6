// An assayd of our own, on a free port of this machine: it lives as long as
// the page does.

import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';

// Resolves to {address, stop} once it serves.
export async function startAssayd(program) {
  const child = spawn(program, ['--listen=127.0.0.1:0'],
    { stdio: ['ignore', 'ignore', 'pipe'] });
  const ended = once(child, 'exit');
  const lastLines = [];
  let address;
  await new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('exit', () =>
      reject(new Error(`assayd ended:\n${lastLines.join('\n')}`)));
    createInterface({ input: child.stderr }).on('line', (line) => {
      lastLines.push(line);
      if (lastLines.length > 5) lastLines.shift();
      let entry;
      try {
        entry = JSON.parse(line);
      } catch {
        return;
      }
      if (entry.msg === 'listening') address = entry.address;
      if (entry.msg === 'serving') resolve();
    });
  });
  return {
    address,
    async stop() {
      if (child.exitCode !== null || child.signalCode !== null) return;
      child.kill('SIGTERM');
      await ended;
    },
  };
}
