package groundbass.writing;

import groundbass.score.Bar;
import groundbass.score.Fraction;
import groundbass.writing.Element.Chord;
import groundbass.writing.Element.Rest;
import groundbass.writing.NoteValue.Base;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.TreeSet;

/** Writes the spans of one voice as shapes, tied where one shape is not enough, and gathers its tuplets. */
final class VoiceWriting {
    private final NoteSplitting notes;
    private final RestSplitting rests;
    private final TreeMap<Fraction, TupletWindow> windows = new TreeMap<>();
    private final TreeSet<Fraction> windowEdges = new TreeSet<>();
    private final List<Element> elements = new ArrayList<>();
    private final List<TupletGroup> tuplets = new ArrayList<>();
    private int firstOfTuplet;

    private VoiceWriting(Pulse pulse, List<TupletWindow> windows) {
        this.notes = new NoteSplitting(pulse);
        this.rests = new RestSplitting(pulse);
        for (var window : windows) {
            this.windows.put(window.from(), window);
            windowEdges.addAll(List.of(window.from(), window.to()));
        }
    }

    static Voice of(Pulse pulse, Bar bar, List<VoiceSpan> spans) {
        if (spans.size() == 1 && spans.get(0).isSilent()) {
            return wholeBarRest(bar);
        }
        var writing = new VoiceWriting(pulse, TupletSearch.of(pulse, bar, spans));
        writing.write(spans);
        return new Voice(
                writing.elements, new Beaming(pulse, writing.elements, writing.tuplets).groups(), writing.tuplets);
    }

    /** Whole-bar silence is a whole rest in every metre (rule: whole-bar-rest). */
    private static Voice wholeBarRest(Bar bar) {
        var rest = new Rest(bar.from(), NoteValue.of(Base.WHOLE), bar.length(), true, false);
        return new Voice(List.of(rest), List.of(), List.of());
    }

    private void write(List<VoiceSpan> spans) {
        for (var span : spans) {
            var edges = new TreeSet<Fraction>(List.of(span.from(), span.to()));
            edges.addAll(windowEdges.subSet(span.from(), span.to()));
            var from = span.from();
            for (var to : edges.tailSet(from, false)) {
                write(span.between(from, to));
                from = to;
            }
        }
    }

    private void write(VoiceSpan span) {
        var window = windows.floorEntry(span.from());
        if (window == null || !window.getValue().contains(span.from())) {
            plain(span);
            return;
        }
        int first = elements.size();
        inTuplet(window.getValue(), span);
        if (span.from().equals(window.getKey())) {
            firstOfTuplet = first;
        }
        if (span.to().equals(window.getValue().to())) {
            var tuplet = window.getValue();
            tuplets.add(new TupletGroup(firstOfTuplet, elements.size() - 1, tuplet.actual(), tuplet.normal()));
        }
    }

    private void plain(VoiceSpan span) {
        if (!Pulse.isWritable(span.from()) || !Pulse.isWritable(span.to())) {
            add(span, span.from(), NoteValue.nearest(span.to().minus(span.from())), span.to());
            return;
        }
        var cuts = span.isSilent() ? rests.cuts(span.from(), span.to()) : notes.cuts(span.from(), span.to());
        for (int i = 0; i + 1 < cuts.size(); i++) {
            var length = cuts.get(i + 1).minus(cuts.get(i));
            var value = NoteValue.lasting(length).orElseGet(() -> NoteValue.nearest(length));
            add(span, cuts.get(i), value, cuts.get(i + 1));
        }
    }

    private void inTuplet(TupletWindow window, VoiceSpan span) {
        var at = span.from();
        while (at.isBefore(span.to())) {
            var left = window.shapeLength(span.to().minus(at));
            var value = NoteValue.CHOICE.stream()
                    .filter(each ->
                            !each.length().isAfter(left) && each.length().isOnGrid(window.share()))
                    .findFirst()
                    .orElseThrow();
            var end = at.plus(window.lasting(value.length()));
            add(span, at, value, end);
            at = end;
        }
    }

    private void add(VoiceSpan span, Fraction from, NoteValue value, Fraction to) {
        var length = to.minus(from);
        elements.add(
                span.isSilent()
                        ? new Rest(from, value, length, false, span.hidden())
                        : new Chord(
                                from,
                                value,
                                length,
                                span.parts().stream()
                                        .map(part -> part.head(from, to))
                                        .toList()));
    }
}
