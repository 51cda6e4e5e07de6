// The page over HTTP: its files, and its questions passed on to the service.
//
//   GET  /...            a file of the page
//   GET  /api/service    where the service is asked
//   POST /api/QUESTION   explain, move, compare or whatif; JSON in and out

import { createServer } from 'node:http';
import { contentOf } from './files.mjs';
import { BadRequest, isQuestion, requestFor } from './requests.mjs';

// The longest request: 64 edits and a FEN are some kilobytes.
const mostBodyBytes = 64 * 1024;

const everyAnswer = {
  'Content-Security-Policy': "default-src 'none'; script-src 'self'; " +
    "style-src 'self'; img-src 'self'; connect-src 'self'; " +
    "base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Cache-Control': 'no-cache',
};

// HTTP's number for what the service refuses with.
const httpStatus = {
  INVALID_ARGUMENT: 422, RESOURCE_EXHAUSTED: 503, UNAVAILABLE: 503,
  DEADLINE_EXCEEDED: 504,
};

function send(response, status, type, content) {
  response.writeHead(status, { ...everyAnswer, 'Content-Type': type });
  response.end(content);
}

function sendJson(response, status, value) {
  send(response, status, 'application/json', JSON.stringify(value));
}

function refuse(response, status, code, message) {
  sendJson(response, status, { refusal: { code, message, problems: [] } });
}

// Rejects with BadRequest when it is too long or no JSON.
async function bodyOf(request) {
  const parts = [];
  let size = 0;
  for await (const part of request) {
    size += part.length;
    if (size > mostBodyBytes) throw new BadRequest('the request is too long');
    parts.push(part);
  }
  try {
    return JSON.parse(Buffer.concat(parts).toString('utf8'));
  } catch {
    throw new BadRequest('the request is no JSON');
  }
}

async function answerQuestion(service, name, request, response) {
  // A page elsewhere cannot send this type without asking first, and nobody
  // answers it.
  if (request.headers['content-type'] !== 'application/json') {
    refuse(response, 415, 'PAGE', 'not JSON');
    return;
  }
  let method;
  let message;
  try {
    [method, message] = requestFor(name, await bodyOf(request));
  } catch (error) {
    if (!(error instanceof BadRequest)) throw error;
    refuse(response, 400, 'PAGE', error.message);
    return;
  }
  // A page that has moved on drops its request, and so do we.
  const dropped = new AbortController();
  response.on('close', () => dropped.abort());
  const result = await service.ask(method, message, dropped.signal);
  if (response.destroyed) return;
  const status = result.answer ? 200 : httpStatus[result.refusal.code] ?? 500;
  sendJson(response, status, result);
}

// `hosts`: the names that a browser may call us by; others are of pages that
// have made their own name point here.
export function createPage({ service, files, hosts }) {
  const server = createServer({ requestTimeout: 10000 },
    (request, response) => {
      answer(request, response).catch((error) => {
        console.error(error);
        if (!response.headersSent) refuse(response, 500, 'PAGE', 'a fault');
      });
    });

  async function answer(request, response) {
    const { port } = server.address();
    if (!hosts.some((host) => request.headers.host === `${host}:${port}`)) {
      refuse(response, 403, 'PAGE', 'not a name of this page');
      return;
    }
    const [pathname] = request.url.split('?');
    const question = pathname.match(/^\/api\/(\w+)$/)?.[1];
    if (request.method === 'POST' && question && isQuestion(question)) {
      await answerQuestion(service, question, request, response);
    } else if (request.method === 'GET' && pathname === '/api/service') {
      sendJson(response, 200, { address: service.address });
    } else if (request.method === 'GET' && files.has(pathname)) {
      const file = files.get(pathname);
      send(response, 200, file.type, contentOf(file));
    } else {
      refuse(response, 404, 'PAGE', 'nothing here');
    }
  }
  return server;
}
