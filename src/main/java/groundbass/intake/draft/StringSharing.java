package groundbass.intake.draft;

import groundbass.score.Place;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Whether notes that sound together can each have a string of their own: a matching that grows by augmenting paths
 * (Kuhn 1955; from memory).
 */
final class StringSharing {
    private final List<List<Place>> wanted;
    private final int[] noteOn;

    private StringSharing(List<List<Place>> wanted, int strings) {
        this.wanted = wanted;
        this.noteOn = new int[strings + 1];
        Arrays.fill(noteOn, -1);
    }

    /**
     * One place for each note, no two on one string; empty where there are too few strings.
     *
     * @param wanted where each note may be played
     */
    static Optional<List<Place>> of(List<List<Place>> wanted, int strings) {
        return new StringSharing(wanted, strings).share();
    }

    private Optional<List<Place>> share() {
        for (int note = 0; note < wanted.size(); note++) {
            if (!seat(note, new boolean[noteOn.length])) {
                return Optional.empty();
            }
        }
        var places = new ArrayList<>(wanted.stream().map(each -> each.get(0)).toList());
        for (int string = 1; string < noteOn.length; string++) {
            int on = string;
            if (noteOn[on] >= 0) {
                wanted.get(noteOn[on]).stream()
                        .filter(place -> place.string() == on)
                        .findFirst()
                        .ifPresent(place -> places.set(noteOn[on], place));
            }
        }
        return Optional.of(places);
    }

    private boolean seat(int note, boolean[] tried) {
        for (var place : wanted.get(note)) {
            int string = place.string();
            if (!tried[string]) {
                tried[string] = true;
                if (noteOn[string] < 0 || seat(noteOn[string], tried)) {
                    noteOn[string] = note;
                    return true;
                }
            }
        }
        return false;
    }
}
