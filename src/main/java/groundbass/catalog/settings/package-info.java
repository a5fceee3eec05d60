/** What is chosen for the whole site and for each series. Knows nothing of what follows from it. */
package groundbass.catalog.settings;
