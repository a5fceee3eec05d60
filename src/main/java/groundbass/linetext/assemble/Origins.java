package groundbass.linetext.assemble;

import groundbass.remark.Source;
import groundbass.remark.Span;
import groundbass.score.Fraction;
import groundbass.score.Passage;
import groundbass.score.Position;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Where in the text the bars and notes of a line stand. What a bar copies stands where the copy is ordered. */
public final class Origins {
    private final Source source;
    private final Map<Integer, Span> bars = new HashMap<>();
    private final Map<NoteKey, Span> notes = new HashMap<>();
    private final TreeMap<Position, Span> moments = new TreeMap<>();
    private final Map<String, Span> settings = new HashMap<>();

    /** A note by where it begins and its string. */
    private record NoteKey(Position position, int string) {}

    public Origins(Source source) {
        this.source = source;
    }

    void putBar(int number, Span span) {
        bars.put(number, span);
    }

    void putNote(Position position, int string, Span span) {
        notes.put(new NoteKey(position, string), span);
    }

    void putMoment(Position position, Span span) {
        moments.put(position, span);
    }

    void putSetting(String name, Span span) {
        settings.put(name, span);
    }

    public Source source() {
        return source;
    }

    /** The line {@code bar ...} of the bar of this number. */
    public Optional<Span> bar(int number) {
        return Optional.ofNullable(bars.get(number));
    }

    /** The place that was typed for a note. */
    public Optional<Span> note(int bar, Fraction onset, int string) {
        return Optional.ofNullable(notes.get(new NoteKey(new Position(bar, onset), string)));
    }

    /** The line of a header setting, by its name: {@code tempo}. */
    public Optional<Span> setting(String name) {
        return Optional.ofNullable(settings.get(name));
    }

    /** The event in which a moment lies, else its bar, else the start of the text. */
    public Span at(Position position) {
        return Optional.ofNullable(moments.floorEntry(position))
                .filter(entry -> entry.getKey().bar() == position.bar())
                .map(Map.Entry::getValue)
                .or(() -> bar(position.bar()))
                .orElse(new Span(1, 1, 0));
    }

    /** Every event that begins inside a passage, in the order of the text. */
    public List<Span> in(Passage passage) {
        return moments.subMap(passage.from(), true, passage.to(), false).values().stream()
                .distinct()
                .sorted()
                .toList();
    }

    /** The number of the bar that a line of the text belongs to. */
    public Optional<Integer> barAt(int line) {
        return bars.entrySet().stream()
                .filter(entry -> entry.getValue().line() <= line)
                .max(Comparator.comparing((Map.Entry<Integer, Span> entry) ->
                                entry.getValue().line())
                        .thenComparing(Map.Entry::getKey))
                .map(Map.Entry::getKey);
    }

    /** The moment at which the event under a spot of the text begins; for a cursor in the text. */
    public Optional<Position> positionAt(int line, int column) {
        return moments.entrySet().stream()
                .filter(entry -> covers(entry.getValue(), line, column))
                .map(Map.Entry::getKey)
                .findFirst();
    }

    private static boolean covers(Span span, int line, int column) {
        return span.line() == line && column >= span.column() && column <= span.column() + span.length();
    }
}
