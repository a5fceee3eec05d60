package groundbass.linetext.assemble;

import groundbass.linetext.assemble.BarAssembler.Desk;
import groundbass.linetext.assemble.BarAssembler.NoteBudget;
import groundbass.linetext.problem.BarProblems;
import groundbass.linetext.problem.Problems;
import groundbass.linetext.read.TextReader.RawText;
import groundbass.linetext.source.Keyword;
import groundbass.linetext.typed.RawBar;
import groundbass.linetext.typed.Setting;
import groundbass.remark.Span;
import groundbass.score.Bar;
import groundbass.score.Changes;
import groundbass.score.Copy;
import groundbass.score.Fraction;
import groundbass.score.Header;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.score.Repeats;
import groundbass.score.Technique;
import groundbass.score.Tempo;
import groundbass.theory.Key;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Makes a line of a text as typed, bar after bar. */
public final class LineAssembler {
    private final RawText text;
    private final Problems problems;
    private final Origins origins;
    private final Header header;
    private final Desk desk;
    private final List<AssembledBar> bars = new ArrayList<>();
    private final List<Changes> changes = new ArrayList<>();
    private final Map<Integer, Integer> indexByTypedNumber = new HashMap<>();

    public LineAssembler(RawText text, Origins origins, Problems problems) {
        this.text = text;
        this.problems = problems;
        this.origins = origins;
        this.header = header(text.header());
        this.desk = new Desk(
                new PlaceResolver(header.tuning(), header.frets()), new Strings(), origins, problems, new NoteBudget());
    }

    public Line assemble() {
        var raw = text.bars();
        if (raw.isEmpty()) {
            problems.add(BarProblems.noBars(new Span(1, 1, 0)));
            return new Line(header, List.of(Bar.of(header.meter(), List.of())));
        }
        var signs = new SignAgreement(raw, problems).agreed();
        var numbers = new Numbering(problems, header.meter()).numbers(raw);
        var meter = header.meter();
        var style = header.style();
        var key = header.key();
        var start = Fraction.ZERO;
        for (int i = 0; i < raw.size(); i++) {
            var change = changes(raw.get(i), meter);
            meter = change.meter().orElse(meter);
            style = change.style().orElse(style);
            key = change.key().orElse(key);
            changes.add(change);
            var extent = extent(raw.get(i), numbers.get(i).actual(), meter, key, style, start, signs, i);
            bar(raw.get(i), extent, key, numbers.get(i));
            start = extent.end();
        }
        return line(signs);
    }

    private Line line(List<Repeats> signs) {
        var made = new ArrayList<Bar>();
        for (int i = 0; i < bars.size(); i++) {
            made.add(bars.get(i).toBar(changes.get(i), signs.get(i)));
        }
        return new Line(header, made);
    }

    /** A tempo that names no length counts the beat of the meter, wherever the meter is said. */
    private Header header(List<Setting> settings) {
        settings.forEach(setting -> origins.putSetting(setting.word().toString(), setting.span()));
        var made = Header.PLAIN;
        for (var setting : tempoLast(settings)) {
            made = setting.head().apply(made);
        }
        boolean hasTempo = settings.stream().anyMatch(setting -> setting.word() == Keyword.TEMPO);
        return hasTempo
                ? made
                : made.with(new Tempo(made.tempo().perMinute(), made.meter().pulse()));
    }

    private static Changes changes(RawBar raw, Meter before) {
        var made = Changes.NONE;
        for (var setting : tempoLast(raw.before.settings)) {
            made = setting.change().apply(made, made.meter().orElse(before));
        }
        return made;
    }

    private static List<Setting> tempoLast(List<Setting> settings) {
        return settings.stream()
                .sorted(Comparator.comparing(setting -> setting.word() == Keyword.TEMPO))
                .toList();
    }

    private BarExtent extent(
            RawBar raw,
            int number,
            Meter meter,
            Key key,
            Technique style,
            Fraction start,
            List<Repeats> signs,
            int index) {
        boolean afterSeam = index > 0 && SignAgreement.isSeam(signs, index - 1);
        var from = number == 0 ? Numbering.firstCount(raw, meter) : Fraction.ZERO;
        return new BarExtent(number, meter, key, from, end(raw, number, meter), style, start.minus(from), afterSeam);
    }

    private Fraction end(RawBar raw, int number, Meter meter) {
        if (raw.head.until().isEmpty()) {
            return meter.length();
        }
        var until = raw.head.until().get();
        var end = until.moment().offset(meter);
        if (number == 0) {
            problems.add(BarProblems.pickupUntil(until.span()));
            return meter.length();
        }
        if (!end.isPositive() || end.isAfter(meter.length())) {
            problems.add(BarProblems.untilOutside(until.span(), until.moment().toString(), meter));
            return meter.length();
        }
        return end;
    }

    private void bar(RawBar raw, BarExtent extent, Key key, Numbering.Number number) {
        origins.putBar(extent.number(), raw.head.span());
        var copy = raw.head.copied().flatMap(copied -> copy(copied, extent));
        var target = new Copying.Target(extent.from(), extent.to(), desk.neck(), key);
        var copied = copy.map(
                        found -> Copying.of(bars.get(found.bar() - first()).original(), found, target))
                .orElse(Copying.NOTHING);
        raw.unread |= raw.head.copied().isPresent() && copy.isEmpty();
        var bar = new BarAssembler(extent, desk).assemble(raw, copied);
        bar.copy = copy;
        bars.add(bar);
        indexByTypedNumber.put(number.typed(), bars.size() - 1);
    }

    private int first() {
        return bars.get(0).extent.number();
    }

    /** Which bar is meant follows the numbers as typed, since that is what the writer sees. */
    private Optional<Copy> copy(RawBar.Copied copied, BarExtent extent) {
        var index = Optional.ofNullable(indexByTypedNumber.get(copied.bar()));
        if (index.isEmpty()) {
            problems.add(BarProblems.noSuchBar(copied.span(), copied.bar(), extent.number()));
            return Optional.empty();
        }
        var source = bars.get(index.get()).extent;
        if (copied.counts().isEmpty()) {
            return Optional.of(Copy.of(source.number()).with(copied.shift()));
        }
        var counts = copied.counts().get();
        var from = counts.from().offset(source.meter());
        var last = counts.last().orElse(counts.from()).offset(source.meter());
        if (last.isBefore(from) || !last.isBefore(source.meter().length())) {
            problems.add(BarProblems.copyCountsOutside(counts.span(), source.number(), source.meter()));
            return Optional.empty();
        }
        return Optional.of(Copy.of(
                        source.number(),
                        source.meter().beatStart(from),
                        source.meter().beatEnd(last))
                .with(copied.shift()));
    }
}
