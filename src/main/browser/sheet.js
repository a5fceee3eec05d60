// The sheet on a lesson's page: remembers how large the notes are wanted, lets the arrow keys go from event to event,
// and parts the music into systems for paper. Without it the sheet is read, enlarged and printed all the same.

import { borrow, boxOf, layer, rectangle, windowOn } from "./common/sheet-box.js";

const KEPT = "groundbass.notes";
const AROUND = 1; // staff spaces over and under a system on paper
const ROOM = 0.35; // staff spaces between an event that the keyboard has reached and its frame

const figures = [...document.querySelectorAll("figure.sheet")];

function kept() {
  try {
    return localStorage.getItem(KEPT);
  } catch {
    return null; // storage that is switched off
  }
}

function keep(size) {
  try {
    localStorage.setItem(KEPT, size);
  } catch {
    // then it holds for this page
  }
}

function choose(size) {
  /** @type {NodeListOf<HTMLInputElement>} */
  const radios = document.querySelectorAll(".sheet-size input");
  for (const radio of radios) radio.checked = radio.value === size;
  for (const figure of figures) rove(figure);
}

/** In each drawing one event can be reached by Tab; the arrow keys go on from there. */
function rove(figure) {
  for (const drawing of figure.querySelectorAll(".sheet-page svg")) {
    const events = eventsOf(drawing);
    const reached = events.find((event) => event.getAttribute("tabindex") === "0") ?? events[0];
    for (const event of events) event.setAttribute("tabindex", event === reached ? "0" : "-1");
  }
}

function eventsOf(drawing) {
  return [...drawing.querySelectorAll("g.event")];
}

/** The event that a key leads to from another; undefined for other keys. */
function target(key, event, events) {
  const at = events.indexOf(event);
  const bar = event.dataset.bar;
  switch (key) {
    case "ArrowRight":
      return events[at + 1];
    case "ArrowLeft":
      return events[at - 1];
    case "ArrowDown":
      return events.slice(at).find((other) => other.dataset.bar !== bar);
    case "ArrowUp": {
      const before = events.slice(0, at).findLast((other) => other.dataset.bar !== bar);
      return before && events.find((other) => other.dataset.bar === before.dataset.bar);
    }
    case "Home":
      return events[0];
    case "End":
      return events.at(-1);
    default:
      return undefined;
  }
}

const KEYS = new Set(["ArrowRight", "ArrowLeft", "ArrowDown", "ArrowUp", "Home", "End"]);

function move(pressed) {
  if (!KEYS.has(pressed.key) || pressed.ctrlKey || pressed.metaKey || pressed.altKey) return;
  const event = pressed.target.closest?.("g.event");
  if (!event) return;
  pressed.preventDefault();
  const next = target(pressed.key, event, eventsOf(event.ownerSVGElement));
  if (!next) return;
  event.setAttribute("tabindex", "-1");
  next.setAttribute("tabindex", "0");
  next.focus();
}

/** Each system of the widest picture as a picture of its own, so that no page of paper cuts through one. */
function part(figure) {
  const drawing = figure.querySelector(".sheet-wide svg");
  const systems = drawing ? [...drawing.querySelectorAll("g.system[data-top]")] : [];
  if (!systems.length) return;
  const printed = document.createElement("div");
  printed.className = "sheet-printed";
  printed.setAttribute("aria-hidden", "true");
  for (const system of systems) printed.append(alone(system, drawing));
  const legend = legendOf(systems.at(-1), drawing);
  if (legend) printed.append(legend);
  const caption = figure.querySelector("figcaption");
  figure.insertBefore(printed, caption);
  figure.classList.add("sheet-parted");
}

function alone(system, drawing) {
  const svg = strip(drawing, Number(system.dataset.top) - AROUND, Number(system.dataset.height) + 2 * AROUND);
  borrow(svg, system);
  return svg;
}

/** What stands under the last system. */
function legendOf(last, drawing) {
  const all = [...drawing.children];
  const below = all.slice(all.indexOf(last) + 1);
  if (!below.length) return null;
  const top = Number(last.dataset.top) + Number(last.dataset.height);
  const svg = strip(drawing, top, drawing.viewBox.baseVal.height - top);
  for (const part of below) svg.append(part.cloneNode(true));
  return svg;
}

/** An empty picture of a part of a drawing's height. */
function strip(drawing, top, height) {
  return windowOn(drawing, { x: 0, y: top, width: drawing.viewBox.baseVal.width, height });
}

/** A frame around the head and the figure that the keyboard has reached, of one width on every screen. */
function frameReached({ target: reached }) {
  if (!reached.matches?.("g.event:focus-visible")) return;
  const drawing = reached.ownerSVGElement;
  const frame = drawing.querySelector(".sheet-reached") ?? layer(drawing, "sheet-reached");
  frame.replaceChildren(rectangle(boxOf(reached), ROOM));
}

function unframe({ target: left }) {
  left.ownerSVGElement?.querySelector(".sheet-reached")?.replaceChildren();
}

const size = kept();
if (size && document.querySelector(`.sheet-size input[value="${CSS.escape(size)}"]`)) choose(size);
for (const figure of figures) {
  rove(figure);
  figure.addEventListener("keydown", move);
  figure.addEventListener("focusin", frameReached);
  figure.addEventListener("focusout", unframe);
  figure.addEventListener("change", (event) => {
    const radio = /** @type {HTMLInputElement} */ (event.target);
    if (!radio.closest(".sheet-size")) return;
    choose(radio.value);
    keep(radio.value);
    dispatchEvent(new Event("resize")); // whoever draws on the sheet finds it in another size
  });
}
addEventListener("beforeprint", () => {
  for (const figure of figures) if (!figure.classList.contains("sheet-parted")) part(figure);
});
