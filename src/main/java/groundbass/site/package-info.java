/**
 * A running site: what an operator may choose, and the one place where the parts are wired. Knows no page and no rule
 * from inside.
 */
package groundbass.site;
