// The drawer under the table: the toile, the record, what differs from the tracing paper, all measurements.

import { both, plain } from "./lengths.js";

const element = (name, text = "", attributes = {}) => Object.assign(document.createElement(name), { textContent: text }, attributes);

export class Drawer {
  constructor(box, button, hands) {
    Object.assign(this, { box, button, hands });
    button.addEventListener("click", () => this.toggle());
    this.parts = {};
    for (const [key, name] of [["toile", "Toile"], ["differs", "What differs from the tracing paper"], ["record", "Record of toiles"], ["body", "All measurements"], ["changes", "Changes of this sitting"]]) {
      const part = document.createElement("details");
      part.id = `drawer-${key}`;
      part.append(element("summary", name), document.createElement("div"));
      box.append(part);
      this.parts[key] = part.lastElementChild;
    }
  }

  toggle(open = this.box.hidden) {
    this.box.hidden = !open;
    this.button.setAttribute("aria-expanded", String(open));
    if (open) (this.box.querySelector("summary") ?? this.box).focus();
  }

  differs(text) {
    this.parts.differs.replaceChildren(element("pre", text || "No tracing paper lies under the sheet.", { tabIndex: 0 }));
  }

  record(fittings, unit) {
    const list = document.createElement("ol");
    for (const it of fittings) {
      const item = document.createElement("li");
      item.append(element("strong", [it.date, it.block].filter(Boolean).join(", ") || "no date"));
      const changed = it.changed.map(([key, value]) => `${key} to ${/angle/.test(key) ? `${value} degrees` : both(value, unit)}`);
      for (const [name, texts] of [["Seen", it.seen], ["Tested", it.tested], ["Changed", changed], ["Note", it.note ? [it.note] : []]]) {
        if (texts.length) item.append(element("p", `${name}: ${texts.join("; ")}`));
      }
      list.append(item);
    }
    this.parts.record.replaceChildren(fittings.length ? list : element("p", "No toile is recorded yet."));
  }

  measurements(draft, table, unit) {
    if (!this.fields) {
      this.fields = new Map();
      for (const it of table) {
        const label = element("label", "", { className: "measure" });
        const input = element("input", "", { inputMode: "decimal", autocomplete: "off", id: `measure-${it.key}` });
        const small = element("small");
        const wrong = element("p", "", { className: "wrong", hidden: true, id: `measure-${it.key}-wrong` });
        input.setAttribute("aria-describedby", wrong.id);
        label.append(element("span", it.name, { title: it.how[unit] }), input, small);
        this.parts.body.append(label, wrong);
        const said = async () => {
          const typed = input.value.trim();
          const reason = await this.hands.measure(it, typed === "" ? null : typed);
          wrong.textContent = reason ?? "";
          wrong.hidden = !reason;
          if (reason) input.setAttribute("aria-invalid", "true");
          else input.removeAttribute("aria-invalid");
        };
        input.addEventListener("change", said);
        this.fields.set(it.key, { input, small });
      }
    }
    for (const [key, { input, small }] of this.fields) {
      const it = draft.body[key];
      const measured = it?.from === "measured";
      if (document.activeElement !== input && !input.hasAttribute("aria-invalid")) {
        input.value = measured ? plain(it.value, unit).replace("−", "-") : "";
        input.placeholder = it && !measured ? plain(it.value, unit) : "";
      }
      small.textContent = it ? `${both(it.value, unit)}${measured ? "" : `, ${it.from}`}` : "not known";
    }
  }

  changes(names) {
    const list = document.createElement("ol");
    for (const it of names) list.append(element("li", it.name + (it.done ? "" : " (undone)"), { className: it.done ? "" : "undone" }));
    this.parts.changes.replaceChildren(names.length ? list : element("p", "Nothing is changed yet."));
  }
}
