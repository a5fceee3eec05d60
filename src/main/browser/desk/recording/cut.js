/** A stretch of a sound, in one channel. */
export function cut(context, sound, from, to) {
  const begin = Math.round(from * sound.sampleRate);
  const length = Math.max(1, Math.round(to * sound.sampleRate) - begin);
  const out = context.createBuffer(1, length, sound.sampleRate);
  const samples = out.getChannelData(0);
  for (let c = 0; c < sound.numberOfChannels; c++) {
    const channel = sound.getChannelData(c).subarray(begin, begin + length);
    for (let i = 0; i < channel.length; i++) samples[i] += channel[i] / sound.numberOfChannels;
  }
  return out;
}
