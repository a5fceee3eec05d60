package groundbass.release.play;

import groundbass.audio.MonoPcm;
import groundbass.release.play.PlayManifest.CountIn;
import groundbass.release.play.PlayManifest.Segment;
import groundbass.release.play.PlayManifest.StemFile;
import groundbass.release.play.PlayManifest.Tempo;
import groundbass.signal.SampleRate;
import groundbass.sound.mix.Balance;
import groundbass.sound.mix.BarSound;
import groundbass.sound.mix.PreRoll;
import groundbass.sound.mix.Stem;
import groundbass.store.Blob;
import groundbass.store.Blobs;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Writes the stems of one line at one tempo, played once through, as files for the page, in one of two forms. */
public final class LineStems {
    private static final SampleRate RATE = SampleRate.CD;

    private final String name;
    private final Tape tape;
    private final StemForm form;
    private final Balance levels;

    /** What was written: a part of the manifest, and the kept files by name. */
    public record Written(Tempo tempo, Map<String, Blob> files) {}

    /** Where one stem was written. */
    private record Stored(Blob blob, Segment countIn, List<Segment> bars) {}

    private LineStems(String name, Tape tape, StemForm form) {
        this.name = name;
        this.tape = tape;
        this.form = form;
        this.levels = tape.loose();
    }

    /** @param name the line's name among the release's files */
    public static Written write(String name, Tape tape, StemForm form, Blobs blobs) throws IOException {
        var stems = new LineStems(name, tape, form);
        var stored = new LinkedHashMap<Stem, Stored>();
        for (var stem : Stem.values()) {
            stored.put(stem, stems.write(stem, blobs));
        }
        return new Written(stems.tempo(stored), stems.files(stored));
    }

    private Stored write(Stem stem, Blobs blobs) throws IOException {
        var segments = new ArrayList<Segment>();
        var blob = blobs.put(out -> {
            var writer = new StemWriter(out, pcm -> form.encoded(pcm, stem));
            segments.add(writer.write(stem == Stem.CLICK ? countIn() : MonoPcm.NOTHING, 0));
            for (int bar = 0; bar < tape.bars(); bar++) {
                segments.add(writer.write(pcm(tape.bar(stem, bar), levels.of(stem)), tape.lead(bar)));
            }
        });
        return new Stored(blob, segments.get(0), List.copyOf(segments.subList(1, segments.size())));
    }

    private MonoPcm countIn() {
        return pcm(tape.countIn(), levels.countIn());
    }

    private static MonoPcm pcm(BarSound sound, double gain) {
        return MonoPcm.of(sound.samples(), gain);
    }

    private Tempo tempo(Map<Stem, Stored> stored) {
        var performance = tape.performance();
        var times = new PlayTimes(RATE, performance);
        var tempo = performance.line().inForce().get(0).tempo();
        int percent = performance.playing().percent();
        var click = stored.get(Stem.CLICK).countIn();
        var countIn = new CountIn(
                times.frame(performance.start()),
                PlayTimes.countIn(RATE, tape.band()),
                fileName(Stem.CLICK),
                click.offset(),
                click.bytes(),
                click.frames(),
                RATE.at(PreRoll.SECONDS),
                form.decoding());
        var files = new LinkedHashMap<String, StemFile>();
        stored.forEach((stem, where) ->
                files.put(stem.word(), new StemFile(fileName(stem), stem.pan(), where.bars(), form.decoding())));
        return new Tempo(
                percent,
                tempo.perMinute() * percent / 100.0,
                PlayManifest.text(tempo.beat()),
                times.frame(performance.end()),
                countIn,
                times.bars(),
                files,
                null);
    }

    private Map<String, Blob> files(Map<Stem, Stored> stored) {
        var files = new LinkedHashMap<String, Blob>();
        stored.forEach((stem, where) -> files.put(fileName(stem), where.blob()));
        return files;
    }

    private String fileName(Stem stem) {
        return name + "-" + tape.performance().playing().percent() + "-" + stem.word() + "." + form.ending();
    }
}
