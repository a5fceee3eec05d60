/** The database with its migrations, and files kept by content hash. Knows nothing of lessons, students or music. */
package groundbass.store;
