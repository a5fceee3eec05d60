package groundbass.intake.xml;

import groundbass.intake.draft.OneLine;
import groundbass.intake.notice.NoticeList;
import groundbass.intake.xml.document.Cursor;
import groundbass.intake.xml.document.XmlElement;
import groundbass.intake.xml.document.XmlNumbers;
import groundbass.score.Bar;
import groundbass.score.Changes.Fresh;
import groundbass.score.ChordAt;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.text.Message;
import groundbass.theory.Pitch;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reads one part of a score, measure by measure. */
final class PartReader implements ScoreWalk.Visitor {
    /** A note may be several heads, tied or on two staves; of more than a line and a bar can have none are gathered. */
    private static final int HEADS_OF_A_NOTE = 4;

    private static final int MOST_HEADS = HEADS_OF_A_NOTE * Line.MOST_NOTES;
    private static final int MOST_HEADS_IN_BAR = HEADS_OF_A_NOTE * Bar.MOST_NOTES;

    private final String part;
    private final NoticeList notices;
    private final PartState state;
    private final DirectionsInFile said;
    private final Cursor cursor = new Cursor();
    private final Transposing transposing = new Transposing();
    private final Barline barline;
    private final KeyAndMeter keyAndMeter;
    private final FileTuning neck = new FileTuning();
    private final Titles titles = new Titles();
    private final List<RawNote> notes = new ArrayList<>();
    private final Set<Integer> tablatures = new HashSet<>();
    private final Map<String, Integer> voices = new HashMap<>();
    private int headsInBar;
    private boolean full;

    PartReader(String part, NoticeList notices) {
        this.part = part;
        this.notices = notices;
        this.state = new PartState(notices);
        this.said = new DirectionsInFile(state, notices);
        this.barline = new Barline(notices);
        this.keyAndMeter = new KeyAndMeter(state, cursor, transposing, notices);
    }

    PartState state() {
        return state;
    }

    List<RawNote> notes() {
        return notes;
    }

    FileTuning neck() {
        return neck;
    }

    Titles titles() {
        return titles;
    }

    /** The staves that show strings. */
    Set<Integer> tablatures() {
        return tablatures;
    }

    /** A bracket that nothing ends goes no further than the last bar. */
    void closeBrackets() {
        barline.close(state.bars());
    }

    @Override
    public void head(XmlElement element) {
        titles.read(element);
        element.all("encoding", "software").forEach(software -> state.writtenBy(software.text()));
    }

    @Override
    public boolean wants(String id) {
        return part.equals(id);
    }

    @Override
    public void beginMeasure(String id, Map<String, String> attributes) {
        full = state.bars().size() == Line.MOST_BARS;
        if (full) {
            notices.leftOut(Message.of("intake.left.bars", Line.MOST_BARS));
            return;
        }
        state.begin(attributes.getOrDefault("number", "").strip(), "yes".equals(attributes.get("implicit")));
        cursor.begin();
        headsInBar = 0;
    }

    @Override
    public void item(String id, XmlElement item) {
        if (full) {
            return;
        }
        switch (item.name()) {
            case "attributes" -> attributes(item);
            case "note" -> note(item);
            case "backup" -> cursor.length(item, "duration").ifPresent(cursor::back);
            case "forward" -> cursor.length(item, "duration").ifPresent(cursor::advance);
            case "direction" -> said.direction(item, at(item));
            case "sound" -> said.sound(item, "", at(item));
            case "harmony" -> harmony(item);
            case "barline" -> barline.read(item, state.bar(), state.before());
            case "print" -> print(item);
            case "figured-bass" -> notices.leftOut(state.bar().index, Message.of("intake.left.sign", item.name()));
            default -> {
                // what only concerns the look of a page, or belongs to one program alone
            }
        }
    }

    private Fraction at(XmlElement item) {
        var offset = cursor.length(item, "offset").orElse(Fraction.ZERO);
        return Cursor.bounded(cursor.now().plus(offset)).max(Fraction.ZERO);
    }

    private void attributes(XmlElement attributes) {
        attributes.text("divisions").flatMap(XmlNumbers::decimal).ifPresent(cursor::divide);
        transposing.read(attributes);
        keyAndMeter.read(attributes);
        attributes
                .all("clef")
                .filter(clef -> clef.text("sign").filter("TAB"::equals).isPresent())
                .map(clef -> staff(clef.attribute("number")))
                .filter(staff -> staff <= Transposing.MOST_STAVES)
                .forEach(tablatures::add);
        attributes.all("staff-details").forEach(neck::read);
        boolean slashes = attributes.all("measure-style", "slash").findAny().isPresent();
        if (slashes) {
            notices.leftOut(state.bar().index, Message.of("intake.left.sign", "slash"));
        }
    }

    private static int staff(Optional<String> number) {
        return number.flatMap(XmlNumbers::whole).orElse(1);
    }

    private void note(XmlElement note) {
        boolean grace = note.has("grace");
        boolean together = note.has("chord");
        var start = together && !grace ? cursor.lastOnset() : cursor.now();
        var length = grace ? Fraction.ZERO : length(note);
        if (!grace && !together) {
            cursor.advance(length);
        }
        if (note.has("rest") || !(grace || length.isPositive())) {
            return;
        }
        var pitch = note.child("pitch").flatMap(each -> Pitches.of(each, ""));
        if (note.has("cue") || pitch.isEmpty()) {
            notices.leftOut(
                    state.bar().index, Message.of(note.has("cue") ? "intake.left.cue" : "intake.left.unpitched"));
        } else if (notes.size() < MOST_HEADS && headsInBar < MOST_HEADS_IN_BAR) {
            sounding(note, pitch.get(), grace, start, length);
        } else {
            notices.leftOut(state.bar().index, Message.of("intake.left.many"));
        }
    }

    private void sounding(XmlElement note, Pitch pitch, boolean grace, Fraction start, Fraction length) {
        int staff = staff(note.text("staff"));
        int voice = voices.computeIfAbsent(staff + " " + note.text("voice").orElse("1"), each -> voices.size());
        int steps = transposing.of(staff);
        var raw = new RawNote(
                state.bar().index,
                staff,
                voice,
                grace,
                pitch.midi() + steps,
                state.bar().start.plus(start),
                length);
        raw.name = Optional.of(transposing.name(staff, pitch.name()));
        headsInBar++;
        NoteSigns.read(note, raw, notices);
        note.all("notations", "dynamics")
                .flatMap(dynamics -> dynamics.children().stream())
                .forEach(each -> said.dynamic(each, start));
        notes.add(raw);
    }

    /** What the file says; nothing where it says nothing. */
    private Fraction length(XmlElement note) {
        return cursor.length(note, "duration")
                .filter(length -> !length.isNegative())
                .orElse(Fraction.ZERO);
    }

    private void harmony(XmlElement harmony) {
        int staff = staff(harmony.text("staff"));
        var chord = ChordSymbolReader.of(harmony).map(read -> read.with(transposing.chord(staff, read.symbol())));
        boolean room = chord.isEmpty()
                || state.bar().chord(new ChordAt(at(harmony), chord.get().symbol()));
        if (!room) {
            notices.leftOut(state.bar().index, Message.of("intake.left.crowd"));
        } else if (chord.isEmpty()) {
            notices.leftOut(state.bar().index, Message.of("intake.left.chord", name(harmony)));
        } else if (!chord.get().exact()) {
            notices.changed(
                    state.bar().index,
                    Message.of("intake.changed.chord", chord.get().symbol().toString()));
        }
    }

    private static String name(XmlElement harmony) {
        String root =
                harmony.child("root").flatMap(each -> each.text("root-step")).orElse("");
        var kind = harmony.child("kind");
        String written = kind.flatMap(each -> each.attribute("text"))
                .or(() -> kind.map(XmlElement::text))
                .orElse("");
        return OneLine.of(root + " " + written);
    }

    /** Breaks that another program has made for its own paper mean nothing on ours. */
    private void print(XmlElement print) {
        if (!state.isOurs()) {
            return;
        }
        if (print.is("new-page", "yes")) {
            state.fresh(Fresh.PAGE);
        } else if (print.is("new-system", "yes")) {
            state.fresh(Fresh.SYSTEM);
        }
    }

    @Override
    public void endMeasure(String id) {
        if (full) {
            return;
        }
        var bar = state.bar();
        var content = cursor.furthest();
        var signature = state.signature();
        var meter = signature
                .filter(each -> !content.isAfter(each.length()))
                .or(() -> Meters.ofLength(content, signature.map(Meter::unit).orElse(4)))
                .orElseGet(() -> signature
                        .map(each -> Meter.of(Meter.MOST_COUNTS, each.unit()))
                        .orElse(Meter.COMMON));
        if (signature.filter(each -> content.isAfter(each.length())).isPresent()) {
            notices.changed(bar.index, Message.of("intake.changed.long"));
        }
        measure(bar, content, meter);
        state.slowed();
        state.end(meter);
    }

    /** A bar begins and ends on a quarter of a count. */
    private void measure(RawMeasure bar, Fraction content, Meter meter) {
        var quarter = meter.count().dividedBy(4);
        var filled =
                quarter.times(-content.dividedBy(quarter).negated().floor()).min(meter.length());
        boolean whole = content.isZero() || filled.equals(meter.length());
        boolean pickup = bar.index == 0 && (bar.implicit || bar.number.equals("0"));
        bar.to = whole || pickup ? meter.length() : filled;
        bar.from = pickup && !whole ? meter.length().minus(filled) : Fraction.ZERO;
        if (!content.isZero() && !filled.equals(content) && filled.isAfter(content)) {
            notices.changed(bar.index, Message.of("intake.changed.filled"));
        }
        if (pickup && !whole) {
            bar.pad = filled.minus(content);
            notes.forEach(note -> note.shift(bar.pad));
        }
    }
}
