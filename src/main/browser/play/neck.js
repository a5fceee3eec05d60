// The neck while it plays: where the fingers are. It shows to the eye what the sheet says in words as well.
import { Frets } from "./frets.js";

const SVG = "http://www.w3.org/2000/svg";

export class Neck {
  #place;
  #practice;
  #frets;
  /** @type {Map<string, any[]>} by the event of the sheet */
  #byEvent = new Map();
  #lights = made("g", { class: "neck-lights" });
  #key = "";

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
    practice.addEventListener("lit", ({ detail }) => this.#light(detail));
    this.#show();
  }

  #show() {
    this.#place.hidden = !this.#practice.settings.get("neck");
    this.#place.replaceChildren();
    this.#key = "";
    this.#lights.replaceChildren();
    if (!this.#place.hidden) this.#place.append(this.#drawn());
  }

  #light(events) {
    const key = events.map(keyOf).join(" ");
    if (this.#place.hidden || key === this.#key) return;
    this.#key = key;
    const places = events.flatMap((event) => this.#byEvent.get(keyOf(event)) ?? []);
    this.#lights.replaceChildren(...places.flatMap((place) => this.#finger(place)));
  }

  #drawn() {
    const frets = this.#frets;
    const svg = made("svg", { viewBox: `0 0 ${frets.width} ${frets.height}`, "aria-hidden": "true" });
    const middle = (frets.string(1) + frets.string(frets.strings.length)) / 2;
    for (const dot of frets.dots) {
      svg.append(made("circle", { class: "neck-dot", cx: this.#x(frets.finger(dot)), cy: middle, r: 1.2 }));
      svg.append(text(dot, this.#x(frets.finger(dot)), frets.height - 1.5, "neck-number"));
    }
    for (let wire = frets.first; wire <= frets.last; wire++) {
      const x = this.#x(frets.wire(wire));
      const ends = { x1: x, x2: x, y1: frets.string(1), y2: frets.string(frets.strings.length) };
      svg.append(made("line", { class: wire === 0 ? "neck-nut" : "neck-wire", ...ends }));
    }
    frets.strings.forEach((_, i) => {
      const y = frets.string(i + 1);
      const ends = { x1: this.#x(frets.wire(frets.first)), x2: this.#x(frets.wire(frets.last)), y1: y, y2: y };
      svg.append(made("line", { class: "neck-string", "stroke-width": 0.3 + 0.15 * i, ...ends }));
    });
    svg.append(this.#lights);
    return svg;
  }

  #finger({ string, fret }) {
    const x = this.#x(this.#frets.finger(fret));
    const y = this.#frets.string(string);
    return [
      made("circle", { class: "neck-finger", cx: x, cy: y, r: 2.9 }),
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
  const element = made("text", { class: name, x, y, "text-anchor": "middle" });
  element.textContent = String(content);
  return element;
}

function made(name, attributes) {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
  return element;
}
