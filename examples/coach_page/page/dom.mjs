// Elements made of plain values. Texts only ever become text: nothing that the
// service or a PGN says is read as HTML.

import { textLanguage } from './text/labels.mjs';

const svgSpace = 'http://www.w3.org/2000/svg';

function fill(element, properties, children) {
  for (const [name, value] of Object.entries(properties)) {
    if (value === undefined || value === null || value === false) continue;
    if (name.startsWith('on')) {
      element.addEventListener(name.slice(2), value);
    } else {
      element.setAttribute(name, value === true ? '' : String(value));
    }
  }
  element.append(...children.flat(3)
    .filter((child) => child !== null && child !== undefined && child !== false));
  return element;
}

// el('p', {class: 'note', onclick: ...}, 'text', otherElement)
export const el = (tag, properties = {}, ...children) =>
  fill(document.createElement(tag), properties, children);

export const svg = (tag, properties = {}, ...children) =>
  fill(document.createElementNS(svgSpace, tag), properties, children);

// A text of the service: its language may be another than the page's.
export const told = (tag, text, properties = {}) =>
  el(tag, { lang: textLanguage(), ...properties }, text);

// For moves, edits and positions: no language of a browser's help applies.
export const notation = (properties) => el('input', { type: 'text',
  autocomplete: 'off', spellcheck: 'false', autocapitalize: 'off',
  ...properties });

// A button is no submit button unless it says so.
export const button = (text, onclick, properties = {}) =>
  el('button', { type: 'button', ...properties, onclick }, text);
