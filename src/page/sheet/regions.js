// Places on the panels where parameters act. Touching one opens its rulers beside it.

import { both, cm, inches } from "./lengths.js";

/** Each place: on which panel, between which of its points, and what acts there. */
export const PLACES = [
  { name: "front waist", panel: "front", at: { centre_waist: 0.42, side_waist: 0.42, side_hip: 0.08, centre_hip: 0.08 }, keys: ["waist.raise_front", "waist.raise_side"] },
  { name: "abdomen", panel: "front", at: { centre_waist: 0.2, centre_hip: 0.35, side_hip: 0.35, side_waist: 0.1 }, keys: ["abdomen.length", "abdomen.width"] },
  { name: "front crotch", panel: "front", at: { curve_start: 0.35, side_hip: 0.4, crotch_point: 0.1, side_knee: 0.15 }, keys: ["crotch.front_extension", "crotch.front_scoop", "crotch.depth"] },
  { name: "front thigh", panel: "front", at: { crotch_point: 0.25, inner_knee: 0.3, side_knee: 0.1, side_hip: 0.35 }, keys: ["thigh.front", "thigh.front_reach", "thigh.front_side"] },
  { name: "knee", panel: "front", at: { inner_knee: 0.5, side_knee: 0.5 }, keys: ["leg.knee_in", "leg.knee_forward"] },
  { name: "lower leg", panel: "front", at: { inner_knee: 0.25, side_knee: 0.25, inner_hem: 0.25, side_hem: 0.25 }, keys: ["leg.calf", "leg.close"] },
  { name: "back waist", panel: "back", at: { centre_waist: 0.4, side_waist: 0.36, side_hip: 0.12, centre_hip: 0.12 }, keys: ["waist.raise_back"] },
  { name: "seat", panel: "back", at: { centre_hip: 0.42, side_hip: 0.42, side_waist: 0.16 }, keys: ["seat.length", "seat.angle", "seat.width"] },
  { name: "back crotch", panel: "back", at: { curve_start: 0.42, side_hip: 0.33, crotch_point: 0.1, side_knee: 0.15 }, keys: ["crotch.back_extension", "seat.scoop", "seat.low"] },
  { name: "inner thigh", panel: "back", at: { crotch_point: 0.34, inner_knee: 0.26, side_knee: 0.1, side_hip: 0.3 }, keys: ["thigh.inner", "thigh.back", "thigh.back_take"] },
  { name: "side", panel: "back", at: { side_hip: 0.42, side_knee: 0.42, inner_knee: 0.16 }, keys: ["thigh.outer", "hip.front_share", "side.forward", "hip.uneven"] },
];

export class Regions {
  #marks = [];
  #open = null;
  #leg = "both";
  #draft = null;

  constructor(list, card, hands) {
    this.list = list;
    this.card = card;
    this.hands = hands;
    for (const place of PLACES) {
      const item = document.createElement("li");
      const button = document.createElement("button");
      button.textContent = place.name;
      button.dataset.place = place.name;
      button.setAttribute("aria-expanded", "false");
      button.addEventListener("click", () => this.toggle(place.name));
      item.append(button);
      list.append(item);
      this.#marks.push({ ...place, item, button });
    }
    card.addEventListener("keydown", (event) => {
      if (event.key === "Escape") this.close();
    });
  }

  table(parameters) { this.about = new Map(parameters.map((it) => [it.key, it])); }

  /** Takes the values and the places of a draft. */
  fill(draft, side, unit, places) {
    Object.assign(this, { unit, side });
    this.#draft = draft;
    for (const mark of this.#marks) {
      const piece = draft.pieces.find((it) => it.panel === mark.panel && (it.side === side || it.side === "both"));
      let [x, y] = [places[mark.panel], 0];
      for (const [role, part] of Object.entries(mark.at)) {
        x += piece.points[role][0] * part;
        y += piece.points[role][1] * part;
      }
      mark.place = [x, y];
      const set = mark.keys.some((key) => Object.keys(draft.adjustments).some((it) => it === key || it.endsWith(`.${key}`)));
      if (mark.set !== set) mark.button.classList.toggle("set", (mark.set = set));
    }
    this.#values();
  }

  /** Lays the marks where their places are on the screen. */
  lay(view) {
    const { width, height } = view.size();
    const far = view.scale < 4.4;
    if (this.far !== far) this.list.classList.toggle("far", (this.far = far));
    const [wide, high] = far ? [26, 26] : [96, 27];
    const taken = [];
    for (const mark of this.#marks) {
      if (!mark.place) continue;
      let [x, y] = view.toScreen(mark.place);
      // Where the panels lie over each other so do the places: a later one stands below an earlier one.
      // Each round steps below one mark more, so there are no more rounds than marks; the hair is for sums that round.
      const hits = ([a, b]) => Math.abs(a - x) < wide && Math.abs(b - y) < high - 0.01;
      for (const _ of taken) {
        const hit = taken.find(hits);
        if (!hit) break;
        y = hit[1] + high;
      }
      taken.push([x, y]);
      const seen = x > (view.margin ?? 0) && x < width - 10 && y > 8 && y < height - 8;
      if (mark.seen !== seen) mark.item.classList.toggle("away", !(mark.seen = seen));
      const at = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px)`;
      if (mark.shown !== at) mark.item.style.transform = mark.shown = at;
      mark.screen = [x, y];
    }
    if (this.#open) this.#beside(view);
  }

  /** Opens the place nearest to a touch of the paper. */
  touch([x, y]) {
    const far = (mark) => (mark.screen ? Math.hypot(mark.screen[0] - x, mark.screen[1] - y) : Infinity);
    const nearest = this.#marks.reduce((best, mark) => (far(mark) < far(best) ? mark : best));
    if (far(nearest) < 140) this.open(nearest.name);
  }

  toggle(name) { if (this.#open?.name === name) this.close(); else this.open(name); }

  close() {
    const open = this.#open;
    this.#open = null;
    this.card.hidden = true;
    open?.button.setAttribute("aria-expanded", "false");
    open?.button.focus();
  }

  open(name, key = null) {
    this.#open?.button.setAttribute("aria-expanded", "false");
    const mark = this.#marks.find((it) => it.name === name);
    this.#open = mark;
    mark.button.setAttribute("aria-expanded", "true");
    this.#leg = "both";
    this.#write();
    this.card.hidden = false;
    this.#beside(this.hands.view);
    const first = key ? this.card.querySelector(`[data-key="${key}"] input`) : this.card.querySelector("input");
    first?.focus();
  }

  placeOf(key) { return this.#marks.find((mark) => mark.keys.includes(key))?.name; }

  #beside(view) {
    if (getComputedStyle(this.card).position === "fixed") {
      this.card.style.transform = "";
      return;
    }
    const { width, height } = view.size();
    const [x, y] = this.#open.screen ?? [width / 2, height / 2];
    this.size ??= [this.card.offsetWidth, this.card.offsetHeight];
    const [wide, high] = this.size;
    const right = x + 60 + wide < width ? x + 60 : Math.max(view.margin + 4, x - 60 - wide);
    const top = Math.max(6, Math.min(y - high / 3, height - high - 6));
    this.card.style.transform = `translate(${Math.round(right)}px, ${Math.round(top)}px)`;
  }

  #path(key) {
    const { one_leg } = this.about.get(key);
    const leg = one_leg === "never" ? "both" : one_leg === "only" && this.#leg === "both" ? "left" : this.#leg;
    return leg === "both" ? key : `${leg}.${key}`;
  }

  #value(key) {
    const path = this.#path(key);
    const found = this.#draft.adjustments[path] ?? this.#draft.adjustments[key];
    return found ?? { value: this.about.get(key).default, from: "" };
  }

  #write() {
    this.size = null;
    const { card } = this;
    card.replaceChildren();
    const head = document.createElement("header");
    const name = document.createElement("h2");
    name.id = "card-name";
    name.textContent = this.#open.name;
    const shut = document.createElement("button");
    shut.textContent = "Close";
    shut.addEventListener("click", () => this.close());
    head.append(name, shut);
    card.append(head);
    if (this.#open.keys.some((key) => this.about.get(key).one_leg !== "never")) card.append(this.#legs());
    for (const key of this.#open.keys) card.append(this.#ruler(key));
  }

  #legs() {
    const label = document.createElement("label");
    label.className = "leg";
    const select = document.createElement("select");
    for (const [value, text] of [["both", "both legs"], ["left", "the left leg"], ["right", "the right leg"]]) {
      select.append(new Option(text, value));
    }
    select.value = this.#leg;
    select.addEventListener("change", () => { this.#leg = select.value; this.#values(); });
    label.append("For ", select);
    return label;
  }

  #ruler(key) {
    const about = this.about.get(key);
    const degrees = about.unit === "degrees";
    const field = document.createElement("fieldset");
    field.dataset.key = key;
    const title = document.createElement("legend");
    title.textContent = about.title;
    const [least, most] = about.hard;
    const range = Object.assign(document.createElement("input"), { type: "range", min: least, max: most, step: degrees ? 0.25 : 0.1 });
    range.setAttribute("aria-label", `${about.title}, ruler`);
    const part = (value) => `${(((value - least) / (most - least)) * 100).toFixed(2)}%`;
    range.style.setProperty("--from", part(about.usual[0]));
    range.style.setProperty("--to", part(about.usual[1]));
    range.style.setProperty("--nothing", part(Math.max(least, Math.min(most, about.default))));
    range.style.setProperty("--tick", `${(100 / (most - least)).toFixed(3)}%`);
    const number = Object.assign(document.createElement("input"), { type: "text", inputMode: "decimal", autocomplete: "off" });
    number.setAttribute("aria-label", `${about.title}, ${degrees ? "degrees" : "length"}`);
    const wrongId = `wrong-${key}`;
    for (const input of [range, number]) input.setAttribute("aria-describedby", wrongId);
    const said = Object.assign(document.createElement("output"), { className: "both" });
    const out = Object.assign(document.createElement("button"), { textContent: "Take out", className: "out" });
    const wrong = Object.assign(document.createElement("p"), { className: "wrong", hidden: true, id: wrongId });
    const purpose = document.createElement("p");
    purpose.className = "purpose";
    purpose.textContent = `For ${about.purpose}.`;
    const more = document.createElement("details");
    const unit = this.unit === "inch" ? "inch" : "cm";
    more.innerHTML = "<summary>moves, stays, by hand</summary><dl></dl>";
    for (const [term, text] of [["Usual", about.range], ["Moves", about.moves], ["Stays", about.stays], ["By hand", about.hand_method]]) {
      more.lastElementChild.append(
        Object.assign(document.createElement("dt"), { textContent: term }),
        Object.assign(document.createElement("dd"), { textContent: text[unit] }),
      );
    }
    more.addEventListener("toggle", () => { this.size = null; this.#beside(this.hands.view); });
    const row = document.createElement("div");
    row.className = "amount";
    row.append(number, said, out);
    field.append(title, range, row, wrong, purpose, more);
    const tell = (reason) => {
      wrong.textContent = reason ?? "";
      wrong.hidden = !reason;
      for (const input of [range, number]) {
        if (reason) input.setAttribute("aria-invalid", "true");
        else input.removeAttribute("aria-invalid");
      }
    };
    const text = (value) => (degrees ? String(value) : `${value} cm`);
    range.addEventListener("input", () => {
      number.value = range.value;
      range.setAttribute("aria-valuetext", degrees ? `${range.value} degrees` : both(Number(range.value), this.unit));
      this.hands.drag(this.#path(key), text(Number(range.value)), tell);
    });
    range.addEventListener("change", () => this.hands.set(this.#path(key), about.title, text(Number(range.value)), tell));
    number.addEventListener("change", () => {
      const typed = number.value.trim();
      this.hands.set(this.#path(key), about.title, typed === "" ? null : typed, tell);
    });
    number.addEventListener("keydown", (event) => {
      if (event.key === "Enter") number.dispatchEvent(new Event("change"));
    });
    out.addEventListener("click", () => this.hands.set(this.#path(key), about.title, null, tell));
    field.show = () => {
      const { value, from } = this.#value(key);
      if (document.activeElement !== range || !this.hands.dragging()) range.value = value;
      if (document.activeElement !== number && !number.hasAttribute("aria-invalid")) {
        number.value = degrees || this.unit !== "inch" ? String(Number(value.toFixed(2))) : inches(value).replace("−", "-");
      }
      const amount = degrees ? `${cm(value)} degrees` : both(value, this.unit);
      said.textContent = from && from !== "file" ? `${amount}; ${from === "fit" ? "found by the fit" : `from ${from}`}` : amount;
      const legless = about.one_leg === "only" && this.#leg === "both";
      range.disabled = number.disabled = legless;
      if (legless) said.textContent = "of one leg: choose which above";
      range.setAttribute("aria-valuetext", amount);
      out.disabled = from !== "file";
    };
    field.show();
    return field;
  }

  #values() {
    if (this.card.hidden) return;
    for (const field of this.card.querySelectorAll("fieldset")) field.show();
  }
}
