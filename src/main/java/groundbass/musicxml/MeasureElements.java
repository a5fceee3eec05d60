package groundbass.musicxml;

import groundbass.musicxml.DirectionsByBar.Placed;
import groundbass.score.Bar;
import groundbass.score.Changes.Fresh;
import groundbass.score.Fraction;
import groundbass.writing.Voice;
import groundbass.writing.WrittenBar;
import groundbass.writing.WrittenLine;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * The bars of the part: the voices of the notation staff one after the other, then those of the tablature, each from the
 * beginning of the bar. What is said at a moment stands before the note in which that moment lies.
 */
final class MeasureElements {
    private final WrittenLine line;
    private final Divisions divisions;
    private final Signatures signatures;
    private final BarlineElements barlines;
    private final DirectionsByBar moments;
    private final NoteWriting notes;

    private MeasureElements(WrittenLine line) {
        var bars = line.bars().stream().map(WrittenBar::bar).toList();
        this.line = line;
        this.divisions = Divisions.of(line.bars());
        this.signatures =
                new Signatures(line.bars(), divisions, line.line().header().tuning());
        this.barlines = new BarlineElements(bars);
        this.moments = moments(line, bars);
        this.notes = new NoteWriting(line.line(), divisions);
    }

    static List<Node> of(WrittenLine line) {
        var measures = new MeasureElements(line);
        return IntStream.range(0, line.bars().size())
                .mapToObj(measures::measure)
                .toList();
    }

    private static DirectionsByBar moments(WrittenLine line, List<Bar> bars) {
        var moments = new DirectionsByBar(bars.size());
        Headings.add(line.bars(), moments);
        WordElements.add(bars, moments);
        Harmonies.add(bars, moments);
        Spans.add(bars, moments);
        JumpElements.add(bars, moments);
        return moments;
    }

    private Node measure(int index) {
        var children = new ArrayList<Node>();
        fresh(index).ifPresent(children::add);
        barlines.left(index).ifPresent(children::add);
        signatures.of(index).ifPresent(children::add);
        var voices = line.bars().get(index).voices();
        for (var staff : Staff.values()) {
            for (int voice = 0; voice < voices.size(); voice++) {
                boolean first = staff == Staff.NOTATION && voice == 0;
                if (!first) {
                    children.add(Node.of("backup", duration(index, bar(index).length())));
                }
                children.addAll(voice(index, staff, voice, first ? moments.of(index) : List.of()));
            }
        }
        barlines.right(index).ifPresent(children::add);
        var measure = Node.of("measure", children)
                .with("number", line.bars().get(index).inForce().number());
        return bar(index).isPickup() ? measure.with("implicit", "yes") : measure;
    }

    private Bar bar(int index) {
        return line.bars().get(index).bar();
    }

    private Optional<Node> fresh(int index) {
        return bar(index).changes().place().map(place -> Node.empty("print")
                .with(place == Fresh.PAGE ? "new-page" : "new-system", "yes"));
    }

    private Node duration(int index, Fraction time) {
        return Node.text("duration", divisions.count(index, time));
    }

    private List<Node> voice(int index, Staff staff, int number, List<Placed> said) {
        Voice voice = line.bars().get(index).voices().get(number);
        var nodes = new ArrayList<Node>();
        int next = 0;
        for (int i = 0; i < voice.elements().size(); i++) {
            var element = voice.elements().get(i);
            var end = element.onset().plus(element.length());
            while (next < said.size() && said.get(next).at().isBefore(end)) {
                nodes.add(placed(index, said.get(next++), element.onset()));
            }
            nodes.addAll(notes.of(index, line.bars().get(index), staff, number, i));
        }
        said.subList(next, said.size())
                .forEach(each -> nodes.add(placed(index, each, bar(index).to())));
        return nodes;
    }

    private Node placed(int index, Placed placed, Fraction here) {
        var away = placed.at().minus(here);
        return placed.node()
                .at(
                        away.isZero()
                                ? List.of()
                                : List.of(Node.text("offset", divisions.count(index, away))
                                        .with("sound", "yes")));
    }
}
