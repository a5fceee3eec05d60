/**
 * What composes a lesson: a document read, and made into sheets, pictures, page contents and words by the renderers.
 * Pure; knows nothing of revisions, releases, files or who asks.
 */
package groundbass.lesson;
