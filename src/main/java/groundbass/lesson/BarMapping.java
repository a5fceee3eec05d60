package groundbass.lesson;

import groundbass.document.BarMap;
import groundbass.document.EpisodeDocument;
import groundbass.groove.Band;
import groundbass.listening.BarFinder;
import groundbass.listening.Hearing;
import groundbass.performance.Performance;
import groundbass.performance.Playing;
import java.util.ArrayList;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/** Proposes when the bars of a lesson's main line begin in a recording of it. */
public final class BarMapping {
    /** What is softer, against the loudest, is taken for silence before and after the music. */
    private static final float SILENT = 0.02f;

    private BarMapping() {}

    /**
     * Empty where the recording is shorter than the line.
     *
     * @param rounds how often it goes through the line; where nobody says, as often as it has room for
     */
    public static Optional<BarMap> find(EpisodeDocument document, Hearing hearing, OptionalInt rounds) {
        var lesson = Lesson.of(document);
        var once = Performance.of(lesson.main());
        double length = once.seconds() - once.seconds(once.bars().get(0).start());
        int times = rounds.orElse((int) Math.floor(soundingSeconds(hearing) / length));
        var playing = Playing.ONCE.times(Math.max(1, Math.min(Playing.MOST_ROUNDS, times)));
        var performance = Performance.of(lesson.main(), playing);
        var found = BarFinder.find(hearing, performance, Band.of(performance, lesson.groove()));
        if (found.isEmpty()) {
            return Optional.empty();
        }
        var starts = new ArrayList<BarMap.Start>();
        for (int i = 0; i < performance.bars().size(); i++) {
            var bar = performance.bars().get(i);
            starts.add(new BarMap.Start(bar.number(), bar.pass(), bar.round(), found.get(i)));
        }
        return Optional.of(new BarMap(starts, found.get(found.size() - 1)));
    }

    private static double soundingSeconds(Hearing hearing) {
        var peaks = hearing.peaks();
        float loudest = peaks.stream().max(Float::compare).orElse(0f);
        int[] sounding = IntStream.range(0, peaks.size())
                .filter(step -> peaks.get(step) > SILENT * loudest)
                .toArray();
        return sounding.length == 0
                ? 0
                : (double) (sounding[sounding.length - 1] - sounding[0]) / Hearing.STEPS_A_SECOND;
    }
}
