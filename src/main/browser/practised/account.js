// Joins what this browser remembers to the account of whoever is signed in.

/** Sends these fields. @returns what the account knows then; null where that is not told, and the next page tries again */
async function send(fields, keepalive) {
  try {
    const answer = await fetch("/me/practised", { method: "POST", body: fields, redirect: "error", keepalive });
    return { isOver: answer.status === 401, known: answer.ok ? await answer.json() : null };
  } catch {
    return { isOver: false, known: null };
  }
}

/**
 * @param {import("./marks.js").Marks} marks
 * @param {boolean} signedIn
 * @param {boolean} leaving whether the page is left, which must not break off what is sent
 */
export async function join(marks, signedIn, leaving = false) {
  if (!signedIn) {
    marks.leave();
    return;
  }
  const told = marks.unsent();
  const { isOver, known } = await send(told, leaving);
  if (known) marks.replace(known, told);
  if (isOver) marks.leave(); // the sign-in was ended elsewhere, and the next one may be another's
}
