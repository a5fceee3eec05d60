package groundbass.publishing.jobs;

import groundbass.release.ReleaseId;

/** Where releases wait to be built, so that no request waits for it. Adding one twice is adding it once. */
@FunctionalInterface
public interface BuildQueue {
    void add(ReleaseId id);
}
