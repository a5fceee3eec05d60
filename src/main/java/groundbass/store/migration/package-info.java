/** The migrations, and what is noted in a database of those that were done, without the library that does them. Opens nothing. */
package groundbass.store.migration;
