/** The language of the page as its reader writes it: with their region, where the browser names one. */
export function readersLanguage() {
  const { lang } = document.documentElement;
  return navigator.languages.find((tag) => tag.split("-")[0] === lang) ?? lang;
}
