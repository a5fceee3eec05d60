package groundbass.intake;

import groundbass.intake.Intake.Outcome;
import groundbass.intake.notice.FilePart;
import groundbass.intake.notice.Notice;
import groundbass.linetext.LineText;
import groundbass.score.Line;
import groundbass.text.Messages;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * A file that was read.
 *
 * @param part which of its parts the line is
 * @param parts all that it has
 * @param notices what the line has otherwise than the file
 */
public record Brought(Line line, FilePart part, List<FilePart> parts, List<Notice> notices) implements Outcome {
    public Brought {
        Objects.requireNonNull(line);
        Objects.requireNonNull(part);
        parts = List.copyOf(parts);
        notices = List.copyOf(notices);
    }

    /** The line as text; what is to be said of a bar stands before it as a comment, of the whole line at the head. */
    public String text(Messages messages) {
        var blocks = LineText.print(line).split("\n\n");
        var text = new StringBuilder();
        notices.stream()
                .filter(notice -> notice.bars().isEmpty())
                .forEach(notice -> text.append(comment(notice, messages)));
        text.append(blocks[0]);
        var comments = commentsByBar(messages);
        for (int block = 1; block < blocks.length; block++) {
            int number = line.firstNumber() + block - 1;
            text.append("\n\n").append(comments.getOrDefault(number, "")).append(blocks[block]);
        }
        return text.toString();
    }

    private Map<Integer, String> commentsByBar(Messages messages) {
        var comments = new HashMap<Integer, String>();
        for (var notice : notices) {
            String comment = comment(notice, messages);
            notice.bars().forEach(bar -> comments.merge(bar, comment, String::concat));
        }
        return comments;
    }

    private static String comment(Notice notice, Messages messages) {
        return "# " + messages.say(notice.weight().messageKey()) + ": " + messages.say(notice.message()) + "\n";
    }
}
