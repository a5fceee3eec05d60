// Sound in its smaller form: decoded at a rate of its own, where each frame stands for one of the sound, and cut to these.

/** Whether this browser has failed at it. */
let failed = false;

export function canBeSmall() {
  return !failed && typeof OfflineAudioContext !== "undefined";
}

/**
 * The sound as the other form gives it, frame for frame; null where this browser cannot decode it, or plays at another
 * rate than the sound's, so that frames would be reckoned out of others.
 *
 * @param {BaseAudioContext} context that plays it
 * @param {ArrayBuffer} bytes
 * @param {{frames: number, rate: number, skip: number}} segment
 * @param {number} sounds the rate of the sound
 * @returns {Promise<AudioBuffer | null>}
 */
export async function decodeSmall(context, bytes, { frames, rate, skip }, sounds) {
  if (failed || context.sampleRate !== sounds) return null;
  try {
    const decoded = await new OfflineAudioContext(1, 1, rate).decodeAudioData(bytes);
    if (decoded.sampleRate !== rate || decoded.length < skip + frames) throw new Error("frames are missing");
    const buffer = new AudioBuffer({ length: frames, numberOfChannels: 1, sampleRate: context.sampleRate });
    buffer.copyToChannel(decoded.getChannelData(0).subarray(skip, skip + frames), 0);
    return buffer;
  } catch {
    failed = true;
    return null;
  }
}
