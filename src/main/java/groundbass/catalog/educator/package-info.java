/** Who may use the desk, and who changed what. Knows nothing of what is kept. */
package groundbass.catalog.educator;
