/**
 * Who is at the desk, which of their things an address names, and forms whose writer must sign in again. Knows no
 * page.
 */
package groundbass.web.desk.access;
