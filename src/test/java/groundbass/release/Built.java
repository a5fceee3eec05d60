package groundbass.release;

import groundbass.store.Sha256;
import java.time.Instant;
import java.util.List;

/** Closes builds without building, for tests of what comes after. */
public final class Built {
    public static final ReleaseFile SHEET =
            new ReleaseFile("sheet.pdf", FileRole.SHEET, "application/pdf", 4, Sha256.of(new byte[] {1, 2, 3, 4}));

    private Built() {}

    public static void ready(Releases releases, ReleaseId id, Instant now) {
        releases.ready(id, List.of(SHEET), now);
    }

    public static void failed(Releases releases, ReleaseId id) {
        releases.failed(id, "the string broke");
    }
}
