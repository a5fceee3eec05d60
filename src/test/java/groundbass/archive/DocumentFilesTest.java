package groundbass.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import groundbass.archive.file.DamagedFile;
import groundbass.document.BackingTrack;
import groundbass.document.BarMap;
import groundbass.document.Clearance;
import groundbass.document.DocumentSettings;
import groundbass.document.EpisodeDocument;
import groundbass.document.GrooveSource;
import groundbass.document.LessonFacts;
import groundbass.document.LessonFacts.CoursePointer;
import groundbass.document.Level;
import groundbass.document.Licence;
import groundbass.document.LineSource;
import groundbass.document.Rights;
import groundbass.document.UploadId;
import groundbass.document.WalkthroughEdit;
import groundbass.identity.Sha256;
import java.io.StringReader;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Nothing that a lesson says is lost in its files. */
class DocumentFilesTest {
    /** What text files like to spoil: blanks at both ends, line ends of three kinds, signs of properties and of JSON. */
    private static final String ODD =
            " \t a=b: c # d ! \\ e \\u0041\r\nf\rg\n\n \"h\" {} \u00e4\u266d\ud834\udd1e \f i  ";

    private static EpisodeDocument full(String odd) {
        var map =
                new BarMap(List.of(new BarMap.Start(1, 1, 1, 0.1), new BarMap.Start(2, 1, 1, 1.0 / 3)), 1e-3 + Math.PI);
        var track = new BackingTrack(
                new UploadId("upload2345678923"), Sha256.of(new byte[] {1}), odd, BackingTrack.Kind.DRUMS, map);
        return new EpisodeDocument(
                EpisodeDocument.FORM,
                odd,
                Level.ADVANCED,
                odd,
                odd,
                new LineSource(odd, odd),
                List.of(new LineSource(odd, odd), new LineSource("", ""), new LineSource("", odd)),
                List.of(track),
                new GrooveSource(odd, odd, "50", "direct", "guitar"),
                new Rights(odd, odd, odd, Clearance.WAITING, new Licence(odd, odd, odd)),
                List.of(new WalkthroughEdit(1, odd, 3, odd)),
                odd,
                new LessonFacts(odd, odd, List.of(new CoursePointer(odd, odd), new CoursePointer("", "")), odd),
                new DocumentSettings(odd, odd, odd, odd));
    }

    private static EpisodeDocument again(Map<String, String> files) throws DamagedFile {
        return DocumentFiles.read(name -> Optional.ofNullable(files.get(name)), "");
    }

    @Test
    void everyPartOfALessonComesBack() throws DamagedFile {
        var document = full(ODD);
        var usual = EpisodeDocument.titled("", Level.BEGINNER);
        // a part that is added to documents fails here until the lesson above says it
        Stream.of(EpisodeDocument.class.getRecordComponents())
                .filter(part -> !part.getName().equals("form"))
                .forEach(part ->
                        assertThat(value(part, document)).as(part.getName()).isNotEqualTo(value(part, usual)));
        assertThat(again(DocumentFiles.write(document))).isEqualTo(document);
        assertThat(again(DocumentFiles.write(usual))).isEqualTo(usual);
    }

    private static Object value(RecordComponent part, Object of) {
        try {
            return part.getAccessor().invoke(of);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void anyTextComesBack() throws DamagedFile {
        long seed = 17;
        var random = new Random(seed);
        int tried = 0;
        for (; tried < 400; tried++) {
            var odd = new StringBuilder();
            for (int i = random.nextInt(12); i > 0; i--) {
                odd.append(" \\\n\r\t\f=:#!u0\"'{}\u00a0\u2028\u0000x".charAt(random.nextInt(20)));
            }
            var document = full(odd.toString());
            assertThat(again(DocumentFiles.write(document))).as("seed " + seed).isEqualTo(document);
        }
        assertThat(tried).isEqualTo(400);
    }

    /** The form of these files is the one that java.util.Properties reads; its own reader says what is in them. */
    @Test
    void factsAreAPropertiesFile() throws Exception {
        var read = new Properties();
        read.load(new StringReader(DocumentFiles.write(full(ODD)).get("episode.properties")));
        assertThat(read).containsEntry("composer", ODD).containsEntry("level", "advanced");
    }

    @Test
    void filesAreCalledAsTheDemonstrationCallsThem() {
        assertThat(DocumentFiles.write(full(ODD)).keySet())
                .containsExactly(
                        "episode.properties",
                        "line.txt",
                        "notes.md",
                        "exercise-1.txt",
                        "exercise-2.txt",
                        "exercise-3.txt",
                        "groove.txt",
                        "script.txt",
                        "walkthrough.json",
                        "recordings.json");
    }

    @Test
    void aFormThatIsNewerIsRefused() {
        var files = Map.of("episode.properties", "form = " + (EpisodeDocument.FORM + 1));
        assertThatThrownBy(() -> again(files))
                .isInstanceOf(DamagedFile.class)
                .hasMessage("episode.properties: archive.problem.later");
    }

    @Test
    void whatIsNoListOfFactsOrOfWordsIsNamed() {
        for (var wrong : List.of(
                Map.entry("episode.properties", "title = \\u00"),
                Map.entry("walkthrough.json", "[{\"line\": {}}]"),
                Map.entry("walkthrough.json", "[null]"),
                Map.entry("recordings.json", "[{\"upload\": \"../../etc\"}]"))) {
            var problems = new ArrayList<String>();
            try {
                again(Map.of(wrong.getKey(), wrong.getValue()));
            } catch (DamagedFile e) {
                problems.add(e.why().key());
            }
            assertThat(problems).as(wrong.toString()).hasSize(1);
        }
    }
}
