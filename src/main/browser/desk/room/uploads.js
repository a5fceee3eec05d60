// Sends recordings without leaving the room.
import { byId } from "../../common/page.js";

const LARGEST = 100_000_000; // bytes

/** @param {() => void} arrived called when the list of recordings has one more */
export function sendRecordings(arrived) {
  const upload = document.getElementById("upload");
  if (!upload) return;
  const file = byId("file", HTMLInputElement);
  upload.addEventListener("submit", (event) => {
    event.preventDefault();
    const chosen = file.files?.[0];
    if (!chosen) return;
    if (chosen.size > LARGEST) tell(file.dataset.tooLarge);
    else send(file, chosen, arrived);
  });
}

function tell(text) {
  byId("file-problem", HTMLElement).textContent = text;
}

function send(file, chosen, arrived) {
  const bar = byId("upload-progress", HTMLProgressElement);
  const path = byId("room", HTMLFormElement).dataset.path;
  const request = new XMLHttpRequest(); // fetch does not tell how much is sent
  request.open("PUT", `${path}/tracks?name=${encodeURIComponent(chosen.name)}`);
  request.upload.addEventListener("progress", (event) => {
    bar.value = event.lengthComputable ? (100 * event.loaded) / event.total : 0;
  });
  request.addEventListener("loadend", () => {
    bar.hidden = true;
    if (request.status === 201) take(request.responseText, file, arrived);
    else tell(reason(request, file));
  });
  bar.hidden = false;
  bar.value = 0;
  tell("");
  request.send(chosen);
}

function take(row, file, arrived) {
  const item = document.createElement("li");
  item.innerHTML = row; // escaped by the server, as every page is
  byId("track-list", HTMLElement).append(item);
  file.value = "";
  byId("live-word", HTMLElement).textContent = file.dataset.done ?? "";
  arrived();
}

function reason(request, file) {
  if (request.status === 401) return byId("room", HTMLFormElement).dataset.expired;
  try {
    return JSON.parse(request.responseText).detail;
  } catch {
    return file.dataset.failed;
  }
}
