// The drawn sheet: where each event stands, what is lit, and what is shaded. Reads the data attributes of the drawing
// and changes only classes and two layers of its own.
import { eventKey, moment } from "./score.js";
import { holds, rangeOf } from "./loop.js";
import { borrow, boxOf, layer, rectangle, windowOn } from "../common/sheet-box.js";
import { shape } from "../common/svg.js";
import { handles, handlesAt } from "./handles.js";
import { say } from "./words.js";

const ROOM = 0.5; // staff spaces around what is lit

export class Sheet {
  #figure;
  #drawings = [];
  /** @type {Drawing | null} what is shown in place of them */
  #shown = null;
  #lit = [];
  #shaded = null;

  /** `figure` holds drawings of the same music for different screens, more of them later; whichever can be seen is used. */
  constructor(figure) {
    this.#figure = figure;
    this.#find();
    new ResizeObserver(() => this.#again()).observe(figure); // another window, or larger notes
  }

  get figure() {
    return this.#figure;
  }

  /** Lights and shades this drawing of the same music, which stands elsewhere, and no other; with null those of the figure. */
  show(svg) {
    this.#seen()?.light([]);
    if (svg) { for (const system of svg.querySelectorAll("g.system")) describe(system); }
    this.#shown = svg && new Drawing(svg);
    this.#again();
  }

  /** A copy of the drawing that is seen. Its ids stay those of the original, whose signs it borrows. */
  copy() {
    const copy = this.#seen()?.copy() ?? shape("svg", {});
    for (const named of copy.querySelectorAll("[id]")) named.removeAttribute("id");
    return copy;
  }

  /** The system of the drawing that is seen in which a bar stands; undefined for none. */
  system(bar) {
    return this.#seen()?.system(bar);
  }

  /** Lights these events (`{bar, at, toBar, to}` as they stand in the drawing) and no others. */
  light(events) {
    this.#lit = events;
    this.#seen()?.light(events);
  }

  /** Shades a range of the bars; null for none. */
  shade(range, bars) {
    this.#shaded = range && { range, bars };
    this.#seen()?.shade(this.#shaded);
  }

  /** The event at the other end of what is shaded than this handle: "from" or "to"; null where nothing is shaded. */
  opposite(end) {
    return this.#seen()?.opposite(end, this.#shaded) ?? null;
  }

  /** The event at or before a point of the window: `{bar, at, toBar, to}` with moments as numbers; null beside it. */
  eventAt(x, y) {
    return this.#seen()?.eventAt(x, y) ?? null;
  }

  /**
   * Brings the system with this bar into the window, if it is out of it. Not where no part of the sheet is to be seen:
   * the reader has gone elsewhere.
   */
  follow(bar, covered) {
    this.#seen()?.follow(bar, covered);
  }

  /** Goes to the first note of a bar: the keyboard stands there, in the middle of the window. */
  reach(bar) {
    this.#seen()?.reach(bar);
  }

  /** Pictures of what lies in a passage, cut out of the drawing that is seen: an element to be shown elsewhere. */
  piece(passage, bars) {
    const piece = document.createElement("div");
    piece.className = "practice-piece";
    piece.setAttribute("aria-hidden", "true"); // the step beside it says the same in words
    const range = rangeOf(passage, passage, bars);
    if (range) piece.append(...(this.#seen()?.cut({ range, bars }) ?? []));
    return piece;
  }

  #seen() {
    return this.#shown ?? this.#drawings.find((drawing) => drawing.isSeen());
  }

  #find() {
    const svgs = [...this.#figure.querySelectorAll(".sheet-page svg")];
    this.#drawings = svgs.map((svg) => this.#drawings.find((known) => known.shows(svg)) ?? drawn(svg));
  }

  #again() {
    this.#find();
    for (const drawing of this.#drawings) drawing.measureAgain();
    this.#shown?.measureAgain();
    this.#seen()?.shade(this.#shaded);
    this.#seen()?.light(this.#lit);
  }
}

function drawn(svg) {
  for (const system of svg.querySelectorAll("g.system")) describe(system);
  return new Drawing(svg);
}

/** A system is a group of bars with a name, its events are what one presses to begin there. */
function describe(system) {
  const events = [...system.querySelectorAll("g.event[aria-label]")];
  if (!events.length) return;
  const bars = events.map((event) => Number(event.dataset.bar));
  system.setAttribute("role", "group");
  system.setAttribute("aria-label", barsOf(Math.min(...bars), Math.max(...bars)));
  for (const event of events) event.setAttribute("role", "button");
}

/** The name of a row of bars; bar 0 is a pickup. */
function barsOf(first, last) {
  if (last === 0) return say("pickupAlone");
  if (first === 0) return last === 1 ? say("pickupAndBar") : say("pickupAndBars", last);
  return first === last ? say("barAlone", first) : say("bars", first, last);
}

class Drawing {
  #svg;
  /** @type {any[] | null} read when first asked for, and anew where the window has changed */
  #systems = null;
  /** @type {Map<string, any[]> | null} */
  #byKey = null;
  #litElements = [];
  #litLayer;
  #shadeLayer;
  #handles;

  constructor(svg) {
    this.#svg = svg;
    this.#handles = svg.appendChild(handles());
    this.#litLayer = layer(svg, "practice-lit");
    this.#shadeLayer = layer(svg, "practice-shade");
  }

  shows(svg) {
    return this.#svg === svg;
  }

  copy() {
    const copy = /** @type {SVGSVGElement} */ (this.#svg.cloneNode(true));
    for (const own of [".practice-lit", ".practice-shade", ".practice-handles"]) copy.querySelector(own)?.remove();
    return copy;
  }

  system(bar) {
    return this.#first(bar)?.element.closest("g.system");
  }

  isSeen() {
    return this.#svg.getClientRects().length > 0;
  }

  measureAgain() {
    this.#systems = null;
    this.#byKey = null;
  }

  light(events) {
    for (const element of this.#litElements) element.classList.remove("lit");
    const found = events.flatMap((event) => this.#find(event));
    this.#litElements = found.map((event) => event.element);
    for (const element of this.#litElements) element.classList.add("lit");
    this.#litLayer.replaceChildren(...found.map((event) => rectangle(event.box, ROOM)));
  }

  shade(shaded) {
    const boxes = shaded ? this.#all().flatMap((system) => stretchOf(system, shaded)) : [];
    this.#shadeLayer.replaceChildren(...boxes.map((box) => rectangle(box, 0)));
    this.#handles.replaceChildren(...(boxes.length ? handlesAt(boxes[0], boxes.at(-1)) : []));
  }

  opposite(end, shaded) {
    if (!shaded) return null;
    const inside = this.#all().flatMap((system) => eventsIn(system, shaded));
    return (end === "from" ? inside.at(-1) : inside[0]) ?? null;
  }

  /** What `shade` would shade, as drawings of their own that borrow the systems of this one. */
  cut(shaded) {
    return this.#all().flatMap((system) => stretchOf(system, shaded).map((box) => this.#piece(system.element, box)));
  }

  /** Up to the next note, whose ledger line begins before its head; what is lit here is lit there. */
  #piece(system, { x, y, width, height }) {
    const picture = windowOn(this.#svg, { x: x - ROOM, y: y - ROOM, width: width + ROOM, height: height + 2 * ROOM });
    borrow(picture, this.#litLayer);
    borrow(picture, system);
    return picture;
  }

  eventAt(clientX, clientY) {
    const { x, y } = new DOMPoint(clientX, clientY).matrixTransform(this.#svg.getScreenCTM().inverse());
    const system = nearest(this.#all(), ({ box }) => Math.max(box.y - y, y - box.y - box.height, 0));
    if (!system || !system.events.length) return null;
    const passed = system.events.filter((event) => event.box.x <= x + ROOM);
    return passed.length ? passed[passed.length - 1] : system.events[0];
  }

  follow(bar, covered) {
    const event = this.#first(bar);
    if (!event) return;
    this.#sideways(event.element);
    this.#upAndDown(event.element.closest("g.system"), covered);
  }

  #first(bar) {
    return this.#all()
      .flatMap(({ events }) => events)
      .find((known) => known.bar === bar);
  }

  reach(bar) {
    const element = this.#first(bar)?.element;
    if (!element) return;
    element.focus({ preventScroll: true, focusVisible: true });
    element.closest("g.system").scrollIntoView({ block: "center", behavior: gently() });
  }

  /** Where the notes are larger than the window is wide. */
  #sideways(element) {
    const page = this.#svg.parentElement;
    if (page.scrollWidth <= page.clientWidth) return;
    const left = element.getBoundingClientRect().left - page.getBoundingClientRect().left;
    if (left < 0 || left > page.clientWidth * 0.6) page.scrollBy({ left: left - 24, behavior: gently() });
  }

  #upAndDown(system, covered) {
    const { top, bottom } = system.getBoundingClientRect();
    const room = innerHeight - covered;
    const sheet = this.#svg.getBoundingClientRect();
    if (sheet.bottom < 0 || sheet.top > room) return;
    if (top >= 0 && bottom <= room) return;
    scrollBy({ top: top - Math.max(0, (room - (bottom - top)) / 3), behavior: gently() });
  }

  /** A bar that is drawn as a repeat sign has one event for all of it. */
  #find(event) {
    const known = this.#byKey ??= byKey(this.#all());
    return known.get(eventKey(event)) ?? known.get(`${event.bar} whole`) ?? [];
  }

  #all() {
    return this.#systems ??= [...this.#svg.querySelectorAll("g.system")].map(readSystem);
  }
}

/** How to scroll for who wants to see no motion (W3C Media Queries 5), and for others. */
export function gently() {
  return matchMedia("(prefers-reduced-motion: reduce)").matches ? "instant" : "smooth";
}

function readSystem(element) {
  const drawn = [...element.querySelectorAll("g.event")].map(readEvent).sort((a, b) => a.bar - b.bar || a.at - b.at);
  return { element, box: element.getBBox(), drawn, events: drawn.filter((event) => isShortest(event, drawn)) };
}

/** What an event of the drawing says of itself. */
export function readEvent(element) {
  const { bar, at, toBar, to } = element.dataset;
  return {
    element,
    written: { bar, at, toBar, to },
    bar: Number(bar),
    at: moment(at),
    toBar: Number(toBar),
    to: moment(to),
    box: boxOf(element),
  };
}

/** Of several events at one moment (a chord's name over a note, two voices) the shortest stands for the moment. */
function isShortest(event, drawn) {
  const there = drawn.filter((other) => other.bar === event.bar && other.at === event.at);
  return event === there.reduce((best, other) => (lengthOf(other) < lengthOf(best) ? other : best));
}

function lengthOf({ bar, toBar, to }) {
  return (toBar - bar) * 1000 + to;
}

function byKey(systems) {
  const found = new Map();
  const add = (key, event) => found.set(key, [...(found.get(key) ?? []), event]);
  for (const event of systems.flatMap((system) => system.drawn)) {
    add(eventKey(event.written), event);
    if (event.at === 0 && event.toBar > event.bar) add(`${event.bar} whole`, event);
  }
  return found;
}

function isIn(event, { range, bars }) {
  return bars.some((bar, i) => bar.bar === event.bar && holds(range, i, event.at));
}

function eventsIn({ events }, shaded) {
  return events.filter((event) => isIn(event, shaded));
}

/** The part of a system that lies in a range, as boxes: none or one. */
function stretchOf({ events, box }, shaded) {
  const inside = events.map((event) => isIn(event, shaded));
  const first = inside.indexOf(true);
  if (first < 0) return [];
  const last = inside.lastIndexOf(true);
  const left = events[first].box.x - ROOM;
  const right = last + 1 < events.length ? events[last + 1].box.x - ROOM : box.x + box.width;
  return [{ x: left, y: box.y, width: Math.max(0, right - left), height: box.height }];
}

function nearest(items, distance) {
  return items.reduce((best, item) => (best && distance(best) <= distance(item) ? best : item), null);
}
