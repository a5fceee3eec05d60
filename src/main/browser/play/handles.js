// What a finger takes hold of to move one end of what is repeated. A drag that begins here scrolls nothing (play.css), so
// it may lead over several systems.

import { shape } from "../common/svg.js";

/** Staff spaces: what is seen, and what can be touched, about 35 px on a phone. */
const KNOB = 1;
const TOUCHED = 2.5;

/** An empty group for them, over the music. */
export function handles() {
  return shape("g", { class: "practice-handles", "aria-hidden": "true" });
}

/** One at the start of the first box, one at the end of the last. */
export function handlesAt(first, last) {
  return [handle("from", first.x, first), handle("to", last.x + last.width, last)];
}

function handle(end, x, { y, height }) {
  const group = shape("g", { class: "practice-handle", "data-end": end });
  group.append(
    shape("line", { x1: x, x2: x, y1: y, y2: y + height }),
    shape("circle", { cx: x, cy: y + height, r: KNOB }),
    shape("circle", { class: "practice-hold", cx: x, cy: y + height, r: TOUCHED }),
  );
  return group;
}
