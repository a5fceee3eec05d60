// The fretboard to write from: the strings of the line's header, frets where twelve equal steps to the octave put them.

import { dotsAt, withSigns } from "../../common/neck.js";
import { shape } from "../../common/svg.js";

const WIDTH = 1000;
const NUT = 34; // room for open strings, left of the nut
const ROW = 30;
const TOP = 18;
/** How high the dots of a fret lie, as parts of the neck's width: of none, of one, of two. */
const DOTS = [[], [0.5], [0.3, 0.7]];

/** How far fret wire `fret` lies from the nut, as a part of the whole string: 1 - 2^(-fret/12). */
const wire = (fret) => 1 - 2 ** (-fret / 12);

export class Neck {
  /** @param chosen called with the text of a place */
  constructor(host, say, chosen) {
    this.host = host;
    this.say = say;
    this.chosen = chosen;
    this.key = "";
    this.strings = [];
    this.frets = 0;
    this.string = 0;
    this.fret = 0;
  }

  show(neck) {
    const key = JSON.stringify(neck);
    if (key === this.key || !neck.strings.length) return;
    this.key = key;
    this.strings = neck.strings;
    this.frets = Math.min(neck.frets, 24);
    this.string = Math.min(this.string, neck.strings.length - 1);
    this.draw();
  }

  /** The middle between two wires, where a finger stands. */
  middle(fret) {
    if (fret === 0) return NUT / 2;
    const scale = (WIDTH - NUT) / wire(this.frets);
    return NUT + (scale * (wire(fret) + wire(fret - 1))) / 2;
  }

  draw() {
    const { strings } = this;
    const height = TOP + ROW * strings.length + 22;
    const scale = (WIDTH - NUT) / wire(this.frets);
    const svg = shape("svg", {
      viewBox: `0 0 ${WIDTH} ${height}`,
      role: "grid",
      "aria-label": this.say("neck"),
      class: "neck-board",
    });
    const y = (string) => TOP + ROW * (string + 0.5);
    const wood = shape("g", { "aria-hidden": "true" });
    wood.append(
      shape("rect", { x: NUT, y: TOP, width: WIDTH - NUT, height: ROW * strings.length, class: "neck-wood" }),
    );
    for (let fret = 0; fret <= this.frets; fret++) {
      const x = NUT + scale * wire(fret);
      wood.append(
        shape("line", {
          x1: x,
          x2: x,
          y1: TOP,
          y2: TOP + ROW * strings.length,
          class: fret ? "neck-wire" : "neck-nut",
        }),
      );
      if (fret) {
        const number = shape("text", { x: this.middle(fret), y: height - 6, class: "neck-number" });
        number.textContent = fret;
        if (fret < 13 || dotsAt(fret)) wood.append(number);
      }
      for (const at of DOTS[dotsAt(fret)]) {
        wood.append(
          shape("circle", { cx: this.middle(fret), cy: TOP + ROW * strings.length * at, r: 4, class: "neck-dot" }),
        );
      }
    }
    strings.forEach((open, string) => {
      const name = shape("text", { x: NUT / 2, y: y(string) + 4.5, class: "neck-name" });
      name.textContent = open.name.replace(/f$/, "");
      wood.append(name);
      wood.append(
        shape("line", {
          x1: NUT,
          x2: WIDTH,
          y1: y(string),
          y2: y(string),
          class: "neck-string",
          "stroke-width": 1 + string * 0.6,
        }),
      );
    });
    svg.append(wood);
    strings.forEach((string, place) => svg.append(this.row(string, place, y(place), scale)));
    this.host.replaceChildren(svg);
    svg.addEventListener("keydown", (event) => this.press(event));
    svg.addEventListener("click", (event) => {
      const cell = event.target.closest("[role=gridcell]");
      if (cell) this.take(Number(cell.dataset.string), Number(cell.dataset.fret));
    });
    this.move(this.string, Math.min(this.fret, this.frets), false);
  }

  row(string, place, y, scale) {
    const row = shape("g", { role: "row", "aria-label": this.say("string", string.name.replace(/f$/, "")) });
    for (let fret = 0; fret <= this.frets; fret++) {
      const left = fret ? NUT + scale * wire(fret - 1) : 0;
      const right = fret ? NUT + scale * wire(fret) : NUT;
      const note = withSigns(string.notes[fret]);
      const cell = shape("g", {
        role: "gridcell",
        tabindex: "-1",
        class: "neck-cell",
        "data-string": place,
        "data-fret": fret,
        "aria-label": this.say("cell", string.name.replace(/f$/, ""), fret, note),
      });
      cell.append(shape("rect", { x: left, y: y - ROW / 2, width: right - left, height: ROW }));
      const x = this.middle(fret);
      cell.append(shape("circle", { cx: x, cy: y, r: 12 }));
      const name = shape("text", { x, y: y + 4.5 });
      name.textContent = note;
      cell.append(name);
      row.append(cell);
    }
    return row;
  }

  cell(string, fret) {
    return this.host.querySelector(`[data-string="${string}"][data-fret="${fret}"]`);
  }

  move(string, fret, focus = true) {
    this.host.querySelector('[tabindex="0"]')?.setAttribute("tabindex", "-1");
    this.string = Math.max(0, Math.min(this.strings.length - 1, string));
    this.fret = Math.max(0, Math.min(this.frets, fret));
    const cell = this.cell(this.string, this.fret);
    cell.setAttribute("tabindex", "0");
    if (focus) cell.focus();
  }

  press(event) {
    const steps = { ArrowUp: [-1, 0], ArrowDown: [1, 0], ArrowLeft: [0, -1], ArrowRight: [0, 1] };
    if (steps[event.key]) this.move(this.string + steps[event.key][0], this.fret + steps[event.key][1]);
    else if (event.key === "Home") this.move(this.string, 0);
    else if (event.key === "End") this.move(this.string, this.frets);
    else if (event.key === "Enter" || event.key === " ") this.take(this.string, this.fret);
    else if (event.key === "x") this.chosen(this.strings[this.string].name.replace(/f$/, "") + "x");
    else return;
    event.preventDefault();
  }

  take(string, fret) {
    this.move(string, fret);
    this.chosen(this.strings[string].name + fret);
  }
}
