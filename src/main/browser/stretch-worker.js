// Stretches away from the page's own thread, so that neither light nor sound falters meanwhile.
import { stretch } from "./common/stretch.js";

self.addEventListener("message", ({ data }) => {
  const channels = stretch(data.channels, data.rate, data.longer, data.strokes);
  self.postMessage({ id: data.id, channels }, channels.map((channel) => channel.buffer));
});
