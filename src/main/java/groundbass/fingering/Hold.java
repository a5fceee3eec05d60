package groundbass.fingering;

import groundbass.score.Place;
import java.util.ArrayList;
import java.util.List;

/** A grip as the search sees it: plain numbers, and what it costs by itself. */
final class Hold {
    static final int DEAD = -1;

    final int position;
    final int[] strings;
    final int[] frets;
    final int[] fingers;

    /** Whether no finger stops a string, so that the hand may wander. */
    final boolean free;

    final double[] parts;
    final double cost;

    Hold(int position, int[] strings, int[] frets, int[] fingers, double[] parts) {
        this.position = position;
        this.strings = strings;
        this.frets = frets;
        this.fingers = fingers;
        this.free = isFree(fingers);
        this.parts = parts;
        double sum = 0;
        for (double part : parts) {
            sum += part;
        }
        this.cost = sum;
    }

    /** The same for two holds with the same places, whatever the fingers. */
    long places() {
        long code = 17;
        for (int i = 0; i < strings.length; i++) {
            code = code * 1_000_003 + strings[i] * 64L + frets[i] + 1;
        }
        return code;
    }

    /** Which note lies on this string; -1 where none does. */
    int on(int string) {
        for (int i = 0; i < strings.length; i++) {
            if (strings[i] == string) {
                return i;
            }
        }
        return -1;
    }

    Grip toGrip() {
        List<Fingered> notes = new ArrayList<>();
        for (int i = 0; i < strings.length; i++) {
            var place = frets[i] == DEAD ? Place.dead(strings[i]) : Place.of(strings[i], frets[i]);
            notes.add(new Fingered(place, fingers[i]));
        }
        return new Grip(position, notes, parts[Cost.Part.IMPOSSIBLE.ordinal()] == 0);
    }

    private static boolean isFree(int[] fingers) {
        for (int finger : fingers) {
            if (finger > 0) {
                return false;
            }
        }
        return true;
    }
}
