package groundbass.performance;

import groundbass.score.Arrival;
import groundbass.score.Dynamic;
import groundbass.score.Note;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Technique;

/**
 * How hard a stroke is, as MIDI counts it and beyond. rule: stroke-velocities, legato-velocity; what they leave out is common
 * practice, no source.
 */
final class Velocity {
    private static final int NORMAL = 96;
    private static final int ACCENT = 16;
    private static final int MARCATO = 24;
    private static final int DEAD = 38;
    private static final int GHOST = 45;

    private static final int WHOLE = 120;
    private static final int BEYOND = 8;
    private static final int HIGHEST = 127;

    private Velocity() {}

    /**
     * Of a note with a stroke of its own.
     *
     * @param normal what a normal stroke has at this loudness
     */
    static int struck(Note note, Technique hand, int normal) {
        int plain = note.isDead() ? DEAD : note.has(Mark.GHOST) ? GHOST : of(hand);
        return Math.max(1, scaled(plain, normal, NORMAL) + accent(note));
    }

    /** Of a note that the fretting hand makes out of one that sounds. */
    static int continued(Note note, Arrival.Kind by, int source) {
        int ghosted = note.has(Mark.GHOST) ? Math.min(source, GHOST) : source;
        return Math.max(1, scaled(ghosted, percent(by), 100) + accent(note));
    }

    private static int accent(Note note) {
        return note.has(Mark.MARCATO) ? MARCATO : note.has(Mark.ACCENT) ? ACCENT : 0;
    }

    private static int of(Technique hand) {
        return switch (hand) {
            case SLAP, THUMB_DOWN -> 112;
            case POP -> 120;
            case THUMB_UP -> 106;
            case PICK, TAP -> 100;
            case FINGER, INDEX, MIDDLE, PLUCK -> NORMAL;
            case THUMB -> 92;
            case MUTE -> 80;
            case RAKE -> 64;
            case LEFT_HAND -> 56;
        };
    }

    /** What a normal stroke becomes. */
    static int of(Dynamic dynamic) {
        return switch (dynamic) {
            case PP -> 48;
            case P -> 64;
            case MP -> 80;
            case MF -> NORMAL;
            case F -> 108;
            case FF -> 120;
        };
    }

    private static int percent(Arrival.Kind by) {
        return switch (by) {
            case HAMMER -> 72;
            case PULL -> 67;
            case SLIDE -> 75;
        };
    }

    private static int scaled(int value, int numerator, int denominator) {
        return (value * numerator + denominator / 2) / denominator;
    }

    /** What MIDI can say of it: all of it up to {@value #WHOLE}, an eighth of what goes beyond. */
    static int midi(int force) {
        return force <= WHOLE ? force : Math.min(HIGHEST, WHOLE + (force - WHOLE) / BEYOND);
    }
}
