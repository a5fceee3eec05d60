/**
 * Whatever is looked at before a lesson goes out: the one list of {@link groundbass.publishing.preflight.Checkpoint}s, what
 * is to be said of a lesson at each, and what of it its educator has accepted. Brings nothing out.
 */
package groundbass.publishing.preflight;
