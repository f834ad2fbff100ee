// The panels on the paper: paths as they came, put in the place of those before.

const NS = "http://www.w3.org/2000/svg";
export const EDGES = ["waist", "side_seam", "hem", "inseam", "crotch_seam"];

export function svg(name, attributes = {}, parent = null) {
  const element = document.createElementNS(NS, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  parent?.append(element);
  return element;
}

/** The drawn panels of one draft. */
export class Panels {
  #drawn = new Map();

  constructor(group, kinds) {
    this.group = group;
    this.kinds = kinds;
  }

  /** Draws the panels of a leg; `places` says how far each is moved sideways, cm. */
  draw(draft, marks, side, places) {
    const pieces = draft.pieces.filter((piece) => piece.side === side || piece.side === "both");
    for (const piece of pieces) {
      const drawn = this.#of(piece.panel);
      const place = `translate(${places[piece.panel]} 0)`;
      if (drawn.place !== place) {
        drawn.place = place;
        drawn.group.setAttribute("transform", place);
      }
      for (const { edge, path } of piece.edges) set(drawn.paths[edge], path);
      const mark = marks?.find((it) => it.panel === piece.panel && it.side === piece.side);
      set(drawn.paths.inside, mark ? mark.inside : darts(piece));
      if (mark) {
        set(drawn.paths.crease, mark.crease);
        set(drawn.paths.notches, mark.notches);
      }
    }
  }

  clear() {
    this.#drawn.clear();
    this.group.replaceChildren();
  }

  #of(panel) {
    const known = this.#drawn.get(panel);
    if (known) return known;
    const group = svg("g", { class: `panel ${panel}` }, this.group);
    const paths = {};
    paths.crease = svg("path", { class: this.kinds.crease, "data-line": `${panel} crease` }, group);
    paths.inside = svg("path", { class: this.kinds.inside, "data-line": `${panel} inside` }, group);
    for (const edge of EDGES) {
      paths[edge] = svg("path", { class: this.kinds.outline, "data-line": `${panel} ${edge}` }, group);
    }
    paths.notches = svg("path", { class: this.kinds.outline, "data-line": `${panel} notches` }, group);
    const drawn = { group, paths, place: "" };
    this.#drawn.set(panel, drawn);
    return drawn;
  }
}

function set(path, data) {
  if (path.drawn !== data) {
    path.drawn = data;
    path.setAttribute("d", data);
  }
}

const darts = (piece) =>
  piece.darts.map(({ apex, legs: [a, b] }) => `M ${a.join(" ")} L ${apex.join(" ")} L ${b.join(" ")}`).join(" ");

/** How far each panel is moved sideways, and what part of the paper that takes, cm. */
export function placed(draft, side, over) {
  const reach = (panel) => {
    const piece = draft.pieces.find((it) => it.panel === panel && (it.side === side || it.side === "both"));
    const xs = piece.sew_outline.match(/-?[\d.]+ -?[\d.]+/g).map((pair) => Number(pair.split(" ")[0]));
    const ys = Object.values(piece.points).map((point) => point[1]);
    return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: piece.levels.hem };
  };
  const [front, back] = [reach("front"), reach("back")];
  const shift = over ? 0 : front.right - back.left + 6;
  const left = Math.min(front.left, back.left + shift) - 2;
  const right = Math.max(front.right, back.right + shift) + 2;
  const top = Math.min(front.top, back.top) - 3;
  const bottom = Math.max(front.bottom, back.bottom) + 2;
  return { places: { front: 0, back: shift }, bounds: { x: left, y: top, width: right - left, height: bottom - top } };
}
