// From what the page sends to the service's requests. Only what is listed here
// goes through, each part as what it should be; whether a position or a move
// is any good is for the service to say.

export class BadRequest extends Error {}

function text(value, name) {
  if (typeof value !== 'string') throw new BadRequest(`${name} is not a text`);
  return value;
}

function texts(value, name, most) {
  if (!Array.isArray(value) || value.length > most) {
    throw new BadRequest(`${name} is not a list of at most ${most}`);
  }
  return value.map((item) => text(item, name));
}

const audiences = {
  newcomer: 'AUDIENCE_NEWCOMER',
  club: 'AUDIENCE_CLUB',
  expert: 'AUDIENCE_EXPERT',
};

function options(body) {
  const { audience = 'club', language = '', counted = false } = body;
  if (!Object.hasOwn(audiences, audience)) {
    throw new BadRequest('audience is none of those known');
  }
  return {
    staticOnly: counted === true,
    audience: audiences[audience],
    language: text(language, 'language'),
    // The page marks the squares of the ledger and checks no claims.
    omitClaims: true,
  };
}

const position = (body) => ({ fen: text(body.fen, 'fen') });

// The service's method and its request for each question of the page.
const questions = {
  explain: (body) => ['Explain',
    { position: position(body), options: options(body) }],
  move: (body) => ['ExplainMove', { position: position(body),
    move: text(body.move, 'move'), options: options(body) }],
  compare: (body) => ['Compare', { position: position(body),
    moves: texts(body.moves, 'moves', 8), options: options(body) }],
  whatif: (body) => ['WhatIf', { position: position(body),
    edits: texts(body.edits, 'edits', 64), options: options(body) }],
};

export const isQuestion = (name) => Object.hasOwn(questions, name);

export function requestFor(name, body) {
  if (body === null || typeof body !== 'object') {
    throw new BadRequest('not an object');
  }
  return questions[name](body);
}
