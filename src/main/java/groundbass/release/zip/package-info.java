/** A zip as stretches of bytes, put together while it is sent. Knows nothing of lessons. */
package groundbass.release.zip;
