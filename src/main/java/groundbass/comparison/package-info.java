/** What differs between two lines, bar by bar and count by count, and how that is said. Knows no text, file or page. */
package groundbass.comparison;
