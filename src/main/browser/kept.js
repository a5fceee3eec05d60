// The list of lessons that are kept on this device. The same page stands in the place of any other while there is no net.
import { byId, element, partsOf, wordsOf } from "./common/page.js";
import { isOffered, notes, remove, removeAll } from "./keep/copies.js";
import { keepOfflinePage } from "./keep/keeping.js";
import { dayWords, sizeWords } from "./keep/words.js";

const place = byId("kept", HTMLElement);
const part = partsOf(place);
const say = wordsOf(byId("kept-words", HTMLTemplateElement).content);

async function show() {
  const kept = await notes();
  // of a lesson whose correction is still on its way, the copy that serves
  const all = kept.filter((note) => note.whole || !kept.some(({ lesson, whole }) => whole && lesson === note.lesson));
  part("nothing").hidden = all.length > 0;
  part("all").hidden = all.length === 0;
  part("total").textContent = say("total", sizeWords(all.reduce((sum, { bytes }) => sum + bytes, 0)));
  part("list").replaceChildren(...all.map(row));
  return all.length;
}

/** @param {import("./keep/copies.js").Note} note */
function row({ lesson, path, title, at, bytes, whole }) {
  const name = element("h2", { class: "practised-name" }, element("a", { href: path, text: title }));
  const what = element("p", { text: whole ? say("of", dayWords(at), sizeWords(bytes)) : say("half") });
  const button = element("button", { type: "button", class: "button-quiet", text: say("remove") });
  button.setAttribute("aria-label", say("removeOf", title));
  button.addEventListener("click", () => change(() => remove(lesson), say("removed", title)));
  return element("li", { class: "practised" }, name, what, button);
}

async function change(task, words) {
  await task();
  await show();
  part("said").textContent = words;
  part("heading").focus();
}

part("instead").hidden = location.pathname === "/kept";
if (await isOffered()) {
  part("away").addEventListener("click", () => change(removeAll, say("removedAll")));
  const many = await show();
  // as it is on the server now, for the next time without a net
  if (many > 0 && location.pathname === "/kept") await keepOfflinePage().catch(() => {});
} else {
  part("cannot").hidden = false;
}
