/**
 * News of a series by e-mail: who asked for it, agreed to it and ended it, and whom which lesson is still to be told.
 * Writes no letter about a lesson; knows nothing of publishing.
 */
package groundbass.audience.news;
