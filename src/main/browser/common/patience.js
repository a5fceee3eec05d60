// Asks a server again where that helps: a busy one when it says so, a line that is down after a moment.

/** How often a busy server is asked, and how many seconds one waits for it at most (RFC 9110 section 10.2.3). */
const TRIES = 6;
const LONGEST = 20;
/** Seconds before something that did not come is asked for again; twice that before the next time. */
const MOMENT = 0.7;
/** Seconds without a byte after which a request is given up. */
const STALLED = 15;

/** What the server does not give. */
export class Refused extends Error {
  /** @param {number} status @param {string | URL} address @param {number} [after] seconds after which it may be asked again */
  constructor(status, address, after = Infinity) {
    super(`${status} for ${address}`);
    this.status = status;
    this.after = after;
  }

  /** Whether it is a matter of time. */
  get isBusy() {
    return this.status === 429 || this.status === 503;
  }
}

/**
 * An answer that the server gives.
 * @param {string | URL} address
 * @param {RequestInit} [ask]
 */
export async function asked(address, ask) {
  const answer = await fetch(address, ask);
  if (!answer.ok) throw new Refused(answer.status, address, Number(answer.headers.get("Retry-After") ?? Infinity));
  return answer;
}

/**
 * The bytes of an answer, broken off where none come for so long: a telephone that changes its net leaves a request behind
 * that neither ends nor fails.
 * @param {string | URL} address
 * @param {RequestInit} [ask]
 * @param {number} [longest] seconds
 */
export async function received(address, ask, longest = STALLED) {
  const stalled = new AbortController();
  let timer = 0;
  const wait = () => {
    clearTimeout(timer);
    timer = setTimeout(() => stalled.abort(new DOMException("nothing comes", "TimeoutError")), 1000 * longest);
  };
  wait();
  try {
    const answer = await asked(address, { ...ask, signal: stalled.signal });
    return { status: answer.status, bytes: await all(answer, wait) };
  } finally {
    clearTimeout(timer);
  }
}

/** @param {string | URL} address @param {number} [longest] seconds without a byte of it */
export async function receivedJson(address, longest) {
  const { bytes } = await received(address, {}, longest);
  return JSON.parse(new TextDecoder().decode(bytes));
}

/** @param {Response} answer @param {() => void} came is told of each piece */
async function all(answer, came) {
  const pieces = [];
  const reader = answer.body?.getReader();
  for (let read = await reader?.read(); read?.value; read = await reader?.read()) {
    came();
    pieces.push(/** @type {Uint8Array<ArrayBuffer>} */ (read.value));
  }
  return new Blob(pieces).arrayBuffer();
}

/**
 * Does what hangs on a server. A busy one names a time after which it is asked again; where a line is down or a server
 * fails, it is tried `again` so often.
 *
 * @template T
 * @param {() => Promise<T>} task
 * @param {{again?: number, signal?: AbortSignal | null}} [how]
 * @returns {Promise<T>}
 */
export async function patiently(task, { again = 0, signal } = {}) {
  for (let tried = 1;; tried++) {
    try {
      return await task();
    } catch (problem) {
      const seconds = secondsUntil(problem, tried, again);
      if (seconds === null || signal?.aborted) throw problem;
      await pause(seconds, signal);
    }
  }
}

/** Until the next try; null where there is none. */
function secondsUntil(problem, tried, again) {
  if (problem instanceof Refused && problem.isBusy && problem.after <= LONGEST) {
    return tried < TRIES ? problem.after : null;
  }
  const isForGood = problem instanceof Refused && problem.status < 500;
  return isForGood || tried > again ? null : tried * MOMENT;
}

function pause(seconds, signal) {
  return new Promise((done, failed) => {
    setTimeout(done, 1000 * seconds);
    signal?.addEventListener("abort", () => failed(signal.reason));
  });
}
