package groundbass.intake.xml;

import groundbass.intake.draft.BassNames;
import groundbass.intake.draft.OneLine;
import groundbass.intake.notice.FilePart;
import groundbass.intake.notice.Unreadable;
import groundbass.intake.xml.document.Document;
import groundbass.intake.xml.document.XmlElement;
import groundbass.intake.xml.document.XmlNumbers;
import groundbass.text.Message;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A look at all parts of a score: what they are called, and which of them is the bass (common practice, no source). */
final class PartSurvey implements ScoreWalk.Visitor {
    private static final int SURE = 100;
    private static final int LIKELY = 60;
    private static final int HINT = 30;

    /** General MIDI's basses, counted from one as the format does. */
    private static final int FIRST_BASS = 33;

    private static final int LAST_BASS = 40;

    /** A1: the lowest string of anything higher is no bass. */
    private static final int LOW_STRING = 33;

    /** Of more than an orchestra has none is looked for (ours). */
    private static final int MOST_PARTS = 1_000;

    private final Map<String, Seen> parts = new LinkedHashMap<>();

    private static final class Seen {
        private String name = "";
        private int notes;
        private int weight;
        private boolean tablature;
        private boolean tuned;
    }

    static List<Surveyed> of(Document document) throws Unreadable {
        var survey = new PartSurvey();
        ScoreWalk.of(document, survey);
        if (survey.parts.size() > MOST_PARTS) {
            throw new Unreadable(Message.of("intake.refused.size"));
        }
        return survey.surveyed();
    }

    /**
     * A part and how much speaks for its being the bass.
     *
     * @param tablature whether it says where notes are played
     */
    record Surveyed(String id, FilePart part, int weight, boolean tablature) {
        boolean isBass() {
            return weight >= LIKELY;
        }
    }

    private List<Surveyed> surveyed() {
        var all = new ArrayList<Surveyed>();
        parts.forEach((id, seen) -> all.add(
                new Surveyed(id, new FilePart(all.size() + 1, seen.name, seen.notes), seen.weight, seen.tablature)));
        return all;
    }

    /** One more than there may be tells that there are more. */
    private Seen part(String id) {
        var seen = parts.getOrDefault(id, new Seen());
        if (parts.size() <= MOST_PARTS) {
            parts.putIfAbsent(id, seen);
        }
        return seen;
    }

    @Override
    public void head(XmlElement element) {
        if (element.name().equals("part-list")) {
            element.all("score-part").forEach(this::listed);
        }
    }

    private void listed(XmlElement listed) {
        var seen = part(listed.attribute("id").orElse(""));
        seen.name = OneLine.of(listed.text("part-name").orElse(""));
        var names = new StringBuilder(seen.name);
        listed.all("score-instrument").forEach(instrument -> {
            names.append(' ').append(instrument.text("instrument-name").orElse(""));
            boolean bass = instrument.text("instrument-sound").orElse("").startsWith("pluck.bass");
            seen.weight += bass ? SURE : 0;
        });
        listed.all("midi-instrument")
                .flatMap(instrument -> instrument.text("midi-program").stream())
                .filter(PartSurvey::isBassProgram)
                .findFirst()
                .ifPresent(program -> seen.weight += LIKELY);
        if (BassNames.isBass(names.toString())) {
            seen.weight += LIKELY;
        }
    }

    private static boolean isBassProgram(String program) {
        return XmlNumbers.whole(program)
                .filter(number -> number >= FIRST_BASS && number <= LAST_BASS)
                .isPresent();
    }

    @Override
    public boolean wants(String part) {
        return true;
    }

    @Override
    public void beginMeasure(String part, Map<String, String> attributes) {
        part(part);
    }

    @Override
    public void item(String id, XmlElement item) {
        var seen = part(id);
        if (item.name().equals("note") && item.has("pitch") && !item.has("cue")) {
            seen.notes++;
            seen.tablature |= item.all("notations", "technical").anyMatch(technical -> technical.has("fret"));
        } else if (item.name().equals("attributes")) {
            item.all("clef").forEach(clef -> clef(seen, clef));
            lowestString(item).ifPresent(midi -> tuning(seen, midi));
        }
    }

    /** A clef says the same however often it is written, so only the first counts. */
    private static void clef(Seen seen, XmlElement clef) {
        if (seen.notes > 0) {
            return;
        }
        String sign = clef.text("sign").orElse("");
        seen.weight += sign.equals("F") ? HINT : sign.equals("percussion") ? -SURE : 0;
    }

    /** Strings are tuned once, however often a file says so. */
    private static void tuning(Seen seen, int lowest) {
        if (!seen.tuned) {
            seen.weight += lowest <= LOW_STRING ? LIKELY : -SURE;
        }
        seen.tuned = true;
    }

    private static Optional<Integer> lowestString(XmlElement attributes) {
        return attributes
                .all("staff-details", "staff-tuning")
                .flatMap(tuning -> Pitches.of(tuning, "tuning-").stream())
                .map(pitch -> pitch.midi())
                .min(Integer::compare);
    }

    @Override
    public void endMeasure(String part) {
        // nothing ends with a measure that is counted here
    }
}
