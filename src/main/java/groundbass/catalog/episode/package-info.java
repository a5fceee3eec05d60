/** Episodes on their way: drafts, revisions, numbers and states. Knows nothing of what is made of a revision. */
package groundbass.catalog.episode;
