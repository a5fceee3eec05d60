package groundbass.remark;

import groundbass.score.Passage;
import groundbass.text.Message;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * One thing that is to be said of a text.
 *
 * @param code stable and short, for programs: {@code fret-off-neck}
 * @param span where it stands in the text
 * @param passage what of the line it is about, where it speaks of notes or bars that could be read
 * @param message what was found, what was expected and what to do, as one or two sentences
 * @param suggestions what would put it right, the likeliest first
 */
public record Remark(
        Severity severity,
        String code,
        Span span,
        Optional<Passage> passage,
        Message message,
        List<Suggestion> suggestions) {
    public Remark {
        Objects.requireNonNull(severity);
        Objects.requireNonNull(code);
        Objects.requireNonNull(span);
        Objects.requireNonNull(passage);
        Objects.requireNonNull(message);
        suggestions = List.copyOf(suggestions);
    }

    /** Something that cannot be read. */
    public static Remark error(String code, Span span, Message message) {
        return new Remark(Severity.ERROR, code, span, Optional.empty(), message, List.of());
    }

    /** The same, with texts that were probably meant. */
    public Remark suggesting(String... texts) {
        return suggesting(Stream.of(texts));
    }

    public Remark suggesting(Optional<String> text) {
        return suggesting(text.stream());
    }

    public Remark suggesting(Stream<String> texts) {
        return withSuggestions(texts.map(Retyping::of).toList());
    }

    public Remark withSuggestions(List<? extends Suggestion> others) {
        return new Remark(severity, code, span, passage, message, List.copyOf(others));
    }

    /** The message, with the question after it whether one of the suggestions was meant. */
    public Message sentence() {
        return meant().map(choice -> Message.of("remark.meant", message, choice))
                .orElse(message);
    }

    /** What was probably meant: {@code 5, 7 or 8}. */
    public Optional<Message> meant() {
        return Choice.of(suggestions.stream().map(Suggestion::label).toList());
    }
}
