/** Recordings and pictures that come in, judged by their content; recordings are listened to. Knows nothing of what is done with them. */
package groundbass.catalog.upload;
