package groundbass.remark;

import groundbass.text.Messages;
import java.util.List;
import java.util.stream.Collectors;

/** Remarks as lines of text, in one language, with the place that each is about. */
public final class Report {
    private static final String INDENT = "    ";
    private static final int WIDEST = 120;

    private final Source source;
    private final Messages messages;

    public Report(Source source, Messages messages) {
        this.source = source;
        this.messages = messages;
    }

    /** All remarks with their source lines, one after the other; empty where there are none. */
    public String of(List<Remark> remarks) {
        return remarks.stream().map(this::of).map(text -> text + "\n").collect(Collectors.joining());
    }

    /** The headline, the source line and carets below the span, without a line end at the end. */
    public String of(Remark remark) {
        return headline(remark) + ("\n" + excerpt(remark.span())).replace("\n", "\n" + INDENT);
    }

    /** {@code name:line:column: error: ...}, without the source line. */
    public String headline(Remark remark) {
        var span = remark.span();
        String weight = messages.say(remark.severity().blocks() ? "remark.error" : "remark.warning");
        return (source.name().isEmpty() ? "" : source.name() + ":") + span.line() + ":" + span.column() + ": " + weight
                + ": " + messages.say(remark.sentence());
    }

    /** The source line, cut down to what stands around the span, and below it carets. */
    public String excerpt(Span span) {
        String line = source.line(span.line());
        int from = Math.min(span.column() - 1, line.length());
        int cut = from > WIDEST ? from - WIDEST / 2 : 0;
        String shown = line.substring(cut, Math.min(line.length(), cut + 2 * WIDEST));
        int room = Math.max(1, shown.length() - (from - cut));
        String carets = "^".repeat(Math.min(Math.max(1, span.length()), room));
        return printable(shown) + "\n" + " ".repeat(from - cut) + carets;
    }

    /** One column for each character, so that the carets stand where they should. */
    private static String printable(String text) {
        return text.codePoints()
                .map(c -> Character.isISOControl(c) ? ' ' : c)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
    }
}
