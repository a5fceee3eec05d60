package groundbass.web.desk.line;

import groundbass.checks.finding.NoteChange;
import groundbass.checks.finding.Repair;
import groundbass.linetext.LineText;
import groundbass.linetext.Reading;
import groundbass.linetext.source.Splice;
import groundbass.score.Line;
import groundbass.text.Messages;
import groundbass.web.desk.line.LiveLine.FixView;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** A repair of notes as a change of the text that was typed. It is offered only where the text then reads as repaired. */
final class RepairText {
    private static final Pattern ARRIVAL =
            Pattern.compile("\\s+(hammer|pull|slide)\\b(?!\\s+(in|off)\\b)(\\s+from\\s+\\d+)?");

    private final String text;
    private final Reading reading;
    private final TextPlaces places;

    RepairText(String text, Reading reading, TextPlaces places) {
        this.text = text;
        this.reading = reading;
        this.places = places;
    }

    Optional<FixView> of(Repair repair, Messages messages) {
        return repaired(repair)
                .flatMap(line -> splices(repair).filter(splices -> reads(splices, line)))
                .map(splices -> new FixView(messages.say(repair.label()), splices));
    }

    private Optional<Line> repaired(Repair repair) {
        try {
            return Optional.of(repair.applyTo(reading.line()));
        } catch (IllegalArgumentException e) { // what would come of it is no line
            return Optional.empty();
        }
    }

    private boolean reads(List<Splice> splices, Line line) {
        var bars = LineText.read(Splice.apply(text, splices)).line().bars();
        return bars.size() == line.bars().size()
                && IntStream.range(0, bars.size())
                        .allMatch(i ->
                                bars.get(i).notes().equals(line.bars().get(i).notes()));
    }

    private Optional<List<Splice>> splices(Repair repair) {
        var all = new ArrayList<Splice>();
        for (var edit : repair.edits()) {
            var splice = splice(edit);
            if (splice.isEmpty()) {
                return Optional.empty();
            }
            all.add(splice.get());
        }
        return Optional.of(List.copyOf(all));
    }

    private Optional<Splice> splice(Repair.Edit edit) {
        var at = edit.note().position();
        var note = reading.origins().note(at.bar(), at.at(), edit.note().string());
        return note.flatMap(span -> {
            int from = places.from(span);
            int to = from + span.length();
            boolean typedHere = TextPlaces.isPlace(text.substring(from, to));
            return typedHere ? splice(edit.change(), from, to) : Optional.empty();
        });
    }

    private Optional<Splice> splice(NoteChange change, int from, int to) {
        var tuning = reading.line().header().tuning();
        if (change instanceof NoteChange.ToPlace place) {
            return Optional.of(new Splice(from, to, tuning.typed(place.place())));
        }
        if (change instanceof NoteChange.Without without) {
            return word(Pattern.compile("\\s+" + without.mark().word() + "\\b"), to, "");
        }
        if (change instanceof NoteChange.ToArrival arrival) {
            return word(ARRIVAL, to, " " + arrival.kind().word());
        }
        return word(ARRIVAL, to, "");
    }

    /** The words of a place reach to the next place, the next event or the end of its line. */
    private Optional<Splice> word(Pattern word, int from, String instead) {
        int end = from;
        while (end < text.length() && ",+\n#".indexOf(text.charAt(end)) < 0) {
            end++;
        }
        var found = word.matcher(text).region(from, end);
        return found.find() ? Optional.of(new Splice(found.start(), found.end(), instead)) : Optional.empty();
    }
}
