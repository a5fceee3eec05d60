// Places of a line as a sentence has them. No page.

/** "5.2" as it is, and "5.2x2", the second time that bar 5 is played, in words: `say("timeOf", place, time)`. */
export function placeWords(place, say) {
  const [, where, time] = /^(.*?)x(\d+)$/.exec(place) ?? [null, place, ""];
  return time ? say("timeOf", where, time) : where;
}

/** Two places as what is played between them; one where they are the same. */
export function rangeWords([from, to], say) {
  return from === to
    ? say("rangeOne", placeWords(from, say))
    : say("range", placeWords(from, say), placeWords(to, say));
}
