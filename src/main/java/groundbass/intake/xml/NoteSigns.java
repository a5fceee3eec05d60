package groundbass.intake.xml;

import groundbass.intake.draft.OneLine;
import groundbass.intake.notice.NoticeList;
import groundbass.intake.xml.document.XmlElement;
import groundbass.intake.xml.document.XmlNumbers;
import groundbass.score.Arrival;
import groundbass.score.Fraction;
import groundbass.score.Harmonic;
import groundbass.score.Ornaments.Bend;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Ornaments.SlideIn;
import groundbass.score.Ornaments.SlideOff;
import groundbass.score.Ornaments.Spread;
import groundbass.score.Ornaments.Trill;
import groundbass.score.Technique;
import groundbass.text.Message;
import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Pattern;

/** What stands at one note beside its pitch and length. */
final class NoteSigns {
    private static final Map<String, Technique> WORDS = Map.of("slap", Technique.SLAP, "pop", Technique.POP);
    private static final Map<String, Technique> LETTERS =
            Map.of("p", Technique.THUMB, "i", Technique.INDEX, "m", Technique.MIDDLE);

    /** What goes without saying, what is read elsewhere, and what only shows what the file says anyway. */
    private static final Set<String> PASSED =
            Set.of("string", "fret", "open-string", "other-technical", "tuplet", "tied", "tie", "technical");

    private static final Pattern TOUCH = Pattern.compile("touch (\\d{1,2})");

    private final XmlElement note;
    private final RawNote raw;
    private final NoticeList notices;

    private NoteSigns(XmlElement note, RawNote raw, NoticeList notices) {
        this.note = note;
        this.raw = raw;
        this.notices = notices;
    }

    static void read(XmlElement note, RawNote raw, NoticeList notices) {
        new NoteSigns(note, raw, notices).read();
    }

    private void read() {
        raw.hand = played();
        ties();
        head();
        note.all("notations").flatMap(all -> all.children().stream()).forEach(this::notation);
        note.all("notations", "technical")
                .forEach(technical -> technical.children().forEach(this::technical));
        note.all("notations", "articulations").forEach(signs -> signs.children().forEach(this::articulation));
        note.all("notations", "ornaments").forEach(signs -> signs.children().forEach(this::ornament));
        boolean slurred = note.all("notations", "slur").anyMatch(slur -> slur.is("type", "start"));
        if (slurred && raw.leaves.isEmpty()) {
            leftOut("intake.left.slur");
        }
        if (note.has("lyric")) {
            leftOut("intake.left.lyric");
        }
    }

    private void leftOut(String key) {
        notices.leftOut(raw.bar, Message.of(key));
    }

    private Optional<Technique> played() {
        var word = note.all("play", "other-play")
                .filter(play -> play.is("type", "technique"))
                .flatMap(play -> Arrays.stream(Technique.values())
                        .filter(hand -> hand.word().equals(play.text())))
                .findFirst();
        boolean palm = note.all("play", "mute").anyMatch(mute -> mute.text().equals("palm"));
        return word.or(() -> palm ? Optional.of(Technique.MUTE) : Optional.empty());
    }

    private void ties() {
        raw.tiedFrom = note.all("tie").anyMatch(tie -> tie.is("type", "stop"))
                || note.all("notations", "tied").anyMatch(tie -> tie.is("type", "stop"));
        raw.tiedTo = note.all("tie").anyMatch(tie -> tie.is("type", "start"))
                || note.all("notations", "tied").anyMatch(tie -> tie.is("type", "start"));
        if (note.all("notations", "tied").anyMatch(tie -> tie.is("type", "let-ring"))) {
            mark(Mark.RING);
        }
    }

    private void head() {
        note.child("notehead").ifPresent(head -> {
            raw.dead = head.text().equals("x") || head.text().equals("cross");
            if (head.is("parentheses", "yes") && !raw.dead) {
                mark(Mark.GHOST);
            }
        });
    }

    private void mark(Mark mark) {
        raw.ornaments = raw.ornaments.with(mark);
    }

    private void notation(XmlElement sign) {
        switch (sign.name()) {
            case "slur" -> raw.slurEnds |= sign.is("type", "stop");
            case "slide", "glissando" -> link(Arrival.Kind.SLIDE, sign);
            case "fermata" -> mark(Mark.FERMATA);
            case "arpeggiate" -> rolled(sign);
            case "non-arpeggiate" -> spread(Spread.BRACKET);
            case "articulations", "ornaments", "dynamics" -> {
                // each has a reader of its own
            }
            default -> unknown(sign);
        }
    }

    /** A rake runs from the highest string to the lowest anyway. */
    private void rolled(XmlElement sign) {
        boolean down = sign.is("direction", "down");
        boolean raked = raw.hand.filter(Technique.RAKE::equals).isPresent();
        if (!down || !raked) {
            spread(down ? Spread.ROLL_DOWN : sign.is("direction", "up") ? Spread.ROLL_UP : Spread.ROLL);
        }
    }

    /** What sounds on already is not struck. */
    private void spread(Spread spread) {
        if (!raw.tiedFrom) {
            raw.ornaments = raw.ornaments.withSpread(Optional.of(spread));
        }
    }

    private void link(Arrival.Kind kind, XmlElement sign) {
        if (sign.is("type", "stop")) {
            raw.reached = raw.reached.or(() -> Optional.of(kind));
        } else if (sign.is("type", "start")) {
            raw.leaves = raw.leaves.or(() -> Optional.of(kind));
        }
    }

    private void unknown(XmlElement sign) {
        if (!PASSED.contains(sign.name())) {
            notices.leftOut(raw.bar, Message.of("intake.left.sign", OneLine.of(sign.name())));
        }
    }

    private void technical(XmlElement sign) {
        switch (sign.name()) {
            case "string" -> raw.string = figure(sign, 1, 12);
            case "fret" -> raw.fret = figure(sign, 0, 36);
            case "fingering" -> finger(sign);
            case "hammer-on" -> link(Arrival.Kind.HAMMER, sign);
            case "pull-off" -> link(Arrival.Kind.PULL, sign);
            case "bend" -> bend(sign);
            case "harmonic" -> harmonic(sign);
            case "pluck" -> stroke(Optional.ofNullable(LETTERS.get(sign.text())), sign);
            case "tap" -> stroke(Optional.of(Technique.TAP).filter(hand -> !sign.is("hand", "left")), sign);
            case "snap-pizzicato" -> stroke(Optional.of(Technique.POP), sign);
            case "down-bow", "up-bow" -> stroke(Optional.empty(), sign);
            case "other-technical" -> other(sign);
            default -> unknown(sign);
        }
    }

    private static OptionalInt figure(XmlElement sign, int least, int most) {
        return XmlNumbers.whole(sign.text())
                .filter(figure -> figure >= least && figure <= most)
                .map(OptionalInt::of)
                .orElse(OptionalInt.empty());
    }

    /** What the file says of the hand in a word of its own counts before a sign. */
    private void stroke(Optional<Technique> hand, XmlElement sign) {
        if (raw.hand.isPresent()) {
            return;
        }
        raw.hand = hand;
        if (hand.isEmpty()) {
            unknown(sign);
        }
    }

    private void other(XmlElement sign) {
        var touch = TOUCH.matcher(sign.text());
        if (touch.matches()) {
            raw.harmonic = raw.harmonic.map(harmonic -> new RawNote.HarmonicSign(
                    harmonic.natural(), harmonic.sounding(), touched(Integer.parseInt(touch.group(1)))));
        } else if (raw.hand.isEmpty()) {
            raw.hand = Optional.ofNullable(WORDS.get(sign.text().toLowerCase(Locale.ROOT)));
            if (raw.hand.isEmpty()) {
                notices.leftOut(raw.bar, Message.of("intake.left.letters", OneLine.of(sign.text())));
            }
        }
    }

    private static OptionalInt touched(int fret) {
        return fret >= 1 && fret <= Harmonic.HIGHEST_TOUCHED ? OptionalInt.of(fret) : OptionalInt.empty();
    }

    private void finger(XmlElement sign) {
        var finger = figure(sign, 1, 4);
        if (finger.isPresent()) {
            raw.ornaments = raw.ornaments.withFinger(finger.getAsInt());
        } else {
            unknown(sign);
        }
    }

    /** How far, in steps of a quarter tone, before the stroke or after it, and whether it is let back. */
    private void bend(XmlElement sign) {
        var quarters = sign.text("bend-alter")
                .flatMap(XmlNumbers::decimal)
                .map(semitones -> semitones.isNegative() ? Fraction.ZERO.minus(semitones) : semitones)
                .map(semitones -> semitones.times(2).plus(Fraction.of(1, 2)).floor())
                .filter(size -> size >= 1 && size <= Bend.MOST_QUARTERS);
        var bent = raw.ornaments.bend();
        boolean releases =
                sign.has("release") && bent.filter(bend -> !bend.released()).isPresent();
        boolean first = quarters.isPresent() && bent.isEmpty() && !sign.has("release");
        if (releases) {
            raw.ornaments = raw.ornaments.with(bent.get().letBack());
        } else if (first) {
            var bend = new Bend(Math.toIntExact(quarters.get()));
            raw.ornaments = raw.ornaments.with(sign.has("pre-bend") ? bend.beforeTheStroke() : bend);
        }
        if (!releases && !first || sign.has("with-bar")) {
            leftOut("intake.left.bend");
        }
    }

    private void harmonic(XmlElement sign) {
        boolean natural = !sign.has("artificial");
        boolean sounding = !sign.has("base-pitch") && !sign.has("touching-pitch");
        raw.harmonic = Optional.of(new RawNote.HarmonicSign(natural, sounding, OptionalInt.empty()));
    }

    private void articulation(XmlElement sign) {
        switch (sign.name()) {
            case "staccato", "staccatissimo", "spiccato" -> mark(Mark.SHORT);
            case "tenuto" -> mark(Mark.TENUTO);
            case "detached-legato" -> {
                mark(Mark.SHORT);
                mark(Mark.TENUTO);
            }
            case "accent" -> mark(Mark.ACCENT);
            case "strong-accent" -> mark(Mark.MARCATO);
            case "scoop" -> raw.ornaments = raw.ornaments.with(SlideIn.BELOW);
            case "plop" -> raw.ornaments = raw.ornaments.with(SlideIn.ABOVE);
            case "doit" -> raw.ornaments = raw.ornaments.with(SlideOff.UP);
            case "falloff" -> raw.ornaments = raw.ornaments.with(SlideOff.DOWN);
            default -> unknown(sign);
        }
    }

    private void ornament(XmlElement sign) {
        switch (sign.name()) {
            case "trill-mark" -> raw.ornaments = raw.ornaments.with(new Trill(sign.is("trill-step", "half") ? 1 : 2));
            case "wavy-line" -> {
                if (sign.is("type", "start") && !isTrilled()) {
                    mark(Mark.VIBRATO);
                }
            }
            default -> unknown(sign);
        }
    }

    /** A wave behind the letters of a trill belongs to them. */
    private boolean isTrilled() {
        return note.all("notations", "ornaments").anyMatch(signs -> signs.children().stream()
                .anyMatch(sign -> sign.name().equals("trill-mark")));
    }
}
