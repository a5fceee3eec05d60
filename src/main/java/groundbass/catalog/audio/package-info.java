/** Tells from its bytes alone what an uploaded audio file is. Knows nothing of who sent it, nor of the database. */
package groundbass.catalog.audio;
