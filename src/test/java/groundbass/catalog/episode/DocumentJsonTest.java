package groundbass.catalog.episode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import groundbass.document.BackingTrack;
import groundbass.document.DocumentSettings;
import groundbass.document.EpisodeDocument;
import groundbass.document.GrooveSource;
import groundbass.document.LessonFacts;
import groundbass.document.LessonFacts.CoursePointer;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.document.Rights;
import groundbass.document.UploadId;
import groundbass.document.WalkthroughEdit;
import groundbass.identity.Sha256;
import groundbass.store.RandomId;
import java.util.List;
import org.junit.jupiter.api.Test;

class DocumentJsonTest {
    private static final EpisodeDocument FULL = new EpisodeDocument(
            EpisodeDocument.FORM,
            "Octaves at the Crossing",
            Level.ADVANCED,
            "Two bars of octaves.",
            "Play *softly*.\n\n- one\n- two",
            new LineSource("Main line", "title Octaves\n\nbar 1\n1-4 E5\n"),
            List.of(new LineSource("Exercise 1", "bar 1\n1-4 A3\n")),
            List.of(new BackingTrack(
                    new UploadId(RandomId.next()),
                    Sha256.of(new byte[] {1, 2}),
                    "Band",
                    BackingTrack.Kind.WITHOUT_BASS)),
            new GrooveSource("plain eighths", ""),
            new Rights("Own work", "Written down by the studio", "All rights reserved"),
            List.of(new WalkthroughEdit(0, "0a1b", 3, "Let it ring.")),
            "This is the D on the A string.",
            new LessonFacts(
                    "https://video.example/7",
                    "A capo.",
                    List.of(new CoursePointer("Octaves", "https://school.example/octaves")),
                    "0:00 Start\n0:21 Bar 1\n"),
            new DocumentSettings("de", "50 100"));

    @Test
    void whatIsWrittenReadsBackTheSame() {
        assertThat(DocumentJson.read(DocumentJson.write(FULL))).isEqualTo(FULL);
    }

    @Test
    void theSameDocumentIsAlwaysTheSameText() {
        String text = DocumentJson.write(FULL);
        assertThat(DocumentJson.write(DocumentJson.read(text))).isEqualTo(text);
    }

    @Test
    void onlyTheComponentsAreWritten() {
        assertThat(DocumentJson.write(EpisodeDocument.titled("A", Level.BEGINNER)))
                .isEqualTo(
                        "{\"form\":1,\"title\":\"A\",\"level\":\"BEGINNER\",\"summary\":\"\",\"notes\":\"\","
                                + "\"mainLine\":{\"name\":\"\",\"text\":\"\"},\"exercises\":[],\"backingTracks\":[],"
                                + "\"groove\":{\"name\":\"\",\"text\":\"\",\"feel\":\"100\",\"bass\":\"amplifier\",\"chords\":\"keys\"},"
                                + "\"rights\":{\"composer\":\"\",\"credit\":\"\",\"statement\":\"\",\"clearance\":\"OPEN\","
                                + "\"licence\":{\"reference\":\"\",\"from\":\"\",\"until\":\"\"}},"
                                + "\"walkthroughEdits\":[],\"script\":\"\",\"facts\":{\"video\":\"\",\"gear\":\"\",\"courses\":[],\"chapters\":\"\"},\"settings\":{\"language\":\"en\",\"tempos\":\"50 60 70 80 90 100\",\"rounds\":\"2\",\"naming\":\"usual\"}}");
    }

    @Test
    void whatAnEarlierProgramLackedGetsItsUsualValue() {
        var read = DocumentJson.read("{\"form\":1,\"title\":\"A\",\"mainLine\":{\"text\":\"bar 1\"},\"notes\":null,"
                + "\"exercises\":[{\"text\":\"bar 2\"}]}");
        assertThat(read.mainLine()).isEqualTo(new LineSource("", "bar 1"));
        assertThat(read.exercises()).containsExactly(new LineSource("", "bar 2"));
        assertThat(read.notes()).isEmpty();
        assertThat(read.settings()).isEqualTo(DocumentSettings.USUAL);
    }

    @Test
    void whatALaterProgramAddedIsPassedOver() {
        var read = DocumentJson.read("{\"form\":1,\"title\":\"A\",\"colour\":\"green\",\"rights\":{\"year\":2020}}");
        assertThat(read).isEqualTo(EpisodeDocument.titled("A", Level.BEGINNER));
    }

    @Test
    void aNewerFormIsRefused() {
        assertThatThrownBy(() -> DocumentJson.read("{\"form\":2}"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("form 2");
    }

    @Test
    void whatIsNoDocumentIsRefused() {
        for (String text : List.of("", "[]", "null", "{", "{\"level\":\"OTHER\"}", "{\"exercises\":7}")) {
            assertThatThrownBy(() -> DocumentJson.read(text)).as(text).isInstanceOf(IllegalArgumentException.class);
        }
    }
}
