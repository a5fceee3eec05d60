package groundbass.linetext.print;

import groundbass.linetext.assemble.Bounds;
import groundbass.linetext.assemble.Copying;
import groundbass.linetext.assemble.PlaceResolver;
import groundbass.linetext.print.BarLayout.Row;
import groundbass.linetext.source.Moment;
import groundbass.score.Bar;
import groundbass.score.ChordAt;
import groundbass.score.Copy;
import groundbass.score.Fraction;
import groundbass.score.InForce;
import groundbass.score.Meter;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Writes one bar: its head, and a count line for each beat that no copy speaks for. */
public final class BarPrinter {
    private static final int COLUMN = 5;

    private final Bar bar;
    private final InForce inForce;
    private final PlaceResolver neck;
    private final PrinterState carried;
    private final List<SoundInBar> pieces = new ArrayList<>();

    public BarPrinter(Bar bar, InForce inForce, PlaceResolver neck, PrinterState carried) {
        this.bar = bar;
        this.inForce = inForce;
        this.neck = neck;
        this.carried = carried;
        pieces.addAll(carried.into(bar));
        bar.notes().forEach(note -> pieces.add(SoundInBar.of(note, bar.to())));
    }

    /** @param original what the copied bar has, where this one is a copy */
    public void print(Optional<Copying.Original> original, StringBuilder text) {
        var copying = original.map(found -> Copying.of(found, bar.copy().orElseThrow(), target()))
                .orElse(Copying.NOTHING);
        head(copying, text);
        for (var said : said(copying)) {
            text.append(said.counts())
                    .append(" ".repeat(Math.max(2, COLUMN - said.counts().length())))
                    .append(said.events())
                    .append('\n');
        }
    }

    /** A count line: its counts, the time that they fill, and what is played there. */
    public record Said(String counts, Copy.Span span, String events) {}

    /** Every count line that the bar would have without help of another. */
    public List<Said> said() {
        return said(Copying.NOTHING);
    }

    private List<Said> said(Copying copying) {
        var events = new EventPrinter(bar, meter(), inForce.style(), neck, ends());
        var rows = new BarLayout(bar, meter(), pieces).rows();
        return toSay(rows, copying).stream()
                .map(row -> new Said(Bounds.counts(row.span(), bar.to(), meter()), row.span(), events.print(row)))
                .toList();
    }

    private Copying.Target target() {
        return new Copying.Target(bar.from(), bar.to(), neck, inForce.key());
    }

    private Meter meter() {
        return inForce.meter();
    }

    private void head(Copying copying, StringBuilder text) {
        text.append("bar ").append(inForce.number());
        bar.copy().ifPresent(copy -> {
            text.append(" = bar ").append(copy.bar());
            copy.counts().ifPresent(span -> text.append(" counts ").append(counts(span)));
            text.append(ShiftPrinter.print(copy.shift()));
        });
        if (bar.to().isBefore(meter().length())) {
            text.append(" until ").append(Moment.at(bar.to(), meter()));
        }
        if (!bar.chords().equals(copying.chords())) {
            text.append(" over ").append(chords());
        }
        text.append('\n');
    }

    /** In the meter of the copied bar, which its own times are counted in. */
    private String counts(Copy.Span span) {
        var source = carried.meterOf(bar.copy().orElseThrow().bar());
        var first = Moment.at(span.from(), source);
        int last = Bounds.lastCount(span.to(), source);
        return first.count().number() == last ? first.toString() : first + "-" + last;
    }

    private String chords() {
        if (bar.chords().isEmpty()) {
            return "none";
        }
        return bar.chords().stream().map(this::chord).collect(Collectors.joining(", "));
    }

    private String chord(ChordAt chord) {
        return chord.chord() + (chord.at().equals(bar.from()) ? "" : " at " + Moment.at(chord.at(), meter()));
    }

    private Set<Fraction> ends() {
        var ends = new HashSet<Fraction>();
        bar.notes().stream().map(note -> note.end()).forEach(ends::add);
        pieces.stream()
                .filter(piece -> piece.to().isBefore(bar.to()))
                .map(SoundInBar::to)
                .forEach(ends::add);
        if (carried.someEndAtStart()) {
            ends.add(bar.from());
        }
        return ends;
    }

    /** The lines that differ from what is copied. Saying one line may change what the copy leaves for its neighbours. */
    private List<Row> toSay(List<Row> rows, Copying copying) {
        var said = new ArrayList<Row>();
        boolean more = true;
        while (more) {
            var left = copying.without(said.stream().map(Row::span).toList());
            var next = rows.stream()
                    .filter(row -> !said.contains(row))
                    .filter(row -> !isCopied(row, left) || reachesInto(row, said))
                    .toList();
            said.addAll(next);
            more = !next.isEmpty();
        }
        return rows.stream().filter(said::contains).toList();
    }

    private boolean isCopied(Row row, Copying left) {
        var span = row.span();
        boolean covered = left.covered()
                .filter(all -> !span.from().isBefore(all.from()) && !span.to().isAfter(all.to()))
                .isPresent();
        var copied =
                left.notes().stream().map(note -> SoundInBar.of(note, bar.to())).toList();
        boolean whole = left.lost().stream().noneMatch(note -> span.contains(note.onset()));
        return covered
                && whole
                && slices(pieces, span).equals(slices(copied, span))
                && bar.directions().stream()
                        .filter(direction -> span.contains(direction.at()))
                        .toList()
                        .equals(left.directions().stream()
                                .filter(direction -> span.contains(direction.at()))
                                .toList());
    }

    /** A line that is said ends what the copy would carry into it; only the line that began it can say {@code until}. */
    private boolean reachesInto(Row row, List<Row> said) {
        return row.slots().stream()
                .filter(BarLayout.Slot::strikes)
                .flatMap(slot -> slot.group().stream())
                .flatMap(group -> group.pieces().stream().filter(piece -> !group.isPlain(piece)))
                .anyMatch(piece -> said.stream()
                        .map(Row::span)
                        .anyMatch(span ->
                                span.from().isAfter(piece.from()) && span.from().isBefore(piece.to())));
    }

    private static Set<SoundInBar> slices(List<SoundInBar> pieces, Copy.Span span) {
        return pieces.stream()
                .filter(piece -> piece.overlaps(span.from(), span.to()))
                .map(piece -> piece.slice(span.from(), span.to()))
                .collect(Collectors.toSet());
    }
}
