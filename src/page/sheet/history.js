// Every change with its name, done and undone. A change is a key of the file with its text before and after; null where
// the file says nothing.

export class History {
  #done = [];
  #at = 0;
  #saved = 0;

  /** The changes that the file does not have yet. */
  pending(tentative = []) {
    const keys = new Map();
    const [from, to] = [Math.min(this.#at, this.#saved), Math.max(this.#at, this.#saved)];
    const between = this.#done.slice(from, to);
    if (this.#at >= this.#saved) {
      for (const entry of between) for (const it of entry.changes) keys.set(it.key, it.to);
    } else {
      for (const entry of between.reverse()) for (const it of entry.changes) keys.set(it.key, it.from);
    }
    for (const it of tentative) keys.set(it.key, it.to);
    return [...keys];
  }

  /** The oldest edition of the file on which a change that it does not have was made; `now` where there is none. */
  edition(now) {
    const [from, to] = [Math.min(this.#at, this.#saved), Math.max(this.#at, this.#saved)];
    return this.#done.slice(from, to).reduce((oldest, entry) => Math.min(oldest, entry.edition ?? now), now);
  }

  /** Does a change, made on an edition of the file. Steps of one ruler that follow each other closely are one change. */
  add(name, changes, edition, { toiles = [], stepped = false } = {}) {
    const last = this.#done[this.#at - 1];
    const now = performance.now();
    const goesOn = stepped && last?.stepped && now - last.when < 1200 && this.#at > this.#saved && last.changes[0].key === changes[0].key;
    if (goesOn) {
      this.#done.length = this.#at;
      Object.assign(last, { name, when: now, changes: [{ ...changes[0], from: last.changes[0].from }] });
      return;
    }
    this.#push({ name, changes, edition, toiles, stepped, when: now });
  }

  /** Toiles whose changes are done and not saved yet. */
  get toiles() { return this.#done.slice(this.#saved, this.#at).flatMap((entry) => entry.toiles ?? []); }

  #push(entry) {
    // What was saved and then undone cannot be reached again once something else is done.
    if (this.#saved > this.#at) {
      const back = this.#done.slice(this.#at, this.#saved).reverse();
      const undone = back.map((entry) => ({
        name: `undone: ${entry.name}`,
        edition: entry.edition,
        changes: entry.changes.map((it) => ({ key: it.key, from: it.to, to: it.from })).reverse(),
      }));
      this.#done = [...this.#done.slice(0, this.#saved), ...undone];
      this.#at = this.#done.length;
    } else {
      this.#done.length = this.#at;
    }
    this.#done.push(entry);
    this.#at += 1;
  }

  get undoable() { return this.#done[this.#at - 1]?.name; }
  get redoable() { return this.#done[this.#at]?.name; }
  get unsaved() { return Math.abs(this.#at - this.#saved); }
  undo() { if (this.#at > 0) this.#at -= 1; }
  redo() { if (this.#at < this.#done.length) this.#at += 1; }

  /** The file has what is done, as this edition. */
  saved(edition) {
    this.#saved = this.#at;
    for (const entry of this.#done) entry.edition = edition;
  }

  /** Forgets what is not saved: the file elsewhere is taken as it is. */
  forget() { this.#done.length = 0; this.#at = 0; this.#saved = 0; }

  get names() { return this.#done.map((entry, index) => ({ name: entry.name, done: index < this.#at, saved: index < this.#saved })); }
}
