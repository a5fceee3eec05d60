package groundbass.plaintab;

import groundbass.score.Bar;
import groundbass.score.Count;
import groundbass.score.Direction;
import groundbass.score.Fraction;
import groundbass.score.InForce;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.Place;
import groundbass.score.Repeats;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * One bar: its moments, and what is said over it.
 *
 * @param head number, changes, and the signs of repeats and jumps in words
 * @param fresh whether it begins a row of its own
 */
record TabBar(
        String section,
        String head,
        List<Said> chords,
        List<Said> words,
        List<TabColumn> columns,
        Repeats repeats,
        boolean fresh) {
    /** Nobody counts such a moment aloud. */
    static final String UNCOUNTED = ".";

    /** A text at a moment. */
    record Said(Fraction at, String text) {}

    TabBar {
        chords = List.copyOf(chords);
        words = List.copyOf(words);
        columns = List.copyOf(columns);
    }

    static List<TabBar> of(Line line, TabLegend legend) {
        var bars = new ArrayList<TabBar>();
        var frets = new HashMap<Integer, Integer>();
        var inForce = line.inForce();
        for (int i = 0; i < line.bars().size(); i++) {
            bars.add(of(line.bars().get(i), inForce.get(i), frets, legend));
        }
        return bars;
    }

    private static TabBar of(Bar bar, InForce now, Map<Integer, Integer> frets, TabLegend legend) {
        var chords = bar.chords().stream()
                .map(chord -> new Said(chord.at(), chord.chord().toString()))
                .toList();
        var words = bar.directions().stream()
                .map(direction -> new Said(direction.at(), said(direction)))
                .toList();
        return new TabBar(
                bar.changes().section().orElse(""),
                head(bar, now, legend),
                chords,
                words,
                columns(bar, now, frets, legend),
                bar.repeats(),
                bar.changes().section().isPresent() || bar.changes().place().isPresent());
    }

    private static String said(Direction direction) {
        if (direction instanceof Direction.Loudness loudness) {
            return loudness.dynamic().toString();
        }
        return direction instanceof Direction.Words words
                ? words.text()
                : ((Direction.Hairpin) direction).way().word();
    }

    private static String head(Bar bar, InForce now, TabLegend legend) {
        var changes = bar.changes();
        var messages = legend.messages();
        var parts = new ArrayList<String>();
        parts.add(String.valueOf(now.number()));
        changes.key().ifPresent(key -> parts.add(messages.say(key.said())));
        changes.meter().ifPresent(meter -> parts.add(meter.toString()));
        changes.tempo().ifPresent(tempo -> parts.add(TabHead.tempo(tempo)));
        changes.feel()
                .map(feel -> TabHead.feel(feel, messages))
                .filter(feel -> !feel.isEmpty())
                .ifPresent(parts::add);
        changes.slowingTo().ifPresent(to -> parts.add(messages.say("sheet.slowing", to)));
        var roadmap = bar.repeats().roadmap();
        if (roadmap.segno()) {
            parts.add("segno");
        }
        if (roadmap.coda()) {
            parts.add("coda");
        }
        bar.repeats().ending().ifPresent(ending -> parts.add("[" + ending + ".]"));
        bar.repeats()
                .end()
                .flatMap(Repeats.RepeatEnd::times)
                .ifPresent(times -> parts.add(messages.say("sheet.times", times)));
        if (roadmap.toCoda()) {
            parts.add(messages.say("sheet.tocoda"));
        }
        if (roadmap.fine()) {
            parts.add("Fine");
        }
        roadmap.jump().ifPresent(jump -> parts.add(jump.printed()));
        return parts.get(0)
                + parts.stream()
                        .skip(1)
                        .collect(Collectors.collectingAndThen(
                                Collectors.joining(", "), text -> text.isEmpty() ? "" : " " + text));
    }

    /** Every beat, and whatever begins between beats. */
    private static List<TabColumn> columns(Bar bar, InForce now, Map<Integer, Integer> frets, TabLegend legend) {
        var beats = now.meter().beatStarts();
        var moments = new TreeSet<Fraction>(beats);
        moments.add(bar.from());
        bar.notes().forEach(note -> moments.add(note.onset()));
        moments.removeIf(at -> at.isBefore(bar.from()) || !at.isBefore(bar.to()));
        var columns = new ArrayList<TabColumn>();
        int number = 0;
        for (var at : moments) {
            var until = Optional.ofNullable(moments.higher(at)).orElse(bar.to());
            var counted = Count.at(at, now.meter());
            String count = aloud(counted, number);
            number = counted.map(Count::number).orElse(number);
            var notes =
                    bar.notes().stream().filter(note -> note.onset().equals(at)).toList();
            var figures = figures(notes, frets, legend);
            columns.add(TabColumn.of(at, until, count, figures, under(notes), beats.contains(at)));
        }
        return columns;
    }

    /** As one counts aloud, one, e, and, a, two: a number is not said again. */
    private static String aloud(Optional<Count> count, int saidBefore) {
        return count.map(each -> each.number() == saidBefore ? each.syllable() : each.toString())
                .orElse(UNCOUNTED);
    }

    private static Map<Integer, String> figures(List<Note> notes, Map<Integer, Integer> frets, TabLegend legend) {
        var figures = new HashMap<Integer, String>();
        for (var note : notes) {
            legend.use(note);
            var source =
                    frets.containsKey(note.string()) ? OptionalInt.of(frets.get(note.string())) : OptionalInt.empty();
            figures.put(note.string(), FretText.of(note, source));
            if (note.place() instanceof Place.Fretted fretted) {
                frets.put(note.string(), fretted.fret());
            }
        }
        return figures;
    }

    private static String under(List<Note> notes) {
        Set<String> signs = new LinkedHashSet<>();
        for (var note : notes) {
            Stream.of(
                            note.pluck().map(TabLegend::letter).stream(),
                            note.ornaments().spread().map(TabLegend::under).stream(),
                            note.ornaments().marks().stream().map(TabLegend::under))
                    .flatMap(each -> each)
                    .filter(sign -> !sign.isEmpty())
                    .forEach(signs::add);
        }
        return String.join("", signs);
    }
}
