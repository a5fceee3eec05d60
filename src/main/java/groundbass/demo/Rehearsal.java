package groundbass.demo;

import groundbass.archive.WrittenSeries;
import groundbass.release.ReleaseBuilder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Draws the demonstration's newest lesson for nobody, while its site is still being opened: what is drawn first takes several
 * times as long as what comes after it, and opening a site uses one processor of several.
 */
public final class Rehearsal {
    private static final Logger log = LoggerFactory.getLogger(Rehearsal.class);

    private final Supplier<List<Runnable>> reading;
    private volatile boolean ended;

    Rehearsal(Supplier<List<Runnable>> reading) {
        this.reading = reading;
    }

    public static Rehearsal begin() {
        var rehearsal = new Rehearsal(() -> Demo.withSeedData(Rehearsal::steps));
        var playing = new Thread(rehearsal::play, "rehearsal");
        playing.setDaemon(true);
        playing.start();
        return rehearsal;
    }

    /** The machine is wanted for something else: what was begun is done, and nothing more. */
    public void end() {
        ended = true;
    }

    /** What fails here fails again where somebody reads it, and is told there. */
    void play() {
        try {
            for (var step : reading.get()) {
                if (ended) {
                    return;
                }
                step.run();
            }
        } catch (RuntimeException e) {
            log.debug("the rehearsal was broken off", e);
        }
    }

    private static List<Runnable> steps(Path folder) throws IOException {
        try (var series = Files.list(folder)) {
            return series.filter(Files::isDirectory)
                    .sorted()
                    .flatMap(each -> newest(Demo.written(each)))
                    .flatMap(lesson -> ReleaseBuilder.rehearsal(lesson.document()).stream())
                    .toList();
        }
    }

    private static Stream<WrittenSeries.Lesson> newest(WrittenSeries series) {
        return series.lessons().stream().skip(series.lessons().size() - 1L);
    }
}
