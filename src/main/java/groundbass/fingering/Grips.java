package groundbass.fingering;

import groundbass.fingering.Cost.Part;
import groundbass.score.Place;
import groundbass.score.Place.Fretted;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/** Every grip that a hand has for a moment: positions, places and fingers that go together. */
final class Grips {
    /** Which fingers stop a fret so far above the index, and which may be asked to. */
    private static final int[][] BY_OFFSET = {{1}, {2, 3}, {2, 3, 4}, {3, 4}, {4}};

    private static final int[][] IF_ASKED = {{1}, {2, 3, 4}, {2, 3, 4}, {2, 3, 4}, {3, 4}};

    private final Effort effort;
    private final int frets;

    Grips(Fretboard neck, Effort effort) {
        this.effort = effort;
        this.frets = neck.frets();
    }

    /**
     * The grips of every moment; empty only where a note of it is not on the neck. A hand that stops no string stands
     * where it was or where it is needed next, and not elsewhere.
     */
    List<List<Hold>> of(List<SoundingMoment> moments) {
        var all = new ArrayList<List<Hold>>();
        Map<List<NoteConstraint>, List<Hold>> known = new HashMap<>();
        for (var moment : moments) {
            all.add(known.computeIfAbsent(moment.notes(), notes -> of(moment)));
        }
        return new Resting(all).all();
    }

    private List<Hold> of(SoundingMoment moment) {
        var holds = new ArrayList<Hold>();
        for (int position = 1; position <= frets; position++) {
            new Hands(moment, position, holds).choose(0);
        }
        if (holds.isEmpty()
                && moment.notes().stream().noneMatch(note -> note.places().isEmpty())) {
            holds.add(forced(moment));
        }
        return holds;
    }

    /** Chooses place and finger of one note after the other, in one position. */
    private final class Hands {
        private final SoundingMoment moment;
        private final int position;
        private final List<Hold> found;
        private final int[] strings;
        private final int[] frets;
        private final int[] fingers;

        Hands(SoundingMoment moment, int position, List<Hold> found) {
            int size = moment.notes().size();
            this.moment = moment;
            this.position = position;
            this.found = found;
            this.strings = new int[size];
            this.frets = new int[size];
            this.fingers = new int[size];
        }

        void choose(int note) {
            if (note == strings.length) {
                if (IntStream.range(0, note).anyMatch(this::isBarred)) {
                    return;
                }
                var parts = effort.of(moment, position, strings, frets, fingers);
                found.add(new Hold(position, strings.clone(), frets.clone(), fingers.clone(), parts));
                return;
            }
            for (var place : moment.notes().get(note).places()) {
                place(note, place);
            }
        }

        private void place(int note, Place place) {
            strings[note] = place.string();
            if (isTaken(note)) {
                return;
            }
            frets[note] = place instanceof Fretted fretted ? fretted.fret() : Hold.DEAD;
            if (frets[note] <= 0 || moment.notes().get(note).isTapped()) {
                fingers[note] = 0;
                choose(note + 1);
                return;
            }
            int offset = frets[note] - position;
            if (offset >= 0 && offset < BY_OFFSET.length) {
                var asked = moment.notes().get(note).finger();
                for (int finger : (asked.isPresent() ? IF_ASKED : BY_OFFSET)[offset]) {
                    if (asked.isEmpty() || asked.getAsInt() == finger) {
                        finger(note, finger);
                    }
                }
            }
        }

        private void finger(int note, int finger) {
            fingers[note] = finger;
            if (isNatural(note)) {
                choose(note + 1);
            }
        }

        private boolean isTaken(int note) {
            for (int i = 0; i < note; i++) {
                if (strings[i] == strings[note]) {
                    return true;
                }
            }
            return false;
        }

        /** A finger stops one fret, more than one string only as a barre, and fingers do not cross. */
        private boolean isNatural(int note) {
            for (int i = 0; i < note; i++) {
                if (fingers[i] > 0 && !goTogether(i, note)) {
                    return false;
                }
            }
            return true;
        }

        private boolean goTogether(int one, int other) {
            int frets = Integer.compare(this.frets[other], this.frets[one]);
            int fingers = Integer.compare(this.fingers[other], this.fingers[one]);
            if (frets != 0) {
                return frets == fingers;
            }
            // at one fret the index side belongs to the lower strings
            return fingers == 0 || fingers == Integer.compare(strings[one], strings[other]);
        }

        /** A finger across several strings leaves no lower fret sounding between them. */
        private boolean isBarred(int note) {
            for (int one = 0; one < strings.length; one++) {
                for (int other = 0; other < strings.length && frets[note] >= 0; other++) {
                    boolean barre = fingers[one] > 0 && fingers[one] == fingers[other];
                    if (barre && isBetween(note, one, other) && frets[note] < frets[one]) {
                        return true;
                    }
                }
            }
            return false;
        }

        private boolean isBetween(int note, int low, int high) {
            return strings[note] < strings[low] && strings[note] > strings[high];
        }
    }

    /** What is written though no hand can do it: still something to show, at a price that tells. */
    private Hold forced(SoundingMoment moment) {
        int size = moment.notes().size();
        var strings = new int[size];
        var stopped = new int[size];
        var fingers = new int[size];
        int lowest = Integer.MAX_VALUE;
        for (int i = 0; i < size; i++) {
            var place = moment.notes().get(i).places().get(0);
            strings[i] = place.string();
            stopped[i] = place instanceof Fretted fretted ? fretted.fret() : Hold.DEAD;
            fingers[i] = stopped[i] > 0 ? 1 : 0;
            lowest = stopped[i] > 0 ? Math.min(lowest, stopped[i]) : lowest;
        }
        for (int i = 0; i < size; i++) {
            fingers[i] = stopped[i] > lowest ? Math.min(Hand.FINGERS, 1 + stopped[i] - lowest) : fingers[i];
        }
        int position = lowest == Integer.MAX_VALUE ? 1 : lowest;
        var parts = effort.of(moment, position, strings, stopped, fingers);
        parts[Part.IMPOSSIBLE.ordinal()] += Effort.IMPOSSIBLE;
        return new Hold(position, strings, stopped, fingers, parts);
    }
}
