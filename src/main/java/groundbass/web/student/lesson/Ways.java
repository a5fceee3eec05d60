package groundbass.web.student.lesson;

import groundbass.release.ReleaseId;
import java.util.Optional;

/** Where a page finds the files of its release: public once it is out, elsewhere before. */
public interface Ways {
    /** For what is out; each GET to take home is recorded. */
    Ways PUBLIC = new Public(true);

    /** The same where the site does not count what is done on its pages. */
    Ways UNCOUNTED = new Public(false);

    /** @param counted whether the page tells what was done on it */
    record Public(boolean counted) implements Ways {
        @Override
        public String file(ReleaseId release, String name) {
            return Paths.file(release, name);
        }

        @Override
        public String play(ReleaseId release, String name) {
            return Paths.play(release, name);
        }

        @Override
        public Optional<String> fitted(ReleaseId release, String line) {
            return Optional.of(Paths.fitted(release, line));
        }

        @Override
        public boolean remembered() {
            return true;
        }
    }

    /** To take a file home. */
    String file(ReleaseId release, String name);

    /** To play it on the page. */
    String play(ReleaseId release, String name);

    /** Where the sheet of a line is set anew for a width of screen; empty where it is not. */
    Optional<String> fitted(ReleaseId release, String line);

    /** Whether a browser remembers what is practised there. */
    boolean remembered();

    /** Whether the page tells, when it is left, what was done on it. */
    boolean counted();

    /** Below the address of a preview, which stands for the one release that it shows. */
    static Ways below(String preview) {
        return new Ways() {
            @Override
            public String file(ReleaseId release, String name) {
                return preview + "/files/" + name;
            }

            @Override
            public String play(ReleaseId release, String name) {
                return preview + "/play/" + name;
            }

            @Override
            public Optional<String> fitted(ReleaseId release, String line) {
                return Optional.empty();
            }

            @Override
            public boolean remembered() {
                return false;
            }

            @Override
            public boolean counted() {
                return false;
            }
        };
    }
}
