// What the panels have in common. A panel has a `name` (its tab's label is
// tab.NAME), an `element`, and may have
//   enter()    it was opened, or the position or the wishes changed
//   leave()    another panel was opened
//   relabel()  the page's language changed; called before enter()
//   hands      what the board does with chosen squares meanwhile
export class Panel {
  constructor(name, page) {
    this.name = name;
    this.page = page;
    this.element = document.createElement('div');
  }

  enter() {}

  leave() {}

  relabel() {}
}
