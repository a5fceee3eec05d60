// What a browser plays that decodes Opus until it fails at one, or whose loudspeaker has another rate than the sound.
import { deepEqual, equal, rejects } from "node:assert/strict";
import { Stems } from "../../../main/browser/play/stems.js";
import { Score } from "../../../main/browser/play/score.js";
import { having } from "../desk/stand-ins.js";

const RATE = 44100;
const decoding = { rate: 48000, skip: 960 };

const tempo = (ending, more) => ({
  percent: 100,
  bpm: 60,
  countIn: { url: `click.${ending}`, offset: 0, bytes: 4, soundFrames: 10, decoding: more.decoding },
  files: { bass: { url: `bass.${ending}`, segments: [{ offset: 0, bytes: 4, frames: 10 }], ...more } },
  bars: [{ bar: 1, pass: 1, startFrame: 0, frames: 10, counts: [{ at: "0", frame: 0, count: "1" }], events: [] }],
});

const small = { ...tempo("opus", { decoding }), exact: "exact.json" };
const whole = tempo("flac", {});

/** A browser that decodes the stroke, and says of a sound in Opus that it cannot when it is told to. */
class Browser {
  fetched = [];
  /** @type {(() => void)[]} in the order in which they were begun */
  failing = [];
  /** How often it says so. */
  busy = 0;
  #isTried = false;

  names() {
    const decode = () => this.decode();
    return {
      fetch: (address) => this.fetch(new URL(address).pathname.slice(1)),
      OfflineAudioContext: class {
        decodeAudioData = decode;
      },
    };
  }

  fetch(name) {
    this.fetched.push(name);
    if (this.busy-- > 0) {
      return Promise.resolve(new Response("", { status: 503, headers: { "Retry-After": "0" } }));
    }
    return Promise.resolve(new Response(name === "exact.json" ? JSON.stringify({ tempos: [whole] }) : name.slice(-4)));
  }

  refuse(address) {
    this.fetched.push(address);
    return Promise.resolve(new Response("", { status: 410 }));
  }

  decode() {
    if (this.#isTried) return new Promise((_, fail) => this.failing.push(() => fail(new Error("no Opus"))));
    this.#isTried = true;
    const samples = new Float32Array(1920);
    samples[1440] = 1;
    return Promise.resolve({ sampleRate: 48000, length: 1920, getChannelData: () => samples });
  }
}

const loudspeaker = (sampleRate) => ({
  sampleRate,
  decodeAudioData: () => Promise.resolve({ length: 10, numberOfChannels: 1 }),
});

function stemsAt(rate) {
  const score = Score.of({ rate: RATE, headroom: 0, stems: ["bass"], tempos: [small] });
  const stems = new Stems(score, "https://site.example/");
  stems.open(loudspeaker(rate));
  return { stems, take: score.takes[0] };
}

const BAR = { index: 0, percent: 100 };

async function until(isTrue) {
  for (let turns = 0; !isTrue() && turns < 100; turns++) await new Promise((done) => setTimeout(done));
}

Deno.test("where the loudspeaker has another rate than the sound, it comes without loss", async () => {
  const browser = new Browser();
  await having(browser.names(), async () => {
    const { stems } = stemsAt(48000);
    await stems.load([BAR]);
    deepEqual(browser.fetched, ["exact.json", "bass.flac"]);
  });
});

// RFC 9110 section 10.2.3: after how many seconds a busy server wants to be asked again
Deno.test("a server that is busy making the sound without loss is asked again as often as for a copy", async () => {
  const browser = new Browser();
  browser.busy = 4;
  await having(browser.names(), async () => {
    const { stems } = stemsAt(48000);
    await stems.load([BAR]);
    deepEqual(browser.fetched, [...Array(5).fill("exact.json"), "bass.flac"]);
  });
});

Deno.test("what a server does not give is asked for once", async () => {
  const browser = new Browser();
  await having({ fetch: (address) => browser.refuse(address) }, async () => {
    const { stems } = stemsAt(48000);
    await rejects(stems.load([BAR]), { status: 410 });
    equal(browser.fetched.length, 1);
  });
});

// after it no Opus is tried any more, so that it comes last
Deno.test("a bar that fails after the count-in did is played without loss as well", async () => {
  const browser = new Browser();
  await having(browser.names(), async () => {
    const { stems, take } = stemsAt(RATE);
    const bar = stems.load([BAR]);
    const click = stems.countIn(take);
    await until(() => browser.failing.length === 2);
    browser.failing[1]();
    await click;
    equal(take.exact, null);
    browser.failing[0]();
    await bar;
    equal(stems.ready(BAR).length, 1);
  });
});
