// The levels: each line runs on into the margin and carries its numbers there, at its own height.

import { cm, both, other, plain, signed, written } from "./lengths.js";
import { svg } from "./panels.js";

/** From the top: what stands at each level, and which measurement of the body it is. */
const ROWS = [
  { row: "waist", name: "waist", body: "waist_girth" },
  { row: "hip", name: "hip", body: "hip_girth" },
  { row: "crotch", name: "crotch depth", body: "body_rise" },
  { row: "crotch_seam", name: "crotch seam", body: "total_crotch_length", level: "crotch" },
  { row: "thigh", name: "thigh", body: "thigh_girth" },
  { row: "knee", name: "knee", body: "knee_girth" },
  { row: "calf", name: "calf", body: "calf_girth" },
  { row: "hem", name: "hem, heel", body: "heel_girth" },
];

/** What the draft says at a level of a leg. */
function figures(draft, row, side) {
  const of = (rows) => rows.find((it) => it.side === side) ?? rows.find((it) => it.side === "both") ?? rows[0];
  const measured = draft.body[`${side}.${row.body}`] ?? draft.body[row.body];
  if (row.row === "crotch_seam") {
    const budget = [draft.crotch].flat();
    const it = budget.find((one) => one.side === side) ?? budget[0];
    return { body: it.body_total, from: it.body_from, pattern: it.total, ease: it.ease, wanted: [it.wanted, it.wanted], measured, budget: it };
  }
  if (row.row === "crotch") {
    const pattern = draft.pieces[0].levels.crotch;
    return { body: measured?.value, from: measured?.from, pattern, ease: pattern - measured?.value, measured };
  }
  const it = of(draft.levels.filter((one) => one.level === row.row));
  return it && { body: it.body, from: it.from, pattern: it.pattern, ease: it.ease, wanted: it.wanted, measured };
}

export class Levels {
  #rows = [];
  #heights = null;

  constructor(list, lines, change) {
    this.list = list;
    this.lines = lines;
    this.change = change;
    for (const row of ROWS) this.#rows.push(this.#made(row));
  }

  #made(row) {
    const item = document.createElement("li");
    item.className = "row";
    item.dataset.row = row.row;
    const id = `body-${row.row}`;
    item.innerHTML = `<span class="name">${row.name}</span>
      <span class="body"><input id="${id}" inputmode="decimal" autocomplete="off" spellcheck="false"><small class="from"></small></span>
      <span class="pattern"><span class="unseen">pattern </span><output></output><small></small></span>
      <span class="ease"><span class="unseen">ease </span><output></output><small></small></span>
      <svg class="gauge" viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true"><path class="within"/><path class="at"/></svg>
      <p class="wrong" id="${id}-wrong" hidden></p>`;
    const input = item.querySelector("input");
    input.setAttribute("aria-describedby", `${id}-wrong`);
    const part = (selector) => item.querySelector(selector);
    const parts = {
      ...row, item, input, from: part(".from"),
      pattern: part(".pattern output"), patternToo: part(".pattern small"),
      ease: part(".ease output"), wanted: part(".ease small"),
      within: part(".within"), at: part(".at"), wrong: part(".wrong"), shown: {},
    };
    const said = async () => {
      const text = input.value.trim();
      if (text === input.dataset.was) return this.#right(parts);
      const reason = await this.change(row, text, parts);
      if (reason) this.#wrong(parts, reason);
      else this.#right(parts);
    };
    input.addEventListener("change", said);
    input.addEventListener("keydown", (event) => {
      if (event.key === "Escape") {
        input.value = input.dataset.was;
        this.#right(parts);
      }
    });
    this.list.append(item);
    parts.line = svg("polyline", { class: "level" }, this.lines);
    if (row.row === "crotch_seam") {
      parts.strip = document.createElement("div");
      parts.strip.className = "budget";
      item.append(parts.strip);
    }
    return parts;
  }

  #wrong(parts, reason) {
    parts.input.setAttribute("aria-invalid", "true");
    parts.wrong.textContent = reason;
    parts.wrong.hidden = false;
  }

  #right(parts) {
    parts.input.removeAttribute("aria-invalid");
    parts.wrong.hidden = true;
    parts.wrong.textContent = "";
  }

  /** Puts the numbers of a draft at their levels. */
  fill(draft, side, unit, names) {
    for (const parts of this.#rows) {
      const it = figures(draft, parts, side);
      parts.item.hidden = !it;
      if (!it) continue;
      const write = (key, element, text) => {
        if (parts.shown[key] !== text) element.textContent = parts.shown[key] = text;
      };
      const body = it.body === undefined || it.body === null ? "" : plain(it.body, unit).replace("−", "-");
      if (document.activeElement !== parts.input && !parts.input.hasAttribute("aria-invalid")) {
        if (parts.input.value !== body) parts.input.value = body;
      }
      parts.input.dataset.was = body;
      parts.input.setAttribute("aria-label", `${names[parts.body]} of the body, ${unit === "inch" ? "inches" : "cm"}`);
      const from = it.from === "measured" ? "" : it.from ?? "";
      write("from", parts.from, [it.body === undefined ? "" : other(it.body, unit), from].filter(Boolean).join(", "));
      parts.item.classList.toggle("estimated", it.from === "estimated");
      write("pattern", parts.pattern, plain(it.pattern, unit));
      write("patternToo", parts.patternToo, other(it.pattern, unit));
      const ease = it.ease === undefined || Number.isNaN(it.ease) ? "" : signed(plain(it.ease, unit));
      write("ease", parts.ease, ease);
      const [least, most] = it.wanted ?? [null, null];
      const range = parts.row === "crotch_seam" ? `wanted ${plain(least, unit)}`
        : least === null || least === undefined ? ""
          : most === null ? `${plain(least, unit)} at least` : `${plain(least, unit)} to ${plain(most, unit)}`;
      const tight = it.wanted && parts.row !== "crotch_seam" && it.ease < least - 0.005;
      const loose = it.wanted && parts.row !== "crotch_seam" && most !== null && it.ease > most + 0.005;
      write("wanted", parts.wanted, range + (tight ? ", too tight" : loose ? ", loose" : ""));
      parts.item.classList.toggle("tight", Boolean(tight));
      parts.item.classList.toggle("loose", Boolean(loose));
      this.#gauge(parts, it);
      if (parts.strip) this.#budget(parts, it.budget, unit);
    }
    const piece = draft.pieces.find((one) => one.side === side || one.side === "both");
    this.#heights = { ...piece.levels, crotch_seam: piece.levels.crotch };
  }

  /** The ease against the range of a fit, from nothing to half as much again as the most. */
  #gauge(parts, { ease, wanted }) {
    if (!wanted || wanted[0] === null || ease === undefined) {
      parts.within.setAttribute("d", "");
      parts.at.setAttribute("d", "");
      return;
    }
    const far = Math.max(Math.abs(wanted[1] ?? ease) * 1.25, Math.abs(wanted[0]) + 3, ease, 4);
    const [least, most] = [wanted[0], wanted[1] ?? far];
    const at = (value) => Math.min(99, Math.max(1, 15 + (value / far) * 84)).toFixed(1);
    const [from, to] = least === most ? [least - 0.5, least + 0.5] : [least, most];
    parts.within.setAttribute("d", `M${at(from)} 4H${at(to)}`);
    parts.at.setAttribute("d", `M${at(ease)} 0V8`);
  }

  /** What the crotch seam is made of: front and back, and what each parameter gives to them. */
  #budget(parts, budget, unit) {
    const shares = budget.by_parameter.filter((it) => Math.abs(it.front) + Math.abs(it.back) > 0.005);
    const text = (value) => signed(plain(value, unit));
    const rows = shares.map((it) => `${it.key}: front ${text(it.front)}, back ${text(it.back)}`);
    const said = `front ${plain(budget.front, unit)}, back ${plain(budget.back, unit)}`;
    const key = [said, ...rows].join("|");
    if (parts.shown.budget === key) return;
    parts.shown.budget = key;
    const front = (budget.front / budget.total) * 100;
    parts.strip.innerHTML = `<svg viewBox="0 0 100 6" preserveAspectRatio="none" aria-hidden="true">
      <path class="front-part" d="M0 3H${front.toFixed(2)}"/><path class="back-part" d="M${front.toFixed(2)} 3H100"/></svg><p></p>`;
    parts.strip.querySelector("p").textContent = said;
    if (rows.length) {
      const more = document.createElement("details");
      more.innerHTML = `<summary>by parameter</summary><ul></ul>`;
      more.open = parts.open ?? false;
      more.addEventListener("toggle", () => { parts.open = more.open; });
      for (const row of rows) {
        const item = document.createElement("li");
        item.textContent = row;
        more.lastElementChild.append(item);
      }
      parts.strip.append(more);
    }
  }

  /** Lays the rows at the heights of their lines, apart from each other. */
  lay(view, width) {
    if (!this.#heights) return;
    const { height, width: right } = view.size();
    const rows = this.#rows.filter((parts) => !parts.item.hidden);
    if (this.area !== view.size()) {
      this.area = view.size();
      for (const parts of rows) parts.height = parts.item.offsetHeight + 2;
    }
    const sizes = rows.map((parts) => parts.height);
    const lines = rows.map((parts) => view.y + this.#heights[parts.level ?? parts.row] * view.scale);
    const tops = lines.map((line, index) => line - 20);
    const first = 22;
    for (let i = 0; i < tops.length; i += 1) tops[i] = Math.max(tops[i], i ? tops[i - 1] + sizes[i - 1] : first);
    let end = height - 4;
    for (let i = tops.length - 1; i >= 0; i -= 1) {
      tops[i] = Math.min(tops[i], end - sizes[i]);
      end = tops[i];
    }
    const push = Math.max(0, first - tops[0]);
    rows.forEach((parts, index) => {
      const top = Math.round(tops[index] + push);
      if (parts.top !== top) parts.item.style.transform = `translateY(${(parts.top = top)}px)`;
      const middle = top + 20;
      const line = lines[index].toFixed(1);
      const end = parts.level ? "" : ` ${right},${line}`;
      const points = `${width - 4},${middle} ${width},${middle} ${width + 18},${line}${end}`;
      if (parts.points !== points) parts.line.setAttribute("points", (parts.points = points));
    });
  }
}
