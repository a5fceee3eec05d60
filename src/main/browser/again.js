// Asks again when the time has come: a form is sent as it was, a page is opened anew. Without a script a button does it.
import { byId } from "./common/page.js";

const again = document.getElementById("again");

if (again?.dataset.byItself) {
  byId("by-itself", HTMLElement).hidden = false;
  setTimeout(
    () => (again instanceof HTMLFormElement ? again.submit() : location.reload()),
    1000 * Number(again.dataset.seconds),
  );
}
