package groundbass.linetext;

import groundbass.linetext.read.PlaceWordReader;
import groundbass.linetext.source.Keyword;
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
 */
public record LineWords(
        List<String> lines,
        List<String> events,
        List<String> techniques,
        List<String> modes,
        List<String> chords,
        List<String> feels) {
    public static final LineWords ALL = new LineWords(
            Keyword.WORDS,
            Stream.concat(Stream.of("rest", "hold"), PlaceWordReader.known().stream())
                    .distinct()
                    .toList(),
            Arrays.stream(Technique.values()).map(Technique::word).toList(),
            Arrays.stream(Mode.values()).map(Mode::toString).toList(),
            Arrays.stream(Quality.values()).map(Quality::suffix).toList(),
            List.of("straight", "swing 8ths 2:1", "swing 16ths 2:1", "straight half-time"));

    public LineWords {
        lines = List.copyOf(lines);
        events = List.copyOf(events);
        techniques = List.copyOf(techniques);
        modes = List.copyOf(modes);
        chords = List.copyOf(chords);
        feels = List.copyOf(feels);
    }
}
