// Elements of drawings.
const SVG = "http://www.w3.org/2000/svg";

/** An element of that name; numbers are fine as values of its attributes. */
export function shape(name, attributes) {
  const made = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, String(value));
  return made;
}
