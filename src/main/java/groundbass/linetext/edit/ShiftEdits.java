package groundbass.linetext.edit;

import groundbass.linetext.LineText;
import groundbass.linetext.assemble.PlaceResolver;
import groundbass.linetext.print.ShiftPrinter;
import groundbass.linetext.problem.Problems;
import groundbass.linetext.source.Splice;
import groundbass.linetext.typed.CountLine;
import groundbass.linetext.typed.Event;
import groundbass.linetext.typed.Event.Held;
import groundbass.linetext.typed.Event.Played;
import groundbass.linetext.typed.RawBar;
import groundbass.linetext.typed.RawBar.Copied;
import groundbass.score.Fraction;
import groundbass.score.Note;
import groundbass.score.Shift;
import groundbass.score.Technique;
import groundbass.theory.Transposition;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * Moves the figures of some bars on the neck, each place where it is typed. Chords go along by the interval of the notes;
 * other bars that took these over are written out first, so that they sound as before.
 */
final class ShiftEdits {
    private static final Pattern QUOTED_OR_FRET = Pattern.compile(
            "\"[^\"]*\"|(?<=\\b(?:from|harmonic {1,9}at|trill {1,9}to) {1,9})\\d+|\\s*\\bas [A-G][#b]*");

    private final IndexedText text;
    private final int first;
    private final int last;
    private final Shift by;
    private final PlaceResolver neck;
    private final BarEdits bars;
    private final List<Splice> splices = new ArrayList<>();
    private boolean fits = true;

    /** @param first, last places of bars in the text, from 0 */
    ShiftEdits(IndexedText text, int first, int last, Shift by) {
        this.text = text;
        this.first = first;
        this.last = last;
        this.by = by;
        var header = text.line().header();
        this.neck = new PlaceResolver(header.tuning(), header.frets());
        this.bars = new BarEdits(text);
    }

    /** Empty where something would leave the neck, or lose what it comes from. */
    List<Splice> splices() {
        var typed = IntStream.rangeClosed(first, last).mapToObj(bars::typed).toList();
        for (int i = 0; i < text.bars().size(); i++) {
            int index = i;
            boolean inside = index >= first && index <= last;
            if (inside) {
                bar(index, typed);
            } else if (typed.stream().anyMatch(number -> bars.copies(index, number))) {
                splices.add(bars.writtenOut(index, bars.typed(index)));
            }
        }
        return fits && isNoWorse() ? splices : List.of();
    }

    private boolean isNoWorse() {
        String before = text.all();
        String after = Splice.apply(before, Splice.inOrder(splices));
        return LineText.read(after).problems().size()
                <= LineText.read(before).problems().size();
    }

    private void bar(int index, List<Integer> inside) {
        var bar = text.bars().get(index);
        bar.head.copied().filter(copied -> !inside.contains(copied.bar())).ifPresent(this::copied);
        bar.counts.stream().map(CountLine::events).forEach(events -> events.forEach(this::event));
        interval().ifPresent(semitones -> chords(bar, index, semitones));
    }

    private void copied(Copied copied) {
        copied.shift()
                .then(by)
                .ifPresentOrElse(
                        shift -> splices.add(
                                text.replace(copied.span(), text.text(copied.unmoved()) + ShiftPrinter.print(shift))),
                        () -> fits = false);
    }

    private OptionalInt interval() {
        var line = text.line();
        var notes = line.bars().subList(first, last + 1).stream()
                .flatMap(bar -> bar.notes().stream())
                .toList();
        return by.semitones(notes, line.header().tuning());
    }

    private void chords(RawBar bar, int index, int semitones) {
        bar.head.chords().orElse(List.of()).forEach(chord -> {
            var moved = Transposition.of(
                    chord.chord(), semitones, text.inForce(index).key());
            splices.add(text.replace(chord.span(), moved.toString()));
        });
    }

    private void event(Event event) {
        for (int i = 0; i < event.items().size(); i++) {
            var item = event.items().get(i);
            int end = i + 1 < event.items().size()
                    ? text.start(event.items().get(i + 1).span())
                    : text.end(event.span());
            if (item instanceof Played played) {
                played(played, end);
            } else if (item instanceof Held held) {
                held.string().ifPresent(string -> string(held));
            }
        }
    }

    private void string(Held held) {
        var typed = held.string().orElseThrow();
        var string = neck.string(typed, "", new Problems());
        var there = string.map(number -> number - by.strings())
                .filter(number ->
                        number >= 1 && number <= text.line().header().tuning().size());
        there.ifPresentOrElse(
                number -> splices.add(text.replace(typed.span(), neck.nameOf(number))), () -> fits = false);
    }

    private void played(Played played, int end) {
        var place = neck.place(played, new Problems());
        if (place.isEmpty()) {
            return; // a mistake stays as it was typed
        }
        var words = played.words();
        var typed = new Note(
                Fraction.ZERO,
                Fraction.ONE,
                place.get(),
                Optional.of(Technique.FINGER),
                words.arrival(),
                words.ornaments());
        var moved =
                by.of(typed, text.line().header().tuning(), text.line().header().frets());
        if (moved.isEmpty()) {
            fits = false;
            return;
        }
        splices.add(text.replace(played.span(), neck.print(moved.get().place())));
        words(text.end(played.span()), end, moved.get());
    }

    /** What names a fret or a pitch among the words of a place. */
    private void words(int from, int to, Note moved) {
        var found = QUOTED_OR_FRET.matcher(text.all().substring(from, to));
        while (found.find()) {
            other(found.group(), moved)
                    .ifPresent(other -> splices.add(new Splice(from + found.start(), from + found.end(), other)));
        }
    }

    private Optional<String> other(String word, Note moved) {
        if (word.startsWith("\"")) {
            return Optional.empty();
        }
        if (Character.isDigit(word.charAt(0))) {
            return Optional.of(String.valueOf(Integer.parseInt(word) + by.frets()));
        }
        return moved.ornaments().spelling().isPresent() ? Optional.empty() : Optional.of("");
    }
}
