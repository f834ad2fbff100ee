// The toile in the drawer: four questions or plain words, the test that tells most, and the one change that is next.

import { cm } from "./lengths.js";

const element = (name, text = "", attributes = {}) => Object.assign(document.createElement(name), { textContent: text }, attributes);
const sentence = (text) => text.charAt(0).toUpperCase() + text.slice(1) + (/[.?!]$/.test(text) ? "" : ".");

export class Toile {
  #nothing() { return { answers: [null, null, null, null], words: [], replies: [], tested: [], pinned: null, side: null, since: null }; }

  constructor(box, hands) {
    Object.assign(this, { box, hands });
    this.look = this.#nothing();
    this.form = element("div");
    this.outcome = element("div", "", { id: "toile-outcome" });
    this.outcome.setAttribute("aria-live", "polite");
    box.append(element("p", "What does the sewn toile show? Answer what you can; one change a fitting."), this.form, this.outcome);
    box.parentElement.addEventListener("toggle", () => box.parentElement.open && this.refresh());
  }

  /** Judges again what is said so far. */
  async refresh() {
    const told = await this.hands.ask(this.look);
    if (typeof told === "string") {
      this.outcome.replaceChildren(element("p", told, { className: "wrong" }));
      return;
    }
    if (!this.fields) this.#ask(told);
    this.since.hidden = !told.since_can_be_said;
    told.questions.forEach((question, index) => { this.fields[index].parentElement.hidden = !question.open; });
    this.#tell(told);
  }

  #ask({ questions }) {
    this.fields = questions.map((question, index) => {
      const label = element("label", question.ask, { className: "question" });
      const select = element("select", "", { id: `toile-${index}` });
      select.append(new Option("not said", ""), ...question.choices.map((words, at) => new Option(words, at)));
      select.addEventListener("change", () => this.#said(() => { this.look.answers[index] = select.value === "" ? null : Number(select.value); }));
      label.append(select);
      this.form.append(label);
      return select;
    });
    const field = (words, id, call) => {
      const label = element("label", words, { className: "question" });
      const input = element("input", "", { id, autocomplete: "off" });
      input.addEventListener("change", () => this.#said(() => call(input.value.trim())));
      label.append(input);
      this.form.append(label);
      return input;
    };
    this.words = field("Or in plain words", "toile-words", (text) => { this.look.words = text ? [text] : []; this.look.replies = []; });
    this.pinned = field("Pinned out, or opened, on the body", "toile-pinned", (text) => { this.look.pinned = text || null; });
    const choice = (words, id, options, call) => {
      const label = element("label", words, { className: "question" });
      const select = element("select", "", { id });
      for (const [value, text] of options) select.append(new Option(text, value));
      select.addEventListener("change", () => this.#said(() => call(select.value || null)));
      label.append(select);
      this.form.append(label);
      return label;
    };
    choice("Which leg shows it", "toile-side", [["", "both"], ["left", "the left alone"], ["right", "the right alone"]], (it) => { this.look.side = it; });
    this.since = choice("Since the last change it is", "toile-since", [["", "not said"], ["better", "better"], ["same", "the same"], ["worse", "worse"]], (it) => { this.look.since = it; });
  }

  #said(call) {
    call();
    this.look.tested = [];
    this.refresh();
  }

  #tell({ judged, ready }) {
    const out = [];
    if (judged) {
      for (const it of judged.seen) out.push(element("p", `I read: ${it.read}.`, { className: "read" }));
      if (judged.fits) out.push(element("p", "I read: all of it fits.", { className: "read" }));
      for (const it of judged.questions) out.push(...this.#question(it));
      if (judged.outcome === "nothing") out.push(element("p", "Nothing of this asks for a change."));
      for (const it of judged.not_understood) out.push(element("p", `Not understood: ${it.word}${it.nearest ? `; did you mean ${it.nearest}?` : ""}`, { className: "wrong" }));
      for (const it of judged.not_read) out.push(element("p", `Not read: ${it}`, { className: "wrong" }));
      if (judged.doubt === "opposite") out.push(element("p", "The two likeliest causes ask for opposite changes: the test comes first."));
      if (judged.doubt === "guess") out.push(element("p", "The likeliest cause is a guess: the test comes first."));
      if (judged.contradict) out.push(element("p", "Two of the signs contradict each other: the test comes first."));
      const list = element("ol", "", { className: "causes" });
      for (const it of judged.causes.slice(0, 4)) {
        const item = element("li");
        item.append(element("strong", sentence(it.lacks)), ` a chance of ${Math.round(it.share * 100)} in 100.`);
        const why = it.signs.map((sign) => sign.title).filter((title, at, all) => all.indexOf(title) === at);
        if (why.length) item.append(element("small", ` ${why.join("; ")}`));
        list.append(item);
      }
      if (judged.causes.length && judged.seen.some((it) => !it.denied && !it.fine)) out.push(element("h3", "What the pattern lacks"), list);
      if (judged.test && !judged.clear) out.push(...this.#test(judged.test));
      if (judged.advice) out.push(...this.#advice(judged, ready));
      else if (ready) {
        const close = element("button", "Close the record: it fits", { id: "toile-do" });
        close.addEventListener("click", () => this.hands.change({ change: [] }, ready));
        out.push(close);
      }
      const again = element("button", "Begin again", { id: "toile-again" });
      again.addEventListener("click", () => this.clear());
      out.push(again);
    }
    this.outcome.replaceChildren(...out);
  }

  /** What the words left open: each answer a button. */
  #question({ question, said, ask, answers }) {
    const box = element("div", "", { className: "test" });
    for (const answer of [...answers, "none"]) {
      const button = element("button", answer === "none" ? "leave it out" : answer);
      button.dataset.reply = `${question}=${answer}`;
      button.addEventListener("click", () => { this.look.replies.push([question, answer]); this.refresh(); });
      box.append(button);
    }
    return [element("p", `\u201c${said}\u201d: ${ask}`), box];
  }

  #test(test) {
    const box = element("div", "", { className: "test" });
    for (const result of test.results) {
      const button = element("button", result.says);
      button.dataset.result = `${test.test}=${result.result}`;
      button.addEventListener("click", () => { this.look.tested.push([test.test, result.result]); this.refresh(); });
      box.append(button);
    }
    return [element("h3", "The test that tells most"), element("p", sentence(test.ask)), box];
  }

  #advice({ advice, clear }, ready) {
    const out = [element("h3", "The next change")];
    for (const why of advice.why) out.push(element("p", sentence(why)));
    for (const it of advice.measure) out.push(element("p", sentence(`measure ${it.measurement.replaceAll("_", " ")}: ${it.why}`)));
    for (const it of advice.change) out.push(element("p", `${it.key}: ${cm(it.from, 2)} to ${cm(it.to, 2)} ${it.unit}.`, { className: "change" }));
    if (advice.by_hand) {
      const hand = element("details");
      hand.append(element("summary", "by hand"), element("p", advice.by_hand));
      out.push(hand);
    }
    for (const it of advice.beside) out.push(element("p", `Beside it, ${it.key} ${it.first ? "to" : "up to"} ${cm(it.up_to, 2)} cm: ${it.when}.`));
    if (advice.avoid) out.push(element("p", sentence(`avoid: ${advice.avoid}`)));
    if (ready) {
      const button = element("button", "Do this change", { id: "toile-do" });
      button.addEventListener("click", () => this.hands.change(advice, ready));
      out.push(button);
    } else if (!clear) {
      out.push(element("p", "The test comes first: the change is not clear yet."));
    }
    return out;
  }

  clear() {
    this.look = this.#nothing();
    for (const input of this.form.querySelectorAll("input, select")) input.value = "";
    this.refresh();
  }
}
