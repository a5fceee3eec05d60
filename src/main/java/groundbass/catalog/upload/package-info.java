/** Recordings that come in, judged by their content and listened to. Knows nothing of what is done with them. */
package groundbass.catalog.upload;
