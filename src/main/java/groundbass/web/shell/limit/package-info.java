/** What may be done only so often, and what is said to whoever must wait. Knows no page and no route. */
package groundbass.web.shell.limit;
