package groundbass.linetext.problem;

import groundbass.linetext.source.TypedNumbers;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Which fret was meant by one that the neck does not have: one figure was typed too many. */
final class MeantFret {
    private static final int LONGEST = 6;

    private MeantFret() {}

    static Stream<String> near(String typed, int frets) {
        if (typed.length() > LONGEST) {
            return Stream.empty();
        }
        return IntStream.range(0, typed.length())
                .mapToObj(i -> typed.substring(0, i) + typed.substring(i + 1))
                .flatMap(text -> TypedNumbers.whole(text).stream())
                .filter(fret -> fret <= frets)
                .distinct()
                .sorted()
                .map(String::valueOf);
    }
}
