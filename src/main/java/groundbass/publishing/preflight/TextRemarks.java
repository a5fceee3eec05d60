package groundbass.publishing.preflight;

import groundbass.document.LineSource;
import groundbass.lesson.LineRemarks;
import groundbass.linetext.LineText;
import groundbass.linetext.Reading;
import groundbass.publishing.preflight.LessonRemark.Weight;
import groundbass.remark.Remark;
import groundbass.remark.Severity;
import groundbass.score.Count;
import groundbass.score.Line;
import groundbass.score.Passage;
import groundbass.score.Position;
import groundbass.text.Message;
import java.util.List;

/** What is to be said of the texts of a lesson before it goes out: the remarks that stand beside them on the desk. */
final class TextRemarks {
    private TextRemarks() {}

    /** An empty text is the revision's to complain of. */
    static List<LessonRemark> of(String field, LineSource source, Reading reading) {
        return source.isBlank()
                ? List.of()
                : LineRemarks.of(reading).stream()
                        .map(remark -> remark(field, remark, reading.line()))
                        .toList();
    }

    static List<LessonRemark> of(String field, groundbass.groove.GrooveReading groove) {
        return groove.problems().stream().map(remark -> typed(field, remark)).toList();
    }

    private static LessonRemark remark(String field, Remark remark, Line line) {
        return remark.passage()
                .map(passage -> played(field, remark, line, passage))
                .orElseGet(() -> typed(field, remark));
    }

    private static LessonRemark typed(String field, Remark remark) {
        var span = remark.span();
        var message = Message.of("publishing.problem.line", span.line(), span.column(), remark.sentence());
        // what a line says of its notes stands with the findings, even where they have no place
        var point = remark.severity() == Severity.ERROR ? Checkpoint.of(field) : Checkpoint.FINDINGS;
        return new LessonRemark(
                point, weight(remark.severity()), field, message, remark.code() + " " + LessonRemark.text(message));
    }

    private static LessonRemark played(String field, Remark remark, Line line, Passage passage) {
        return new LessonRemark(
                remark.severity() == Severity.ERROR ? Checkpoint.LINES : Checkpoint.FINDINGS,
                weight(remark.severity()),
                field,
                placed(line, passage.from(), remark.sentence()),
                remark.code() + "\n" + bars(line, passage),
                passage.from().bar());
    }

    private static Message placed(Line line, Position position, Message sentence) {
        int bar = position.bar();
        var meter = line.inForce().get(line.indexOf(bar)).meter();
        return Count.at(position.at(), meter)
                .map(count -> Message.of("publishing.remark.count", bar, count.toString(), sentence))
                .orElseGet(() -> Message.of("publishing.remark.bar", bar, sentence));
    }

    private static Weight weight(Severity severity) {
        return switch (severity) {
            case ERROR, IMPOSSIBLE -> Weight.BLOCKS;
            case UNWISE -> Weight.ASKS;
            case WORTH_A_LOOK -> Weight.MENTIONS;
        };
    }

    /** The notes of the bars that it speaks of: what was accepted of them holds as long as they stay as they are. */
    private static String bars(Line line, Passage passage) {
        int first = line.indexOf(passage.from().bar());
        int last = Math.min(line.indexOf(passage.to().bar()), line.bars().size() - 1);
        return LineText.notes(line, first, last);
    }
}
