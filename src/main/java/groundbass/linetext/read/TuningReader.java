package groundbass.linetext.read;

import groundbass.linetext.problem.HeadProblems;
import groundbass.linetext.problem.Problems;
import groundbass.linetext.source.Token;
import groundbass.linetext.source.Tokens;
import groundbass.score.Tuning;
import groundbass.score.Tuning.OpenString;
import groundbass.theory.NoteName;
import groundbass.theory.Pitch;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * Reads and prints {@code E A D G}: strings from low to high. The lowest lies in the octave from B0 (MIDI 23) to A#1
 * (34), that of five strings or more in the one from F#0 (18) to F1 (29), each other one in the nearest octave above its
 * neighbour, unless an octave is typed. {@code E=D}: the left is
 * what one types, the right what sounds.
 */
public final class TuningReader {
    private static final int LOWEST_FROM = 23;
    /** Around the low B that a fifth string has, and down to the F sharp of a seventh. */
    private static final int LOWEST_OF_MANY_FROM = 18;

    private static final int MANY = 5;

    private final Tokens tokens;
    private final Problems problems;

    TuningReader(Tokens tokens, Problems problems) {
        this.tokens = tokens;
        this.problems = problems;
    }

    /** A name and the octave where it was typed. */
    private record Typed(NoteName name, OptionalInt octave) {
        static Optional<Typed> parse(String text) {
            int letters = 0;
            while (letters < text.length() && "0123456789-".indexOf(text.charAt(letters)) < 0) {
                letters++;
            }
            String octave = text.substring(letters);
            boolean readable = octave.isEmpty() || octave.matches("-1|\\d");
            return NoteName.parse(text.substring(0, letters))
                    .filter(name -> readable)
                    .map(name -> new Typed(
                            name, octave.isEmpty() ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(octave))));
        }
    }

    Optional<Tuning> read() {
        var typed = new ArrayList<Token>();
        while (!tokens.atEnd()) {
            typed.add(tokens.take().orElseThrow());
        }
        var lowestFirst = new ArrayList<OpenString>();
        for (var each : typed) {
            var string = string(each.text(), lowestFirst, typed.size());
            if (string.isEmpty()) {
                problems.add(HeadProblems.badString(each));
                return Optional.empty();
            }
            lowestFirst.add(string.get());
            if (lowestFirst.size() > Tuning.MOST_STRINGS) {
                problems.add(HeadProblems.tooManyStrings(each.span()));
                return Optional.empty();
            }
        }
        Collections.reverse(lowestFirst);
        return Optional.of(new Tuning(lowestFirst));
    }

    public static String print(Tuning tuning) {
        var lowestFirst = new ArrayList<>(tuning.strings());
        Collections.reverse(lowestFirst);
        return String.join(
                " ",
                IntStream.range(0, lowestFirst.size())
                        .mapToObj(i -> print(lowestFirst.get(i), lowestFirst.subList(0, i), lowestFirst.size()))
                        .toList());
    }

    private static Optional<OpenString> string(String text, List<OpenString> lower, int strings) {
        int equals = text.indexOf('=');
        var sounding = Typed.parse(text.substring(equals + 1));
        var name = equals < 0 ? sounding.map(Typed::name) : NoteName.parse(text.substring(0, equals));
        if (name.isEmpty() || sounding.isEmpty()) {
            return Optional.empty();
        }
        int octave =
                sounding.get().octave().orElseGet(() -> octave(sounding.get().name(), lower, strings));
        return OpenString.isOpenPitch(sounding.get().name(), octave)
                ? Optional.of(
                        new OpenString(name.get(), new Pitch(sounding.get().name(), octave)))
                : Optional.empty();
    }

    private static String print(OpenString string, List<OpenString> lower, int strings) {
        var pitch = string.pitch();
        String sounding = octave(pitch.name(), lower, strings) == pitch.octave()
                ? pitch.name().toString()
                : pitch.toString();
        return string.name().equals(pitch.name()) ? sounding : string.name() + "=" + sounding;
    }

    private static int octave(NoteName name, List<OpenString> lower, int strings) {
        int lowest = strings < MANY ? LOWEST_FROM : LOWEST_OF_MANY_FROM;
        int from =
                lower.isEmpty() ? lowest : lower.get(lower.size() - 1).pitch().midi() + 1;
        int inOctaveZero = 12 + name.letter().semitones() + name.alteration();
        return -Math.floorDiv(inOctaveZero - from, 12);
    }
}
