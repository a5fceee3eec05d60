// Where the signs of a drawn event stand, and drawings that borrow parts of another. In the drawing's own staff spaces.

import { shape } from "./svg.js";

const KEPT = ["fill", "font-family", "font-variant", "lang"]; // what the signs of a drawing inherit from it

/** The box of a sign where it stands: its own box knows nothing of its own moving and scaling. */
function placed(sign) {
  const { x, y, width, height } = sign.getBBox();
  const { a, d, e, f } = sign.parentElement.getCTM().inverse().multiply(sign.getCTM());
  return { x: a * x + e, y: d * y + f, width: a * width, height: d * height };
}

/** Heads, signs and figures without stem and beam, which may reach over other notes. */
export function boxOf(element) {
  const signs = [...element.querySelectorAll("use, text")].map(placed);
  if (!signs.length) return element.getBBox();
  const x = Math.min(...signs.map((box) => box.x));
  const y = Math.min(...signs.map((box) => box.y));
  const right = Math.max(...signs.map((box) => box.x + box.width));
  const bottom = Math.max(...signs.map((box) => box.y + box.height));
  return { x, y, width: right - x, height: bottom - y };
}

export function rectangle(box, room) {
  const [width, height] = [box.width + 2 * room, box.height + 2 * room];
  return shape("rect", { x: box.x - room, y: box.y - room, width, height, rx: 0.6 });
}

/** An empty group of marks behind the music of a drawing. */
export function layer(svg, name) {
  const group = shape("g", { class: name, "aria-hidden": "true" });
  svg.querySelector("g").before(group);
  return group;
}

/** A picture of a part of a drawing, with its ink and its figures; what it shows is put in by `borrow`. */
export function windowOn(drawing, { x, y, width, height }) {
  const svg = shape("svg", { viewBox: [x, y, width, height].join(" ") });
  for (const name of KEPT) if (drawing.hasAttribute(name)) svg.setAttribute(name, drawing.getAttribute(name));
  return svg;
}

/** Shows in a picture what `element` shows, now and whenever it changes. */
export function borrow(picture, element) {
  element.id ||= `drawn-${crypto.randomUUID()}`;
  picture.append(shape("use", { href: `#${element.id}` }));
}
