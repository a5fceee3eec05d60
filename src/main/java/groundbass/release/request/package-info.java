/** What is made of a release when somebody asks, and kept with it, or beside it for a while. Knows nothing of pages. */
package groundbass.release.request;
