/** The work that no request waits for: when it is done, and that a clock that was set wrong holds none of it up. */
package groundbass.publishing.jobs;
