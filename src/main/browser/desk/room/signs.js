// The signs of the rooms, and what is to be mended in this one, as they are once the server has what was typed.
const SOON = 1500; // milliseconds after the last save
const PARTS = ["rooms", "room-remarks", "room-differs"];

/**
 * @param {string} here the address of the room
 * @returns {() => void} to be called after each save
 */
export function followSigns(here) {
  let timer = 0;
  return () => {
    clearTimeout(timer);
    timer = setTimeout(() => show(here), SOON);
  };
}

/** Nothing is shown anew where nothing changed, or where somebody is just using it. @param {string} here */
async function show(here) {
  const answer = await fetch(`${here}/signs`).catch(() => null);
  if (!answer?.ok) return; // they are shown with the next save
  const came = new DOMParser().parseFromString(await answer.text(), "text/html");
  for (const id of PARTS) {
    const [old, fresh] = [document.getElementById(id), came.getElementById(id)];
    if (!old || !fresh || old.innerHTML === fresh.innerHTML || old.contains(document.activeElement)) continue;
    old.replaceChildren(...fresh.childNodes);
  }
}
