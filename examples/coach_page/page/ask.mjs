// Questions to the service. Each place on the page that shows answers has one
// Question; asking it again drops what it was asked before, so that no late
// answer stands where a newer one belongs.

import { setTextLanguage } from './text/labels.mjs';
import { state } from './state.mjs';

// The wishes that the service has refused, "language=de".
const refused = new Set();
export const refusedWishes = () => [...refused];
export function forgetRefusals() {
  refused.clear();
}

// Codes after which the same question may well be answered later.
const passing = new Set(['UNAVAILABLE', 'RESOURCE_EXHAUSTED', 'NETWORK']);
const longestWaitMs = 4000;

const wish = (name, fallback) =>
  (refused.has(`${name}=${state[name]}`) ? fallback : state[name]);

async function post(question, body, signal) {
  const sent = { ...body, language: wish('language', 'en'),
    audience: wish('audience', 'club') };
  let response;
  try {
    response = await fetch(`api/${question}`, { method: 'POST', signal,
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify(sent) });
    return { ...await response.json(), sent };
  } catch (error) {
    if (signal.aborted) throw error;
    return { sent, refusal: { code: 'NETWORK', message: '', problems: [] } };
  }
}

// Whether a wish was refused that we can do without; remembers it.
function givesUpWish({ refusal, sent }) {
  const before = refused.size;
  for (const { field } of refusal.problems) {
    const name = field.replace(/^options\./, '');
    if (field !== name && (name === 'language' || name === 'audience')) {
      refused.add(`${name}=${sent[name]}`);
    }
  }
  return refused.size > before;
}

async function answered(question, body, signal) {
  const result = await post(question, body, signal);
  if (result.refusal && givesUpWish(result)) {
    state.tell('refused');
    return answered(question, body, signal);
  }
  return result;
}

const pause = (ms, signal) => new Promise((resolve, reject) => {
  const timer = setTimeout(resolve, ms);
  signal.addEventListener('abort', () => {
    clearTimeout(timer);
    reject(signal.reason);
  }, { once: true });
});

export class Question {
  // show({phase, answer, refusal}): `phase` is counting, looking (the counted
  // answer is there, a proved one will follow), done or failed.
  constructor(show) {
    this.show = show;
  }

  // `counts`: the service can answer at once by counting alone; the answer
  // that it has searched for then takes its place.
  async ask(question, body, { counts = true } = {}) {
    this.drop();
    const mine = new AbortController();
    this.current = mine;
    this.show({ phase: 'counting' });
    try {
      let answer;
      if (counts) {
        const first = await this.#persist(question,
          { ...body, counted: true }, mine.signal);
        if (!first) return;
        answer = first;
        this.#tell({ phase: 'looking', answer });
      }
      answer = await this.#persist(question, body, mine.signal, answer);
      if (answer) this.#tell({ phase: 'done', answer });
    } catch (error) {
      if (!mine.signal.aborted) throw error;
    }
  }

  drop() {
    this.current?.abort();
    this.current = null;
  }

  #tell({ phase, answer }) {
    setTextLanguage(wish('language', 'en'));
    this.show({ phase, answer });
  }

  // An answer; undefined when it was refused for good. What may pass is asked
  // again, less and less often.
  async #persist(question, body, signal, answer) {
    for (let wait = 500; ; wait = Math.min(2 * wait, longestWaitMs)) {
      const result = await answered(question, body, signal);
      signal.throwIfAborted();
      if (result.answer) return result.answer;
      const { refusal } = result;
      this.show({ phase: 'failed', refusal, answer,
        asksAgain: passing.has(refusal.code) });
      if (!passing.has(refusal.code)) return undefined;
      // What comes back may be another service.
      refused.clear();
      await pause(Math.max(wait, refusal.retryMs ?? 0), signal);
    }
  }
}
