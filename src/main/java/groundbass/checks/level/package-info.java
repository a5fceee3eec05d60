/** How hard a line is, and by what. */
package groundbass.checks.level;
