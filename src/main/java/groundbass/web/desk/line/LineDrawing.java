package groundbass.web.desk.line;

import groundbass.engraving.mark.BarPlace;
import groundbass.identity.Sha256;
import groundbass.lesson.Sheets;
import groundbass.lesson.Sheets.DrawnSystem;
import groundbass.linetext.LineText;
import groundbass.linetext.Reading;
import groundbass.linetext.edit.Outline;
import groundbass.linetext.edit.Outline.BarPart;
import groundbass.linetext.edit.Outline.CountPart;
import groundbass.score.Copy;
import groundbass.score.Fraction;
import groundbass.score.InForce;
import groundbass.score.Line;
import groundbass.score.Place;
import groundbass.text.Messages;
import groundbass.theory.Spelling;
import groundbass.walkthrough.Step;
import groundbass.walkthrough.Walkthrough;
import groundbass.web.desk.line.LiveLine.BarView;
import groundbass.web.desk.line.LiveLine.ColumnView;
import groundbass.web.desk.line.LiveLine.NeckView;
import groundbass.web.desk.line.LiveLine.RemarkSpot;
import groundbass.web.desk.line.LiveLine.SettingView;
import groundbass.web.desk.line.LiveLine.StringView;
import groundbass.web.desk.line.LiveLine.SystemView;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Makes of a text what the page's script shows. */
final class LineDrawing {
    private static final Logger log = LoggerFactory.getLogger(LineDrawing.class);

    /** Hexadecimal digits of a digest that tell the drawings of one page apart. */
    private static final int KEY = 16;

    private final String text;
    private final Reading reading;
    private final Line line;
    private final List<InForce> inForce;
    private final Outline outline;
    private final List<DrawnSystem> systems;
    private final Map<Integer, Spot> spots = new HashMap<>();

    /**
     * What the page's script asks.
     *
     * @param width in staff spaces
     * @param prefix what ids in the drawing begin with
     * @param told whether the walkthrough is wanted, which takes its time
     * @param has the keys of the systems that the page shows, which are not sent again
     */
    record Asked(String text, double width, String prefix, boolean told, Set<String> has) {
        Asked {
            has = Set.copyOf(has);
        }
    }

    /** Where a bar is drawn. */
    private record Spot(int system, double width, BarPlace place) {
        double part(double x) {
            return x / width;
        }
    }

    private LineDrawing(String text, List<DrawnSystem> systems, Reading reading) {
        this.text = text;
        this.reading = reading;
        this.line = reading.line();
        this.inForce = line.inForce();
        this.outline = Outline.of(text, line);
        this.systems = systems;
        for (int i = 0; i < systems.size(); i++) {
            var system = systems.get(i);
            for (var bar : system.bars()) {
                spots.putIfAbsent(bar.number(), new Spot(i, system.width(), bar));
            }
        }
    }

    /**
     * What a text comes to, as far as it is drawn.
     *
     * @param line without remarks
     * @param remarks finds them, which takes as long as to draw
     */
    record Drawn(LiveLine line, Supplier<List<RemarkSpot>> remarks) {
        LiveLine whole() {
            return line.with(remarks.get());
        }

        private static Drawn silent(LiveLine line) {
            return new Drawn(line, List::of);
        }
    }

    /**
     * @param sheets how the series has its sheets, in the language of sheet and walkthrough
     * @param reader the words of remarks
     */
    static Drawn of(Asked asked, Sheets sheets, Messages reader) {
        String text = asked.text();
        var reading = LineText.read(text);
        if (text.isBlank()) { // what is not begun has neither mistakes nor a picture of an empty bar
            return Drawn.silent(new LineDrawing(text, List.of(), reading).live("", Set.of(), List.of()));
        }
        if (!new SheetRoom().takes(reading.line())) {
            return Drawn.silent(LiveLine.undrawn(reader.say(SheetRoom.TOO_LARGE)));
        }
        try {
            var systems = sheets.systemsApart(reading.line(), asked.width(), asked.prefix());
            var walk = asked.told() ? walk(reading.line(), sheets.messages()) : List.<String>of();
            var drawing = new LineDrawing(text, systems, reading);
            return new Drawn(drawing.live("", asked.has(), walk), () -> drawing.remarks(reader));
        } catch (RuntimeException e) { // a fault in drawing must not keep an educator from their own text
            log.error("a line could not be drawn", e);
            var drawing = new LineDrawing(text, List.of(), reading);
            return new Drawn(
                    drawing.live(reader.say("desk.live.fault"), Set.of(), List.of()), () -> drawing.remarks(reader));
        }
    }

    private static List<String> walk(Line line, Messages messages) {
        return Walkthrough.of(line, messages).stream().map(Step::text).toList();
    }

    private List<RemarkSpot> remarks(Messages reader) {
        return new RemarkSpots(text, reading, this::x, reader).all();
    }

    private LiveLine live(String undrawn, Set<String> has, List<String> walk) {
        return new LiveLine(
                undrawn,
                systems.stream().map(system -> system(system, has)).toList(),
                outline.bars().stream().map(this::bar).toList(),
                outline.header().stream()
                        .map(setting -> new SettingView(setting.name(), setting.value()))
                        .toList(),
                List.of(),
                neck(),
                walk);
    }

    private static SystemView system(DrawnSystem system, Set<String> has) {
        var bars = system.bars();
        String key =
                Sha256.of(system.svg().getBytes(StandardCharsets.UTF_8)).hex().substring(0, KEY);
        return new SystemView(
                key,
                has.contains(key) ? "" : system.svg(),
                bars.get(0).number(),
                bars.get(bars.size() - 1).number());
    }

    private BarView bar(BarPart part) {
        var spot = spot(part.number());
        var meter = inForce.get(line.indexOf(part.number())).meter();
        return new BarView(
                part.number(),
                spot.map(Spot::system).orElse(-1),
                spot.map(found -> found.part(found.place().left())).orElse(0.0),
                spot.map(found -> found.part(found.place().right())).orElse(0.0),
                part.line(),
                part.headed(),
                part.chords(),
                part.taken(),
                part.copied().orElse(-1),
                meter.counts(),
                meter.unit(),
                columns(part));
    }

    private List<ColumnView> columns(BarPart part) {
        var columns = new ArrayList<CountPart>(part.counts());
        var ghosts = ghosts(part);
        columns.addAll(ghosts);
        columns.sort(Comparator.comparing(CountPart::from));
        return columns.stream()
                .map(count -> column(part.number(), count, ghosts.contains(count)))
                .toList();
    }

    private ColumnView column(int bar, CountPart count, boolean ghost) {
        return new ColumnView(
                count.label(),
                count.at(),
                x(bar, count.from()),
                count.events(),
                ghost ? -1 : count.start(),
                ghost ? -1 : count.start() + count.events().length(),
                ghost ? -1 : count.line());
    }

    /** What a copied bar says where this one says nothing of its own. */
    private List<CountPart> ghosts(BarPart part) {
        var copy = line.bars().get(line.indexOf(part.number())).copy();
        if (copy.isEmpty()) {
            return List.of();
        }
        return taken(part, copy.get()).stream()
                .filter(count -> copy.get()
                        .counts()
                        .map(span -> span.contains(count.from()))
                        .orElse(true))
                .filter(count -> part.counts().stream().noneMatch(own -> covers(own, count.from())))
                .toList();
    }

    private List<CountPart> taken(BarPart part, Copy copy) {
        if (!copy.shift().isNone()) {
            return part.moved();
        }
        var source = outline.bars().get(line.indexOf(copy.bar()));
        var all = new ArrayList<CountPart>(source.counts());
        all.addAll(ghosts(source));
        return all;
    }

    private static boolean covers(CountPart count, Fraction at) {
        return !at.isBefore(count.from()) && at.isBefore(count.to());
    }

    /** A part of the system's width; negative where the bar is not drawn. */
    private double x(int bar, Fraction at) {
        return spot(bar).map(spot -> spot.part(spot.place().x(at))).orElse(-1.0);
    }

    private Optional<Spot> spot(int bar) {
        return Optional.ofNullable(spots.get(bar));
    }

    private NeckView neck() {
        var tuning = line.header().tuning();
        var strings =
                IntStream.rangeClosed(1, tuning.size()).mapToObj(this::string).toList();
        return new NeckView(line.header().frets(), strings);
    }

    /** A string goes by what is typed for it, which is its number where two share a letter. */
    private StringView string(int number) {
        var tuning = line.header().tuning();
        String open = tuning.typed(new Place.Fretted(number, 0));
        var notes = IntStream.rangeClosed(0, line.header().frets())
                .mapToObj(fret -> tuning.midi(new Place.Fretted(number, fret)))
                .map(midi -> Spelling.of(line.header().key(), midi).name().toString())
                .toList();
        return new StringView(open.substring(0, open.length() - 1), notes);
    }
}
