package groundbass.web.desk.editor;

import groundbass.document.HouseStyle;
import groundbass.form.FieldProblem;
import groundbass.groove.GrooveText;
import groundbass.lesson.NotePieces;
import groundbass.lesson.Sheets;
import groundbass.linetext.LineText;
import groundbass.publishing.Promise;
import groundbass.remark.Source;
import groundbass.text.Message;
import groundbass.text.Messages;
import groundbass.web.desk.line.LinePreview;
import groundbass.web.desk.line.RemarkView;
import groundbass.web.desk.line.SheetRoom;
import groundbass.web.view.NoteViews;
import groundbass.web.view.Reader;
import groundbass.web.view.Zones;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * What an episode comes to as it is typed now: its lines drawn and told, what is wrong with them, and what moment the
 * hour to promise stands for. Made anew for every request; nothing of it is kept.
 */
public record Preview(
        LinePreview main, List<LinePreview> exercises, List<RemarkView> groove, String notes, Optional<Message> hour) {
    private static final ZoneId UTC = ZoneId.of("UTC");

    /** In staff spaces. */
    private static final double WIDE = 78;

    private static final double NARROW = 44;

    private static final int HEADINGS_OF_NOTES = 3;

    /**
     * @param narrow whether the reader has little room, as on a phone
     * @param style how the series has its sheets
     */
    static Preview of(EpisodeForm form, boolean narrow, HouseStyle style, Reader reader, Instant now) {
        double width = narrow ? NARROW : WIDE;
        var sheets = sheets(form, style);
        var room = new SheetRoom();
        var words = Messages.of(reader.locale());
        var main = LinePreview.of("mainLine", form.mainLine(), width, sheets, room, words);
        var exercises = IntStream.range(0, form.exercises().size())
                .mapToObj(i ->
                        LinePreview.of("exercises-" + i, form.exercises().get(i).text(), width, sheets, room, words))
                .toList();
        return new Preview(main, exercises, groove(form.groove(), words), notes(form, sheets), hour(form, reader, now));
    }

    /** The form as it was typed, with nothing drawn, read or told of it, and why. */
    static Preview undrawn(EpisodeForm form, Message why) {
        var exercises = IntStream.range(0, form.exercises().size())
                .mapToObj(i -> LinePreview.undrawn("exercises-" + i, why))
                .toList();
        return new Preview(LinePreview.undrawn("mainLine", why), exercises, List.of(), "", Optional.empty());
    }

    /** The same form, of which only what stands beside the lines is shown. */
    static Preview beside(EpisodeForm form, HouseStyle style, Reader reader, Instant now) {
        var whole = of(form.withoutLines(), false, style, reader, now);
        return new Preview(whole.main, whole.exercises, whole.groove, notes(form, sheets(form, style)), whole.hour);
    }

    private static Sheets sheets(EpisodeForm form, HouseStyle style) {
        var messages = Messages.of(Locale.forLanguageTag(form.making().language()));
        return new Sheets(messages).with(style);
    }

    /** The notes as a student will see them. */
    private static String notes(EpisodeForm form, Sheets sheets) {
        var line = LineText.read(form.mainLine()).line();
        return NoteViews.html(form.notes(), HEADINGS_OF_NOTES, NotePieces.of(form.notes(), line, sheets));
    }

    /** All lines, the main one first. */
    public List<LinePreview> lines() {
        return Stream.concat(Stream.of(main), exercises.stream()).toList();
    }

    /** How many mistakes there are, for the line that tells it. */
    public int mistakes() {
        var remarks = Stream.concat(lines().stream().flatMap(line -> line.remarks().stream()), groove.stream());
        return (int) remarks.filter(RemarkView::mistake).count();
    }

    private static List<RemarkView> groove(String text, Messages words) {
        return text.isBlank() ? List.of() : RemarkView.of(GrooveText.read(text).problems(), Source.of("", text), words);
    }

    private static Optional<Message> hour(EpisodeForm form, Reader reader, Instant now) {
        return local(form.local()).flatMap(local -> zone(form.zone()).map(zone -> hour(local, zone, reader, now)));
    }

    private static Message hour(LocalDateTime local, ZoneId zone, Reader reader, Instant now) {
        var promise = Promise.of(local, zone, now);
        return promise.result()
                .map(kept -> Message.of(
                        "desk.publish.hour.means",
                        new Reader(reader.locale(), zone).moment(kept.at()),
                        new Reader(reader.locale(), UTC).moment(kept.at())))
                .orElseGet(() -> message(promise.problems().get(0)));
    }

    private static Message message(FieldProblem problem) {
        return new Message(problem.key(), problem.args());
    }

    /** The hour as a browser writes it; empty where nothing or something else was typed. */
    static Optional<LocalDateTime> local(String text) {
        try {
            return Optional.of(LocalDateTime.parse(text.strip()));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    static Optional<ZoneId> zone(String text) {
        return Zones.with("").contains(text) ? Optional.of(ZoneId.of(text)) : Optional.empty();
    }
}
