// The beats that are counted before the music begins.

/**
 * What is counted before the music begins with bar `index` and frame `from` of it: `frames` until then, and the beats,
 * `{frame, number, click}` with the frames of the take; `click` is where in the count-in's sound the beat begins.
 * A start inside a bar is counted a whole bar and on to the place, as players do.
 */
export function counted(take, index, from) {
  const { frames, beats } = take.countIn;
  const numbered = numbers(beats);
  if (index === 0 && from === 0) return { frames: take.before, beats: numbered };
  const rest = numbered.filter((beat) => beat.frame < from).map((beat) => ({ ...beat, frame: frames + beat.frame }));
  return { frames: frames + from, beats: [...numbered, ...rest] };
}

/** Counts start anew with each accent. */
function numbers(beats) {
  let number = 0;
  return beats.map(({ frame, accent }) => {
    number = accent ? 1 : number + 1;
    return { frame, number, click: frame };
  });
}

/** Lays the beats from `time` seconds on, each at its place, `longer` times as far apart; returns a function to stop. */
export function layCountIn({ context, output, sound, beats, longer, rate, time }) {
  const sources = beats.map((beat, i) => {
    const source = new AudioBufferSourceNode(context, { buffer: sound });
    source.connect(output);
    source.start(time + (beat.frame * longer) / rate, beat.click / rate, untilNext(beats, i) / rate);
    return source;
  });
  return () => sources.forEach((source) => source.stop());
}

/** A click ends where the next begins in the recorded sound; the last rings. */
function untilNext(beats, i) {
  const next = beats.find((beat) => beat.click > beats[i].click);
  return next ? next.click - beats[i].click : Number.MAX_SAFE_INTEGER;
}
