package groundbass.walkthrough;

import groundbass.score.Bar;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Ornaments.Spread;
import groundbass.score.Technique;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What a line shows for the first time, and where: techniques that are worth a word. */
final class Firsts {
    /** Two strings popped at once. */
    static final String TWO_POPS = "pops";

    private final Map<Where, List<String>> techniques = new HashMap<>();
    private final Set<String> seen = new HashSet<>();

    private final int firstFullBar;

    /** A time in a bar of this index. */
    private record Where(int bar, Fraction at) {}

    Firsts(Line line) {
        firstFullBar = line.bars().get(0).isPickup() ? 1 : 0;
        for (int i = 0; i < line.bars().size(); i++) {
            var bar = line.bars().get(i);
            note(i, bar);
        }
    }

    /** The names of what comes for the first time in a stretch, as keys of messages. */
    List<String> techniques(int bar, Fraction from, Fraction to) {
        return techniques.entrySet().stream()
                .filter(entry -> entry.getKey().bar() == bar)
                .filter(entry -> !entry.getKey().at().isBefore(from)
                        && entry.getKey().at().isBefore(to))
                .sorted(Map.Entry.comparingByKey(Comparator.comparing(Where::at)))
                .flatMap(entry -> entry.getValue().stream())
                .toList();
    }

    /** Whether only a pickup comes before the bar of this index. */
    boolean isFirstFullBar(int bar) {
        return bar == firstFullBar;
    }

    private void note(int index, Bar bar) {
        for (var note : bar.notes()) {
            var features = features(note);
            if (isStruckWithAnother(note, Technique.POP, bar)) {
                features.add(TWO_POPS);
            }
            if (isStruckWithAnother(note, Technique.PLUCK, bar)) {
                features.add(Technique.PLUCK.word());
            }
            features.stream().filter(seen::add).forEach(feature -> techniques
                    .computeIfAbsent(new Where(index, note.onset()), where -> new ArrayList<>())
                    .add(feature));
        }
    }

    /** Whether two strings are struck in such a way at once. */
    private static boolean isStruckWithAnother(Note note, Technique technique, Bar bar) {
        return isStruck(note, technique)
                && bar.notes().stream()
                        .anyMatch(other -> isStruck(other, technique)
                                && other.string() != note.string()
                                && other.onset().equals(note.onset()));
    }

    private static boolean isStruck(Note note, Technique technique) {
        return note.pluck().equals(Optional.of(technique));
    }

    private static List<String> features(Note note) {
        var features = new ArrayList<String>();
        note.pluck().filter(Firsts::isWorthAWord).ifPresent(technique -> features.add(technique.word()));
        note.arrival().ifPresent(arrival -> features.add(arrival.kind().word()));
        if (note.isDead()) {
            features.add("dead");
        }
        if (note.has(Mark.GHOST)) {
            features.add("ghost");
        }
        note.ornaments().harmonic().ifPresent(harmonic -> features.add("harmonic"));
        note.ornaments().bend().ifPresent(bend -> features.add("bend"));
        note.ornaments().trill().ifPresent(trill -> features.add("trill"));
        note.ornaments().spread().filter(Spread::isRolled).ifPresent(spread -> features.add("roll"));
        return features;
    }

    /** What thumb, one finger or pick do goes without saying; several fingers at once do not, and are looked for apart. */
    private static boolean isWorthAWord(Technique technique) {
        return switch (technique) {
            case SLAP, POP, THUMB_DOWN, THUMB_UP, TAP, MUTE, RAKE, LEFT_HAND, FINGER -> true;
            case THUMB, INDEX, MIDDLE, PICK, PLUCK -> false;
        };
    }
}
