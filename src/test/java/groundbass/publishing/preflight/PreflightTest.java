package groundbass.publishing.preflight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import groundbass.catalog.episode.EpisodeId;
import groundbass.document.BackingTrack;
import groundbass.document.BarMap;
import groundbass.document.Clearance;
import groundbass.document.EpisodeDocument;
import groundbass.document.Level;
import groundbass.document.Licence;
import groundbass.document.LineSource;
import groundbass.document.Rights;
import groundbass.document.UploadId;
import groundbass.document.WalkthroughEdit;
import groundbass.identity.Sha256;
import groundbass.lesson.Lesson;
import groundbass.publishing.address.Addresses;
import groundbass.publishing.address.LinkAnswer;
import groundbass.publishing.address.SiteAddresses;
import groundbass.publishing.preflight.LessonRemark.Weight;
import groundbass.text.Messages;
import groundbass.walkthrough.Anchor;
import java.net.URI;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class PreflightTest {
    private static final EpisodeId ID = EpisodeId.next();
    private static final String SOUND = "bar 1\n1-4 E5\n";

    @Test
    void aReadableLineWithSettledRightsMayGoOut() {
        assertThat(remarks(document(SOUND))).isEmpty();
    }

    @Test
    void everyMistakeOfALineIsToldWithItsPlace() {
        assertThat(remarks(document("bar 1\n1-2 E58\n3-4 E5 slpa\n")))
                .extracting(
                        LessonRemark::field, remark -> remark.message().args().subList(0, 2), LessonRemark::weight)
                .containsExactly(
                        tuple("mainLine", List.of(2, 5), Weight.BLOCKS),
                        tuple("mainLine", List.of(3, 8), Weight.BLOCKS));
    }

    @Test
    void nothingGoesOutWithoutAWordOnItsRights() {
        var silent = document(SOUND)
                .edit()
                .rights(new Rights("", "", " ", Clearance.OWN))
                .done();
        assertThat(remarks(silent))
                .extracting(remark -> remark.message().key())
                .containsExactly("publishing.problem.rights");
    }

    @ParameterizedTest
    @EnumSource(Clearance.class)
    void nothingGoesOutWhileTheQuestionIsOpenOrPermissionAwaited(Clearance clearance) {
        var asked = document(SOUND)
                .edit()
                .rights(new Rights("", "", "Asked.", clearance, new Licence("No. 12", "A publisher", "")))
                .done();
        boolean settled = clearance != Clearance.OPEN && clearance != Clearance.WAITING;
        assertThat(remarks(asked).isEmpty()).isEqualTo(settled);
        if (!settled) {
            assertThat(remarks(asked))
                    .extracting(LessonRemark::field, LessonRemark::weight)
                    .containsExactly(tuple("rights.clearance", Weight.BLOCKS));
        }
    }

    /** Common practice, no source: a permission is worth as much as the paper it can be found on, and as long as it runs. */
    @Test
    void whatIsPermittedNamesItsLicenceAndGoesOutWhileItRuns() {
        assertThat(remarks(given(Licence.NONE), "2026-06-30"))
                .extracting(LessonRemark::field, LessonRemark::weight)
                .containsExactly(
                        tuple("rights.licence.reference", Weight.BLOCKS), tuple("rights.licence.from", Weight.BLOCKS));
        var licence = new Licence("No. 12", "A publisher", "2026-06-30");
        assertThat(remarks(given(licence), "2026-06-30")).isEmpty();
        assertThat(remarks(given(licence), "2026-07-01"))
                .extracting(LessonRemark::field)
                .containsExactly("rights.licence.until");
        assertThat(remarks(given(new Licence("No. 12", "A publisher", "next summer")), "2026-07-01"))
                .extracting(remark -> remark.message().key())
                .containsExactly("catalog.problem.day");
    }

    private static EpisodeDocument given(Licence licence) {
        return document(SOUND)
                .edit()
                .rights(new Rights("", "", "By permission.", Clearance.GIVEN, licence))
                .done();
    }

    private static List<LessonRemark> remarks(EpisodeDocument document, String day) {
        var around = new Around(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(LocalDate.parse(day)),
                Optional.empty(),
                Missing.NOTHING);
        return new Preflight(() -> "https://example.org")
                .look(EpisodeId.next(), document, around)
                .remarks();
    }

    /** An earlier state is brought back, whose recording was taken out since. */
    @Test
    void aRecordingThatIsNotThereKeepsTheLessonBack() {
        var upload = new UploadId("upload2345678923");
        var track = new BackingTrack(upload, Sha256.of(new byte[1]), "Band in the shed", BackingTrack.Kind.FULL);
        var document = document(SOUND).edit().backingTracks(List.of(track)).done();
        var around = Around.without(new Missing(Set.of(), Set.of(upload)));
        var remarks = new Preflight(() -> "https://example.org")
                .look(ID, document, around)
                .remarks();
        assertThat(remarks).singleElement().satisfies(remark -> {
            assertThat(remark.point()).isEqualTo(Checkpoint.RECORDINGS);
            assertThat(remark.blocks()).isTrue();
            assertThat(Messages.of(Locale.ENGLISH).say(remark.message())).contains("Band in the shed");
        });
        assertThat(new Preflight(() -> "https://example.org")
                        .look(ID, document, Around.NOTHING)
                        .remarks())
                .isEmpty();
    }

    /** The net has its bad days: what was answered is told, with the time in the zone of the series, and holds nothing back. */
    @Test
    void whatALinkAnsweredIsToldAndNeverInTheWay() {
        var at = Instant.parse("2026-03-02T09:00:00Z");
        var answers = Map.of(
                "https://there.example/", new LinkAnswer(LinkAnswer.Kind.ANSWERED, 200, at),
                "https://gone.example/", new LinkAnswer(LinkAnswer.Kind.ANSWERED, 404, at));
        var tried = new TriedLinks(address -> Optional.ofNullable(answers.get(address)), ZoneId.of("Europe/Vienna"));
        var linking = document(SOUND)
                .edit()
                .notes("[one](https://there.example/), [two](https://gone.example/), [new](https://new.example/)")
                .done();
        assertThat(Preflight.addresses(linking)).hasSize(3);
        var around = new Around(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(tried),
                Missing.NOTHING);
        var look = new Preflight(() -> "https://example.org").look(ID, linking, around);
        assertThat(look.remarks()).extracting(LessonRemark::weight).containsExactly(Weight.MENTIONS);
        var english = Messages.of(Locale.ENGLISH);
        assertThat(english.say(look.remarks().get(0).message()))
                .contains("https://gone.example/", "answered 404", "2026-03-02 10:00");
        assertThat(english.say(look.looked(Checkpoint.LINKS))).contains("2 of its 3 links", "one of these pages");
    }

    /** A hammer-on sounds because the finger comes down above the note before it (handbooks of the instrument alike). */
    @Test
    void whatNoHandCanPlayBlocks() {
        var falling = document("bar 1\n1-2 E7\n3-4 E5 hammer\n");
        assertThat(remarks(falling)).anySatisfy(remark -> {
            assertThat(remark.weight()).isEqualTo(Weight.BLOCKS);
            assertThat(said(remark)).startsWith("Bar 1, count 3: ");
        });
    }

    @Test
    void whatIsUnwiseAsksAndTheSameNotesElsewhereAskAlike() {
        String wide = "1 E5+A9\n2-4 rest\n";
        var once = remarks(document("bar 1\n" + wide));
        assertThat(once).anyMatch(LessonRemark::asks).noneMatch(LessonRemark::blocks);
        var later = remarks(document("bar 1\n1-4 E1\n\nbar 2\n" + wide));
        var digests = later.stream().map(LessonRemark::digest).toList();
        assertThat(once.stream().filter(LessonRemark::asks).map(LessonRemark::digest))
                .allMatch(digests::contains);
    }

    /** Else a paragraph above it would ask for it anew, and hold what was promised. */
    @Test
    void aLinkInTheNotesMayMoveDown() {
        var link = "[tab](www.example.org)\n";
        assertThat(asked(document(SOUND).edit().notes(link).done()))
                .isEqualTo(asked(
                        document(SOUND).edit().notes("First this.\n\n" + link).done()));
    }

    /**
     * Rows keep these for good, so no later version may make others of the same remark. Each was made with sha256sum of the
     * lines beside it, with a line end after all but the last.
     */
    @Test
    void whatWasAcceptedIsFoundByEveryVersion() {
        // "mainLine", "publishing.remark.count", "stretch-hard", "finger", "1 E5+A9", "2-4 rest"
        assertThat(asked(document("bar 1\n1 E5+A9\n2-4 rest\n")))
                .isEqualTo("0688d5c6199769abd9306e080a8362cac086082da48c558f2724a54d8dfa7e78");
        // "notes", "publishing.remark.link.notes", "www.example.org"
        assertThat(asked(
                        document(SOUND).edit().notes("[tab](www.example.org)\n").done()))
                .isEqualTo("8dc008d8e280c2d9d4c27a95f6908ccc865e2822bb4d23674b5199c95d651216");
        // "tracks", "publishing.remark.recording", "upload2345678923", "1.1 2.1 2.2"
        var starts = List.of(
                new BarMap.Start(1, 1, 1, 0.5),
                new BarMap.Start(2, 1, 1, 2.5),
                new BarMap.Start(2, 2, 1, 4.5),
                new BarMap.Start(1, 1, 2, 6.5));
        var track = new BackingTrack(
                        new UploadId("upload2345678923"), Sha256.of(new byte[1]), "Shed", BackingTrack.Kind.FULL)
                .withMap(new BarMap(starts, 8.5));
        assertThat(asked(document(SOUND).edit().backingTracks(List.of(track)).done()))
                .isEqualTo("d0b46793d52f65ed9beb825a4fdc9d21530eda2f265179a62f1e1bb0ab4a9959");
    }

    /** The digest of the one thing that asks. */
    private static String asked(EpisodeDocument document) {
        var asking = remarks(document).stream().filter(LessonRemark::asks).toList();
        assertThat(asking).hasSize(1);
        return asking.get(0).digest();
    }

    @ParameterizedTest
    @CsvSource({
        "bars:40-41, true",
        "bar:2, true",
        "bars:1-2, true",
        "bars:two, true",
        "bar:1:9, true",
        "bars:1, false",
        "bar:1:1-2, false",
        "https://example.org/picture.png, false"
    })
    void piecesThatTheLineDoesNotHaveAreToldWithTheirLine(String address, boolean broken) {
        var notes = document(SOUND)
                .edit()
                .notes("Look here:\n\n![The turn](" + address + ")\n")
                .done();
        var remarks = remarks(notes);
        assertThat(remarks.isEmpty()).isEqualTo(!broken);
        if (broken) {
            assertThat(remarks.get(0).weight()).isEqualTo(Weight.BLOCKS);
            assertThat(remarks.get(0).field()).isEqualTo("notes");
            assertThat(said(remarks.get(0))).contains("Line 3", address);
        }
    }

    @Test
    void wordsThatLostTheirNotesAskAndThoseThatFoundThemDoNot() {
        var document = document("bar 1\n1-2 E5\n3-4 E7\n");
        var step = Lesson.of(document).walkthrough(0).steps().get(1).told();
        var edit = new WalkthroughEdit(0, step.anchor().toString(), 1, "Lean into this one.");
        var kept = document.edit().walkthroughEdits(List.of(edit)).done();
        assertThat(Anchor.parse(edit.anchor())).as("the test's own anchor").isPresent();
        assertThat(remarks(kept)).isEmpty();
        var lost = kept.edit()
                .mainLine(new LineSource("", "bar 1\n1-2 A9\n3-4 A2\n"))
                .done();
        assertThat(remarks(lost))
                .extracting(LessonRemark::field, LessonRemark::weight)
                .containsExactly(tuple("walkthrough", Weight.ASKS));
        assertThat(said(remarks(lost).get(0))).contains("Lean into this one.");
    }

    /** RFC 6761 section 6.3; RFC 1122 section 3.2.1.3; RFC 4291 section 2.5.3. */
    @ParameterizedTest
    @ValueSource(strings = {"http://localhost:8420", "http://127.0.0.1", "http://[::1]:8420", "http://desk.localhost"})
    void anAddressOfThisMachineAloneAsks(String address) {
        var remarks = remarks(() -> address, document(SOUND));
        assertThat(remarks)
                .extracting(LessonRemark::field, LessonRemark::weight)
                .containsExactly(tuple("address", Weight.ASKS));
        assertThat(said(remarks.get(0))).contains(address);
    }

    @Test
    void aTrialMayPrintAnyAddress() {
        var trial = new SiteAddresses(() -> URI.create("http://localhost:8420"), true);
        assertThat(remarks(trial, document(SOUND))).isEmpty();
    }

    @Test
    void everyRemarkCanBeSaidInBothLanguages() {
        var all = Stream.of("bars:9", "bars:x")
                .map(address -> document("bar 1\n1-2 E7\n3-4 E5 hammer\n")
                        .edit()
                        .notes("![](" + address + ")")
                        .rights(new Rights("", "", "", Clearance.OPEN))
                        .done())
                .flatMap(document -> new Preflight(() -> "http://localhost").remarks(ID, document).stream())
                .toList();
        assertThat(all).hasSizeGreaterThan(8);
        for (var locale : List.of(Locale.ENGLISH, Locale.GERMAN)) {
            assertThat(all).allSatisfy(remark -> assertThat(Messages.of(locale).say(remark.message()))
                    .isNotBlank());
        }
    }

    private static String said(LessonRemark remark) {
        return Messages.of(Locale.ENGLISH).say(remark.message());
    }

    private static List<LessonRemark> remarks(EpisodeDocument document) {
        return remarks(() -> "https://example.org", document);
    }

    /** Without what is only mentioned: lines as short as these have little to say of their key. */
    private static List<LessonRemark> remarks(Addresses addresses, EpisodeDocument document) {
        return new Preflight(addresses)
                .remarks(ID, document).stream()
                        .filter(remark -> remark.weight() != Weight.MENTIONS)
                        .toList();
    }

    private static EpisodeDocument document(String line) {
        return EpisodeDocument.titled("Slack Water", Level.BEGINNER)
                .edit()
                .mainLine(new LineSource("", line))
                .rights(new Rights("", "", "Own work.", Clearance.OWN))
                .done();
    }
}
