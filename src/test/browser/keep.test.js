// What a copy on the reader's device is made of, and how its sounds are cut as a server would cut them.
import { deepEqual, equal, rejects } from "node:assert/strict";
import { bring, bringAll } from "../../main/browser/keep/fetching.js";
import { keptAddress, keptManifest, keptPage, neighbours, soundsOf } from "../../main/browser/keep/plan.js";
import { bytesOf, cut } from "../../main/browser/keep/range.js";

// RFC 9110 section 14.1.2 has these of a representation of 10000 bytes
Deno.test("ranges are read as the standard has them", () => {
  deepEqual(bytesOf("bytes=0-499", 10000), { first: 0, last: 499 });
  deepEqual(bytesOf("bytes=500-999", 10000), { first: 500, last: 999 });
  deepEqual(bytesOf("bytes=-500", 10000), { first: 9500, last: 9999 });
  deepEqual(bytesOf("bytes=9500-", 10000), { first: 9500, last: 9999 });
  deepEqual(bytesOf("bytes=0-0", 10000), { first: 0, last: 0 });
  deepEqual(bytesOf("bytes=-20000", 10000), { first: 0, last: 9999 }, "a suffix longer than the whole is the whole");
  deepEqual(bytesOf("bytes=9000-20000", 10000), { first: 9000, last: 9999 });
});

// section 14.2: a server may ignore a field of Range; section 14.1.2: which ranges cannot be satisfied
Deno.test("what is no single range is ignored, and what lies behind the end is refused", () => {
  for (const field of [null, "bytes=0-0,-1", "bytes=500-499", "bytes=-", "lines=1-2", "bytes=a-b"]) {
    equal(bytesOf(field, 10000), null, String(field));
  }
  equal(bytesOf("bytes=10000-", 10000), "none");
  equal(bytesOf("bytes=-0", 10000), "none");
});

// sections 15.3.7 and 15.5.17: 206 names its bytes and the whole, 416 the whole alone
Deno.test("a part says which it is", async () => {
  const asked = (Range) => new Request("https://site.example/play/a", { headers: Range ? { Range } : {} });
  const whole = () => new Response("0123456789", { headers: { "Content-Type": "audio/flac" } });
  const part = await cut(asked("bytes=2-4"), whole());
  deepEqual([part.status, part.headers.get("Content-Range"), await part.text()], [206, "bytes 2-4/10", "234"]);
  equal(part.headers.get("Content-Type"), "audio/flac");
  const none = await cut(asked("bytes=10-"), whole());
  deepEqual([none.status, none.headers.get("Content-Range")], [416, "bytes */10"]);
  deepEqual(await (await cut(asked(), whole())).text(), "0123456789");
  const all = await cut(asked("bytes=0-1,3-4"), whole());
  deepEqual([all.status, await all.text()], [200, "0123456789"]);
});

const tempo = (percent, end) => ({
  percent,
  countIn: { url: `click-${percent}.flac`, offset: 0, bytes: 90 },
  files: {
    bass: { url: `bass-${percent}.flac`, segments: [{ offset: 0, bytes: 40 }, { offset: 40, bytes: end - 40 }, {}] },
    click: { url: `click-${percent}.flac`, segments: [{ offset: 90, bytes: 10 }] },
  },
});
const manifest = { stems: ["bass", "click"], tempos: [tempo(60, 200), tempo(100, 120)], tracks: [{ url: "take.wav" }] };

Deno.test("the sound of the full tempo is kept, each file once, with its size", () => {
  deepEqual(soundsOf(manifest, "https://site.example/play/r/line-play.json"), [
    { address: "https://site.example/play/r/bass-100.flac", bytes: 120 },
    { address: "https://site.example/play/r/click-100.flac", bytes: 100 },
  ]);
});

Deno.test("a copy offers all tempos, from one take, and no recordings", () => {
  const { percents, tempos, tracks, stems } = keptManifest(manifest);
  deepEqual(percents, [60, 100]);
  deepEqual(tempos.map(({ percent }) => percent), [100]);
  deepEqual([tracks, stems], [[], manifest.stems]);
});

Deno.test("a line without its full tempo keeps the fastest", () => {
  const slow = { ...manifest, tempos: [tempo(60, 200), tempo(80, 180)] };
  deepEqual(keptManifest(slow).tempos.map(({ percent }) => percent), [80]);
});

Deno.test("the page of a copy says since when, and plays from the copy", () => {
  const html = '<!DOCTYPE html>\n<html lang="en"><div data-manifest="/play/r/line-play.json" id="a"></div></html>';
  equal(
    keptPage(html, "2026-11-29T16:00:00.000Z"),
    '<!DOCTYPE html>\n<html data-kept="2026-11-29T16:00:00.000Z" lang="en">' +
      '<div data-manifest="/play/r/line-play.json?kept" id="a"></div></html>',
  );
  equal(keptAddress("/play/r/line-play.json"), "/play/r/line-play.json?kept");
});

Deno.test("typefaces of a style sheet and the worker of a script are found, each once", () => {
  const css =
    'src:url("/assets/text-bold.woff2?v=0a1b")format("woff2")}@font-face{src:url(/assets/text-bold.woff2?v=0a1b)';
  const base = "https://site.example/assets/groundbass.css?v=1";
  deepEqual(neighbours(css, base), ["https://site.example/assets/text-bold.woff2?v=0a1b"]);
  const script = 'new Worker(new URL("/assets/stretch-worker.js?v=9c",import.meta.url));x("/assets/stretch-worker.js")';
  deepEqual(neighbours(script, base), ["https://site.example/assets/stretch-worker.js?v=9c"]);
});

/** A copy in memory, and a server that answers from `answers` in their order. */
async function fetching(answers, task) {
  const kept = new Map();
  const cache = /** @type {any} */ ({
    match: (address) => Promise.resolve(kept.get(address)?.clone()),
    put: (address, answer) => Promise.resolve(kept.set(address, answer)),
  });
  const asked = [];
  const real = globalThis.fetch;
  globalThis.fetch = (address) => {
    asked.push(address);
    return Promise.resolve(answers[asked.length - 1]());
  };
  try {
    return { found: await task(cache), asked, kept };
  } finally {
    globalThis.fetch = real;
  }
}

// RFC 9110 section 10.2.3: after how many seconds a busy server wants to be asked again
Deno.test("a busy server is asked again when it wants to be", async () => {
  const busy = () => new Response("", { status: 503, headers: { "Retry-After": "0" } });
  const { found, asked } = await fetching([busy, busy, () => new Response("here")], (cache) => bring(cache, "a", {}));
  deepEqual([await found.text(), asked.length], ["here", 3]);
});

Deno.test("what is refused for good is not asked again", async () => {
  for (const answer of [() => new Response("", { status: 410 }), () => new Response("", { status: 503 })]) {
    await rejects(fetching([answer], (cache) => bring(cache, "a", {})), { name: "Error" });
  }
});

Deno.test("what is here is not fetched again, and how much has come is told to the end", async () => {
  const told = [];
  const parts = [{ address: "a", bytes: 10 }, { address: "b", bytes: 30 }];
  const { asked, kept } = await fetching([() => new Response("b")], async (cache) => {
    await cache.put("a", new Response("a"));
    await bringAll(cache, parts, {}, (done, all) => told.push([done, all]));
  });
  deepEqual([asked, [...kept.keys()].sort()], [["b"], ["a", "b"]]);
  deepEqual(told.at(-1), [40, 40]);
});
