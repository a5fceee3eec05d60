// What a finger takes hold of to move one end of what is repeated. A drag that begins here scrolls nothing (play.css), so
// it may lead over several systems.

const SVG = "http://www.w3.org/2000/svg";
/** Staff spaces: what is seen, and what can be touched, about 35 px on a phone. */
const KNOB = 1;
const TOUCHED = 2.5;

/** An empty group for them, over the music. */
export function handles() {
  return made("g", { class: "practice-handles", "aria-hidden": "true" });
}

/** One at the start of the first box, one at the end of the last. */
export function handlesAt(first, last) {
  return [handle("from", first.x, first), handle("to", last.x + last.width, last)];
}

function handle(end, x, { y, height }) {
  const group = made("g", { class: "practice-handle", "data-end": end });
  group.append(
    made("line", { x1: x, x2: x, y1: y, y2: y + height }),
    made("circle", { cx: x, cy: y + height, r: KNOB }),
    made("circle", { class: "practice-hold", cx: x, cy: y + height, r: TOUCHED }),
  );
  return group;
}

function made(name, attributes) {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
  return element;
}
