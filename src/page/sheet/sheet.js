// The sheet: what is changed goes to the table, what comes back is laid on the paper.

import { Refused, ask, latest, listen, take, words } from "./ask.js";
import { Drawer } from "./drawer.js";
import { History } from "./history.js";
import { written } from "./lengths.js";
import { Levels } from "./levels.js";
import { Panels, placed } from "./panels.js";
import { Regions } from "./regions.js";
import { Replay } from "./replay.js";
import { Toile } from "./toile.js";
import { View } from "./view.js";

const find = (id) => document.getElementById(id);
const history = new History();
const table = await words();
const about = new Map(table.parameters.map((it) => [it.key, it]));
const names = Object.fromEntries(table.measurements.map((it) => [it.key, it.name]));
const state = { told: null, side: "both", unit: "cm", dragging: false, places: { front: 0, back: 0 } };

const view = new View(find("drawing"), find("world"));
const panels = new Panels(find("panels"), { outline: "outline", inside: "inside", crease: "crease" });
const tracing = new Panels(find("tracing"), { outline: "earlier", inside: "earlier", crease: "none" });
const levels = new Levels(find("levels"), find("level-lines"), (row, text) => {
  const measure = table.measurements.find((it) => it.key === row.body);
  return measured(measure, text === "" ? null : text);
});
const regions = new Regions(find("regions"), find("card"), { drag, set: setParameter, view, dragging: () => state.dragging });
regions.table(table.parameters);
const replay = new Replay(find("strip"), find("steps"), find("world"), () => ask("replay", { changes: history.pending() }));
const drawer = new Drawer(find("drawer"), find("open-drawer"), { measure: measured });

const toile = new Toile(drawer.parts.toile, {
  async ask(look) {
    try {
      return await ask("toile", { changes: history.pending(), ...look });
    } catch (error) {
      if (error instanceof Refused) return error.words;
      throw error;
    }
  },
  async change(advice, ready) {
    const toiles = ready.fittings;
    const name = `toile: ${advice.change.map((it) => `${it.key} to ${it.to}`).join(", ") || "it fits"}`;
    const reason = await change(name, ready.changes.map(([key, to]) => ({ key, to })), { toiles });
    if (reason) say(reason, true);
    else toile.clear();
  },
});

// ---- what is said to the person

function say(text, wrong = false) {
  const place = find("state");
  place.textContent = text;
  place.classList.toggle("wrong", wrong);
}

// ---- drawing

/** The draft with changes that are not done yet; null where it was refused, with the reason. */
async function drawn(tentative) {
  try {
    return { told: await ask("draw", { changes: history.pending(tentative) }) };
  } catch (error) {
    if (error instanceof Refused) return { reason: error.words };
    throw error;
  }
}

/** Lays a draft on the paper. While a ruler is dragged only paths and numbers change. */
function lay(told, whole = true) {
  const start = performance.now();
  state.told = told;
  const { draft, file } = told;
  state.unit = file.units;
  const two = draft.pieces.some((piece) => piece.side !== "both");
  if (!two) state.side = "both";
  else if (state.side === "both") state.side = "left";
  if (whole) {
    state.committed = told;
    document.body.classList.remove("undrafted");
    find("leg-choice").hidden = !two;
    const { places, bounds } = placed(draft, state.side, find("lay").value === "over");
    state.places = places;
    state.bounds = bounds;
    if (!state.placedOnce) {
      state.placedOnce = true;
      view.whole(bounds, margin());
    }
    head(file, draft);
    notes(draft);
    replay.place(places);
    replay.unit = state.unit;
    drawer.record(file.fittings, state.unit);
    drawer.measurements(draft, table.measurements, state.unit);
    describe(draft);
  }
  if (whole) find("panels").classList.toggle("over", find("lay").value === "over");
  panels.draw(draft, told.marks, state.side, state.places);
  levels.fill(draft, state.side, state.unit, names);
  levels.lay(view, margin());
  regions.fill(draft, state.side, state.unit, state.places);
  regions.lay(view);
  // for the browser's own tools; only the last is kept
  performance.clearMeasures("picture");
  performance.measure("picture", { start });
}

const margin = () => find("margin").offsetWidth;

function head(file, draft) {
  find("body-name").textContent = draft.name;
  document.querySelector("#margin .names span").textContent = state.unit === "inch" ? "level, inches" : "level, cm";
  find("file-name").textContent = file.saved ? file.name : `${file.name}, not saved yet`;
  document.title = `${draft.name}, ${file.name}`;
  for (const [id, value] of [["block", file.block], ["fit", draft.fit], ["set", file.set]]) {
    const select = find(id);
    if (![...select.options].some((option) => option.value === value)) select.append(new Option(value, value));
    select.value = value;
  }
  find("undo").disabled = !history.undoable;
  find("undo").textContent = history.undoable ? `Undo ${history.undoable}` : "Undo";
  find("undo").title = find("undo").textContent;
  find("redo").disabled = !history.redoable;
  find("redo").textContent = history.redoable ? `Redo ${history.redoable}` : "Redo";
  find("redo").title = find("redo").textContent;
  find("save").disabled = history.pending().length === 0 && history.toiles.length === 0 && file.saved;
  find("save").textContent = history.unsaved ? `Save ${history.unsaved} ${history.unsaved === 1 ? "change" : "changes"}` : "Save";
  drawer.changes(history.names);
  const under = find("under");
  const wanted = ["none", "block", "file", ...file.fittings.map((_, index) => String(index + 1))];
  if (wanted.join() !== [...under.options].map((option) => option.value).join()) {
    const was = under.value || "block";
    under.replaceChildren(new Option("none", "none"), new Option("the block alone", "block"), new Option("the file as saved", "file"),
      ...file.fittings.map((it, index) => new Option(`after fitting ${index + 1}${it.date ? `, ${it.date}` : ""}`, String(index + 1))));
    under.value = wanted.includes(was) ? was : "block";
  }
}

function notes(draft) {
  const list = document.createElement("ul");
  for (const warning of draft.warnings) {
    const item = document.createElement("li");
    const words = warning.text.replaceAll("`", "");
    // a key of the file stays as it is written there
    const starts = warning.text.startsWith("`") ? words : words.charAt(0).toUpperCase() + words.slice(1);
    item.textContent = `${starts}.`;
    list.append(item);
  }
  const heading = document.createElement("h2");
  heading.textContent = { good: "Good", mind: "Mind", not_to_cut: "Not to be cut as it stands" }[draft.verdict];
  const box = find("notes");
  box.classList.toggle("forbids", draft.verdict === "not_to_cut");
  box.hidden = draft.warnings.length === 0;
  box.replaceChildren(heading, list);
}

function describe(draft) {
  const parts = draft.levels.filter((it) => it.side === state.side || it.side === "both")
    .map((it) => `${it.level}: body ${it.body.toFixed(1)}, pattern ${it.pattern.toFixed(1)}, ease ${it.ease.toFixed(1)} cm`);
  find("drawing").setAttribute("aria-label", `Front and back block ${draft.block} for ${draft.name}. ${parts.join("; ")}.`);
}

const traced = latest(async () => {
  const under = find("under").value;
  if (under === "none" || !under) {
    tracing.clear();
    drawer.differs("");
    return;
  }
  try {
    const told = await ask("under", { changes: history.pending(), under: /\d/.test(under) ? { fitting: Number(under) } : under });
    tracing.draw(told.under, null, told.under.pieces.some((it) => it.side === state.side) ? state.side : told.under.pieces[0].side, state.places);
    drawer.differs(told.differences);
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    tracing.clear();
    drawer.differs(error.words);
  }
});

const redraw = latest(async () => {
  const { told, reason } = await drawn();
  if (told) {
    lay(told);
    if (told.file.trouble) say(told.file.trouble, true);
    else if (find("state").classList.contains("wrong")) say("");
  } else {
    say(state.told ? reason : `${reason}\nMend the file in an editor: it is drawn as soon as it is saved there.`, true);
    headOnly();
  }
  await traced();
});

/** Undo and redo stay in reach where the file cannot be drafted. */
function headOnly() {
  if (state.told) head(state.told.file, state.told.draft);
}

// ---- changing

/** What the file and the changes so far say for a key, as text; null where they say nothing. */
function said(key) {
  const pending = history.pending().find(([it]) => it === key);
  if (pending) return pending[1];
  if (!state.committed) return null;
  const { draft, file } = state.committed;
  if (key === "trousers.block") return file.block;
  if (key === "trousers.fit") return file.fit;
  if (key === "trousers.set") return file.set;
  const measurement = key.replace("measurements.", "");
  if (draft.body[measurement]?.from === "measured") return written(draft.body[measurement].value);
  const given = draft.adjustments[key];
  if (given?.from !== "file") return null;
  return about.get(key.replace(/^(left|right)\./, "")).unit === "degrees" ? String(given.value) : written(given.value);
}

let queue = Promise.resolve();

/** Does a change if it can be drafted; otherwise says why not, and the last good draft stays. One after the other. */
function change(name, changes, how) {
  const done = queue.then(() => changed(name, changes, how));
  queue = done.catch(() => {});
  return done;
}

async function changed(name, changes, how) {
  const full = changes.map(({ key, to }) => ({ key, from: said(key), to }));
  const { told, reason } = await drawn(full);
  state.dragging = false;
  if (!told) {
    if (state.committed) lay(state.committed);
    return reason;
  }
  if (full.some((it) => it.from !== it.to)) history.add(name, full, state.committed?.edition ?? told.edition, how);
  lay(told);
  say(`${name}.`);
  traced();
  return null;
}

function measured(measure, text) {
  const leg = measure.of_a_leg && state.side !== "both" && state.told.draft.body[`${state.side}.${measure.key}`] ? `${state.side}.` : "";
  const name = text === null ? `${measure.name} taken out` : `${measure.name} to ${text}`;
  return change(name, [{ key: `${leg}measurements.${measure.key}`, to: text }]);
}

async function setParameter(key, title, text, tell) {
  const leg = /^(left|right)\./.exec(key)?.[1];
  const name = `${title}${leg ? ` on the ${leg} leg` : ""} ${text === null ? "taken out" : `to ${text}`}`;
  const reason = await change(name, [{ key, to: text }], { stepped: true });
  tell(reason);
}

const dragged = latest(async (key, text, tell) => {
  if (!state.dragging) return;
  const { told, reason } = await drawn([{ key, to: text }]);
  if (!state.dragging) return;
  if (told) lay(told, false);
  tell(reason);
});

function drag(key, text, tell) {
  state.dragging = true;
  dragged(key, text, tell);
}

// ---- saving

async function save(edition = history.edition(state.committed?.edition)) {
  const changes = history.pending();
  try {
    const told = await ask("save", { changes, edition, fittings: history.toiles });
    if (!told.written) return elsewhere(told, changes);
    history.saved(told.edition);
    await redraw();
    say(`Saved to ${state.told.file.name}.`);
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    say(error.words, true);
  }
}

/** The file was edited elsewhere: shows both, and lets the person choose. Nothing is lost either way. */
function elsewhere(told, changes) {
  const dialog = find("elsewhere");
  dialog.replaceChildren();
  const heading = document.createElement("h2");
  heading.id = "elsewhere-name";
  heading.textContent = "The file was changed elsewhere";
  const text = document.createElement("p");
  text.textContent = "Since it was read last, somebody else wrote into it. What they wrote is kept. Where both of you set the same key, say which holds:";
  const list = document.createElement("ul");
  for (const [key, theirs] of told.theirs) {
    const item = document.createElement("li");
    const mine = changes.find(([it]) => it === key)[1];
    item.textContent = `${key}: yours ${mine ?? "taken out"}, the file ${theirs ?? "says nothing"}`;
    list.append(item);
  }
  const button = (words, call) => {
    const it = document.createElement("button");
    it.textContent = words;
    it.addEventListener("click", () => { dialog.close(); call(); });
    return it;
  };
  const tools = document.createElement("div");
  tools.className = "tools";
  tools.append(
    button("Mine on top, and save", () => save(told.edition)),
    button("Look first, without saving", () => redraw()),
    button("Take the file as it is", () => { history.forget(); redraw(); }),
  );
  dialog.append(heading, text, list, tools);
  dialog.showModal();
}

async function takeAway(file, button) {
  button.disabled = true;
  try {
    const { blob, ending } = await take({ changes: history.pending(), file, side: state.side });
    const { draft } = state.told;
    const stem = `${draft.name}-${draft.block}`.replace(/[^\p{L}\p{N}]+/gu, "-").slice(0, 60);
    const link = document.createElement("a");
    link.href = URL.createObjectURL(blob);
    link.download = `${stem}-${ending}`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10000);
    say(`${stem}-${ending} is in the folder of your browser's downloads.`);
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    say(error.words, true);
  } finally {
    button.disabled = false;
  }
}

// ---- the hands

function step(way) {
  const name = way === "undo" ? history.undoable : history.redoable;
  if (!name) return;
  history[way]();
  redraw();
  say(`${way === "undo" ? "Undone" : "Done again"}: ${name}.`);
}

for (const it of table.blocks) find("block").append(new Option(it.key, it.key));
for (const id of ["fit", "set"]) for (const it of table[`${id}s`]) find(id).append(new Option(it, it));
for (const [id, name] of [["block", "block"], ["fit", "fit"], ["set", "set"]]) {
  find(id).addEventListener("change", async (event) => {
    const reason = await change(`${name} to ${event.target.value}`, [{ key: `trousers.${name}`, to: event.target.value }]);
    if (reason) say(reason, true);
  });
}
// On a narrow sheet the back lies over the front, or both would be too small to touch.
if (window.innerWidth < 640) find("lay").value = "over";
find("undo").addEventListener("click", () => step("undo"));
find("redo").addEventListener("click", () => step("redo"));
find("save").addEventListener("click", () => save());
find("under").addEventListener("change", () => traced());
find("leg").addEventListener("change", (event) => { state.side = event.target.value; if (state.told) lay(state.told); traced(); });
find("lay").addEventListener("change", () => {
  state.placedOnce = false;
  if (state.told) lay(state.told);
  traced();
});
find("nearer").addEventListener("click", () => view.zoom(1.25));
find("farther").addEventListener("click", () => view.zoom(0.8));
find("whole").addEventListener("click", () => view.whole(state.bounds, margin()));
find("print").addEventListener("click", () => window.print());
for (const [key, words] of table.files) {
  const button = Object.assign(document.createElement("button"), { textContent: words });
  button.dataset.file = key;
  button.addEventListener("click", () => takeAway(key, button));
  const item = document.createElement("li");
  item.append(button);
  find("files").append(item);
}
for (const sentence of table.cautions) {
  find("cautions").append(Object.assign(document.createElement("span"), { textContent: sentence }), " ");
}
document.addEventListener("keydown", (event) => {
  if (!(event.ctrlKey || event.metaKey)) return;
  const typing = /^(INPUT|TEXTAREA)$/.test(document.activeElement?.tagName) && document.activeElement.type !== "range";
  const key = event.key.toLowerCase();
  if (key === "s") { event.preventDefault(); if (!find("save").disabled) save(); }
  if (typing) return;
  if (key === "z") { event.preventDefault(); step(event.shiftKey ? "redo" : "undo"); }
  if (key === "y") { event.preventDefault(); step("redo"); }
});
let pressed = null;
find("drawing").addEventListener("pointerdown", (event) => { pressed = [event.clientX, event.clientY]; });
find("drawing").addEventListener("pointerup", (event) => {
  if (!pressed || Math.hypot(event.clientX - pressed[0], event.clientY - pressed[1]) > 4) return;
  const area = find("drawing").getBoundingClientRect();
  regions.touch([event.clientX - area.left, event.clientY - area.top]);
});
// Paper is not as wide as the window: the sheet is laid again for it, and back afterwards.
window.addEventListener("beforeprint", () => {
  document.body.classList.add("to-print");
  state.screen = { scale: view.scale, x: view.x, y: view.y, moved: view.moved };
  view.area = null;
  view.whole(state.bounds, margin());
});
window.addEventListener("afterprint", () => {
  document.body.classList.remove("to-print");
  view.area = null;
  Object.assign(view, state.screen);
  view.draw();
});
window.addEventListener("beforeunload", (event) => { if (history.unsaved) event.preventDefault(); });

view.measureMargin = margin;
view.onChange(() => {
  levels.lay(view, view.margin ?? margin());
  regions.lay(view);
});
listen((edition) => { if (edition !== state.told?.edition) redraw(); }, (reached) => {
  document.body.classList.toggle("gone", !reached);
  if (!reached) say("The table does not answer: is the program still running?", true);
});
await redraw();
document.body.dataset.ready = "yes";
