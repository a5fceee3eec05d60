package groundbass.web.desk.line;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import groundbass.audio.Mp3;
import groundbass.catalog.educator.EducatorId;
import groundbass.effort.Heap;
import groundbass.groove.GrooveLibrary;
import groundbass.identity.Sha256;
import groundbass.linetext.LineText;
import groundbass.performance.Performance;
import groundbass.performance.Playing;
import groundbass.release.play.Tape;
import groundbass.score.Extract;
import groundbass.score.Line;
import groundbass.sound.mix.Mix;
import groundbass.sound.mix.Stem;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.RateLimits;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/** A few bars of what is being typed, to be heard at once. What was made last is kept. Thread-safe. */
public final class LineSound {
    private static final int MOST_BARS = 8;
    private static final int MOST_SECONDS = 40;
    private static final int PART_OF_HEAP = 32;

    private final RateLimits limits;
    private final Cache<String, Heard> kept = Caffeine.newBuilder()
            .maximumWeight(Heap.partOf(PART_OF_HEAP))
            .weigher((String key, Heard heard) -> heard.mp3().length)
            .build();

    public LineSound(RateLimits limits) {
        this.limits = limits;
    }

    /** @param bars when each bar begins, as {@code 3@0.000 4@2.500} in seconds, the end last as {@code end@5.000} */
    record Heard(byte[] mp3, String bars) {
        void send(Context ctx) {
            ctx.header("Groundbass-Bars", bars);
            ctx.header("Cache-Control", "no-store");
            ctx.contentType("audio/mpeg").result(mp3);
        }
    }

    /** An MP3 of so many bars from one on. */
    Heard of(Context ctx, EducatorId who, String text) {
        int bar = FormParameters.number(ctx, "bar", 1);
        int count = Math.max(1, Math.min(MOST_BARS, FormParameters.number(ctx, "bars", 4)));
        int percent = Math.max(Playing.SLOWEST, Math.min(Playing.FASTEST, FormParameters.number(ctx, "percent", 100)));
        boolean band = FormParameters.ticked(ctx, "band");
        var reading = LineText.read(text).line();
        var part = Extract.bars(reading, bar, bar + count - 1).orElseThrow(NotFoundResponse::new);
        String key = Sha256.of((bar + " " + percent + " " + band + " " + LineText.print(part))
                        .getBytes(StandardCharsets.UTF_8))
                .toString();
        var heard = kept.getIfPresent(key);
        if (heard == null) {
            limits.demand(ctx, Limit.LISTENING, who.value());
            heard = make(shortened(part, percent), bar, percent, band);
            kept.put(key, heard);
        }
        return heard;
    }

    /** Slow bars are long; as many as fit into the time. */
    private static Line shortened(Line part, int percent) {
        var line = part;
        while (line.bars().size() > 1
                && Performance.of(line, Playing.at(percent)).seconds() > MOST_SECONDS) {
            int first = line.firstNumber();
            line = Extract.bars(line, first, first + line.bars().size() - 2).orElseThrow();
        }
        return line;
    }

    private static Heard make(Line part, int bar, int percent, boolean band) {
        var stems = band ? Set.of(Stem.BASS, Stem.DRUMS, Stem.CHORDS) : Set.of(Stem.BASS);
        var playing = Playing.at(percent);
        var performance = Performance.of(part, playing);
        int shift = bar - part.firstNumber();
        String bars = performance.bars().stream()
                .map(played -> played.number() + shift + "@" + seconds(performance.seconds(played.start())))
                .collect(Collectors.joining(" "));
        return new Heard(mp3(part, percent, new Mix(stems, false)), bars + " end@" + seconds(performance.seconds()));
    }

    private static byte[] mp3(Line part, int percent, Mix mix) {
        try (var tape = Tape.record(part, GrooveLibrary.suited(part), percent)) {
            return Mp3.bytes(tape.mix(mix, 1));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String seconds(double seconds) {
        return String.format(Locale.ROOT, "%.3f", seconds);
    }
}
