package groundbass.walkthrough;

import groundbass.analysis.Tone;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.NoteAt;
import groundbass.score.Position;
import groundbass.score.Technique;
import groundbass.theory.NoteName;
import groundbass.walkthrough.words.NoteWords;
import groundbass.walkthrough.words.Wording;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Where the fingers that pluck, in turn, go from string to string in little time: the first time that one comes
 * to lie on the next lower string, and the first of the quickest leaps over a string (common practice, no source).
 */
final class StringCrossings {
    private static final Set<Technique> IN_TURN = EnumSet.of(Technique.FINGER, Technique.INDEX, Technique.MIDDLE);

    /** Seconds from stroke to stroke, at full tempo, in which a hand cannot look for its string. */
    private static final double LITTLE_TIME = 0.35;

    /** Seconds that are equal but for the rounding of their sums. */
    private static final double EQUAL = 1e-9;

    private final Line line;
    private final List<Tone> tones;
    private final List<Stroke> strokes = new ArrayList<>();
    private final Optional<Crossing> fall;
    private final Optional<Crossing> leap;

    /** One note struck by itself, and when. */
    private record Stroke(Position at, double seconds, Note note) {
        boolean isInTurn() {
            return note.pluck().filter(IN_TURN::contains).isPresent();
        }
    }

    /** Two strokes that follow one another on two strings. */
    private record Crossing(Stroke before, Stroke here) {
        Position at() {
            return here.at();
        }

        double seconds() {
            return here.seconds() - before.seconds();
        }

        /** By how many strings lower; negative where higher. */
        int strings() {
            return here.note().string() - before.note().string();
        }

        /** Whether the finger comes to lie on its next string: straight after its stroke, and nothing rests between. */
        boolean isFall() {
            return strings() == 1
                    && before.at().bar() == here.at().bar()
                    && before.note().end().equals(here.note().onset());
        }
    }

    /** @param tones what is pitched in the line */
    StringCrossings(Line line, List<Tone> tones) {
        this.line = line;
        this.tones = tones;
        strike();
        var crossings = crossings();
        fall = crossings.stream()
                .filter(Crossing::isFall)
                .filter(each -> name(each.before()).isPresent())
                .filter(each -> name(each.here()).isPresent())
                .findFirst();
        leap = crossings.stream()
                .filter(each -> Math.abs(each.strings()) > 1)
                .reduce((one, two) -> two.seconds() < one.seconds() - EQUAL ? two : one);
    }

    private void strike() {
        double start = 0;
        var inForce = line.inForce();
        for (int i = 0; i < line.bars().size(); i++) {
            var bar = line.bars().get(i);
            var tempo = inForce.get(i).tempo();
            for (var note : bar.notes()) {
                double seconds = start + tempo.seconds(note.onset().minus(bar.from()));
                strokes.add(new Stroke(new Position(i, note.onset()), seconds, note));
            }
            start += tempo.seconds(bar.length());
        }
    }

    private List<Crossing> crossings() {
        var crossings = new ArrayList<Crossing>();
        for (int i = 1; i < strokes.size(); i++) {
            var before = strokes.get(i - 1);
            var here = strokes.get(i);
            var crossing = new Crossing(before, here);
            boolean quick = crossing.seconds() > EQUAL && crossing.seconds() < LITTLE_TIME;
            if (quick && crossing.strings() != 0 && before.isInTurn() && here.isInTurn()) {
                crossings.add(crossing);
            }
        }
        return crossings;
    }

    /** What is to be known before a stretch of the bar of this index is played. */
    List<String> known(int bar, Fraction from, Fraction to, Wording words, NoteWords notes) {
        return fall
                .filter(each -> isWithin(each, bar, from, to))
                .map(each -> words.say(
                        "crossing.fall",
                        words.name(name(each.before()).orElseThrow()),
                        notes.string(each.before().note().string()),
                        words.name(name(each.here()).orElseThrow()),
                        notes.string(each.here().note().string())))
                .stream()
                .toList();
    }

    /** Sentences about a stretch of the bar of this index that was played. */
    List<String> remarks(int bar, Fraction from, Fraction to, Wording words) {
        return leap
                .filter(each -> isWithin(each, bar, from, to))
                .map(each -> words.counted("crossing.leap", Math.abs(each.strings()) - 1))
                .stream()
                .toList();
    }

    /** As it is spelled; none of a dead note. */
    private Optional<NoteName> name(Stroke stroke) {
        var at = NoteAt.of(stroke.at().bar() + line.firstNumber(), stroke.note());
        return tones.stream()
                .filter(tone -> tone.at().equals(at))
                .map(tone -> tone.pitch().name())
                .findFirst();
    }

    private static boolean isWithin(Crossing crossing, int bar, Fraction from, Fraction to) {
        var at = crossing.at();
        return at.bar() == bar && !at.at().isBefore(from) && at.at().isBefore(to);
    }
}
