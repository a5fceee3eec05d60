/** Series, made and changed by their owner. Knows nothing of what their episodes say. */
package groundbass.catalog.series;
