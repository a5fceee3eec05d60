package groundbass.web.desk.line;

import groundbass.lesson.LineRemarks;
import groundbass.lesson.Sheets;
import groundbass.linetext.LineText;
import groundbass.linetext.Reading;
import groundbass.text.Message;
import groundbass.text.Messages;
import groundbass.walkthrough.Step;
import groundbass.walkthrough.Walkthrough;
import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What a line's text comes to.
 *
 * @param field the name of the field with the text
 * @param drawn whether there is anything to draw, drawn or not
 * @param svg the sheet, where it could be drawn
 * @param walk the walkthrough, a sentence each
 * @param why what kept the sheet from being drawn, where that was no fault
 */
public record LinePreview(
        String field,
        boolean drawn,
        Optional<String> svg,
        List<RemarkView> remarks,
        List<String> walk,
        Optional<Message> why) {
    private static final Logger log = LoggerFactory.getLogger(LinePreview.class);

    /**
     * @param room what the page still has room for
     * @param reader the words of remarks
     */
    public static LinePreview of(
            String field, String text, double width, Sheets sheets, SheetRoom room, Messages reader) {
        var reading = LineText.read(text);
        if (text.isBlank()) { // what is not begun has neither mistakes nor a picture of an empty bar
            return new LinePreview(field, false, Optional.empty(), List.of(), List.of(), Optional.empty());
        }
        if (!room.takes(reading.line())) {
            return undrawn(field, SheetRoom.TOO_LARGE);
        }
        return draw(field, reading, remarks(reading, reader), width, sheets);
    }

    public int mistakes() {
        return (int) remarks.stream().filter(RemarkView::mistake).count();
    }

    /** A line that is neither drawn nor read, and why. */
    public static LinePreview undrawn(String field, Message why) {
        return new LinePreview(field, true, Optional.empty(), List.of(), List.of(), Optional.of(why));
    }

    /** A fault in drawing must not keep an educator from their own text, so it ends here and goes into the log. */
    private static LinePreview draw(
            String field, Reading reading, List<RemarkView> remarks, double width, Sheets sheets) {
        try {
            var svg = sheets.svg(reading.line(), width, field + "-");
            var walk = Walkthrough.of(reading.line(), sheets.messages()).stream()
                    .map(Step::text)
                    .toList();
            return new LinePreview(field, true, Optional.of(svg), remarks, walk, Optional.empty());
        } catch (RuntimeException e) {
            log.error("a line could not be drawn", e);
            return new LinePreview(field, true, Optional.empty(), remarks, List.of(), Optional.empty());
        }
    }

    private static List<RemarkView> remarks(Reading reading, Messages reader) {
        return RemarkView.of(LineRemarks.of(reading), reading.origins().source(), reader);
    }
}
