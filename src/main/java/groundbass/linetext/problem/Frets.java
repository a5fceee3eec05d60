package groundbass.linetext.problem;

import groundbass.linetext.source.Numbers;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Which fret was meant by one that the neck does not have: one figure was typed too many. */
final class Frets {
    private static final int LONGEST = 6;

    private Frets() {}

    static Optional<String> near(String typed, int frets) {
        if (typed.length() > LONGEST) {
            return Optional.empty();
        }
        var fitting = IntStream.range(0, typed.length())
                .mapToObj(i -> typed.substring(0, i) + typed.substring(i + 1))
                .flatMap(text -> Numbers.whole(text).stream())
                .filter(fret -> fret <= frets)
                .distinct()
                .sorted()
                .map(String::valueOf)
                .collect(Collectors.joining(" or "));
        return Optional.of(fitting).filter(text -> !text.isEmpty());
    }
}
