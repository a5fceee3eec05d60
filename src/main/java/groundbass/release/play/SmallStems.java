package groundbass.release.play;

import groundbass.audio.MonoPcm;
import groundbass.audio.Opus;
import groundbass.release.play.PlayManifest.SmallFile;
import groundbass.release.play.PlayManifest.Span;
import groundbass.sound.mix.Balance;
import groundbass.sound.mix.Stem;
import groundbass.store.Blob;
import groundbass.store.Blobs;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.Map;

/** Writes the stems of one line at one tempo in a form that loses a little and is much smaller, for slow lines. */
public final class SmallStems {
    private SmallStems() {}

    /** What was written: by the stem's name a part of the manifest, and the kept files by name. */
    public record Written(Map<String, SmallFile> stems, Map<String, Blob> files) {}

    /** @param name the line's name among the release's files */
    public static Written write(String name, Tape tape, Blobs blobs) throws IOException {
        var levels = tape.loose();
        var stems = new LinkedHashMap<String, SmallFile>();
        var files = new LinkedHashMap<String, Blob>();
        for (var stem : Stem.values()) {
            int percent = tape.performance().playing().percent();
            String fileName = name + "-" + percent + "-" + stem.word() + ".opus";
            var spans = new ArrayList<Span>();
            files.put(fileName, blobs.put(out -> {
                var writer = new StemWriter(out, Opus::mono);
                for (int bar = 0; bar < tape.bars(); bar++) {
                    var segment = writer.write(pcm(tape, stem, bar, levels), tape.lead(bar));
                    spans.add(new Span(segment.offset(), segment.bytes()));
                }
            }));
            stems.put(stem.word(), new SmallFile(fileName, Opus.RATE, Opus.SKIP, spans));
        }
        return new Written(stems, files);
    }

    private static MonoPcm pcm(Tape tape, Stem stem, int bar, Balance levels) {
        return MonoPcm.of(tape.bar(stem, bar).samples(), levels.of(stem));
    }
}
