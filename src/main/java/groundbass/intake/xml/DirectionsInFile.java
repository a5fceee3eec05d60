package groundbass.intake.xml;

import groundbass.intake.draft.OneLine;
import groundbass.intake.notice.NoticeList;
import groundbass.intake.xml.document.XmlElement;
import groundbass.intake.xml.document.XmlNumbers;
import groundbass.score.Direction;
import groundbass.score.Direction.Hairpin;
import groundbass.score.Direction.Loudness;
import groundbass.score.Dynamic;
import groundbass.score.Feel;
import groundbass.score.Fraction;
import groundbass.score.Roadmap.From;
import groundbass.score.Roadmap.Jump;
import groundbass.score.Roadmap.Until;
import groundbass.score.Swing;
import groundbass.score.Tempo;
import groundbass.text.Message;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** What is said at a moment: words, loudness, tempo, feel, sections and the signs of jumps. */
final class DirectionsInFile {
    private static final Pattern SLOWING = Pattern.compile("slowing to (\\d{2,3})");
    private static final Pattern CAPO = Pattern.compile("(d\\.? ?c\\.?|da capo)( .*)?");
    private static final Pattern DAL_SEGNO = Pattern.compile("(d\\.? ?s\\.?|dal segno)( .*)?");
    private static final Pattern TO_CODA = Pattern.compile("(to|al) coda\\.?");
    private static final Pattern FINE = Pattern.compile("fine\\.?");
    private static final Set<String> OWN_SPANS = Set.of("P.M.", "rake", "let ring");
    private static final Map<String, Dynamic> DYNAMICS = Map.ofEntries(
            Map.entry("pp", Dynamic.PP),
            Map.entry("p", Dynamic.P),
            Map.entry("mp", Dynamic.MP),
            Map.entry("mf", Dynamic.MF),
            Map.entry("f", Dynamic.F),
            Map.entry("ff", Dynamic.FF));

    /** What only shows what the notes say, or where something that is read elsewhere ends. */
    private static final Set<String> PASSED = Set.of("dashes", "bracket", "octave-shift", "metronome", "words");

    private final PartState state;
    private final NoticeList notices;

    DirectionsInFile(PartState state, NoticeList notices) {
        this.state = state;
        this.notices = notices;
    }

    /** @param at from the beginning of the measure */
    void direction(XmlElement direction, Fraction at) {
        var bar = state.bar();
        var sound = direction.child("sound");
        boolean dashed = direction.all("direction-type", "dashes").anyMatch(dashes -> dashes.is("type", "start"));
        direction
                .all("direction-type")
                .flatMap(type -> type.children().stream())
                .forEach(each -> sign(each, at));
        String words = words(direction);
        metronome(direction, at);
        boolean isMeant = sound.filter(each -> sound(each, words, at)).isPresent();
        boolean isPlain = !words.isEmpty() && !isMeant && !isOwn(words, dashed, bar);
        if (isPlain && !jump(words, Optional.empty(), at)) {
            say(new Direction.Words(at, words));
        }
    }

    private static String words(XmlElement direction) {
        var texts =
                direction.all("direction-type", "words").map(XmlElement::text).toList();
        return OneLine.of(String.join(" ", texts));
    }

    /** What our own files say of spans of notes is said by the notes as well. */
    private boolean isOwn(String words, boolean dashed, RawMeasure bar) {
        var slowing = SLOWING.matcher(words);
        if (dashed && slowing.matches()) {
            int to = Integer.parseInt(slowing.group(1));
            if (to >= Tempo.SLOWEST && to <= Tempo.FASTEST) {
                bar.changes = bar.changes.withSlowingTo(to);
                return true;
            }
        }
        return dashed && state.isOurs() && OWN_SPANS.contains(words);
    }

    private void say(Direction direction) {
        if (!state.bar().say(direction)) {
            notices.leftOut(state.bar().index, Message.of("intake.left.crowd"));
        }
    }

    private void sign(XmlElement sign, Fraction at) {
        switch (sign.name()) {
            case "rehearsal" -> section(sign);
            case "dynamics" -> sign.children().forEach(each -> dynamic(each, at));
            case "wedge" -> wedge(sign, at);
            case "segno" -> state.bar().roadmap = state.bar().roadmap.withSegno();
            case "coda" -> state.bar().roadmap = state.bar().roadmap.withCoda();
            default -> {
                if (!PASSED.contains(sign.name())) {
                    leftOut(sign.name());
                }
            }
        }
    }

    private void leftOut(String sign) {
        notices.leftOut(state.bar().index, Message.of("intake.left.sign", OneLine.of(sign)));
    }

    private void section(XmlElement sign) {
        String name = OneLine.of(sign.text());
        if (!name.isEmpty()) {
            state.bar().changes = state.bar().changes.withSection(name);
        }
    }

    void dynamic(XmlElement sign, Fraction at) {
        var known = Optional.ofNullable(DYNAMICS.get(sign.name()));
        boolean beyond = sign.name().matches("p{3,6}|f{3,6}");
        if (known.isPresent()) {
            say(new Loudness(at, known.get()));
        } else if (beyond) {
            say(new Loudness(at, sign.name().startsWith("p") ? Dynamic.PP : Dynamic.FF));
            notices.changed(state.bar().index, Message.of("intake.changed.loudness", sign.name()));
        } else {
            leftOut(sign.name());
        }
    }

    private void wedge(XmlElement wedge, Fraction at) {
        if (wedge.is("type", "crescendo")) {
            say(new Hairpin(at, Hairpin.Way.CRESCENDO));
        } else if (wedge.is("type", "diminuendo")) {
            say(new Hairpin(at, Hairpin.Way.DIMINUENDO));
        }
    }

    private void metronome(XmlElement direction, Fraction at) {
        direction.all("direction-type", "metronome").forEach(mark -> Tempi.metronome(mark)
                .ifPresentOrElse(tempo -> state.tempo(tempo, at), () -> leftOut("metronome")));
    }

    /**
     * What a file does when it is played.
     *
     * @return whether it says what the words beside it mean
     */
    boolean sound(XmlElement sound, String words, Fraction at) {
        boolean swung =
                sound.child("swing").filter(swing -> swing(swing, words)).isPresent();
        boolean jumps = jump(words, Optional.of(sound), at);
        sound.attribute("tempo")
                .flatMap(XmlNumbers::decimal)
                .filter(Fraction::isPositive)
                .ifPresent(quarters -> state.playing(quarters, at));
        var roadmap = state.bar().roadmap;
        state.bar().roadmap = sound.attribute("segno").isPresent() ? roadmap.withSegno() : roadmap;
        roadmap = state.bar().roadmap;
        state.bar().roadmap = sound.attribute("coda").isPresent() ? roadmap.withCoda() : roadmap;
        return swung || jumps;
    }

    private boolean swing(XmlElement swing, String words) {
        boolean half = words.toLowerCase(Locale.ROOT).contains("half-time");
        if (swing.has("straight")) {
            state.feel(new Feel(Optional.empty(), half));
            return true;
        }
        var first = swing.text("first").flatMap(XmlNumbers::whole).orElse(0);
        var second = swing.text("second").flatMap(XmlNumbers::whole).orElse(0);
        var unit = swing.text("swing-type").filter("16th"::equals).isPresent() ? Swing.SIXTEENTHS : Swing.EIGHTHS;
        if (!Swing.isRatio(first, second)) {
            leftOut("swing");
            return true;
        }
        state.feel(new Feel(Optional.of(new Swing(unit, first, second)), half));
        return true;
    }

    /** By what is meant when the file is played, or by the words of the trade. */
    private boolean jump(String words, Optional<XmlElement> sound, Fraction at) {
        String lower = words.toLowerCase(Locale.ROOT);
        boolean capo = isSaid(sound, "dacapo") || CAPO.matcher(lower).matches();
        boolean segno = isSaid(sound, "dalsegno") || DAL_SEGNO.matcher(lower).matches();
        var until = lower.contains("coda") ? Until.CODA : lower.contains("fine") ? Until.FINE : Until.END;
        var bar = state.endingAt(at);
        if (capo || segno) {
            bar.roadmap = bar.roadmap.with(new Jump(capo ? From.CAPO : From.SEGNO, until));
        } else if (isSaid(sound, "tocoda") || TO_CODA.matcher(lower).matches()) {
            bar.roadmap = bar.roadmap.withToCoda();
        } else if (isSaid(sound, "fine") || FINE.matcher(lower).matches()) {
            bar.roadmap = bar.roadmap.withFine();
        } else {
            return false;
        }
        return true;
    }

    private static boolean isSaid(Optional<XmlElement> sound, String attribute) {
        return sound.flatMap(each -> each.attribute(attribute)).isPresent();
    }

    /** The jump of a line says how far it goes; where a file does not, its signs do. */
    static void complete(List<RawMeasure> bars) {
        boolean fine = bars.stream().anyMatch(bar -> bar.roadmap.fine());
        boolean toCoda = bars.stream().anyMatch(bar -> bar.roadmap.toCoda());
        var until = toCoda ? Until.CODA : fine ? Until.FINE : Until.END;
        bars.forEach(bar -> bar.roadmap
                .jump()
                .filter(jump -> jump.until() == Until.END)
                .ifPresent(jump -> bar.roadmap = bar.roadmap.with(new Jump(jump.from(), until))));
    }
}
