package groundbass.release.play;

import groundbass.audio.MonoPcm;
import groundbass.identity.Sha256;
import groundbass.release.play.PlayManifest.Segment;
import java.io.IOException;
import java.io.OutputStream;
import java.util.HashMap;
import java.util.Map;

/** Writes the segments of one file one after the other; what was written before is named again, not written again. */
final class StemWriter {
    private static final Segment SILENT = new Segment(0, 0, 0, 0);

    /** How one segment becomes bytes that can be decoded alone. */
    interface Form {
        byte[] encoded(MonoPcm pcm);
    }

    private final OutputStream out;
    private final Form form;
    private final Map<Sha256, Segment> known = new HashMap<>();
    private long size;

    StemWriter(OutputStream out, Form form) {
        this.out = out;
        this.form = form;
    }

    /** @param lead how many of the samples come before the bar's start */
    Segment write(MonoPcm pcm, int lead) throws IOException {
        if (pcm.frames() == 0) {
            return SILENT;
        }
        var digest = Sha256.of(pcm.bytes());
        if (!known.containsKey(digest)) {
            byte[] encoded = form.encoded(pcm);
            out.write(encoded);
            known.put(digest, new Segment(size, encoded.length, pcm.frames(), 0));
            size += encoded.length;
        }
        var place = known.get(digest);
        return new Segment(place.offset(), place.bytes(), place.frames(), lead);
    }
}
