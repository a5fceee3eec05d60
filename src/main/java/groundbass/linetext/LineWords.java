package groundbass.linetext;

import groundbass.linetext.print.ShiftPrinter;
import groundbass.linetext.read.PlaceWordReader;
import groundbass.linetext.source.Keyword;
import groundbass.score.Shift;
import groundbass.score.Technique;
import groundbass.theory.Mode;
import groundbass.theory.Quality;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/**
 * The words of line text, from the lists that the reader itself goes by, for whoever helps with typing.
 *
 * @param lines what a line may begin with
 * @param events what may stand in an event beside places
 * @param chords what may stand behind the root of a chord; the first is empty
 * @param shifts how far a bar may be moved that is taken over; there are more
 */
public record LineWords(
        List<String> lines,
        List<String> events,
        List<String> techniques,
        List<String> modes,
        List<String> chords,
        List<String> feels,
        List<String> shifts) {
    public static final LineWords ALL = new LineWords(
            Keyword.WORDS,
            Stream.concat(Stream.of("rest", "hold"), PlaceWordReader.known().stream())
                    .distinct()
                    .toList(),
            Arrays.stream(Technique.values()).map(Technique::word).toList(),
            Arrays.stream(Mode.values()).map(Mode::toString).toList(),
            Arrays.stream(Quality.values()).map(Quality::suffix).toList(),
            List.of("straight", "swing 8ths 2:1", "swing 16ths 2:1", "straight half-time"),
            Stream.concat(
                            Stream.of(1, -1).map(strings -> new Shift(strings, 0)),
                            Stream.of(1, 2, 3, 5, 7, 12, -1, -2, -3, -5, -7, -12)
                                    .map(frets -> new Shift(0, frets)))
                    .map(shift -> ShiftPrinter.print(shift).substring(", ".length()))
                    .toList());

    public LineWords {
        lines = List.copyOf(lines);
        events = List.copyOf(events);
        techniques = List.copyOf(techniques);
        modes = List.copyOf(modes);
        chords = List.copyOf(chords);
        feels = List.copyOf(feels);
        shifts = List.copyOf(shifts);
    }
}
