// Tabs over panels, as readers of the keyboard know them: arrow keys go from
// one to the next.

import { el } from '../dom.mjs';
import { label } from '../text/labels.mjs';

export class Tabs {
  // `panels`: [Panel]; `chosen(panel)` is called for a chosen one.
  constructor(panels, chosen) {
    this.tabs = new Map(panels.map((panel) => [panel, el('button',
      { type: 'button', role: 'tab', id: `tab-${panel.name}`,
        'aria-controls': `panel-${panel.name}`, onclick: () => chosen(panel) })]));
    this.list = el('div', { role: 'tablist', class: 'tabs', onkeydown: (event) => {
      const way = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
      if (!way) return;
      const all = [...this.tabs.keys()];
      const at = all.findIndex((panel) => this.tabs.get(panel) === event.target);
      const next = all[(at + way + all.length) % all.length];
      this.tabs.get(next).focus();
      chosen(next);
      event.preventDefault();
    } });
    this.list.append(...this.tabs.values());
    for (const panel of panels) {
      panel.element.id = `panel-${panel.name}`;
      panel.element.className = 'panel';
      panel.element.setAttribute('role', 'tabpanel');
      panel.element.setAttribute('aria-labelledby', `tab-${panel.name}`);
    }
    this.relabel();
  }

  relabel() {
    this.list.setAttribute('aria-label', label('tabs.name'));
    for (const [panel, tab] of this.tabs) {
      tab.textContent = label(`tab.${panel.name}`);
    }
  }

  select(chosen) {
    for (const [panel, tab] of this.tabs) {
      tab.setAttribute('aria-selected', String(panel === chosen));
      tab.tabIndex = panel === chosen ? 0 : -1;
      panel.element.hidden = panel !== chosen;
    }
  }
}
