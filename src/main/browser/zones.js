// A field for a time zone: what is typed takes the place of what stood there, so that the whole list is searched; a new
// series begins with the zone of this browser.
for (const field of /** @type {NodeListOf<HTMLInputElement>} */ (document.querySelectorAll("input[data-zone]"))) {
  field.addEventListener("focus", () => field.select());
  const own = new Intl.DateTimeFormat().resolvedOptions().timeZone;
  const offered = [...(field.list?.options ?? [])].some((zone) => zone.value === own);
  if (field.dataset.zone === "own" && offered) field.value = own;
}
