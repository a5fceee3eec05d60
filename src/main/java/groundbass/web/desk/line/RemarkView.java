package groundbass.web.desk.line;

import groundbass.remark.Remark;
import groundbass.remark.Report;
import groundbass.remark.Severity;
import groundbass.remark.Source;
import groundbass.text.Messages;
import java.util.List;

/**
 * A remark on a text, as it stands beside it.
 *
 * @param line from 1
 * @param column from 1
 * @param length how many characters it is about
 * @param mistake whether the text cannot be read there
 * @param weight how grave it is, in words
 * @param shown the line of the text with carets below what is meant
 */
public record RemarkView(
        int line, int column, int length, boolean mistake, String weight, String sentence, String shown) {
    /** In the order in which they are given. */
    public static List<RemarkView> of(List<Remark> remarks, Source source, Messages messages) {
        var report = new Report(source, messages);
        return remarks.stream().map(remark -> of(remark, report, messages)).toList();
    }

    private static RemarkView of(Remark remark, Report report, Messages messages) {
        var span = remark.span();
        return new RemarkView(
                span.line(),
                span.column(),
                span.length(),
                remark.severity() == Severity.ERROR,
                messages.say(remark.severity().messageKey()),
                messages.say(remark.sentence()),
                report.excerpt(span));
    }
}
