/**
 * Whatever is looked at before a lesson goes out: the one list of {@link groundbass.publishing.preflight.Checkpoint}s and
 * what is to be said of a lesson at each. Brings nothing out.
 */
package groundbass.publishing.preflight;
