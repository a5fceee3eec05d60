// Sound that comes as Opus: decoded at a rate of its own, where each frame stands for one of the sound, and cut to these.

/** A stroke that sets in at frame 1440 of 1920, as `audio.Opus` encodes it: what every browser is tried with. */
const STROKE =
  "T2dnUwACAAAAAAAAAAABAAAAAAAAAIRs2SQBE09wdXNIZWFkAQEAAIC7AAAAAABPZ2dTAAAAAAAAAAAAAAEAAAABAAAATP4yHQEaT3B1c1RhZ3MK" +
  "AAAAZ3JvdW5kYmFzcwAAAABPZ2dTAASABwAAAAAAAAEAAAACAAAAxpMrigMD/zr4//74f05echOOV5Ffn2rWMhEKiTyiRhUUeaEVWK4RCaZbE3iZ" +
  "Jids+seopEjCHf27dkOlDrspUdT0CpjFhU05jI8vlwX5QIkN2RvEJJ2T58DeiaFn+DFkoAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA" +
  "AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA" +
  "AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAABv1ltEl8Jw9XIs2fhovfNDMJzdguqQ61T7yBlfDysIAAAA" +
  "Z8nRF0Ggz5OBW28BXC6GerccLo/9zQ/q/U29";
const STROKE_RATE = 48000;
const FRAMES = 1920;
const ONSET = 1440;
/** Frames that a decoder may be early or late by: less than anybody hears, and than what one leaves out by itself. */
const NEARLY = 8;

/** Milliseconds after which a browser that does not answer is taken, for now, for one that does not decode it. */
const LONGEST = 5000;

/** @type {Promise<boolean> | null} */
let tried = null;

/** Whether this browser decodes Opus in Ogg, with every frame at its place. */
export function decodesOpus() {
  return tried ??= tryStroke();
}

async function tryStroke() {
  let timer = 0;
  const noAnswer = new Promise((done) => (timer = setTimeout(() => done(null), LONGEST)));
  const found = await Promise.race([decodesStroke(), noAnswer]);
  clearTimeout(timer);
  if (found === null) tried = null; // nothing was found out
  return found === true;
}

async function decodesStroke() {
  try {
    const bytes = Uint8Array.from(atob(STROKE), (letter) => letter.charCodeAt(0));
    const { length, loudest } = heard(await decode(bytes.buffer, STROKE_RATE));
    return length >= FRAMES && Math.abs(loudest - ONSET) <= NEARLY;
  } catch {
    return false;
  }
}

/** @param {AudioBuffer} decoded */
function heard(decoded) {
  const samples = decoded.getChannelData(0);
  const loudest = samples.reduce((best, sample, i) => Math.abs(sample) > Math.abs(samples[best]) ? i : best, 0);
  return { length: decoded.sampleRate === STROKE_RATE ? decoded.length : 0, loudest };
}

/** What is said where the bytes of a sound are none that this browser can decode. */
export class Undecodable extends Error {}

/**
 * The sound as it is without loss, frame for frame. Where it fails this browser is not taken for one that decodes Opus any
 * more.
 *
 * @param {ArrayBuffer} bytes
 * @param {number} frames of the sound
 * @param {{rate: number, skip: number}} decoding
 * @param {number} sounds the rate of the sound
 * @returns {Promise<AudioBuffer>}
 */
export async function decodeOpus(bytes, frames, { rate, skip }, sounds) {
  try {
    const decoded = await decode(bytes, rate);
    if (decoded.sampleRate !== rate || decoded.length < skip + frames) throw new Error("frames are missing");
    const buffer = new AudioBuffer({ length: frames, numberOfChannels: 1, sampleRate: sounds });
    buffer.copyToChannel(decoded.getChannelData(0).subarray(skip, skip + frames), 0);
    return buffer;
  } catch (problem) {
    tried = Promise.resolve(false);
    throw new Undecodable("a sound cannot be decoded", { cause: problem });
  }
}

function decode(bytes, rate) {
  return new OfflineAudioContext(1, 1, rate).decodeAudioData(bytes);
}
