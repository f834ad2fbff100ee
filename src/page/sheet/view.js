// Where the paper lies under the eye: moved and brought nearer by wheel, fingers and keys.

export class View {
  scale = 6;
  x = 0;
  y = 0;
  #changed = () => {};
  #bounds = { x: 0, y: 0, width: 100, height: 110 };

  constructor(svg, world) {
    this.svg = svg;
    this.world = world;
    this.#listen();
  }

  onChange(call) { this.#changed = call; }

  /** From a place of the paper, cm, to the screen, pixels. */
  toScreen([x, y]) { return [this.x + x * this.scale, this.y + y * this.scale]; }

  /** Shows all of the paper beside the margin. */
  whole(bounds = this.#bounds, margin = this.margin ?? 0) {
    this.#bounds = bounds;
    this.margin = margin;
    this.moved = false;
    const { width, height } = this.size();
    const room = { width: width - margin - 24, height: height - 56 };
    this.scale = Math.max(1, Math.min(room.width / bounds.width, room.height / bounds.height));
    this.x = margin + 12 + Math.max(0, (room.width - bounds.width * this.scale) / 2) - bounds.x * this.scale;
    this.y = 30 - bounds.y * this.scale;
    this.draw();
  }

  size() {
    this.area ??= this.svg.getBoundingClientRect();
    return this.area;
  }

  move(x, y) { this.moved = true; this.x += x; this.y += y; this.draw(); }

  zoom(by, [x, y] = this.#middle()) {
    this.moved = true;
    const scale = Math.min(80, Math.max(1, this.scale * by));
    const part = scale / this.scale;
    this.x = x - (x - this.x) * part;
    this.y = y - (y - this.y) * part;
    this.scale = scale;
    this.draw();
  }

  draw() {
    this.world.setAttribute("transform", `translate(${this.x} ${this.y}) scale(${this.scale})`);
    this.#changed();
  }

  #middle() {
    const { width, height } = this.size();
    return [((this.margin ?? 0) + width) / 2, height / 2];
  }

  #listen() {
    const at = (event) => {
      const area = this.svg.getBoundingClientRect();
      return [event.clientX - area.left, event.clientY - area.top];
    };
    this.svg.addEventListener("wheel", (event) => {
      event.preventDefault();
      const pixels = event.deltaMode === 1 ? 16 : 1;
      if (event.ctrlKey || event.metaKey) this.zoom(Math.exp(-event.deltaY * pixels * 0.004), at(event));
      else this.move(-(event.shiftKey ? event.deltaY : event.deltaX) * pixels, -(event.shiftKey ? 0 : event.deltaY) * pixels);
    }, { passive: false });
    const fingers = new Map();
    this.svg.addEventListener("pointerdown", (event) => {
      fingers.set(event.pointerId, at(event));
      this.svg.setPointerCapture(event.pointerId);
    });
    this.svg.addEventListener("pointermove", (event) => {
      const before = fingers.get(event.pointerId);
      if (!before) return;
      const now = at(event);
      const others = [...fingers].filter(([id]) => id !== event.pointerId).map(([, place]) => place);
      fingers.set(event.pointerId, now);
      if (others.length === 0) return this.move(now[0] - before[0], now[1] - before[1]);
      const [still] = others;
      const far = (place) => Math.hypot(place[0] - still[0], place[1] - still[1]);
      if (far(before) > 4) this.zoom(far(now) / far(before), still);
    });
    for (const end of ["pointerup", "pointercancel", "lostpointercapture"]) {
      this.svg.addEventListener(end, (event) => fingers.delete(event.pointerId));
    }
    this.svg.addEventListener("keydown", (event) => {
      const step = event.shiftKey ? 120 : 40;
      const keys = {
        ArrowLeft: () => this.move(step, 0), ArrowRight: () => this.move(-step, 0),
        ArrowUp: () => this.move(0, step), ArrowDown: () => this.move(0, -step),
        PageUp: () => this.move(0, 300), PageDown: () => this.move(0, -300),
        "+": () => this.zoom(1.25), "=": () => this.zoom(1.25), "-": () => this.zoom(0.8), 0: () => this.whole(),
      };
      if (event.ctrlKey || event.metaKey || !keys[event.key]) return;
      event.preventDefault();
      keys[event.key]();
    });
    new ResizeObserver(() => {
      this.area = null;
      if (this.moved) this.draw();
      else this.whole(this.#bounds, this.measureMargin?.() ?? this.margin);
    }).observe(this.svg);
  }
}
