package groundbass.release.play;

import groundbass.release.play.PlayManifest.Segment;
import groundbass.sound.BarSound;
import groundbass.sound.Flac;
import groundbass.sound.MonoPcm;
import groundbass.store.Sha256;
import java.io.IOException;
import java.io.OutputStream;
import java.util.HashMap;
import java.util.Map;

/** Writes the segments of one file one after the other; what was written before is named again, not written again. */
final class StemWriter {
    private static final Segment SILENT = new Segment(0, 0, 0, 0);

    private final OutputStream out;
    private final double gain;
    private final Map<Sha256, Segment> known = new HashMap<>();
    private long size;

    StemWriter(OutputStream out, double gain) {
        this.out = out;
        this.gain = gain;
    }

    /** @param lead how many of the samples come before the bar's start */
    Segment write(BarSound sound, int lead) throws IOException {
        if (sound.isNothing()) {
            return SILENT;
        }
        var samples = MonoPcm.of(sound.samples(), gain);
        var digest = Sha256.of(samples.bytes());
        var before = known.get(digest);
        if (before != null) {
            return new Segment(before.offset(), before.bytes(), before.frames(), lead);
        }
        byte[] encoded = Flac.mono(samples);
        out.write(encoded);
        var segment = new Segment(size, encoded.length, samples.frames(), lead);
        known.put(digest, segment);
        size += encoded.length;
        return segment;
    }
}
