/**
 * A whole site in one file: rows as text that people can read, and the files that they name; and a new site out of it, on
 * either kind of database. Knows nothing of what the rows mean, but for those that must not be revived.
 */
package groundbass.backup;
