// Rewrites the times of a page, written in the site's zone, in the reader's own.
const forms = {
  date: { dateStyle: "long" },
  moment: { dateStyle: "long", timeStyle: "short" },
};
for (const time of /** @type {NodeListOf<HTMLTimeElement>} */ (document.querySelectorAll("time[data-form]"))) {
  const format = new Intl.DateTimeFormat(document.documentElement.lang, forms[time.dataset.form]);
  time.title = time.textContent;
  time.textContent = format.format(new Date(time.dateTime));
}
