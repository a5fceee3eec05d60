package groundbass.braille;

import groundbass.score.Changes;
import groundbass.score.Credits;
import groundbass.score.Feel;
import groundbass.score.Header;
import groundbass.score.Swing;
import groundbass.score.Tempo;
import groundbass.text.Messages;
import groundbass.theory.Letter;
import groundbass.writing.NoteValue;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** What stands before the music, and before the bars where something of it changes (rule: braille-heading). */
final class Heading {
    /** Cells of a heading that is not in the middle, such as a section's. */
    private static final Cells SECTION = Cells.blanks(4);

    private final Messages messages;
    private final Literary literary;

    Heading(Messages messages) {
        this.messages = messages;
        this.literary = Literary.of(messages.locale());
    }

    /** Title, credits, what is said of the instrument, the key of signs, an empty row, the signatures. */
    List<Cells> of(Header header, Credits credits, BrailleKey legend) {
        var rows = new ArrayList<Cells>();
        if (!credits.title().isBlank()) {
            literary.rows(credits.title(), BrailleSheet.WIDTH - 6).forEach(row -> rows.add(Rows.centred(row)));
        }
        Stream.of(
                        credits.composer(),
                        credits.transcriber(),
                        credits.rights(),
                        credits.source(),
                        messages.say("braille.strings", strings(header)),
                        messages.say(header.key().said()),
                        feel(header.feel()),
                        messages.say("braille.stroke", messages.say("sheet.sign." + word(header))),
                        messages.say("braille.reading"))
                .filter(text -> !text.isBlank())
                .forEach(text -> rows.addAll(sentence(text)));
        rows.addAll(legend.rows());
        rows.add(Cells.NONE);
        rows.add(Rows.centred(signatures(header)));
        return rows;
    }

    private static String word(Header header) {
        return header.style().name().toLowerCase(Locale.ROOT);
    }

    private List<Cells> sentence(String text) {
        return Rows.hanging(
                Stream.of(text.strip().split("\\s+")).map(literary::cells).toList());
    }

    private Cells signatures(Header header) {
        var key = BrailleSigns.key(header.key());
        var signatures = key.plus(BrailleSigns.time(header.meter()));
        return metronome(header.tempo()).plus(Cells.BLANK).plus(signatures);
    }

    /** A note, a sign that says equals, a number; of a length that no note has, words in its place. */
    private Cells metronome(Tempo tempo) {
        var number = BrailleSigns.number(tempo.perMinute());
        var equals = Cells.of("7");
        return shape(tempo)
                .map(value -> BrailleSigns.note(Letter.C, value).plus(equals).plus(number))
                .orElseGet(() ->
                        literary.cells(tempo.beat().toString()).plus(equals).plus(number));
    }

    private static Optional<NoteValue> shape(Tempo tempo) {
        return Stream.of(NoteValue.Base.values())
                .flatMap(base -> Stream.of(NoteValue.of(base), NoteValue.dotted(base)))
                .filter(value -> value.length().equals(tempo.beat()))
                .findFirst();
    }

    /** As they are numbered from the highest, which is the number that string signs have. */
    private static String strings(Header header) {
        var tuning = header.tuning();
        return IntStream.rangeClosed(1, tuning.size())
                .mapToObj(number -> number + " " + tuning.string(number).pitch().name())
                .collect(Collectors.joining(", "));
    }

    private String feel(Feel feel) {
        String swing = feel.swing().map(this::swing).orElse("");
        String half = feel.halfTime() ? messages.say("sheet.halftime") : "";
        return Stream.of(swing, half).filter(text -> !text.isEmpty()).collect(Collectors.joining(", "));
    }

    private String swing(Swing swing) {
        return messages.say("sheet.swing." + swing.unit().denominator(), swing.first() + ":" + swing.second());
    }

    /** Rows before a bar: a section by its name, then tempo and feel. */
    List<Cells> before(Changes changes) {
        var rows = new ArrayList<Cells>();
        changes.section().ifPresent(name -> literary.rows(name, BrailleSheet.WIDTH - SECTION.length())
                .forEach(row -> rows.add(SECTION.plus(row))));
        changes.tempo().ifPresent(tempo -> rows.add(SECTION.plus(metronome(tempo))));
        changes.slowingTo().ifPresent(to -> rows.addAll(indented(messages.say("sheet.slowing", to))));
        changes.feel()
                .map(feel -> feel.equals(Feel.STRAIGHT) ? messages.say("braille.straight") : feel(feel))
                .ifPresent(text -> rows.addAll(indented(text)));
        return rows;
    }

    private List<Cells> indented(String text) {
        return literary.rows(text, BrailleSheet.WIDTH - SECTION.length()).stream()
                .map(SECTION::plus)
                .toList();
    }
}
