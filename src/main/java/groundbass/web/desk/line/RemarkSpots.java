package groundbass.web.desk.line;

import groundbass.checks.finding.Repair;
import groundbass.lesson.LineRemarks;
import groundbass.linetext.Reading;
import groundbass.linetext.edit.Fixes;
import groundbass.remark.Remark;
import groundbass.remark.Severity;
import groundbass.score.Count;
import groundbass.score.Fraction;
import groundbass.score.Passage;
import groundbass.score.Position;
import groundbass.text.Messages;
import groundbass.web.desk.line.LiveLine.FixView;
import groundbass.web.desk.line.LiveLine.RemarkSpot;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** What is wrong with a text and what a teacher would remark on in its line, each in its place. */
final class RemarkSpots {
    /** Each is tried by reading the text anew. */
    private static final int MOST_FIXED = 10;

    private final String text;
    private final Reading reading;
    private final Where where;
    private final Messages messages;
    private final TextPlaces places;

    /** Where a time of a bar lies on the sheet. */
    interface Where {
        double x(int bar, Fraction at);
    }

    RemarkSpots(String text, Reading reading, Where where, Messages messages) {
        this.text = text;
        this.reading = reading;
        this.where = where;
        this.messages = messages;
        this.places = TextPlaces.of(text);
    }

    List<RemarkSpot> all() {
        var spots = new ArrayList<RemarkSpot>();
        var fixes = new Fixes(text, reading);
        for (var remark : LineRemarks.of(reading)) {
            spots.add(spot(
                    remark,
                    remark.severity() == Severity.ERROR ? fixes(fixes, remark, spots.size()) : repairs(remark)));
        }
        return List.copyOf(spots);
    }

    private List<FixView> fixes(Fixes fixes, Remark mistake, int before) {
        return before < MOST_FIXED
                ? fixes.of(mistake).stream()
                        .map(fix -> new FixView(messages.say(fix.label()), fix.splices()))
                        .toList()
                : List.of();
    }

    private List<FixView> repairs(Remark remark) {
        var repairs = new RepairText(text, reading, places);
        return remark.suggestions().stream()
                .flatMap(suggestion -> suggestion instanceof Repair repair
                        ? repairs.of(repair, messages).stream()
                        : Stream.<FixView>empty())
                .toList();
    }

    private RemarkSpot spot(Remark remark, List<FixView> fixes) {
        var span = remark.span();
        var position =
                remark.passage().map(Passage::from).or(() -> reading.origins().positionAt(span.line(), span.column()));
        int bar = position.map(Position::bar)
                .or(() -> reading.origins().barAt(span.line()))
                .orElse(-1);
        int from = Math.min(text.length(), places.from(span));
        return new RemarkSpot(
                remark.severity().word(),
                messages.say(remark.severity().messageKey()),
                messages.say(remark.sentence()),
                messages.locale().toLanguageTag(),
                span.line(),
                from,
                Math.min(text.length(), from + Math.max(span.length(), 1)),
                bar,
                position.flatMap(this::count).map(Count::toString).orElse(""),
                position.map(found -> where.x(found.bar(), found.at())).orElse(-1.0),
                fixes);
    }

    private Optional<Count> count(Position position) {
        var line = reading.line();
        int index = line.indexOf(position.bar());
        return index < 0 || index >= line.bars().size()
                ? Optional.empty()
                : Count.at(position.at(), line.inForce().get(index).meter());
    }
}
