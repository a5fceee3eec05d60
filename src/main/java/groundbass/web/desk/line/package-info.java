/** What the page says of a line while it is typed: drawn, fingered, sounded, remarked on. Saves nothing. */
package groundbass.web.desk.line;
