// A place to practise in the page's address, so that it can be kept and handed on: ?from=3.1&to=4.4&tempo=60, the tempo in
// beats a minute as the sheet counts them, and which line where it is not the lesson's first.

const NAMES = ["from", "to", "tempo", "line"];

/** What an address asks of the line with this id: `{from, to, percent}`; null where it asks nothing of it. */
export function asked(search, id, isFirst, score) {
  const given = new URLSearchParams(search);
  if (!["from", "to", "tempo"].some((name) => given.has(name))) return null;
  if (given.has("line") ? given.get("line") !== id : !isFirst) return null;
  const tempo = Number(given.get("tempo"));
  return {
    from: given.get("from") ?? "",
    to: given.get("to") ?? "",
    percent: tempo > 0 ? (100 * tempo) / score.bpm(100) : null,
  };
}

/** The query for a place, with whatever else stood in the address. */
export function query(search, id, isFirst, { range, tempo }) {
  const given = new URLSearchParams(search);
  for (const name of NAMES) given.delete(name);
  if (range) {
    given.set("from", range[0]);
    given.set("to", range[1]);
  }
  if (tempo) given.set("tempo", String(Math.round(tempo * 10) / 10));
  if ((range || tempo) && !isFirst) given.set("line", id);
  return given.toString();
}

/** Keeps the address at what is practised; going back in the browser still leaves the page. */
export function show(id, isFirst, place) {
  const found = query(location.search, id, isFirst, place);
  const address = location.pathname + (found && `?${found}`) + location.hash;
  if (address !== location.pathname + location.search + location.hash) history.replaceState(history.state, "", address);
}
