package groundbass.braille;

import groundbass.braille.CellGroup.Gap;
import groundbass.score.Bar;
import groundbass.score.Direction;
import groundbass.score.Direction.Hairpin;
import groundbass.score.Fraction;
import groundbass.score.Hairpins;
import groundbass.score.Repeats;
import groundbass.theory.Key;
import groundbass.writing.Element;
import groundbass.writing.Element.Chord;
import groundbass.writing.Element.Rest;
import groundbass.writing.TupletGroup;
import groundbass.writing.Voice;
import groundbass.writing.WrittenBar;
import groundbass.writing.WrittenLine;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The bars of a line as units, in their order. Mutable; one for a line. */
final class BarCells {
    /** Cells that are kept together with a note, or with one another; a row must have room for them. */
    private static final int MOST_SAID = 24;

    private final WrittenLine line;
    private final BrailleKey legend;
    private final ChordCells chords;
    private final Optional<Hairpins.Reach> lastHairpin;

    private BarCells(WrittenLine line, BrailleKey legend, boolean places) {
        this.line = line;
        this.legend = legend;
        this.chords = new ChordCells(
                legend, Joins.of(line.line()), line.line().header().style(), places);
        this.lastHairpin = Hairpins.of(line.line().bars()).stream().reduce((one, two) -> two);
    }

    /** @param places whether strings, frets and strokes are told */
    static List<List<CellGroup>> of(WrittenLine line, BrailleKey legend, boolean places) {
        var cells = new BarCells(line, legend, places);
        var bars = new ArrayList<List<CellGroup>>();
        for (int i = 0; i < line.bars().size(); i++) {
            bars.add(cells.bar(i));
        }
        return bars;
    }

    private List<CellGroup> bar(int index) {
        var bar = line.bars().get(index);
        var units = new ArrayList<CellGroup>();
        if (beginsPart(bar)) {
            chords.interruptAll();
        }
        before(index, units);
        var first = bar.voices().get(bar.voices().size() - 1);
        var written = voice(bar, first, true, opening(bar.bar().repeats()));
        if (bar.bar().repeats().start()) {
            written.set(0, written.get(0).led(BrailleSigns.REPEAT_BEGINS));
        }
        units.addAll(units.isEmpty() ? written : after(Gap.BLANK, written));
        if (bar.voices().size() > 1) {
            append(units, BrailleSigns.IN_ACCORD);
            chords.interruptAll();
            units.addAll(after(Gap.SPLIT, voice(bar, bar.voices().get(0), false, Cells.NONE)));
            chords.interruptAll();
        }
        hairpinEnd(index).ifPresent(end -> {
            append(units, end);
            chords.interrupt();
        });
        weight(index).ifPresent(sign -> append(units, sign));
        behind(units, late(bar.bar(), first));
        for (var words : leading(bar.bar().repeats())) {
            behind(units, List.of(new Direction.Words(bar.bar().from(), words)));
        }
        return units;
    }

    private static List<CellGroup> after(Gap gap, List<CellGroup> units) {
        var parted = new ArrayList<>(units);
        parted.set(0, units.get(0).with(gap));
        return parted;
    }

    private static void append(List<CellGroup> units, Cells cells) {
        int last = units.size() - 1;
        if (units.get(last).fresh().length() > MOST_SAID) {
            units.add(CellGroup.silent(Gap.JOINED, cells, false));
        } else {
            units.set(last, units.get(last).after(cells));
        }
    }

    /** Signs and signatures that stand by themselves between blanks (rule: braille-signatures, braille-repeats). */
    private void before(int index, List<CellGroup> units) {
        var changes = line.bars().get(index).bar().changes();
        var roadmap = line.bars().get(index).bar().repeats().roadmap();
        var signature = changes.key()
                .map(key -> key.fifths() == 0 ? BrailleSigns.cancelled(keyBefore(index)) : BrailleSigns.key(key))
                .orElse(Cells.NONE)
                .plus(changes.meter().map(BrailleSigns::time).orElse(Cells.NONE));
        if (!signature.isEmpty()) {
            units.add(CellGroup.silent(Gap.BLANK, signature, true));
        }
        if (roadmap.segno()) {
            units.add(CellGroup.silent(Gap.BLANK, BrailleSigns.SEGNO, true));
        }
        if (roadmap.coda()) {
            units.add(CellGroup.silent(Gap.BLANK, BrailleSigns.CODA, true));
        }
    }

    private Key keyBefore(int index) {
        return index == 0
                ? line.line().header().key()
                : line.bars().get(index - 1).inForce().key();
    }

    private static boolean beginsPart(WrittenBar bar) {
        var changes = bar.bar().changes();
        var repeats = bar.bar().repeats();
        return changes.key().isPresent()
                || changes.meter().isPresent()
                || changes.section().isPresent()
                || repeats.start()
                || repeats.ending().isPresent()
                || repeats.roadmap().segno()
                || repeats.roadmap().coda();
    }

    private static Cells opening(Repeats repeats) {
        return repeats.ending()
                .map(ending -> BrailleSigns.NUMBER.plus(BrailleSigns.lower(ending.toString())))
                .orElse(Cells.NONE);
    }

    /** What is said while the last note lasts stands behind its bar, for nothing follows it there. */
    private static List<Direction> late(Bar bar, Voice voice) {
        var last = voice.elements().get(voice.elements().size() - 1).onset();
        return bar.directions().stream().filter(each -> each.at().isAfter(last)).toList();
    }

    private void behind(List<CellGroup> units, List<Direction> said) {
        var cells = Cells.NONE;
        var gap = units.get(units.size() - 1).endsInWords() ? Gap.BLANK : Gap.SPLIT;
        for (var direction : said) {
            var expression = expression(direction);
            units.addAll(expression.apart());
            gap = expression.apart().isEmpty() ? gap : Gap.BLANK;
            if (cells.length() + expression.atOnce().length() > MOST_SAID) {
                units.add(CellGroup.silent(gap, cells, false));
                cells = Cells.NONE;
            }
            cells = cells.plus(expression.atOnce());
            chords.interrupt();
        }
        if (!cells.isEmpty()) {
            units.add(CellGroup.silent(gap, cells, false));
        }
    }

    /** A bar line that is more than a blank. */
    private Optional<Cells> weight(int index) {
        var repeats = line.bars().get(index).bar().repeats();
        boolean last = index + 1 == line.bars().size();
        if (repeats.end().isEmpty() && last) {
            return Optional.of(BrailleSigns.LAST_BAR);
        }
        boolean section =
                !last && line.bars().get(index + 1).bar().changes().section().isPresent();
        boolean ends = repeats.end().isPresent() || section || repeats.roadmap().isSeamAfter();
        if (ends) {
            chords.interrupt();
        }
        return Optional.of(repeats.end().isPresent() ? BrailleSigns.REPEAT_ENDS : BrailleSigns.SECTION_ENDS)
                .filter(sign -> ends);
    }

    private List<String> leading(Repeats repeats) {
        var words = new ArrayList<String>();
        repeats.end().flatMap(Repeats.RepeatEnd::times).ifPresent(times -> words.add(legend.say("sheet.times", times)));
        if (repeats.roadmap().toCoda()) {
            words.add(legend.say("sheet.tocoda"));
        }
        if (repeats.roadmap().fine()) {
            words.add("Fine");
        }
        repeats.roadmap().jump().ifPresent(jump -> words.add(jump.printed()));
        return words;
    }

    /** A hairpin ends with the next loudness or hairpin, without a sign of its own; only the last can need one. */
    private Optional<Cells> hairpinEnd(int index) {
        return lastHairpin
                .filter(reach -> reach.lastBar() == index
                        && reach.end().equals(line.bars().get(index).bar().to()))
                .map(reach -> reach.hairpin().way() == Hairpin.Way.CRESCENDO
                        ? BrailleSigns.CRESCENDO_ENDS
                        : BrailleSigns.DIMINUENDO_ENDS);
    }

    private List<CellGroup> voice(WrittenBar bar, Voice voice, boolean spoken, Cells opening) {
        var units = new ArrayList<CellGroup>();
        var values = ValueSigns.of(voice.elements(), bar.inForce().meter(), lengthAsRead(bar));
        var signs = new VoiceSigns(bar.inForce().key());
        var said = new ArrayList<>(spoken ? bar.bar().directions() : List.<Direction>of());
        var begins = opening;
        for (int i = 0; i < voice.elements().size(); i++) {
            var element = voice.elements().get(i);
            var moment = new ArrayList<Direction>();
            while (!said.isEmpty() && !said.get(0).at().isAfter(element.onset())) {
                moment.add(said.remove(0));
            }
            boolean apart =
                    moment.stream().anyMatch(each -> !expression(each).apart().isEmpty());
            begins = speak(units, moment, begins);
            var before = values.getOrDefault(i, Cells.NONE).plus(tuplet(voice, i));
            var cells = element(bar, element, begins, before, signs);
            units.addAll(apart ? after(Gap.BLANK, cells) : cells);
            begins = Cells.NONE;
        }
        return units;
    }

    /** What a reader knows of a bar's length: the metre's, where the bar is whole. */
    private static Optional<Fraction> lengthAsRead(WrittenBar bar) {
        var length = bar.inForce().meter().length();
        return Optional.of(length).filter(bar.bar().length()::equals);
    }

    private static Cells tuplet(Voice voice, int index) {
        return voice.tuplets().stream()
                .filter(group -> group.first() == index)
                .map(BarCells::tuplet)
                .findFirst()
                .orElse(Cells.NONE);
    }

    private static Cells tuplet(TupletGroup group) {
        return BrailleSigns.tuplet(group.actual(), group.normal());
    }

    /** Long words become units; what stands before the next note at once is handed on. */
    private Cells speak(List<CellGroup> units, List<Direction> moment, Cells opening) {
        var said = Cells.NONE;
        for (var direction : moment) {
            var expression = expression(direction);
            expression.interrupt(units);
            units.addAll(expression.apart());
            if (said.length() + expression.atOnce().length() > MOST_SAID) {
                units.add(CellGroup.silent(Gap.JOINED, said.closed(), false));
                said = Cells.NONE;
            }
            said = said.plus(expression.atOnce());
            chords.interrupt();
        }
        return opening.apart(said);
    }

    private Expression expression(Direction direction) {
        return direction instanceof Direction.Words words
                ? Expression.of(words.text(), legend.literary())
                : new Expression(sign(direction), List.of());
    }

    private static Cells sign(Direction direction) {
        if (direction instanceof Direction.Loudness loudness) {
            return BrailleSigns.dynamic(loudness.dynamic());
        }
        return ((Hairpin) direction).way() == Hairpin.Way.CRESCENDO ? BrailleSigns.CRESCENDO : BrailleSigns.DIMINUENDO;
    }

    private List<CellGroup> element(WrittenBar bar, Element element, Cells said, Cells before, VoiceSigns signs) {
        boolean beat = bar.inForce().meter().beatStarts().contains(element.onset());
        if (element instanceof Chord chord) {
            return chords.of(chord, said, before, beat, bar.inForce().key(), signs);
        }
        var rest = (Rest) element;
        var filling = rest.hidden() ? BrailleSigns.FILLING : Cells.NONE;
        var cells = before.plus(filling).plus(BrailleSigns.rest(rest.value()));
        return List.of(CellGroup.silent(Gap.JOINED, said.apart(cells), beat));
    }
}
