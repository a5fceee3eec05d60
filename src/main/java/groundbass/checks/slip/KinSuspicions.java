package groundbass.checks.slip;

import groundbass.checks.finding.Evidence;
import groundbass.checks.kin.Figure;
import groundbass.checks.kin.Kin;
import groundbass.checks.kin.Likeness.OtherPlace;
import groundbass.performance.Played;
import groundbass.score.NoteAt;
import groundbass.score.Place;
import groundbass.score.Place.Fretted;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What figures elsewhere say of the place of a note (rule: slip-weights). */
final class KinSuspicions {
    private static final double MOST_LIKE = 4;
    private static final double SAME = 2;
    private static final double MOST_SAME = 6;
    private static final double SEVERAL = 0.5;
    private static final double OCTAVE_LEAP = 1.5;
    private static final int MANY = 3;
    private static final int LONG = 6;
    private static final int ENOUGH_SHARED = 4;

    private final Evidence evidence;
    private final RootHabit roots;

    KinSuspicions(Evidence evidence, RootHabit roots) {
        this.evidence = evidence;
        this.roots = roots;
    }

    Stream<Suspicion> all() {
        var kin = evidence.kin().stream()
                .filter(each -> each.deviation() instanceof OtherPlace)
                .toList();
        var others = others(kin);
        return kin.stream().flatMap(each -> suspicion(each, others.get(about(each))).stream());
    }

    /** How many figures would have a note otherwise, whichever way. */
    private static Map<List<Object>, Integer> others(List<Kin> kin) {
        return kin.stream()
                .collect(Collectors.groupingBy(KinSuspicions::about, Collectors.summingInt(each -> each.like()
                        .size())));
    }

    private static List<Object> about(Kin kin) {
        return List.of(kin.at(), kin.figure().from(), kin.figure().length());
    }

    private Optional<Suspicion> suspicion(Kin kin, int others) {
        var place = ((OtherPlace) kin.deviation()).expected();
        return evidence.find(kin.at())
                .filter(note -> evidence.isOnNeck(note, place) && isClear(note, kin, others))
                .map(note -> suspicion(note, kin, place));
    }

    private Suspicion suspicion(Played note, Kin kin, Place place) {
        var sense = new PlaceSense(evidence, note, roots.holdsFor(note));
        double harmony = sense.harmony(place) - sense.reason();
        double weight = support(kin)
                - Math.min(MOST_SAME, SAME * same(kin, sense))
                + (hasItsDegree(kin, sense, place) ? Math.max(0, harmony) : harmony)
                + sense.neighbourhood(place)
                + Misprint.ease(note.note().place(), place)
                - (sense.isOctaveOf(place) ? OCTAVE_LEAP : 0)
                - MeantVariation.freedom(evidence, note.at(), sense.leadsOn(), isUnanimous(kin));
        var witnesses = notes(kin, kin.like());
        return new Suspicion(
                note, place, Optional.of(witnesses.get(0).position().bar()), witnesses, weight);
    }

    /**
     * A figure tells of a note where it goes on after it; of the last one of a bar, where most others agree about it. Dead
     * notes come and go more freely.
     */
    private boolean isClear(Played note, Kin kin, int others) {
        boolean deadOnce = note.note().isDead() == ((OtherPlace) kin.deviation()).expected() instanceof Fretted;
        boolean agreed =
                MeantVariation.isLastOfBar(evidence, note.at()) ? 2 * kin.like().size() > others : kin.isEnclosed();
        return agreed && (!deadOnce || kin.shared() >= ENOUGH_SHARED);
    }

    /** How much the figures speak that have the other place: the more of them, and the longer; a short one alone says little. */
    private static double support(Kin kin) {
        int many = kin.like().size();
        double several = many > 1 || kin.shared() >= ENOUGH_SHARED ? 1 : 0;
        return Math.min(MOST_LIKE, several + alike(kin.shared()) * many) + (many >= MANY ? SEVERAL : 0);
    }

    private static double alike(int shared) {
        return shared > LONG ? 2 : shared == LONG ? 1.5 : shared >= ENOUGH_SHARED ? 1 : shared == 3 ? 0.8 : 0.5;
    }

    /** Whether so many long figures have the other place that variation is no good reason. */
    private static boolean isUnanimous(Kin kin) {
        return kin.like().size() >= MANY && kin.shared() >= LONG && kin.same().isEmpty();
    }

    /** How many figures go the same way, with a note that belongs to its chord as little as this one. */
    private long same(Kin kin, PlaceSense sense) {
        return notes(kin, kin.same()).stream()
                .filter(other -> sense.isInChord() || !evidence.isInChord(other))
                .count();
    }

    /** Whether the place would be over its chord what the figures' own notes are over theirs; one alone has to stand still. */
    private boolean hasItsDegree(Kin kin, PlaceSense sense, Place place) {
        var like = evidence.find(notes(kin, kin.like()).get(0));
        if (!sense.belongs(place) || like.isEmpty()) {
            return false;
        }
        var there = like.get().note().place();
        if (kin.like().size() == 1 && !there.equals(place)) {
            return false;
        }
        var degree = new PlaceSense(evidence, like.get(), false).aboveRoot(there);
        return !(place instanceof Fretted) || (degree.isPresent() && degree.equals(sense.aboveRoot(place)));
    }

    private static List<NoteAt> notes(Kin kin, List<Figure> figures) {
        return figures.stream().map(figure -> figure.at(kin.deviation().note())).toList();
    }
}
