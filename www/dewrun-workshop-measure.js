// How wide a room is and how large its text, known without asking for a layout in the midst of a change.

/** Width of a room and size of text; `again` is called as either changes. */
export class Measure {
  /** Both, the width 0 of what is not laid out yet. */
  now;

  constructor(room, again) {
    const read = () => [room.clientWidth, parseFloat(getComputedStyle(document.documentElement).fontSize) / 16];
    this.now = read();
    // Larger text changes the height at least.
    new ResizeObserver(() => {
      const before = this.now.join();
      this.now = read();
      if (this.now.join() !== before) again();
    }).observe(room);
  }
}
