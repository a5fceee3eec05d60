// Rewrites the times of a page, written in the site's zone, in the reader's own, as they are written where the reader lives.
import { readersLanguage } from "./common/language.js";

const written = readersLanguage();
const forms = {
  date: { dateStyle: "long" },
  moment: { dateStyle: "long", timeStyle: "short" },
};
for (const time of /** @type {NodeListOf<HTMLTimeElement>} */ (document.querySelectorAll("time[data-form]"))) {
  const format = new Intl.DateTimeFormat(written, forms[time.dataset.form]);
  time.title = time.textContent;
  time.textContent = format.format(new Date(time.dateTime));
}
