// A line's sheet as the server sets it for one width of screen.

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
