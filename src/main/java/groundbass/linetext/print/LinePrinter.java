package groundbass.linetext.print;

import groundbass.linetext.assemble.PlaceResolver;
import groundbass.linetext.read.BeatNames;
import groundbass.linetext.read.SettingReader;
import groundbass.linetext.read.TuningReader;
import groundbass.linetext.source.Keyword;
import groundbass.score.Bar;
import groundbass.score.Changes;
import groundbass.score.Feel;
import groundbass.score.Header;
import groundbass.score.InForce;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.score.Repeats;
import groundbass.score.Tempo;

/** Writes a whole line in the one way that this program writes it. */
public final class LinePrinter {
    private static final int COLUMN = 8;

    private final Line line;
    private final StringBuilder text = new StringBuilder();

    public LinePrinter(Line line) {
        this.line = line;
    }

    public String print() {
        header(line.header());
        var inForce = line.inForce();
        var carried = new PrinterState(line.bars(), inForce);
        var neck = new PlaceResolver(line.header().tuning(), line.header().frets());
        for (int i = 0; i < inForce.size(); i++) {
            var bar = line.bars().get(i);
            text.append('\n');
            before(bar, inForce.get(i));
            new BarPrinter(bar, inForce.get(i), neck, carried).print(carried.original(bar), text);
            after(bar.repeats());
            carried.pass(bar);
        }
        return text.toString();
    }

    private void header(Header header) {
        setting(Keyword.FORM, String.valueOf(SettingReader.FORM));
        words(Keyword.TITLE, header.title());
        words(Keyword.COMPOSER, header.composer());
        words(Keyword.RIGHTS, header.rights());
        setting(Keyword.KEY, header.key().toString());
        setting(Keyword.METER, header.meter().toString());
        setting(Keyword.TEMPO, tempo(header.tempo(), header.meter()));
        if (!header.feel().equals(Feel.STRAIGHT)) {
            setting(Keyword.FEEL, header.feel().toString());
        }
        setting(Keyword.STRINGS, TuningReader.print(header.tuning()));
        if (header.frets() != Header.USUAL_FRETS) {
            setting(Keyword.FRETS, String.valueOf(header.frets()));
        }
        setting(Keyword.STYLE, header.style().word());
    }

    private void before(Bar bar, InForce inForce) {
        var changes = bar.changes();
        changes.place().ifPresent(place -> setting(Keyword.NEW, place.word()));
        changes.section().ifPresent(name -> setting(Keyword.SECTION, name));
        settings(changes, inForce.meter());
        if (bar.repeats().start()) {
            setting(Keyword.REPEAT, "start");
        }
        bar.repeats().ending().ifPresent(ending -> setting(Keyword.ENDING, ending.toString()));
        says(bar.repeats().roadmap().segno(), "segno");
        says(bar.repeats().roadmap().coda(), "coda");
    }

    private void settings(Changes changes, Meter meter) {
        changes.key().ifPresent(key -> setting(Keyword.KEY, key.toString()));
        changes.meter().ifPresent(changed -> setting(Keyword.METER, changed.toString()));
        changes.tempo().ifPresent(tempo -> setting(Keyword.TEMPO, tempo(tempo, meter)));
        changes.slowingTo().ifPresent(figure -> setting(Keyword.SLOWING, "to " + figure));
        changes.feel().ifPresent(feel -> setting(Keyword.FEEL, feel.toString()));
        changes.style().ifPresent(style -> setting(Keyword.STYLE, style.word()));
    }

    private void after(Repeats signs) {
        if (signs.endingEnd()) {
            setting(Keyword.ENDING, "end");
        }
        signs.end()
                .ifPresent(end -> setting(
                        Keyword.REPEAT,
                        "end" + end.times().map(times -> " x" + times).orElse("")));
        var roadmap = signs.roadmap();
        says(roadmap.toCoda(), "to coda");
        says(roadmap.fine(), "fine");
        roadmap.jump().ifPresent(jump -> says(true, jump.words()));
    }

    private void says(boolean said, String words) {
        if (said) {
            text.append(words).append('\n');
        }
    }

    private static String tempo(Tempo tempo, Meter meter) {
        return tempo.perMinute() + (tempo.beat().equals(meter.pulse()) ? "" : " " + BeatNames.of(tempo.beat()));
    }

    private void words(Keyword word, String value) {
        if (!value.isEmpty()) {
            setting(word, value);
        }
    }

    private void setting(Keyword word, String value) {
        String name = word.toString();
        text.append(name)
                .append(" ".repeat(Math.max(1, COLUMN - name.length())))
                .append(value)
                .append('\n');
    }
}
