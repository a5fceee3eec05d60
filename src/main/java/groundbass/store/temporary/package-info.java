/** Files that last no longer than the process that made them. */
package groundbass.store.temporary;
