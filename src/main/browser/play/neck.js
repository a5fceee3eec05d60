// The neck while it plays: where the fingers are. It shows to the eye what the sheet says in words as well.
import { withSigns } from "../common/neck.js";
import { shape } from "../common/svg.js";
import { Frets } from "./frets.js";

export class Neck {
  #place;
  #practice;
  #frets;
  /** @type {Map<string, any[]>} by the event of the sheet */
  #byEvent = new Map();
  #lights = shape("g", { class: "neck-lights" });
  /** @type {any[]} events of the sheet */
  #lit = [];

  /**
   * @param {HTMLElement} place in which it is shown
   * @param {any} practice
   * @param {{strings?: string[], places?: any[]}} manifest which says nothing of the neck where its release is older
   */
  constructor(place, practice, { strings = [], places = [] }) {
    this.#place = place;
    this.#practice = practice;
    this.#frets = new Frets(strings, places);
    for (const one of places) {
      const key = keyOf(one);
      this.#byEvent.set(key, [...(this.#byEvent.get(key) ?? []), one]);
    }
    if (!places.length) return;
    practice.settings.addEventListener("change", ({ detail }) => {
      if (detail === "neck" || detail === "leftHanded") this.#show();
    });
    practice.addEventListener("lit", ({ detail }) => {
      this.#lit = detail;
      this.#light();
    });
    this.#show();
  }

  #show() {
    this.#place.hidden = !this.#practice.settings.get("neck");
    this.#place.replaceChildren();
    if (!this.#place.hidden) this.#place.append(this.#drawn());
    this.#light();
  }

  #light() {
    if (this.#place.hidden) return;
    const places = this.#lit.flatMap((event) => this.#byEvent.get(keyOf(event)) ?? []);
    this.#lights.replaceChildren(...places.flatMap((place) => this.#finger(place)));
  }

  #drawn() {
    const frets = this.#frets;
    const svg = shape("svg", { viewBox: `0 0 ${frets.width} ${frets.height}`, "aria-hidden": "true" });
    for (const fret of frets.dots) {
      const x = this.#x(frets.finger(fret));
      for (const y of frets.dotsOf(fret)) svg.append(shape("circle", { class: "neck-dot", cx: x, cy: y, r: 1.2 }));
      svg.append(text(fret, x, frets.height - 1.5, "neck-number"));
    }
    for (let wire = frets.first; wire <= frets.last; wire++) {
      const x = this.#x(frets.wire(wire));
      const ends = { x1: x, x2: x, y1: frets.string(1), y2: frets.string(frets.strings.length) };
      svg.append(shape("line", { class: wire === 0 ? "neck-nut" : "neck-wire", ...ends }));
    }
    frets.strings.forEach((name, i) => {
      const y = frets.string(i + 1);
      svg.append(text(withSigns(name), this.#x(frets.names), y + 1.6, "neck-name"));
      const ends = { x1: this.#x(frets.wire(frets.first)), x2: this.#x(frets.wire(frets.last)), y1: y, y2: y };
      svg.append(shape("line", { class: "neck-string", "stroke-width": 0.3 + 0.15 * i, ...ends }));
    });
    svg.append(this.#lights);
    return svg;
  }

  #finger({ string, fret }) {
    const x = this.#x(this.#frets.finger(fret));
    const y = this.#frets.string(string);
    return [
      shape("circle", { class: "neck-finger", cx: x, cy: y, r: 2.9 }),
      text(fret === "x" ? "×" : fret, x, y + 1.3, "neck-fret"),
    ];
  }

  /** A left-handed player sees it from the other side. */
  #x(x) {
    return this.#practice.settings.get("leftHanded") ? this.#frets.width - x : x;
  }
}

function keyOf({ bar, at }) {
  return `${bar}:${at}`;
}

function text(content, x, y, name) {
  const element = shape("text", { class: name, x, y, "text-anchor": "middle" });
  element.textContent = String(content);
  return element;
}
