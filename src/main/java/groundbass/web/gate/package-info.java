/**
 * What stands before all routes: who calls, by which name and address the site is asked for, and how fast a body has to
 * come. Nothing here knows a page.
 */
package groundbass.web.gate;
