package groundbass.cli;

import groundbass.audio.Wav;
import groundbass.groove.Band;
import groundbass.groove.Groove;
import groundbass.groove.GrooveLibrary;
import groundbass.linetext.LineText;
import groundbass.performance.Performance;
import groundbass.score.Line;
import groundbass.signal.OffsetSound;
import groundbass.sound.mix.Balance;
import groundbass.sound.mix.BandTrack;
import groundbass.sound.mix.BarSounds;
import groundbass.sound.mix.Mix;
import groundbass.sound.mix.Stem;
import groundbass.text.Messages;
import groundbass.theory.Quality;
import groundbass.web.view.StandalonePage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** Short examples for the ear: each technique, each groove, each chord, and a page that says what to listen for. */
final class Soundcheck {
    /** What the bass shows, by the name of its texts; each a bar of 4/4. */
    private static final String[][] TECHNIQUES = {
        {"finger", "1-4 E5 i, A5 m, D5 i, G5 m"},
        {"thumb", "1-4 E3 thumb, E5 thumb, A3 thumb, A5 thumb"},
        {"slap", "1-4 E0 slap, E3 slap, A0 slap, A5 slap"},
        {"pop", "1-4 D5 pop, D7 pop, G5 pop, G7 pop"},
        {"double-thumb", "1-2 E0 down, E0 up, Ex down, Ex up\n3-4 A5 down, A5 up, D7 pop, A5 down"},
        {"pick", "1-4 E5 pick*2, E5 pick*2, A3 pick*2, A5 pick*2"},
        {"pluck", "1-2 E0+G4 pluck\n3-4 A0+D2+G4 pluck"},
        {"tap", "1-4 D12 tap, G12 tap, G14 tap, G16 tap"},
        {"mute", "1-4 E5 mute, E5 mute, A5 mute, A7 mute"},
        {"rake", "1-2 A7+D7+G7 rake\n3-4 Ax+Dx+G9 rake"},
        {"left-hand", "1-4 Ex lefthand, E5 slap, Ax lefthand, A5 slap"},
        {"dead", "1-4 Ex slap, Ax slap, Dx slap, Gx slap"},
        {"ghost", "1-4 A5 finger, A5 ghost, A5 ghost, A5 finger"},
        {"hammer", "1-2 A5 slap, A7 hammer\n3-4 D5 pop, D7 hammer"},
        {"pull", "1-2 A7 slap, A5 pull\n3-4 D2 pop, D0 pull"},
        {"slide", "1-2 E3, E10 slide\n3-4 A5 slide in below, A5 slide off down"},
        {"vibrato", "1-4 G7 vibrato"},
        {"bend", "1-2 G7 bend 1/2\n3-4 G9 bend 1"},
        {"trill", "1-4 D5 trill"},
        {"rolled", "1-2 A3 + D2 + G0 roll\n3-4 A3 + D2 + G0 roll down"},
        {"harmonic", "1-4 D12 harmonic ring, G12 harmonic ring, G7 harmonic ring, G5 harmonic ring"},
        {"artificial", "1-4 G2, G2 harmonic at 14 ring"},
        {"short", "1-4 A5, A5 short, A5 accent, A5 short"}
    };

    /** The lines that show them. */
    static List<String> techniqueLines() {
        return Arrays.stream(TECHNIQUES)
                .map(technique -> "bar 1\n" + technique[1] + "\n")
                .toList();
    }

    private static final String[][] PROGRESSIONS = {
        {"two-five-one", "Dm7 G7 Cmaj7 A7"}, {"turnaround", "F6 D7 Gm7 C7"}, {"vamp", "Em7 A9 Em7 A9"}
    };

    private final Messages messages;
    private final Path folder;
    private final List<SoundcheckPage.Section> sections = new ArrayList<>();
    private List<SoundcheckPage.Example> examples = new ArrayList<>();

    private Soundcheck(Messages messages, Path folder) {
        this.messages = messages;
        this.folder = folder;
    }

    /** Writes {@code index.html} and the sounds beside it; the folder is made if it is missing. */
    static void write(Path folder, Messages messages) throws IOException {
        Files.createDirectories(folder);
        var check = new Soundcheck(messages, folder);
        check.techniques();
        check.grooves();
        check.chords();
        Files.writeString(folder.resolve("index.html"), check.page());
    }

    private String page() {
        var page = new SoundcheckPage(
                messages.say("soundcheck.title"),
                messages.say("soundcheck.lead"),
                messages.say("cautions.hearing.1"),
                sections);
        return StandalonePage.of("soundcheck", messages.locale(), page);
    }

    private void techniques() throws IOException {
        for (var technique : TECHNIQUES) {
            var line = line("tempo 84\nbar 1 over N.C.\n" + technique[1]);
            add("technique." + technique[0], words("technique", technique[0]), line, Stem.BASS);
        }
        close("technique");
    }

    private void grooves() throws IOException {
        for (var groove : GrooveLibrary.all()) {
            String slug = groove.name().toLowerCase(Locale.ROOT).replaceAll("[^a-z]+", "-");
            var words = new Words(groove.name(), messages.say("soundcheck.groove." + slug));
            add("groove." + slug, words, silent(groove), groove, Stem.DRUMS);
        }
        close("groove");
    }

    private void chords() throws IOException {
        for (var progression : PROGRESSIONS) {
            var words = new Words(progression[1], messages.say("soundcheck.chord." + progression[0]));
            add("chord." + progression[0], words, chords(progression[1].split(" ")), Stem.CHORDS);
        }
        for (var quality : Quality.values()) {
            String symbol = "C" + quality.suffix();
            var words = new Words(
                    symbol, Arrays.toString(quality.degrees().toArray()).replaceAll("[\\[\\],]", ""));
            String file = "chord." + quality.name().toLowerCase(Locale.ROOT).replace('_', '-');
            add(file, words, chords(symbol), Stem.CHORDS);
        }
        close("chord");
    }

    private record Words(String title, String listen) {}

    private Words words(String section, String name) {
        String key = "soundcheck." + section + "." + name;
        return new Words(messages.say(key + ".title"), messages.say(key));
    }

    private static Line silent(Groove groove) {
        String swing = groove.name().startsWith("Swing") ? "feel swing 8ths 2:1\n" : "";
        String rest = "\n1-" + groove.meter().counts() + " rest\n";
        return line("meter " + groove.meter() + "\ntempo 100 quarter\n" + swing + "bar 1" + rest + "bar 2" + rest);
    }

    private static Line chords(String... symbols) {
        var text = new StringBuilder("tempo 120\n");
        for (int i = 0; i < symbols.length; i++) {
            text.append("bar ")
                    .append(i + 1)
                    .append(" over ")
                    .append(symbols[i])
                    .append("\n1-4 rest\n");
        }
        return line(text.toString());
    }

    private static Line line(String text) {
        var reading = LineText.read("soundcheck", text);
        if (reading.hasErrors()) {
            throw new IllegalStateException(reading.problems().toString());
        }
        return reading.line();
    }

    private void add(String file, Words words, Line line, Stem stem) throws IOException {
        add(file, words, line, GrooveLibrary.suited(line), stem);
    }

    private void add(String file, Words words, Line line, Groove groove, Stem stem) throws IOException {
        var performance = Performance.of(line);
        var sounds = BarSounds.of(performance, Band.of(performance, groove));
        var track = new BandTrack(performance, sounds, new Mix(Set.of(stem), false), Balance.EVEN);
        long start = track.rate().at(performance.seconds(performance.start()));
        String name = file.replace('.', '-') + ".wav";
        try (var out = Files.newOutputStream(folder.resolve(name))) {
            Wav.write(new OffsetSound(track, start), out);
        }
        examples.add(new SoundcheckPage.Example(words.title(), words.listen(), name));
    }

    private void close(String section) {
        sections.add(new SoundcheckPage.Section(messages.say("soundcheck." + section), examples));
        examples = new ArrayList<>();
    }
}
