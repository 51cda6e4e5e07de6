// The coach's page as a test meets it: served for a service of the test's own,
// in Debian's Chromium.
//
// ASSAYD names the service's program. What cannot run here (packages not
// installed, no Chromium) ends with 77: skipped, never passed.

import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { Assayd } from '../../server/lib/assayd.mjs';

const here = dirname(fileURLToPath(import.meta.url));
export const example = join(here, '../../../examples/coach_page');
export const course = join(here, '../../../examples/lesson/autumn_course.pgn');

function skip(why) {
  console.log(`skipped: ${why}`);
  process.exit(77);
}

const browserPath = ['/usr/bin/chromium', '/usr/bin/google-chrome']
  .find((path) => existsSync(path));
if (!process.env.ASSAYD) skip('ASSAYD is not set');
if (!existsSync(join(example, 'node_modules'))) {
  skip('run npm ci --prefix examples/coach_page');
}
if (!browserPath) skip('no Chromium');
const { chromium } = await import('playwright-core')
  .catch(() => skip('run npm ci --prefix tests'));

export const sizes = {
  phone: { width: 360, height: 740 },
  tablet: { width: 768, height: 1024 },
  laptop: { width: 1280, height: 800 },
  desktop: { width: 1920, height: 1080 },
};

// The page's own server. Resolves to {url, lines, stop}.
export async function servePage(args) {
  const child = spawn(process.execPath,
    [join(example, 'server/main.mjs'), '--port', '0', ...args],
    { stdio: ['ignore', 'pipe', 'inherit'] });
  return watched(child);
}

// The page with a service of its own, in a browser: {url, browser, close}.
export async function openDesk() {
  const server = await Assayd.start(process.env.ASSAYD);
  const desk = await servePage(['--service', server.address]);
  const browser = await launch();
  const close = async () => {
    await browser.close();
    await desk.stop();
    await server.stop();
  };
  return { url: desk.url, browser, close };
}

// A program that prints "The page: URL" and ends on SIGINT.
export async function watched(child) {
  const exited = once(child, 'exit').then(([code, signal]) => code ?? signal);
  process.on('exit', () => child.kill('SIGKILL'));
  const lines = [];
  const url = await new Promise((resolve, reject) => {
    createInterface({ input: child.stdout }).on('line', (line) => {
      lines.push(line);
      const found = line.match(/^The page: (\S+)$/);
      if (found) resolve(found[1]);
    });
    exited.then((code) => reject(new Error(`ended with ${code}`)));
  });
  return { url, lines, stop() {
    child.kill('SIGINT');
    return exited;
  } };
}

export const launch = () => chromium.launch({ executablePath: browserPath,
  args: ['--no-sandbox'] });

// A page of the browser that has opened the coach's page. What goes wrong in
// it, or leaves this machine, is told by `faults`.
export async function visit(browser, url,
  { size = sizes.laptop, scheme = 'light', locale = 'en-GB', touch = false } =
  {}) {
  const context = await browser.newContext({ viewport: size, locale,
    colorScheme: scheme, hasTouch: touch, isMobile: touch });
  const page = await context.newPage();
  page.setDefaultTimeout(15000);
  page.faults = [];
  page.on('pageerror', (error) => page.faults.push(error.stack));
  page.on('request', (request) => {
    if (!request.url().startsWith(url)) page.faults.push(request.url());
  });
  page.on('console', (message) => {
    // A refusal of the service is an HTTP status, which the browser logs.
    if (message.type() === 'error' &&
      !message.text().startsWith('Failed to load resource')) {
      page.faults.push(message.text());
    }
  });
  await page.goto(url);
  await settled(page, 'explain');
  return page;
}

// Until a panel has its last answer.
export const settled = (page, panel) =>
  page.waitForSelector(`#panel-${panel}[data-phase="done"]`);

export async function openPanel(page, panel) {
  await page.click(`#tab-${panel}`);
}

// Asks for a position, as a reader does who pastes it.
export async function askFen(page, fen) {
  await openPanel(page, 'open');
  await page.fill('#fen-input', fen);
  await page.press('#fen-input', 'Enter');
}

export async function showFen(page, fen) {
  await askFen(page, fen);
  await settledOn(page, fen);
}

// Until the explanation of this very position is there.
export async function settledOn(page, fen) {
  await page.waitForFunction((wanted) => {
    const { dataset } = document.getElementById('panel-explain');
    return dataset.phase === 'done' && dataset.fen === wanted;
  }, fen);
}

// What the board shows, as the placement of a FEN, out of its drawings.
export async function placement(page) {
  const men = await page.$$eval('.square', (cells) => cells.map((cell) =>
    [cell.dataset.square, [...cell.querySelectorAll('use')]
      .map((use) => use.getAttribute('href').slice(1))
      .find((id) => /^[wb][kqrbnp]$/.test(id))]));
  const at = new Map(men);
  assert.equal(at.size, 64);
  return [...'87654321'].map((rank) => [...'abcdefgh'].map((file) => {
    const man = at.get(file + rank);
    if (!man) return '1';
    return man[0] === 'w' ? man[1].toUpperCase() : man[1];
  }).join('').replace(/1+/g, (empty) => empty.length)).join('/');
}

// Marked squares, by pattern: {dots, crosses}.
export function marks(page) {
  return page.$$eval('.square', (cells) => {
    const of = (id) => cells.filter((cell) =>
      cell.querySelector(`use[href="#${id}"]`))
      .map((cell) => cell.dataset.square).sort();
    return { dots: of('dots'), crosses: of('crosses') };
  });
}

export const texts = (page, selector) => page.$$eval(selector, (elements) =>
  elements.map((element) => element.textContent));
