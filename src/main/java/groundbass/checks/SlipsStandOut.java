package groundbass.checks;

import groundbass.checks.kin.Figure;
import groundbass.checks.kin.Kin;
import groundbass.checks.kin.Likeness.OtherPlace;
import groundbass.performance.Played;
import groundbass.remark.Severity;
import groundbass.score.NoteAt;
import groundbass.score.Place;
import groundbass.score.Place.Fretted;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A note that stands at one place where everything speaks for another: the same figure elsewhere, chord and key, the notes
 * around it, and how easily the one is typed for the other. The last note of a bar and the last bar of four vary on
 * purpose. What speaks how much is ours (rule: slip-weights).
 */
final class SlipsStandOut implements Rule {
    private static final double ENOUGH = 4;
    private static final double ENOUGH_ALONE = 4.5;
    private static final double MOST_LIKE = 4;
    private static final double SAME = 2;
    private static final double MOST_SAME = 6;
    private static final int MANY = 3;
    private static final int LONG = 6;
    private static final int ENOUGH_SHARED = 4;
    private static final double UNANIMOUS = 0.5;
    private static final double MAKES_SENSE = 1;
    private static final double LAST_NOTE = 0.5;
    private static final double LEADS_ON = 3;
    private static final double TURN = 2;
    private static final double LAST_BAR = 0.5;
    private static final double OCTAVE_LEAP = 1.5;
    private static final int MOST_IN_A_BAR = 2;
    private static final Comparator<Suspicion> STRONGEST =
            Comparator.comparingDouble(Suspicion::weight).reversed();

    /**
     * A note and what was likely meant.
     *
     * @param bar one that has the other place; empty where none does
     * @param witnesses the notes that have it
     */
    private record Suspicion(Played note, Place meant, Optional<Integer> bar, List<NoteAt> witnesses, double weight) {
        static Suspicion alone(Played note, Place meant, double weight) {
            return new Suspicion(note, meant, Optional.empty(), List.of(), weight);
        }

        boolean isStrong() {
            return weight >= (bar.isPresent() ? ENOUGH : ENOUGH_ALONE);
        }
    }

    @Override
    public Stream<Finding> findings(Evidence evidence) {
        var roots = new RootHabit(evidence);
        var strong = Stream.concat(byKin(evidence, roots), alone(evidence, roots))
                .filter(Suspicion::isStrong)
                .sorted(STRONGEST)
                .toList();
        return suspects(strong)
                .collect(Collectors.groupingBy(
                        each -> each.note().at().position().bar()))
                .values()
                .stream()
                .filter(inBar -> inBar.size() <= MOST_IN_A_BAR)
                .flatMap(List::stream)
                .map(each -> finding(evidence, each));
    }

    /** Each note once, and none that has testified: of two that differ, one is wrong. */
    private static Stream<Suspicion> suspects(List<Suspicion> strongestFirst) {
        var heard = new HashSet<NoteAt>();
        return strongestFirst.stream()
                .filter(each -> heard.add(each.note().at()))
                .peek(each -> heard.addAll(each.witnesses()));
    }

    private static Stream<Suspicion> byKin(Evidence evidence, RootHabit roots) {
        var kin = Kin.in(evidence.line()).stream()
                .filter(each -> each.deviation() instanceof OtherPlace)
                .toList();
        var others = kin.stream()
                .collect(Collectors.groupingBy(SlipsStandOut::about, Collectors.summingInt(each -> each.like()
                        .size())));
        return kin.stream().flatMap(each -> suspicion(evidence, roots, each, others.get(about(each))).stream());
    }

    /** Figure and note: where others disagree among themselves about it, none of them tells what was meant. */
    private static List<Object> about(Kin kin) {
        var figure = kin.figure();
        return List.of(figure.at(kin.deviation().note()), figure.from(), figure.length());
    }

    private static Optional<Suspicion> suspicion(Evidence evidence, RootHabit roots, Kin kin, int others) {
        var place = ((OtherPlace) kin.deviation()).expected();
        var note = evidence.note(kin.figure().at(kin.deviation().note()));
        if (note == null || !isOnNeck(evidence, place) || !isClear(evidence, note, kin, others)) {
            return Optional.empty();
        }
        var sense = new PlaceSense(evidence, note, roots.holdsFor(note));
        boolean elsewhereToo = sense.belongs(place) && hasItsDegree(evidence, kin, sense, place);
        double harmony = sense.harmony(place) - (sense.makesSense() ? MAKES_SENSE : 0);
        double weight = support(kin)
                - Math.min(MOST_SAME, SAME * same(evidence, kin, sense))
                + (elsewhereToo ? Math.max(0, harmony) : harmony)
                + sense.neighbourhood(place)
                + Misprint.ease(note.note().place(), place)
                - (sense.isOctaveOf(place) ? OCTAVE_LEAP : 0)
                - freedom(evidence, note, sense, kin);
        var witnesses = witnesses(kin, kin.like());
        return Optional.of(new Suspicion(
                note, place, Optional.of(witnesses.get(0).position().bar()), witnesses, weight));
    }

    /**
     * A figure tells of a note where it goes on after it; of the last one of a bar, where most others agree about it. Dead
     * notes come and go more freely.
     */
    private static boolean isClear(Evidence evidence, Played note, Kin kin, int others) {
        var place = ((OtherPlace) kin.deviation()).expected();
        boolean deadOnce = note.note().isDead() == place instanceof Fretted;
        boolean agreed = isLast(evidence, note) ? 2 * kin.like().size() > others : kin.isEnclosed();
        return agreed && (!deadOnce || kin.shared() >= ENOUGH_SHARED);
    }

    private static boolean isLast(Evidence evidence, Played note) {
        var notes = evidence.line().bar(note.at().position().bar()).notes();
        return notes.get(notes.size() - 1).equals(note.note());
    }

    /** How many figures go the same way, with a note that belongs to its chord as little as this one. */
    private static long same(Evidence evidence, Kin kin, PlaceSense sense) {
        return witnesses(kin, kin.same()).stream()
                .map(evidence::note)
                .filter(Objects::nonNull)
                .map(other -> new PlaceSense(evidence, other, false))
                .filter(other -> sense.isInChord() || !other.isInChord())
                .count();
    }

    private static List<NoteAt> witnesses(Kin kin, List<Figure> figures) {
        return figures.stream().map(figure -> figure.at(kin.deviation().note())).toList();
    }

    /** How much the figures speak that have the other place: the more of them, and the longer; a short one alone says little. */
    private static double support(Kin kin) {
        int shared = kin.shared();
        int many = kin.like().size();
        double each = alike(shared);
        double several = many > 1 || shared >= ENOUGH_SHARED ? 1 : 0;
        return Math.min(MOST_LIKE, several + each * many) + (many >= MANY ? UNANIMOUS : 0);
    }

    private static double alike(int shared) {
        return shared > LONG ? 2 : shared == LONG ? 1.5 : shared >= ENOUGH_SHARED ? 1 : shared == 3 ? 0.8 : 0.5;
    }

    /** Whether so many long figures have the other place that variation is no good reason. */
    private static boolean isUnanimous(Kin kin) {
        return kin.like().size() >= MANY && kin.shared() >= LONG && kin.same().isEmpty();
    }

    /** Whether the place would be over its chord what the figures' own notes are over theirs; one alone has to stand still. */
    private static boolean hasItsDegree(Evidence evidence, Kin kin, PlaceSense sense, Place place) {
        var like = evidence.note(kin.like().get(0).at(kin.deviation().note()));
        if (like == null || (kin.like().size() == 1 && !like.note().place().equals(place))) {
            return false;
        }
        var there = new PlaceSense(evidence, like, false).aboveRoot(like.note().place());
        return !(place instanceof Fretted) || (there.isPresent() && there.equals(sense.aboveRoot(place)));
    }

    private static boolean isOnNeck(Evidence evidence, Place place) {
        var header = evidence.line().header();
        boolean inReach = !(place instanceof Fretted fretted) || fretted.fret() <= header.frets();
        return inReach && place.string() <= header.tuning().size();
    }

    /** Without kin, only where the place that was likely meant suits the note much better. */
    private static Stream<Suspicion> alone(Evidence evidence, RootHabit roots) {
        return evidence.notes().stream()
                .filter(note -> note.note().place() instanceof Fretted
                        && note.note().ornaments().harmonic().isEmpty())
                .flatMap(note -> alone(evidence, note, roots.holdsFor(note)));
    }

    private static Stream<Suspicion> alone(Evidence evidence, Played note, boolean rootAsUsual) {
        var header = evidence.line().header();
        var sense = new PlaceSense(evidence, note, rootAsUsual);
        var written = (Fretted) note.note().place();
        double reasons = (sense.makesSense() ? MAKES_SENSE : 0) + (isLast(evidence, note) ? LAST_NOTE : 0);
        return Misprint.meant(written, header.tuning().size(), header.frets())
                .filter(place -> !sense.isSamePitch(place))
                .map(place -> Suspicion.alone(
                        note,
                        place,
                        sense.harmony(place) + sense.neighbourhood(place) + Misprint.ease(written, place) - reasons));
    }

    /** How much a note may vary where it stands. */
    private static double freedom(Evidence evidence, Played note, PlaceSense sense, Kin kin) {
        int number = note.at().position().bar();
        boolean end = evidence.line().indexOf(number) == evidence.line().bars().size() - 1;
        double last = isLast(evidence, note) ? sense.leadsOn() ? LEADS_ON : LAST_NOTE : 0;
        return (isUnanimous(kin) ? last / 2 : last)
                + (Variation.isTurn(evidence, note.at()) ? TURN : 0)
                + (end ? LAST_BAR : 0);
    }

    private static Finding finding(Evidence evidence, Suspicion suspicion) {
        var note = suspicion.note();
        String written = evidence.typed(note.note().place());
        String meant = evidence.typed(suspicion.meant());
        var finding = suspicion
                .bar()
                .map(bar -> Finding.of(
                        evidence, "bar-nearly-repeats", Severity.WORTH_A_LOOK, List.of(note), written, meant, bar))
                .orElseGet(() -> Finding.of(
                        evidence, "place-in-question", Severity.WORTH_A_LOOK, List.of(note), written, meant));
        return finding.with(Repairs.place(evidence, note, suspicion.meant()));
    }
}
