// Sets the lesson's video into the page when it is asked for. Until then the other site hears nothing.
import { byId } from "./common/page.js";

const link = byId("video-play", HTMLAnchorElement);

link.addEventListener("click", (event) => {
  if (event.ctrlKey || event.metaKey || event.shiftKey) return; // asked for in a window of its own
  event.preventDefault();
  const frame = document.createElement("iframe");
  frame.src = link.href;
  frame.title = link.dataset.title ?? "";
  frame.className = "video-frame";
  frame.referrerPolicy = "no-referrer";
  frame.allow = "fullscreen";
  frame.setAttribute("sandbox", "allow-scripts allow-same-origin allow-presentation allow-popups");
  link.parentElement?.replaceWith(frame);
  frame.focus();
});
