package groundbass.linetext.edit;

import groundbass.linetext.source.Splice;
import java.util.List;
import java.util.function.Function;

/**
 * Changes a text in place: what is not spoken of stays as it was typed, comments and layout included. A pure function of
 * the text and the change.
 */
public final class LineEdit {
    private LineEdit() {}

    /**
     * What to put where. Empty where the change makes no sense in this text: a bar that is not there, or a count inside a
     * figure that cannot be parted there.
     */
    public static List<Splice> of(String text, Edit edit) {
        var manuscript = new IndexedText(text);
        return Splice.inOrder(splices(manuscript, edit));
    }

    /** The text after the change. */
    public static String apply(String text, Edit edit) {
        return Splice.apply(text, of(text, edit));
    }

    private static List<Splice> splices(IndexedText text, Edit edit) {
        // a pattern switch over sealed types is a preview in Java 17, so the compiler cannot check this list
        if (edit instanceof Edit.Events events) {
            return counts(text, events.bar(), counts -> counts.events(events.at(), events.events()));
        } else if (edit instanceof Edit.Step step) {
            return counts(text, step.bar(), counts -> counts.step(step.at(), step.length(), step.events()));
        } else if (edit instanceof Edit.AddCount add) {
            return counts(text, add.bar(), counts -> counts.add(add.at()));
        } else if (edit instanceof Edit.RemoveCount remove) {
            return counts(text, remove.bar(), counts -> counts.remove(remove.at()));
        } else if (edit instanceof Edit.AddBar add) {
            return new BarEdits(text).add(add.after());
        } else if (edit instanceof Edit.DeleteBar delete) {
            return new BarEdits(text).delete(delete.bar());
        } else if (edit instanceof Edit.Repeat repeat) {
            return new PassageEdits(text).repeat(repeat.first(), repeat.last());
        } else if (edit instanceof Edit.Paste paste) {
            return new PassageEdits(text).paste(paste.after(), paste.source(), paste.first(), paste.last());
        } else if (edit instanceof Edit.Move move) {
            return new PassageEdits(text).move(move.first(), move.last(), move.by());
        } else if (edit instanceof Edit.Exchange exchange) {
            return new PassageEdits(text).exchange(exchange.first(), exchange.last(), exchange.from(), exchange.to());
        } else if (edit instanceof Edit.TakeOver taken) {
            return new PassageEdits(text).takeOver(taken.bar(), taken.from());
        } else if (edit instanceof Edit.Chords chords) {
            return new BarEdits(text).chords(chords.bar(), chords.chords());
        } else if (edit instanceof Edit.Setting setting) {
            return new HeaderEdits(text).set(setting.name(), setting.value());
        }
        throw new IllegalArgumentException("unknown change: " + edit);
    }

    private static List<Splice> counts(IndexedText text, int bar, Function<CountEdits, List<Splice>> change) {
        return text.indexOf(bar)
                .map(index -> change.apply(new CountEdits(text, index)))
                .orElse(List.of());
    }

    /** What may stand in one place of a line: one line, no outer spaces. */
    static String oneLine(String typed) {
        return typed.replaceAll("\\s*[\\p{Cntrl}\u2028\u2029]+\\s*", " ").strip();
    }
}
