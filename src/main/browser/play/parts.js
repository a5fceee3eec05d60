// Parts of files, fetched by HTTP Range (RFC 9110 section 14): neighbours in one request, nothing twice.
import { patiently, received } from "../common/patience.js";
import { Kept } from "./kept.js";

const MOST_BYTES = 24_000_000;
/** How often what did not come is asked for again. */
export const AGAIN = 2;

export class Parts {
  #base;
  #kept = new Kept(MOST_BYTES);
  #coming = new Map();

  /** `base` is the address that the files' addresses are relative to. */
  constructor(base) {
    this.#base = base;
  }

  /** Begins to fetch those of `segments` (`{offset, bytes}` of one file) that are neither here nor on their way. */
  fetch(url, segments) {
    const missing = new Map();
    for (const part of segments) if (part.bytes > 0 && !this.#known(url, part)) missing.set(part.offset, part);
    const inOrder = [...missing.values()].sort((a, b) => a.offset - b.offset);
    for (const run of neighbours(inOrder)) this.#request(url, run);
  }

  /** The bytes of one segment, as a buffer of the caller's own. */
  async bytes(url, segment) {
    this.fetch(url, [segment]);
    const key = keyOf(url, segment);
    const buffer = this.#kept.get(key) ?? (await this.#coming.get(key));
    return buffer.slice(0);
  }

  #known(url, part) {
    const key = keyOf(url, part);
    return this.#coming.has(key) || this.#kept.get(key) !== undefined;
  }

  #request(url, run) {
    const first = run[0].offset;
    const last = run[run.length - 1];
    const answer = fetchRange(new URL(url, this.#base), first, last.offset + last.bytes - 1);
    for (const part of run) this.#await(keyOf(url, part), part, answer);
  }

  #await(key, part, answer) {
    const buffer = answer.then(({ body, start }) => body.slice(part.offset - start, part.offset - start + part.bytes));
    this.#coming.set(key, buffer);
    buffer
      .then((bytes) => this.#kept.put(key, bytes, bytes.byteLength))
      .catch(() => {}) // whoever waits for the bytes hears of it
      .finally(() => this.#coming.delete(key));
  }
}

function keyOf(url, part) {
  return `${url}@${part.offset}`;
}

function neighbours(parts) {
  const runs = [];
  for (const part of parts) {
    const run = runs[runs.length - 1];
    const last = run && run[run.length - 1];
    if (last && last.offset + last.bytes === part.offset) run.push(part);
    else runs.push([part]);
  }
  return runs;
}

function fetchRange(url, first, last) {
  return patiently(async () => {
    const { status, bytes } = await received(url, { headers: { Range: `bytes=${first}-${last}` } });
    // a server may send all of a file instead (section 14.2)
    return { body: bytes, start: status === 206 ? first : 0 };
  }, { again: AGAIN });
}
