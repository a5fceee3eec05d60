package groundbass.writing;

import groundbass.score.Fraction;
import groundbass.writing.BeamGroup.Part;
import groundbass.writing.Element.Chord;
import groundbass.writing.Element.Rest;
import java.util.ArrayList;
import java.util.List;

/** Joins the elements of a voice by beams (rule: beam-examples). */
final class Beaming {
    private static final int THIRTY_SECOND_BEAMS = 3;

    private final List<Element> elements;
    private final List<TupletGroup> tuplets;
    private final BeamCells cells;
    private final Pulse pulse;

    Beaming(Pulse pulse, List<Element> elements, List<TupletGroup> tuplets) {
        this.pulse = pulse;
        this.elements = elements;
        this.tuplets = tuplets;
        this.cells = new BeamCells(pulse, elements, tuplets);
    }

    /** The groups in order; a beam neither begins nor ends on a rest (rule: beam-over-rests). */
    List<BeamGroup> groups() {
        var groups = new ArrayList<BeamGroup>();
        int first = -1;
        int last = -1;
        for (int i = 0; i < elements.size(); i++) {
            if (first >= 0 && !continues(last, i)) {
                close(groups, first, last);
                first = -1;
            }
            if (isBeamed(i)) {
                first = first < 0 ? i : first;
                last = i;
            }
        }
        if (first >= 0) {
            close(groups, first, last);
        }
        return groups;
    }

    /** Whether a run whose last note is {@code last} can still go on at {@code i}. */
    private boolean continues(int last, int i) {
        if (elements.get(i) instanceof Rest rest) {
            return !rest.hidden() && rest.value().base().beams() > 0;
        }
        return isBeamed(i) && (i == last + 1 ? cells.join(last, i) : cells.joinOverRest(last, i));
    }

    private boolean isBeamed(int i) {
        return elements.get(i) instanceof Chord && beams(i) > 0;
    }

    private int beams(int i) {
        return elements.get(i).value().base().beams();
    }

    private void close(List<BeamGroup> groups, int first, int last) {
        if (last == first) {
            return;
        }
        var parts = new ArrayList<List<Part>>();
        for (int i = first; i <= last; i++) {
            parts.add(new ArrayList<>());
        }
        for (int level = 1; level <= deepest(first, last); level++) {
            level(first, last, level, parts);
        }
        groups.add(new BeamGroup(first, parts));
    }

    private int deepest(int first, int last) {
        int deepest = 0;
        for (int i = first; i <= last; i++) {
            deepest = Math.max(deepest, isBeamed(i) ? beams(i) : 0);
        }
        return deepest;
    }

    /** Finds the stretches in which every note, and every rest between, has this level. */
    private void level(int first, int last, int level, List<List<Part>> parts) {
        boolean breaks = level > 1 && deepest(first, last) >= THIRTY_SECOND_BEAMS;
        var stretch = new ArrayList<Integer>();
        for (int i = first; i <= last; i++) {
            int before = stretch.isEmpty() ? i : stretch.get(stretch.size() - 1);
            boolean ends = beams(i) < level
                    || (breaks && cells.crossesEighth(before, i))
                    || (level > 1 && cells.crossesTuplet(before, i));
            if (ends) {
                draw(stretch, first, last, level, parts);
                stretch.clear();
            }
            if (isBeamed(i) && beams(i) >= level) {
                stretch.add(i);
            }
        }
        draw(stretch, first, last, level, parts);
    }

    private void draw(List<Integer> stretch, int first, int last, int level, List<List<Part>> parts) {
        for (int i = 0; i < stretch.size(); i++) {
            int at = stretch.get(i);
            Part part;
            if (stretch.size() == 1) {
                part = hook(at, first, last, level);
            } else if (i == 0) {
                part = Part.BEGIN;
            } else {
                part = i + 1 == stretch.size() ? Part.END : Part.CONTINUE;
            }
            parts.get(at - first).add(part);
        }
    }

    /**
     * A partial beam points to the note with which it makes up the beat's division: forward from the first of a pair,
     * backward from the second (rule: beam-hooks).
     */
    private Part hook(int at, int first, int last, int level) {
        if (at == first) {
            return Part.FORWARD_HOOK;
        }
        if (at == last) {
            return Part.BACKWARD_HOOK;
        }
        var pair = Fraction.of(1, 2L << level);
        return shapeOffset(at).isOnGrid(pair) ? Part.FORWARD_HOOK : Part.BACKWARD_HOOK;
    }

    /** Where an element stands in its beat or tuplet, by the lengths of the shapes. */
    private Fraction shapeOffset(int at) {
        var onset = elements.get(at).onset();
        for (var tuplet : tuplets) {
            if (at >= tuplet.first() && at <= tuplet.last()) {
                return onset.minus(elements.get(tuplet.first()).onset())
                        .times(Fraction.of(tuplet.actual(), tuplet.normal()));
            }
        }
        return onset.minus(pulse.beatStart(onset));
    }
}
