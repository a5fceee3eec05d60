package groundbass.braille;

import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.writing.Element;
import groundbass.writing.Element.Chord;
import groundbass.writing.Element.Rest;
import groundbass.writing.NoteValue;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Where a reader could take a shape for its other value, sixteen times as long or as short, and is told
 * (rule: braille-value-signs). A reader takes one shape for one value all through a bar, unless told otherwise, and
 * looks which values fill the bar.
 */
final class ValueSigns {
    private static final Fraction OTHER = Fraction.of(16);
    private static final Fraction QUARTER = Fraction.of(1, 4);

    private final List<Element> elements;
    private final Map<Integer, Cells> signs = new HashMap<>();

    private ValueSigns(List<Element> elements) {
        this.elements = elements;
    }

    /**
     * By the index of the element that the sign stands before.
     *
     * @param known the length that a reader knows the bar to have; empty for a bar that is not whole
     */
    static Map<Integer, Cells> of(List<Element> elements, Meter meter, Optional<Fraction> known) {
        var signs = new ValueSigns(elements);
        boolean wholeBar = elements.get(0) instanceof Rest rest && rest.wholeBar();
        if (!wholeBar) {
            signs.whereAShapeChanges();
            if (known.isEmpty() || signs.readings(known.get()) != 1) {
                signs.whereSmallerOnesBegin();
            }
            signs.whereEighthsLookGrouped(meter);
        }
        return signs.signs;
    }

    private void whereAShapeChanges() {
        var last = new HashMap<Integer, Boolean>();
        for (int i = 0; i < elements.size(); i++) {
            var before = last.put(shape(i), isSmaller(i));
            if (before != null && before != isSmaller(i)) {
                sign(i);
            }
        }
    }

    private void whereSmallerOnesBegin() {
        var met = new ArrayList<Integer>();
        for (int i = 0; i < elements.size(); i++) {
            if (!met.contains(shape(i)) && isSmaller(i)) {
                sign(i);
            }
            met.add(shape(i));
        }
    }

    /** A sixteenth on a beat before eighths looks like the first of a braille group, which has eighths for sixteenths. */
    private void whereEighthsLookGrouped(Meter meter) {
        for (int i = 0; i + 2 < elements.size(); i++) {
            boolean begins = isSmaller(i) && elements.get(i).value().dots() == 0 && beginsGroup(elements.get(i), meter);
            if (begins && isPlainEighth(i + 1) && isPlainEighth(i + 2)) {
                sign(i + 1);
            }
        }
    }

    private static boolean beginsGroup(Element element, Meter meter) {
        boolean quarter = element.onset().dividedBy(QUARTER).denominator() == 1;
        return meter.beatStarts().contains(element.onset()) || quarter && !meter.isCompound();
    }

    private boolean isPlainEighth(int index) {
        return elements.get(index) instanceof Chord chord && chord.value().equals(NoteValue.of(NoteValue.Base.EIGHTH));
    }

    /** How many ways of reading the shapes fill the bar, signs that stand already being obeyed. */
    private int readings(Fraction length) {
        var shapes = elements.stream()
                .map(each -> BrailleSigns.shape(each.value().base()))
                .distinct()
                .toList();
        int filling = 0;
        for (int ways = 0; ways < 1 << shapes.size(); ways++) {
            filling += sum(shapes, ways).equals(length) ? 1 : 0;
        }
        return filling;
    }

    private Fraction sum(List<Integer> shapes, int ways) {
        var told = new ArrayList<Integer>();
        var sum = Fraction.ZERO;
        for (int i = 0; i < elements.size(); i++) {
            if (signs.containsKey(i)) {
                told.add(shape(i));
            }
            boolean smaller = told.contains(shape(i)) ? isSmaller(i) : (ways >> shapes.indexOf(shape(i)) & 1) == 1;
            sum = sum.plus(asRead(i, smaller));
        }
        return sum;
    }

    private Fraction asRead(int index, boolean smaller) {
        var length = elements.get(index).length();
        if (smaller == isSmaller(index)) {
            return length;
        }
        return smaller ? length.dividedBy(OTHER) : length.times(OTHER);
    }

    private void sign(int index) {
        signs.put(index, isSmaller(index) ? BrailleSigns.SMALLER : BrailleSigns.LARGER);
    }

    private int shape(int index) {
        return BrailleSigns.shape(elements.get(index).value().base());
    }

    private boolean isSmaller(int index) {
        return BrailleSigns.isSmaller(elements.get(index).value().base());
    }
}
