package groundbass.walkthrough.stretch;

import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.writing.Element;
import groundbass.writing.Element.Chord;
import groundbass.writing.Element.Rest;
import groundbass.writing.TupletGroup;
import groundbass.writing.Voice;
import groundbass.writing.WrittenBar;
import java.util.ArrayList;
import java.util.List;

/** A part of a bar that is told in one step, and what happens in it. Times count from the bar's first count. */
public record Stretch(Fraction from, Fraction to, Kind kind) {
    /** What there is to tell. */
    public enum Kind {
        PLAY,
        HOLD,
        REST
    }

    /**
     * The beats of a bar; those under one tuplet are together, those in which nothing begins, and those that have one note
     * each, as long as the beat.
     */
    public static List<Stretch> of(WrittenBar bar) {
        var cuts = cuts(bar);
        var stretches = new ArrayList<Stretch>();
        for (int i = 0; i + 1 < cuts.size(); i++) {
            add(stretches, stretch(bar, cuts.get(i), cuts.get(i + 1)));
        }
        return stretches;
    }

    private static void add(List<Stretch> stretches, Stretch next) {
        int last = stretches.size() - 1;
        if (last >= 0 && next.kind() != Kind.PLAY && stretches.get(last).kind() == next.kind()) {
            stretches.set(last, new Stretch(stretches.get(last).from(), next.to(), next.kind()));
        } else {
            stretches.add(next);
        }
    }

    private static List<Fraction> cuts(WrittenBar written) {
        var bar = written.bar();
        var cuts = new ArrayList<Fraction>();
        cuts.add(bar.from());
        written.inForce().meter().beatStarts().stream()
                .filter(start -> start.isAfter(bar.from()) && start.isBefore(bar.to()))
                .filter(start -> written.voices().stream().noneMatch(voice -> isInsideTuplet(voice, start)))
                .filter(start -> !isWalking(written, start))
                .filter(start -> !isUnderHeldNote(written, start))
                .forEach(cuts::add);
        cuts.add(bar.to());
        return cuts;
    }

    /** Whether a moment parts two notes that last one beat each. */
    private static boolean isWalking(WrittenBar written, Fraction start) {
        var meter = written.inForce().meter();
        var elements = written.voices().get(0).elements();
        return written.voices().size() == 1
                && elements.stream()
                        .anyMatch(element -> isBeat(element, meter)
                                && element.onset().plus(element.length()).equals(start))
                && elements.stream()
                        .anyMatch(element ->
                                isBeat(element, meter) && element.onset().equals(start));
    }

    /** Whether a moment lies within a note of two beats that begins with one and has another voice above it. */
    private static boolean isUnderHeldNote(WrittenBar written, Fraction start) {
        var meter = written.inForce().meter();
        return written.voices().size() > 1
                && written.voices().get(1).elements().stream()
                        .filter(element -> element instanceof Chord && !RhythmWords.isHeld(element))
                        .filter(element -> meter.beatStart(element.onset()).equals(element.onset()))
                        .filter(element -> meter.beatEnd(element.onset()).equals(start))
                        .anyMatch(element ->
                                element.onset().plus(element.length()).equals(meter.beatEnd(start)));
    }

    private static boolean isBeat(Element element, Meter meter) {
        return element instanceof Chord
                && !RhythmWords.isHeld(element)
                && isBeat(element.onset(), element.onset().plus(element.length()), meter);
    }

    private static boolean isInsideTuplet(Voice voice, Fraction at) {
        return voice.tuplets().stream().anyMatch(group -> isInside(voice, group, at));
    }

    private static boolean isInside(Voice voice, TupletGroup group, Fraction at) {
        var last = voice.elements().get(group.last());
        return at.isAfter(voice.elements().get(group.first()).onset())
                && at.isBefore(last.onset().plus(last.length()));
    }

    /** What a voice that rests does is not asked where another sounds. */
    private static Stretch stretch(WrittenBar bar, Fraction from, Fraction to) {
        var kinds = bar.voices().stream()
                .map(voice -> kind(voice, from, to))
                .filter(kind -> kind != Kind.REST)
                .distinct()
                .toList();
        if (kinds.isEmpty()) {
            return new Stretch(from, to, Kind.REST);
        }
        return new Stretch(from, to, kinds.size() == 1 ? kinds.get(0) : Kind.PLAY);
    }

    /** Whether it is one beat, from its beginning to its end. */
    public boolean isBeat(Meter meter) {
        return isBeat(from, to, meter);
    }

    static boolean isBeat(Fraction from, Fraction to, Meter meter) {
        return meter.beatStart(from).equals(from) && meter.beatEnd(from).equals(to);
    }

    public boolean contains(Fraction at) {
        return !at.isBefore(from) && at.isBefore(to);
    }

    /** What sounds or rests in it, also what began before. */
    public List<Element> elements(Voice voice) {
        return within(voice, from, to);
    }

    /** What one voice does between two times. */
    public static Kind kind(Voice voice, Fraction from, Fraction to) {
        var here = within(voice, from, to);
        if (here.stream().allMatch(element -> element instanceof Rest)) {
            return Kind.REST;
        }
        boolean carriesOn = here.stream()
                .allMatch(element ->
                        element instanceof Chord && (element.onset().isBefore(from) || RhythmWords.isHeld(element)));
        return carriesOn ? Kind.HOLD : Kind.PLAY;
    }

    private static List<Element> within(Voice voice, Fraction from, Fraction to) {
        return voice.elements().stream()
                .filter(element -> element.onset().isBefore(to)
                        && element.onset().plus(element.length()).isAfter(from))
                .toList();
    }
}
