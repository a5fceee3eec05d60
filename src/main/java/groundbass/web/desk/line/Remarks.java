package groundbass.web.desk.line;

import groundbass.checks.Checks;
import groundbass.checks.Finding;
import groundbass.checks.Severity;
import groundbass.linetext.Reading;
import groundbass.linetext.edit.Fixes;
import groundbass.linetext.edit.Fixes.Fix;
import groundbass.linetext.problem.Problem;
import groundbass.linetext.source.Span;
import groundbass.score.Count;
import groundbass.score.Fraction;
import groundbass.score.Position;
import groundbass.text.Messages;
import groundbass.web.desk.line.LiveLine.FixView;
import groundbass.web.desk.line.LiveLine.Remark;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What is wrong with a text and what a teacher would remark on in its line, each in its place. */
final class Remarks {
    private static final int MOST = 50;
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

    Remarks(String text, Reading reading, Where where, Messages messages) {
        this.text = text;
        this.reading = reading;
        this.where = where;
        this.messages = messages;
        this.places = TextPlaces.of(text);
    }

    List<Remark> all() {
        var remarks = new ArrayList<Remark>();
        var fixes = new Fixes(text, reading);
        for (var problem : reading.problems().stream().limit(MOST).toList()) {
            remarks.add(remark(problem, remarks.size() < MOST_FIXED ? fixes.of(problem) : List.of()));
        }
        Checks.of(reading.line()).stream().limit(MOST).map(this::remark).forEach(remarks::add);
        return List.copyOf(remarks);
    }

    private Remark remark(Problem problem, List<Fix> fixes) {
        var span = problem.span();
        var position = reading.origins().positionAt(span.line(), span.column());
        int bar = position.map(Position::bar)
                .or(() -> reading.origins().barAt(span.line()))
                .orElse(-1);
        var views = fixes.stream()
                .map(fix -> new FixView(fix.label(), fix.splices()))
                .toList();
        return remark("error", messages.say("desk.remark.error"), problem.sentence(), "en", span, bar, position, views);
    }

    private Remark remark(Finding finding) {
        var position = finding.position();
        var span = finding.notes().stream()
                .flatMap(note ->
                        reading
                                .origins()
                                .note(note.position().bar(), note.position().at(), note.string())
                                .stream())
                .reduce((first, last) -> last)
                .orElseGet(() -> reading.origins().at(position));
        var fixes = finding.repairs().stream()
                .flatMap(repair -> new RepairText(text, reading, places).of(repair, messages).stream())
                .toList();
        String name = messages.say(finding.severity().messageKey());
        String language = messages.locale().toLanguageTag();
        return remark(
                weight(finding.severity()),
                name,
                messages.say(finding.reason()),
                language,
                span,
                position.bar(),
                Optional.of(position),
                fixes);
    }

    private Remark remark(
            String weight,
            String name,
            String sentence,
            String language,
            Span span,
            int bar,
            Optional<Position> position,
            List<FixView> fixes) {
        int from = Math.min(text.length(), places.from(span));
        int to = Math.min(text.length(), from + Math.max(span.length(), 1));
        String at = position.flatMap(this::count).map(Count::toString).orElse("");
        double x = position.map(found -> where.x(found.bar(), found.at())).orElse(-1.0);
        return new Remark(weight, name, sentence, language, span.line(), from, to, bar, at, x, fixes);
    }

    private Optional<Count> count(Position position) {
        var line = reading.line();
        int index = line.indexOf(position.bar());
        return index < 0 || index >= line.bars().size()
                ? Optional.empty()
                : Count.at(position.at(), line.inForce().get(index).meter());
    }

    private static String weight(Severity severity) {
        return switch (severity) {
            case IMPOSSIBLE -> "impossible";
            case UNWISE -> "unwise";
            case WORTH_A_LOOK -> "look";
        };
    }
}
