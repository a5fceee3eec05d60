// Makes sound longer or shorter and keeps its pitch: waveform-similarity overlap-add (Verhelst and Roelands, ICASSP
// 1993). Pieces of the sound are laid anew at an even distance, each taken from where it continues the one before it
// best. Pure; runs in a worker, and in tests anywhere.

/** Seconds: half a window, and how far a piece may be looked for. A low B lasts 32 ms a period (ISO 16, 31 Hz). */
const LOW = { half: 0.035, search: 0.018 };
/** Strokes need short windows, or they blur. */
const STROKES = { half: 0.012, search: 0.006 };

const COARSE = 8;

/**
 * `channels` as Float32Arrays of one length, `longer` times as long. The first half window stays as it is, so that an
 * attack at the very start is not touched.
 */
export function stretch(channels, rate, longer, strokes = false) {
  const length = channels[0].length;
  if (longer === 1 || length === 0) return channels.map((channel) => channel.slice());
  const { half, search } = strokes ? STROKES : LOW;
  const hop = Math.round(half * rate);
  const reach = Math.round(search * rate);
  const out = channels.map(() => new Float32Array(Math.round(length * longer)));
  const guide = new Guide(channels);
  let taken = 0;
  copy(channels, out, 0, 0, hop);
  for (let at = hop; at < out[0].length; at += hop) {
    const natural = taken + hop;
    const next = guide.best(Math.round(at / longer), natural, hop, reach);
    crossfade(channels, out, natural, next, at, hop);
    taken = next;
  }
  return out;
}

function copy(channels, out, from, at, count) {
  channels.forEach((channel, c) => out[c].set(channel.subarray(from, from + Math.min(count, out[c].length - at)), at));
}

/** From what would have come to what comes now, over one hop: equal sounds stay exactly as they are. */
function crossfade(channels, out, old, next, at, hop) {
  channels.forEach((channel, c) => {
    const end = Math.min(hop, out[c].length - at);
    for (let i = 0; i < end; i++) {
      const share = i / hop;
      const before = channel[old + i] ?? 0;
      const after = channel[next + i] ?? 0;
      out[c][at + i] = before + share * (after - before);
    }
  });
}

/** Finds the place that continues another best. */
class Guide {
  constructor(channels) {
    this.fine = mix(channels);
    this.coarse = thin(this.fine, COARSE);
  }

  /** Within `reach` of `target`: where the sound is most like that at `natural`. */
  best(target, natural, hop, reach) {
    const last = this.fine.length - 1;
    const low = Math.max(0, target - reach);
    const high = Math.min(last, target + reach);
    if (natural >= low && natural <= high) return natural;
    if (high <= low || natural >= last) return Math.max(0, Math.min(target, last));
    const rough = COARSE * search(this.coarse, natural / COARSE, hop / COARSE, low / COARSE, high / COARSE);
    return search(this.fine, natural, hop, Math.max(low, rough - COARSE), Math.min(high, rough + COARSE), 2);
  }
}

function search(sound, natural, count, low, high, stride = 1) {
  const start = Math.round(natural);
  const end = Math.min(Math.round(count), sound.length - start);
  let best = Math.ceil(low);
  let most = -Infinity;
  for (let at = Math.ceil(low); at <= high; at++) {
    const like = likeness(sound, start, at, Math.min(end, sound.length - at), stride);
    if (like > most) {
      most = like;
      best = at;
    }
  }
  return best;
}

/** Normalised cross-correlation; the wanted sound's own energy is the same for all and left out. */
function likeness(sound, wanted, at, count, stride) {
  let product = 0;
  let energy = 1e-9;
  for (let i = 0; i < count; i += stride) {
    product += sound[wanted + i] * sound[at + i];
    energy += sound[at + i] * sound[at + i];
  }
  return product / Math.sqrt(energy);
}

function mix(channels) {
  if (channels.length === 1) return channels[0];
  return channels[0].map((_, i) => channels.reduce((sum, channel) => sum + channel[i], 0));
}

/** One sample for `by`: their mean, which is low-pass enough for a first look. */
function thin(sound, by) {
  const out = new Float32Array(Math.floor(sound.length / by));
  for (let i = 0; i < out.length; i++) {
    let sum = 0;
    for (let j = 0; j < by; j++) sum += sound[i * by + j];
    out[i] = sum / by;
  }
  return out;
}
