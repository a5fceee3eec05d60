// A finger or a mouse on the sheet: a tap begins there, a drag chooses what is repeated, a handle moves one end of it.

const STILL = 8; // CSS pixels; less is a tap

/** In `figure`, where the sheet that `sheet()` gives is seen: `tapped(event)`, `dragged(from, to)` while it goes on, `chosen(from, to)` at its end, `left()` when it is broken off. */
export function watchDrag(figure, sheet, { tapped, dragged, chosen, left }) {
  let begun = null;

  figure.addEventListener("pointerdown", (event) => {
    if (event.button !== 0 || !event.target.closest("svg") || event.target.closest("a")) return;
    const handle = event.target.closest("[data-end]");
    const place = handle ? sheet().opposite(handle.dataset.end) : sheet().eventAt(event.clientX, event.clientY);
    begun = place &&
      { id: event.pointerId, x: event.clientX, y: event.clientY, place, held: handle !== null, moved: false };
  });

  figure.addEventListener("pointermove", (event) => {
    if (!begun || event.pointerId !== begun.id) return;
    if (!event.buttons) { // let go where the figure heard nothing of it
      if (begun.moved) left();
      begun = null;
      return;
    }
    if (!begun.moved && Math.hypot(event.clientX - begun.x, event.clientY - begun.y) < STILL) return;
    if (!begun.moved) figure.setPointerCapture(event.pointerId);
    begun.moved = true;
    const place = sheet().eventAt(event.clientX, event.clientY);
    if (place) dragged(begun.place, place);
  });

  figure.addEventListener("pointerup", (event) => {
    if (!begun || event.pointerId !== begun.id) return;
    const place = sheet().eventAt(event.clientX, event.clientY) ?? begun.place;
    if (begun.moved) chosen(begun.place, place);
    else if (!begun.held) tapped(begun.place);
    begun = null;
  });

  figure.addEventListener("pointercancel", () => {
    if (begun?.moved) left();
    begun = null;
  });

  // the drawing's words are not to be marked as text meanwhile
  figure.addEventListener("selectstart", (event) => {
    if (begun) event.preventDefault();
  });
}
