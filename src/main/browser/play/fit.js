// How a sheet fits a screen: how many staff spaces wide it is set, and where it stands while it is played. No page.

/** What one staff space measures at the usual size of the notes, in CSS pixels: on a phone in the hand, and on a desk. */
const NEAR = { screen: 390, space: 8 };
const FAR = { screen: 1280, space: 11 };
/** So many staff spaces are as high as two systems of both staves. */
const TWO_SYSTEMS = 44;
/** No notes are set smaller for their sake, in CSS pixels. */
const LEAST = 7;
/** How much larger the notes are wanted. */
const SIZES = { small: 0.8, medium: 1, large: 1.3, largest: 1.7 };
/** The widths that the server draws: from, to and in steps of so many staff spaces. */
const DRAWN = { least: 20, most: 160, step: 4 };
/** CSS pixels over the system that is played. */
const AROUND = 8;

/**
 * The width in staff spaces of a sheet that fills a screen, `{width, height}` in CSS pixels, with notes of this size; on a
 * low screen they are so small that two systems are seen.
 */
export function spacesFor({ width, height }, size) {
  const share = Math.min(1, Math.max(0, (width - NEAR.screen) / (FAR.screen - NEAR.screen)));
  const usual = NEAR.space + share * (FAR.space - NEAR.space);
  const space = Math.min(usual, Math.max(LEAST, height / TWO_SYSTEMS)) * SIZES[size];
  const spaces = Math.floor(width / space / DRAWN.step) * DRAWN.step;
  return Math.min(DRAWN.most, Math.max(DRAWN.least, spaces));
}

/**
 * Where a sheet has to stand so that the system that is played and the one after it are in sight: the new distance of the
 * view from its top; null where both are in sight already. `now`, `next` and `view` are `{top, bottom}`; `next` is null
 * where nothing follows. Where there is no room for both, the one that is played stands on top, and of a next one before
 * it (a repeat) nothing is shown.
 */
export function scrolledTo(now, next, view) {
  const height = view.bottom - view.top;
  let { top, bottom } = now;
  if (next && next.top > now.top) bottom = Math.min(next.bottom, now.top + height - AROUND);
  else if (next && now.bottom - next.top <= height - AROUND) top = next.top;
  if (top >= view.top && bottom <= view.bottom) return null;
  return Math.max(0, top - AROUND);
}

/** The first index, in the order of playing, whose bar stands in another system than that of `index`; null for none. */
export function nextIndex(index, { first, last }, systemOf) {
  const many = last - first + 1;
  const here = systemOf(index);
  for (let i = 1; i < many; i++) {
    const other = first + ((index - first + i) % many);
    if (systemOf(other) !== here) return other;
  }
  return null;
}

/** What the strip under the sheet takes of the height, in CSS pixels (play.css). */
const STRIP = 53;

/**
 * The sheets that a music stand on a screen shows, held either way: `{staves, spaces}`. The staves that are chosen come in
 * every size, the others in the size that is chosen.
 *
 * @param {{width: number, height: number}} screen in CSS pixels
 * @param {{staves: string, size: string}} chosen
 */
export function sheetsOn({ width, height }, chosen) {
  const views = [{ width, height: height - STRIP }, { width: height, height: width - STRIP }];
  const found = new Map();
  for (const staves of ["both", "tab", "notation"]) {
    for (const size of staves === chosen.staves ? Object.keys(SIZES) : [chosen.size]) {
      for (const view of views) {
        const sheet = { staves, spaces: spacesFor(view, size) };
        found.set(`${staves} ${sheet.spaces}`, sheet);
      }
    }
  }
  return [...found.values()];
}
