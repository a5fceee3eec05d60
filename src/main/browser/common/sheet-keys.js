// The keyboard on a sheet: the arrow keys go from event to event, and what they have reached is framed.
import { boxOf, layer, rectangle } from "./sheet-box.js";

const ROOM = 0.35; // staff spaces between an event that the keyboard has reached and its frame

/** Lets the keys walk through every drawing in a figure, now and once others have come (`rove`). */
export function walkable(figure) {
  rove(figure);
  figure.addEventListener("keydown", move);
  figure.addEventListener("focusin", frameReached);
  figure.addEventListener("focusout", unframe);
}

/** In each drawing one event can be reached by Tab; the arrow keys go on from there. */
export function rove(figure) {
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
