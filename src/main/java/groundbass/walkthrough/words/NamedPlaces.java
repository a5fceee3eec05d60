package groundbass.walkthrough.words;

import groundbass.score.Place;
import groundbass.theory.NoteName;
import groundbass.writing.Head;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalInt;

/** What a listener of one step still has in mind of the neck: the string that was named last, and where each note was. */
final class NamedPlaces {
    private final Map<NoteName, Place> places = new HashMap<>();
    private OptionalInt string = OptionalInt.empty();

    /** Whether the string of this number was the last to be named. */
    boolean isOnString(int number) {
        return string.isPresent() && string.getAsInt() == number;
    }

    /** Whether a note of this name was last where this one is, so that nobody needs its address again. */
    boolean isKnown(Head head) {
        return !head.note().isDead()
                && head.note().place().equals(places.get(head.pitch().name()));
    }

    void name(Head head) {
        string = OptionalInt.of(head.note().string());
        put(head);
    }

    /** Several strings at once leave none that one could be on. */
    void nameTogether(Head head) {
        string = OptionalInt.empty();
        put(head);
    }

    /** A known place is called without its string: where it is another one, there is none that one could be on. */
    void recall(Head head) {
        string = isOnString(head.note().string()) ? string : OptionalInt.empty();
    }

    /** A harmonic is touched elsewhere than where its name lies. */
    private void put(Head head) {
        var name = head.pitch().name();
        if (head.note().ornaments().harmonic().isPresent()) {
            places.remove(name);
        } else if (!head.note().isDead()) {
            places.put(name, head.note().place());
        }
    }
}
