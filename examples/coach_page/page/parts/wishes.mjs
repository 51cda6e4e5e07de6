// The reader's wishes: audience, language, light; kept in the browser. What
// the service cannot do yet is told in a sentence.

import { forgetRefusals, refusedWishes } from '../ask.mjs';
import { el } from '../dom.mjs';
import { state } from '../state.mjs';
import { label, languages } from '../text/labels.mjs';

const store = 'coach-page-wishes';

function stored() {
  try {
    return JSON.parse(localStorage.getItem(store)) ?? {};
  } catch {
    return {}; // no storage, or not ours
  }
}

function keep(wishes) {
  try {
    localStorage.setItem(store, JSON.stringify(wishes));
  } catch {
    // Without storage the wishes last as long as the page.
  }
}

const named = (name) => document.getElementById(name);

export function readWishes() {
  const wishes = stored();
  const inBrowser = navigator.language.slice(0, 2);
  for (const name of ['audience', 'language', 'light']) {
    const control = named(name);
    const wish = wishes[name] ??
      (name === 'language' && inBrowser in languages ? inBrowser : '');
    if ([...control.options].some(({ value }) => value === wish)) {
      control.value = wish;
    }
    control.addEventListener('change', () => {
      // Another service may be there by now.
      forgetRefusals();
      take();
      state.tell('wishes');
    });
  }
  take();
}

function take() {
  const [audience, language, light] = ['audience', 'language', 'light']
    .map((name) => named(name).value);
  Object.assign(state, { audience, language });
  document.documentElement.dataset.light = light;
  keep({ audience, language, light });
}

export function showRefusedWishes() {
  const told = refusedWishes()
    .filter((wish) => wish === `language=${state.language}` ||
      wish === `audience=${state.audience}`)
    .map((wish) => label(`wish.${wish.split('=')[0]}`));
  named('wish-notice').replaceChildren(...told.map((text) =>
    el('p', { class: 'wish-notice' }, text)));
}
