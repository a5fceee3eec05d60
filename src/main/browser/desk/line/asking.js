// Asking the server about a line: every question comes to an answer or to a word for why there is none.

const TOO_LONG = 20_000; // milliseconds that an answer may take

/**
 * Why there is no answer, as `data-word` of the page has it: the sign-in has run out, the server has too much to do and
 * wants to be asked again after so many milliseconds, or it does not answer. Empty where there is one.
 * @typedef {{ word: "" | "expired" | "busy" | "offline", wait: number }} Why
 */

/** @type {Why} */
const OFFLINE = { word: "offline", wait: 0 };

/** @param {Response} answer @returns {Why} */
function whyNot(answer) {
  if (answer.ok) return { word: "", wait: 0 };
  if (answer.status === 401) return { word: "expired", wait: 0 };
  if (answer.status === 503) return { word: "busy", wait: 1000 * Number(answer.headers.get("Retry-After") ?? 5) };
  return OFFLINE;
}

/**
 * Never throws; what comes after the head of an answer may still break off.
 * @param {string} address
 * @param {Record<string, string>} fields
 * @returns {Promise<Why & { answer: Response | null }>}
 */
export async function post(address, fields) {
  const signal = AbortSignal.timeout(TOO_LONG);
  try {
    const answer = await fetch(address, { method: "POST", body: new URLSearchParams(fields), signal });
    return { answer: answer.ok ? answer : null, ...whyNot(answer) };
  } catch {
    return { answer: null, ...OFFLINE };
  }
}

/**
 * The same, read to its end.
 * @param {string} address
 * @param {Record<string, string>} fields
 * @returns {Promise<Why & { value: any }>} null where there is no answer
 */
export async function postForJson(address, fields) {
  const { answer, ...why } = await post(address, fields);
  try {
    return { value: answer && await answer.json(), ...why };
  } catch {
    return { value: null, ...OFFLINE };
  }
}
