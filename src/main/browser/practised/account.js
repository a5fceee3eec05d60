// Joins what this browser remembers to the account of whoever is signed in.

/** Sends these fields; null where that was not possible, and nothing has changed. */
async function send(fields) {
  try {
    const answer = await fetch("/me/practised", { method: "POST", body: fields, redirect: "error" });
    return answer.ok ? await answer.json() : null;
  } catch {
    return null; // nobody is signed in any more, or no net: the next page tries again
  }
}

/**
 * @param {import("./marks.js").Marks} marks
 * @param {boolean} signedIn
 * @param {[string, string][]} more fields that are to be told as well
 */
export async function join(marks, signedIn, more = []) {
  if (!signedIn) {
    marks.leave();
    return;
  }
  const fields = marks.unsent();
  for (const [name, value] of more) fields.append(name, value);
  const known = await send(fields);
  if (known) marks.replace(known);
}
