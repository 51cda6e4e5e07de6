// The page's own words, in the reader's language. The service's texts come in
// the language that it was asked for, or could give.

import { de } from './de.mjs';
import { en } from './en.mjs';

export const languages = { en, de };

let words = en;
let chosen = 'en';
let told = 'en';

// label('marks.white', {squares: 'd3, f4'})
export function label(key, values = {}) {
  const text = words[key] ?? key;
  return text.replace(/\{(\w+)\}/g, (all, name) => values[name] ?? all);
}

export const hasLabel = (key) => key in words;
export const pageLanguage = () => chosen;

// The language that the service's texts are in.
export const textLanguage = () => told;
export function setTextLanguage(language) {
  told = language;
}

export function setLanguage(language) {
  chosen = language;
  words = languages[language];
  document.documentElement.lang = language;
  document.title = label('title');
  for (const element of document.querySelectorAll('[data-label]')) {
    element.textContent = label(element.dataset.label);
  }
  for (const element of document.querySelectorAll('[data-label-name]')) {
    element.setAttribute('aria-label', label(element.dataset.labelName));
  }
}

// Centipawns as pawns: "0.43", "0,43".
export const pawns = (centipawns) => (Math.abs(centipawns) / 100)
  .toLocaleString(chosen, { minimumFractionDigits: 2 });

export const sideName = (white) => label(white ? 'white' : 'black');
