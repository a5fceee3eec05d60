/** The server: puts the page groups behind one listener. Knows no page's content and no database. */
package groundbass.web;
