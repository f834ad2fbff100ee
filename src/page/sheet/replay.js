// The construction step by step: the lesson drawn again on the sheet.

import { both } from "./lengths.js";
import { svg } from "./panels.js";

export class Replay {
  #steps = [];
  #places = { front: 0, back: 0 };
  #now = null;
  #timer = null;

  constructor(strip, group, world, load) {
    Object.assign(this, { strip, group, world, load });
    strip.innerHTML = `<h2>Construction</h2>
      <div class="tools"><button id="play">Replay</button><button id="back-step" aria-label="One step back" disabled>‹</button>
      <button id="next-step" aria-label="One step on" disabled>›</button><button id="end-replay" disabled>Finished draft</button></div>
      <input id="step" type="range" min="0" max="0" value="0" aria-label="Step of the construction" disabled>
      <p id="step-words" role="status"></p>`;
    const on = (id, call) => strip.querySelector(id).addEventListener("click", call);
    on("#play", () => (this.#timer ? this.#stop() : this.#play()));
    on("#back-step", () => this.#go(this.#now - 1));
    on("#next-step", () => this.#go(this.#now + 1));
    on("#end-replay", () => this.end());
    strip.querySelector("#step").addEventListener("input", (event) => this.#go(Number(event.target.value)));
  }

  place(places) { this.#places = places; }

  get active() { return this.#now !== null; }

  async #play() {
    if (!this.active || this.#now >= this.#steps.length) {
      this.#steps = await this.load();
      this.strip.querySelector("#step").max = this.#steps.length;
      this.#go(1, true);
    }
    this.strip.querySelector("#play").textContent = "Hold";
    this.#timer = setInterval(() => (this.#now < this.#steps.length ? this.#go(this.#now + 1, true) : this.#stop()), 900);
  }

  #stop() {
    clearInterval(this.#timer);
    this.#timer = null;
    this.strip.querySelector("#play").textContent = "Replay";
  }

  end() {
    this.#stop();
    this.#now = null;
    this.group.replaceChildren();
    this.world.classList.remove("replayed");
    document.body.classList.remove("is-replayed");
    this.strip.querySelector("#step-words").textContent = "";
    this.#buttons();
  }

  #buttons() {
    const find = (id) => this.strip.querySelector(id);
    const off = !this.active;
    find("#step").disabled = find("#end-replay").disabled = off;
    find("#back-step").disabled = off || this.#now <= 1;
    find("#next-step").disabled = off || this.#now >= this.#steps.length;
  }

  #go(step, playing = false) {
    if (!playing) this.#stop();
    this.#now = Math.max(1, Math.min(this.#steps.length, step));
    this.strip.querySelector("#step").value = this.#now;
    this.world.classList.add("replayed");
    document.body.classList.add("is-replayed");
    this.group.replaceChildren();
    const groups = {};
    for (const panel of ["front", "back"]) groups[panel] = svg("g", { transform: `translate(${this.#places[panel]} 0)` }, this.group);
    this.#steps.slice(0, this.#now).forEach((step, index) => {
      const last = index === this.#now - 1;
      const group = groups[step.panel];
      if (step.line) svg("path", { d: step.line, class: last ? "outline" : "construction drawn" }, group);
      for (const [name, [x, y]] of step.points) {
        svg("path", { d: `M${x - 0.4} ${y}H${x + 0.4}M${x} ${y - 0.4}V${y + 0.4}`, class: last ? "outline" : "inside" }, group);
        const text = svg("text", { x: x + 0.5, y: y - 0.5, class: last ? "new" : "" }, group);
        text.textContent = name.replaceAll("_", " ");
      }
    });
    const it = this.#steps[this.#now - 1];
    const value = it.value === undefined || it.value === null ? "" : ` = ${both(it.value, this.unit)}`;
    this.strip.querySelector("#step-words").textContent = `${this.#now} of ${this.#steps.length}, ${it.panel}: ${it.title}. ${it.rule}${value}`;
    this.#buttons();
  }
}
