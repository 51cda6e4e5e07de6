// What the whole page shares: the lesson, where in it we are, and what the
// reader wishes. Parts listen to the events that concern them:
//   place   another position, or another place in the lesson
//   lesson  other games
//   wishes  another audience or language
//   turned  the board was turned

class State extends EventTarget {
  lesson = null; // chess/lesson.mjs
  node = null;
  audience = 'club';
  language = 'en';
  turned = false;

  get fen() {
    return this.node.fen;
  }

  tell(event) {
    this.dispatchEvent(new Event(event));
  }

  on(events, listener) {
    for (const event of events.split(' ')) this.addEventListener(event, listener);
  }

  goTo(node) {
    if (!node || node === this.node) return;
    this.node = node;
    this.tell('place');
  }

  open(lesson, node = lesson.games[0].root) {
    this.lesson = lesson;
    this.node = node;
    this.tell('lesson');
    this.tell('place');
  }
}

export const state = new State();

// For those who do not see what changed.
export function announce(text) {
  document.getElementById('announce').textContent = text;
}
