package groundbass.writing;

import groundbass.score.Fraction;
import groundbass.writing.NoteValue.Base;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Which elements of a voice may share a beam: those in one cell. A cell is a beat, or more beats of nothing shorter
 * than eighths, or a tuplet (rule: beam-simple-metre, beam-compound-metre, beam-grouped-metre, beam-cut-time,
 * beam-tuplet-break).
 */
final class BeamCells {
    private static final Fraction QUARTER = Fraction.of(1, 4);
    private static final Fraction EIGHTH = Fraction.of(1, 8);

    private final Pulse pulse;
    private final List<Element> elements;
    private final List<TupletGroup> tuplets;
    private final Fraction beat;
    private final int[] tupletAt;
    private final Set<Integer> fineBeats = new HashSet<>();

    BeamCells(Pulse pulse, List<Element> elements, List<TupletGroup> tuplets) {
        this.pulse = pulse;
        this.elements = elements;
        this.tuplets = tuplets;
        this.beat = pulse.beatEnd(Fraction.ZERO);
        this.tupletAt = new int[elements.size()];
        for (int i = 0; i < tuplets.size(); i++) {
            for (int at = tuplets.get(i).first(); at <= tuplets.get(i).last(); at++) {
                tupletAt[at] = i + 1;
            }
        }
        for (int i = 0; i < elements.size(); i++) {
            if (tupletAt[i] > 0 || elements.get(i).value().base().beams() > 1) {
                fineBeats.add(pulse.beatAt(elements.get(i).onset()));
            }
        }
    }

    /** Whether two elements, in order, lie in one cell. */
    boolean join(int earlier, int later) {
        if (crossesTuplet(earlier, later)) {
            return isOfOneBeat(earlier) && isOfOneBeat(later) && sharesBeat(earlier, later);
        }
        if (tupletAt[earlier] > 0) {
            return true;
        }
        var from = elements.get(earlier).onset();
        var to = elements.get(later).onset();
        return cell(from).equals(cell(to));
    }

    /** Whether a rest between two notes may lie under their beam: within one beat (rule: beam-over-rests). */
    boolean joinOverRest(int earlier, int later) {
        boolean inTuplet = tupletAt[earlier] > 0 && !crossesTuplet(earlier, later);
        return join(earlier, later) && (inTuplet || sharesBeat(earlier, later));
    }

    /** Whether a tuplet begins or ends between two elements: there only the first beam goes on (rule: beam-tuplet-break). */
    boolean crossesTuplet(int earlier, int later) {
        return tupletAt[earlier] != tupletAt[later];
    }

    private boolean sharesBeat(int earlier, int later) {
        return beatStart(elements.get(earlier).onset())
                .equals(beatStart(elements.get(later).onset()));
    }

    /** Whether an element stands in no tuplet, or in one that begins and ends in one beat. */
    private boolean isOfOneBeat(int at) {
        int tuplet = tupletAt[at] - 1;
        return tuplet < 0
                || sharesBeat(tuplets.get(tuplet).first(), tuplets.get(tuplet).last());
    }

    /** Where the cell that {@code at} lies in begins. */
    private Fraction cell(Fraction at) {
        int index = pulse.beatAt(at);
        if (!pulse.isSimple()) {
            return fineBeats.contains(index)
                    ? beatStart(at)
                    : pulse.beatStarts().get(index);
        }
        if (beat.isAfter(QUARTER)) {
            return fineBeats.contains(index) ? at.minus(at.modulo(QUARTER)) : pulse.beatStart(at);
        }
        int group = beatsJoined(index);
        return pulse.beatStarts().get(index - index % group);
    }

    /** Where the beat begins; in grouped metres of quarters each quarter is one, although a group joins its eighths. */
    private Fraction beatStart(Fraction at) {
        var start = pulse.beatStart(at);
        boolean groupsQuarters = !pulse.isSimple() && !pulse.unit().isBefore(QUARTER);
        return groupsQuarters ? at.minus(at.minus(start).modulo(pulse.unit())) : start;
    }

    /** Eighths join over half a bar of 4/4 and over the whole of 2/4, sixes of them over 3/4. */
    private int beatsJoined(int index) {
        if (beat.isBefore(QUARTER)) {
            return Math.toIntExact(QUARTER.dividedBy(beat).floor());
        }
        if (pulse.beatCount() == 3) {
            return isSixEighths() ? 3 : 1;
        }
        boolean pairs = pulse.beatCount() == 2 || pulse.beatCount() == 4;
        int first = index - index % 2;
        return pairs && !fineBeats.contains(first) && !fineBeats.contains(first + 1) ? 2 : 1;
    }

    private boolean isSixEighths() {
        return elements.size() == 6
                && elements.stream()
                        .allMatch(element -> element instanceof Element.Chord
                                && element.value().equals(NoteValue.of(Base.EIGHTH)));
    }

    /**
     * Whether only the first beam goes on from one note to the next: at each eighth among 32nds (rule:
     * beam-secondary-break).
     */
    boolean crossesEighth(int earlier, int later) {
        var start = pulse.beatStart(elements.get(later).onset());
        var from = elements.get(earlier).onset().minus(start);
        var to = elements.get(later).onset().minus(start);
        return tupletAt[later] == 0
                && from.dividedBy(EIGHTH).floor() != to.dividedBy(EIGHTH).floor();
    }
}
