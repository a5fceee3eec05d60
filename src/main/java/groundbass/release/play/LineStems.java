package groundbass.release.play;

import groundbass.groove.Band;
import groundbass.groove.Groove;
import groundbass.performance.Performance;
import groundbass.performance.Playing;
import groundbass.release.play.PlayManifest.CountIn;
import groundbass.release.play.PlayManifest.Segment;
import groundbass.release.play.PlayManifest.StemFile;
import groundbass.release.play.PlayManifest.Tempo;
import groundbass.score.Line;
import groundbass.sound.BarSound;
import groundbass.sound.BarSounds;
import groundbass.sound.SampleRate;
import groundbass.sound.Stem;
import groundbass.store.Blob;
import groundbass.store.Blobs;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The stems of one line at one tempo, played once through.
 *
 * @param name the line's name among the release's files
 * @param gain what every stem is multiplied by
 */
public record LineStems(String name, Line line, Groove groove, int percent, double gain) {
    private static final SampleRate RATE = SampleRate.CD;

    /** What was written: a part of the manifest, and the kept files by name. */
    public record Written(Tempo tempo, Map<String, Blob> files) {}

    /** Where one stem was written. */
    private record Stored(Blob blob, Segment countIn, List<Segment> bars) {}

    public Written write(Blobs blobs) throws IOException {
        var performance = Performance.of(line, Playing.at(percent));
        var band = Band.of(performance, groove);
        var sounds = BarSounds.of(performance, band);
        var stored = new LinkedHashMap<Stem, Stored>();
        for (var stem : Stem.values()) {
            stored.put(stem, write(stem, sounds, blobs));
        }
        return new Written(tempo(performance, band, stored), files(stored));
    }

    private Stored write(Stem stem, BarSounds sounds, Blobs blobs) throws IOException {
        var segments = new ArrayList<Segment>();
        var blob = blobs.put(out -> {
            var writer = new StemWriter(out, gain);
            segments.add(writer.write(stem == Stem.CLICK ? sounds.countIn() : BarSound.NOTHING, 0));
            for (int bar = 0; bar < sounds.bars(); bar++) {
                segments.add(writer.write(sounds.bar(stem, bar), sounds.lead(bar)));
            }
        });
        return new Stored(blob, segments.get(0), List.copyOf(segments.subList(1, segments.size())));
    }

    private Tempo tempo(Performance performance, Band band, Map<Stem, Stored> stored) {
        var times = new PlayTimes(RATE, performance);
        var tempo = line.inForce().get(0).tempo();
        double bpm = tempo.perMinute() * percent / 100.0;
        var click = stored.get(Stem.CLICK).countIn();
        var countIn = new CountIn(
                times.frame(performance.start()),
                PlayTimes.countIn(RATE, band),
                fileName(Stem.CLICK),
                click.offset(),
                click.bytes(),
                click.frames());
        var files = new LinkedHashMap<String, StemFile>();
        stored.forEach((stem, where) -> files.put(stem.word(), new StemFile(fileName(stem), stem.pan(), where.bars())));
        String beat = PlayManifest.text(tempo.beat());
        return new Tempo(percent, bpm, beat, times.frame(performance.end()), countIn, times.bars(), files);
    }

    private Map<String, Blob> files(Map<Stem, Stored> stored) {
        var files = new LinkedHashMap<String, Blob>();
        stored.forEach((stem, where) -> files.put(fileName(stem), where.blob()));
        return files;
    }

    private String fileName(Stem stem) {
        return name + "-" + percent + "-" + stem.word() + ".flac";
    }
}
