package groundbass.linetext.read;

import groundbass.linetext.problem.HeadProblems;
import groundbass.linetext.problem.Problems;
import groundbass.linetext.source.Token;
import groundbass.linetext.source.Tokens;
import groundbass.linetext.source.TypedNumbers;
import groundbass.score.Fraction;
import groundbass.score.Tempo;
import java.util.List;
import java.util.Optional;

/** The names of the lengths that a tempo counts: {@code quarter}, {@code dotted quarter}, or a fraction such as 5/8. */
public final class BeatNames {
    private static final List<String> NAMES = List.of("whole", "half", "quarter", "eighth", "16th");
    private static final Fraction DOT = Fraction.of(3, 2);

    private BeatNames() {}

    static Optional<Fraction> read(Tokens tokens, Problems problems) {
        boolean dotted = tokens.takeWord("dotted");
        var here = tokens.here();
        var name = tokens.take().map(Token::text).orElse("");
        int power = NAMES.indexOf(name);
        var beat = power >= 0 ? Optional.of(Fraction.of(1, 1L << power)) : TypedNumbers.fraction(name);
        if (beat.filter(Tempo::isBeat).isEmpty()) {
            problems.add(HeadProblems.unknownBeat(here, name, NAMES));
            return Optional.empty();
        }
        return beat.map(length -> dotted ? length.times(DOT) : length);
    }

    public static String of(Fraction beat) {
        return plain(beat)
                .or(() -> plain(beat.dividedBy(DOT)).map(name -> "dotted " + name))
                .orElse(beat.numerator() + "/" + beat.denominator());
    }

    private static Optional<String> plain(Fraction beat) {
        return NAMES.stream()
                .filter(name -> beat.equals(Fraction.of(1, 1L << NAMES.indexOf(name))))
                .findFirst();
    }
}
