// A device, and the server that it asks, as far as what keeps lessons wants to know of them (W3C Service Workers, sections
// "Cache" and "CacheStorage").
import { having, nothing, thing } from "../desk/stand-ins.js";

export const SITE = "https://site.example";
export const LESSON = "/series/four-ropes/1";

const addressOf = (asked) => new URL(asked.url ?? asked, SITE).href;

/** Keeps answers; what is put in after it was removed is lost with it. */
class Answers {
  #device;
  #held = new Map();

  constructor(device) {
    this.#device = device;
  }

  match(asked) {
    return Promise.resolve(this.#held.get(addressOf(asked))?.clone());
  }

  async put(asked, answer) {
    const body = await answer.arrayBuffer();
    if (body.byteLength > this.#device.room) throw new DOMException("no room", "QuotaExceededError");
    this.#device.room -= body.byteLength;
    this.#held.set(addressOf(asked), new Response(body, answer));
  }

  delete(asked) {
    return Promise.resolve(this.#held.delete(addressOf(asked)));
  }

  keys() {
    return Promise.resolve([...this.#held.keys()].map((url) => ({ url })));
  }

  matchAll() {
    return Promise.resolve([...this.#held.values()].map((answer) => answer.clone()));
  }
}

/** What a device has: caches, the worker, a net or none. */
export class Device {
  /** Bytes that still fit. */
  room = Infinity;
  hasNet = true;
  /** @type {object | undefined} what lets one window wait for another */
  locks = undefined;
  /** Addresses in the order in which they were asked for. */
  asked = [];
  hasWorker = false;
  /** Of the server: what answers at a path, with its query. */
  server = new Map();
  #kept = new Map();

  /** @param {Record<string, () => Response | Promise<Response>>} server */
  constructor(server) {
    for (const [path, answer] of Object.entries(server)) this.server.set(path, answer);
  }

  caches = {
    keys: () => Promise.resolve([...this.#kept.keys()]),
    open: (name) => {
      if (!this.#kept.has(name)) this.#kept.set(name, new Answers(this));
      return Promise.resolve(this.#kept.get(name));
    },
    match: (asked, { cacheName }) => Promise.resolve(this.#kept.get(cacheName)?.match(asked)),
    delete: (name) => Promise.resolve(this.#kept.delete(name)),
  };

  fetch = (asked) => {
    const { pathname, search } = new URL(addressOf(asked));
    this.asked.push(pathname + search);
    if (!this.hasNet) return Promise.reject(new TypeError("no net"));
    const answer = this.server.get(pathname + search);
    return Promise.resolve(answer ? answer() : new Response("", { status: 404 }));
  };

  /** Does something on this device. @param {() => Promise<void>} work @param {object} more names that stand for others */
  in(work, more = {}) {
    const worker = { unregister: () => Promise.resolve(this.hasWorker = false) };
    const serviceWorker = {
      register: () => Promise.resolve(this.hasWorker = true),
      getRegistration: () => Promise.resolve(this.hasWorker ? worker : undefined),
    };
    return having({
      ...nothing(),
      caches: this.caches,
      document: { documentElement: { lang: "en" } },
      DOMParser: Parser,
      fetch: this.fetch,
      location: { origin: SITE, href: SITE + LESSON, pathname: LESSON },
      navigator: { languages: ["en-GB"], serviceWorker, locks: this.locks },
      ...more,
    }, work);
  }

  /** What a page asks for, or the browser for it. */
  static asks(path, more = {}) {
    return { url: SITE + path, method: "GET", mode: "cors", destination: "", headers: new Headers(), ...more };
  }

  /** What the browser asks for in the place of the page that it shows. */
  static goesTo(path, more = {}) {
    return Device.asks(path, { mode: "navigate", destination: "document", ...more });
  }
}

/** Finds in a page what it names. */
class Parser {
  parseFromString(html) {
    const all = (form, made) => [...html.matchAll(form)].map(([, found]) => made(found));
    const naming = (name) => ({ getAttribute: () => name });
    const [, lesson, release] = html.match(/data-keep="(\w+) (\w+)"/) ?? [];
    return {
      querySelector: () => lesson ? thing({ dataset: { lesson, release, title: "Four Ropes" } }) : null,
      querySelectorAll: (selector) => {
        if (selector === "[data-manifest]") {
          return all(/data-manifest="([^"]+)"/g, (manifest) => thing({ dataset: { manifest } }));
        }
        return selector.startsWith("script") ? all(/src="([^"]+)"/g, naming) : all(/href="([^"]+)"/g, naming);
      },
    };
  }
}

const manifest = (release) => ({
  stems: ["bass"],
  tempos: [{
    percent: 100,
    countIn: { url: "click-100.flac", offset: 0, bytes: 10 },
    files: { bass: { url: "bass-100.flac", segments: [{ offset: 0, bytes: 1000 }] } },
  }],
  tracks: [],
  release,
});

const text = (body, type) => () => new Response(body, { headers: { "Content-Type": type } });

const full = { tempos: [{ percent: 100, countIn: { url: "click-1.flac", offset: 0, bytes: 5 }, files: {} }] };

/** The answers of a server whose lesson sounds without loss only where that is asked for. */
export function lessonInOpus() {
  const server = lessonOnServer();
  const { tempos: [tempo], ...more } = manifest("first");
  const small = { ...more, tempos: [{ ...tempo, exact: "line-100-exact.json" }] };
  server["/play/first/line-play.json"] = text(JSON.stringify(small), "application/json");
  server["/play/first/line-100-exact.json"] = text(JSON.stringify(full), "application/json");
  server["/play/first/click-1.flac"] = text("c".repeat(5), "audio/flac");
  return server;
}

/** The answers of a server that has one lesson, in a state of that name. */
export function lessonOnServer(release = "first") {
  return {
    [LESSON]: text(
      `<html lang="en"><p data-keep="four ${release}"><link href="/assets/sheet.css?v=1">` +
        `<script src="/assets/play.js?v=1"></script><div data-manifest="/play/${release}/line-play.json"></div></html>`,
      "text/html",
    ),
    "/kept": text('<html lang="en"><script src="/assets/kept.js?v=1"></script>The list</html>', "text/html"),
    "/assets/sheet.css?v=1": text('src:url("/assets/text.woff2?v=1")', "text/css"),
    "/assets/text.woff2?v=1": text("letters", "font/woff2"),
    "/assets/play.js?v=1": text("play()", "text/javascript"),
    "/assets/kept.js?v=1": text("list()", "text/javascript"),
    [`/play/${release}/line-play.json`]: text(JSON.stringify(manifest(release)), "application/json"),
    [`/play/${release}/bass-100.flac`]: text("b".repeat(1000), "audio/flac"),
    [`/play/${release}/click-100.flac`]: text("c".repeat(10), "audio/flac"),
    [`/sheet/${release}/line/both/36`]: text("<svg>36</svg>", "image/svg+xml"),
    [`/sheet/${release}/line/both/80`]: text("<svg>80</svg>", "image/svg+xml"),
  };
}

/** The sheets that a screen wants of it. */
export const sheets = (release = "first") => () =>
  [36, 80].map((width) => ({ address: `${SITE}/sheet/${release}/line/both/${width}`, bytes: 20 }));
