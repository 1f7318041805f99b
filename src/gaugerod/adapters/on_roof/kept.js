// What this phone keeps: the ticks, the battens found elsewhere, where you are, and the steps to undo.
"use strict";

const UNDO_COUNT = 30;

// `store` may be missing or refuse: then everything works but nothing outlasts the page, and `lasts` is false.
function keeping(fingerprint, store, start) {
  const key = `gaugerod on the roof ${fingerprint}`;
  const kept = { now: start, before: [], lasts: true };
  try {
    store.setItem("gaugerod", ""); // may anything be kept at all?
    const text = store.getItem(key);
    if (text) ({ now: kept.now, before: kept.before } = JSON.parse(text));
  } catch {
    kept.lasts = false;
  }
  const save = () => {
    try {
      store.setItem(key, JSON.stringify({ now: kept.now, before: kept.before }));
      kept.lasts = true;
    } catch {
      kept.lasts = false;
    }
  };
  return {
    get now() { return kept.now; },
    get lasts() { return kept.lasts; },
    get canUndo() { return kept.before.length > 0; },
    // Only looking elsewhere: nothing to undo.
    go(change) {
      kept.now = { ...kept.now, ...change };
      save();
    },
    change(change) {
      kept.before = [...kept.before, kept.now].slice(-UNDO_COUNT);
      this.go(change);
    },
    undo() {
      kept.now = kept.before.pop() || kept.now;
      save();
    },
  };
}
