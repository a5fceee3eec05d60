package groundbass.release;

import groundbass.identity.Sha256;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;

/** Closes builds without building, for tests of what comes after. */
public final class Built {
    private static final List<ReleaseFile> FILES = List.of(
            file("all.zip", FileRole.BUNDLE, "application/zip"),
            file("sheet.pdf", FileRole.SHEET, "application/pdf"),
            file("line.mid", FileRole.MIDI, "audio/midi"));

    private Built() {}

    public static void ready(Releases releases, ReleaseId id, Instant now) {
        releases.builds().ready(id, FILES, now);
    }

    /** Closes a build with what was drawn so far. */
    public static void readyAsDrawn(Releases releases, ReleaseId id, Instant now) {
        releases.builds().ready(id, releases.files().of(id), now);
    }

    /** What can be read before all is there. */
    public static void drawn(Releases releases, ReleaseId id) {
        releases.builds().add(id, FILES.subList(1, 2));
    }

    public static void failed(Releases releases, ReleaseId id, Instant now) {
        releases.builds().failed(id, BuildState.Failure.OTHER, now);
    }

    /** @return whether the build goes on */
    public static boolean progress(Releases releases, ReleaseId id, int done, int total) {
        return releases.builds().progress(id, done, total);
    }

    private static ReleaseFile file(String name, FileRole role, String type) {
        return new ReleaseFile(name, role, type, 4, Sha256.of(name.getBytes(StandardCharsets.UTF_8)));
    }
}
