package groundbass.linetext.edit;

import groundbass.linetext.assemble.PlaceResolver;
import groundbass.linetext.print.BarPrinter;
import groundbass.linetext.print.PrinterState;
import groundbass.score.Bar;
import groundbass.score.Extract;
import groundbass.score.InForce;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.Place;
import groundbass.score.Tuning;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Bars as text without help of others: none of them is a copy. */
final class WrittenOut {
    private WrittenOut() {}

    /** The bar as it stands, under a number of its own, without the line end after it. */
    static String inPlace(IndexedText text, int index, int number) {
        var bar = text.line().bars().get(index).writtenOut();
        return print(bar, numbered(text.inForce(index), number), neck(text.line()), before(text, index));
    }

    /** Its count lines. */
    static List<BarPrinter.Said> counts(IndexedText text, int index) {
        var bar = text.line().bars().get(index).writtenOut();
        return new BarPrinter(bar, text.inForce(index), neck(text.line()), before(text, index)).said();
    }

    private static PrinterState before(IndexedText text, int index) {
        var line = text.line();
        var carried = new PrinterState(line.bars(), text.inForce());
        line.bars().subList(0, index).forEach(carried::pass);
        return carried;
    }

    /**
     * Some bars of a line for another place: what rings into them or out of them is cut.
     *
     * @param there what holds where they are to stand
     * @param target the line that they are to stand in
     * @return what stands behind {@code bar} and the number of each; empty where they do not fit there, or would sound
     *     otherwise there
     */
    static List<String> passage(Line source, int first, int last, InForce there, Line target) {
        return Extract.bars(source, first, last)
                .filter(part -> fits(part, there, target))
                .map(part -> printed(part, there, neck(target)))
                .orElse(List.of());
    }

    private static boolean fits(Line part, InForce there, Line target) {
        boolean sameMeter = part.inForce().stream().allMatch(now -> now.meter().equals(there.meter()));
        var from = part.header().tuning();
        var to = target.header().tuning();
        return sameMeter
                && part.bars().stream().noneMatch(Bar::isPickup)
                && part.bars().stream()
                        .flatMap(bar -> bar.notes().stream())
                        .allMatch(note -> isOn(note, target) && soundsAlike(note, from, to));
    }

    private static boolean isOn(Note note, Line target) {
        boolean fretted = !(note.place() instanceof Place.Fretted place)
                || place.fret() <= target.header().frets();
        return note.string() <= target.header().tuning().size() && fretted;
    }

    /** String and fret are what is written, so on a string of another pitch a note would sound otherwise. */
    private static boolean soundsAlike(Note note, Tuning from, Tuning to) {
        return note.midi(from).equals(note.midi(to));
    }

    private static List<String> printed(Line part, InForce there, PlaceResolver neck) {
        var carried = new PrinterState(part.bars(), part.inForce());
        var all = new ArrayList<String>();
        for (var bar : part.bars()) {
            all.add(print(bar, numbered(there, 1), neck, carried).substring("bar 1".length()));
            carried.pass(bar);
        }
        return all;
    }

    private static String print(Bar bar, InForce inForce, PlaceResolver neck, PrinterState carried) {
        var out = new StringBuilder();
        new BarPrinter(bar, inForce, neck, carried).print(Optional.empty(), out);
        return out.toString().stripTrailing();
    }

    private static InForce numbered(InForce now, int number) {
        return new InForce(number, now.key(), now.meter(), now.tempo(), now.feel(), now.style());
    }

    private static PlaceResolver neck(Line line) {
        return new PlaceResolver(line.header().tuning(), line.header().frets());
    }
}
