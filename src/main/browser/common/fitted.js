// A line's sheet as the server sets it for one width of screen.

/**
 * Notes that are larger than any drawing of the page is made for: from which window on they are, in CSS pixels, and how many
 * staff spaces wide the server then sets the sheet.
 */
const LARGER = {
  large: [{ below: 520, spaces: 36 }],
  largest: [{ below: 520, spaces: 28 }, { below: 800, spaces: 32 }],
};

/**
 * How many staff spaces wide a page in a window sets its sheet; undefined where one of the page's own drawings serves.
 * @param {number} width of the window, in CSS pixels
 * @param {string} size of the notes, as the page calls it
 * @returns {number | undefined}
 */
export function spacesIn(width, size) {
  return LARGER[size]?.find(({ below }) => width < below)?.spaces;
}

/**
 * The drawing, to be put into the page; null where it cannot be had.
 * @param {string} address of the line's sheets
 * @param {string} staves "both", "notation" or "tab"
 * @param {number | string} spaces how wide, in staff spaces
 * @returns {Promise<SVGSVGElement | null>}
 */
export async function fitted(address, staves, spaces) {
  try {
    const answer = await fetch(`${address}/${staves}/${spaces}`);
    if (!answer.ok) return null;
    const read = new DOMParser().parseFromString(await answer.text(), "image/svg+xml").documentElement;
    return read instanceof SVGSVGElement ? document.importNode(read, true) : null;
  } catch {
    return null; // no net
  }
}
